// Where wash water is caught: the grit stays in a sump under the outlet, and lines go through the
// walls where a connector has room.

#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/connections.h"
#include "core/study/object_names.h"
#include "core/study/pass_slant.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

void checkSump(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const Length need = input.limits.length("basin.sump");
  for (const Basin& basin : input.plan.basins) {
    if (!basin.sump) {
      // A trench drain may be cleaned as it lies, or have a catch basin at its end.
      if (basin.kind == BasinKind::CatchBasin) out.note("unknown", {basin.id});
    } else if (*basin.sump < need - metres(kRounding)) {
      Finding& finding = out.against("basin.sump", "shallow", {basin.id});
      finding.measured = printLength(*basin.sump, out.units());
      finding.required = printLength(need, out.units());
      finding.place = basin.at;
    }
  }
}

/// How a line goes through the wall of a basin, in plan.
struct BasinPass {
  double toCorner = 0; ///< m along the wall from its middle line to the nearer corner
  Angle slant;         ///< off square to the wall, never negative
};

BasinPass passThrough(const Basin& basin, const RunStudy& run, const BasinEntry& entry) {
  const Frame frame = basin.frame();
  const Point2 at = frame.toLocal(flat(entry.at));
  const double alongEnd = inMetres(basin.width) / 2 - std::abs(at.y);
  const double alongSide = inMetres(basin.length) / 2 - std::abs(at.x);
  const bool end = std::abs(alongSide) < std::abs(alongEnd); // wall across the basin's length
  const Point2 way = frame.toLocal(flat(entry.at) + wayAt(run, flat(entry.at))) - at;
  const double along = std::abs(end ? way.y : way.x), through = std::abs(end ? way.x : way.y);
  return {end ? alongEnd : alongSide, radians(std::atan2(along, through))};
}

void checkBasinEntry(Reporter& out, const Run& run, const RunStudy& study,
                     const BasinEntry& entry) {
  const RuleInput& input = out.input();
  const PipeSize* size = input.catalog.pipeSize(run.pipe, entry.size);
  if (size == nullptr) return out.needLevels({run.id});
  const BasinPass pass = passThrough(*input.plan.basins.find(entry.basin), study, entry);
  const std::vector<Id> objects = {run.id, entry.basin};
  const Arguments told = {{"basin", spokenName(input.plan, entry.basin)}};
  const double most = input.limits.number("connector.slant");
  if (inDegrees(pass.slant) > most + kRounding) {
    Finding& finding = out.against("connector.slant", "slant", objects, told);
    finding.measured = printAngle(pass.slant);
    finding.required = "at most " + printAngle(degrees(most));
    finding.place = flat(entry.at);
  }
  const Length need = input.limits.length("connector.clear");
  const Length clear =
      metres(pass.toCorner) - size->outside / 2.0 / std::cos(inRadians(pass.slant));
  if (clear >= need - metres(kRounding)) return;
  Finding& finding = out.against("connector.clear", "corner", objects, told);
  finding.measured = printShort(std::max(clear, metres(0)), out.units());
  finding.required = printShort(need, out.units());
  finding.place = flat(entry.at);
}

void checkBasinOpenings(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  std::vector<Id> unknown;
  for (std::size_t i = 0; i < input.study.runs.size(); ++i) {
    const Run& run = input.plan.runs[i];
    const RunStudy& study = input.study.runs[i];
    const bool meets = run.from.kind == EndKind::Basin || run.to.kind == EndKind::Basin;
    if (meets && !study.resolved) unknown.push_back(run.id);
    for (const BasinEntry& entry : basinEntries(input.plan, run, study))
      checkBasinEntry(out, run, study, entry);
  }
  out.needLevels(unknown);
}

} // namespace

const Rule kBasinOpening = {
    "basin-opening",   "Lines go through the walls of basins where connectors have room",
    kPractice,         Confidence::CommonPractice,
    Severity::Warning, checkBasinOpenings,
    Trade::General};

const Rule kBasinSump = {"basin-sump",      "The sump of a catch basin is deep enough for grit",
                         kPractice,         Confidence::CommonPractice,
                         Severity::Warning, checkSump,
                         Trade::SiteWork};

} // namespace sump
