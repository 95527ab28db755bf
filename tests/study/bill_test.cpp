// Lines of the bill, by hand on small plans.

#include "core/study/bill.h"
#include "core/study/wire_gauge.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace sump::test {
namespace {

Bill billFor(const Plan& plan) {
  const Study study = studyOf(plan);
  return billOf(plan, study, builtinCatalog(), builtinSupplies(),
                cuttingList(plan, study, builtinCatalog(), inches(0.125)));
}

const BillLine* lineOf(const Bill& bill, std::string_view key, std::string_view size = {}) {
  const auto found = std::ranges::find_if(
      bill.lines, [&](const BillLine& line) { return line.key == key && line.size == size; });
  return found == bill.lines.end() ? nullptr : &*found;
}

double net(const Bill& bill, std::string_view key, std::string_view size = {}) {
  const BillLine* line = lineOf(bill, key, size);
  return line == nullptr ? 0 : *line->net;
}

Plan vaultPlan() {
  Plan plan;
  plan.site.groundDefault = feet(97);
  plan.vaults.put(twoChamberVault("V1", ft(20, 10), feet(90)));
  return plan;
}

RunEnd freeAt(double x, double y, EndFitting fitting = EndFitting::Plain) {
  return freeEnd(ft(x, y), feet(94), fitting);
}

/// Two legs of 8 ft at a right angle, 16 ft of 2 in pipe in sticks of 20 ft.
Run bent(EndFitting from, EndFitting to) {
  return makeRun("R", Service::Product, "pvc-sch80", "2", freeAt(40, 0, from), freeAt(48, 8, to),
                 {{ft(48, 0), feet(94)}});
}

/// The elbow in the line has pipe in both sockets; of what stands at an end one socket has pipe,
/// and the tee's two other arms and the elbow's one stay open.
TEST(BillJoints, OpenArmsAtTheEndsAreNotCemented) {
  struct {
    EndFitting from, to;
    int joints;
  } const cases[] = {{EndFitting::Plain, EndFitting::Plain, 2},
                     {EndFitting::Tee, EndFitting::Plain, 2 + 1},
                     {EndFitting::Tee, EndFitting::Tee, 2 + 1 + 1},
                     {EndFitting::Tee, EndFitting::ElbowDown, 2 + 1 + 1},
                     {EndFitting::Cap, EndFitting::FootValve, 2 + 1 + 1}};
  for (const auto& c : cases) {
    Plan plan;
    plan.runs.append(bent(c.from, c.to));
    EXPECT_EQ(net(billFor(plan), "solvent-joint", "2"), c.joints);
  }
}

/// A tee in the line has pipe in all three sockets.
TEST(BillJoints, ATeeThatABranchComesToHasThree) {
  Plan plan;
  plan.runs.append(bent(EndFitting::Plain, EndFitting::Plain));
  plan.runs.append(
      makeRun("B", Service::Product, "pvc-sch80", "2", freeAt(44, 6), onRun("R", ft(44, 0))));
  EXPECT_EQ(net(billFor(plan), "solvent-joint", "2"), 2 + 3);
}

/// At a bare end no pipe goes on beyond the tee, unless the end joins what is there already.
TEST(BillJoints, ATeeAtABareEndHasTwo) {
  struct {
    Point2 at;
    int joints;
  } const cases[] = {{ft(40, 0), 2 + 2}, {ft(48, 8), 2 + 2}, {ft(48, 7), 2 + 3}};
  for (const auto& c : cases) {
    Plan plan;
    sump::Run run = bent(EndFitting::Plain, EndFitting::Plain);
    run.service = Service::Vent; // joins nothing
    plan.runs.append(run);
    plan.runs.append(
        makeRun("B", Service::Vent, "pvc-sch80", "2", freeAt(44, 6), onRun("R", c.at)));
    EXPECT_EQ(net(billFor(plan), "solvent-joint", "2"), c.joints);
  }
}

/// The stub of another's product line is joined with the tee, so that its far arm has pipe.
TEST(BillJoints, ATeeAtAStubHasThree) {
  Plan plan;
  plan.runs.append(bent(EndFitting::Plain, EndFitting::Plain));
  plan.runs.append(
      makeRun("B", Service::Product, "pvc-sch80", "2", freeAt(44, 6), onRun("R", ft(40, 0))));
  EXPECT_EQ(net(billFor(plan), "solvent-joint", "2"), 2 + 3);
}

/// 4 joints of 2 in, 60 a quart: 4/60 qt = 63.09 mL, 10 % more 69.4 mL. A pint, or half a litre.
TEST(BillCement, ComesInPintsOrInHalfLitres) {
  Plan plan;
  plan.runs.append(bent(EndFitting::Tee, EndFitting::Tee));
  const BillLine us = *lineOf(billFor(plan), "pvc-cement");
  EXPECT_NEAR(*us.net, 4.0 / 60 * gallons(0.25).value(), 1e-12);
  EXPECT_NEAR(*us.order, gallons(0.125).value(), 1e-12);
  EXPECT_EQ(us.note, "whole cans of 1 pint");
  plan.project.units = UnitSystem::Metric;
  const BillLine metric = *lineOf(billFor(plan), "pvc-cement");
  EXPECT_EQ(*metric.net, *us.net);
  EXPECT_NEAR(*metric.order, 0.5e-3, 1e-12);
  EXPECT_EQ(metric.note, "whole cans of 500 mL");
}

/// 8 ft and 8 ft of product water, through the elbow and whatever stands in the line.
TEST(BillMarking, PurpleTapeGoesOverTheFittings) {
  Plan plan;
  sump::Run run = bent(EndFitting::Plain, EndFitting::Plain);
  run.parts = {part("P", PartKind::BallValve, 0, 0.5)};
  plan.runs.append(run);
  const Bill bill = billFor(plan);
  EXPECT_NEAR(net(bill, "purple-tape"), 16 * kMetresPerFoot, 1e-9);
  EXPECT_NE(lineOf(bill, "purple-tape")->note.find("from end to end"), std::string::npos);
}

/// An interconnect lies wholly in its vault; a product line from the same chamber does not.
TEST(BillMarking, NoPurpleTapeGoesOnPipeInsideAVault) {
  Plan plan = vaultPlan();
  plan.runs = {};
  plan.runs.append(makeRun("IC", Service::Interconnect, "pvc-sch80", "6",
                           inChamber("V1", 1, ft(-1, 0), feet(92), EndFitting::Tee),
                           inChamber("V1", 2, ft(1, 0), feet(92), EndFitting::ElbowDown)));
  EXPECT_EQ(lineOf(billFor(plan), "purple-tape"), nullptr);
  plan.runs.append(makeRun("PW", Service::Product, "pvc-sch80", "2",
                           inChamber("V1", 2, ft(1, 0), feet(92)), freeAt(44, 6)));
  const Bill bill = billFor(plan);
  ASSERT_EQ(lineOf(bill, "purple-tape")->shares.size(), 1u);
  EXPECT_EQ(lineOf(bill, "purple-tape")->shares[0].from, "PW");
}

Plan conduitPlan(Service service) {
  Plan plan = vaultPlan();
  EquipmentRoom room;
  room.id = "ER";
  room.corner = ft(36, 20);
  room.length = feet(10);
  room.width = feet(8);
  room.floor = feet(97);
  room.ports = {{"P", "Panel", service, ft(1.5, 2), feet(1.5), "1"}};
  plan.rooms.put(room);
  plan.runs.append(makeRun("C", service, "pvc-conduit-sch80", "1",
                           inChamber("V1", 2, ft(3, 2), feet(94)), at(EndKind::Port, "P"),
                           {{ft(37.5, 12), feet(94)}, {ft(37.5, 22), feet(94)}}));
  return plan;
}

/// From over the water to the panel: a bell and an adapter, each cemented once.
TEST(BillConduit, EndsInABellAndAnAdapter) {
  const Plan plan = conduitPlan(Service::Signal);
  const Bill bill = billFor(plan);
  EXPECT_EQ(net(bill, "end-bell", "1"), 1);
  EXPECT_EQ(net(bill, "terminal-adapter", "1"), 1);
  EXPECT_EQ(lineOf(bill, "terminal-adapter", "1")->trade, "electrical");
  EXPECT_EQ(lineOf(bill, "float-switch"), nullptr) << "a signal is no float";
  EXPECT_EQ(net(bill, "sch80-socket:coupling", "1"), 0);
  EXPECT_NE(lineOf(bill, "pvc-conduit-sch80", "1")->note.find("one bell"), std::string::npos);
  // Level from (23, 12) to (37.5, 12), 14.5 ft, and to (37.5, 22), 10 ft; up 4.5 ft to the port.
  // Sweeps take 5-3/4 in: 14.5 ft less 5.75 in and 10 ft less 11.5 in in sticks of 10 ft have one
  // bell together. Two sweeps 4, the bell 1, the ends 2.
  EXPECT_EQ(net(bill, "conduit-joint", "1"), 4 + 1 + 2);
}

TEST(BillPipe, ComesWithBellsAndGasketsWhereItHasThem) {
  const auto note = [](const char* pipe, const char* size) {
    Plan plan;
    plan.runs.append(makeRun("R", Service::Inlet, pipe, size, freeAt(40, 0), freeAt(60, 0)));
    return lineOf(billFor(plan), pipe, size)->note;
  };
  EXPECT_EQ(note("pvc-sch80", "6"), "");
  EXPECT_NE(note("pvc-sdr35", "6").find("gasket lubricant"), std::string::npos);
  EXPECT_EQ(note("pvc-conduit-sch80", "1").find("gasket"), std::string::npos);
}

TEST(BillConduit, TheFloatComesWithTheEquipment) {
  const Bill bill = billFor(conduitPlan(Service::FloatConduit));
  const BillLine* line = lineOf(bill, "float-switch");
  ASSERT_NE(line, nullptr);
  EXPECT_EQ(*line->net, 1);
  EXPECT_FALSE(line->bought);
  EXPECT_EQ(line->trade, "electrical");
  EXPECT_EQ(line->material, "By the equipment supplier");
}

TEST(BillEductor, IsBoughtOnce) {
  Plan plan = vaultPlan();
  plan.runs.append(makeRun("RC", Service::Recirculation, "pvc-sch80", "1", freeAt(40, 10),
                           inChamber("V1", 2, ft(3, 0), feet(94), EndFitting::Eductor)));
  const Bill bill = billFor(plan);
  const BillLine* line = lineOf(bill, "eductor", "1");
  ASSERT_NE(line, nullptr);
  EXPECT_FALSE(line->bought);
  EXPECT_EQ(line->material, "By the equipment supplier");
  EXPECT_NE(line->note.find("bracket"), std::string::npos);
  EXPECT_EQ(net(bill, "solvent-joint", "1"), 1) << "cemented by the plumber all the same";
}

TEST(BillNotes, DownLegsOfUnknownEndAreSpokenOf) {
  const auto told = [](EndFitting fitting, std::optional<Length> end) {
    Plan plan = vaultPlan(); // without an overflow: the water at rest is not known
    sump::Run inlet = makeRun("IN", Service::Inlet, "pvc-sch80", "6", freeAt(0, 10),
                              inChamber("V1", 1, ft(-4, 0), feet(93.5), fitting));
    inlet.to.legEnd = end;
    plan.runs.append(std::move(inlet));
    const Bill bill = billFor(plan);
    return std::ranges::any_of(bill.notes, [](const std::string& note) {
      return note.starts_with("Not counted: the down legs in the lower arms of IN");
    });
  };
  EXPECT_TRUE(told(EndFitting::Tee, {}));
  EXPECT_FALSE(told(EndFitting::Tee, feet(92)));
  EXPECT_FALSE(told(EndFitting::Plain, {}));
}

TEST(BillJoints, ADownLegIsOneMore) {
  const auto joints = [](std::optional<Length> end) {
    Plan plan = vaultPlan();
    sump::Run inlet = makeRun("IN", Service::Inlet, "pvc-sch80", "6", freeAt(0, 10),
                              inChamber("V1", 1, ft(-4, 0), feet(93.5), EndFitting::Tee));
    inlet.to.legEnd = end;
    plan.runs.append(std::move(inlet));
    return net(billFor(plan), "solvent-joint", "6");
  };
  EXPECT_EQ(joints(feet(92)), joints({}) + 1);
}

TEST(BillJoining, EachJointWithWhatIsThereIsALine) {
  Plan plan = vaultPlan();
  plan.runs.append(bent(EndFitting::Plain, EndFitting::Cap));
  const Bill bill = billFor(plan);
  EXPECT_EQ(net(bill, "joining", "2"), 1) << "a capped end joins nothing";
  EXPECT_NE(lineOf(bill, "joining", "2")->description.find("______"), std::string::npos);
  EXPECT_EQ(lineOf(billFor(vaultPlan()), "joining", "2"), nullptr);
}

/// Three conductors and a cord in 29 ft of conduit (14.5 + 10 level, 4.5 upright), 5 ft more at
/// each end: 39 ft each, 117 ft of 12 AWG.
TEST(BillElectrical, ConductorsAndCordAreAsLongAsTheConduitAndItsTails) {
  Plan plan = conduitPlan(Service::Power);
  sump::Run run = plan.runs[0];
  run.conductors = {{"12", 3}};
  plan.runs.put(run);
  plan.basis.wiring.supplies = {
      {"S", "Motor", SupplyKind::Motor3Phase, 460, std::nullopt, "C", ft(37, 21)}};
  const Bill bill = billFor(plan);
  EXPECT_NEAR(net(bill, "conductor", "12 AWG"), 117 * kMetresPerFoot, 1e-6);
  EXPECT_NEAR(net(bill, "pull-cord"), 39 * kMetresPerFoot, 1e-6);
  EXPECT_TRUE(sizeHasUnit(*lineOf(bill, "conductor", "12 AWG")));
  EXPECT_EQ(net(bill, "disconnect"), 1);
  EXPECT_EQ(net(bill, "conduit-seal", "1"), 1);
}

/// Its line may not be drawn yet.
TEST(BillElectrical, ADisconnectIsBoughtAlsoWithoutALine) {
  Plan plan = vaultPlan();
  plan.basis.wiring.supplies = {
      {"S", "Motor", SupplyKind::Motor3Phase, 460, std::nullopt, "", ft(37, 21)},
      {"T", "Controls", SupplyKind::Control1Phase, 460, std::nullopt, "", std::nullopt}};
  const Bill bill = billFor(plan);
  EXPECT_EQ(net(bill, "disconnect"), 1);
  ASSERT_NE(lineOf(bill, "disconnect"), nullptr);
  EXPECT_EQ(lineOf(bill, "disconnect")->shares.front().from, "S");
}

TEST(BillElectrical, TheFloatsCableIsNotBoughtAgain) {
  Plan plan = conduitPlan(Service::FloatConduit);
  sump::Run run = plan.runs[0];
  run.conductors = {{"14", 2}};
  plan.runs.put(run);
  const Bill bill = billFor(plan);
  EXPECT_EQ(lineOf(bill, "conductor", "14 AWG"), nullptr);
  EXPECT_NE(lineOf(bill, "pull-cord"), nullptr);
}

TEST(BillBaffles, AreNamedByWhatTheyReach) {
  Plan plan = vaultPlan();
  EXPECT_EQ(lineOf(billFor(plan), "baffle")->description, "Baffle from the floor to the lid");
  Vault vault = plan.vaults[0];
  vault.baffles[0].topGap = inches(1);
  plan.vaults.put(vault);
  EXPECT_EQ(lineOf(billFor(plan), "baffle")->description,
            "Baffle from the floor to 1\" under the lid, open there for air");
}

/// Ground at 97 ft, the valve at 94 ft.
TEST(BillBoxes, ABuriedBackwaterValveHasItsBox) {
  Plan plan = vaultPlan();
  sump::Run run = bent(EndFitting::Plain, EndFitting::Plain);
  run.service = Service::Overflow;
  run.parts = {part("BV", PartKind::BackwaterValve, 0, 0.5)};
  plan.runs.append(run);
  const Bill bill = billFor(plan);
  EXPECT_EQ(net(bill, "access-box", "2"), 1);
  EXPECT_EQ(lineOf(bill, "access-box", "2")->trade, "plumbing");
  plan.pavements.append({"P", "Yard", {ft(39, -5), ft(60, -5), ft(60, 20), ft(39, 20)}, true});
  EXPECT_EQ(net(billFor(plan), "access-box-traffic", "2"), 1);
  EXPECT_EQ(net(billFor(plan), "access-box", "2"), 0);
  plan.site.groundDefault = feet(94);
  EXPECT_EQ(net(billFor(plan), "access-box-traffic", "2"), 0) << "it lies open";
}

TEST(WireGauge, IsAwgUpToFourOughtAndKcmilOver) {
  EXPECT_EQ(gaugeText("12"), "12 AWG");
  EXPECT_EQ(gaugeText("4/0"), "4/0 AWG");
  EXPECT_EQ(gaugeText("250"), "250 kcmil");
}

} // namespace
} // namespace sump::test
