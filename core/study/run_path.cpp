// From a run's ends and vertices to points in space, legs, lengths and slopes.

#include "core/study/context.h"
#include "core/study/leg_sizes.h"

#include "core/geometry/polygon.h"

#include <algorithm>

namespace sump {

namespace {

/// Shorter than this in plan, a leg is vertical (or nothing at all).
constexpr double kPlanTiny = 1e-6;

/// Resolves runs in any order; a run that ends on another needs that one first.
class PathFinder {
public:
  explicit PathFinder(const StudyContext& context)
      : context_(context), done_(context.plan.runs.size(), false),
        paths_(context.plan.runs.size()) {}

  /// Empty when an end has no place or no level.
  const std::vector<Point3>& path(std::size_t index, int depth = 0);

private:
  std::vector<Point3> find(const Run& run, int depth);
  std::optional<double> endInvert(const RunEnd& end, Point2 at, int depth);
  std::optional<double> invertOnRun(const Id& target, Point2 at, int depth);

  const StudyContext& context_;
  std::vector<bool> done_;
  std::vector<std::vector<Point3>> paths_;
};

const std::vector<Point3>& PathFinder::path(std::size_t index, int depth) {
  if (!done_[index] && depth <= kDeepestBranching) {
    std::vector<Point3> found = find(context_.plan.runs[index], depth);
    paths_[index] = std::move(found);
    done_[index] = true;
  }
  return paths_[index];
}

std::optional<double> PathFinder::invertOnRun(const Id& target, Point2 at, int depth) {
  const auto place = context_.locator.find(target);
  if (!place || place->kind != ObjectKind::Run) return std::nullopt;
  const std::vector<Point3>& other = path(place->index, depth + 1);
  if (other.size() < 2) return std::nullopt;
  return nearestPlace(other, at)->at.z;
}

/// The run's own figure wins; otherwise what the target knows.
std::optional<double> PathFinder::endInvert(const RunEnd& end, Point2 at, int depth) {
  if (end.invert) return inMetres(*end.invert);
  switch (end.kind) {
  case EndKind::Basin:
    if (const Basin* b = context_.locator.basin(end.target)) return inMetres(b->outletInvert);
    break;
  case EndKind::Sewer:
    if (const auto* s = context_.locator.sewer(end.target)) return inMetres(s->invert);
    break;
  case EndKind::Port:
    if (const Port* p = context_.locator.port(end.target)) {
      return inMetres(context_.locator.roomOfPort(end.target)->floor + p->height);
    }
    break;
  case EndKind::Wash:
    if (const auto* w = context_.locator.wash(end.target)) return inMetres(w->inletElevation);
    break;
  case EndKind::Run:
    return invertOnRun(end.target, at, depth);
  case EndKind::Free:
  case EndKind::Chamber:
    break;
  }
  return std::nullopt;
}

/// Fills unknown inverts between known neighbours, in proportion to plan length.
void grade(std::vector<Point3>& points, std::vector<std::optional<double>> inverts) {
  std::size_t known = 0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (!inverts[i]) continue;
    double span = 0;
    for (std::size_t k = known + 1; k <= i; ++k)
      span += distance(flat(points[k - 1]), flat(points[k]));
    double along = 0;
    for (std::size_t k = known + 1; k < i; ++k) {
      along += distance(flat(points[k - 1]), flat(points[k]));
      const double t = span > 0 ? along / span : 0;
      points[k].z = *inverts[known] + t * (*inverts[i] - *inverts[known]);
    }
    points[i].z = *inverts[i];
    known = i;
  }
}

std::vector<Point3> PathFinder::find(const Run& run, int depth) {
  const auto line = context_.locator.centreline(run);
  if (!line) return {};
  std::vector<std::optional<double>> inverts = {endInvert(run.from, line->front(), depth)};
  for (const Vertex& vertex : run.vertices) {
    inverts.push_back(vertex.invert ? std::optional(inMetres(*vertex.invert)) : std::nullopt);
  }
  inverts.push_back(endInvert(run.to, line->back(), depth));
  if (!inverts.front() || !inverts.back()) return {};
  std::vector<Point3> points;
  for (Point2 p : *line)
    points.push_back(raised(p, 0));
  grade(points, std::move(inverts));
  return points;
}

void fillPoints(const StudyContext& context, const std::vector<Point3>& path, RunStudy& study) {
  double station = 0;
  for (std::size_t i = 0; i < path.size(); ++i) {
    if (i > 0) station += distance(path[i - 1], path[i]);
    const int vertex = static_cast<int>(i) - 1;
    study.points.push_back({path[i], station, context.ground.elevation(flat(path[i])), vertex});
  }
}

/// Vaults may stand wall to wall, so a point can belong to two of them.
bool withinOneVault(const StudyContext& context, Point2 a, Point2 b) {
  return std::ranges::any_of(context.vaults.touching({a, a}), [&](std::size_t i) {
    const Ring& vault = context.vaults.rings()[i];
    return contains(vault, a) && contains(vault, b);
  });
}

void fillLegs(const StudyContext& context, const Run& run, RunStudy& study) {
  double planSum = 0, fallSum = 0;
  for (std::size_t i = 1; i < study.points.size(); ++i) {
    const Point3 a = study.points[i - 1].at, b = study.points[i].at;
    Leg leg;
    const double length = distance(flat(a), flat(b));
    leg.vertical = length < kPlanTiny;
    leg.plan = metres(leg.vertical ? 0 : length); // one station for both of its ends
    leg.developed = metres(distance(a, b));
    leg.outsideVault = !withinOneVault(context, flat(a), flat(b));
    leg.size = sizeAt(run, i - 1, kPlanTiny); // after a reducer that stands at the very start
    if (!leg.vertical) {
      leg.slope = (a.z - b.z) / length;
      planSum += length;
      fallSum += a.z - b.z;
      if (leg.outsideVault) {
        study.leastSlope = std::min(study.leastSlope.value_or(leg.slope), leg.slope);
      }
    }
    study.plan += leg.plan;
    study.developed += leg.developed;
    study.legs.push_back(std::move(leg));
  }
  study.slope = planSum > 0 ? fallSum / planSum : 0;
}

RunStudy runStudy(const StudyContext& context, const Run& run, const std::vector<Point3>& path) {
  RunStudy study;
  study.id = run.id;
  study.service = run.service;
  if (const PipeSize* size = context.catalog.pipeSize(run.pipe, run.size)) {
    study.outsideDiameter = size->outside;
    study.insideDiameter = size->inside;
  } else {
    study.problem = "run.no-such-pipe";
  }
  if (path.empty()) {
    study.problem = "run.no-level";
    return study;
  }
  study.resolved = true;
  fillPoints(context, path, study);
  fillLegs(context, run, study);
  study.startInvert = metres(path.front().z);
  study.endInvert = metres(path.back().z);
  return study;
}

} // namespace

