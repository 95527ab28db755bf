#pragma once
// The texts of a composed page.

#include "core/sheet/page.h"

#include <string>
#include <variant>
#include <vector>

namespace sump::testing {

/// In the order in which they are drawn.
inline std::vector<PageText> textsOf(const Page& page) {
  std::vector<PageText> found;
  for (const PageItem& item : page.items) {
    if (const auto* text = std::get_if<PageText>(&item)) found.push_back(*text);
  }
  return found;
}

/// Without the spaces at which a text may have been broken.
inline std::string squeezed(std::string text) {
  std::erase(text, ' ');
  return text;
}

} // namespace sump::testing
