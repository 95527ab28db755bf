#include "core/plan/edits_run_corners.h"

#include "core/geometry/polygon.h"
#include "core/plan/edits.h"
#include "core/plan/edits_outlines.h"
#include "core/plan/edits_parts.h"
#include "core/plan/ends.h"

namespace sump {

namespace {

constexpr double kSameCorner = 1e-6; // metres

/// First and one past the last of the corners at the place of this one.
std::pair<std::size_t, std::size_t> stackOf(const Run& run, std::size_t corner) {
  const Point2 at = run.vertices[corner].at;
  std::size_t first = corner, last = corner + 1;
  while (first > 0 && distance(run.vertices[first - 1].at, at) < kSameCorner)
    --first;
  while (last < run.vertices.size() && distance(run.vertices[last].at, at) < kSameCorner)
    ++last;
  return {first, last};
}

} // namespace

Plan moveRunCorner(const Plan& plan, std::string_view run, std::size_t corner, Point2 to) {
  const Run* found = plan.runs.find(run);
  if (found == nullptr || corner >= found->vertices.size()) return plan;
  Run changed = *found;
  const auto [first, last] = stackOf(changed, corner);
  for (std::size_t i = first; i < last; ++i)
    changed.vertices[i].at = to;
  Plan next = plan;
  next.runs.put(std::move(changed));
  return next;
}

Plan eraseRunCorner(const Plan& plan, std::string_view run, std::size_t corner) {
  const Run* found = plan.runs.find(run);
  if (found == nullptr || corner >= found->vertices.size()) return plan;
  const auto [first, last] = stackOf(*found, corner);
  Plan next = plan;
  for (std::size_t i = last; i > first; --i)
    next = eraseVertex(next, run, i - 1);
  return next;
}

Plan moveRunEnd(const Plan& plan, std::string_view run, bool start, const RunEnd& end) {
  const Run* found = plan.runs.find(run);
  if (found == nullptr) return plan;
  Run changed = *found;
  RunEnd& moved = start ? changed.from : changed.to;
  const std::optional<Point2> was = sitePosition(plan, moved);
  const std::optional<Point2> is = sitePosition(plan, end);
  moved = end;
  if (was && is) {
    const std::size_t count = changed.vertices.size();
    for (std::size_t i = 0; i < count; ++i) {
      Vertex& corner = changed.vertices[start ? i : count - 1 - i];
      if (distance(corner.at, *was) >= kSameCorner) break;
      corner.at = *is;
    }
  }
  Plan next = plan;
  next.runs.put(std::move(changed));
  return next;
}

std::optional<Plan> cornerAdded(const Plan& plan, std::string_view id, Point2 at, double reach) {
  std::optional<Corners> corners = cornersOf(plan, id);
  const Run* run = id.empty() ? nullptr : plan.runs.find(id);
  if (run != nullptr) {
    const std::optional<Polyline> line = Locator(plan).centreline(*run);
    if (line) corners = Corners{*line, false};
  }
  if (!corners || corners->points.size() < 2) return std::nullopt;
  Polyline line = corners->points;
  if (corners->closed) line.push_back(line.front());
  const std::optional<Station> place = stationNear(line, at);
  if (!place || distance(place->at, at) > reach) return std::nullopt;
  for (Point2 corner : line) {
    if (distance(corner, place->at) <= reach) return std::nullopt;
  }
  const auto leg = static_cast<std::size_t>(place->leg);
  return run != nullptr ? insertVertex(plan, id, leg, {place->at, std::nullopt})
                        : insertCorner(plan, id, leg, place->at);
}

} // namespace sump
