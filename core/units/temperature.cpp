#include "core/units/temperature.h"

#include "core/units/print.h"
#include "core/units/scanner.h"

#include <cmath>

namespace sump {

namespace {

/// What plainText() makes of the degree sign.
constexpr std::string_view kDegreeSign = "deg";

Parsed<Temperature> wrong(std::string_view text) {
  return {std::nullopt, "\"" + std::string(text) + "\" is no temperature; type 68 F or 20 C"};
}

/// The scale's letter behind the number, or the project's own; 0 for anything else.
char scaleOf(Scanner& scan, UnitSystem bare) {
  if (scan.done()) return bare == UnitSystem::Metric ? 'c' : 'f';
  std::string word = scan.word();
  if (word.starts_with(kDegreeSign)) {
    word.erase(0, kDegreeSign.size());
    if (word.empty()) return scaleOf(scan, bare);
  }
  if (word != "c" && word != "f" && word != "k") return 0;
  return word[0];
}

} // namespace

Parsed<Temperature> parseTemperature(std::string_view text, UnitSystem bare) {
  const std::string plain = plainText(text);
  Scanner scan(plain);
  const double sign = scan.take('-') ? -1.0 : 1.0;
  const auto number = scan.mixed();
  if (!number) return wrong(text);
  const char scale = scaleOf(scan, bare);
  if (scale == 0 || !scan.done()) return wrong(text);
  const double degrees = sign * *number;
  const Temperature t = scale == 'c'   ? celsius(degrees)
                        : scale == 'f' ? fahrenheit(degrees)
                                       : kelvin(degrees);
  if (!std::isfinite(t.value()) || t.value() < 0) return wrong(text);
  return {t, {}};
}

std::string printTemperature(Temperature v, UnitSystem units) {
  const bool metric = units == UnitSystem::Metric;
  std::string text = fixed(metric ? inCelsius(v) : inFahrenheit(v), 1);
  if (text.ends_with(".0")) text.resize(text.size() - 2);
  return text + (metric ? " \u00B0C" : " \u00B0F");
}

} // namespace sump
