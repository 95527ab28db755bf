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
  const Catalog* catalog = nullptr; ///< names of materials; null: the built-in catalogue
};

/// The plan sheet, and further sheets for the schedules and notes that do not fit on it. Throws
/// std::invalid_argument for an unknown paper size or one too small for the title block and tables.
std::vector<Page> composeSheets(const Review& review, const SheetOptions& options);

} // namespace sump
