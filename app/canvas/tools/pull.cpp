#include "app/canvas/tools/pull.h"

#include "core/plan/edits.h"
#include "core/plan/edits_group.h"
#include "core/plan/edits_outlines.h"
#include "core/plan/edits_parts.h"
#include "core/plan/edits_rooms.h"
#include "core/plan/edits_run_corners.h"
#include "core/plan/edits_vaults.h"
#include "core/units/print.h"

#include <cmath>

namespace sump {

namespace {

constexpr double kTurnStep = kPi / 12; ///< 15 degrees
constexpr double kSamePull = 1e-6;     // metres

/// The corners round the place that is dragged, as the pointer is aimed from them.
struct Neighbours {
  std::optional<Point2> before, after;
};

Neighbours neighbours(const std::vector<Point2>& points, bool closed, std::size_t i, bool inLeg) {
  const std::size_t n = points.size();
  Neighbours found;
  if (inLeg) {
    found.before = points[i];
    found.after = points[(i + 1) % n];
    return found;
  }
  // Past corners at the same place: those are drops and go along.
  for (std::size_t k = i; k > 0 && !found.before; --k) {
    if (distance(points[k - 1], points[i]) > kSamePull) found.before = points[k - 1];
  }
  for (std::size_t k = i + 1; k < n && !found.after; ++k) {
    if (distance(points[k], points[i]) > kSamePull) found.after = points[k];
  }
  if (closed && !found.before) found.before = points.back();
  if (closed && !found.after) found.after = points.front();
  return found;
}

AimFrom aimFrom(const Neighbours& around, const std::set<Id>& own) {
  AimFrom from;
  from.last = around.before ? around.before : around.after;
  if (around.before) from.beforeLast = around.after;
  from.without = &own;
  return from;
}

void addLegSpans(const Neighbours& around, Pull& pull) {
  if (around.before) pull.legs.push_back({*around.before, pull.at});
  if (around.after) pull.legs.push_back({pull.at, *around.after});
}

Plan movedRunCorner(const Plan& plan, const Handle& handle, Point2 at, const Entry& typed) {
  Plan next = handle.kind == HandleKind::Leg
                  ? insertVertex(plan, handle.object, handle.index, {at, std::nullopt})
                  : moveRunCorner(plan, handle.object, handle.index, at);
  if (const auto level = typedValue(typed, EntryKey::Level)) {
    Run run = *next.runs.find(handle.object);
    run.vertices[handle.index].invert = metres(*level);
    next.runs.put(std::move(run));
  }
  return next;
}

Pull pulledCorner(const ToolHost& host, const Handle& handle, const Pointer& now,
                  const Entry& typed) {
  const Plan& plan = host.plan();
  const bool inLeg = handle.kind == HandleKind::Leg;
  const Run* run = plan.runs.find(handle.object);
  Neighbours around;
  if (run != nullptr) {
    const std::optional<Polyline> line = Locator(plan).centreline(*run);
    if (line) around = neighbours(*line, false, handle.index + (inLeg ? 0 : 1), inLeg);
  } else if (const auto corners = cornersOf(plan, handle.object)) {
    around = neighbours(corners->points, corners->closed, handle.index, inLeg);
  }
  std::set<Id> own;
  if (!handle.object.empty()) own.insert(handle.object);
  Pull pull;
  pull.caught = aim(host, now, aimFrom(around, own), typedPoint(typed, host.plan().site.north));
  pull.at = pull.caught.at;
  if (run != nullptr) {
    pull.plan = movedRunCorner(plan, handle, pull.at, typed);
  } else {
    pull.plan = inLeg ? insertCorner(plan, handle.object, handle.index, pull.at)
                      : moveCorner(plan, handle.object, handle.index, pull.at);
  }
  addLegSpans(around, pull);
  return pull;
}

/// The end as it was, as far as it stays on the same thing or in the open.
void keepOrComplete(const ToolHost& host, Service service, const RunEnd& was, RunEnd& end,
                    bool start) {
  const bool same = end.kind == was.kind && end.target == was.target && end.chamber == was.chamber;
  if (!end.invert && (same || end.kind == EndKind::Free)) end.invert = was.invert;
  completeEnd(host, service, end, start);
  if (!same) return;
  end.fitting = was.fitting;
  end.legEnd = was.legEnd;
}

Pull pulledEnd(const ToolHost& host, const Handle& handle, const Pointer& now, const Entry& typed) {
  const Plan& plan = host.plan();
  const Run& run = *plan.runs.find(handle.object);
  const bool start = handle.index == 0;
  Neighbours around;
  if (const std::optional<Polyline> line = Locator(plan).centreline(run))
    around = neighbours(*line, false, start ? 0 : line->size() - 1, false);
  const std::set<Id> own = {run.id};
  const EndAim found = aimEnd(host, now, aimFrom(around, own), typed, run.service, run.id);
  RunEnd end = found.held.end;
  keepOrComplete(host, run.service, start ? run.from : run.to, end, start);
  Pull pull;
  pull.at = found.held.at;
  pull.caught = found.snapped;
  pull.caught.at = pull.at;
  pull.held = found.held;
  pull.plan = moveRunEnd(plan, run.id, start, end);
  addLegSpans(around, pull);
  return pull;
}

Pull pulledPart(const ToolHost& host, const Handle& handle, const Pointer& now,
                const Entry& typed) {
  const Plan& plan = host.plan();
  Pull pull;
  pull.plan = plan;
  pull.at = handle.at;
  const auto line = Locator(plan).centreline(*plan.runs.find(handle.object));
  std::optional<Station> to = line ? stationNear(*line, now.site) : std::nullopt;
  if (!to) return pull;
  const auto distance = typedValue(typed, EntryKey::Distance);
  to = stationAt(*line, distance ? *distance : onFineStep(to->run, fineStep(host, now)));
  pull.plan = movePart(plan, handle.part, *to);
  pull.at = to->at;
  const auto leg = static_cast<std::size_t>(to->leg);
  pull.gaps = {{(*line)[leg], to->at}, {to->at, (*line)[leg + 1]}};
  return pull;
}

Pull pulledTurn(const ToolHost& host, const Handle& handle, const Pointer& now,
                const Entry& typed) {
  const Plan& plan = host.plan();
  const std::set<Id> ids = unlocked(plan, host.selection());
  Pull pull;
  pull.plan = plan;
  pull.at = handle.at;
  const std::optional<Box> box = extentOf(plan, ids);
  if (!box) return pull;
  const Point2 about = lerp(box->low, box->high, 0.5);
  const Point2 was = handle.at - about, is = now.site - about;
  double by = std::atan2(is.y, is.x) - std::atan2(was.y, was.x);
  const bool loose = now.modifiers.testFlag(Qt::AltModifier);
  if (!loose) by = std::round(by / kTurnStep) * kTurnStep;
  by = typedValue(typed, EntryKey::Angle).value_or(by);
  const Angle angle = normalized(radians(by));
  pull.plan = rotateObjects(plan, ids, about, angle);
  pull.at = Frame{about, angle}.toSite(was);
  pull.tag = QString::fromStdString(printAngle(angle));
  return pull;
}

} // namespace

double fineStep(const ToolHost& host, const Pointer& pointer) {
  constexpr double kLeastPixels = 5;
  if (pointer.modifiers.testFlag(Qt::AltModifier) || !host.aids().snap) return 0;
  return gridStep(host, kLeastPixels);
}

double onFineStep(double value, double step) {
  return step > 0 ? std::round(value / step) * step : value;
}

Pull pulled(const ToolHost& host, const Handle& handle, const Pointer& start, const Pointer& now,
            const Entry& typed) {
  switch (handle.kind) {
  case HandleKind::Corner:
  case HandleKind::Leg:
    return pulledCorner(host, handle, now, typed);
  case HandleKind::RunEnd:
    return pulledEnd(host, handle, now, typed);
  case HandleKind::Part:
    return pulledPart(host, handle, now, typed);
  case HandleKind::Turn:
    return pulledTurn(host, handle, now, typed);
  case HandleKind::Baffle:
  case HandleKind::Manway:
    return pulledInVault(host, handle, start, now, typed);
  default:
    return pulledInRoom(host, handle, start, now, typed);
  }
}

std::optional<Plan> withoutHandle(const Plan& plan, const Handle& handle) {
  switch (handle.kind) {
  case HandleKind::Corner:
    return plan.runs.find(handle.object) != nullptr
               ? eraseRunCorner(plan, handle.object, handle.index)
               : eraseCorner(plan, handle.object, handle.index);
  case HandleKind::Baffle:
    return eraseBaffle(plan, handle.part);
  case HandleKind::Manway:
    return eraseManway(plan, handle.part);
  case HandleKind::Part:
    return erasePart(plan, handle.part);
  case HandleKind::Port:
    return erasePort(plan, handle.part);
  case HandleKind::Door:
    return eraseDoor(plan, handle.object);
  default:
    return std::nullopt;
  }
}

} // namespace sump
