#include "core/units/parse.h"

#include "core/units/scanner.h"

#include <cmath>
#include <map>

namespace sump {

namespace {

/// Factors to SI by unit word.
using UnitTable = std::map<std::string, double, std::less<>>;

const UnitTable& lengthUnits() {
  static const UnitTable table = {{"'", kMetresPerFoot},
                                  {"ft", kMetresPerFoot},
                                  {"foot", kMetresPerFoot},
                                  {"feet", kMetresPerFoot},
                                  {"\"", kMetresPerInch},
                                  {"in", kMetresPerInch},
                                  {"in.", kMetresPerInch},
                                  {"inch", kMetresPerInch},
                                  {"inches", kMetresPerInch},
                                  {"m", 1.0},
                                  {"mm", 0.001},
                                  {"cm", 0.01}};
  return table;
}

const UnitTable& volumeUnits() {
  static const UnitTable table = {{"gal", kCubicMetresPerGallon},
                                  {"gallons", kCubicMetresPerGallon},
                                  {"m3", 1.0},
                                  {"l", 0.001},
                                  {"litres", 0.001},
                                  {"liters", 0.001},
                                  {"ft3", kMetresPerFoot * kMetresPerFoot * kMetresPerFoot}};
  return table;
}

const UnitTable& flowUnits() {
  static const UnitTable table = {{"gpm", kCubicMetresPerGallon / 60},
                                  {"l/s", 0.001},
                                  {"l/min", 0.001 / 60},
                                  {"lpm", 0.001 / 60},
                                  {"m3/h", 1.0 / 3600},
                                  {"m3/s", 1.0}};
  return table;
}

const UnitTable& pressureUnits() {
  static const UnitTable table = {
      {"psi", kPascalsPerPsi}, {"kpa", 1e3}, {"bar", 1e5}, {"mpa", 1e6}, {"pa", 1.0}};
  return table;
}

const UnitTable& slopeUnits() {
  static const UnitTable table = {{"in/ft", 1.0 / 12}, {"\"/ft", 1.0 / 12}, {"%", 0.01},
                                  {"mm/m", 0.001},     {"ft/ft", 1.0},      {"m/m", 1.0}};
  return table;
}

const UnitTable& angleUnits() {
  static const UnitTable table = {{"deg", kPi / 180}, {"degrees", kPi / 180}, {"rad", 1.0}};
  return table;
}

std::string quoted(std::string_view text) {
  return "'" + std::string(text) + "'";
}

struct Reading {
  std::optional<double> value;
  std::string error;
};

Reading wrong(std::string_view typed, const std::string& why, std::string_view examples) {
  return {std::nullopt, quoted(typed) + " " + why + "; type it like " + std::string(examples)};
}

/// `-` number [unit]; the whole text must be used.
Reading readSimple(std::string_view typed, const UnitTable& units, double bare,
                   std::string_view examples) {
  const std::string text = plainText(typed);
  if (text.empty()) return wrong(typed, "is empty", examples);
  Scanner scan(text);
  const double sign = scan.take('-') ? -1.0 : 1.0;
  const auto number = scan.mixed();
  if (!number) return wrong(typed, "does not start with a number", examples);
  double factor = bare;
  if (!scan.done()) {
    std::string unit = scan.word();
    if (unit == "\"") unit += scan.word(); // "/ft
    const auto found = units.find(unit);
    if (found == units.end()) return wrong(typed, "has no unit that is known here", examples);
    factor = found->second;
  }
  if (!scan.done()) return wrong(typed, "has something after the unit", examples);
  const double value = sign * *number * factor;
  if (!std::isfinite(value)) return wrong(typed, "is too large", examples);
  return {value, {}};
}

constexpr std::string_view kLengthExamples = "12'-6 1/2\", 12.54 ft, 150 in, 3.81 m or 3810 mm";

/// One more `number unit` part of a feet-and-inches text.
struct LengthPart {
  double value = 0;
  double factor = 0;
};

std::optional<LengthPart> readPart(Scanner& scan, double bare) {
  const auto number = scan.mixed();
  if (!number) return std::nullopt;
  if (scan.done()) return LengthPart{*number, bare};
  const auto unit = lengthUnits().find(scan.word());
  if (unit == lengthUnits().end()) return std::nullopt;
  return LengthPart{*number, unit->second};
}

Reading readLength(std::string_view typed, UnitSystem bare) {
  const std::string text = plainText(typed);
  if (text.empty()) return wrong(typed, "is empty", kLengthExamples);
  Scanner scan(text);
  const double sign = scan.take('-') ? -1.0 : 1.0;
  const auto first = readPart(scan, bare == UnitSystem::Metric ? 1.0 : kMetresPerFoot);
  if (!first) return wrong(typed, "is not a length", kLengthExamples);
  double value = first->value * first->factor;
  if (!scan.done()) {
    if (first->factor != kMetresPerFoot) {
      return wrong(typed, "has something after the unit", kLengthExamples);
    }
    scan.take('-');
    const auto second = readPart(scan, kMetresPerInch);
    if (!second || second->factor != kMetresPerInch) {
      return wrong(typed, "should have inches after the feet", kLengthExamples);
    }
    if (second->value >= 12) {
      return wrong(typed, "has 12 or more inches after the feet", kLengthExamples);
    }
    value += second->value * second->factor;
  }
  if (!scan.done()) return wrong(typed, "has something after the inches", kLengthExamples);
  if (!std::isfinite(value)) return wrong(typed, "is too large", kLengthExamples);
  return {sign * value, {}};
}

constexpr std::string_view kSlopeExamples = "1/4 in/ft, 2 %, 1:50 or 20 mm/m";

/// `1:50`, rise first.
std::optional<Reading> readRatio(std::string_view typed) {
  const std::string text = plainText(typed);
  Scanner scan(text);
  const double sign = scan.take('-') ? -1.0 : 1.0;
  const auto rise = scan.mixed();
  if (!rise || !scan.take(':')) return std::nullopt;
  const auto run = scan.mixed();
  if (!run || *run == 0 || !scan.done()) {
    return wrong(typed, "is not a ratio of rise to run", kSlopeExamples);
  }
  return Reading{sign * *rise / *run, {}};
}

template <class Q> Parsed<Q> as(Reading reading) {
  if (!reading.value) return {std::nullopt, std::move(reading.error)};
  return {Q::from_value(*reading.value), {}};
}

} // namespace

Parsed<Length> parseLength(std::string_view text, UnitSystem bare) {
  return as<Length>(readLength(text, bare));
}

Parsed<Volume> parseVolume(std::string_view text, UnitSystem bare) {
  return as<Volume>(readSimple(text, volumeUnits(),
                               bare == UnitSystem::Metric ? 1.0 : kCubicMetresPerGallon,
                               "3000 gal, 11.4 m3 or 11400 L"));
}

Parsed<Flow> parseFlow(std::string_view text, UnitSystem bare) {
  return as<Flow>(readSimple(text, flowUnits(),
                             bare == UnitSystem::Metric ? 0.001 / 60 : kCubicMetresPerGallon / 60,
                             "45 gpm, 2.8 L/s or 170 L/min"));
}

Parsed<Pressure> parsePressure(std::string_view text, UnitSystem bare) {
  return as<Pressure>(readSimple(text, pressureUnits(),
                                 bare == UnitSystem::Metric ? 1e3 : kPascalsPerPsi,
                                 "40 psi, 280 kPa or 2.8 bar"));
}

Parsed<double> parseSlope(std::string_view text, UnitSystem bare) {
  if (const auto ratio = readRatio(text)) return {ratio->value, ratio->error};
  const Reading reading =
      readSimple(text, slopeUnits(), bare == UnitSystem::Metric ? 0.01 : 1.0 / 12, kSlopeExamples);
  return {reading.value, reading.error};
}

Parsed<Angle> parseAngle(std::string_view text) {
  return as<Angle>(readSimple(text, angleUnits(), kPi / 180, "45, 22.5 or -30 deg"));
}

} // namespace sump
