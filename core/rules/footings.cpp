// Lines that go through or under the footings of buildings. Screening for planning: the building's
// structural engineer decides.

#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/object_names.h"
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
}

} // namespace

/// IPC 305.3 of 2024 (seen at iccsafe.org) asks for a relieving arch or a sleeve through foundation
/// walls only; 305.5 of 2006 (seen quoted) also for pipe under footings. Neither lets a footing be
/// cut: that it wants the engineer is common practice.
const Rule kFootingPass = {"footing-pass",
                           "Lines pass over the footings of buildings, not through or under them",
                           "IPC 305.5 (2006); the engineer's decision: common practice",
                           Confidence::SeenSecondHand,
                           Severity::Warning,
                           checkFootingPass,
                           Trade::SiteWork};

} // namespace sump
