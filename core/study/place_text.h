#pragma once
// Where something is on the site, for the steps of a calculation. Private to core/study.

#include "core/units/print.h"

#include <string>

namespace sump {

/// `12.34 m east, 5.60 m north (40.5 ft, 18.4 ft)`: a step does not know the project's units.
inline std::string placeText(double x, double y) {
  return fixed(x, 2) + " m east, " + fixed(y, 2) + " m north (" + fixed(x / kMetresPerFoot, 1) +
         " ft, " + fixed(y / kMetresPerFoot, 1) + " ft)";
}

} // namespace sump
