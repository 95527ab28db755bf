#include "core/plan/edits_runs.h"

#include "core/plan/edits_objects.h"
#include "core/plan/ends.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kSamePlace = 1e-9; // metres

Run reversed(const Run& run) {
  Run back = run;
  std::swap(back.from, back.to);
  std::ranges::reverse(back.vertices);
  const int lastLeg = static_cast<int>(run.vertices.size());
  for (InlinePart& part : back.parts) {
    part.leg = lastLeg - part.leg;
    part.along = 1 - part.along;
  }
  std::ranges::reverse(back.parts);
  return back;
}

RunEnd freeEnd(Point2 at, std::optional<Length> invert) {
  RunEnd end;
  end.at = at;
  end.invert = invert;
  return end;
}

/// Puts the part on its side of the cut; true when it belongs to the second half.
bool cutPart(InlinePart& part, int leg, double along) {
  if (part.leg < leg) return false;
  if (part.leg == leg && part.along <= along) {
    part.along = along > 0 ? part.along / along : 0;
    return false;
  }
  if (part.leg == leg) part.along = along < 1 ? (part.along - along) / (1 - along) : 1;
  part.leg -= leg;
  return true;
}

bool meet(const Locator& where, const RunEnd& a, const RunEnd& b, double reach) {
  if (a.kind != EndKind::Free || b.kind != EndKind::Free) return false;
  return distance(*where.position(a), *where.position(b)) <= reach;
}

/// `second` appended to `first`, end to start. Where they met stays a corner.
Run appended(Run first, const Run& second) {
  const int legs = static_cast<int>(first.vertices.size()) + 1;
  const std::optional<Length> level = first.to.invert ? first.to.invert : second.from.invert;
  first.vertices.push_back({first.to.at, level});
  first.vertices.insert(first.vertices.end(), second.vertices.begin(), second.vertices.end());
  first.to = second.to;
  for (InlinePart part : second.parts) {
    part.leg += legs;
    first.parts.push_back(part);
  }
  if (!first.eductor) first.eductor = second.eductor;
  return first;
}

/// Where two legs that were moved sideways meet; their own ends when they run on straight.
Point2 mitre(Point2 before, Point2 corner, Point2 after, double offset) {
  const Point2 u = (corner - before) * (1 / distance(before, corner));
  const Point2 v = (after - corner) * (1 / distance(corner, after));
  const Point2 nu{-u.y, u.x}, nv{-v.y, v.x};
  const double share = 1 + dot(u, v);
  // A leg that turns back would throw its corner far away.
  if (share < 0.1) return corner + nu * offset;
  return corner + (nu + nv) * (offset / share);
}

std::vector<Point2> withoutRepeats(const Polyline& line) {
  std::vector<Point2> clean;
  for (Point2 p : line) {
    if (clean.empty() || distance(clean.back(), p) > kSamePlace) clean.push_back(p);
  }
  return clean;
}

} // namespace

Plan reverseRun(const Plan& plan, std::string_view run) {
  const Run* found = plan.runs.find(run);
  if (found == nullptr) return plan;
  Plan next = plan;
  next.runs.put(reversed(*found));
  return next;
}

Plan splitRun(const Plan& plan, std::string_view run, int leg, double along,
              std::optional<Length> invert, Id& made) {
  const Locator where(plan);
  const Run* found = where.run(run);
  if (found == nullptr || leg < 0 || leg > static_cast<int>(found->vertices.size())) return plan;
  const std::optional<Polyline> line = where.centreline(*found);
  if (!line) return plan;
  const auto at = static_cast<std::size_t>(leg);
  const Point2 cut = lerp((*line)[at], (*line)[at + 1], std::clamp(along, 0.0, 1.0));
  Run first = *found, second = *found;
  second.id = made = freshId(plan, facts(found->service).code);
  const auto corner = found->vertices.begin() + leg;
  first.vertices.assign(found->vertices.begin(), corner);
  second.vertices.assign(corner, found->vertices.end());
  first.to = second.from = freeEnd(cut, invert);
  first.parts.clear();
  second.parts.clear();
  for (InlinePart part : found->parts) {
    Run& side = cutPart(part, leg, along) ? second : first;
    side.parts.push_back(part);
  }
  (found->to.fitting == EndFitting::Eductor ? first : second).eductor.reset();
  Plan next = plan;
  const auto position = static_cast<std::size_t>(next.runs.indexOf(run));
  next.runs.put(std::move(first));
  next.runs.insert(position + 1, std::move(second));
  return next;
}

