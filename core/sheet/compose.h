#pragma once
// From a Review to pages.

#include "core/rules/review.h"
#include "core/sheet/page.h"

#include <string>
#include <vector>

namespace sump {

struct SheetOptions {
  std::string paper = "arch-d"; ///< a PaperSize key
  double scale = 0; ///< denominator, 120 for 1:120; 0: the largest standard one that fits
};

/// The plan sheet. Throws std::invalid_argument for an unknown paper size.
std::vector<Page> composeSheets(const Review& review, const SheetOptions& options);

} // namespace sump
