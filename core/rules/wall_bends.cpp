// Fittings that reach into the walls which their line goes through: a wall, its sleeve and a
// connector take straight pipe only. And lines that lie along in a wall instead of going through.

#include "core/geometry/polygon.h"
#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/context.h"
#include "core/study/object_names.h"
#include "core/study/pass_slant.h"
#include "core/study/wall_sleeves.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace sump {

namespace {

constexpr double kOnLeg = 1e-6; // m

/// How far a fitting reaches from its centre along a leg.
struct Arm {
  std::size_t leg = 0;
  Point2 from, to; ///< the centre, and the leg's end that the arm points to
  Length reach;
  std::string which; ///< tells the findings of a line apart
};

std::optional<FittingKind> turnAtEnd(EndFitting fitting) {
  if (fitting == EndFitting::Tee) return FittingKind::Tee;
  if (fitting == EndFitting::ElbowDown || fitting == EndFitting::ElbowUp)
    return FittingKind::Elbow90;
  return std::nullopt;
}

/// The tee by which a line joins another; it is the other's in make and size.
struct BranchTee {
  std::size_t leg = 0; ///< of the other line
  Point2 at;
  Length reach;
};

std::optional<BranchTee> branchTee(const RuleInput& input, const RunEnd& end) {
  if (end.kind != EndKind::Run) return std::nullopt;
  const Run* joined = input.plan.runs.find(end.target);
  const RunStudy* study = input.study.run(end.target);
  if (joined == nullptr || study == nullptr || !study->resolved) return std::nullopt;
  std::vector<Point3> path;
  for (const RunPoint& point : study->points)
    path.push_back(point.at);
  const auto place = nearestPlace(path, end.at);
  const FittingFamily* family = input.catalog.fittingsFor(joined->pipe);
  if (!place || family == nullptr) return std::nullopt;
  const auto reach = family->takeOut(FittingKind::Tee, sizeAt(*joined, place->leg, place->along));
  if (!reach) return std::nullopt;
  return BranchTee{place->leg, flat(place->at), *reach};
}

/// Gathers the arms of one line's fittings.
class Arms {
public:
  Arms(const RuleInput& input, const Run& run, const RunStudy& study)
      : input_(input), run_(run), study_(study), family_(input.catalog.fittingsFor(run.pipe)) {}

  std::vector<Arm> find() {
    addEnd(run_.from, 0);
    for (const Bend& bend : study_.bends) {
      if (!bend.fittings.empty())
        addTurn(static_cast<std::size_t>(bend.point), bend.fittings.front(), bend.fittings.back());
    }
    addEnd(run_.to, study_.points.size() - 1);
    for (const Run& other : input_.plan.runs) {
      for (const RunEnd* end : {&other.from, &other.to})
        if (end->target == run_.id) addBranch(other, *end);
    }
    return std::move(arms_);
  }

private:
  /// Of several fittings that make one turn each reaches to its own side, as in the cutting list.
  void addTurn(std::size_t point, FittingKind first, FittingKind last) {
    if (family_ == nullptr) return;
    const std::string size = sizeAt(run_, point, 0);
    const auto before = family_->takeOut(first, size), after = family_->takeOut(last, size);
    if (before && after) addBothWays(point, *before, *after);
  }
  void addBothWays(std::size_t point, Length before, Length after) {
    const Point2 at = flat(study_.points[point].at);
    const std::string which = std::to_string(point);
    if (point > 0)
      arms_.push_back({point - 1, at, flat(study_.points[point - 1].at), before, which});
    if (point < study_.legs.size())
      arms_.push_back({point, at, flat(study_.points[point + 1].at), after, which});
  }
  void addEnd(const RunEnd& end, std::size_t point) {
    if (const auto kind = turnAtEnd(end.fitting)) addTurn(point, *kind, *kind);
    if (const auto tee = branchTee(input_, end)) addBothWays(point, tee->reach, tee->reach);
  }
  void addBranch(const Run& branch, const RunEnd& end) {
    const auto tee = branchTee(input_, end);
    if (!tee) return;
    for (std::size_t to : {tee->leg, tee->leg + 1})
      arms_.push_back({tee->leg, tee->at, flat(study_.points[to].at), tee->reach, branch.id});
  }

