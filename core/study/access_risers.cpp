#include "core/study/access_risers.h"

#include "core/geometry/polygon.h"
#include "core/plan/ends.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

bool needsRiser(PartKind kind) {
  return kind == PartKind::Cleanout || kind == PartKind::BackwaterValve;
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

bool isUnderTraffic(const Plan& plan, Point2 at) {
  for (const Pavement& pavement : plan.pavements) {
    if (pavement.traffic && contains(pavement.outline, at)) return true;
  }
  return false;
}

/// The floor over a place, the highest of several.
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

std::optional<Length> gradeAt(const Plan& plan, const Study& study, Point2 at) {
  if (const auto floor = floorAt(plan, at)) return floor;
  const std::optional<double> ground = study.ground.elevation(at);
  return ground ? std::optional(metres(*ground)) : std::nullopt;
}

/// The run's points of the plan's leg, from its last corner to the next; nothing for one that is
/// not there.
std::optional<std::size_t> legStart(const RunStudy& run, int leg) {
  for (std::size_t i = 0; i + 1 < run.points.size(); ++i) {
    if (run.points[i].vertex == leg - 1 && run.points[i + 1].vertex == leg) return i;
  }
  return std::nullopt;
}

std::optional<AccessRiser> riserOf(const Plan& plan, const Study& study, const RunStudy& run,
                                   const InlinePart& part) {
  const auto leg = legStart(run, part.leg);
  if (!leg) return std::nullopt;
  AccessRiser riser{run.id, part.id, part.kind, run.legs[*leg].size, {}, 0, {}, {}, false};
  riser.at = lerp(run.points[*leg].at, run.points[*leg + 1].at, part.along);
  for (std::size_t i = 0; i <= *leg; ++i)
    riser.station += (i < *leg ? 1 : part.along) * inMetres(run.legs[i].plan);
  const Point2 at = flat(riser.at);
  if (isReached(plan, at)) return std::nullopt;
  riser.grade = gradeAt(plan, study, at);
  if (riser.grade) riser.height = *riser.grade - metres(riser.at.z);
  if (riser.height && *riser.height <= run.outsideDiameter) return std::nullopt; // it lies open
  riser.traffic = isUnderTraffic(plan, at);
  return riser;
}

} // namespace

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
