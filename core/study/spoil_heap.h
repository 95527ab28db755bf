#pragma once
// How high the spoil stands on the place that the plan gives it.

#include "core/study/earth.h"

namespace sump {

/// Of all that is dug, loose, spread evenly over the place of the heap.
Decided<Length> spoilHeight(const EarthStudy& earth, const Ring& heap);

} // namespace sump