  const RuleInput& input_;
  const Run& run_;
  const RunStudy& study_;
  const FittingFamily* family_;
  std::vector<Arm> arms_;
};

/// A wall where the line goes through it.
struct WallHere {
  std::string_view name; ///< of the message
  Id of;
  Id spoken;     ///< whose name is told
  Ring outline;  ///< its outside; empty: a baffle, met at its middle plane
  Point2 at;     ///< on the outline
  Length square; ///< thickness
  Angle slant;
};

/// Along a leg from a place to the nearer face; negative within the wall.
Length wayToWall(const WallHere& wall, Point2 from) {
  const double out = distance(from, wall.at);
  constexpr double kLeast = 0.1; // a line nearly along its wall is the slants' matter
  const double through = std::max(std::cos(inRadians(wall.slant)), kLeast);
  if (wall.outline.empty()) return metres(out) - wall.square / (2 * through);
  if (!contains(wall.outline, from)) return metres(out);
  return metres(out) - wall.square / through;
}

/// The place on an outline that is nearest.
Point2 nearestOn(const Ring& ring, Point2 at) {
  Point2 best = at;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point2 a = ring[i], b = ring[(i + 1) % ring.size()];
    const Foot foot = nearestOnSegment(at, a, b);
    if (foot.distance >= least) continue;
    least = foot.distance;
    best = lerp(a, b, foot.along);
  }
  return best;
}

/// A room's edge is its wall's inside face: one nearer than the assumed thickness counts.
Length thicknessAt(const RuleInput& input, const Ring& outline, Point2 at) {
  Length least = input.limits.length("sleeve.wall");
  for (const EquipmentRoom& room : input.plan.rooms) {
    const Ring inside = sump::outline(room);
    if (!contains(outline, centroid(inside))) continue;
    least = std::min(least, metres(distance(at, nearestOn(inside, at))));
  }
  return least;
}

std::vector<WallHere> wallsOf(const RuleInput& input, const BuildingParts& parts,
                              const RunStudy& run) {
  std::vector<WallHere> walls;
  for (const WallSleeve& sleeve : wallSleeves(input.plan, parts, run)) {
    if (!isBuiltIn(sleeve)) continue;
    const Id& of = sleeve.buildings.front();
    const Ring& outline = std::ranges::find(parts.walled, of, &WalledThing::id)->outline;
    const Length wall = thicknessAt(input, outline, flat(sleeve.at));
    walls.push_back({"building", of, of, outline, flat(sleeve.at), wall, sleeve.skew});
  }
  for (const Penetration& hole : run.penetrations) {
    const Vault& vault = *input.plan.vaults.find(hole.vault);
    const Angle slant = wayThrough(run, vault, hole).slant();
    const auto baffle = std::ranges::find(vault.baffles, hole.baffle, &Baffle::id);
    if (baffle != vault.baffles.end()) {
      walls.push_back(
          {"baffle", baffle->id, vault.id, {}, flat(hole.at), baffle->thickness, slant});
    } else {
      walls.push_back(
          {"vault", vault.id, vault.id, outline(vault), flat(hole.at), vault.wall, slant});
    }
  }
  return walls;
}

void checkArm(Reporter& out, const RunStudy& run, const WallHere& wall, const Arm& arm) {
  if (run.legs[arm.leg].vertical) return;
  if (nearestOnSegment(wall.at, arm.from, arm.to).distance > kOnLeg) return;
  const Length clear = wayToWall(wall, arm.from);
  if (clear >= arm.reach - metres(kRounding)) return;
  Finding& finding = out.report(wall.name, {run.id, wall.of},
                                {{"wall", spokenName(out.input().plan, wall.spoken)},
                                 {"thick", printShort(wall.square, out.units())},
                                 {"takeOut", printShort(arm.reach, out.units())}});
  finding.measured = printShort(std::max(clear, metres(0)), out.units());
  finding.required = printShort(arm.reach, out.units());
  finding.which = arm.which;
  finding.place = arm.from;
}

