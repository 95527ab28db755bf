#include "core/plan/edits_outlines.h"

namespace sump {

namespace {

template <class T>
bool putCorners(Items<T>& list, std::string_view id, std::vector<Point2> T::*member,
                const std::vector<Point2>& points) {
  const T* found = list.find(id);
  if (found == nullptr) return false;
  T copy = *found;
  copy.*member = points;
  list.put(std::move(copy));
  return true;
}

Plan withCorners(const Plan& plan, std::string_view id, const std::vector<Point2>& points) {
  Plan next = plan;
  if (id.empty()) {
    next.site.boundary = points;
    return next;
  }
  if (!putCorners(next.buildings, id, &Building::outline, points) &&
      !putCorners(next.pavements, id, &Pavement::outline, points)) {
    putCorners(next.utilities, id, &Utility::path, points);
  }
  return next;
}

} // namespace

std::optional<Corners> cornersOf(const Plan& plan, std::string_view id) {
  if (id.empty()) {
    if (plan.site.boundary.empty()) return std::nullopt;
    return Corners{plan.site.boundary, true};
  }
  if (const Building* b = plan.buildings.find(id)) return Corners{b->outline, true};
  if (const Pavement* p = plan.pavements.find(id)) return Corners{p->outline, true};
  if (const Utility* u = plan.utilities.find(id)) return Corners{u->path, false};
  return std::nullopt;
}

Plan moveCorner(const Plan& plan, std::string_view id, std::size_t corner, Point2 to) {
  std::optional<Corners> corners = cornersOf(plan, id);
  if (!corners || corner >= corners->points.size()) return plan;
  corners->points[corner] = to;
  return withCorners(plan, id, corners->points);
}

Plan insertCorner(const Plan& plan, std::string_view id, std::size_t leg, Point2 at) {
  std::optional<Corners> corners = cornersOf(plan, id);
  if (!corners || leg >= corners->legs()) return plan;
  corners->points.insert(corners->points.begin() + static_cast<std::ptrdiff_t>(leg) + 1, at);
  return withCorners(plan, id, corners->points);
}

Plan eraseCorner(const Plan& plan, std::string_view id, std::size_t corner) {
  std::optional<Corners> corners = cornersOf(plan, id);
  if (!corners || corner >= corners->points.size()) return plan;
  if (corners->points.size() <= corners->least()) return plan;
  corners->points.erase(corners->points.begin() + static_cast<std::ptrdiff_t>(corner));
  return withCorners(plan, id, corners->points);
}

} // namespace sump
