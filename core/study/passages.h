#pragma once
// Steady flow through the train: levels chamber by chamber from the overflow backward. Private to
// core/study.
//
// An overflow falls freely at its end, as into a sewer that is not surcharged. A way between
// chambers starts from the level of the one it leads to; levels along pipe are those of
// water_levels.h. An opening under a baffle is a drowned orifice with a coefficient of 0.6; one
// over a baffle a broad-crested weir, 1.705 b H^1.5, drowned after Villemonte 1947 (both from
// memory). Pipes side by side share the flow so that both hold the same water back. Which of
// several inlets brings the peak is not known, so each is worked out for all of it, and so is every
// chamber that an inlet leads to.

#include "core/study/train_map.h"

namespace sump {

/// What the train is asked to pass.
struct TrainLoad {
  Flow inflow;
  Flow drawn;        ///< product water
  Flow recirculated; ///< drawn as well, and sent back
};

/// Needs a chamber for what is drawn and sent back, when that is not 0. `n` is Manning's.
Decided<TrainLevels> trainLevels(const TrainMap& map, const TrainLoad& load, double n);

/// What flows on from each chamber; not below 0. Not `drawing`: as if no pump drew.
std::vector<double> throughflows(const TrainMap& map, const TrainLoad& load, bool drawing = true);

/// Level upstream of one passage, m.
double levelBefore(const Passage& passage, double flow, double down, double n);

} // namespace sump
