#include "core/units/earth.h"

#include "core/units/print.h"

namespace sump {

std::string earthText(Volume v, UnitSystem units) {
  if (units == UnitSystem::Metric) return printVolume(v, units);
  return grouped(inCubicYards(v), 1) + " yd\u00B3";
}

} // namespace sump
