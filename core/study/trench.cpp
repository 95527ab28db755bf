#include "core/study/trench.h"

#include "core/geometry/polygon.h"
#include "core/geometry/unit.h"
#include "core/study/buoyancy.h"
#include "core/study/trench_outline.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

/// The ground is looked at this often at least along a trench, in metres.
constexpr double kSampling = 3.0;
constexpr double kDepthHair = 1e-9;
constexpr double kStepped = 1e-3; // m of depth

/// Area of a section between two heights over its bottom.
double sliceArea(double width, double slope, double from, double to) {
  return to > from ? width * (to - from) + slope * (to * to - from * from) : 0;
}

/// Digs one run's trench leg by leg.
class TrenchDigger {
public:
  TrenchDigger(const TrenchGround& ground, const RunStudy& run, TrenchStudy& trench,
               BackfilledRun& backfilled)
      : ground_(ground), run_(run), trench_(trench), backfilled_(backfilled),
        under_(inMetres(run.outsideDiameter - run.insideDiameter) / 2 +
               inMetres(ground.figures.trenchBedding)),
        width_(inMetres(trench.bottomWidth)) {}

  /// With what is dug beyond it for upright pipe at its ends.
  void goAlongLeg(std::size_t leg);
  /// After the last leg.
  void finish();

private:
  void goAlong(Point3 a, Point3 b, bool hasPipe = true);
  Point3 beyond(Point3 from, Point3 end) const;
  /// Upright pipe beside a leg, and the invert at its other end where the run goes on from there.
  struct Upright {
    std::optional<double> nextInvert{};
  };
  std::optional<Upright> uprightAt(std::size_t leg, int step) const;
  /// Where the trench of a leg begins or ends, and how far it goes on from there without pipe.
  struct LegEnd {
    Point3 pipe;
    std::optional<Point3> beyond;
  };
  LegEnd legEnd(std::size_t leg, int step);
  void lookAround(Point2 a, Point2 b);
  std::vector<double> breaks(Point3 a, Point3 b) const;
  bool inShell(Point2 p) const;
  void passOver(Point3 from, Point3 to);
  void passThroughDig(Point3 from, Point3 to);
  std::optional<double> floorOver(Point2 p) const;
  TrenchPoint at(Point3 invert, Point3 toward, std::optional<double> floor) const;
  void add(const TrenchPoint& from, const TrenchPoint& to, bool indoors);
  void addVolume(const TrenchPoint& from, const TrenchPoint& to, double length);
  TrenchSection section(double depth) const;
  void endStretch();

  const TrenchGround& ground_;
  const RunStudy& run_;
  TrenchStudy& trench_;
  BackfilledRun& backfilled_;
  double under_; ///< from the invert to the bottom
  double width_;
  std::vector<std::size_t> shells_, floored_, digs_; ///< near the leg
  TrenchStretch stretch_;
  double length_ = 0, deepLength_ = 0, deepest_ = 0, deepestOutdoors_ = 0;
  TrenchSection volume_;
};

void addCrossings(const OutlineSet& set, const std::vector<std::size_t>& near, Point2 a, Point2 b,
                  std::vector<double>& cuts) {
  for (std::size_t i : near) {
    const Ring& ring = set.rings()[i];
    for (std::size_t k = 0; k < ring.size(); ++k) {
      if (const auto hit = crossSegments(a, b, ring[k], ring[(k + 1) % ring.size()])) {
        cuts.push_back(hit->alongFirst);
      }
    }
  }
}

/// Fractions of the leg between which the section changes evenly.
std::vector<double> TrenchDigger::breaks(Point3 a, Point3 b) const {
  std::vector<double> cuts = {0, 1};
  addCrossings(ground_.context.shells, shells_, flat(a), flat(b), cuts);
  addCrossings(ground_.context.floored, floored_, flat(a), flat(b), cuts);
  addCrossings(ground_.tops, digs_, flat(a), flat(b), cuts);
  for (std::size_t i : digs_) {
    const Ring& bottom = ground_.bottoms[i];
    for (std::size_t k = 0; k < bottom.size(); ++k) {
      if (const auto hit = crossSegments(flat(a), flat(b), bottom[k], bottom[(k + 1) % 4])) {
        cuts.push_back(hit->alongFirst);
      }
    }
  }
  std::ranges::sort(cuts);
  std::vector<double> steps = {0};
  const double length = distance(flat(a), flat(b));
  for (double cut : cuts) {
    const double from = steps.back();
    if ((cut - from) * length < kDepthHair) continue;
    const int parts = std::max(1, static_cast<int>(std::ceil((cut - from) * length / kSampling)));
    for (int part = 1; part <= parts; ++part)
      steps.push_back(from + (cut - from) * part / parts);
  }
  return steps;
}

