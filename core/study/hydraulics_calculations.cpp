// How the numbers of the hydraulics study came about. All in SI; the report prints its own units.

#include "core/study/calculation_entry.h"
#include "core/study/hydraulics_parts.h"

#include "core/units/print.h"

namespace sump {

namespace {

using Kind = QuantityKind;

using Entry = CalculationEntry;

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
  void counted(const char* id, const char* title, const Decided<Volume>& result,
               std::optional<double> VehicleTraffic::*count);
  void day();
  void pump();
  void loss(const PressureRun& run);
  void ends(const PressureRun& run);
  void sizes(const PressureRun& run);
  void devices();

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
  const auto head = [&](const char* id, const char* title, const auto& result, const char* name,
                        const Decided<Pressure>& pressure, const char* from) {
    add(Entry(id, section, title, result, Kind::HeadOfWater)
            .in("p", name, pressure, Kind::Pressure, from)
            .in("rho", "density", w.density, Kind::Density, "water.density")
            .formula("p / (rho g)", "hydrostatics"));
  };
  head("air.head", "Air pressure as a head of the water", w.airHead, "air pressure", w.airPressure,
       "air.pressure");
  head("water.vapour-head", "Vapour pressure as a head of the water", w.vapourHead,
       "vapour pressure", w.vapourPressure, "water.vapour-pressure");
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

void Report::counted(const char* id, const char* title, const Decided<Volume>& result,
                     std::optional<double> VehicleTraffic::*count) {
  Entry entry(id, "Wash demand", title, result, Kind::Volume);
  entry.formula("sum of (vehicles x water for one wash)", kContinuity);
  for (const VehicleTraffic& kind : plan_.basis.demand.vehicles) {
    if (!(kind.*count) || !kind.water) continue;
    entry.step(kind.name + ": " + fixed(*(kind.*count), 1) + " x " + fixed(kind.water->value(), 4) +
               " m\u00B3");
  }
  add(entry);
}

void Report::day() {
  const DemandStudy& d = all_.demand;
  const std::string section = "Wash demand";
  counted("demand.daily-wash", "Wash water a day", d.dailyWash, &VehicleTraffic::perDay);
  counted("demand.busy-hour", "Wash water in the busiest hour", d.busyHourWash,
          &VehicleTraffic::perHour);
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

/// What the run would be in larger sizes of the same pipe.
void Report::sizes(const PressureRun& run) {
  constexpr const char* kVerdicts[] = {"too fast", "suits", "generous: a smaller size would do"};
  const auto drawn =
      decide([](const std::vector<SizeChoice>& s) { return s.front().fastest; }, run.sizes);
  Entry entry("run.size", "Pressure runs", "Velocity in the smallest bore, and larger sizes", drawn,
              Kind::Velocity);
  entry.about(run.run)
      .in("Q", "design flow", run.flow, Kind::Flow)
      .has("v_max", "ceiling", run.ceiling, Kind::Velocity, "limits")
      .formula("4 Q / (pi d2); at most v_max, generous below half of it", kContinuity);
  if (run.sizes) {
    for (const SizeChoice& choice : *run.sizes) {
      entry.step(choice.size + " in: v = " + fixed(choice.fastest.value(), 3) + " m/s, loss " +
                 fixed(choice.loss.value(), 3) + " m, " +
                 kVerdicts[static_cast<int>(choice.verdict)]);
    }
  }
  add(entry);
}

void Report::devices() {
  for (const DevicePressure& device : all_.devices) {
    Entry entry("wash.pressure", "Pressure runs", "Pressure at the wash device", device.available,
                Kind::Pressure);
    entry.about(device.device)
        .in("p", "needed", device.required, Kind::Pressure)
        .formula("pressure at the end of the product run that feeds it; at least p", kBernoulli);
    if (!device.run.empty()) entry.step("fed by " + device.run);
    add(entry);
  }
}

std::vector<Calculation> Report::take() {
  water();
  peak();
  day();
  pump();
  for (const PressureRun& run : all_.runs) {
    loss(run);
    ends(run);
    sizes(run);
  }
  devices();
  return std::move(made_);
}

} // namespace

std::vector<Calculation> hydraulicsCalculations(const Plan& plan, const Study& study) {
  std::vector<Calculation> all = Report(plan, study).take();
  std::vector<Calculation> suctions = suctionCalculations(plan, study);
  all.insert(all.end(), std::make_move_iterator(suctions.begin()),
             std::make_move_iterator(suctions.end()));
  return all;
}

} // namespace sump
