#pragma once
// How much loose earth an outline can hold. Private to core/study and its tests.

#include "core/geometry/point.h"
#include "core/units/quantity.h"

namespace sump {

/// The largest heap that keeps to an outline: its sides start at the outline and rise inwards at
/// one slope all round, until they meet or the heap is as high as may be.
struct SpoilHeap {
  Volume holds;
  Length height; ///< of its highest part
};

/// `runOverRise` of the sides. The volume under the surface whose height is the way to the outline
/// over `runOverRise`, `highest` at most.
SpoilHeap spoilHeap(const Ring& outline, double runOverRise, Length highest);

} // namespace sump
