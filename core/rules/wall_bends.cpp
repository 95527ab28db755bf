// Fittings that reach into the walls which their line goes through: a wall, its sleeve and a
// connector take straight pipe only.

#include "core/geometry/polygon.h"
#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/context.h"
#include "core/study/object_names.h"
#include "core/study/pass_slant.h"
#include "core/study/wall_sleeves.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kOnLeg = 1e-6; // m

/// A turn or an end with a fitting, and how far the fitting reaches along its legs.
struct Turn {
  std::size_t point = 0;
  Length before, after;
};

std::optional<FittingKind> turnAtEnd(EndFitting fitting) {
  if (fitting == EndFitting::Tee) return FittingKind::Tee;
  if (fitting == EndFitting::ElbowDown || fitting == EndFitting::ElbowUp)
    return FittingKind::Elbow90;
  return std::nullopt;
}

/// Of several fittings that make one turn each reaches to its own side, as in the cutting list.
std::vector<Turn> turnsOf(const FittingFamily& family, const Run& run, const RunStudy& study) {
  std::vector<Turn> turns;
  const auto add = [&](std::size_t point, FittingKind first, FittingKind last) {
    const std::string size = sizeAt(run, point, 0);
    const auto before = family.takeOut(first, size), after = family.takeOut(last, size);
    if (before && after) turns.push_back({point, *before, *after});
  };
  if (const auto kind = turnAtEnd(run.from.fitting)) add(0, *kind, *kind);
  for (const Bend& bend : study.bends) {
    if (!bend.fittings.empty())
      add(static_cast<std::size_t>(bend.point), bend.fittings.front(), bend.fittings.back());
  }
  if (const auto kind = turnAtEnd(run.to.fitting)) add(study.points.size() - 1, *kind, *kind);
  return turns;
}

/// A wall where the line goes through it.
struct WallHere {
  std::string_view name; ///< of the message
  Id of;
  Ring outline;  ///< its outside
  Point2 at;     ///< on the outline
  Length square; ///< thickness
  Angle slant;
};

/// Along a leg from a place to the nearer face; negative within the wall.
Length wayToWall(const WallHere& wall, Point2 from) {
  const double out = distance(from, wall.at);
  if (!contains(wall.outline, from)) return metres(out);
  constexpr double kLeast = 0.1; // a line nearly along its wall is the slants' matter
  const double through = std::max(std::cos(inRadians(wall.slant)), kLeast);
  return metres(out) - wall.square / through;
}

/// A room's edge is its wall's inside face: one nearer than the assumed thickness counts.
Length thicknessAt(const RuleInput& input, const Ring& outline, Point2 at) {
  Length least = input.limits.length("sleeve.wall");
  for (const EquipmentRoom& room : input.plan.rooms) {
    const Ring inside = sump::outline(room);
    if (!contains(outline, centroid(inside))) continue;
    for (std::size_t i = 0; i < inside.size(); ++i) {
      const Point2 a = inside[i], b = inside[(i + 1) % inside.size()];
      least = std::min(least, metres(nearestOnSegment(at, a, b).distance));
    }
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
    walls.push_back({"building", of, outline, flat(sleeve.at), wall, sleeve.skew});
  }
  for (const Penetration& hole : run.penetrations) {
    if (!hole.baffle.empty()) continue;
    const Vault& vault = *input.plan.vaults.find(hole.vault);
    walls.push_back({"vault", vault.id, outline(vault), flat(hole.at), vault.wall,
                     wayThrough(run, vault, hole).slant()});
  }
  return walls;
}

void checkLeg(Reporter& out, const RunStudy& run, const WallHere& wall, const Turn& turn,
              bool after) {
  const std::size_t leg = after ? turn.point : turn.point - 1;
  if (run.legs[leg].vertical) return;
  const Point2 from = flat(run.points[turn.point].at);
  const Point2 to = flat(run.points[after ? leg + 1 : leg].at);
  if (nearestOnSegment(wall.at, from, to).distance > kOnLeg) return;
  const Length clear = wayToWall(wall, from), need = after ? turn.after : turn.before;
  if (clear >= need - metres(kRounding)) return;
  Finding& finding = out.report(wall.name, {run.id, wall.of},
                                {{"wall", spokenName(out.input().plan, wall.of)},
                                 {"thick", printShort(wall.square, out.units())},
                                 {"takeOut", printShort(need, out.units())}});
  finding.measured = printShort(std::max(clear, metres(0)), out.units());
  finding.required = printShort(need, out.units());
  finding.which = std::to_string(turn.point);
  finding.place = from;
}

void checkWallBends(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const BuildingParts parts = buildingParts(input.plan);
  for (std::size_t i = 0; i < input.study.runs.size(); ++i) {
    const RunStudy& run = input.study.runs[i];
    const FittingFamily* family = input.catalog.fittingsFor(input.plan.runs[i].pipe);
    if (!run.resolved || family == nullptr) continue;
    const std::vector<Turn> turns = turnsOf(*family, input.plan.runs[i], run);
    for (const WallHere& wall : wallsOf(input, parts, run)) {
      for (const Turn& turn : turns) {
        if (turn.point > 0) checkLeg(out, run, wall, turn, false);
        if (turn.point < run.legs.size()) checkLeg(out, run, wall, turn, true);
      }
    }
  }
  out.needLevels(unresolved(input));
}

} // namespace

const Rule kBendInWall = {"bend-in-wall",
                          "Straight pipe goes through walls: fittings stand clear of them",
                          "common practice, no source; take-outs of the catalogue, from memory",
                          Confidence::CommonPractice,
                          Severity::Warning,
                          checkWallBends,
                          Trade::General};

} // namespace sump
