// How the numbers of the wiring study came about. Coordination only: conductors, overcurrent
// protection and the work itself are a licensed electrician's under the adopted electrical code.

#include "core/study/calculation_entry.h"
#include "core/study/conduit_fill.h"
#include "core/study/context.h"
#include "core/study/object_names.h"
#include "core/study/place_text.h"
#include "core/units/print.h"

#include <algorithm>

namespace sump {

namespace {

using Kind = QuantityKind;
using Entry = CalculationEntry;

const std::string kSection = "Wiring";

/// Circuits of a conduit by what they are: conductors listed for it, supplies and signals.
struct CircuitCount {
  int power = 0, class2 = 0;
};

CircuitCount circuitsOf(const WiringBasis& wiring, const Run& run) {
  CircuitCount count;
  for (const Conductor& conductor : run.conductors)
    ++(conductor.kind == CircuitKind::Class2 ? count.class2 : count.power);
  for (const Supply& supply : wiring.supplies)
    count.power += supply.run == run.id ? 1 : 0;
  for (const SignalCircuit& signal : wiring.signalCircuits) {
    if (signal.run != run.id) continue;
    const bool low = signal.kind == SignalKind::Dc24 || signal.kind == SignalKind::Ac24;
    ++(low ? count.class2 : count.power);
  }
  return count;
}

class WiringReport {
public:
  WiringReport(const Plan& plan, const Study& study) : plan_(plan), study_(study) {}
  std::vector<Calculation> take();

private:
  void add(Entry& entry) { made_.push_back(entry.take()); }
  void fill(const ConduitStudy& conduit);
  void bends(const ConduitStudy& conduit, const Run& drawn, const RunStudy& run);
  void cover(const RunStudy& run);
  void coverOf(const RunStudy& run, const std::optional<CoverCheck>& least, bool traffic);
  void separation(const Run& drawn);
  void space(const WorkingSpaceStudy& space);
  void disconnect(const SupplyStudy& supply);

