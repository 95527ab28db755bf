#pragma once
// Where vehicles drive.

#include "core/geometry/polygon.h"
#include "core/plan/plan.h"

namespace sump {

/// On a pavement that carries traffic.
inline bool underTraffic(const Plan& plan, Point2 at) {
  for (const Pavement& pavement : plan.pavements) {
    if (pavement.traffic && contains(pavement.outline, at)) return true;
  }
  return false;
}

} // namespace sump
