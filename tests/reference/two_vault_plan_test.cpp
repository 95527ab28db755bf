// Holds the study to the figures of two_vault_plan.md, which were worked by hand.

#include "tests/reference/two_vault_plan.h"

#include <gtest/gtest.h>

namespace sump::test {
namespace {

class TwoVaultPlan : public ::testing::Test {
protected:
  const RunStudy& run(const Id& id) const { return *study_.run(id); }
  const VaultStudy& vault(const Id& id) const { return *study_.vault(id); }
  /// The one line of this item, size and (for pipe) service.
  const QuantityLine& line(const std::string& item, const std::string& size,
                           const std::string& service = {},
                           const std::string& material = {}) const {
    const QuantityLine* found = nullptr;
    for (const QuantityLine& l : study_.takeOff) {
      const bool same = l.item == item && l.size == size && l.service == service &&
                        (material.empty() || l.material == material);
      if (!same) continue;
      EXPECT_EQ(found, nullptr) << "two lines of " << item << " " << size;
      found = &l;
    }
    EXPECT_NE(found, nullptr) << "no line of " << item << " " << size;
    static const QuantityLine none;
    return found == nullptr ? none : *found;
  }

  const Study study_ = studyOf(twoVaultPlan());
};

/// Within 1/16 in of so many feet and inches.
void expectLength(std::optional<Length> measured, double wholeFeet, double inchesMore) {
  ASSERT_TRUE(measured);
  EXPECT_NEAR(inInches(*measured), wholeFeet * 12 + inchesMore, 1.0 / 16);
}

void expectElevation(double measured, double wholeFeet, double inchesMore) {
  expectLength(metres(measured), wholeFeet, inchesMore);
}

Length net(const RunStudy& run) {
  Length sum;
  for (const PipePiece& piece : run.pieces)
    sum += piece.cut;
  return sum;
}

int couplings(const RunStudy& run) {
  int count = 0;
  for (const PipePiece& piece : run.pieces)
    count += piece.couplings;
  return count;
}

TEST_F(TwoVaultPlan, WaterStandsAtTheWaysOut) {
  expectLength(vault("V2").waterLevel, 93, 9);
  expectLength(vault("V2").overflowInvert, 93, 9);
  EXPECT_EQ(vault("V2").overflowRun, "OF");
  expectLength(vault("V1").waterLevel, 94, 0);
  EXPECT_EQ(vault("V1").overflowRun, "LK");
}

TEST_F(TwoVaultPlan, EachChamberHolds748Gallons) {
  for (const Id id : {"V1", "V2"}) {
    ASSERT_EQ(vault(id).chambers.size(), 2u);
    for (const ChamberStudy& chamber : vault(id).chambers) {
      expectLength(chamber.length, 5, 0);
      expectLength(chamber.width, 5, 0);
      expectLength(chamber.waterDepth, 4, 0);
      EXPECT_NEAR(inGallons(chamber.volume), 748.05, 0.1);
    }
  }
  EXPECT_NEAR(inGallons(study_.workingVolume), 2992.21, 0.1);
}

TEST_F(TwoVaultPlan, ShellsAndManways) {
  expectLength(vault("V1").lidTop, 95, 6);
  expectLength(vault("V2").lidTop, 95, 3);
  expectLength(vault("V1").cover, 1, 2.91);
  expectLength(vault("V2").cover, 1, 4.17);
  ASSERT_EQ(vault("V1").manways.size(), 2u);
  expectLength(vault("V1").manways[0].riser, 1, 3.93);
  expectLength(vault("V1").manways[1].riser, 1, 6);
  EXPECT_EQ(vault("V1").manways[0].chamber, 1);
  EXPECT_EQ(vault("V1").manways[1].chamber, 2);
}

TEST_F(TwoVaultPlan, InletPath) {
  const RunStudy& in = run("IN");
  expectLength(in.plan, 44, 7.882);
  expectLength(in.developed, 44, 7.958);
  EXPECT_NEAR(in.slope, 0.0167947, 1e-6);
  ASSERT_EQ(in.points.size(), 4u);
  expectElevation(in.points[0].at.z, 95, 0);
  expectElevation(in.points[1].at.z, 94, 5.752);
  expectElevation(in.points[2].at.z, 94, 4.612);
  expectElevation(in.points[3].at.z, 94, 3);
  ASSERT_EQ(in.penetrations.size(), 1u);
  EXPECT_EQ(in.penetrations[0].vault, "V1");
  expectElevation(in.penetrations[0].at.z, 94, 3.605);
  ASSERT_TRUE(in.leastCover);
  expectLength(in.leastCover->cover, 1, 8.185);
}

TEST_F(TwoVaultPlan, InletPipe) {
  const RunStudy& in = run("IN");
  EXPECT_EQ(itemCount(in, "elbow-45", "6"), 2);
  EXPECT_EQ(itemCount(in, "tee", "6"), 1);
  ASSERT_EQ(in.pieces.size(), 4u);
  expectLength(in.pieces[0].cut, 0, 370.0525);
  expectLength(in.pieces[1].cut, 0, 63.8918);
  expectLength(in.pieces[2].cut, 0, 89.2635);
  expectLength(in.pieces[3].cut, 0, 15.6075);
  ASSERT_EQ(in.downLegs.size(), 1u);
  EXPECT_FALSE(in.downLegs[0].stated);
  expectLength(in.downLegs[0].end, 92, 9.6);
  EXPECT_EQ(couplings(in), 0);
  EXPECT_EQ(in.sticks, 4);
  expectLength(in.buy, 56, 0);
}

TEST_F(TwoVaultPlan, Interconnects) {
  for (const Id id : {"IC-1", "IC-2"}) {
    const RunStudy& interconnect = run(id);
    expectLength(interconnect.developed, 2, 6);
    expectLength(net(interconnect), 0, 22.25);
    EXPECT_EQ(itemCount(interconnect, "tee", "6"), 1);
    EXPECT_EQ(itemCount(interconnect, "elbow-90", "6"), 1);
    ASSERT_EQ(interconnect.penetrations.size(), 1u);
    EXPECT_FALSE(interconnect.penetrations[0].baffle.empty());
    EXPECT_FALSE(interconnect.leastCover) << "it lies inside the vault";
  }
}

TEST_F(TwoVaultPlan, Link) {
  const RunStudy& link = run("LK");
  expectLength(link.plan, 6, 6);
  expectLength(link.developed, 8, 8.006);
  EXPECT_NEAR(link.slope, 0.0128205, 1e-6);
  ASSERT_EQ(link.bends.size(), 1u);
  EXPECT_NEAR(link.bends[0].degrees, 89.27, 0.01);
  EXPECT_TRUE(link.bends[0].stock);
  EXPECT_TRUE(link.bends[0].vertical);
  EXPECT_EQ(itemCount(link, "elbow-90", "6"), 1);
  EXPECT_EQ(itemCount(link, "tee", "6"), 1);
  ASSERT_EQ(link.pieces.size(), 2u);
  expectLength(link.pieces[0].cut, 0, 70.2564);
  expectLength(link.pieces[1].cut, 0, 24.9795);
  expectLength(net(link), 0, 95.2359);
  EXPECT_EQ(link.sticks, 1);
  ASSERT_EQ(link.penetrations.size(), 2u);
  EXPECT_EQ(link.penetrations[0].vault, "V1");
  expectElevation(link.penetrations[0].at.z, 93, 11.731);
  EXPECT_EQ(link.penetrations[1].vault, "V2");
  expectElevation(link.penetrations[1].at.z, 93, 11.269);
}

TEST_F(TwoVaultPlan, OverflowPath) {
  const RunStudy& overflow = run("OF");
  expectLength(overflow.plan, 65, 0);
  expectLength(overflow.developed, 65, 0.042);
  EXPECT_NEAR(overflow.slope, 1.0 / 96, 1e-9);
  ASSERT_EQ(overflow.points.size(), 3u);
  expectElevation(overflow.points[1].at.z, 93, 6.625);
  ASSERT_EQ(overflow.penetrations.size(), 1u);
  expectElevation(overflow.penetrations[0].at.z, 93, 8.75);
  ASSERT_TRUE(overflow.leastCover);
  expectLength(overflow.leastCover->cover, 2, 4.463);
}

TEST_F(TwoVaultPlan, OverflowPipe) {
  const RunStudy& overflow = run("OF");
  EXPECT_EQ(itemCount(overflow, "elbow-90", "6"), 1);
  EXPECT_EQ(itemCount(overflow, "tee", "6"), 1);
  EXPECT_EQ(itemCount(overflow, "backwater-valve", "6"), 1);
  EXPECT_EQ(itemCount(overflow, "coupling", "6"), 1);
  ASSERT_EQ(overflow.pieces.size(), 4u);
  expectLength(overflow.pieces[0].cut, 0, 220.2624);
  expectLength(overflow.pieces[1].cut, 0, 126.1325);
  expectLength(overflow.pieces[2].cut, 0, 406.0225);
  EXPECT_EQ(overflow.pieces[2].couplings, 1);
  expectLength(overflow.pieces[3].cut, 0, 14.5795);
  ASSERT_EQ(overflow.downLegs.size(), 1u);
  EXPECT_TRUE(overflow.downLegs[0].atStart);
  expectLength(overflow.downLegs[0].end, 92, 5.4);
  EXPECT_EQ(overflow.sticks, 4);
}

TEST_F(TwoVaultPlan, Suction) {
  const RunStudy& suction = run("SU");
  expectLength(suction.plan, 10, 0);
  expectLength(suction.developed, 16, 10.509);
  EXPECT_NEAR(suction.slope, -0.0125, 1e-9);
  EXPECT_FALSE(suction.pocket);
  ASSERT_EQ(suction.bends.size(), 2u);
  for (const Bend& bend : suction.bends)
    EXPECT_NEAR(bend.degrees, 89.28, 0.01);
  EXPECT_EQ(itemCount(suction, "elbow-90", "2"), 2);
  EXPECT_EQ(itemCount(suction, "foot-valve", "2"), 1);
  EXPECT_EQ(itemCount(suction, "union", "2"), 1);
  ASSERT_EQ(suction.pieces.size(), 4u);
  expectLength(suction.pieces[0].cut, 0, 34.994);
  expectLength(suction.pieces[1].cut, 0, 116.8844);
  expectLength(suction.pieces[2].cut, 0, 18.506);
  expectLength(suction.pieces[3].cut, 0, 21.025);
  EXPECT_EQ(suction.sticks, 1);
  ASSERT_EQ(suction.penetrations.size(), 1u);
  expectElevation(suction.penetrations[0].at.z, 94, 3.3);
}

TEST_F(TwoVaultPlan, FloatConduit) {
  const RunStudy& conduit = run("FC");
  expectLength(conduit.developed, 14, 2);
  EXPECT_EQ(itemCount(conduit, "elbow-90", "1"), 1);
  expectLength(net(conduit), 0, 158.032);
  EXPECT_EQ(conduit.sticks, 2);
  EXPECT_EQ(couplings(conduit), 0);
}

TEST_F(TwoVaultPlan, PipeToBuy) {
  const QuantityLine& inlet = line("pvc-sdr35", "6", "inlet");
  expectLength(inlet.net, 0, 538.8155);
  expectLength(inlet.buy, 56, 0);
  const QuantityLine& interconnect = line("pvc-sch80", "6", "interconnect");
  expectLength(interconnect.net, 0, 44.5);
  expectLength(interconnect.buy, 20, 0);
  EXPECT_EQ(interconnect.runs, (std::vector<Id>{"IC-1", "IC-2"}));
  expectLength(line("pvc-sch80", "6", "link").net, 0, 95.2359);
  expectLength(line("pvc-sch80", "6", "link").buy, 20, 0);
  expectLength(line("pvc-sch80", "6", "overflow").net, 0, 766.9968);
  expectLength(line("pvc-sch80", "6", "overflow").buy, 80, 0);
  expectLength(line("pvc-sch80", "2", "suction").net, 0, 191.4094);
  expectLength(line("pvc-sch80", "2", "suction").buy, 20, 0);
  const QuantityLine& conduit = line("pvc-conduit-sch80", "1", "float-conduit");
  expectLength(conduit.buy, 20, 0);
  EXPECT_EQ(conduit.trade, "electrical");
}

TEST_F(TwoVaultPlan, FittingsAndPartsToBuy) {
  EXPECT_EQ(line("elbow-45", "6").quantity, 2);
  EXPECT_EQ(line("tee", "6", "", "SDR 35 gasketed").quantity, 1);
  EXPECT_EQ(line("tee", "6", "", "Sch 80 solvent socket").quantity, 4);
  EXPECT_EQ(line("elbow-90", "6").quantity, 4);
  EXPECT_EQ(line("elbow-90", "6").runs, (std::vector<Id>{"IC-1", "LK", "IC-2", "OF"}));
  EXPECT_EQ(line("coupling", "6").quantity, 1);
  EXPECT_EQ(line("elbow-90", "2").quantity, 2);
  EXPECT_EQ(line("elbow-90", "1").quantity, 1);
  EXPECT_EQ(line("backwater-valve", "6").quantity, 1);
  EXPECT_EQ(line("foot-valve", "2").quantity, 1);
  EXPECT_EQ(line("union", "2").quantity, 1);
}

TEST_F(TwoVaultPlan, SiteWorkToBuy) {
  EXPECT_EQ(line("wall-connector", "6").quantity, 4);
  EXPECT_EQ(line("wall-connector", "2").quantity, 1);
  EXPECT_EQ(line("wall-connector", "1").quantity, 1);
  EXPECT_EQ(line("baffle-sleeve", "6").quantity, 2);
  EXPECT_EQ(line("own-size", "11'-6\" x 6'-0\"").quantity, 2);
  EXPECT_EQ(line("baffle", "").quantity, 2);
  EXPECT_EQ(line("manway", "24").quantity, 2);
  expectLength(line("riser", "24").net, 2, 9.93);
}

} // namespace
} // namespace sump::test
