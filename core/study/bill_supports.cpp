// Supports of pipe that stands in the open in the equipment room, and the marking of pipe.

#include "core/plan/nonpotable.h"
#include "core/study/bill_parts.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace sump {

namespace {

/// The part of the way from a to b that lies in the box, as a share (Liang and Barsky).
double shareInside(const std::array<double, 3>& a, const std::array<double, 3>& b,
                   const std::array<double, 3>& low, const std::array<double, 3>& high) {
  double from = 0, to = 1;
  for (std::size_t i = 0; i < 3; ++i) {
    const double d = b[i] - a[i];
    if (std::abs(d) < 1e-9) {
      if (a[i] < low[i] - 1e-9 || a[i] > high[i] + 1e-9) return 0;
      continue;
    }
    const double t = (low[i] - a[i]) / d, u = (high[i] - a[i]) / d;
    from = std::max(from, std::min(t, u));
    to = std::min(to, std::max(t, u));
  }
  return std::max(0.0, to - from);
}

double shareInRoom(const EquipmentRoom& room, Point3 a, Point3 b) {
  const Frame frame = room.frame();
  const Point2 p = frame.toLocal(flat(a)), q = frame.toLocal(flat(b));
  constexpr double kSky = 1e6;
  return shareInside({p.x, p.y, a.z}, {q.x, q.y, b.z}, {0, 0, inMetres(room.floor)},
                     {inMetres(room.length), inMetres(room.width), kSky});
}

Decided<Length> spacingOf(const BillContext& context, const Run& run, const ExposedLeg& leg) {
  if (isConduit(run.service)) {
    return given(context.supplies.conduitSpacing(leg.size),
                 "support spacing of conduit of size " + leg.size);
  }
  if (leg.vertical) return context.supplies.codeVertical;
  return decide(
      [&](Temperature water) {
        return given(context.supplies.supportSpacing(leg.size, water),
                     "support spacing of size " + leg.size + " for water this warm");
      },
      given(context.plan.basis.water.temperature, "water temperature"));
}

void addSupportsOf(BillMaker& maker, const Run& run, const std::vector<ExposedLeg>& legs) {
  for (const ExposedLeg& leg : legs) {
    BillLine like = billLine(facts(run.service).trade, "support", "pipe-support",
                             "Support of exposed pipe", leg.size);
    like.note = isConduit(run.service) ? "in the equipment room; NEC spacing"
                                       : "in the equipment room; lesser of code and trade table";
    BillLine& line = maker.line(like);
    const Decided<Length> spacing = spacingOf(maker.context(), run, leg);
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

std::vector<ExposedLeg> exposedLegs(const Plan& plan, const RunStudy& run) {
  std::vector<ExposedLeg> exposed;
  for (std::size_t i = 0; i < run.legs.size(); ++i) {
    double share = 0;
    for (const EquipmentRoom& room : plan.rooms)
      share += shareInRoom(room, run.points[i].at, run.points[i + 1].at);
    const Leg& leg = run.legs[i];
    const Length length = std::min(1.0, share) * leg.developed;
    if (inMetres(length) > 1e-6) exposed.push_back({length, leg.vertical, leg.size});
  }
  return exposed;
}

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
