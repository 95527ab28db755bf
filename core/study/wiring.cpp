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
    if (!isOfFloat(context.plan, signal)) wiring.washSignal = true;
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

bool isOfFloat(const Plan& plan, const SignalCircuit& circuit) {
  const Run* run = plan.runs.find(circuit.run);
  return run != nullptr && run->service == Service::FloatConduit;
}

std::string_view voltsText(SignalKind kind) {
  static constexpr std::string_view kTexts[] = {"24 V DC", "24 V AC", "110 V AC", "220 V AC"};
  return kTexts[static_cast<std::size_t>(kind)];
}

std::string_view name(SightObstacle obstacle) {
  static constexpr std::string_view kNames[] = {"a wall", "the panel", "the equipment skid",
                                                "the plumbing area"};
  return kNames[static_cast<std::size_t>(obstacle)];
}

std::string_view name(WorkingSpaceObstacle obstacle) {
  static constexpr std::string_view kNames[] = {"the equipment skid",
                                                "the plumbing area",
                                                "the panel",
                                                "a disconnect",
                                                "a wall",
                                                "the swing of the door",
                                                "a line"};
  return kNames[static_cast<std::size_t>(obstacle)];
}

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

} // namespace sump
