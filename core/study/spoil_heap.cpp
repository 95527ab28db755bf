#include "core/study/spoil_heap.h"

#include "core/geometry/polygon.h"

#include <cmath>

namespace sump {

Decided<Length> spoilHeight(const EarthStudy& earth, const Ring& heap) {
  const double place = heap.size() < 3 ? 0 : std::abs(area(heap));
  if (place <= 0) return undecided<Length>({"place of the spoil heap"});
  return decide([&](Volume spoil) { return metres(spoil.value() / place); }, earth.spoil);
}

} // namespace sump
