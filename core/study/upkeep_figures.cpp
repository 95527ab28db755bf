// The figures of start-up and upkeep as text in the project's units.

#include "core/plan/keys.h"
#include "core/study/calculation_print.h"
#include "core/study/object_names.h"
#include "core/study/upkeep_parts.h"
#include "core/units/print.h"

namespace sump {

namespace {

using Text = Decided<std::string>;

/// A filling: gallons to a tenth or whole litres; printVolume is for vaults.
std::string fillingText(Volume volume, UnitSystem units) {
  if (units == UnitSystem::Metric) return fixed(volume.value() * 1000, 0) + " L";
  return grouped(volume.value() / kCubicMetresPerGallon, 1) + " gal";
}

class Figures {
public:
  Figures(const Plan& plan, const Study& study, const UpkeepTable& table)
      : plan_(plan), study_(study), table_(table), units_(plan.project.units) {}

  std::vector<UpkeepFigure> all() {
    vaults();
    suction();
    electric();
    pump();
    pumpOut();
    eductorOpen();
    eductorOutlet();
    return std::move(all_);
  }

private:
  void add(std::string key, std::string title, Text text) {
    all_.push_back({std::move(key), std::move(title), std::move(text)});
  }

  /// One text for each suction, with its name where there are several.
  template <class T, class Print> Text eachSuction(Decided<T> SuctionStudy::*member, Print print) {
    std::string text;
    Needs needs;
    const auto& suctions = study_.hydraulics.suctions;
    for (const SuctionStudy& suction : suctions) {
      const Decided<T>& value = suction.*member;
      if (!value) {
        addNeeds(needs, value.needs);
        continue;
      }
      text += (text.empty() ? "" : ", ") + print(*value);
      if (suctions.size() > 1) text += " for " + runName(suction.run);
    }
    if (suctions.empty()) return undecided<std::string>({"a suction run"});
    if (!needs.empty()) return undecided<std::string>(std::move(needs));
    return text;
  }

  std::string runName(const Id& id) const {
    for (const Run& run : plan_.runs) {
      if (run.id == id && !run.name.empty()) return run.name;
    }
    return id;
  }

  std::string timeText(Duration time) const {
    return printQuantity(time.value(), QuantityKind::Time, units_, 3);
  }
  Text timeOf(const Decided<Duration>& time) const {
    return decide([&](Duration t) { return timeText(t); }, time);
  }
  Text flowOf(const Decided<Flow>& flow) const {
    return decide([&](Flow f) { return printFlow(f, units_); }, flow);
  }

  void vaults();
  void suction();
  void electric();
  void pump();
  void pumpOut();
  void eductorOpen();
  void eductorOutlet();
  Text supplies(SupplyKind kind) const;
  Text signal(bool ofFloat) const;
  Decided<Flow> designFlow(Service service, const char* need) const;

