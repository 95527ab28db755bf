#include "core/study/relief.h"

#include "core/geometry/polygon.h"
#include "core/study/part_place.h"

namespace sump {

std::vector<RoomAssembly> roomAssemblies(const Plan& plan, const Study& study) {
  std::vector<RoomAssembly> found;
  for (std::size_t i = 0; i < study.runs.size(); ++i) {
    for (const InlinePart& part : plan.runs[i].parts) {
      if (part.kind != PartKind::ReducedPressureAssembly) continue;
      const auto place = partPlace(study.runs[i], part);
      if (!place) continue;
      const Point2 at = flat(place->at);
      for (const EquipmentRoom& room : plan.rooms) {
        if (!contains(outline(room), at)) continue;
        found.push_back({plan.runs[i].id, part.id, room.id, at, metres(place->at.z) - room.floor});
      }
    }
  }
  return found;
}

} // namespace sump
