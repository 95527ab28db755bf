#pragma once
// The numbers with a unit, and the levels, that a text of a sheet prints; read with a scanner of
// the tests' own, so that what printed them does not also judge them.

#include "core/study/water_power.h"
#include "core/units/quantity.h"

#include <cmath>
#include <regex>
#include <string>
#include <vector>

namespace sump::testing {

/// What a printed number is; each is compared with numbers of its kind only.
enum class Printed {
  Level,  ///< a bare decimal: an elevation or a coordinate, m
  Length, ///< m
  Nominal,
  Volume,
  Flow,
  Velocity,
  Pressure,
  Mass,
  Force,
  Time,
  Share,
  Slope,
  Angle,
  Volts,
  Power,
};

struct PrintedNumber {
  Printed kind = Printed::Level;
  double value = 0;               ///< SI
  double half = 0;                ///< half of the last printed digit
  std::size_t at = 0, length = 0; ///< in the text
  double unit = 1;
  int decimals = 0;
};

namespace detail {

struct UnitWord {
  const char* word;
  Printed kind;
  double si;
};

/// Longer words before those that they begin with.
inline const std::vector<UnitWord>& unitWords() {
  constexpr double kGallon = kCubicMetresPerGallon, kFoot = kMetresPerFoot;
  constexpr double kYard3 = 27 * kFoot * kFoot * kFoot;
  static const std::vector<UnitWord> all = {
      {"ft of water", Printed::Length, kFoot},
      {"m of water", Printed::Length, 1},
      {"ft/s", Printed::Velocity, kFoot},
      {"m/s", Printed::Velocity, 1},
      {"in/ft", Printed::Slope, 1.0 / 12},
      {"ft\u00b3", Printed::Volume, kFoot * kFoot * kFoot},
      {"ft", Printed::Length, kFoot},
      {"yd\u00b3", Printed::Volume, kYard3},
      {"yd3", Printed::Volume, kYard3},
      {"m\u00b3", Printed::Volume, 1},
      {"m3", Printed::Volume, 1},
      {"gal", Printed::Volume, kGallon},
      {"gpm", Printed::Flow, kGallon / 60},
      {"L/min", Printed::Flow, 1e-3 / 60},
      {"L/s", Printed::Flow, 1e-3},
      {"psi", Printed::Pressure, kPascalsPerPsi},
      {"kPa", Printed::Pressure, 1000},
      {"lbf", Printed::Force, kNewtonsPerPound},
      {"lb", Printed::Mass, kKilogramsPerPound},
      {"kN", Printed::Force, 1000},
      {"kg", Printed::Mass, 1},
      {"mm", Printed::Length, 1e-3},
      {"kW", Printed::Power, 1000},
      {"hp", Printed::Power, kWattsPerHorsepower},
      {"min", Printed::Time, 60},
      {"V", Printed::Volts, 1},
      {"d", Printed::Time, 86400},
      {"h", Printed::Time, 3600},
      {"s", Printed::Time, 1},
      {"m", Printed::Length, 1},
      {"%", Printed::Share, 0.01},
      {"\u00b0", Printed::Angle, kPi / 180},
  };
  return all;
}

inline double plain(std::string digits) {
  std::erase(digits, ',');
  return std::stod(digits);
}

/// `1-1/2`, `3/4`, `2`, `6 1/2`
inline double mixed(const std::string& text) {
  double sum = 0;
  std::size_t from = 0;
  while (from < text.size()) {
    const std::size_t end = std::min(text.find_first_of("- ", from), text.size());
    const std::string part = text.substr(from, end - from);
    const std::size_t slash = part.find('/');
    if (!part.empty())
      sum += slash == std::string::npos
                 ? std::stod(part)
                 : std::stod(part.substr(0, slash)) / std::stod(part.substr(slash + 1));
    from = end + 1;
  }
  return sum;
}

inline int decimalsOf(const std::string& digits) {
  const std::size_t point = digits.find('.');
  return point == std::string::npos ? 0 : static_cast<int>(digits.size() - point - 1);
}

/// Takes every match out of the text, so that nothing of it is read twice.
template <class Each> void takeAll(std::string& text, const std::regex& pattern, Each each) {
  std::smatch match;
  std::size_t from = 0;
  while (std::regex_search(text.cbegin() + static_cast<std::ptrdiff_t>(from), text.cend(), match,
                           pattern)) {
    const std::size_t at = from + static_cast<std::size_t>(match.position(0));
    const auto length = static_cast<std::size_t>(match.length(0));
    each(match, at, length);
    text.replace(at, length, length, '_');
    from = at + length;
  }
}

} // namespace detail

/// Inches and feet-inches are printed to 1/16 or to 1/8, and which of both cannot be seen.
inline constexpr double kTapeHalf = kMetresPerInch / 16 * 1.001;

inline std::vector<PrintedNumber> printedNumbers(std::string text) {
  using namespace detail;
  std::vector<PrintedNumber> found;
  static const std::regex harmless(
      // dates, citations, sheet and run numbers, scales, wire gauges
      R"(\d{4}-\d\d-\d\d|\b(29 CFR|NEC|ASTM|ISO|API|TP-|UPC|IPC)[ -]?[\dA-Z][\d.A-Z-]*(\(\w\))*)"
      R"(|\b[A-Z]{1,3}-\d+(-\d+)?\b|\b(Sch|SDR|Schedule|no\.|ch\.|class|Class|HS-?)\s?\d+)"
      R"(|(\d+(/\d+)?" = )?1'-0"|1" = \d+'-0"|\b1:\d+\b|\d+ of \d+)");
  takeAll(text, harmless, [](const auto&, std::size_t, std::size_t) {});
  static const std::regex feetInches(R"((-?)(\d+)'-(\d+(?: \d+/\d+)?)\")");
  takeAll(text, feetInches, [&](const std::smatch& m, std::size_t at, std::size_t length) {
    const double feet = plain(m[2]) + mixed(m[3]) / 12;
    found.push_back({Printed::Length, (m[1].length() > 0 ? -1 : 1) * feet * kMetresPerFoot,
                     kTapeHalf, at, length, kMetresPerInch, 0});
  });
  static const std::regex fractionSlope(R"((\d+/\d+) in/ft)");
  takeAll(text, fractionSlope, [&](const std::smatch& m, std::size_t at, std::size_t length) {
    const double slope = mixed(m[1]) / 12; // printed so within 2 % of it
    found.push_back({Printed::Slope, slope, 0.0201 * slope, at, length, 1.0 / 12, 2});
  });
  static const std::regex size(R"((\d+(?:[- ]\d+/\d+)?|\d+/\d+)\")");
  takeAll(text, size, [&](const std::smatch& m, std::size_t at, std::size_t length) {
    found.push_back(
        {Printed::Nominal, mixed(m[1]) * kMetresPerInch, 1e-6, at, length, kMetresPerInch, 0});
  });
  static const std::vector<std::regex> patterns = [] {
    std::vector<std::regex> all;
    for (const UnitWord& unit : unitWords())
      all.emplace_back("(-?\\d[\\d,]*(?:\\.\\d+)?) ?" + std::string(unit.word) +
                       "(?![A-Za-z\\d/])");
    return all;
  }();
  for (std::size_t i = 0; i < patterns.size(); ++i) {
    const UnitWord& unit = unitWords()[i];
    if (text.find(unit.word) == std::string::npos) continue;
    takeAll(text, patterns[i], [&](const std::smatch& m, std::size_t at, std::size_t length) {
      const int decimals = decimalsOf(m[1]);
      found.push_back({unit.kind, plain(m[1]) * unit.si,
                       0.50001 * std::pow(10, -decimals) * unit.si, at, length, unit.si, decimals});
    });
  }
  return found;
}

/// The levels: bare decimals of as many places as elevations have in these units.
inline std::vector<PrintedNumber> printedLevels(std::string text, UnitSystem units) {
  const bool metric = units == UnitSystem::Metric;
  for (const PrintedNumber& number : printedNumbers(text))
    text.replace(number.at, number.length, number.length, '_');
  std::vector<PrintedNumber> found;
  static const std::regex two(R"((^|[^\d.\w'/-])(-?\d+\.\d\d)(?![\d.]*\d|\w))");
  static const std::regex three(R"((^|[^\d.\w'/-])(-?\d+\.\d\d\d)(?![\d.]*\d|\w))");
  const double unit = metric ? 1 : kMetresPerFoot;
  const int decimals = metric ? 3 : 2;
  detail::takeAll(text, metric ? three : two,
                  [&](const std::smatch& m, std::size_t at, std::size_t length) {
                    const auto before = static_cast<std::size_t>(m[1].length());
                    found.push_back({Printed::Level, std::stod(m[2]) * unit,
                                     0.50001 * std::pow(10, -decimals) * unit, at + before,
                                     length - before, unit, decimals});
                  });
  return found;
}

} // namespace sump::testing
