#include "core/sheet/circuits.h"

#include "core/sheet/end_names.h"
#include "core/sheet/set_tables.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/tags.h"
#include "core/study/calculation_print.h"
#include "core/study/water_power.h"
#include "core/study/wire_gauge.h"
#include "core/units/print.h"

#include <algorithm>

namespace sump {

namespace {

/// To be written in by hand.
const std::string kBlank = "______";
const std::string kSolenoid = "Solenoid valve";
const std::string kInRoom = kBlank + " in the room";

std::string panelText(const Plan& plan) {
  for (const EquipmentRoom& room : plan.rooms) {
    if (room.panel) return "Panel, " + called(room);
  }
  return "Panel " + kBlank;
}

/// The end of a conduit that is not in the equipment room.
std::string farEnd(const Run& run, const Plan& plan, const Study& study) {
  return runEndText(plan, study, run, run.to.kind == EndKind::Port);
}

class Circuits {
public:
  explicit Circuits(const SheetJob& job)
      : plan_(job.plan()), study_(job.study()), tags_(runTags(plan_)), panel_(panelText(plan_)) {}

  std::vector<Circuit> take() {
    for (const Supply& supply : plan_.basis.wiring.supplies)
      addFeed(supply);
    for (const Supply& supply : plan_.basis.wiring.supplies)
      addBranch(supply);
    for (const Run& run : plan_.runs) {
      for (const InlinePart& part : run.parts) {
        if (part.kind == PartKind::SolenoidValve) addSolenoid(run, part);
      }
    }
    for (const SignalCircuit& signal : plan_.basis.wiring.signalCircuits)
      addSignal(signal);
    return std::move(made_);
  }

private:
  const Run* runOf(const Id& id) const { return plan_.runs.find(id); }
  std::string tagOf(const Run* run) const { return run != nullptr ? tags_.at(run->id) : kBlank; }

  static std::string voltsOf(const Supply& supply) {
    return std::to_string(supply.volts) +
           (supply.kind == SupplyKind::Motor3Phase ? " V AC, 3-phase" : " V AC, 1-phase");
  }

  void addFeed(const Supply& supply) {
    const Run* run = runOf(supply.run);
    const bool motor = supply.kind == SupplyKind::Motor3Phase;
    std::string conductors = kBlank;
    if (run != nullptr) {
      const auto kind = motor ? CircuitKind::Power : CircuitKind::Control;
      const bool own =
          std::ranges::any_of(run->conductors, [&](const Conductor& c) { return c.kind == kind; });
      conductors = conductorText(*run, own ? std::optional(kind) : std::nullopt);
    }
    made_.push_back({supply.id, supplyName(supply) + ": feed", voltsOf(supply),
                     "Source " + kBlank + " (2)", panel_, tagOf(run), kBlank + " A", conductors,
                     false});
  }

  void addBranch(const Supply& supply) {
    const bool motor = supply.kind == SupplyKind::Motor3Phase;
    made_.push_back({supply.id, supplyName(supply), voltsOf(supply), panel_,
                     motor ? "Its disconnect, then the motors on the skid"
                           : "Its disconnect, then the controls; their place " + kBlank + " (4)",
                     kInRoom, motor ? kBlank + " A, by nameplate, NEC 430" : kBlank + " A",
                     motor ? kBlank + " by nameplate, NEC 430" : kBlank, true});
  }

  void addSolenoid(const Run& run, const InlinePart& part) {
    made_.push_back({part.id, kSolenoid, kBlank + " V, by nameplate", panel_,
                     "Valve " + part.id + " in " + tags_.at(run.id), kInRoom, kBlank + " A", kBlank,
                     true});
  }

  void addSignal(const SignalCircuit& signal) {
    const Run* run = runOf(signal.run);
    const std::string volts(voltsText(signal.kind)),
        far = run != nullptr ? farEnd(*run, plan_, study_) : kBlank;
    const bool toFloat = isOfFloat(plan_, signal);
    // The panel feeds the float's switch; a wash signal comes with its own supply or from there.
    made_.push_back({signal.id, called(signal), volts,
                     toFloat ? panel_ + ": its " + volts + " source " + kBlank + " (3)"
                             : far + ": source " + kBlank + " (3)",
                     toFloat ? "Switch in " + far : panel_, tagOf(run), kBlank + " A",
                     run != nullptr ? pulledText(*run) : kBlank, false});
  }