  const Plan& plan_;
  const Study& study_;
  std::vector<Calculation> made_;
};

void WiringReport::fill(const ConduitStudy& conduit) {
  add(Entry("wiring.fill", kSection, "Conduit fill", conduit.fill, Kind::Share)
          .about(conduit.run)
          .in("A_w", "all conductors", conduit.conductorArea, Kind::Area, "catalogue")
          .in("A_i", "inside", conduit.inside, Kind::Area, "catalogue")
          .has("f_max", "most for this many conductors", conduit.fillLimit, Kind::Share, "limits")
          .formula("A_w / A_i, at most f_max",
                   "NEC chapter 9 tables 1, 4 and 5; areas by the catalogue's wiring table"));
}

/// Turns between two places where wire can be pulled, one by one.
void WiringReport::bends(const ConduitStudy& conduit, const Run& drawn, const RunStudy& run) {
  const auto sweep = [](const RunEnd& end) {
    return end.fitting == EndFitting::ElbowDown || end.fitting == EndFitting::ElbowUp;
  };
  const std::string source =
      "NEC 352.26, from memory; compare the limit of turns between pull points";
  if (conduit.stretches.empty()) {
    add(Entry("wiring.bends.1", kSection, "Turns between pull points",
              undecided<Angle>({"levels of the run " + conduit.run}), Kind::Angle)
            .about(conduit.run)
            .formula("sum of the turns", source));
  }
  for (std::size_t i = 0; i < conduit.stretches.size(); ++i) {
    const PullStretch& stretch = conduit.stretches[i];
    const bool last = i + 1 == conduit.stretches.size();
    const std::string number = std::to_string(i + 1);
    Entry entry("wiring.bends." + number, kSection, "Turns between pull points, stretch " + number,
                Decided<Angle>(degrees(stretch.degrees)), Kind::Angle);
    entry.about(conduit.run)
        .formula("sum of the turns, as their fittings make them, and of the sweeps at the ends",
                 source);
    if (i == 0 && sweep(drawn.from)) entry.has("a", "sweep at the start", degrees(90), Kind::Angle);
    for (const Bend& bend : run.bends) {
      const double station = run.points[static_cast<std::size_t>(bend.point)].station;
      if (station < stretch.from || (!last && station >= stretch.to)) continue;
      entry.has("a", "turn " + fixed(station, 2) + " m from the start", degrees(turned(bend)),
                Kind::Angle);
    }
    if (last && sweep(drawn.to)) entry.has("a", "sweep at the end", degrees(90), Kind::Angle);
    add(entry);
  }
}

void WiringReport::coverOf(const RunStudy& run, const std::optional<CoverCheck>& least,
                           bool traffic) {
  Entry entry(traffic ? "wiring.cover-traffic" : "wiring.cover", kSection,
              traffic ? "Least cover over the conduit under traffic"
                      : "Least cover over the conduit",
              given(least ? std::optional(least->cover) : std::nullopt,
                    run.resolved ? "ground levels" : "levels of the run " + run.id),
              Kind::Length);
  entry.about(run.id).formula("ground less top of the conduit, where that is least outside "
                              "vaults, rooms and buildings",
                              "NEC table 300.5; compare the limits of cover over conduit");
  if (least) {
    const double grade = study_.ground.elevation(least->at).value_or(0);
    entry.has("z_g", "ground", grade, Kind::Length)
        .has("z_t", "top of the conduit", grade - inMetres(least->cover), Kind::Length)
        .step("at " + placeText(least->at.x, least->at.y));
  }
  add(entry);
}

/// A conduit that lies nowhere in the ground has no cover to tell.
void WiringReport::cover(const RunStudy& run) {
  if (run.leastCover || !run.resolved || study_.ground.empty()) coverOf(run, run.leastCover, false);
  if (run.leastTrafficCover) coverOf(run, run.leastTrafficCover, true);
}

void WiringReport::separation(const Run& drawn) {
  const CircuitCount count = circuitsOf(plan_.basis.wiring, drawn);
  const bool known = count.power + count.class2 > 0;
  const Decided<int> mixed = known ? Decided<int>(std::min(count.power, count.class2))
                                   : undecided<int>({"conductors of " + drawn.id});
  add(Entry("wiring.separation", kSection, "Power and Class 2 circuits that share the conduit",
            mixed, Kind::Number)
          .about(drawn.id)
          .has("P", "power, control and 110 or 220 V signal entries", count.power, Kind::Number)
          .has("C", "Class 2 and 24 V signal entries", count.class2, Kind::Number)
          .formula("the smaller of P and C; 0: kept apart", "NEC 725.136(A), from memory"));
}

void WiringReport::space(const WorkingSpaceStudy& space) {
  const std::string source = "NEC 110.26(A) and its table 1";
  std::optional<int> volts;
  for (const Supply& supply : plan_.basis.wiring.supplies) {
    if (supply.voltsToGround) volts = std::max(volts.value_or(0), *supply.voltsToGround);
  }
  add(Entry("wiring.depth-needed", kSection, "Working depth needed before the panel",
            space.depthNeeded, Kind::Length)
          .about(space.room)
          .in("V", "highest voltage to ground", volts, Kind::Number)
          .formula("by the table: to 150 V the least depth; to 600 V by what stands opposite "
                   "(insulated, grounded, live parts)",
                   source));
  Entry depth("wiring.depth-clear", kSection, "Clear depth before the panel",
              Decided<Length>(space.depthClear), Kind::Length);
  depth.about(space.room)
      .in("d", "needed", space.depthNeeded, Kind::Length, "wiring.depth-needed")
      .formula("from the panel's front to what stands before it, over the width needed where it "
               "fits best; at least d",
               source);
  for (const WorkingSpaceIntrusion& intrusion : space.intrusions) {
    depth.step("in the working space: " + std::string(name(intrusion.kind)) +
               (intrusion.object.empty() ? "" : " " + spokenName(plan_, intrusion.object)));
  }
  for (const Id& run : space.runsOverPanel)
    depth.step("over or under the panel: " + run);
  add(depth);
  add(Entry("wiring.width-clear", kSection, "Clear width before the panel",
            Decided<Length>(space.widthClear), Kind::Length)
          .about(space.room)
          .has("w", "needed", space.widthNeeded, Kind::Length, "limits")
          .formula(
              "between what stands beside the panel's middle, over the least depth; at least w",
              source));
}

void WiringReport::disconnect(const SupplyStudy& supply) {
  Entry entry("wiring.disconnect", kSection, "Way from the disconnect", supply.disconnectDistance,
              Kind::Length);
  entry.about(supply.supply)
      .formula(
          "the longer of the straight ways in plan to the panel and, of a motor supply, to the "
          "skid; in sight when near enough and no wall, panel or other part of the room lies "
          "between",
          "NEC 430.102, from memory; compare the limit of the way to a disconnect");
  if (supply.inSight) entry.step(*supply.inSight ? "in sight" : "out of sight");
  if (supply.hiddenBy) entry.step("hidden by " + std::string(name(*supply.hiddenBy)));
  if (!supply.hasConduit) entry.step("no power conduit is drawn for this supply");
  add(entry);
}

std::vector<Calculation> WiringReport::take() {
  for (const ConduitStudy& conduit : study_.wiring.conduits) {
    const std::size_t index = study_.runIndex.at(conduit.run);
    const Run& drawn = plan_.runs[index];
    fill(conduit);
    bends(conduit, drawn, study_.runs[index]);
    cover(study_.runs[index]);
    separation(drawn);
  }
  for (const WorkingSpaceStudy& one : study_.wiring.spaces)
    space(one);
  for (const SupplyStudy& supply : study_.wiring.supplies)
    disconnect(supply);
  return std::move(made_);
}

} // namespace

std::vector<Calculation> wiringCalculations(const Plan& plan, const Study& study) {
  return WiringReport(plan, study).take();
}

} // namespace sump
