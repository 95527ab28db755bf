#include "core/plan/edits_group.h"

#include "core/plan/carry.h"
#include "core/plan/edits_objects.h"

#include <algorithm>

namespace sump {

namespace {

/// Corners, path or point of the object on the site; empty for an unknown id.
std::vector<Point2> shapeOf(const Locator& locator, const Plan& plan, const Id& id) {
  const std::optional<ObjectPlace> place = locator.find(id);
  if (!place) return {};
  const std::size_t i = place->index;
  switch (place->kind) {
  case ObjectKind::Building:
    return plan.buildings[i].outline;
  case ObjectKind::Pavement:
    return plan.pavements[i].outline;
  case ObjectKind::Utility:
    return plan.utilities[i].path;
  case ObjectKind::Spot:
    return {plan.spots[i].at};
  case ObjectKind::Well:
    return {plan.wells[i].at};
  case ObjectKind::Basin:
    return outline(plan.basins[i]);
  case ObjectKind::Sewer:
    return {plan.sewers[i].at};
  case ObjectKind::Wash:
    return outline(plan.washes[i]);
  case ObjectKind::Room:
    return outline(plan.rooms[i]);
  case ObjectKind::Vault:
    return outline(plan.vaults[i]);
  case ObjectKind::Underlay:
    return pictureOutline(plan.underlays[i]);
  case ObjectKind::Run:
    return locator.centreline(plan.runs[i]).value_or(Polyline());
  case ObjectKind::Note: {
    const DimensionNote& note = plan.notes[i];
    return {locator.position(note.from).value_or(note.from.at),
            locator.position(note.to).value_or(note.to.at)};
  }
  default:
    return {};
  }
}

Point2 middleOf(const Box& box) {
  return lerp(box.low, box.high, 0.5);
}

/// Runs and notes follow what they hang on.
bool alignsItself(const Locator& locator, const Id& id) {
  const std::optional<ObjectPlace> place = locator.find(id);
  return place && place->kind < ObjectKind::Run && place->kind != ObjectKind::Note;
}

struct Extent {
  Id id;
  Box box;
};

std::vector<Extent> extentsOf(const Plan& plan, const std::set<Id>& ids) {
  const Locator locator(plan);
  std::vector<Extent> extents;
  for (const Id& id : ids) {
    if (!alignsItself(locator, id)) continue;
    const std::vector<Point2> shape = shapeOf(locator, plan, id);
    if (!shape.empty()) extents.push_back({id, boxOf(shape)});
  }
  return extents;
}

Point2 shiftTo(const Box& box, const Box& all, Alignment to) {
  switch (to) {
  case Alignment::Left:
    return {all.low.x - box.low.x, 0};
  case Alignment::Right:
    return {all.high.x - box.high.x, 0};
  case Alignment::Centre:
    return {middleOf(all).x - middleOf(box).x, 0};
  case Alignment::Bottom:
    return {0, all.low.y - box.low.y};
  case Alignment::Top:
    return {0, all.high.y - box.high.y};
  case Alignment::Middle:
    break;
  }
  return {0, middleOf(all).y - middleOf(box).y};
}

} // namespace

Ring pictureOutline(const Underlay& picture) {
  return Frame{picture.at, picture.angle}.rectangle({0, -inMetres(picture.height)},
                                                    {inMetres(picture.width), 0});
}

Plan rotateObjects(const Plan& plan, const std::set<Id>& ids, Point2 about, Angle by) {
  return carried(plan, ids, Motion::turn(about, by));
}

Plan mirrorObjects(const Plan& plan, const std::set<Id>& ids, Point2 a, Point2 b) {
  return carried(plan, ids, Motion::mirror(a, b));
}

Plan alignObjects(const Plan& plan, const std::set<Id>& ids, Alignment to) {
  const std::vector<Extent> extents = extentsOf(plan, ids);
  if (extents.empty()) return plan;
  Box all = extents.front().box;
  for (const Extent& e : extents)
    all = boxOf({all.low, all.high, e.box.low, e.box.high});
  Plan next = plan;
  for (const Extent& e : extents)
    next = moveObjects(next, {e.id}, shiftTo(e.box, all, to));
  return next;
}

Plan alignWithVault(const Plan& plan, const std::set<Id>& ids, std::string_view vault,
                    bool abreast) {
  const Vault* to = plan.vaults.find(vault);
  if (to == nullptr) return plan;
  const Frame frame = to->frame();
  const Point2 along = Frame{{}, frame.angle}.toSite(abreast ? Point2{0, 1} : Point2{1, 0});
  Plan next = plan;
  for (const Extent& e : extentsOf(plan, ids)) {
    if (e.id == vault) continue;
    const Point2 away = frame.origin - middleOf(e.box);
    next = moveObjects(next, {e.id}, away - along * dot(away, along));
  }
  return next;
}

Plan distributeObjects(const Plan& plan, const std::set<Id>& ids, bool northward) {
  std::vector<Extent> extents = extentsOf(plan, ids);
  if (extents.size() < 3) return plan;
  const auto low = [northward](const Extent& e) { return northward ? e.box.low.y : e.box.low.x; };
  const auto high = [northward](const Extent& e) {
    return northward ? e.box.high.y : e.box.high.x;
  };
  std::ranges::sort(extents, {}, [&](const Extent& e) { return low(e) + high(e); });
  double taken = 0;
  for (const Extent& e : extents)
    taken += high(e) - low(e);
  const double whole = high(extents.back()) - low(extents.front());
  const double gap = (whole - taken) / static_cast<double>(extents.size() - 1);
  Plan next = plan;
  double at = low(extents.front());
  for (const Extent& e : extents) {
    const double by = at - low(e);
    const bool outer = &e == &extents.front() || &e == &extents.back();
    if (!outer) next = moveObjects(next, {e.id}, northward ? Point2{0, by} : Point2{by, 0});
    at += high(e) - low(e) + gap;
  }
  return next;
}

std::optional<Box> extentOf(const Plan& plan, const Id& id) {
  const std::vector<Point2> shape = shapeOf(Locator(plan), plan, id);
  if (shape.empty()) return std::nullopt;
  return boxOf(shape);
}

std::optional<Box> extentOf(const Plan& plan, const std::set<Id>& ids) {
  const Locator locator(plan);
  std::vector<Point2> corners;
  for (const Id& id : ids) {
    const std::vector<Point2> shape = shapeOf(locator, plan, id);
    corners.insert(corners.end(), shape.begin(), shape.end());
  }
  if (corners.empty()) return std::nullopt;
  return boxOf(corners);
}

bool isLocked(const Plan& plan, const Id& id) {
  const Underlay* picture = plan.underlays.find(id);
  return (picture != nullptr && picture->locked) ||
         std::ranges::find(plan.locked, id) != plan.locked.end();
}

std::set<Id> unlocked(const Plan& plan, const std::set<Id>& ids) {
  std::set<Id> free;
  for (const Id& id : ids) {
    if (!isLocked(plan, id)) free.insert(id);
  }
  return free;
}

Plan lockObjects(const Plan& plan, const std::set<Id>& ids, bool locked) {
  const Locator locator(plan);
  Plan next = plan;
  for (const Id& id : ids) {
    if (!locator.find(id)) continue;
    std::erase(next.locked, id);
    if (const Underlay* found = plan.underlays.find(id)) { // it keeps its own lock
      Underlay picture = *found;
      picture.locked = locked;
      next.underlays.put(std::move(picture));
    } else if (locked) {
      next.locked.push_back(id);
    }
  }
  return next;
}

} // namespace sump
