// Supports of pipe that stands in the open in the equipment room, and the marking of pipe.

#include "core/plan/nonpotable.h"
#include "core/study/bill_parts.h"
#include "core/study/exposed_pipe.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

void addSupportsOf(BillMaker& maker, const Run& run, const std::vector<ExposedLeg>& legs) {
  for (const ExposedLeg& leg : legs) {
    BillLine like = billLine(facts(run.service).trade, "support", "pipe-support",
                             "Support of exposed pipe", leg.size);
    like.note = isConduit(run.service) ? "in the equipment room; NEC spacing"
                                       : "in the equipment room; lesser of code and trade table";
    BillLine& line = maker.line(like);
    const BillContext& context = maker.context();
    const Decided<Length> spacing = supportSpacing(context.plan, context.supplies, run, leg);
    if (!spacing) {
      line.net = undecided<double>(spacing.needs);
    } else {
      BillMaker::add(line, run.id, std::max(1.0, std::ceil(leg.length / *spacing - 1e-9)));
    }
  }
}

void addPurple(BillMaker& maker, const Run& run, const RunStudy& study) {
  Length laid;
  for (const PipePiece& piece : study.pieces)
    laid += piece.cut;
  BillLine tape =
      billLine("plumbing", "marking", "purple-tape",
               "Purple tape 'CAUTION: NONPOTABLE WATER - DO NOT DRINK'", "", BillUnit::Length);
  tape.note = "along the whole pipe, 3 in wide or more, fastened each 10 ft";
  BillMaker::add(maker.line(tape), run.id, inMetres(laid));
  Length exposed;
  for (const ExposedLeg& leg : exposedLegs(maker.context().plan, study))
    exposed += leg.length;
  if (inMetres(exposed) <= 0) return;
  BillLine label =
      billLine("plumbing", "marking", "purple-label", "Label 'NONPOTABLE WATER' with flow arrow");
  label.note = "in the equipment room: where the pipe comes in and each 25 ft";
  const double spaced = std::ceil(exposed / maker.context().supplies.labelSpacing - 1e-9);
  BillMaker::add(maker.line(label), run.id, 1 + spaced);
}

} // namespace

void addSupports(BillMaker& maker) {
  const BillContext& context = maker.context();
  for (std::size_t i = 0; i < context.study.runs.size(); ++i) {
    const RunStudy& study = context.study.runs[i];
    if (study.resolved)
      addSupportsOf(maker, context.plan.runs[i], exposedLegs(context.plan, study));
  }
}

void addMarking(BillMaker& maker) {
  const BillContext& context = maker.context();
  for (std::size_t i = 0; i < context.study.runs.size(); ++i) {
    const Run& run = context.plan.runs[i];
    const RunStudy& study = context.study.runs[i];
    if (study.resolved && isNonpotable(run.service)) addPurple(maker, run, study);
  }
  for (const TrenchStudy& trench : context.study.earth.trenches) {
    const ServiceFacts& service = facts(context.plan.runs.find(trench.run)->service);
    BillLine ribbon = billLine(service.trade, "marking", "warning-ribbon",
                               "Warning ribbon over buried lines", "", BillUnit::Length);
    ribbon.note = "12 in or more above the line";
    BillMaker::add(maker.line(ribbon), trench.run, inMetres(trench.length));
  }
}

} // namespace sump
