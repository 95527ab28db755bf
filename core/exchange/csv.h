#pragma once
// CSV after RFC 4180: CRLF, quotes where needed; text cells that a spreadsheet would run as a
// formula are guarded with a leading apostrophe (OWASP ASVS 1.2.10).

#include <string>
#include <string_view>
#include <vector>

namespace sump {

struct Cell {
  std::string text;
  bool number = false; ///< numbers are written as they are
};
inline Cell textCell(std::string_view s) {
  return {std::string(s), false};
}
inline Cell numberCell(std::string_view s) {
  return {std::string(s), true};
}

std::string csvLine(const std::vector<Cell>& cells);

} // namespace sump
