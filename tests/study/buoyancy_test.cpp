// Flotation, weights and live load against published values.

#include "core/study/buoyancy.h"
#include "core/study/live_load.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

#include <cmath>

namespace sump::test {
namespace {

Density pcf(double v) {
  return kilogramsPerCubicMetre(v * kKilogramsPerPound / std::pow(kMetresPerFoot, 3));
}
double cubicFeet(Volume v) {
  return v.value() / std::pow(kMetresPerFoot, 3);
}

EarthFigures figures() {
  EarthFigures f;
  f.concrete = pcf(150);
  f.water = pcf(62.4);
  f.soilHold = pcf(100);
  f.soilLoad = pcf(120);
  f.wedge = degrees(30);
  f.factor = 1.1;
  return f;
}

TEST(Buoyancy, BallastOfTheFloodProofingGuide) {
  // FEMA, Engineering Principles and Practices for Retrofitting Flood-Prone Residential
  // Structures, example C7: 250 gal at 0.134 ft3, factor 1.3, 670 lb empty: net 2048 lb, 23.4 ft3.
  const Volume displaced = cubicMetres(250 * 0.134 * std::pow(kMetresPerFoot, 3));
  const Force uplift = weightOf(displaced, pcf(62.4)), tank = weightOf(pounds(670));
  EXPECT_NEAR(inPoundsForce(uplift * 1.3 - tank), 2048, 2048 * 0.001);
  // The guide prints 23.4, from its rounded 2048 lb over 87.6 lb/ft3, which is 23.38.
  EXPECT_NEAR(cubicFeet(ballastFor(uplift, tank, 1.3, pcf(150), pcf(62.4))), 23.38, 23.38 * 0.001);
  EXPECT_EQ(ballastFor(uplift, uplift * 2.0, 1.3, pcf(150), pcf(62.4)).value(), 0);
}

TEST(Buoyancy, WeightOfDisplacedWater) {
  const auto drum = [](double diameter, double height) {
    return cubicMetres(kPi / 4 * diameter * diameter * height * std::pow(kMetresPerFoot, 3));
  };
  // University of Minnesota trainer's example, onsiteinstaller.com 2019/11: 67 x 65 in, 132.6 ft3.
  EXPECT_NEAR(inPoundsForce(weightOf(drum(67.0 / 12, 65.0 / 12), pcf(62.4))), 8274, 8);
  // San Joaquin County file 294347: tank 7.83 x 6.25 ft and sump 3.5 x 3 ft, uplift 21 kips.
  EXPECT_NEAR(inPoundsForce(weightOf(drum(7.83, 6.25) + drum(3.5, 3), pcf(62.4))), 20600, 100);
  // fixmyseptic.com 2016/10/30: 5 x 5 ft displaces 734 gal, 6120 lb.
  EXPECT_NEAR(inGallons(drum(5, 5)), 734, 0.5);
  EXPECT_NEAR(inPoundsForce(weightOf(drum(5, 5), pcf(62.4))), 6120, 10);
}

struct Generic {
  double length, width, height, wall, top, bottom; ///< in
  double weight, uplift, factor;                   ///< lb, lb
};

TEST(Buoyancy, GenericBoxesFloatAsCalculated) {
  // Self-consistent generic boxes, calculated (150 and 62.4 lb/ft3; two 24 in openings; one 4 in
  // partition, which comes out as ending 6 in under the lid), printed to 100 lb and two decimals.
  const Generic table[] = {
      {102, 62, 66, 4, 4, 4, 11300, 15100, 0.75}, {108, 66, 70, 6, 8, 6, 18400, 18000, 1.02},
      {120, 66, 66, 4, 4, 4, 13400, 18900, 0.71}, {120, 72, 72, 6, 8, 6, 21800, 22500, 0.97},
      {126, 70, 70, 4, 4, 4, 15100, 22300, 0.68}, {132, 72, 76, 6, 8, 6, 24500, 26100, 0.94},
      {144, 76, 74, 4, 5, 4, 19100, 29200, 0.65}, {144, 84, 80, 6, 8, 6, 30400, 34900, 0.87},
      {162, 90, 84, 5, 6, 5, 30600, 44200, 0.69}, {168, 96, 84, 6, 8, 6, 39200, 48900, 0.80}};
  for (const Generic& row : table) {
    Vault v;
    v.length = inches(row.length);
    v.width = inches(row.width);
    v.wall = inches(row.wall);
    v.lidThickness = inches(row.top);
    v.floorThickness = inches(row.bottom);
    v.insideHeight = inches(row.height - row.top - row.bottom);
    v.baffles = {{"B", inches(48), inches(4), metres(0), inches(6)}};
    v.manways = {{"A", {-0.5, 0}, inches(24), {}, false}, {"C", {0.5, 0}, inches(24), {}, false}};
    const Length top = v.insideHeight + v.lidThickness;
    const BuoyancyStudy study = buoyancy(v, {top, top, SoilHold::LidOnly}, figures());
    EXPECT_NEAR(inPounds(study.weight), row.weight, 51) << row.length;
    EXPECT_NEAR(inPoundsForce(*study.uplift), row.uplift, 51) << row.length;
    EXPECT_NEAR(*study.factor, row.factor, 0.0055) << row.length;
    EXPECT_EQ(study.factor.value<1.1, study.ballast->value()> 0);
  }
}

Vault box(Length collar = metres(0)) {
  Vault v = twoChamberVault("V", {}, feet(90));
  v.collar = collar;
  return v;
}

TEST(Buoyancy, SoilColumnByHand) {
  // 11.5 x 6 ft vault, lid top at 95.5 ft, grade 97.5 ft: 69 ft2 x 2 ft; a 1 ft collar whose slab's
  // top is at 90 ft adds (13.5 x 8 - 69) = 39 ft2 x 7.5 ft. Plain arithmetic.
  const VaultGround dryColumn{feet(97.5), feet(89.6), SoilHold::Column};
  EXPECT_NEAR(cubicFeet(*buoyancy(box(feet(1)), dryColumn, figures()).soilVolume),
              69 * 2 + 39 * 7.5, 1e-6);
  const VaultGround wet{feet(97.5), feet(97.5), SoilHold::Column};
  EXPECT_NEAR(inPoundsForce(*buoyancy(box(feet(1)), wet, figures()).soilForce),
              (69 * 2 + 39 * 7.5) * (100 - 62.4), 1e-3);
  const VaultGround lid{feet(97.5), feet(97.5), SoilHold::LidOnly};
  EXPECT_NEAR(cubicFeet(*buoyancy(box(feet(1)), lid, figures()).soilVolume), 138, 1e-6);
}

TEST(Buoyancy, UnknownIsUndecidedAndDryNeedsNoSoil) {
  const BuoyancyStudy none = buoyancy(box(), {}, figures());
  EXPECT_FALSE(none.factor);
  EXPECT_EQ(needsText(none.uplift.needs), "highest expected groundwater");
  EXPECT_NE(needsText(none.factor.needs).find("soil"), std::string::npos);
  const BuoyancyStudy dry = buoyancy(box(), {std::nullopt, feet(80), std::nullopt}, figures());
  ASSERT_TRUE(dry.factor);
  EXPECT_TRUE(std::isinf(*dry.factor));
  EXPECT_EQ(dry.ballast->value(), 0);
}

TEST(Buoyancy, HigherWaterNeverHoldsBetter) {
  for (SoilHold hold : {SoilHold::LidOnly, SoilHold::Column, SoilHold::Wedge}) {
    for (double collar : {0.0, 0.5, 2.0}) {
      double last = std::numeric_limits<double>::infinity();
      for (double level = 89; level < 99; level += 0.1) {
        const auto f =
            buoyancy(box(feet(collar)), {feet(97.5), feet(level), hold}, figures()).factor;
        EXPECT_LE(*f, last + 1e-9);
        last = *f;
      }
    }
  }
}

TEST(Buoyancy, TheCollarThatIsAskedForHolds) {
  const VaultGround ground{feet(96), feet(96), SoilHold::Column};
  const BuoyancyStudy bare = buoyancy(box(), ground, figures());
  ASSERT_LT(*bare.factor, 1.1);
  ASSERT_TRUE(bare.collar);
  EXPECT_GT(*bare.collar, metres(0));
  EXPECT_NEAR(*buoyancy(box(*bare.collar), ground, figures()).factor, 1.1, 1e-4);
}

TEST(LiveLoad, ScreeningTable) {
  // One HS-20 truck, AASHTO Standard Specifications 17th ed. 3.8.2.3 and 6.4, calculated: psf.
  const std::pair<double, double> table[] = {{2, 1567}, {3, 580}, {4, 352},
                                             {5, 248},  {6, 185}, {8, 114}};
  for (const auto& [cover, psf] : table) {
    const auto pressure = livePressure(feet(cover));
    ASSERT_TRUE(pressure);
    EXPECT_NEAR(inPsi(*pressure) * 144, psf, 0.75) << cover;
  }
  EXPECT_FALSE(livePressure(feet(1.9)));
}

} // namespace
} // namespace sump::test
