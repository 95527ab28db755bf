#include "core/study/calculation_print.h"

#include "core/units/earth.h"
#include "core/units/print.h"
#include "core/units/temperature.h"

#include <array>
#include <charconv>
#include <cmath>

namespace sump {

namespace {

/// That many significant figures, and never fewer than the whole number has. Not by printf, which
/// writes the locale's decimal comma.
std::string figures(double v, int count) {
  if (std::abs(v) >= std::pow(10, count) && std::abs(v) < 1e15) return fixed(v, 0);
  std::array<char, 40> buffer{};
  char* const end = buffer.data() + buffer.size();
  return {buffer.data(),
          std::to_chars(buffer.data(), end, v, std::chars_format::general, count).ptr};
}

/// With commas between thousands, as US figures are read.
std::string withCommas(double v, const std::string& digits) {
  if (std::abs(v) < 1000 || digits.find('e') != std::string::npos) return digits;
  const std::size_t point = digits.find('.');
  return grouped(v, point == std::string::npos ? 0 : static_cast<int>(digits.size() - point - 1));
}

/// `m3/s` with its exponents raised, as people read it.
std::string raised(std::string unit) {
  for (const auto& [digit, above] : {std::pair{'2', "\u00B2"}, std::pair{'3', "\u00B3"}}) {
    const std::size_t at = unit.find(digit);
    if (at != std::string::npos) unit.replace(at, 1, above);
  }
  return unit;
}

/// How a kind is written: what SI is divided by, and the unit.
struct Scale {
  double us = 1;
  const char* usUnit = "";
  double metric = 1;
  const char* metricUnit = "";
};

/// Factors: NIST SP 811, app. B (exact definitions in units/quantity.h).
Scale scaleOf(QuantityKind kind) {
  constexpr double kFoot = kMetresPerFoot, kGallon = kCubicMetresPerGallon;
  switch (kind) {
  case QuantityKind::Length:
    return {kFoot, "ft", 1, "m"};
  case QuantityKind::HeadOfWater:
    return {kFoot, "ft of water", 1, "m of water"};
  case QuantityKind::Area:
    return {kFoot * kFoot, "ft2", 1, "m2"};
  case QuantityKind::Volume:
    return {kGallon, "gal", 1, "m3"};
  case QuantityKind::SolidVolume:
    return {kCubicMetresPerCubicYard, "yd3", 1, "m3"};
  case QuantityKind::DisplacedVolume:
    return {kFoot * kFoot * kFoot, "ft3", 1, "m3"};
  case QuantityKind::Flow:
    return {kGallon / 60, "gpm", 1e-3, "L/s"};
  case QuantityKind::Velocity:
    return {kFoot, "ft/s", 1, "m/s"};
  case QuantityKind::Pressure:
    return {kPascalsPerPsi, "psi", 1000, "kPa"};
  case QuantityKind::Mass:
    return {kKilogramsPerPound, "lb", 1, "kg"};
  case QuantityKind::Force:
    return {kNewtonsPerPound, "lbf", 1000, "kN"};
  case QuantityKind::SmallLength:
    return {1e-6, "um", 1e-6, "um"};
  case QuantityKind::Density:
    return {kKilogramsPerPound / (kFoot * kFoot * kFoot), "lb/ft3", 1, "kg/m3"};
  case QuantityKind::KinematicViscosity:
    return {kFoot * kFoot, "ft2/s", 1, "m2/s"};
  case QuantityKind::DynamicViscosity:
    return {1, "Pa s", 1, "Pa s"};
  default:
    return {};
  }
}

std::string timeText(double seconds, int count) {
  if (std::abs(seconds) < 120) return figures(seconds, count) + " s";
  if (std::abs(seconds) < 7200) return figures(seconds / 60, count) + " min";
  if (std::abs(seconds) < 172'800) return figures(seconds / 3600, count) + " h";
  return figures(seconds / 86'400, count) + " d";
}

std::string resultText(const Calculation& c, UnitSystem units) {
  return c.decided ? printResult(c, units) : "cannot be decided: needs " + c.needs;
}

std::string oneText(const Calculation& c, UnitSystem units) {
  std::string text = c.title + (c.object.empty() ? "" : " (" + c.object + ")") + ": " +
                     resultText(c, units) + "\n  " + c.formula + "\n";
  for (const CalculationInput& in : c.inputs) {
    text += "  " + in.symbol + " = " + printInput(in, units) + "  " + in.name +
            (in.from.empty() ? "" : " [" + in.from + "]") + "\n";
  }
  for (const std::string& step : c.steps)
    text += "  " + step + "\n";
  return text + "  source: " + c.source + "\n";
}

} // namespace

std::string printQuantity(double si, QuantityKind kind, UnitSystem units, int count) {
  if (kind == QuantityKind::Temperature) return printTemperature(kelvin(si), units);
  if (kind == QuantityKind::Slope) return printSlope(si, units);
  if (kind == QuantityKind::Angle) return printAngle(radians(si));
  if (kind == QuantityKind::Share) return figures(si * 100, count) + " %";
  if (kind == QuantityKind::Time) return timeText(si, count);
  const Scale scale = scaleOf(kind);
  const bool metric = units == UnitSystem::Metric;
  const std::string unit = metric ? scale.metricUnit : scale.usUnit;
  const double value = si / (metric ? scale.metric : scale.us);
  const std::string digits = figures(value, count);
  return (metric ? digits : withCommas(value, digits)) + (unit.empty() ? "" : " " + raised(unit));
}

std::string printResult(const Calculation& c, UnitSystem units, int count) {
  return printQuantity(c.result, c.kind, units, count);
}

std::string printInput(const CalculationInput& input, UnitSystem units) {
  return printQuantity(input.value, input.kind, units);
}

std::string siUnit(QuantityKind kind) {
  switch (kind) {
  case QuantityKind::Flow:
    return "m3/s";
  case QuantityKind::Pressure:
    return "Pa";
  case QuantityKind::Force:
    return "N";
  case QuantityKind::SmallLength:
  case QuantityKind::HeadOfWater:
    return "m";
  case QuantityKind::Time:
    return "s";
  case QuantityKind::Temperature:
    return "K";
  case QuantityKind::Angle:
    return "rad";
  default:
    return scaleOf(kind).metricUnit;
  }
}

std::string printSi(double si, QuantityKind kind) {
  const std::string unit = siUnit(kind);
  return figures(si, 7) + (unit.empty() ? unit : " " + raised(unit));
}

std::string calculationText(const std::vector<Calculation>& calculations, UnitSystem units) {
  std::string text, section;
  for (const Calculation& c : calculations) {
    if (c.section != section) {
      section = c.section;
      text += (text.empty() ? "" : "\n") + section + "\n" + std::string(section.size(), '=') + "\n";
    }
    text += "\n" + oneText(c, units);
  }
  return text;
}

} // namespace sump