std::optional<Plan> joinRuns(const Plan& plan, std::string_view first, std::string_view second,
                             double reach) {
  const Locator where(plan);
  const Run *a = where.run(first), *b = where.run(second);
  if (a == nullptr || b == nullptr || a == b) return std::nullopt;
  if (a->service != b->service || a->pipe != b->pipe || a->size != b->size) return std::nullopt;
  std::optional<Run> whole;
  if (meet(where, a->to, b->from, reach)) {
    whole = appended(*a, *b);
  } else if (meet(where, a->to, b->to, reach)) {
    whole = appended(*a, reversed(*b));
  } else if (meet(where, a->from, b->to, reach)) {
    whole = appended(*b, *a);
  } else if (meet(where, a->from, b->from, reach)) {
    whole = appended(reversed(*b), *a);
  }
  if (!whole) return std::nullopt;
  whole->id = a->id;
  whole->name = a->name;
  whole->conductors = a->conductors;
  Plan next = eraseObjects(plan, {b->id});
  next.runs.put(std::move(*whole));
  return next;
}

Polyline offsetLine(const Polyline& line, double offset) {
  const std::vector<Point2> clean = withoutRepeats(line);
  if (clean.size() < 2) return {};
  Polyline moved;
  for (std::size_t i = 0; i < clean.size(); ++i) {
    if (i > 0 && i + 1 < clean.size()) {
      moved.push_back(mitre(clean[i - 1], clean[i], clean[i + 1], offset));
      continue;
    }
    const std::size_t leg = i == 0 ? 0 : i - 1;
    const Point2 u = (clean[leg + 1] - clean[leg]) * (1 / distance(clean[leg], clean[leg + 1]));
    moved.push_back(clean[i] + Point2{-u.y, u.x} * offset);
  }
  return moved;
}

std::optional<Plan> parallelRun(const Plan& plan, std::string_view run, double offset, Id& made) {
  const Locator where(plan);
  const Run* found = where.run(run);
  if (found == nullptr || offset == 0) return std::nullopt;
  const std::optional<Polyline> line = where.centreline(*found);
  if (!line) return std::nullopt;
  const Polyline moved = offsetLine(*line, offset);
  if (moved.size() < 2) return std::nullopt;
  Run beside = *found;
  beside.id = made = freshId(plan, facts(found->service).code);
  beside.parts.clear();
  beside.eductor.reset();
  beside.from = freeEnd(moved.front(), found->from.invert);
  beside.to = freeEnd(moved.back(), found->to.invert);
  // A drop of two corners at one place becomes one corner at the later level.
  std::vector<std::pair<Point2, std::optional<Length>>> levels;
  for (std::size_t i = 0; i < line->size(); ++i) {
    const std::optional<Length> level = i == 0                  ? found->from.invert
                                        : i + 1 == line->size() ? found->to.invert
                                                                : found->vertices[i - 1].invert;
    if (!levels.empty() && distance(levels.back().first, (*line)[i]) <= kSamePlace) {
      levels.back().second = level ? level : levels.back().second;
    } else {
      levels.emplace_back((*line)[i], level);
    }
  }
  beside.from.invert = levels.front().second;
  beside.to.invert = levels.back().second;
  beside.vertices.clear();
  for (std::size_t i = 1; i + 1 < moved.size(); ++i)
    beside.vertices.push_back({moved[i], levels[i].second});
  Plan next = plan;
  next.runs.append(std::move(beside));
  return next;
}

} // namespace sump
