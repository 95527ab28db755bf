#include "core/units/print_levels.h"

namespace sump {

std::string printSize(Length v, UnitSystem units) {
  return units == UnitSystem::Metric ? printShort(v, units) : printLength(v, units);
}

} // namespace sump