void checkWallBends(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const BuildingParts parts = buildingParts(input.plan);
  for (std::size_t i = 0; i < input.study.runs.size(); ++i) {
    const RunStudy& run = input.study.runs[i];
    if (!run.resolved) continue;
    const std::vector<Arm> arms = Arms(input, input.plan.runs[i], run).find();
    for (const WallHere& wall : wallsOf(input, parts, run)) {
      for (const Arm& arm : arms)
        checkArm(out, run, wall, arm);
    }
  }
  out.needLevels(unresolved(input));
}

/// As thick as the wall is where this place lies in it; nothing outside of the wall.
std::optional<Length> wallRound(const RuleInput& input, const Ring& outline, Point2 at) {
  if (!contains(outline, at)) return std::nullopt;
  for (const EquipmentRoom& room : input.plan.rooms)
    if (contains(sump::outline(room), at)) return std::nullopt;
  const Point2 face = nearestOn(outline, at);
  const Length wall = thicknessAt(input, outline, face);
  return metres(distance(at, face)) <= wall ? std::optional(wall) : std::nullopt;
}

/// The longest way of a line, in plan, that it lies within the wall or over or under it without a
/// break, and the middle of that way.
struct WallWay {
  double length = 0; ///< m
  Point2 middle;
  Length wall; ///< thickness there
};

WallWay longestInWall(const RuleInput& input, const RunStudy& run, const Ring& outline) {
  constexpr double kStep = 0.025; // m
  WallWay longest, way;
  std::optional<Point2> start;
  for (std::size_t leg = 0; leg < run.legs.size(); ++leg) {
    const Point2 a = flat(run.points[leg].at), b = flat(run.points[leg + 1].at);
    if (run.legs[leg].vertical) continue;
    if (distanceLineToRing({a, b}, outline) > 0) {
      start.reset();
      continue;
    }
    const int steps = 1 + static_cast<int>(distance(a, b) / kStep);
    for (int i = 0; i <= steps; ++i) {
      const Point2 p = lerp(a, b, static_cast<double>(i) / steps);
      const std::optional<Length> wall = wallRound(input, outline, p);
      if (!wall) {
        start.reset();
        continue;
      }
      if (!start) {
        start = p;
        way = {};
      } else if (i > 0) {
        way.length += distance(a, b) / steps;
      }
      way = {way.length, lerp(*start, p, 0.5), *wall};
      if (way.length > longest.length) longest = way;
    }
  }
  return longest;
}

void checkWallRuns(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const double times = input.limits.number("sleeve.along");
  for (const RunStudy& run : input.study.runs) {
    if (!run.resolved) continue;
    for (const Building& building : input.plan.buildings) {
      const WallWay way = longestInWall(input, run, building.outline);
      const Length most = times * way.wall;
      if (metres(way.length) <= most + metres(kRounding)) continue;
      Finding& finding = out.against("sleeve.along", "within", {run.id, building.id},
                                     {{"wall", spokenName(input.plan, building.id)},
                                      {"thick", printShort(way.wall, out.units())}});
      finding.measured = printLength(metres(way.length), out.units());
      finding.required = "at most " + printLength(most, out.units());
      finding.place = way.middle;
    }
  }
  out.needLevels(unresolved(input));
}

} // namespace

const Rule kWallAlong = {
    "wall-along",      "Lines go through walls the short way and do not run along in them",
    kPractice,         Confidence::CommonPractice,
    Severity::Warning, checkWallRuns,
    Trade::General};

const Rule kBendInWall = {"bend-in-wall",
                          "Straight pipe goes through walls: fittings stand clear of them",
                          "common practice, no source; take-outs of the catalogue, from memory",
                          Confidence::CommonPractice,
                          Severity::Warning,
                          checkWallBends,
                          Trade::General};

} // namespace sump
