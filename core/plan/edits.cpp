#include "core/plan/edits.h"

#include "core/geometry/polygon.h"
#include "core/plan/ends.h"

#include <algorithm>
#include <optional>

namespace sump {

namespace {

/// A turn about a point of the site.
class Turn {
public:
  Turn(Point2 about, Angle by) : about_(about), frame_{about, by} {}
  Point2 operator()(Point2 p) const { return frame_.toSite(p - about_); }
  void apply(std::vector<Point2>& points) const {
    for (Point2& p : points)
      p = (*this)(p);
  }

private:
  Point2 about_;
  Frame frame_;
};

/// The middle of the smallest upright rectangle round the points.
Point2 middle(const std::vector<Point2>& points) {
  if (points.empty()) return {};
  const auto [x0, x1] = std::ranges::minmax(points, {}, &Point2::x);
  const auto [y0, y1] = std::ranges::minmax(points, {}, &Point2::y);
  return {(x0.x + x1.x) / 2, (y0.y + y1.y) / 2};
}

/// Replaces the object of this id by what `change` makes of it; false when there is none.
template <class T, class Change>
bool changeOne(Items<T>& list, std::string_view id, Change change) {
  const T* found = list.find(id);
  if (found == nullptr) return false;
  T copy = *found;
  change(copy);
  list.put(std::move(copy));
  return true;
}

/// The room's frame stands in its low corner, not in its centre.
void turnRoom(EquipmentRoom& room, Angle by) {
  const Point2 centre = room.frame().toSite({inMetres(room.length) / 2, inMetres(room.width) / 2});
  room.corner = Turn(centre, by)(room.corner);
  room.angle = normalized(room.angle + by);
}

void turnRun(Run& run, Angle by, const std::optional<Polyline>& line) {
  if (!line) return;
  const Turn turn(middle(*line), by);
  for (Vertex& vertex : run.vertices)
    vertex.at = turn(vertex.at);
  for (RunEnd* end : {&run.from, &run.to}) {
    if (end->kind == EndKind::Free) end->at = turn(end->at);
  }
}

std::optional<Polyline> centreline(const Plan& plan, std::string_view run) {
  const Locator where(plan);
  const Run* found = where.run(run);
  return found == nullptr ? std::nullopt : where.centreline(*found);
}

void splitLeg(InlinePart& part, int leg, double at) {
  if (part.leg > leg) {
    ++part.leg;
  } else if (part.leg == leg && part.along > at) {
    ++part.leg;
    part.along = (part.along - at) / (1 - at);
  } else if (part.leg == leg) {
    part.along = at > 0 ? part.along / at : 0;
  }
}

void joinLegs(InlinePart& part, int leg, double first, double second) {
  const double whole = first + second;
  const double share = whole > 0 ? first / whole : 0.5;
  if (part.leg == leg) {
    part.along = part.along * share;
  } else if (part.leg == leg + 1) {
    part.along = share + part.along * (1 - share);
    part.leg = leg;
  } else if (part.leg > leg + 1) {
    --part.leg;
  }
}

} // namespace

Angle normalized(Angle angle) {
  const double turned = std::remainder(inRadians(angle), 2 * kPi);
  return radians(turned <= -kPi ? kPi : turned);
}

Plan rotateObject(const Plan& plan, std::string_view id, Angle by) {
  Plan next = plan;
  const auto turnFrame = [by](auto& object) { object.angle = normalized(object.angle + by); };
  const auto turnOutline = [by](auto& object) {
    Turn(middle(object.outline), by).apply(object.outline);
  };
  const bool turned =
      changeOne(next.buildings, id, turnOutline) || changeOne(next.pavements, id, turnOutline) ||
      changeOne(next.utilities, id, [by](Utility& u) { Turn(middle(u.path), by).apply(u.path); }) ||
      changeOne(next.basins, id, turnFrame) || changeOne(next.washes, id, turnFrame) ||
      changeOne(next.vaults, id, turnFrame) ||
      changeOne(next.rooms, id, [by](EquipmentRoom& room) { turnRoom(room, by); });
  if (!turned) {
    changeOne(next.runs, id, [&](Run& run) { turnRun(run, by, centreline(plan, id)); });
  }
  return next;
}

Plan placeVaultInFlow(const Plan& plan, std::string_view vault, std::size_t position) {
  const int from = plan.vaults.indexOf(vault);
  if (from < 0) return plan;
  Plan next = plan;
  next.vaults.reorder(static_cast<std::size_t>(from), std::min(position, plan.vaults.size() - 1));
  return next;
}

Plan insertVertex(const Plan& plan, std::string_view run, std::size_t leg, const Vertex& vertex) {
  Plan next = plan;
  const std::optional<Polyline> line = centreline(plan, run);
  changeOne(next.runs, run, [&](Run& changed) {
    if (leg > changed.vertices.size()) return;
    const double at =
        line ? nearestOnSegment(vertex.at, (*line)[leg], (*line)[leg + 1]).along : 0.5;
    changed.vertices.insert(changed.vertices.begin() + static_cast<std::ptrdiff_t>(leg), vertex);
    for (InlinePart& part : changed.parts)
      splitLeg(part, static_cast<int>(leg), at);
  });
  return next;
}

Plan moveVertex(const Plan& plan, std::string_view run, std::size_t vertex, Point2 to) {
  Plan next = plan;
  changeOne(next.runs, run, [&](Run& changed) {
    if (vertex < changed.vertices.size()) changed.vertices[vertex].at = to;
  });
  return next;
}

Plan eraseVertex(const Plan& plan, std::string_view run, std::size_t vertex) {
  Plan next = plan;
  const std::optional<Polyline> line = centreline(plan, run);
  changeOne(next.runs, run, [&](Run& changed) {
    if (vertex >= changed.vertices.size()) return;
    const double first = line ? distance((*line)[vertex], (*line)[vertex + 1]) : 0;
    const double second = line ? distance((*line)[vertex + 1], (*line)[vertex + 2]) : 0;
    changed.vertices.erase(changed.vertices.begin() + static_cast<std::ptrdiff_t>(vertex));
    for (InlinePart& part : changed.parts)
      joinLegs(part, static_cast<int>(vertex), first, second);
  });
  return next;
}

std::vector<Id> freedRuns(const Plan& before, const Plan& after) {
  const Locator earlier(before);
  const auto freed = [](const RunEnd& was, const RunEnd& is) {
    return was.kind != EndKind::Free && is.kind == EndKind::Free;
  };
  std::vector<Id> ids;
  for (const Run& run : after.runs) {
    const Run* was = earlier.run(run.id);
    if (was != nullptr && (freed(was->from, run.from) || freed(was->to, run.to))) {
      ids.push_back(run.id);
    }
  }
  return ids;
}

} // namespace sump
