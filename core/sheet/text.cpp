// Text metrics from the table of the bundled font, so that pages are laid out without a display.

#include "core/catalog/embedded.h"
#include "core/sheet/page.h"

#include <nlohmann/json.hpp>

#include <unordered_map>

namespace sump {

namespace {

struct FontTable {
  double capHeight = 1; ///< font units
  std::unordered_map<char32_t, double> widths;
};

FontTable readTable(const nlohmann::json& json) {
  FontTable fontTable;
  fontTable.capHeight = json.at("capHeight").get<double>();
  for (const auto& [code, width] : json.at("widths").items()) {
    fontTable.widths[static_cast<char32_t>(std::stoul(code))] = width.get<double>();
  }
  return fontTable;
}

const FontTable& fontTable(bool bold) {
  static const nlohmann::json json = nlohmann::json::parse(embeddedText("fonts/widths.json"));
  static const FontTable regular = readTable(json.at("regular"));
  static const FontTable heavy = readTable(json.at("bold"));
  return bold ? heavy : regular;
}

/// The next code point of well-formed UTF-8; a stray byte stands for itself.
char32_t nextCode(std::string_view utf8, std::size_t& at) {
  const auto byte = [&](std::size_t i) {
    return i < utf8.size() ? static_cast<unsigned char>(utf8[i]) : 0u;
  };
  const unsigned lead = byte(at);
  const std::size_t more = lead >= 0xF0 ? 3 : lead >= 0xE0 ? 2 : lead >= 0xC0 ? 1 : 0;
  char32_t code = more == 0 ? lead : lead & (0x3Fu >> more);
  for (std::size_t i = 1; i <= more; ++i)
    code = (code << 6) | (byte(at + i) & 0x3Fu);
  at += more + 1;
  return code;
}

} // namespace

double textWidth(std::string_view utf8, double height, bool bold) {
  const FontTable& font = fontTable(bold);
  const double wide = font.widths.at(U'W'); // for a character that the table lacks
  double units = 0;
  for (std::size_t i = 0; i < utf8.size();) {
    const auto found = font.widths.find(nextCode(utf8, i));
    units += found == font.widths.end() ? wide : found->second;
  }
  return units * height / font.capHeight;
}

// Brackets rise to 1.04 capital heights and g, y, p fall to 0.29 in this face.
Ring textBox(const PageText& text) {
  const double width = textWidth(text.text, text.height, text.bold);
  const double left = text.align == Align::Left     ? 0
                      : text.align == Align::Centre ? -width / 2
                                                    : -width;
  const double c = std::cos(text.angle * kPi / 180), s = std::sin(text.angle * kPi / 180);
  const auto corner = [&](double x, double up) { // y is down on the paper
    return Point2{text.at.x + c * x - s * up, text.at.y - s * x - c * up};
  };
  const double low = -0.3 * text.height, high = 1.1 * text.height;
  return {corner(left, low), corner(left + width, low), corner(left + width, high),
          corner(left, high)};
}

} // namespace sump
