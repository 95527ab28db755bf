// Wiring coordination: conduit bends and fill, circuits kept apart, working space, disconnects. No
// conductor is sized here; the work is a licensed electrician's under the adopted electrical code.

#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/disconnect_space.h"
#include "core/study/object_names.h"
#include "core/units/list_words.h"

#include <algorithm>
#include <functional>

namespace sump {

namespace {

/// Turns are drawn and printed to a tenth of a degree.
constexpr double kAngleHair = 0.05;

void checkConduitBends(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const Angle most = input.limits.angle("wiring.bends");
  for (const ConduitStudy& conduit : input.study.wiring.conduits) {
    const RunStudy* run = input.study.run(conduit.run);
    if (run == nullptr || !run->resolved) {
      out.needs({conduit.run}, {"inverts of " + conduit.run});
      continue;
    }
    int number = 0;
    for (const PullStretch& stretch : conduit.stretches) {
      ++number;
      if (stretch.degrees <= inDegrees(most) + kAngleHair) continue;
      Finding& finding = out.against("wiring.bends", "many", {conduit.run});
      finding.measured = printAngle(degrees(stretch.degrees));
      finding.required = printAngle(most);
      finding.which = std::to_string(number);
      finding.place = stretch.at;
    }
  }
}

void checkFill(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (const ConduitStudy& conduit : input.study.wiring.conduits) {
    if (!conduit.fill) {
      out.needs({conduit.run}, conduit.fill.needs);
    } else if (*conduit.fill > conduit.fillLimit) {
      Finding& finding =
          out.report("full", {conduit.run}, {{"count", std::to_string(conduit.conductors)}});
      finding.measured = percent(*conduit.fill);
      finding.required = "at most " + percent(conduit.fillLimit);
    }
  }
}

/// `460 V and 110 V`, the highest first; nothing for one voltage.
std::string differentVolts(const Plan& plan, const Id& conduit) {
  std::vector<int> volts;
  for (const Supply& supply : plan.basis.wiring.supplies)
    if (supply.run == conduit) volts.push_back(supply.volts);
  std::ranges::sort(volts, std::greater<>());
  volts.erase(std::unique(volts.begin(), volts.end()), volts.end());
  std::vector<std::string> told;
  for (int v : volts)
    told.push_back(std::to_string(v) + " V");
  return told.size() > 1 ? listInWords(told) : std::string();
}

void checkRaceway(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (const ConduitStudy& conduit : input.study.wiring.conduits) {
    if (conduit.mixed()) {
      out.report("mixed", {conduit.run});
    } else if (!conduit.power && !conduit.class2) {
      out.needs({conduit.run}, {"conductors of " + conduit.run});
    }
    const std::string volts = differentVolts(input.plan, conduit.run);
    if (volts.empty()) continue;
    cite(out.note("voltages", {conduit.run}, {{"volts", volts}}), "NEC 300.3(C)(1), from memory",
         Confidence::FromMemory);
  }
}

/// The row of the table that asked for this depth.
std::string_view depthLimit(const Limits& limits, Length depth) {
  for (std::string_view id : {"wiring.space-depth-low", "wiring.space-depth-grounded"}) {
    if (limits.length(id) == depth) return id;
  }
  return "wiring.space-depth-live";
}

void checkWidth(Reporter& out, const WorkingSpaceStudy& space, const std::vector<Id>& objects,
                std::string_view narrow) {
  if (space.widthClear >= space.widthNeeded - metres(kRounding)) return;
  Finding& finding = out.against("wiring.space-width", narrow, objects);
  finding.measured = printLength(space.widthClear, out.units());
  finding.required = printLength(space.widthNeeded, out.units());
}

void checkDepth(Reporter& out, const WorkingSpaceStudy& space, const std::vector<Id>& objects,
                std::string_view shallow) {
  if (!space.depthNeeded || space.depthClear >= *space.depthNeeded - metres(kRounding)) return;
  Finding& finding =
      out.against(depthLimit(out.input().limits, *space.depthNeeded), shallow, objects);
  finding.measured = printLength(space.depthClear, out.units());
  finding.required = printLength(*space.depthNeeded, out.units());
}

/// Walls and boxes are told by the depth and width that they leave.
void checkTaken(Reporter& out, const WorkingSpaceStudy& space, const std::vector<Id>& objects,
                std::string_view taken) {
  int number = 0;
  for (const WorkingSpaceIntrusion& intrusion : space.intrusions) {
    ++number;
    if (intrusion.kind != WorkingSpaceObstacle::Run &&
        intrusion.kind != WorkingSpaceObstacle::DoorSwing) {
      continue;
    }
    std::vector<Id> all = objects;
    if (!intrusion.object.empty()) all.push_back(intrusion.object);
    Finding& finding = out.report(taken, all, {{"what", std::string(name(intrusion.kind))}});
    finding.place = intrusion.at;
    finding.which = std::to_string(number);
  }
}

void checkPanelSpace(Reporter& out, const WorkingSpaceStudy& space) {
  if (!space.depthNeeded) out.needs({space.room}, space.depthNeeded.needs);
  checkDepth(out, space, {space.room}, "shallow");
  checkWidth(out, space, {space.room}, "narrow");
  checkTaken(out, space, {space.room}, "intrusion");
  for (const Id& run : space.runsOverPanel)
    out.against("wiring.space-above", "piping", {run, space.room});
}

/// Whoever works on a disconnect stands before it, not before what is beside it. What stands right
/// before it leaves no width either, and a niche no depth: each is told once.
void checkDisconnectSpaces(Reporter& out) {
  const RuleInput& input = out.input();
  for (const DisconnectSpace& space :
       disconnectSpaces(input.plan, input.limits, input.study.runs)) {
    const std::vector<Id> objects = {space.supply, space.room};
    const bool isBlocked = space.widthClear <= metres(0) && space.depthNeeded;
    const bool isWide = space.widthClear >= space.widthNeeded - metres(kRounding);
    if (!isBlocked) checkWidth(out, space, objects, "niche");
    if (isBlocked || isWide) checkDepth(out, space, objects, "opposite");
    checkTaken(out, space, objects, "taken");
  }
}

void checkSpace(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  if (input.plan.rooms.empty()) out.needs({}, {"equipment room and panel"});
  for (const WorkingSpaceStudy& space : input.study.wiring.spaces)
    checkPanelSpace(out, space);
  checkDisconnectSpaces(out);
  for (const EquipmentRoom& room : input.plan.rooms) {
    if (!room.panel) out.needs({room.id}, {"place of the panel in " + called(room)});
  }
}

void checkSight(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const std::vector<Supply>& supplies = input.plan.basis.wiring.supplies;
  bool motor = false;
  for (const SupplyStudy& supply : input.study.wiring.supplies) {
    const auto given = std::ranges::find(supplies, supply.supply, &Supply::id);
    if (given == supplies.end() || given->kind != SupplyKind::Motor3Phase) continue;
    motor = true;
    if (!supply.inSight) {
      out.needs({supply.supply}, supply.inSight.needs);
    } else if (supply.hiddenBy) {
      out.report("behind", {supply.supply},
                 {{"supply", given->name}, {"what", std::string(name(*supply.hiddenBy))}})
          .place = given->disconnect;
    } else if (!*supply.inSight) {
      Finding& finding =
          out.against("wiring.disconnect", "far", {supply.supply}, {{"supply", given->name}});
      finding.measured = printLength(*supply.disconnectDistance, out.units());
      finding.required = printLength(input.limits.length("wiring.disconnect"), out.units());
    }
  }
  if (!motor) out.needs({}, {"motor supply"});
}

void checkCircuits(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const WiringStudy& wiring = input.study.wiring;
  if (input.plan.basis.wiring.supplies.empty()) {
    out.needs({}, {"supplies"});
  } else {
    if (!wiring.controlSupply) out.report("control", {});
    if (!wiring.motorSupply) out.report("motor", {});
  }
  if (input.plan.basis.wiring.signalCircuits.empty()) {
    out.needs({}, {"signal circuits"}).which = "signals";
  } else if (!wiring.washSignal) {
    out.report("signal", {});
  }
}

} // namespace

const Rule kConduitBends = {
    "conduit-bends",           "Conduit turns no more than wire can be pulled round",
    "NEC 352.26, from memory", Confidence::FromMemory,
    Severity::Warning,         checkConduitBends,
    Trade::Electrical};

const Rule kConduitFill = {"conduit-fill",
                           "Conduit is not filled more than allowed",
                           "NEC chapter 9 table 1; areas of tables 4 and 5 from memory",
                           Confidence::FromMemory,
                           Severity::Warning,
                           checkFill,
                           Trade::Electrical};

const Rule kMixedRaceway = {"mixed-raceway",  "Signal circuits do not share a raceway with power",
                            "NEC 725.136(A)", Confidence::Seen,
                            Severity::Error,  checkRaceway,
                            Trade::Electrical};

const Rule kWorkingSpace = {"working-space",
                            "There is room to work at the panel, and no pipe over it",
                            "NEC 110.26(A), (E), edition 2014",
                            Confidence::SeenSecondHand,
                            Severity::Error,
                            checkSpace,
                            Trade::Electrical};

const Rule kDisconnectInSight = {"disconnect-in-sight",
                                 "The motor's disconnect is in sight of it",
                                 "NEC 430.102 and article 100 (50 ft), from memory",
                                 Confidence::FromMemory,
                                 Severity::Warning,
                                 checkSight,
                                 Trade::Electrical};

const Rule kSuppliesKnown = {
    "supplies-known",  "Control and motor supply and a wash-demand signal are brought",
    kPractice,         Confidence::CommonPractice,
    Severity::Warning, checkCircuits,
    Trade::Electrical};

} // namespace sump
