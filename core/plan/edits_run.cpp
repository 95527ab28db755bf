#include "core/plan/edits_run.h"

namespace sump {

Run withCorner(Run run, int leg, double along, Vertex corner) {
  run.vertices.insert(run.vertices.begin() + leg, corner);
  for (InlinePart& part : run.parts) {
    if (part.leg > leg) {
      ++part.leg;
    } else if (part.leg == leg && part.along > along) {
      ++part.leg;
      part.along = along < 1 ? (part.along - along) / (1 - along) : 0;
    } else if (part.leg == leg) {
      part.along = along > 0 ? part.along / along : 0;
    }
  }
  return run;
}

Run withoutCorner(Run run, std::size_t index) {
  run.vertices.erase(run.vertices.begin() + static_cast<std::ptrdiff_t>(index));
  const int before = static_cast<int>(index);
  for (InlinePart& part : run.parts) {
    if (part.leg == before) {
      part.along = part.along / 2;
    } else if (part.leg == before + 1) {
      part.leg = before;
      part.along = 0.5 + part.along / 2;
    } else if (part.leg > before + 1) {
      --part.leg;
    }
  }
  return run;
}

} // namespace sump
