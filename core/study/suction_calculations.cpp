// How the numbers of the suction came about. All in SI; the report prints its own units.

#include "core/study/calculation_entry.h"
#include "core/study/hydraulics_parts.h"
#include "core/study/place_text.h"
#include "core/units/print.h"

namespace sump {

namespace {

using Kind = QuantityKind;
using Entry = CalculationEntry;

const std::string kFlowKept = "conservation of water";

class SuctionReport {
public:
  SuctionReport(const Plan& plan, const Study& study)
      : plan_(plan), study_(study), all_(study.hydraulics) {}
  std::vector<Calculation> take();

private:
  void add(Entry& entry) { made_.push_back(entry.take()); }
  void lifts(const SuctionStudy& suction);
  void inlet(const SuctionStudy& suction);
  void npsh(const SuctionStudy& suction);
  void margin(const SuctionStudy& suction);
  void priming(const SuctionStudy& suction);

  const Plan& plan_;
  const Study& study_;
  const HydraulicsStudy& all_;
  std::vector<Calculation> made_;
};

void SuctionReport::lifts(const SuctionStudy& s) {
  add(Entry("suction.lift-low", "Suction", "Static lift from low water", s.liftLow, Kind::Length)
          .about(s.run)
          .in("z_p", "pump suction port, centreline", s.pump.value, Kind::Length)
          .in("z_w", "low water", s.lowWater.value, Kind::Length)
          .formula("z_p - z_w", "geometry"));
  add(Entry("suction.lift-high", "Suction", "Static lift from the rest level", s.liftHigh,
            Kind::Length)
          .about(s.run)
          .in("z_p", "pump suction port, centreline", s.pump.value, Kind::Length)
          .in("z_w", "rest level", s.highWater.value, Kind::Length)
          .formula("z_p - z_w", "geometry"));
  add(Entry("suction.total-lift", "Suction", "Total suction lift", s.suctionLift, Kind::Length)
          .about(s.run)
          .in("z", "lift from low water", s.liftLow.value, Kind::Length, "suction.lift-low")
          .in("z_max", "practical limit at this site", s.liftLimit.value, Kind::Length)
          .formula("z + losses with the strainer at its dirt allowance; to be below z_max",
                   "pump makers' manuals: about 25 ft at sea level, less what altitude and warm "
                   "water take away"));
}

void SuctionReport::npsh(const SuctionStudy& s) {
  const std::optional<Length> dirty =
      s.variants.empty() ? std::nullopt : s.variants.front().loss.value;
  Entry entry("suction.npsh-available", "Suction", "NPSH available at low water", s.npshAvailable,
              Kind::HeadOfWater);
  entry.about(s.run)
      .in("h_a", "air head", all_.water.airHead.value, Kind::HeadOfWater, "air.head")
      .in("h_v", "vapour head", all_.water.vapourHead.value, Kind::HeadOfWater, "water.vapour-head")
      .in("z", "lift from low water", s.liftLow.value, Kind::Length, "suction.lift-low")
      .in("h_f", "losses, strainer at its dirt allowance", dirty, Kind::HeadOfWater)
      .formula("h_a - z - h_v - h_f", "Crane TP-410, NPSH");
  constexpr const char* kCases[] = {"as drawn", "straight", "one size up", "one more elbow",
                                    "one more foot"};
  for (const SuctionVariant& v : s.variants) {
    if (!v.loss || !v.npshAvailable) continue;
    entry.step(std::string(kCases[static_cast<int>(v.which)]) +
               ": h_f = " + fixed(v.loss->value(), 3) + " m, NPSH available " +
               fixed(v.npshAvailable->value(), 3) + " m");
  }
  add(entry);
}

void SuctionReport::margin(const SuctionStudy& s) {
  add(Entry("suction.npsh-ratio", "Suction", "NPSH available over required", s.npshRatio,
            Kind::Number)
          .about(s.run)
          .in("NPSHa", "available", s.npshAvailable.value, Kind::HeadOfWater,
              "suction.npsh-available")
          .in("NPSHr", "required, from the pump curve", s.npshRequired.value, Kind::HeadOfWater)
          .formula("NPSHa / NPSHr", "Crane TP-410 example 7-32"));
  const auto margin =
      decide([](Length a, Length r) { return a - r; }, s.npshAvailable, s.npshRequired);
  add(Entry("suction.npsh-margin", "Suction", "NPSH available less required", margin,
            Kind::HeadOfWater)
          .about(s.run)
          .in("NPSHa", "available", s.npshAvailable, Kind::HeadOfWater, "suction.npsh-available")
          .in("NPSHr", "required, from the pump curve", s.npshRequired, Kind::HeadOfWater)
          .formula("NPSHa - NPSHr", "compare the limits of NPSH margin and ratio"));
  add(Entry("suction.npsh-rest", "Suction", "NPSH available at the rest level, strainer clean",
            s.npshAvailableRest, Kind::HeadOfWater)
          .about(s.run)
          .in("h_a", "air head", all_.water.airHead, Kind::HeadOfWater, "air.head")
          .in("h_v", "vapour head", all_.water.vapourHead, Kind::HeadOfWater, "water.vapour-head")
          .in("z", "lift from the rest level", s.liftHigh, Kind::Length, "suction.lift-high")
          .formula("h_a - z - h_v - head lost in the run at design flow", "Crane TP-410, NPSH"));
}

/// Submergence of the inlet, and the first place where air would stay in the line.
void SuctionReport::inlet(const SuctionStudy& s) {
  add(Entry("suction.submergence", "Suction", "Low water over the inlet", s.submergence,
            Kind::Length)
          .about(s.run)
          .in("z_w", "low water", s.lowWater, Kind::Length)
          .formula("z_w - invert of the inlet",
                   "geometry; compare the limit 'suction inlet under the water'"));
  const RunStudy& run = *study_.run(s.run);
  const Decided<Length> pocket = run.resolved
                                     ? Decided<Length>(run.pocket ? run.pocket->rise : metres(0))
                                     : undecided<Length>({"levels of the run " + s.run});
  Entry entry("suction.pocket", "Suction", "Fall after a high place, where air collects", pocket,
              Kind::Length);
  entry.about(s.run).formula(
      "highest invert of the line less the lowest one after it, where more "
      "than the limit of what counts as a high pocket; 0: it rises all the way",
      "pump makers' manuals: suction pipe rises continuously to the pump");
  if (run.pocket) {
    entry.step("at " + placeText(run.pocket->at.x, run.pocket->at.y));
  }
  add(entry);
}

void SuctionReport::priming(const SuctionStudy& s) {
  add(Entry("suction.priming-volume", "Suction", "Water to prime", s.primingVolume, Kind::Volume)
          .about(s.run)
          .in("V_p", "pipe", std::optional(s.pipeVolume), Kind::Volume)
          .in("V_s", "strainer", plan_.basis.pump.strainerVolume, Kind::Volume)
          .formula("pi/4 d2 L of each bore + V_s", "geometry"));
  add(Entry("suction.priming-time", "Suction", "Time to prime from the hose", s.primingTime,
            Kind::Time)
          .about(s.run)
          .in("V", "water to prime", s.primingVolume.value, Kind::Volume, "suction.priming-volume")
          .in("Q", "flow of the hose", plan_.basis.pump.primingHose, Kind::Flow)
          .formula("V / Q", kFlowKept));
}

std::vector<Calculation> SuctionReport::take() {
  for (const SuctionStudy& suction : all_.suctions) {
    lifts(suction);
    inlet(suction);
    npsh(suction);
    margin(suction);
    priming(suction);
  }
  return std::move(made_);
}

} // namespace

std::vector<Calculation> suctionCalculations(const Plan& plan, const Study& study) {
  return SuctionReport(plan, study).take();
}

} // namespace sump
