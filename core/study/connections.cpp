#include "core/study/connections.h"

#include "core/geometry/polygon.h"
#include "core/study/context.h"

#include <algorithm>

namespace sump {

namespace {

bool carriesLike(const Utility& utility, Service service) {
  switch (utility.kind) {
  case UtilityKind::PotableWater:
    return service == Service::MakeUp;
  case UtilityKind::Electric:
    return isConduit(service);
  case UtilityKind::Communication:
    return service == Service::Signal;
  case UtilityKind::Sewer:
    return service == Service::Overflow;
  case UtilityKind::StormDrain:
  case UtilityKind::Gas:
  case UtilityKind::Other:
    break;
  }
  return false;
}

const Utility* utilityAt(const Plan& plan, Service service, Point2 at) {
  constexpr double kOnLine = 0.3; // m, as near as records of buried lines are drawn
  for (const Utility& utility : plan.utilities) {
    if (carriesLike(utility, service) && distanceToLine(at, utility.path) <= kOnLine)
      return &utility;
  }
  return nullptr;
}

std::optional<Connection> connectionAt(const Plan& plan, const RunStudy& run, const RunEnd& end,
                                       bool atStart) {
  const RunPoint& point = atStart ? run.points.front() : run.points.back();
  Connection made{ConnectionKind::Stub, run.id, {}, atStart, flat(point.at),
                  metres(point.at.z),   {}};
  if (end.kind == EndKind::Sewer) {
    made.kind = ConnectionKind::Sewer;
    made.other = end.target;
    return made;
  }
  if (end.kind != EndKind::Free || end.fitting != EndFitting::Plain) return std::nullopt;
  if (run.service == Service::Vent) return std::nullopt; // it ends in the air
  if (const Utility* utility = utilityAt(plan, run.service, made.at)) {
    made.kind = ConnectionKind::Utility;
    made.other = utility->id;
    made.level = utility->elevation;
  }
  return made;
}

/// The crossing of the basin's outline that is nearest to the end along the run; the end itself
/// where it stands on the outline.
BasinEntry entryAt(const Basin& basin, const Run& run, const RunStudy& studied, bool atStart) {
  const auto& points = studied.points;
  BasinEntry entry{run.id, basin.id, atStart, (atStart ? points.front() : points.back()).at,
                   sizeAt(run, atStart ? 0 : studied.legs.size(), 0)};
  for (std::size_t i = 0; i < studied.legs.size(); ++i) {
    const std::size_t leg = atStart ? i : studied.legs.size() - 1 - i;
    if (studied.legs[leg].vertical) continue;
    const Point3 a = points[leg].at, b = points[leg + 1].at;
    const std::vector<Point2> met = crossings({flat(a), flat(b)}, outline(basin));
    if (met.empty()) continue;
    const Point2 wall = atStart ? met.front() : met.back();
    const double along = nearestOnSegment(wall, flat(a), flat(b)).along;
    entry.at = lerp(a, b, along);
    entry.size = sizeAt(run, leg, along);
    break;
  }
  return entry;
}

} // namespace

std::vector<BasinEntry> basinEntries(const Plan& plan, const Run& run, const RunStudy& studied) {
  std::vector<BasinEntry> all;
  if (!studied.resolved || studied.points.empty()) return all;
  for (bool atStart : {true, false}) {
    const RunEnd& end = atStart ? run.from : run.to;
    const Basin* basin = end.kind == EndKind::Basin ? plan.basins.find(end.target) : nullptr;
    if (basin == nullptr) continue;
    BasinEntry entry = entryAt(*basin, run, studied, atStart);
    if (entry.at.z < inMetres(basin->rim)) all.push_back(std::move(entry));
  }
  return all;
}

std::vector<Connection> connections(const Plan& plan, const Run& run, const RunStudy& studied) {
  std::vector<Connection> all;
  if (!studied.resolved || studied.points.empty()) return all;
  for (bool atStart : {true, false}) {
    if (auto made = connectionAt(plan, studied, atStart ? run.from : run.to, atStart))
      all.push_back(std::move(*made));
  }
  return all;
}

std::string sizeThere(const Run& run, const Connection& made, const Study& study) {
  const RunStudy& studied = *study.run(made.run);
  return made.atStart || studied.legs.empty() ? run.size : studied.legs.back().size;
}

std::string_view joinedBy(const Study& study, const Connection& made) {
  if (made.kind == ConnectionKind::Sewer) return "Wye, saddle or manhole on the sewer, kind ______";
  if (made.kind == ConnectionKind::Stub) return "Joint onto the stub that is there, kind ______";
  const RunStudy& run = *study.run(made.run);
  if (isConduit(run.service)) return "Joint with the electric line that is there, kind ______";
  return facts(run.service).drive == Drive::Gravity
             ? "Joint with the drain that is there, kind ______"
             : "Tee or tapping saddle with shut-off valve, kind ______";
}

std::vector<Connection> connections(const Plan& plan, const Study& study) {
  std::vector<Connection> all;
  for (std::size_t i = 0; i < study.runs.size(); ++i) {
    for (Connection& made : connections(plan, plan.runs[i], study.runs[i]))
      all.push_back(std::move(made));
  }
  return all;
}

namespace {

/// The inlet and all that end on it, straight or by others.
std::vector<const Run*> inletsInto(const Plan& plan, const Run& inlet) {
  std::vector<const Run*> all = {&inlet};
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (const Run& run : plan.runs) {
      const bool joins = run.service == Service::Inlet && run.to.kind == EndKind::Run &&
                         run.to.target == all[i]->id;
      if (joins && std::ranges::find(all, &run) == all.end()) all.push_back(&run);
    }
  }
  return all;
}

} // namespace

std::vector<Id> underflowsInto(const Plan& plan, const Run& run) {
  std::vector<Id> found;
  if (run.service != Service::Inlet) return found;
  const std::vector<const Run*> inlets = inletsInto(plan, run);
  for (const Run& other : plan.runs) {
    if (other.service != Service::Underflow) continue;
    const bool joins = std::ranges::any_of(inlets, [&](const Run* inlet) {
      if (other.to.kind == EndKind::Run) return other.to.target == inlet->id;
      return other.to.kind == EndKind::Basin && inlet->from.kind == EndKind::Basin &&
             other.to.target == inlet->from.target;
    });
    if (joins) found.push_back(other.id);
  }
  return found;
}

} // namespace sump
