#include "core/exchange/change_words.h"

#include "core/units/temperature.h"

#include <algorithm>
#include <array>
#include <cctype>

namespace sump {

namespace {

template <std::size_t N>
bool isOneOf(const std::array<std::string_view, N>& words, std::string_view word) {
  return std::ranges::find(words, word) != words.end();
}

} // namespace

std::string fieldWords(std::string_view key) {
  if (key == "vertices") return "corners";
  if (key == "from") return "start";
  if (key == "to") return "end";
  if (key == "at") return "place";
  if (key == "legEnd") return "end of down leg";
  if (key == "along") return "place along the leg";
  std::string text;
  for (const char c : key) {
    if (std::isupper(static_cast<unsigned char>(c)) != 0) text += ' ';
    text += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  return text;
}

bool isElevation(std::string_view key) {
  static constexpr std::array<std::string_view, 14> kKeys = {
      "floor",       "footing",       "roof",           "elevation",         "rim",
      "invert",      "legEnd",        "outletEnd",      "bracketFoot",       "outletInvert",
      "groundwater", "groundDefault", "inletElevation", "upstreamManholeRim"};
  return isOneOf(kKeys, key);
}

ChangeKind lengthKind(std::string_view key) {
  if (isElevation(key)) return ChangeKind::Level;
  return key == "offset" ? ChangeKind::Moved : ChangeKind::Resized;
}

ChangeKind textKind(std::string_view key) {
  static constexpr std::array<std::string_view, 5> kLinks = {"target", "object", "wash", "run",
                                                             "manway"};
  if (key == "name") return ChangeKind::Renamed;
  return isOneOf(kLinks, key) ? ChangeKind::Reconnected : ChangeKind::Specified;
}

std::string printedValue(std::string_view key, Length v, UnitSystem units) {
  return isElevation(key) ? printElevation(v, units) : printLength(v, units);
}
std::string printedValue(std::string_view, Angle v, UnitSystem) {
  return printAngle(v);
}
std::string printedValue(std::string_view, Flow v, UnitSystem units) {
  return printFlow(v, units);
}
std::string printedValue(std::string_view, Pressure v, UnitSystem units) {
  return printPressure(v, units);
}
std::string printedValue(std::string_view, Volume v, UnitSystem units) {
  return printVolume(v, units);
}
std::string printedValue(std::string_view, Mass v, UnitSystem units) {
  return printMass(v, units);
}
std::string printedValue(std::string_view, Temperature v, UnitSystem units) {
  return printTemperature(v, units);
}
std::string printedValue(std::string_view, double v, UnitSystem) {
  return numberText(v);
}
std::string printedValue(std::string_view, int v, UnitSystem) {
  return std::to_string(v);
}
std::string printedValue(std::string_view, bool v, UnitSystem) {
  return v ? "yes" : "no";
}
std::string printedValue(std::string_view, const std::string& v, UnitSystem) {
  return v.empty() ? kNotGiven : v;
}
std::string printedValue(std::string_view, const Base64& v, UnitSystem) {
  return v.text.empty() ? "no picture" : "a picture of " + std::to_string(v.text.size()) + " bytes";
}

std::string printedPoint(Point2 p, bool local, UnitSystem units) {
  return (local ? "along " : "E ") + printLength(metres(p.x), units) +
         (local ? ", across " : ", N ") + printLength(metres(p.y), units);
}

std::string printedMove(Point2 by, bool bearing, UnitSystem units) {
  const std::string far = printLength(metres(norm(by)), units);
  if (!bearing || norm(by) == 0) return far;
  const std::string north = by.y < 0 ? "S" : "N", east = by.x < 0 ? "W" : "E";
  const std::string angle =
      printAngle(radians(std::atan2(std::abs(by.x), std::abs(by.y)))); // from north or south
  if (angle == printAngle(degrees(0))) return far + " toward " + north;
  if (angle == printAngle(degrees(90))) return far + " toward " + east;
  return far + " toward " + north + " " + angle + " " + east;
}

std::string printedStep(std::string_view key, Length by, UnitSystem units) {
  const bool down = inMetres(by) < 0;
  return (down ? "-" : "+") + printedValue(key, down ? -by : by, units);
}

} // namespace sump