  const Plan& plan_;
  const Study& study_;
  const UpkeepTable& table_;
  UnitSystem units_;
  std::vector<UpkeepFigure> all_;
};

void Figures::vaults() {
  const bool any = !plan_.vaults.empty();
  const Decided<const Vault*> last =
      any ? Decided<const Vault*>(&plan_.vaults.back()) : undecided<const Vault*>({"a vault"});
  add("lastVault", "Suction vault", decide([](const Vault* v) { return called(*v); }, last));
  const VaultStudy* study = any ? study_.vault(plan_.vaults.back().id) : nullptr;
  const Decided<Length> rest = study == nullptr
                                   ? undecided<Length>({"a vault"})
                                   : given(study->waterLevel, "overflow of the last vault");
  add("restLevel", "Rest level of the suction vault",
      decide([&](Length level) { return printElevation(level, units_); }, rest));
  const bool full = study_.workingVolume.value() > 0;
  add("workingVolume", "Working volume of all vaults",
      full ? Text(printVolume(study_.workingVolume, units_))
           : undecided<std::string>({"water levels of the vaults"}));
  const Decided<Length> height = given(plan_.basis.water.lowLevel, "height of the low-level float");
  add("floatHeight", "Low-level float above the floor",
      decide([&](Length h) { return printShort(h, units_); }, height));
  add("floatLevel", "Level of the low-level float",
      decide([&](const Vault* v, Length h) { return printElevation(v->floor + h, units_); }, last,
             height));
  add("floatSignal", "Float circuit", signal(true));
}

void Figures::suction() {
  const auto filling = [&](Volume v) { return fillingText(v, units_); };
  add("primingVolume", "Filling of suction and strainer",
      eachSuction(&SuctionStudy::primingVolume, filling));
  add("strainerVolume", "Filling of the strainer",
      decide(filling, given(plan_.basis.pump.strainerVolume, "volume of the strainer")));
  add("primingTime", "Time to fill by the priming hose",
      eachSuction(&SuctionStudy::primingTime, [&](Duration t) { return timeText(t); }));
  add("suctionLift", "Lift from low water",
      eachSuction(&SuctionStudy::liftLow, [&](Length l) { return printShort(l, units_); }));
}

Text Figures::supplies(SupplyKind kind) const {
  std::string text;
  for (const Supply& supply : plan_.basis.wiring.supplies) {
    if (supply.kind != kind) continue;
    text += (text.empty() ? "" : ", ") + std::to_string(supply.volts) + " V AC";
    text += kind == SupplyKind::Motor3Phase ? " three-phase" : " one-phase";
    if (!supply.name.empty()) text += " (" + supply.name + ")";
  }
  if (!text.empty()) return text;
  return undecided<std::string>(
      {kind == SupplyKind::Motor3Phase ? "three-phase supply of the motor" : "control supply"});
}

/// The float's circuits are those in a float conduit.
Text Figures::signal(bool ofFloat) const {
  std::string text;
  for (const SignalCircuit& circuit : plan_.basis.wiring.signalCircuits) {
    const RunStudy* run = study_.run(circuit.run);
    if (run == nullptr) continue;
    const Service wanted = ofFloat ? Service::FloatConduit : Service::Signal;
    if (run->service != wanted) continue;
    text += (text.empty() ? "" : ", ") + std::string(voltsText(circuit.kind));
    if (!circuit.name.empty()) text += " (" + circuit.name + ")";
  }
  if (!text.empty()) return text;
  return undecided<std::string>(
      {ofFloat ? "float circuit and its conduit" : "wash-demand signal and its conduit"});
}

void Figures::electric() {
  add("motorSupply", "Motor supply", supplies(SupplyKind::Motor3Phase));
  add("controlSupply", "Control supply", supplies(SupplyKind::Control1Phase));
  add("washSignal", "Wash-demand signal", signal(false));
}

Decided<Flow> Figures::designFlow(Service service, const char* need) const {
  for (const PressureRun& run : study_.hydraulics.runs) {
    if (run.service == service) return run.flow;
  }
  return undecided<Flow>({need});
}

void Figures::pump() {
  const HydraulicsStudy& water = study_.hydraulics;
  std::string low = printPressure(table_.pressureLow, units_);
  low.erase(std::min(low.find(' '), low.size())); // the unit stands behind the upper one
  add("pumpPressureUsual", "Pump pressure, usually (" + table_.source.citation + ")",
      low + " to " + printPressure(table_.pressureHigh, units_));
  // p = rho g h
  add("pumpPressureCurve", "Pressure that the pump adds by its curve",
      decide(
          [&](Length head, Density density) {
            const Pressure p = pascals(head.value() * density.value() * kGravity);
            return printPressure(p, units_);
          },
          water.pumpHead, water.water.density));
  add("pumpFlow", "Design flow of the pump", flowOf(water.pumpFlow));
  add("eductorPressure", "Pressure wanted at the eductor",
      decide([&](Pressure p) { return printPressure(p, units_); },
             given(plan_.basis.pump.eductorPressure, "pressure wanted at the eductor")));
  add("recirculationFlow", "Flow of the recirculation",
      flowOf(designFlow(Service::Recirculation, "a recirculation run")));
  add("underflowFlow", "Flow of the underflow flush",
      flowOf(designFlow(Service::Underflow, "an underflow run")));
}

void Figures::pumpOut() {
  add("pumpOutFirst", "Pump-out if all sludge settles in the first chamber",
      timeOf(study_.train.pumpOutFirst));
  add("pumpOutTrain", "Pump-out if it spreads over all chambers",
      timeOf(study_.train.pumpOutTrain));
}

void Figures::eductorOpen() {
  Decided<Pressure> open = undecided<Pressure>({"a recirculation run"});
  for (const PressureRun& run : study_.hydraulics.runs) {
    if (run.service != Service::Recirculation) continue;
    open = run.atEnd;
    break;
  }
  add("eductorOpen", "Pressure at the eductor, its valve fully open",
      decide([&](Pressure p) { return printPressure(p, units_); }, open));
}

/// Of the first one whose mount is given.
void Figures::eductorOutlet() {
  Decided<Length> height = undecided<Length>({"an eductor with its mount"});
  for (const Run& run : plan_.runs) {
    const VaultStudy* vault = study_.vault(run.to.target);
    if (!run.eductor || vault == nullptr) continue;
    const auto rest = given(vault->waterLevel, "overflow of the last vault");
    height = decide([&](Length water) { return run.eductor->outletEnd - water; }, rest);
    break;
  }
  add("eductorOutlet", "Eductor's outlet above the water at rest",
      decide([&](Length h) { return printShort(h, units_); }, height));
}

} // namespace

std::vector<UpkeepFigure> upkeepFigures(const Plan& plan, const Study& study,
                                        const UpkeepTable& table) {
  return Figures(plan, study, table).all();
}

} // namespace sump
