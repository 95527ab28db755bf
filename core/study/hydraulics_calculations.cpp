// How the numbers of the hydraulics study came about. All in SI; the report prints its own units.

#include "core/study/hydraulics_parts.h"

#include "core/units/print.h"

namespace sump {

namespace {

double valueOf(double v) {
  return v;
}
template <class Q> double valueOf(const Q& q) {
  return q.value();
}

using Kind = QuantityKind;

/// One calculation being written.
class Entry {
public:
  template <class T>
  Entry(std::string id, std::string section, std::string title, const Decided<T>& result,
        Kind kind) {
    made_.id = std::move(id);
    made_.section = std::move(section);
    made_.title = std::move(title);
    made_.kind = kind;
    made_.decided = static_cast<bool>(result);
    if (result) made_.result = valueOf(*result);
    made_.needs = needsText(result.needs);
  }
  Entry& about(const Id& object) {
    made_.object = object;
    return *this;
  }
  Entry& formula(std::string text, std::string source) {
    made_.formula = std::move(text);
    made_.source = std::move(source);
    return *this;
  }
  /// An input that is there; one that is missing stands in `needs`.
  template <class T>
  Entry& in(std::string symbol, std::string name, const std::optional<T>& value, Kind kind,
            std::string from = "plan") {
    if (value) {
      made_.inputs.push_back(
          {std::move(symbol), std::move(name), valueOf(*value), kind, std::move(from)});
    }
    return *this;
  }
  Entry& step(std::string text) {
    made_.steps.push_back(std::move(text));
    return *this;
  }
  Calculation take() { return std::move(made_); }

private:
  Calculation made_;
};

const std::string kContinuity = "conservation of water";
const std::string kBernoulli = "Bernoulli's theorem with losses";

class Report {
public:
  Report(const Plan& plan, const Study& study) : plan_(plan), all_(study.hydraulics) {}
  std::vector<Calculation> take();

private:
  void add(Entry& entry) { made_.push_back(entry.take()); }
  void water();
  void peak();
  void day();
  void pump();
  void loss(const PressureRun& run);
  void ends(const PressureRun& run);
  void lifts(const SuctionStudy& suction);
  void npsh(const SuctionStudy& suction);
  void priming(const SuctionStudy& suction);

