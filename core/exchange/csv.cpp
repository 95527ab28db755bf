#include "core/exchange/csv.h"

namespace sump {

namespace {

/// Leading characters that make spreadsheets take a text for a formula (OWASP ASVS 1.2.10).
constexpr std::string_view kFormulaStarts("=+-@\t\r\0", 7);

std::string guarded(std::string_view text) {
  if (!text.empty() && kFormulaStarts.find(text.front()) != std::string_view::npos) {
    return "'" + std::string(text);
  }
  return std::string(text);
}

/// RFC 4180 sections 2.6 and 2.7: quote where commas, quotes or line ends stand; double the quotes.
std::string quoted(const std::string& text) {
  if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
  std::string out = "\"";
  for (char c : text) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + "\"";
}

} // namespace

std::string csvLine(const std::vector<Cell>& cells) {
  std::string line;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (i > 0) line += ',';
    line += cells[i].number ? cells[i].text : quoted(guarded(cells[i].text));
  }
  return line + "\r\n";
}

} // namespace sump