bool TrenchDigger::inShell(Point2 p) const {
  return std::ranges::any_of(
      shells_, [&](std::size_t i) { return contains(ground_.context.shells.rings()[i], p); });
}

/// Of a room before that of the building round it; where no floor is known the ground stands for
/// it.
std::optional<double> TrenchDigger::floorOver(Point2 p) const {
  for (std::size_t i : floored_) {
    const std::optional<double>& floor = ground_.context.floors[i];
    if (floor && contains(ground_.context.floored.rings()[i], p)) return floor;
  }
  return std::nullopt;
}

/// At one end of a piece that goes `toward` the other: a place on the edge of a dig belongs to the
/// side on which the piece lies.
TrenchPoint TrenchDigger::at(Point3 invert, Point3 toward, std::optional<double> floor) const {
  constexpr double kInside = 1e-5; // of the piece
  const Point2 place = flat(lerp(invert, toward, kInside));
  TrenchPoint point{flat(invert), invert.z - under_, 0, 0};
  double surface = ground_.context.ground.elevation(point.at).value_or(point.bottom);
  if (floor) surface = invert.z < *floor ? *floor : point.bottom; // over a floor it hangs free
  for (std::size_t i : digs_) {
    if (surface <= point.bottom) break;
    surface = std::min(surface, ground_.digs[i].surface(place));
  }
  point.depth = std::max(0.0, surface - point.bottom);
  point.top = width_ + 2 * ground_.sides.at(point.depth) * point.depth;
  return point;
}

/// A piece inside the outline of a vault or a basin: does it pass over the vault's lid, in the
/// ground?
void TrenchDigger::passOver(Point3 from, Point3 to) {
  const Point3 middle = lerp(from, to, 0.5);
  const OutlineSet& vaults = ground_.context.vaults;
  const double underside = under_ - inMetres(ground_.figures.trenchBedding); // from the invert
  if (middle.z > ground_.context.ground.elevation(flat(middle)).value_or(middle.z)) return;
  for (std::size_t i : vaults.touching(boxOf({flat(middle)}))) {
    const Vault& vault = ground_.context.plan.vaults[i];
    const double lid = inMetres(lidTop(vault));
    const double gap = std::min(from.z, to.z) - underside - lid;
    if (gap < 0 || !contains(vaults.rings()[i], flat(middle))) continue;
    backfilled_.overLid += metres(distance(flat(from), flat(to)));
    backfilled_.lidGap = std::min(backfilled_.lidGap.value_or(metres(gap)), metres(gap));
  }
}

/// A piece that no trench is dug for: does it lie in a vault's dig?
void TrenchDigger::passThroughDig(Point3 from, Point3 to) {
  const Point3 middle = lerp(from, to, 0.5);
  if (middle.z > ground_.context.ground.elevation(flat(middle)).value_or(middle.z)) return;
  const auto holds = [&](std::size_t i) { return contains(ground_.tops.rings()[i], flat(middle)); };
  if (std::ranges::any_of(digs_, holds))
    backfilled_.length += metres(distance(flat(from), flat(to)));
}

/// What may be met on the way.
void TrenchDigger::lookAround(Point2 a, Point2 b) {
  const Box box = boxOf({a, b});
  shells_ = ground_.context.shells.touching(box);
  floored_ = ground_.context.floored.touching(box);
  digs_ = ground_.tops.touching(box);
}

