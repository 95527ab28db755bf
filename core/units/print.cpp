#include "core/units/print.h"

#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <numeric>

namespace sump {

namespace {

/// 1/16 in steps and the like: the whole and the fraction of a rounded count of 1/denominator.
struct Fraction {
  std::int64_t whole = 0;
  std::int64_t numerator = 0;
  std::int64_t denominator = 1;
};

Fraction reduced(std::int64_t steps, int denominator) {
  Fraction f{steps / denominator, steps % denominator, denominator};
  const std::int64_t divisor = std::gcd(f.numerator, f.denominator);
  f.numerator /= divisor;
  f.denominator /= divisor;
  return f;
}

/// Beyond this many inches (1.6 million km) a count of fractions no longer fits its type.
constexpr double kMostInches = 1e14;

/// False for what no drawing holds: such a length is written in plain decimals, never wrapped.
bool hasFractions(Length v) {
  return std::abs(inInches(v)) < kMostInches; // false for NaN too
}

/// Half away from zero, of the magnitude. std::round does just that.
std::int64_t stepsOf(double inches, int denominator) {
  return static_cast<std::int64_t>(std::llround(std::abs(inches) * denominator));
}

std::string inchText(const Fraction& f) {
  std::string text = std::to_string(f.whole);
  if (f.numerator != 0) {
    text += " " + std::to_string(f.numerator) + "/" + std::to_string(f.denominator);
  }
  return text + "\"";
}

std::string trimmed(double v, int decimals) {
  std::string text = fixed(v, decimals);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

} // namespace

std::string fixed(double v, int decimals) {
  std::array<char, 400> buffer{};
  const double scale = std::pow(10.0, decimals);
  // Rounded here because to_chars rounds the binary value half to even: 0.125 would give 0.12.
  double rounded = std::abs(v) < 1e15 / scale ? std::round(v * scale) / scale : v;
  if (rounded == 0) rounded = 0; // no "-0"
  const auto result = std::to_chars(buffer.data(), buffer.data() + buffer.size(), rounded,
                                    std::chars_format::fixed, decimals);
  return {buffer.data(), result.ptr};
}

std::string grouped(double v, int decimals) {
  std::string text = fixed(v, decimals);
  const std::size_t start = text.starts_with('-') ? 1 : 0;
  std::size_t point = text.find('.');
  if (point == std::string::npos) point = text.size();
  for (std::size_t i = point; i > start + 3; i -= 3)
    text.insert(i - 3, ",");
  return text;
}

std::string feetInches(Length v, int denominator) {
  if (!hasFractions(v)) return fixed(inFeet(v), 0) + "'";
  const std::int64_t steps = stepsOf(inInches(v), denominator);
  const std::int64_t perFoot = 12 * denominator;
  const std::string sign = inMetres(v) < 0 && steps != 0 ? "-" : "";
  return sign + std::to_string(steps / perFoot) + "'-" +
         inchText(reduced(steps % perFoot, denominator));
}

std::string inchesOnly(Length v, int denominator) {
  if (!hasFractions(v)) return fixed(inInches(v), 0) + "\"";
  const std::int64_t steps = stepsOf(inInches(v), denominator);
  const Fraction f = reduced(steps, denominator);
  const std::string sign = inMetres(v) < 0 && steps != 0 ? "-" : "";
  if (f.whole == 0 && f.numerator != 0) {
    return sign + std::to_string(f.numerator) + "/" + std::to_string(f.denominator) + "\"";
  }
  return sign + inchText(f);
}

std::string printLength(Length v, UnitSystem units) {
  return units == UnitSystem::Metric ? fixed(inMetres(v), 3) + " m" : feetInches(v, 16);
}

std::string printShort(Length v, UnitSystem units) {
  return units == UnitSystem::Metric ? fixed(inMillimetres(v), 0) + " mm" : feetInches(v, 8);
}

std::string printElevation(Length v, UnitSystem units) {
  return units == UnitSystem::Metric ? fixed(inMetres(v), 3) : fixed(inFeet(v), 2);
}

std::string printRunLength(Length v, UnitSystem units) {
  return units == UnitSystem::Metric ? fixed(inMetres(v), 2) + " m" : fixed(inFeet(v), 1) + " ft";
}

std::string printVolume(Volume v, UnitSystem units) {
  return units == UnitSystem::Metric ? fixed(v.value(), 2) + " m\u00B3"
                                     : grouped(inGallons(v), 0) + " gal";
}

std::string printPartVolume(Volume v, UnitSystem units) {
  return units == UnitSystem::Metric ? fixed(v.value(), 3) + " m\u00B3"
                                     : grouped(inGallons(v), 1) + " gal";
}

std::string printFlow(Flow v, UnitSystem units) {
  return units == UnitSystem::Metric ? trimmed(v.value() * 60000.0, 1) + " L/min"
                                     : trimmed(inGallonsPerMinute(v), 1) + " gpm";
}

std::string printPressure(Pressure v, UnitSystem units) {
  return units == UnitSystem::Metric ? fixed(v.value() / 1000.0, 0) + " kPa"
                                     : trimmed(inPsi(v), 1) + " psi";
}

std::string printMass(Mass v, UnitSystem units) {
  if (units == UnitSystem::Metric) return fixed(v.value(), 0) + " kg";
  return grouped(inPounds(v), 0) + " lb";
}

std::string printSlope(double riseOverRun, UnitSystem units) {
  if (units == UnitSystem::Metric) return fixed(riseOverRun * 100, 2) + " %";
  const double inchesPerFoot = std::abs(riseOverRun) * 12;
  const double sixteenths = std::round(inchesPerFoot * 16);
  const std::string sign = riseOverRun < 0 ? "-" : "";
  if (inchesPerFoot < 0.005) return "0.00 in/ft"; // never "-0.00"
  if (sixteenths > 0 && std::abs(inchesPerFoot * 16 - sixteenths) <= 0.02 * sixteenths) {
    std::string text = inchesOnly(inches(sixteenths / 16), 16);
    text.pop_back(); // the inch mark
    return sign + text + " in/ft";
  }
  return sign + fixed(inchesPerFoot, 2) + " in/ft";
}

std::string printAngle(Angle v) {
  return trimmed(inDegrees(v), 1) + "\u00B0";
}

} // namespace sump
