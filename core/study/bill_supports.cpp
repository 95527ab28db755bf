// Supports of pipe that stands in the open, and the marking of pipe.

#include "core/study/bill_parts.h"
#include "core/study/exposed_pipe.h"
#include "core/units/print.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

bool isMetric(const BillMaker& maker) {
  return maker.context().plan.project.units == UnitSystem::Metric;
}

void addSupportsOf(BillMaker& maker, const Run& run, const ExposedPipe& pipe) {
  if (pipe.supports && *pipe.supports == 0) return; // walls and baffles hold it
  BillLine like = billLine(facts(run.service).trade, "support", "pipe-support",
                           "Support of exposed pipe", pipe.all.size);
  like.note = isConduit(run.service)
                  ? "in rooms, buildings, vaults and above ground; NEC spacing"
                  : "in rooms, buildings, vaults and above ground; lesser of code and trade table; "
                    "where the pipe is lifted out, clamps that open and do not rust";
  BillLine& line = maker.line(like);
  if (!pipe.supports) {
    line.net = undecided<double>(pipe.supports.needs);
  } else {
    BillMaker::add(line, run.id, *pipe.supports);
  }
}

void addPurple(BillMaker& maker, const Run& run, const RunStudy& study) {
  BillLine tape =
      billLine("plumbing", "marking", "purple-tape",
               "Purple tape 'CAUTION: NONPOTABLE WATER - DO NOT DRINK'", "", BillUnit::Length);
  tape.note =
      std::string("measured along the line from end to end, fittings and valves with it; ") +
      (isMetric(maker) ? "75 mm wide or more, fastened each 3 m"
                       : "3 in wide or more, fastened each 10 ft");
  BillMaker::add(maker.line(tape), run.id, inMetres(study.developed));
  Length exposed;
  for (const ExposedLeg& leg : exposedLegs(maker.context().plan, maker.context().study, study)) {
    if (leg.where == ExposedIn::Room) exposed += leg.length;
  }
  if (inMetres(exposed) <= 0) return;
  BillLine label =
      billLine("plumbing", "marking", "purple-label", "Label 'NONPOTABLE WATER' with flow arrow");
  const Length apart = maker.context().supplies.labelSpacing;
  label.note =
      "in the equipment room: where the pipe comes in and each " +
      (isMetric(maker) ? fixed(inMetres(apart), 1) + " m" : fixed(inFeet(apart), 0) + " ft");
  const double spaced = std::ceil(exposed / apart - 1e-9);
  BillMaker::add(maker.line(label), run.id, 1 + spaced);
}

} // namespace

void addSupports(BillMaker& maker) {
  const BillContext& context = maker.context();
  for (const ExposedPipe& pipe : exposedPipes(context.plan, context.study, context.supplies))
    addSupportsOf(maker, *context.plan.runs.find(pipe.run), pipe);
}

void addMarking(BillMaker& maker) {
  const BillContext& context = maker.context();
  for (std::size_t i = 0; i < context.study.runs.size(); ++i) {
    const Run& run = context.plan.runs[i];
    const RunStudy& study = context.study.runs[i];
    if (study.resolved && isTaped(run, study)) addPurple(maker, run, study);
  }
  // Who fills the trench lays it.
  const auto addRibbon = [&](const Id& run, Length length) {
    BillLine ribbon = billLine("site work", "marking", "warning-ribbon",
                               "Warning ribbon over buried lines", "", BillUnit::Length);
    ribbon.note =
        std::string(
            "measured level along the trenches, through the vaults' digs and over their lids, "
            "fittings with it; ") +
        (isMetric(maker) ? "300 mm or more above the line" : "12 in or more above the line") +
        ", or right under a slab that leaves less";
    BillMaker::add(maker.line(ribbon), run, inMetres(length));
  };
  for (const TrenchStudy& trench : context.study.earth.trenches)
    addRibbon(trench.run, trench.length);
  for (const BackfilledRun& run : context.study.earth.backfilled)
    addRibbon(run.run, run.length + run.overLid);
}

} // namespace sump