void TrenchDigger::goAlong(Point3 a, Point3 b, bool hasPipe) {
  lookAround(flat(a), flat(b));
  const std::vector<double> steps = breaks(a, b);
  for (std::size_t i = 1; i < steps.size(); ++i) {
    const Point3 from = lerp(a, b, steps[i - 1]), to = lerp(a, b, steps[i]);
    const Point2 middle = flat(lerp(from, to, 0.5));
    if (inShell(middle)) {
      if (hasPipe) passOver(from, to);
      endStretch();
      continue;
    }
    const std::optional<double> floor = floorOver(middle);
    const TrenchPoint start = at(from, to, floor), end = at(to, from, floor);
    // It steps at a wall over it and at an upright side of a dig.
    if (!stretch_.empty() && std::abs(stretch_.back().depth - start.depth) > kStepped) endStretch();
    if (start.depth > 0 || end.depth > 0) {
      add(start, end, floor.has_value());
    } else {
      if (hasPipe) passThroughDig(from, to);
      endStretch();
    }
  }
}

/// Where a trench ends that comes `from` there to an upright `end`: half its bottom's width beyond
/// the centre, so that the pipe stands in it, or at a wall before that.
Point3 TrenchDigger::beyond(Point3 from, Point3 end) const {
  const Point2 at = flat(end), to = at + unitWay(flat(from), at) * (width_ / 2);
  const Box box = boxOf({at, to});
  std::vector<double> walls = {1};
  for (const OutlineSet* set : {&ground_.context.shells, &ground_.context.floored})
    addCrossings(*set, set->touching(box), at, to, walls);
  const Point2 stop = lerp(at, to, *std::ranges::min_element(walls));
  return {stop.x, stop.y, end.z};
}

/// At the leg's start (`step` is -1) or end (1).
std::optional<TrenchDigger::Upright> TrenchDigger::uprightAt(std::size_t leg, int step) const {
  const auto count = static_cast<int>(run_.legs.size());
  const int own = static_cast<int>(leg);
  int next = own + step;
  while (next >= 0 && next < count && run_.legs[static_cast<std::size_t>(next)].vertical)
    next += step;
  if (next == own + step) return std::nullopt;
  if (next < 0 || next >= count) return Upright{};
  return Upright{run_.points[static_cast<std::size_t>(step > 0 ? next : next + 1)].at.z};
}

/// For upright pipe a trench goes on beyond it. Where that goes down to a deeper leg, the trench of
/// that one holds it, and this one begins beside it.
TrenchDigger::LegEnd TrenchDigger::legEnd(std::size_t leg, int step) {
  const std::size_t own = step < 0 ? leg : leg + 1, far = step < 0 ? leg + 1 : leg;
  const Point3 end = run_.points[own].at, other = run_.points[far].at;
  const auto upright = uprightAt(leg, step);
  if (!upright) return {end, std::nullopt};
  if (!upright->nextInvert || *upright->nextInvert >= end.z) return {end, beyond(other, end)};
  const Point3 foot{end.x, end.y, *upright->nextInvert};
  lookAround(flat(foot), flat(foot));
  if (inShell(flat(foot)) || at(foot, foot, floorOver(flat(foot))).depth <= 0)
    return {end, std::nullopt};
  const double length = distance(flat(end), flat(other));
  return {lerp(end, other, std::min(0.5, width_ / 2 / length)), std::nullopt};
}

void TrenchDigger::goAlongLeg(std::size_t leg) {
  const LegEnd start = legEnd(leg, -1), end = legEnd(leg, 1);
  if (start.beyond) goAlong(*start.beyond, start.pipe, false);
  goAlong(start.pipe, end.pipe);
  if (end.beyond) goAlong(end.pipe, *end.beyond, false);
}

void TrenchDigger::add(const TrenchPoint& from, const TrenchPoint& to, bool indoors) {
  constexpr double kSamePlace = 1e-6; // m; a leg's end is worked out anew as the next one's start
  if (stretch_.empty() || distance(stretch_.back().at, from.at) > kSamePlace) {
    endStretch();
    stretch_.push_back(from);
  }
  stretch_.push_back(to);
  const double length = distance(from.at, to.at);
  length_ += length;
  const double deep = inMetres(ground_.figures.egressFrom) - kDepthHair;
  if (std::max(from.depth, to.depth) >= deep) deepLength_ += length;
  for (const TrenchPoint& point : {from, to}) {
    if (!indoors) deepestOutdoors_ = std::max(deepestOutdoors_, point.depth);
    if (point.depth <= deepest_) continue;
    deepest_ = point.depth;
    trench_.deepest = point.at;
  }
  addVolume(from, to, length);
}

