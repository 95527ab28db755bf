// Conduits, supplies and signals as tables. No conductor is sized here: that is the licensed
// electrician's work.

#include "core/sheet/circuits.h"
#include "core/sheet/end_names.h"
#include "core/sheet/set_tables.h"
#include "core/sheet/tags.h"
#include "core/study/nominal_volts.h"
#include "core/units/print.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

using TableRows = std::vector<std::vector<std::string>>;

std::string percentText(double share) {
  return fixed(share * 100, 1) + " %";
}

/// The signals in a conduit with their volts; empty when there are none.
std::string signalText(const Plan& plan, const Id& run) {
  std::string text;
  for (const SignalCircuit& circuit : plan.basis.wiring.signalCircuits) {
    if (circuit.run == run)
      text += (text.empty() ? "signal, " : ", ") + std::string(voltsText(circuit.kind));
  }
  return text;
}

/// What its conductors carry. The study's power takes in control and signal circuits at line
/// voltage.
std::string classText(const Plan& plan, const ConduitStudy& conduit, const Run& run) {
  if (conduit.mixed()) return "power WITH Class 2";
  const auto carries = [&](CircuitKind kind) {
    return std::ranges::any_of(run.conductors, [&](const Conductor& c) { return c.kind == kind; });
  };
  const std::string signal = signalText(plan, run.id);
  if (!signal.empty() && !carries(CircuitKind::Power))
    return signal + (conduit.class2 ? " (Class 2)" : "");
  if (!conduit.power) return conduit.class2 ? "Class 2" : "-";
  if (!carries(CircuitKind::Control)) return "power";
  return carries(CircuitKind::Power) ? "power, control" : "control";
}

/// A three-phase system whose volts to ground are those of its star point, whatever its name.
bool isStar(const Supply& supply) {
  return supply.voltsToGround &&
         std::abs(supply.volts / std::sqrt(3.0) - *supply.voltsToGround) < 1;
}

/// Of a system that is none of the usual ones, what the plan says of it.
std::string systemText(const Supply& supply) {
  if (const auto system = nominalSystem(supply)) return std::string(system->name);
  if (!isStar(supply)) return "______ (b)";
  return std::to_string(supply.volts) + "Y/" + std::to_string(*supply.voltsToGround) + " V (b)";
}

/// Beside what the code asks for, which is more under traffic.
std::string coverOfConduit(const SheetJob& job, const RunStudy* run) {
  if (run == nullptr || !run->leastCover) return "-";
  const auto of = [&](const CoverCheck& cover, std::string_view limit) {
    return printShort(cover.cover, job.units()) + " of " +
           printShort(job.review.limits.length(limit), job.units());
  };
  std::string text = of(*run->leastCover, "cover.conduit");
  if (run->leastTrafficCover)
    text += "; under traffic " + of(*run->leastTrafficCover, "cover.conduit.traffic");
  return text;
}

std::string tagOf(const SheetJob& job, const Id& run) {
  const auto tags = runTags(job.plan());
  const auto found = tags.find(run);
  return found == tags.end() ? "none" : found->second;
}

} // namespace

Block conduitTable(const SheetJob& job, double width) {
  TableRows rows;
  const auto levelAt = [&](const RunStudy* studied, Length RunStudy::*end) {
    return studied != nullptr && studied->resolved ? printElevation(studied->*end, job.units())
                                                   : "?";
  };
  for (const ConduitStudy& conduit : job.study().wiring.conduits) {
    const Run& run = *job.plan().runs.find(conduit.run);
    const RunStudy* studied = job.study().run(conduit.run);
    rows.push_back(
        {tagOf(job, conduit.run), sizeAndMaterial(run, job.catalog),
         studied != nullptr ? lengthText(*studied, job.units()) : "?",
         decidedText(conduit.fill, percentText) + " of " + percentText(conduit.fillLimit),
         fixed(conduit.mostDegrees, 0) + "°", classText(job.plan(), conduit, run), pulledText(run),
         levelAt(studied, &RunStudy::startInvert), levelAt(studied, &RunStudy::endInvert),
         coverOfConduit(job, studied),
         runEndText(job.plan(), job.study(), run, true) + " to " +
             runEndText(job.plan(), job.study(), run, false)});
  }
  return table("CONDUIT SCHEDULE",
               {{"Run"},
                {"Size and kind"},
                {"Length", Align::Right},
                {"Fill of|limit"},
                {"Bends, pull|to pull", Align::Right},
                {"Circuits"},
                {"Conductors"},
                {"Start|invert", Align::Right},
                {"End|invert", Align::Right},
                {"Least cover|of that asked"},
                {"From - to"}},
               rows, width);
}

/// Its notes are lettered: the circuits stand on the same sheet and have numbered ones.
Block supplyTable(const SheetJob& job, double width) {
  TableRows rows;
  Needs needs;
  for (const Supply& supply : job.plan().basis.wiring.supplies) {
    const auto& studied = job.study().wiring.supplies;
    const auto found = std::find_if(studied.begin(), studied.end(),
                                    [&](const SupplyStudy& s) { return s.supply == supply.id; });
    std::string distance = "-", sight = "-";
    if (found != studied.end()) {
      addNeeds(needs, found->disconnectDistance.needs);
      addNeeds(needs, found->inSight.needs);
      distance = found->disconnectDistance ? printLength(*found->disconnectDistance, job.units())
                                           : std::string("undecided (a)");
      sight = found->inSight ? (*found->inSight ? "yes" : "NO") : "(a)";
      if (found->hiddenBy) sight = "NO: " + std::string(name(*found->hiddenBy));
    }
    const bool motor = supply.kind == SupplyKind::Motor3Phase;
    rows.push_back({supplyName(supply), motor ? "3-phase, motor" : "1-phase, control",
                    std::to_string(supply.volts) + " V AC", systemText(supply),
                    supply.voltsToGround ? std::to_string(*supply.voltsToGround) + " V" : "______",
                    tagOf(job, supply.run), distance, sight});
  }
  Block block = table("SUPPLIES",
                      {{"Supply"},
                       {"Kind"},
                       {"Equipment|volts"},
                       {"System,|nominal"},
                       {"To ground"},
                       {"Conduit"},
                       {"Disconnect|away (c)", Align::Right},
                       {"In sight"}},
                      rows, width);
  const auto& supplies = job.plan().basis.wiring.supplies;
  if (!supplies.empty())
    addNote(block,
            "(c) From the middle of the panel; of a motor, from the middle of the skid where "
            "that is farther.");
  if (std::ranges::any_of(supplies, [](const Supply& s) { return !nominalSystem(s); }))
    addNote(block,
            "(b) By the volts that the plan gives, which are no nominal system of NEC 220.5(A) or "
            "IEC 60038: the electrician and the utility tell the system.");
  if (needs.empty()) return block;
  addNote(block,
          "(a) Not decided yet: the electrician and the owner fix the " + needsText(needs) + ".");
  return block;
}

Block signalTable(const SheetJob& job, double width) {
  TableRows rows;
  for (const SignalCircuit& circuit : job.plan().basis.wiring.signalCircuits) {
    rows.push_back(
        {called(circuit), std::string(voltsText(circuit.kind)), tagOf(job, circuit.run)});
  }
  return table("SIGNALS AND FLOAT", {{"Circuit"}, {"Kind"}, {"Conduit"}}, rows, width);
}

} // namespace sump
