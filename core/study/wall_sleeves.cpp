#include "core/study/wall_sleeves.h"

#include "core/geometry/polygon.h"
#include "core/study/context.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace sump {

namespace {

/// What has walls of its own.
struct Walled {
  Id id;
  Ring outline;
  std::optional<Length> footing;
};

std::vector<Walled> walledThings(const Plan& plan) {
  std::vector<Walled> things;
  for (const Building& building : plan.buildings)
    things.push_back({building.id, building.outline, building.footing});
  for (const EquipmentRoom& room : plan.rooms) {
    const Point2 middle = centroid(outline(room));
    bool held = false;
    for (const Building& building : plan.buildings)
      held = held || contains(building.outline, middle);
    if (!held) things.push_back({room.id, outline(room), std::nullopt});
  }
  return things;
}

/// Under the footing only when all of the pipe is.
WallSleeve sleeveAt(const RunStudy& run, const Walled& thing, Point3 at, std::string size) {
  WallSleeve sleeve;
  sleeve.run = run.id;
  sleeve.building = thing.id;
  sleeve.at = at;
  sleeve.sleeve = sleeveSize(size);
  sleeve.size = std::move(size);
  if (!thing.footing) return sleeve;
  sleeve.overFooting = metres(at.z) - *thing.footing;
  const Length crown = (run.outsideDiameter + run.insideDiameter) / 2.0;
  if (*sleeve.overFooting + crown <= metres(0)) sleeve.pass = WallPass::Footing;
  return sleeve;
}

} // namespace

std::optional<std::string> sleeveSize(std::string_view pipe) {
  static constexpr std::array<std::string_view, 13> kStocked = {
      "1/2", "3/4", "1", "1-1/4", "1-1/2", "2", "2-1/2", "3", "4", "6", "8", "10", "12"};
  const auto found = std::ranges::find(kStocked, pipe);
  if (kStocked.end() - found <= 2) return std::nullopt;
  return std::string(*(found + 2));
}

std::vector<WallSleeve> wallSleeves(const Plan& plan, const RunStudy& run) {
  std::vector<WallSleeve> sleeves;
  if (!run.resolved) return sleeves;
  const Run& given = *plan.runs.find(run.id);
  const std::vector<Walled> things = walledThings(plan);
  for (std::size_t leg = 0; leg < run.legs.size(); ++leg) {
    if (run.legs[leg].vertical) continue;
    const Point3 a = run.points[leg].at, b = run.points[leg + 1].at;
    for (const Walled& thing : things) {
      for (Point2 p : crossings({flat(a), flat(b)}, thing.outline)) {
        const double along = nearestOnSegment(p, flat(a), flat(b)).along;
        // A corner of the run on the wall is one hole, not one for each of its legs.
        const bool known = std::ranges::any_of(sleeves, [&](const WallSleeve& other) {
          return other.building == thing.id && distance(flat(other.at), p) < 0.01;
        });
        if (!known)
          sleeves.push_back(sleeveAt(run, thing, lerp(a, b, along), sizeAt(given, leg, along)));
      }
    }
  }
  return sleeves;
}

std::vector<WallSleeve> wallSleeves(const Plan& plan, const Study& study) {
  std::vector<WallSleeve> all;
  for (const RunStudy& run : study.runs) {
    for (WallSleeve& sleeve : wallSleeves(plan, run))
      all.push_back(std::move(sleeve));
  }
  return all;
}

} // namespace sump
