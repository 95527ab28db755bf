#include "app/canvas/scene.h"

#include "core/geometry/polygon.h"
#include "core/plan/edits_group.h"

#include <algorithm>
#include <map>

namespace sump {

namespace {

/// Distance of a point from what the mark paints; 0 on a filled area.
double distanceTo(const Mark& mark, Point2 at) {
  if (mark.round) {
    const double radius = distance(mark.points[0], mark.points[1]);
    const double d = distance(mark.points[0], at);
    return mark.fill ? std::max(0.0, d - radius) : std::abs(d - radius);
  }
  if (mark.closed && mark.points.size() >= 3) {
    return mark.fill ? distance(at, Ring(mark.points)) : distanceToEdge(at, mark.points);
  }
  double least = distance(mark.points.front(), at);
  for (std::size_t i = 1; i < mark.points.size(); ++i) {
    least = std::min(least, nearestOnSegment(at, mark.points[i - 1], mark.points[i]).distance);
  }
  return least;
}

bool isFilled(const Mark& mark) {
  return mark.closed && mark.fill.has_value();
}

bool within(const Box& inner, const Box& outer) {
  return inner.low.x >= outer.low.x && inner.low.y >= outer.low.y && inner.high.x <= outer.high.x &&
         inner.high.y <= outer.high.y;
}

Box joined(const Box& a, const Box& b) {
  return {{std::min(a.low.x, b.low.x), std::min(a.low.y, b.low.y)},
          {std::max(a.high.x, b.high.x), std::max(a.high.y, b.high.y)}};
}

/// True if any of the mark lies in the box, not only its bounding box.
bool reaches(const Mark& mark, const Box& box) {
  const Ring frame = {box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}};
  if (mark.round)
    return distance(mark.points[0], frame) <= distance(mark.points[0], mark.points[1]);
  if (mark.closed && mark.points.size() >= 3) return distance(Ring(mark.points), frame) <= 0;
  for (Point2 p : mark.points) {
    if (contains(frame, p)) return true;
  }
  return !crossings(mark.points, frame).empty();
}

} // namespace

Box markBox(const Mark& mark) {
  if (!mark.round) return boxOf(mark.points);
  return grown(boxOf({mark.points[0]}), distance(mark.points[0], mark.points[1]));
}

Id ownerId(const Plan& plan, const ObjectPlace& place, const Id& id) {
  switch (place.kind) {
  case ObjectKind::Port:
    return plan.rooms[place.index].id;
  case ObjectKind::Baffle:
  case ObjectKind::Manway:
    return plan.vaults[place.index].id;
  case ObjectKind::Part:
    return plan.runs[place.index].id;
  default:
    return id;
  }
}

Scene::Scene(ReviewedPtr reviewed)
    : reviewed_(std::move(reviewed)), locator_(reviewed_->review.plan) {
  for (const Mark& mark : marks()) {
    owners_.push_back(ownerOf(mark.object));
    boxes_.push_back(markBox(mark));
  }
  index_ = BoxIndex(boxes_);
}

void Scene::show(const Shown& shown) {
  shown_ = shown;
  hidden_.clear();
  if (shown.everything()) return;
  std::map<Id, bool> shows;
  for (const Id& owner : owners_) {
    const auto [it, fresh] = shows.try_emplace(owner, true);
    // What belongs to no object, like the boundary, stays.
    if (fresh && !owner.empty()) it->second = this->shows(owner);
    hidden_.push_back(!it->second);
  }
}

std::vector<std::size_t> Scene::visible(const Box& box) const {
  std::vector<std::size_t> marks = index_.touching(box);
  if (!hidden_.empty()) std::erase_if(marks, [this](std::size_t i) { return hidden_[i]; });
  return marks;
}

Id Scene::pictureAt(Point2 at) const {
  Id found;
  for (const Underlay& u : plan().underlays) {
    if (u.shown && !isLocked(plan(), u.id) && shows(u.id) && contains(pictureOutline(u), at))
      found = u.id;
  }
  return found;
}

Id Scene::ownerOf(const Id& object) const {
  const std::optional<ObjectPlace> place = locator_.find(object);
  return place ? ownerId(plan(), *place, object) : Id();
}

Id Scene::objectAt(Point2 at, double reach) const {
  Id area;
  Id line;
  double nearest = reach;
  for (std::size_t i : visible(grown(boxOf({at}), reach))) {
    if (owners_[i].empty()) continue;
    const double d = distanceTo(marks()[i], at);
    if (isFilled(marks()[i])) {
      if (d <= 0) area = owners_[i]; // drawn later lies on top
    } else if (d <= nearest) {
      nearest = d;
      line = owners_[i];
    }
  }
  if (line.empty() && area.empty()) return pictureAt(at);
  return line.empty() ? area : line;
}

std::vector<Id> Scene::objectsIn(const Box& box, bool touching) const {
  struct Seen {
    std::size_t count = 0;
    bool reached = false;
    bool inside = true;
  };
  std::map<Id, Seen> seen;
  for (std::size_t i : visible(box)) {
    if (owners_[i].empty()) continue;
    Seen& s = seen[owners_[i]];
    ++s.count;
    s.inside = s.inside && within(boxes_[i], box);
    s.reached = s.reached || (touching && reaches(marks()[i], box));
  }
  std::map<Id, std::size_t> all;
  for (const Id& owner : owners_)
    ++all[owner];
  std::vector<Id> found;
  for (const auto& [id, s] : seen) {
    if (touching ? s.reached : s.inside && s.count == all[id]) found.push_back(id);
  }
  return found;
}

std::optional<Box> Scene::bounds(const std::set<Id>& ids) const {
  std::optional<Box> all;
  for (std::size_t i = 0; i < boxes_.size(); ++i) {
    if (!ids.empty() && !ids.contains(owners_[i])) continue;
    all = all ? joined(*all, boxes_[i]) : boxes_[i];
  }
  for (const Underlay& u : plan().underlays) {
    const bool wanted = ids.empty() ? u.shown : ids.contains(u.id);
    if (!wanted) continue;
    const Box box = boxOf(pictureOutline(u));
    all = all ? joined(*all, box) : box;
  }
  return all;
}

} // namespace sump
