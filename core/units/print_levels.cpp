#include "core/units/print_levels.h"

#include <cmath>

namespace sump {

Length printedRise(Length from, Length to, UnitSystem units) {
  const double step = units == UnitSystem::Metric ? 0.001 : 0.01 * kMetresPerFoot;
  const auto printed = [step](Length level) { return std::round(inMetres(level) / step) * step; };
  return metres(printed(to) - printed(from));
}

std::string printSize(Length v, UnitSystem units) {
  return units == UnitSystem::Metric ? printShort(v, units) : printLength(v, units);
}

} // namespace sump