std::optional<PathPlace> nearestPlace(const std::vector<Point3>& path, Point2 p) {
  std::optional<PathPlace> best;
  double least = 0;
  for (std::size_t leg = 0; leg + 1 < path.size(); ++leg) {
    const Foot foot = nearestOnSegment(p, flat(path[leg]), flat(path[leg + 1]));
    if (best && foot.distance >= least) continue;
    least = foot.distance;
    best = PathPlace{leg, foot.along, lerp(path[leg], path[leg + 1], foot.along)};
  }
  return best;
}

std::string sizeAt(const Run& run, std::size_t leg, double along) {
  const InlinePart* last = nullptr;
  // The end of one leg stands before the start of the next: a reducer there comes before the bend.
  const auto placeOf = [](const InlinePart& part) { return std::pair(part.leg, part.along); };
  const auto place = std::pair(static_cast<int>(leg), along);
  for (const InlinePart& part : run.parts) {
    if (part.kind != PartKind::Reducer || placeOf(part) >= place) continue;
    if (last == nullptr || placeOf(part) >= placeOf(*last)) last = &part;
  }
  return last == nullptr ? run.size : last->toSize;
}

std::vector<SizedStretch> legSizes(const Run& run, std::size_t leg) {
  std::vector<const InlinePart*> reducers; // one at the very start is in Leg::size already
  for (const InlinePart& part : run.parts) {
    const bool within = part.leg == static_cast<int>(leg) && part.along >= kPlanTiny;
    if (part.kind == PartKind::Reducer && within) reducers.push_back(&part);
  }
  std::ranges::stable_sort(reducers, {}, &InlinePart::along);
  std::vector<SizedStretch> stretches = {{sizeAt(run, leg, kPlanTiny), 1}};
  double from = 0;
  for (const InlinePart* reducer : reducers) {
    stretches.back().share = reducer->along - from;
    from = reducer->along;
    stretches.push_back({reducer->toSize, 1 - from});
  }
  std::erase_if(stretches, [](const SizedStretch& stretch) { return stretch.share <= kPlanTiny; });
  return stretches;
}

std::optional<Length> smallestBore(const Catalog& catalog, const Run& run, std::size_t leg) {
  std::optional<Length> least;
  for (const SizedStretch& stretch : legSizes(run, leg)) {
    const PipeSize* pipe = catalog.pipeSize(run.pipe, stretch.size);
    if (pipe == nullptr) return std::nullopt;
    least = least ? std::min(*least, pipe->inside) : pipe->inside;
  }
  return least;
}

std::vector<RunStudy> runPaths(const StudyContext& context) {
  PathFinder finder(context);
  std::vector<RunStudy> studies;
  studies.reserve(context.plan.runs.size());
  for (std::size_t i = 0; i < context.plan.runs.size(); ++i) {
    studies.push_back(runStudy(context, context.plan.runs[i], finder.path(i)));
  }
  return studies;
}

} // namespace sump
