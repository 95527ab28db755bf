#include "core/units/print_levels.h"

#include <cmath>

namespace sump {

namespace {

/// To the step that printElevation writes.
Length asWritten(Length level, UnitSystem units) {
  if (units == UnitSystem::Metric) return millimetres(std::round(inMillimetres(level)));
  return feet(std::round(inFeet(level) * 100) / 100);
}

} // namespace

std::string printSize(Length v, UnitSystem units) {
  return units == UnitSystem::Metric ? printShort(v, units) : printLength(v, units);
}

Length heightBetween(Length low, Length high, UnitSystem units) {
  return asWritten(high, units) - asWritten(low, units);
}

std::string printHeight(Length low, Length high, UnitSystem units) {
  return printSize(heightBetween(low, high, units), units);
}

} // namespace sump
