#pragma once
// What a run's end takes hold of near the pointer.

#include "core/plan/ends.h"
#include "core/plan/plan.h"

#include <QString>

namespace sump {

struct Catch {
  RunEnd end;   ///< kind, target, chamber and `at` filled; Free at the pointer when nothing is near
  Point2 at;    ///< where that is on the site
  QString name; ///< of what was caught, for the marker; empty when free
};

/// The nearest of what lies within `reach` metres: a port of the room, the sewer, a basin or wash
/// equipment, a chamber (also by its vault's wall), another run that carries the like, in this
/// order of preference; of ports, one of the service first, of an arch over a drain, the one that
/// the service goes with. The run `without` does not hold.
Catch catchEnd(const Plan& plan, Point2 pointer, double reach, Service service,
               const Id& without = {});

} // namespace sump
