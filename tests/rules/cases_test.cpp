// Each rule just over and just under its limit, and where nothing can be decided.

#include "tests/rules/cases.h"

#include <gtest/gtest.h>

namespace sump::testing {
namespace {

std::string listed(const Review& review) {
  std::string text;
  for (const Finding& f : review.findings)
    text += "  " + std::string(name(f.severity)) + " " + f.key() + "\n";
  return text;
}

TEST(RuleCases, FireJustOverTheLimit) {
  int number = 0;
  for (const auto& [c, review] : reviewedCases()) {
    SCOPED_TRACE(std::to_string(++number) + ". " + std::string(c.message));
    const Finding* finding = find(review, c.message, c.objects);
    EXPECT_NE(finding, nullptr) << listed(review);
    if (finding == nullptr) continue;
    EXPECT_EQ(finding->severity, c.severity);
    EXPECT_EQ(finding->rule, c.message.substr(0, c.message.find('.')));
  }
}

TEST(RuleCases, AreSilentJustUnderTheLimit) {
  int tried = 0;
  for (const Case& c : allCases()) {
    if (!c.good) continue;
    SCOPED_TRACE(c.message);
    const Review review = reviewed(with(c.good));
    EXPECT_EQ(find(review, c.message, c.objects), nullptr) << listed(review);
    ++tried;
  }
  EXPECT_GT(tried, 40);
}

// The depot has pipe enough for the built-in sockets; a user's own may be deeper.
TEST(RuleCases, ShortPipeIsMeasuredByTheSocketsOfTheSuppliesInUse) {
  Supplies deep = builtinSupplies();
  for (auto& [size, depth] : deep.socketDepth)
    depth = 4.0 * depth;
  const auto isShort = [](const Finding& f) { return f.what.id == "short-pipe.short"; };
  EXPECT_TRUE(std::ranges::none_of(reviewed(depot()).findings, isShort));
  EXPECT_TRUE(std::ranges::any_of(review(depot(), builtinCatalog(), deep).findings, isShort));
}

TEST(RuleCases, CannotBeDecidedIsNeverAPass) {
  // Without the overflow no water level is known: each rule that needs one says so.
  const Review review = reviewed(with(drop("OF-1")));
  for (std::string_view rule :
       {"storage-volume", "vault-link", "interconnect-depth", "eductor-mount", "suction-source"}) {
    const std::string message = std::string(rule) + ".undecided";
    const auto found =
        std::ranges::find(review.findings, message, [](const Finding& f) { return f.what.id; });
    ASSERT_NE(found, review.findings.end()) << message;
    EXPECT_EQ(found->severity, Severity::Warning) << message;
  }
}

TEST(RuleCases, AnEmptyPlanIsNoPass) {
  const Review review = reviewed(Plan{});
  EXPECT_TRUE(review.hasErrors());
  for (std::string_view rule :
       {"level-known", "lines-present", "storage-volume", "suction-source", "product-size",
        "overflow-backflow", "make-up-protection", "room-clearance"}) {
    EXPECT_TRUE(std::ranges::any_of(review.findings, [&](const Finding& f) {
      return f.rule == rule;
    })) << rule;
  }
}

/// Four chambers of 5 x 5 ft with 4 ft of water: 4 x 100 cubic feet = 400 x 7.48052 = 2,992 gal.
Plan nominalVaults() {
  return with([](Plan& p) {
    for (const char* id : {"V1", "V2"}) {
      changeVault(p, id, [](Vault& v) {
        v.length = feet(11.5);
        v.baffles[0].offset = feet(5);
      });
    }
  });
}

TEST(StorageVolume, CallsTheUsualRoundingByItsName) {
  const Review review = reviewed(nominalVaults());
  const Finding* finding = find(review, "storage-volume.rounding", {"V1", "V2"});
  ASSERT_NE(finding, nullptr) << listed(review);
  EXPECT_EQ(finding->severity, Severity::Note);
  EXPECT_EQ(finding->measured, "2,992 gal");
  EXPECT_EQ(finding->required, "3,000 gal");
  EXPECT_NE(render(finding->what).find("within the usual rounding of nominal capacity (1 %)"),
            std::string::npos)
      << render(finding->what);
}

TEST(StorageVolume, SpeaksInTheProjectsUnits) {
  Plan plan = nominalVaults();
  plan.project.units = UnitSystem::Metric;
  const Review review = reviewed(plan);
  const Finding* finding = find(review, "storage-volume.rounding", {"V1", "V2"});
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->measured, "11.33 m³");
}

TEST(SuctionRise, StatesLengthAndBendsOfEverySuction) {
  const Review review = reviewed(depot());
  for (const char* id : {"SU-1", "SS-1"}) {
    const Finding* finding = find(review, "suction-rise.stated", {id});
    ASSERT_NE(finding, nullptr) << id;
    EXPECT_NE(render(finding->what).find("19.3 ft long with 2 bends"), std::string::npos)
        << render(finding->what);
  }
}

/// 121 ft less 120.5 ft; and 120.5 ft less 120.25 ft.
TEST(VentOverRoof, TellsAnEndUnderTheRoofAsSuch) {
  const Review under = reviewed(with(roofOf("B-BAY", 121)));
  const Finding* finding = find(under, "vent-over-roof.low", {"VT-1", "B-BAY"});
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->measured, "0'-6\" below the roof");
  const Review over = reviewed(with(roofOf("B-BAY", 120.25)));
  finding = find(over, "vent-over-roof.low", {"VT-1", "B-BAY"});
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->measured, "0'-3\"");
}