  const Plan& plan_;
  const Study& study_;
  std::unordered_map<Id, std::string> tags_;
  std::string panel_;
  std::vector<Circuit> made_;
};

/// What the motor has to do, as far as it is worked out, and what only its nameplate tells.
std::string pumpText(const SheetJob& job) {
  const HydraulicsStudy& water = job.study().hydraulics;
  const std::string& name = job.plan().basis.pump.name;
  const auto print = [&](QuantityKind kind) {
    return [&job, kind](auto v) { return printQuantity(v.value(), kind, job.units(), 3); };
  };
  std::string text =
      "PUMP" + (name.empty() ? std::string(": ") : ", named \"" + name + "\" in the plan: ");
  text += "flow at the peak " + decidedText(water.pumpFlow, print(QuantityKind::Flow)) +
          ", head there " + decidedText(water.pumpHead, print(QuantityKind::HeadOfWater)) +
          ", computed power given to the water " +
          decidedText(waterPower(water), [&](Power p) { return printPower(p, job.units()); }) +
          ". Shaft power is that over the pump's efficiency: pump maker " + kBlank +
          ". Motor nameplate: power " + kBlank + ", full-load current " + kBlank +
          " A, service factor " + kBlank + "; every other motor on the skid: " + kBlank + ".";
  return text;
}

} // namespace

std::string conductorText(const Run& run, std::optional<CircuitKind> only) {
  std::string text;
  for (const Conductor& c : run.conductors) {
    static constexpr const char* kKinds[] = {"power", "control", "Class 2"};
    if (only && c.kind != *only) continue;
    text += (text.empty() ? "" : "; ") + std::to_string(c.count) + " no. " + gaugeText(c.size) +
            " " + kKinds[static_cast<std::size_t>(c.kind)];
  }
  return text.empty() ? "not stated" : text;
}

std::string pulledText(const Run& run) {
  if (run.service != Service::FloatConduit) return conductorText(run);
  const std::string own = "the float's own cable";
  return run.conductors.empty() ? own : own + "; drawn for " + conductorText(run);
}

std::vector<Circuit> circuitsOf(const SheetJob& job) {
  return Circuits(job).take();
}

Block circuitTable(const SheetJob& job, double width) {
  std::vector<std::vector<std::string>> rows;
  const std::vector<Circuit> circuits = circuitsOf(job);
  const bool signals = !job.plan().basis.wiring.signalCircuits.empty();
  for (const Circuit& c : circuits)
    rows.push_back({std::to_string(rows.size() + 1), c.name, c.volts, c.from, c.to, c.conduit,
                    c.overcurrent, c.conductors});
  Block block = table("CIRCUIT SCHEDULE",
                      {{"No."},
                       {"Circuit"},
                       {"Volts, phase"},
                       {"From"},
                       {"To"},
                       {"Conduit"},
                       {"Overcurrent|device (1)"},
                       {"Conductors (1)"}},
                      rows, width);
  block.anchor = circuitAnchor();
  if (rows.empty()) return block;
  addNote(block,
          "(1) Blanks are the licensed electrician's to fill in, by the nameplates and the "
          "adopted code (motors: NEC 430); nothing is sized here. Conductors given are those "
          "that the conduits are drawn for.");
  addNote(block, "(2) Panel or service and its circuit: the owner and the electrician.");
  if (signals)
    addNote(
        block,
        "(3) Float: transformer, power supply or circuit by the panel's maker. Wash demand: its "
        "own supply, or a dry contact fed from the panel: the wash equipment's supplier "
        "and the panel's maker.");
  const auto& supplies = job.plan().basis.wiring.supplies;
  const auto has = [&](SupplyKind kind) {
    return std::ranges::any_of(supplies, [&](const Supply& s) { return s.kind == kind; });
  };
  if (has(SupplyKind::Control1Phase))
    addNote(block, "(4) Not in the plan, so drawn as far as the disconnect: the skid's maker.");
  if (std::ranges::any_of(circuits, [](const Circuit& c) { return c.name == kSolenoid; }))
    addNote(block, "Solenoid valve: the level or the signal that opens and shuts it: ______ (the "
                   "skid's maker).");
  if (std::ranges::any_of(circuits, &Circuit::inRoom))
    addNote(block,
            "Dashed on the room's electrical plan: circuits inside the room, numbered as here; "
            "their way, conduit and supports by the electrician.");
  if (has(SupplyKind::Motor3Phase)) addNote(block, pumpText(job));
  return block;
}

} // namespace sump