TrenchSection TrenchDigger::section(double depth) const {
  return trenchSection(width_, depth, ground_.sides.at(depth),
                       inMetres(ground_.figures.trenchBedding), inMetres(ground_.figures.pipeZone),
                       inMetres(run_.outsideDiameter));
}

/// Simpson's rule: exact where the depth changes evenly and the sides keep their slope.
void TrenchDigger::addVolume(const TrenchPoint& from, const TrenchPoint& to, double length) {
  const auto take = [&](double depth, double weight) {
    const TrenchSection s = section(depth);
    volume_.bedding += s.bedding * weight;
    volume_.pipeZone += s.pipeZone * weight;
    volume_.backfill += s.backfill * weight;
    volume_.pipe += s.pipe * weight;
  };
  take(from.depth, length / 6);
  take((from.depth + to.depth) / 2, length * 4 / 6);
  take(to.depth, length / 6);
}

void TrenchDigger::endStretch() {
  if (stretch_.size() > 1) trench_.stretches.push_back(std::move(stretch_));
  stretch_.clear();
}

void TrenchDigger::finish() {
  endStretch();
  trench_.length = metres(length_);
  trench_.depth = metres(deepest_);
  trench_.depthOutdoors = metres(deepestOutdoors_);
  trench_.dug = cubicMetres(volume_.dug());
  trench_.bedding = cubicMetres(volume_.bedding);
  trench_.pipeZone = cubicMetres(volume_.pipeZone);
  trench_.backfill = cubicMetres(volume_.backfill);
  trench_.egress.needed = deepLength_ > 0;
  if (trench_.egress.needed) {
    trench_.egress.laddersNeeded = laddersFor(deepLength_, inMetres(ground_.figures.egressTravel));
  }
}

} // namespace

Length trenchWidth(Length outsideDiameter, const Limits& limits) {
  return std::max(outsideDiameter + limits.length("trench.width-over"),
                  1.25 * outsideDiameter + limits.length("trench.width-large"));
}

TrenchSection trenchSection(double width, double depth, double slope, double bedding,
                            double pipeZone, double outsideDiameter) {
  TrenchSection section;
  const double bed = std::min(bedding, depth);
  const double zone = std::min(bedding + outsideDiameter + pipeZone, depth);
  section.bedding = sliceArea(width, slope, 0, bed);
  const double filled = sliceArea(width, slope, bed, zone);
  section.pipe = std::min(filled, kPi / 4 * outsideDiameter * outsideDiameter);
  section.pipeZone = filled - section.pipe;
  section.backfill = sliceArea(width, slope, zone, depth);
  return section;
}

Ring trenchOutline(const TrenchPoint& a, const TrenchPoint& b) {
  const Point2 way = b.at - a.at;
  const double length = norm(way);
  if (length <= 0) return {};
  const Point2 left = Point2{-way.y, way.x} * (1 / length);
  return {a.at - left * (a.top / 2), b.at - left * (b.top / 2), b.at + left * (b.top / 2),
          a.at + left * (a.top / 2)};
}

DugRun trench(const TrenchGround& ground, const RunStudy& run) {
  if (!run.resolved || ground.context.ground.empty()) return {};
  TrenchStudy result;
  BackfilledRun backfilled;
  result.run = backfilled.run = run.id;
  result.bottomWidth = trenchWidth(run.outsideDiameter, ground.context.limits);
  TrenchDigger digger(ground, run, result, backfilled);
  for (std::size_t i = 0; i < run.legs.size(); ++i) {
    if (!run.legs[i].vertical && run.legs[i].outsideVault) digger.goAlongLeg(i);
  }
  digger.finish();
  DugRun dug;
  if (backfilled.length + backfilled.overLid > metres(0)) dug.backfilled = std::move(backfilled);
  if (result.stretches.empty()) return dug;
  fillTrenchLadders(ground, result);
  dug.trench = std::move(result);
  return dug;
}

} // namespace sump
