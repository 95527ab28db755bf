#pragma once
// Text of the plan's, as the window's: names, ids and printed values, which are not translated.

#include <QString>

#include <string_view>

namespace sump {

inline QString q(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

} // namespace sump
