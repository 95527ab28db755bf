#include "core/study/access_risers.h"

#include "core/geometry/polygon.h"
#include "core/plan/ends.h"
#include "core/plan/traffic.h"
#include "core/study/part_place.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

bool needsRiser(PartKind kind) {
  return kind == PartKind::Cleanout || kind == PartKind::BackwaterValve ||
         kind == PartKind::PullBox;
}

bool isReached(const Plan& plan, Point2 at) {
  const auto anyHolds = [at](const auto& things) {
    for (const auto& thing : things) {
      if (contains(outline(thing), at)) return true;
    }
    return false;
  };
  return anyHolds(plan.vaults) || anyHolds(plan.basins);
}

std::optional<Length> gradeAt(const Plan& plan, const Study& study, Point2 at) {
  if (const auto floor = floorAt(plan, at)) return floor;
  const std::optional<double> ground = study.ground.elevation(at);
  return ground ? std::optional(metres(*ground)) : std::nullopt;
}

std::optional<AccessRiser> riserOf(const Plan& plan, const Study& study, const RunStudy& run,
                                   const InlinePart& part) {
  const auto place = partPlace(run, part);
  if (!place) return std::nullopt;
  AccessRiser riser{run.id,       part.id, part.kind, place->size, place->at,
                    place->along, {},      {},        false};
  const Point2 at = flat(riser.at);
  if (isReached(plan, at)) return std::nullopt;
  riser.grade = gradeAt(plan, study, at);
  if (riser.grade) riser.height = *riser.grade - metres(riser.at.z);
  if (riser.height && *riser.height <= run.outsideDiameter) return std::nullopt; // it lies open
  riser.traffic = part.trafficCover.value_or(false) || underTraffic(plan, at);
  return riser;
}

} // namespace

std::optional<Length> floorAt(const Plan& plan, Point2 at) {
  std::optional<Length> floor;
  for (const Building& b : plan.buildings) {
    if (b.floor && contains(b.outline, at)) floor = std::max(floor.value_or(*b.floor), *b.floor);
  }
  for (const EquipmentRoom& r : plan.rooms) {
    if (contains(outline(r), at)) floor = std::max(floor.value_or(r.floor), r.floor);
  }
  return floor;
}

std::vector<AccessRiser> accessRisers(const Plan& plan, const Study& study, const RunStudy& run) {
  std::vector<AccessRiser> risers;
  if (!run.resolved) return risers;
  for (const InlinePart& part : plan.runs.find(run.id)->parts) {
    if (!needsRiser(part.kind)) continue;
    if (auto riser = riserOf(plan, study, run, part)) risers.push_back(std::move(*riser));
  }
  return risers;
}

std::vector<AccessRiser> accessRisers(const Plan& plan, const Study& study) {
  std::vector<AccessRiser> risers;
  for (const RunStudy& run : study.runs) {
    for (AccessRiser& riser : accessRisers(plan, study, run))
      risers.push_back(std::move(riser));
  }
  return risers;
}

} // namespace sump
