#include "core/study/conduit_fill.h"

#include "core/catalog/wire_areas.h"

#include <algorithm>

namespace sump {

namespace {

Decided<Area> conductorsIn(const WireAreas& areas, const Run& run) {
  if (run.conductors.empty()) return undecided<Area>({"conductors of " + run.id});
  Area sum;
  for (const Conductor& conductor : run.conductors) {
    const auto area = areas.conductorArea(conductor.size);
    if (!area) return undecided<Area>({"area of a " + conductor.size + " AWG conductor"});
    sum += *area * static_cast<double>(conductor.count);
  }
  return sum;
}

/// Stations of the pull boxes, in order.
std::vector<double> pullBoxes(const Run& run, const RunStudy& study) {
  std::vector<double> stations;
  for (const InlinePart& part : run.parts) {
    const auto leg = static_cast<std::size_t>(std::max(part.leg, 0));
    if (part.kind != PartKind::PullBox || leg + 1 >= study.points.size()) continue;
    const double from = study.points[leg].station, to = study.points[leg + 1].station;
    stations.push_back(from + (to - from) * part.along);
  }
  std::ranges::sort(stations);
  return stations;
}

double sweepAt(const RunEnd& end) {
  return end.fitting == EndFitting::ElbowDown || end.fitting == EndFitting::ElbowUp ? 90 : 0;
}

void fillStretches(const Run& run, const RunStudy& study, ConduitStudy& conduit) {
  if (!study.resolved || study.points.empty()) return;
  std::vector<double> ends = pullBoxes(run, study);
  ends.push_back(study.points.back().station);
  double from = 0;
  for (std::size_t i = 0; i < ends.size(); ++i) {
    PullStretch stretch{from, ends[i], 0, flat(study.points.front().at)};
    const bool last = i + 1 == ends.size();
    if (i == 0) stretch.degrees += sweepAt(run.from);
    if (last) stretch.degrees += sweepAt(run.to);
    for (const Bend& bend : study.bends) {
      const RunPoint& point = study.points[static_cast<std::size_t>(bend.point)];
      if (point.station < from || (!last && point.station >= ends[i])) continue;
      stretch.degrees += turned(bend);
      stretch.at = flat(point.at);
    }
    conduit.mostDegrees = std::max(conduit.mostDegrees, stretch.degrees);
    conduit.stretches.push_back(stretch);
    from = ends[i];
  }
}

void fillCircuits(const WiringBasis& wiring, const Run& run, ConduitStudy& conduit) {
  for (const Conductor& conductor : run.conductors) {
    (conductor.kind == CircuitKind::Class2 ? conduit.class2 : conduit.power) = true;
  }
  for (const Supply& supply : wiring.supplies)
    conduit.power |= supply.run == run.id;
  for (const SignalCircuit& signal : wiring.signalCircuits) {
    if (signal.run != run.id) continue;
    const bool low = signal.kind == SignalKind::Dc24 || signal.kind == SignalKind::Ac24;
    (low ? conduit.class2 : conduit.power) = true;
  }
}

} // namespace

double fillLimit(int conductors, const Limits& limits) {
  if (conductors <= 1) return limits.number("wiring.fill-one");
  return limits.number(conductors == 2 ? "wiring.fill-two" : "wiring.fill-more");
}

double turned(const Bend& bend) {
  return bend.fittings.empty() ? bend.degrees : bend.madeDegrees;
}

ConduitStudy conduitStudy(const StudyContext& context, const Run& run, const RunStudy& study) {
  ConduitStudy conduit;
  conduit.run = run.id;
  for (const Conductor& conductor : run.conductors)
    conduit.conductors += conductor.count;
  const WireAreas& areas = context.catalog.wiring;
  conduit.conductorArea = conductorsIn(areas, run);
  conduit.inside =
      given(areas.conduitArea(run.pipe, run.size), "internal area of the conduit " + run.id);
  conduit.fill = decide([](Area wires, Area inside) { return (wires / inside).value(); },
                        conduit.conductorArea, conduit.inside);
  conduit.fillLimit = fillLimit(conduit.conductors, context.limits);
  fillStretches(run, study, conduit);
  fillCircuits(context.plan.basis.wiring, run, conduit);
  return conduit;
}

} // namespace sump