TEST(StockBend, NamesTheNearestStockCombination) {
  const Review review = reviewed(with(overflowTurns(68)));
  const Finding* finding = find(review, "stock-bend.odd", {"OF-1"});
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->required, "45° + 22-1/2°");
  EXPECT_EQ(finding->measured, "68°");
  ASSERT_TRUE(finding->place);
  EXPECT_NEAR(finding->place->y, 57 * kMetresPerFoot, 1e-9);
}

/// A skid against the west wall: who faces it has north at the right hand.
Plan turnedSkid(double areaY) {
  return with([=](Plan& p) {
    changeRoom(p, [=](EquipmentRoom& r) {
      constexpr double f = kMetresPerFoot;
      r.skid = RoomBox{{0, 4 * f}, feet(2), feet(4), feet(4)};
      r.plumbingArea = RoomBox{{0, areaY * f}, feet(2), feet(2), feet(8)};
    });
  });
}

TEST(RoomClearance, KnowsTheRightHandOfATurnedSkid) {
  EXPECT_EQ(find(reviewed(turnedSkid(8)), "room-clearance.left", {"ER-1"}), nullptr);
  EXPECT_NE(find(reviewed(turnedSkid(2)), "room-clearance.left", {"ER-1"}), nullptr);
}

TEST(ConduitCover, DoesNotSayPlainDepthAgainWhereTrafficIsToldOf) {
  // Level at 101 ft the least cover is under the yard itself.
  const Review review = reviewed(with(powerAt(101, 101)));
  EXPECT_NE(find(review, "conduit-cover.traffic", {"PC-1"}), nullptr) << listed(review);
  EXPECT_EQ(find(review, "conduit-cover.shallow", {"PC-1"}), nullptr) << listed(review);
}

TEST(ConduitCover, SaysBothForTwoPlaces) {
  // Falling toward the yard it is shallowest beside the building, before vehicles reach it.
  const Review review = reviewed(with(powerAt(101.2, 100)));
  EXPECT_NE(find(review, "conduit-cover.traffic", {"PC-1"}), nullptr) << listed(review);
  EXPECT_NE(find(review, "conduit-cover.shallow", {"PC-1"}), nullptr) << listed(review);
}

TEST(MakeUpProtection, GivesTheLeastAirGap) {
  // Twice the bore of 1 in Sch 80 (0.936 in by ASTM D1785's average): 1-7/8 in, more than 1 in.
  const Review review =
      reviewed(with([](Plan& p) { dropPart(p, "MU-1", PartKind::ReducedPressureAssembly); }));
  const Finding* finding = find(review, "make-up-protection.open", {"MU-1"});
  ASSERT_NE(finding, nullptr);
  EXPECT_NE(render(finding->mend).find("at least 0'-1 7/8\""), std::string::npos)
      << render(finding->mend);
}

} // namespace
} // namespace sump::testing
