#include "core/units/parse.h"

#include "core/units/scanner.h"

#include <cmath>
#include <map>

namespace sump {

namespace {

struct Unit {
  double factor = 1; ///< to SI
  /// How a lone `1,234` is meant: thousands with US units, as our own `2,992 gal` is printed, and
  /// a decimal comma with metric ones.
  Groups groups = Groups::Certain;
};
using UnitTable = std::map<std::string, Unit, std::less<>>;

constexpr Unit customary(double factor) {
  return {factor, Groups::All};
}

const UnitTable& lengthUnits() {
  constexpr Unit foot = customary(kMetresPerFoot), inch = customary(kMetresPerInch);
  static const UnitTable table = {{"'", foot},    {"ft", foot},     {"ft.", foot}, {"foot", foot},
                                  {"feet", foot}, {"\"", inch},     {"in", inch},  {"in.", inch},
                                  {"inch", inch}, {"inches", inch}, {"m", {1.0}},  {"mm", {1e-3}},
                                  {"cm", {1e-2}}};
  return table;
}

const UnitTable& volumeUnits() {
  constexpr Unit gallon = customary(kCubicMetresPerGallon), litre = {1e-3};
  static const UnitTable table = {
      {"gal", gallon},
      {"gallons", gallon},
      {"m3", {1.0}},
      {"l", litre},
      {"litres", litre},
      {"liters", litre},
      {"ft3", customary(kMetresPerFoot * kMetresPerFoot * kMetresPerFoot)}};
  return table;
}

const UnitTable& flowUnits() {
  static const UnitTable table = {{"gpm", customary(kCubicMetresPerGallon / 60)},
                                  {"l/s", {1e-3}},
                                  {"l/min", {1e-3 / 60}},
                                  {"lpm", {1e-3 / 60}},
                                  {"m3/h", {1.0 / 3600}},
                                  {"m3/s", {1.0}}};
  return table;
}

const UnitTable& pressureUnits() {
  static const UnitTable table = {{"psi", customary(kPascalsPerPsi)},
                                  {"kpa", {1e3}},
                                  {"bar", {1e5}},
                                  {"mpa", {1e6}},
                                  {"pa", {1.0}}};
  return table;
}

const UnitTable& massUnits() {
  constexpr Unit pound = customary(kKilogramsPerPound);
  static const UnitTable table = {
      {"lb", pound}, {"lbs", pound}, {"pounds", pound}, {"kg", {1.0}}, {"t", {1e3}}};
  return table;
}

const UnitTable& slopeUnits() {
  static const UnitTable table = {{"in/ft", {1.0 / 12}}, {"\"/ft", {1.0 / 12}}, {"%", {0.01}},
                                  {"mm/m", {0.001}},     {"ft/ft", {1.0}},      {"m/m", {1.0}}};
  return table;
}

const UnitTable& angleUnits() {
  static const UnitTable table = {{"deg", {kPi / 180}}, {"degrees", {kPi / 180}}, {"rad", {1.0}}};
  return table;
}

/// The typed text for an error sentence, cut short between characters when someone pasted a page.
std::string quoted(std::string_view text) {
  constexpr std::size_t most = 60;
  if (text.size() <= most) return "'" + std::string(text) + "'";
  std::size_t end = most;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) // inside a UTF-8 char
    --end;
  return "'" + std::string(text.substr(0, end)) + "...'";
}

struct Reading {
  std::optional<double> value;
  std::string error;
  Groups groups = Groups::Certain; ///< as the unit that was found reads a lone `1,234`
};

/// What was typed and what the sentence about it should recommend.
struct Typed {
  std::string_view text;
  std::string_view examples;
  Reading wrong(const std::string& why) const {
    return {std::nullopt, quoted(text) + " " + why + "; type it like " + std::string(examples)};
  }
  Reading right(double value, Groups groups) const {
    if (!std::isfinite(value)) return wrong("is too large");
    return {value, {}, groups};
  }
};

/// Reads once to learn the unit and, where that unit takes commas for thousands, once more so.
template <class Read> Reading readWithGroups(const Typed& typed, Read read) {
  const std::string text = plainText(typed.text);
  if (text.empty()) return typed.wrong("is empty");
  const Reading first = read(withoutGroups(text, Groups::Certain));
  if (!first.value || first.groups == Groups::Certain) return first;
  return read(withoutGroups(text, Groups::All));
}

/// `-` number [unit]; the whole text must be used.
Reading readSimple(const Typed& typed, const UnitTable& units, Unit bare) {
  return readWithGroups(typed, [&](const std::string& text) {
    Scanner scan(text);
    const double sign = scan.take('-') ? -1.0 : 1.0;
    const auto number = scan.mixed();
    if (!number) return typed.wrong("does not start with a number");
    Unit unit = bare;
    if (!scan.done()) {
      std::string word = scan.word();
      if (word == "\"") word += scan.word(); // "/ft
      const auto found = units.find(word);
      if (found == units.end()) return typed.wrong("has no unit that is known here");
      unit = found->second;
    }
    if (!scan.done()) return typed.wrong("has something after the unit");
    return typed.right(sign * *number * unit.factor, unit.groups);
  });
}

constexpr std::string_view kLengthExamples = "12'-6 1/2\", 12.54 ft, 150 in, 3.81 m or 3810 mm";

/// One more `number unit` part of a feet-and-inches text.
struct LengthPart {
  double value = 0;
  Unit unit;
};

std::optional<LengthPart> readPart(Scanner& scan, Unit bare) {
  const auto number = scan.mixed();
  if (!number) return std::nullopt;
  if (scan.done()) return LengthPart{*number, bare};
  const auto unit = lengthUnits().find(scan.word());
  if (unit == lengthUnits().end()) return std::nullopt;
  return LengthPart{*number, unit->second};
}

/// The inches after the feet, in metres.
Reading readInches(const Typed& typed, Scanner& scan) {
  scan.take('-');
  const auto part = readPart(scan, customary(kMetresPerInch));
  if (!part || part->unit.factor != kMetresPerInch) {
    return typed.wrong("should have inches after the feet");
  }
  if (part->value >= 12) return typed.wrong("has 12 or more inches after the feet");
  if (!scan.done()) return typed.wrong("has something after the inches");
  return typed.right(part->value * kMetresPerInch, Groups::All);
}

Reading readLength(const Typed& typed, Unit bare) {
  return readWithGroups(typed, [&](const std::string& text) {
    Scanner scan(text);
    const double sign = scan.take('-') ? -1.0 : 1.0;
    const auto first = readPart(scan, bare);
    if (!first) return typed.wrong("is not a length");
    const double value = first->value * first->unit.factor;
    if (scan.done()) return typed.right(sign * value, first->unit.groups);
    if (first->unit.factor != kMetresPerFoot) return typed.wrong("has something after the unit");
    const Reading rest = readInches(typed, scan);
    return rest.value ? typed.right(sign * (value + *rest.value), Groups::All) : rest;
  });
}

/// `1:50`, rise first; nothing when there is no colon after a number.
std::optional<Reading> readRatio(const Typed& typed) {
  const std::string text = plainText(typed.text);
  Scanner scan(text);
  const double sign = scan.take('-') ? -1.0 : 1.0;
  const auto rise = scan.mixed();
  if (!rise || !scan.take(':')) return std::nullopt;
  const auto run = scan.mixed();
  if (!run || *run == 0 || !scan.done()) return typed.wrong("is not a ratio of rise to run");
  return typed.right(sign * *rise / *run, Groups::Certain);
}

template <class Q> Parsed<Q> as(Reading reading) {
  if (!reading.value) return {std::nullopt, std::move(reading.error)};
  return {Q::from_value(*reading.value), {}};
}

} // namespace