  const Plan& plan_;
  const HydraulicsStudy& all_;
  std::vector<Calculation> made_;
};

void Report::water() {
  const WaterStudy& w = all_.water;
  const auto& t = plan_.basis.water.temperature;
  const std::string section = "Water and air";
  const auto of = [&](const char* id, const char* title, const auto& result, Kind kind,
                      const char* formula, const char* source) {
    add(Entry(id, section, title, result, kind)
            .in("T", "water temperature", t, Kind::Temperature)
            .formula(formula, source));
  };
  of("water.density", "Density of the water", w.density, Kind::Density,
     "1 / specific volume of region 1 at T and 101,325 Pa", "IAPWS-IF97, equation 7");
  of("water.viscosity", "Viscosity of the water", w.viscosity, Kind::DynamicViscosity,
     "dilute-gas term times density term at T and the density", "IAPWS R12-08");
  of("water.vapour-pressure", "Vapour pressure of the water", w.vapourPressure, Kind::Pressure,
     "saturation pressure at T", "IAPWS-IF97, equation 30");
  add(Entry("air.pressure", section, "Air pressure", w.airPressure, Kind::Pressure)
          .in("h", "altitude", plan_.basis.water.altitude, Kind::Length)
          .formula("101,325 Pa x (1 - 0.0065 h / 288.15)^5.25588, h geopotential",
                   "US Standard Atmosphere 1976"));
}

void Report::peak() {
  const DemandStudy& d = all_.demand;
  const WashDemand& wash = plan_.basis.demand;
  for (const bool fresh : {false, true}) {
    Entry entry(fresh ? "demand.peak-fresh" : "demand.peak-product", "Wash demand",
                fresh ? "Fresh water at the peak" : "Product water at the peak",
                fresh ? d.peakFresh : d.peakProduct, Kind::Flow);
    entry.in("s", "simultaneity", wash.simultaneity, Kind::Share)
        .formula("s x sum of (count x flow) of the devices on this water", kContinuity);
    for (const WashDevice& device : wash.devices) {
      if (device.freshWater != fresh) continue;
      entry.step(device.name + ": " + std::to_string(device.count) + " x " +
                 fixed(device.flow.value() * 1000, 4) + " L/s");
    }
    add(entry);
  }
  add(Entry("demand.peak-to-vaults", "Wash demand", "Inflow to the vaults at the peak",
            d.peakToVaults, Kind::Flow)
          .in("Q_p", "product water", d.peakProduct.value, Kind::Flow, "demand.peak-product")
          .in("Q_f", "fresh water", d.peakFresh.value, Kind::Flow, "demand.peak-fresh")
          .in("l", "share lost", wash.lostFraction, Kind::Share)
          .in("Q_o", "other inflow", wash.otherInflow, Kind::Flow)
          .formula("(Q_p + Q_f) (1 - l) + Q_o", kContinuity));
}

void Report::day() {
  const DemandStudy& d = all_.demand;
  const std::string section = "Wash demand";
  Entry all("demand.daily-wash", section, "Wash water a day", d.dailyWash, Kind::Volume);
  all.formula("sum of (vehicles a day x water for one wash)", kContinuity);
  for (const VehicleTraffic& kind : plan_.basis.demand.vehicles) {
    if (!kind.perDay || !kind.water) continue;
    all.step(kind.name + ": " + fixed(*kind.perDay, 1) + " x " + fixed(kind.water->value(), 4) +
             " m3");
  }
  add(all);
  add(Entry("demand.daily-product", section, "Reclaimed water drawn a day", d.dailyProduct,
            Kind::Volume)
          .in("V", "wash water a day", d.dailyWash.value, Kind::Volume, "demand.daily-wash")
          .in("q_p", "product water over a wash", d.averageProduct.value, Kind::Flow)
          .in("q_f", "fresh water over a wash", d.averageFresh.value, Kind::Flow)
          .formula("V q_p / (q_p + q_f); q is the sum of count x flow x duty", kContinuity));
  add(Entry("demand.daily-to-vaults", section, "Wash water back in the vaults a day",
            d.dailyToVaults, Kind::Volume)
          .in("V", "wash water a day", d.dailyWash.value, Kind::Volume, "demand.daily-wash")
          .in("l", "share lost", plan_.basis.demand.lostFraction, Kind::Share)
          .formula("V (1 - l)", kContinuity));
  for (const bool short_ : {true, false}) {
    add(Entry(short_ ? "demand.daily-make-up" : "demand.daily-surplus", section,
              short_ ? "Make-up a day" : "Overflow a day", short_ ? d.dailyMakeUp : d.dailySurplus,
              Kind::Volume)
            .in("V_p", "reclaimed water drawn", d.dailyProduct.value, Kind::Volume,
                "demand.daily-product")
            .in("V_v", "water back", d.dailyToVaults.value, Kind::Volume, "demand.daily-to-vaults")
            .formula(short_ ? "V_p - V_v, at least 0" : "V_v - V_p, at least 0", kContinuity));
  }
  add(Entry("demand.reclaim-share", section, "Share of the wash water used before", d.reclaimShare,
            Kind::Share)
          .in("V_p", "reclaimed water drawn", d.dailyProduct.value, Kind::Volume,
              "demand.daily-product")
          .in("V_m", "make-up", d.dailyMakeUp.value, Kind::Volume, "demand.daily-make-up")
          .in("V", "wash water", d.dailyWash.value, Kind::Volume, "demand.daily-wash")
          .formula("(V_p - V_m) / V", kContinuity));
}

void Report::pump() {
  const std::string section = "Pump";
  add(Entry("pump.flow", section, "Flow of the pump at the peak", all_.pumpFlow, Kind::Flow)
          .in("Q_p", "product water", all_.demand.peakProduct.value, Kind::Flow,
              "demand.peak-product")
          .in("Q_r", "recirculation", plan_.basis.pump.recirculation, Kind::Flow)
          .formula("Q_p + Q_r", kContinuity));
  add(Entry("pump.head", section, "Head of the pump at that flow", all_.pumpHead, Kind::HeadOfWater)
          .in("Q", "flow", all_.pumpFlow.value, Kind::Flow, "pump.flow")
          .formula("straight between the points of the pump curve", "the plan's pump curve"));
  const auto product = decide([](const WorkingPoint& w) { return w.product; }, all_.workingPoint);
  Entry meet("pump.working-point", section, "Product water where pump and system meet", product,
             Kind::Flow);
  meet.formula("pump head = rise + losses + (pressure at the devices and equipment loss, both as "
               "the square of the product flow)",
               kBernoulli + "; halving until the two heads agree");
  if (const auto& w = all_.workingPoint) {
    meet.step("pump " + fixed(w->pump.value() * 1000, 3) + " L/s at " + fixed(w->head.value(), 2) +
              " m");
    meet.step("pressure at the wash " + fixed(w->atWash.value() / 1000, 1) + " kPa");
  }
  add(meet);
}

std::string line(const PipeLoss& row) {
  return row.size + " in: v = " + fixed(row.velocity.value(), 3) +
         " m/s, Re = " + fixed(row.reynolds, 0) + ", k/d = " + fixed(row.relativeRoughness, 7) +
         ", f = " + fixed(row.factor, 5) + ", h = f x " + fixed(row.length.value(), 3) + " / " +
         fixed(row.inside.value(), 5) + " x v2/2g = " + fixed(row.loss.value(), 4) +
         " m (Hazen-Williams, form A: " + fixed(row.hazenWilliams.value(), 4) + " m)";
}

std::string line(const FittingLoss& row) {
  const std::string start = row.name + " " + row.size + ": " + std::to_string(row.count) + " x ";
  if (row.k == 0 && row.loss.value() > 0) {
    return start + "fixed head = " + fixed(row.loss.value(), 4) + " m [" + row.source + "]";
  }
  return start + "K " + fixed(row.k, 3) + " x v2/2g at " + fixed(row.velocity.value(), 3) +
         " m/s = " + fixed(row.loss.value(), 4) + " m [" + row.source + "]";
}

void Report::loss(const PressureRun& run) {
  const auto total = decide([](const RunLoss& l) { return l.total; }, run.loss);
  Entry entry("run.loss", "Pressure runs", "Head lost at design flow", total, Kind::HeadOfWater);
  entry.about(run.run)
      .in("Q", "design flow", run.flow.value, Kind::Flow)
      .in("rho", "density", all_.water.density.value, Kind::Density, "water.density")
      .in("mu", "viscosity", all_.water.viscosity.value, Kind::DynamicViscosity, "water.viscosity")
      .formula("sum of f L/d v2/2g of the pipe, K v2/2g of the fittings, and the clean strainer; "
               "1/sqrt(f) = -2 log10(k/(3.7 d) + 2.51/(Re sqrt(f)))",
               "Darcy-Weisbach; Colebrook-White; Crane TP-410 for K");
  if (run.loss) {
    for (const PipeLoss& row : run.loss->pipe)
      entry.step(line(row));
    for (const FittingLoss& row : run.loss->fittings)
      entry.step(line(row));
    entry.step("strainer, clean: " + fixed(run.loss->strainer.value(), 4) + " m");
  }
  add(entry);
}

void Report::ends(const PressureRun& run) {
  if (facts(run.service).drive == Drive::Suction) return;
  const auto total = decide([](const RunLoss& l) { return l.total; }, run.loss);
  add(Entry("run.needed-at-start", "Pressure runs", "Pressure needed at the run's start",
            run.neededAtStart, Kind::Pressure)
          .about(run.run)
          .in("p", "wanted at the end", run.wanted.value, Kind::Pressure)
          .in("dz", "rise", run.lift.value, Kind::Length)
          .in("h", "head lost", total.value, Kind::HeadOfWater, "run.loss")
          .in("rho", "density", all_.water.density.value, Kind::Density, "water.density")
          .formula("p + rho g (dz + h)", kBernoulli));
  add(Entry("run.at-end", "Pressure runs", "Pressure at the run's end", run.atEnd, Kind::Pressure)
          .about(run.run)
          .in("H", "head of the pump",
              run.service == Service::MakeUp ? std::nullopt : all_.pumpHead.value,
              Kind::HeadOfWater, "pump.head")
          .in("p_s", "pressure of the supply",
              run.service == Service::MakeUp ? plan_.basis.makeUp.pressure : std::nullopt,
              Kind::Pressure)
          .in("h", "head lost in the run", total.value, Kind::HeadOfWater, "run.loss")
          .formula(run.service == Service::MakeUp
                       ? "p_s - rho g (rise + h + v2/2g)"
                       : "rho g (H - rise above low water - losses of suction, equipment (product "
                         "only) and run - v2/2g)",
                   kBernoulli));
}

void Report::lifts(const SuctionStudy& s) {
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

void Report::npsh(const SuctionStudy& s) {
  const std::optional<Length> dirty =
      s.variants.empty() ? std::nullopt : s.variants.front().loss.value;
  Entry entry("suction.npsh-available", "Suction", "NPSH available at low water", s.npshAvailable,
              Kind::HeadOfWater);
  entry.about(s.run)
      .in("h_a", "air head", all_.water.airHead.value, Kind::HeadOfWater, "air.pressure")
      .in("h_v", "vapour head", all_.water.vapourHead.value, Kind::HeadOfWater,
          "water.vapour-pressure")
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
  add(Entry("suction.npsh-ratio", "Suction", "NPSH available over required", s.npshRatio,
            Kind::Number)
          .about(s.run)
          .in("NPSHa", "available", s.npshAvailable.value, Kind::HeadOfWater,
              "suction.npsh-available")
          .in("NPSHr", "required, from the pump curve", s.npshRequired.value, Kind::HeadOfWater)
          .formula("NPSHa / NPSHr", "Crane TP-410 example 7-32"));
}

void Report::priming(const SuctionStudy& s) {
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
          .formula("V / Q", kContinuity));
}

std::vector<Calculation> Report::take() {
  water();
  peak();
  day();
  pump();
  for (const PressureRun& run : all_.runs) {
    loss(run);
    ends(run);
  }
  for (const SuctionStudy& suction : all_.suctions) {
    lifts(suction);
    npsh(suction);
    priming(suction);
  }
  return std::move(made_);
}

} // namespace

std::vector<Calculation> hydraulicsCalculations(const Plan& plan, const Study& study) {
  return Report(plan, study).take();
}

} // namespace sump
