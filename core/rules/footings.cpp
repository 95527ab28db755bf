// Lines that go through, under or close beside the footings of buildings. Screening for planning:
// the building's structural engineer decides.

#include "core/geometry/box_index.h"
#include "core/geometry/polygon.h"
#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/object_names.h"
#include "core/study/part_place.h"
#include "core/study/wall_sleeves.h"

#include <algorithm>

namespace sump {

namespace {

/// The lines that pass one building, or a wall that buildings share, in one way.
struct FootingLines {
  std::vector<Id> buildings;
  std::vector<WallSleeve> sleeves;
};

std::vector<FootingLines> footingLines(const std::vector<WallSleeve>& sleeves, WallPass pass,
                                       Length thickness) {
  std::vector<FootingLines> all;
  for (const WallSleeve& sleeve : sleeves) {
    if (passOf(sleeve, thickness) != pass) continue;
    auto found = std::ranges::find(all, sleeve.buildings, &FootingLines::buildings);
    if (found == all.end()) found = all.insert(all.end(), FootingLines{sleeve.buildings, {}});
    found->sleeves.push_back(sleeve);
  }
  return all;
}

/// The runs, each once, then the buildings.
std::vector<Id> objectsOf(const FootingLines& lines) {
  std::vector<Id> objects;
  for (const WallSleeve& sleeve : lines.sleeves) {
    if (std::ranges::find(objects, sleeve.run) == objects.end()) objects.push_back(sleeve.run);
  }
  objects.insert(objects.end(), lines.buildings.begin(), lines.buildings.end());
  return objects;
}

/// `figure` of each line stands after its name, the least of them in `measured`, or with `most` the
/// greatest.
template <class Figure>
Finding& tellFooting(Reporter& out, std::string_view name, const FootingLines& lines, bool most,
                     Figure figure, Arguments arguments = {}) {
  const Plan& plan = out.input().plan;
  std::string runs;
  Length worst = figure(lines.sleeves.front());
  for (const WallSleeve& sleeve : lines.sleeves) {
    const Length value = figure(sleeve);
    runs += (runs.empty() ? "" : ", ") + spokenName(plan, sleeve.run) + " (" +
            printShort(value, out.units()) + ")";
    worst = most ? std::max(worst, value) : std::min(worst, value);
  }
  arguments["runs"] = runs;
  arguments["building"] = spokenNames(plan, lines.buildings);
  Finding& finding = out.report(name, objectsOf(lines), std::move(arguments));
  finding.measured = printShort(worst, out.units());
  finding.place = flat(lines.sleeves.front().at);
  return finding;
}

void tellUnknownFooting(Reporter& out, const FootingLines& lines) {
  const Plan& plan = out.input().plan;
  Needs needs;
  for (const Id& id : lines.buildings) {
    const Building* building = plan.buildings.find(id);
    if (building == nullptr || !building->footing)
      addNeeds(needs, {"footing level of " + spokenName(plan, id)});
  }
  out.needs(objectsOf(lines), needs);
}

/// Heights between which a line's invert has to be for its pipe to be at the footing's level.
struct FootingBand {
  double low = 0, high = 0;
};
FootingBand bandOf(const RunStudy& run, Length footing, Length thickness) {
  const double wall = inMetres(run.outsideDiameter - run.insideDiameter) / 2;
  const double low = inMetres(footing) - inMetres(run.outsideDiameter) + wall;
  return {low, inMetres(footing + thickness) + wall};
}

/// The stretch of a leg whose inverts are in the band, in plan.
std::optional<Polyline> legWithin(Point3 a, Point3 b, const FootingBand& band) {
  const double bottom = std::min(a.z, b.z), top = std::max(a.z, b.z);
  if (top <= band.low || bottom >= band.high) return std::nullopt;
  const auto at = [&](double z) { return flat(lerp(a, b, (z - a.z) / (b.z - a.z))); };
  if (top - bottom < kRounding) return Polyline{flat(a), flat(b)};
  return Polyline{at(std::max(bottom, band.low)), at(std::min(top, band.high))};
}

/// Where a line comes nearest to the outline of a building, in plan.
struct NearWall {
  double axis = 1e9; ///< m, from the line's axis
  Point2 at;
};
/// `band` empty: at whatever level.
NearWall nearestToWall(const RunStudy& run, const Ring& outline,
                       const std::optional<FootingBand>& band) {
  Polyline wall = outline;
  wall.push_back(outline.front());
  NearWall nearest;
  for (std::size_t leg = 0; leg + 1 < run.points.size(); ++leg) {
    const Point3 a = run.points[leg].at, b = run.points[leg + 1].at;
    const auto line = band ? legWithin(a, b, *band) : Polyline{flat(a), flat(b)};
    if (!line) continue;
    const double far = distanceBetweenLines(*line, wall);
    if (far < nearest.axis) nearest = {far, line->front()};
  }
  return nearest;
}

/// A line that passes the wall through the footing is told as that.
bool passesFooting(const std::vector<WallSleeve>& sleeves, const Id& run, const Id& building,
                   Length thickness) {
  return std::ranges::any_of(sleeves, [&](const WallSleeve& sleeve) {
    const bool here = std::ranges::find(sleeve.buildings, building) != sleeve.buildings.end();
    const WallPass pass = passOf(sleeve, thickness);
    return sleeve.run == run && here && (pass == WallPass::Footing || pass == WallPass::Unknown);
  });
}

void checkBeside(Reporter& out, const Building& building, const RunStudy& run,
                 const std::vector<WallSleeve>& sleeves) {
  const Limits& limits = out.input().limits;
  const Length thickness = limits.length("footing.thickness");
  const Length spread = limits.length("footing.spread");
  if (passesFooting(sleeves, run.id, building.id, thickness)) return;
  std::optional<FootingBand> band;
  if (building.footing) band = bandOf(run, *building.footing, thickness);
  const NearWall near = nearestToWall(run, building.outline, band);
  const Length clear = metres(near.axis) - run.outsideDiameter / 2.0;
  if (clear >= spread - metres(kRounding)) return;
  const std::string name = spokenName(out.input().plan, building.id);
  if (!band) {
    out.needs({run.id, building.id}, {"footing level of " + name}).place = near.at;
    return;
  }
  Finding& finding = out.against("footing.spread", "beside", {run.id, building.id},
                                 {{"building", name},
                                  {"spread", printShort(spread, out.units())},
                                  {"thickness", printShort(thickness, out.units())}});
  finding.measured = printShort(clear, out.units());
  finding.required = printShort(spread, out.units());
  finding.place = near.at;
}

void checkAllBeside(Reporter& out, const std::vector<WallSleeve>& sleeves) {
  const RuleInput& input = out.input();
  const double reach = inMetres(input.limits.length("footing.spread"));
  std::vector<Box> boxes;
  for (const Building& building : input.plan.buildings)
    boxes.push_back(grown(boxOf(building.outline), reach));
  const BoxIndex near(boxes);
  for (const RunStudy& run : input.study.runs) {
    if (!run.resolved) continue;
    const Box line = grown(boxOf(planLine(run)), inMetres(run.outsideDiameter) / 2);
    for (std::size_t b : near.touching(line))
      checkBeside(out, input.plan.buildings[b], run, sleeves);
  }
}

void checkFootingPass(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  if (input.plan.buildings.empty() && input.plan.rooms.empty()) return;
  out.needLevels(unresolved(input));
  const Length thickness = input.limits.length("footing.thickness");
  const Length bedding = input.study.earth.figures.trenchBedding;
  const auto sleeves = wallSleeves(input.plan, input.study);
  const std::string thick = printShort(thickness, out.units());
  for (const FootingLines& lines : footingLines(sleeves, WallPass::Footing, thickness)) {
    Finding& finding =
        tellFooting(out, "through", lines, false,
                    [](const WallSleeve& sleeve) { return sleeve.low - *sleeve.footing; },
                    {{"thickness", thick}});
    finding.required = thick;
  }
  for (const FootingLines& lines : footingLines(sleeves, WallPass::Under, thickness)) {
    Finding& finding = tellFooting(out, "under", lines, true, [&](const WallSleeve& sleeve) {
      return *sleeve.footing - (sleeve.pipeLow - bedding);
    });
    finding.required = "0";
    cite(finding, "29 CFR 1926.651(i)(2); IPC 305.5 (2006)", Confidence::SeenSecondHand);
  }
  for (const FootingLines& lines : footingLines(sleeves, WallPass::Unknown, thickness))
    tellUnknownFooting(out, lines);
  checkAllBeside(out, sleeves);
}

} // namespace

/// IPC 305.3 of 2024 (seen at iccsafe.org) asks for a relieving arch or a sleeve through foundation
/// walls only; 305.5 of 2006 (seen quoted) also for pipe under footings. Neither lets a footing be
/// cut: that it wants the engineer is common practice.
const Rule kFootingPass = {"footing-pass",
                           "Lines keep off the footings of buildings and do not pass under them",
                           "IPC 305.5 (2006); the engineer's decision: common practice",
                           Confidence::SeenSecondHand,
                           Severity::Warning,
                           checkFootingPass,
                           Trade::SiteWork};

} // namespace sump
