#pragma once
// Several names in one sentence.

#include <string>
#include <string_view>
#include <vector>

namespace sump {

/// `float, signal and power`: `last` stands before the last of several.
inline std::string listInWords(const std::vector<std::string>& names,
                               std::string_view last = " and ") {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) text += i + 1 == names.size() ? last : std::string_view(", ");
    text += names[i];
  }
  return text;
}

} // namespace sump
