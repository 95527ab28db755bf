#include "core/plan/edits_parts.h"

#include "core/geometry/polygon.h"
#include "core/plan/edits_objects.h"
#include "core/plan/ends.h"

#include <algorithm>
#include <tuple>

namespace sump {

namespace {

constexpr double kSameStation = 1e-9; // metres

void sortParts(Run& run) {
  std::ranges::stable_sort(run.parts, {},
                           [](const InlinePart& part) { return std::tuple(part.leg, part.along); });
}

/// Applies `change` to the run that holds the part and to the part's position in it.
template <class Change> Plan changePart(const Plan& plan, std::string_view part, Change change) {
  const Locator where(plan);
  const std::optional<ObjectPlace> place = where.find(part);
  if (!place || place->kind != ObjectKind::Part) return plan;
  Run run = plan.runs[place->index];
  change(run, place->part);
  sortParts(run);
  Plan next = plan;
  next.runs.put(std::move(run));
  return next;
}

} // namespace

std::optional<Station> stationNear(const Polyline& line, Point2 p) {
  std::optional<Station> best;
  double least = 1e300, before = 0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const double length = distance(line[i], line[i + 1]);
    if (length <= kSameStation) continue; // a drop: there is no place along it in plan
    const Foot foot = nearestOnSegment(p, line[i], line[i + 1]);
    if (foot.distance < least) {
      least = foot.distance;
      best = Station{static_cast<int>(i), foot.along, foot.at, before + foot.along * length};
    }
    before += length;
  }
  return best;
}

std::optional<Station> stationAt(const Polyline& line, double metresFromStart) {
  std::optional<Station> last;
  double before = 0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const double length = distance(line[i], line[i + 1]);
    if (length <= kSameStation) continue;
    const double along = std::clamp((metresFromStart - before) / length, 0.0, 1.0);
    last = Station{static_cast<int>(i), along, lerp(line[i], line[i + 1], along),
                   before + along * length};
    before += length;
    if (metresFromStart <= before) break;
  }
  return last;
}

std::optional<Station> stationOf(const Polyline& line, const InlinePart& part) {
  if (part.leg < 0 || static_cast<std::size_t>(part.leg) + 1 >= line.size()) return std::nullopt;
  const auto leg = static_cast<std::size_t>(part.leg);
  double before = 0;
  for (std::size_t i = 0; i < leg; ++i)
    before += distance(line[i], line[i + 1]);
  return Station{part.leg, part.along, lerp(line[leg], line[leg + 1], part.along),
                 before + part.along * distance(line[leg], line[leg + 1])};
}

Plan addPart(const Plan& plan, std::string_view run, PartKind kind, const std::string& toSize,
             const Station& where, Id& made) {
  const Run* found = plan.runs.find(run);
  if (found == nullptr) return plan;
  Run changed = *found;
  made = freshId(plan, changed.id);
  changed.parts.push_back({made, kind, where.leg, where.along, toSize});
  sortParts(changed);
  Plan next = plan;
  next.runs.put(std::move(changed));
  return next;
}

Plan movePart(const Plan& plan, std::string_view part, const Station& to) {
  return changePart(plan, part, [&to](Run& run, std::size_t i) {
    run.parts[i].leg = to.leg;
    run.parts[i].along = to.along;
  });
}

Plan erasePart(const Plan& plan, std::string_view part) {
  return changePart(plan, part, [](Run& run, std::size_t i) {
    run.parts.erase(run.parts.begin() + static_cast<std::ptrdiff_t>(i));
  });
}

} // namespace sump