Parsed<Length> parseLength(std::string_view text, UnitSystem bare) {
  return as<Length>(readLength({text, kLengthExamples},
                               bare == UnitSystem::Metric ? Unit{1.0} : customary(kMetresPerFoot)));
}

Parsed<Volume> parseVolume(std::string_view text, UnitSystem bare) {
  return as<Volume>(
      readSimple({text, "3000 gal, 11.4 m3 or 11400 L"}, volumeUnits(),
                 bare == UnitSystem::Metric ? Unit{1.0} : customary(kCubicMetresPerGallon)));
}

Parsed<Flow> parseFlow(std::string_view text, UnitSystem bare) {
  return as<Flow>(readSimple({text, "45 gpm, 2.8 L/s or 170 L/min"}, flowUnits(),
                             bare == UnitSystem::Metric ? Unit{1e-3 / 60}
                                                        : customary(kCubicMetresPerGallon / 60)));
}

Parsed<Pressure> parsePressure(std::string_view text, UnitSystem bare) {
  return as<Pressure>(
      readSimple({text, "40 psi, 280 kPa or 2.8 bar"}, pressureUnits(),
                 bare == UnitSystem::Metric ? Unit{1e3} : customary(kPascalsPerPsi)));
}

Parsed<Mass> parseMass(std::string_view text, UnitSystem bare) {
  return as<Mass>(
      readSimple({text, "12,500 lb, 5670 kg or 5.7 t"}, massUnits(),
                 bare == UnitSystem::Metric ? Unit{1.0} : customary(kKilogramsPerPound)));
}

Parsed<double> parseSlope(std::string_view text, UnitSystem bare) {
  const Typed typed{text, "1/4 in/ft, 2 %, 1:50 or 20 mm/m"};
  const auto ratio = readRatio(typed);
  const Reading reading =
      ratio ? *ratio
            : readSimple(typed, slopeUnits(), {bare == UnitSystem::Metric ? 0.01 : 1.0 / 12});
  return {reading.value, reading.error};
}

Parsed<Angle> parseAngle(std::string_view text) {
  return as<Angle>(readSimple({text, "45, 22.5 or -30 deg"}, angleUnits(), {kPi / 180}));
}

} // namespace sump
