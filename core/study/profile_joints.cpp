#include "core/study/profile_joints.h"

#include "core/geometry/polygon.h"

#include <algorithm>

namespace sump {

std::vector<ProfileBranch> profileBranches(const Plan& plan, const Study& study,
                                           const Catalog& catalog, const Id& run,
                                           const CutLine& line) {
  std::vector<ProfileBranch> branches;
  for (const Run& other : plan.runs) {
    const RunStudy* found = study.run(other.id);
    if (found == nullptr || !found->resolved || found->points.empty()) continue;
    for (const bool first : {true, false}) {
      const RunEnd& end = first ? other.from : other.to;
      if (end.kind != EndKind::Run || end.target != run) continue;
      const Point3 at = (first ? found->points.front() : found->points.back()).at;
      branches.push_back({other.id, other.service, line.nearest(flat(at)).first, metres(at.z),
                          profileBore(catalog, other.pipe, other.size)});
    }
  }
  std::ranges::stable_sort(branches, {}, &ProfileBranch::station);
  return branches;
}

bool isFloorBetween(const Plan& plan, Point3 a, Point3 b) {
  const auto parts = [&](const Ring& ring, std::optional<Length> floor) {
    return floor && (a.z < inMetres(*floor)) != (b.z < inMetres(*floor)) && contains(ring, flat(a));
  };
  for (const EquipmentRoom& room : plan.rooms) {
    if (parts(outline(room), room.floor)) return true;
  }
  for (const Building& building : plan.buildings) {
    if (parts(building.outline, building.floor)) return true;
  }
  return false;
}

std::optional<Length> floatLevel(const Study& study, const Run& run) {
  if (run.service != Service::FloatConduit || run.from.kind != EndKind::Chamber)
    return std::nullopt;
  for (const SuctionStudy& suction : study.hydraulics.suctions) {
    if (suction.lowWater) return *suction.lowWater;
  }
  return std::nullopt;
}

} // namespace sump
