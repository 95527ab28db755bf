#include "core/study/wiring.h"

#include "core/study/conduit_fill.h"
#include "core/study/context.h"
#include "core/study/wiring_space.h"

namespace sump {

namespace {

void fillSupplies(const StudyContext& context, WiringStudy& wiring) {
  const WiringBasis& basis = context.plan.basis.wiring;
  for (const Supply& supply : basis.supplies) {
    (supply.kind == SupplyKind::Motor3Phase ? wiring.motorSupply : wiring.controlSupply) = true;
    wiring.supplies.push_back(supplyStudy(context, supply));
  }
  for (const SignalCircuit& signal : basis.signalCircuits) {
    const Run* run = context.locator.run(signal.run);
    if (run == nullptr || run->service != Service::FloatConduit) wiring.washSignal = true;
    if (signal.run.empty()) wiring.signalsWithoutConduit.push_back(signal.id);
  }
}

bool fromLastChamber(const Plan& plan, const Run& run) {
  if (run.service != Service::FloatConduit || plan.vaults.empty()) return false;
  const Vault& last = plan.vaults.back();
  for (const RunEnd* end : {&run.from, &run.to}) {
    if (end->kind == EndKind::Chamber && end->target == last.id &&
        end->chamber == chamberCount(last)) {
      return true;
    }
  }
  return false;
}

} // namespace

void fillWiring(const StudyContext& context, Study& study) {
  WiringStudy& wiring = study.wiring;
  for (std::size_t i = 0; i < study.runs.size(); ++i) {
    const Run& run = context.plan.runs[i];
    if (!isConduit(run.service)) continue;
    wiring.conduits.push_back(conduitStudy(context, run, study.runs[i]));
    wiring.floatConduit |= fromLastChamber(context.plan, run);
  }
  fillSupplies(context, wiring);
  for (const EquipmentRoom& room : context.plan.rooms) {
    if (room.panel) wiring.spaces.push_back(workingSpace(context, room, study.runs));
  }
}

std::vector<Calculation> wiringCalculations(const Plan&, const Study& study) {
  std::vector<Calculation> all;
  for (const ConduitStudy& conduit : study.wiring.conduits) {
    Calculation c;
    c.id = "wiring.fill";
    c.object = conduit.run;
    c.section = "Wiring";
    c.title = "Conduit fill";
    c.formula = "fill = area of all conductors / internal area of the conduit";
    c.kind = QuantityKind::Share;
    c.source = "NEC chapter 9 tables 1, 4 and 5; areas from memory";
    c.decided = static_cast<bool>(conduit.fill);
    c.needs = needsText(conduit.fill.needs);
    if (conduit.fill) {
      c.inputs = {
          {"A_w", "all conductors", conduit.conductorArea->value(), QuantityKind::Area, "plan"},
          {"A_i", "inside", conduit.inside->value(), QuantityKind::Area, "catalogue"}};
      c.result = *conduit.fill;
    }
    all.push_back(std::move(c));
  }
  return all;
}

} // namespace sump
