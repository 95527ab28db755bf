#pragma once
// Sizes of conductors in words.

#include <string>

namespace sump {

/// `12 AWG`, `250 kcmil`: sizes are gauges up to 4/0, above in thousands of circular mils.
inline std::string gaugeText(const std::string& size) {
  const bool gauge = size.size() <= 2 || size.ends_with("/0");
  return size + (gauge ? " AWG" : " kcmil");
}

} // namespace sump
