// Outlines, areas and volumes of pits and trenches against GEOS: buffers with square corners,
// unions, differences. Outlines are kept on a grid of 0.1 mm (core/geometry/outline_union.h), so an
// area may be off by its perimeter times that.

#include "core/geometry/polygon.h"
#include "tests/geometry/geos_oracle.h"
#include "tests/support/plan_parts.h"

#include <gtest/gtest.h>

#include <random>

namespace sump::test {
namespace {

constexpr double kGrade = 100; // ft
constexpr double kGrid = 1e-4; // m

/// Vaults near each other, turned anyhow, all on one floor or each on its own.
Plan randomDigs(std::mt19937& random, bool oneFloor) {
  std::uniform_real_distribution<double> place(-30, 30), turn(-180, 180), floor(90, 95);
  Plan plan;
  plan.site.groundDefault = feet(kGrade);
  constexpr SoilClass kSoils[] = {SoilClass::StableRock, SoilClass::TypeA, SoilClass::TypeB,
                                  SoilClass::TypeC};
  plan.basis.earth.soil = kSoils[random() % 4];
  plan.basis.earth.protection = ProtectiveSystem::Sloped;
  const Length level = feet(floor(random));
  const int count = 1 + static_cast<int>(random() % 6);
  for (int i = 0; i < count; ++i) {
    const double angle = random() % 2 == 0 ? 0 : turn(random);
    plan.vaults.append(twoChamberVault("V" + std::to_string(i), ft(place(random), place(random)),
                                       oneFloor ? level : feet(floor(random)), degrees(angle)));
  }
  return plan;
}

double slopeOf(SoilClass soil) { // 29 CFR 1926 Subpart P App. B table B-1
  switch (soil) {
  case SoilClass::TypeA:
    return 0.75;
  case SoilClass::TypeB:
    return 1;
  case SoilClass::TypeC:
    return 1.5;
  case SoilClass::StableRock:
    break;
  }
  return 0;
}

class DigsAgainstGeos : public ::testing::Test {
protected:
  /// Under the floor: 6 in of slab and 6 in of bedding; sides are upright up to 5 ft.
  static double depth(const Vault& vault) {
    return kGrade * kMetresPerFoot - inMetres(vault.floor) + 12 * kMetresPerInch;
  }
  static double slope(const Plan& plan, const Vault& vault) {
    return depth(vault) >= 5 * kMetresPerFoot ? slopeOf(*plan.basis.earth.soil) : 0;
  }
  /// 2 ft of working space round the vault.
  oracle::Shape bottom(const Vault& vault) const {
    return geos.buffer(geos.polygon(outline(vault)), 2 * kMetresPerFoot);
  }
  oracle::Shape outlineAt(const Plan& plan, const Vault& vault, double height) const {
    return geos.buffer(bottom(vault), slope(plan, vault) * height);
  }
  oracle::Shape united(const Plan& plan, const std::vector<Id>& ids, double share) const {
    std::vector<oracle::Shape> shapes;
    for (const Id& id : ids) {
      const Vault& vault = *plan.vaults.find(id);
      shapes.push_back(outlineAt(plan, vault, depth(vault) * share));
    }
    return geos.unite(shapes);
  }
  void expectSameShape(const oracle::Shape& a, const oracle::Shape& b) const {
    const double edge = geos.length(a) + geos.length(b);
    EXPECT_NEAR(geos.area(a), geos.area(b), edge * kGrid);
    EXPECT_LT(geos.area(geos.symmetricDifference(a, b)), edge * kGrid);
  }
  std::vector<Id> allVaults(const Plan& plan) const {
    std::vector<Id> ids;
    for (const Vault& vault : plan.vaults)
      ids.push_back(vault.id);
    return ids;
  }

  oracle::Geos geos;
  std::mt19937 random{31};
};

TEST_F(DigsAgainstGeos, PitsAreTheJoinedBuffersOfTheirVaults) {
  int joined = 0;
  for (int round = 0; round < 200; ++round) {
    const Plan plan = randomDigs(random, round % 2 == 0);
    const EarthStudy earth = studyOf(plan).earth;
    EXPECT_EQ(static_cast<int>(earth.pits.size()), geos.parts(united(plan, allVaults(plan), 1)));
    for (const PitStudy& pit : earth.pits) {
      joined += pit.vaults.size() > 1 ? 1 : 0;
      ASSERT_TRUE(pit.top);
      expectSameShape(geos.polygon(*pit.top), geos.largestOutline(united(plan, pit.vaults, 1)));
      ASSERT_EQ(pit.bottoms.size(), pit.vaults.size());
      for (std::size_t i = 0; i < pit.vaults.size(); ++i)
        expectSameShape(geos.polygon(pit.bottoms[i]), bottom(*plan.vaults.find(pit.vaults[i])));
    }
  }
  EXPECT_GE(joined, 100) << "too few digs run into each other to prove anything";
}

TEST_F(DigsAgainstGeos, BeddingIsTheUnitedBottomsTimesItsThickness) {
  for (int round = 0; round < 60; ++round) {
    const Plan plan = randomDigs(random, true);
    const Study study = studyOf(plan);
    for (const PitStudy& pit : study.earth.pits) {
      const oracle::Shape floor = united(plan, pit.vaults, 0);
      EXPECT_NEAR(pit.bedding->value(), geos.area(floor) * 0.5 * kMetresPerFoot,
                  geos.length(floor) * kGrid);
    }
  }
}

// One depth: the volume is that of the united outlines, summed slice by slice; 1 %, since the
// program takes five slices and the outlines meet anywhere between them.
TEST_F(DigsAgainstGeos, VolumeIsTheSumOfTheSlices) {
  constexpr int kSlices = 60;
  for (int round = 0; round < 40; ++round) {
    const Plan plan = randomDigs(random, true);
    const Study study = studyOf(plan);
    for (const PitStudy& pit : study.earth.pits) {
      const double deep = depth(*plan.vaults.find(pit.vaults.front()));
      double sum = 0;
      for (int i = 0; i < kSlices; ++i)
        sum += geos.area(united(plan, pit.vaults, (i + 0.5) / kSlices)) * deep / kSlices;
      EXPECT_NEAR(pit.dug->value() / sum, 1, 0.01) << pit.vaults.size() << " vaults";
    }
  }
}

/// A buried line through random corners past a few buildings, whose cellars it crosses over the
/// floor.
Plan randomTrench(std::mt19937& random) {
  std::uniform_real_distribution<double> place(-60, 60), side(3, 20), invert(88, 97);
  Plan plan;
  plan.site.groundDefault = feet(kGrade);
  plan.basis.earth.soil = SoilClass::TypeB;
  plan.basis.earth.protection = ProtectiveSystem::Sloped;
  std::vector<Vertex> vertices;
  for (int i = static_cast<int>(random() % 4); i > 0; --i)
    vertices.push_back({ft(place(random), place(random)), std::nullopt});
  plan.runs.append(makeRun("R", Service::Overflow, "pvc-sch80", "6",
                           freeEnd(ft(place(random), place(random)), feet(invert(random))),
                           freeEnd(ft(place(random), place(random)), feet(invert(random))),
                           std::move(vertices)));
  for (int i = 0; i < 4; ++i) {
    const double x = place(random), y = place(random), w = side(random), h = side(random);
    plan.buildings.append({"B" + std::to_string(i),
                           "",
                           {ft(x, y), ft(x + w, y), ft(x + w, y + h), ft(x, y + h)},
                           feet(80),
                           {}});
  }
  return plan;
}

class TrenchesAgainstGeos : public DigsAgainstGeos {
protected:
  oracle::Shape buildings(const Plan& plan) const {
    std::vector<oracle::Shape> shapes;
    for (const Building& building : plan.buildings)
      shapes.push_back(geos.polygon(building.outline));
    return geos.unite(shapes);
  }
  /// How many are of even width: 0 or 1.
  int compareOutline(const TrenchPoint& a, const TrenchPoint& b) const;
  oracle::Shape centreline(const RunStudy& run) const {
    Polyline line;
    for (const RunPoint& point : run.points)
      line.push_back(flat(point.at));
    return geos.line(line);
  }
};

TEST_F(TrenchesAgainstGeos, LengthIsTheLineOutsideTheBuildings) {
  for (int round = 0; round < 200; ++round) {
    const Plan plan = randomTrench(random);
    const Study study = studyOf(plan);
    const oracle::Shape open = geos.difference(centreline(study.runs[0]), buildings(plan));
    const double length =
        study.earth.trenches.empty() ? 0 : inMetres(study.earth.trenches[0].length);
    EXPECT_NEAR(length, geos.length(open), 1e-6);
  }
}

/// Each corner half the width off the line, and the area between.
int TrenchesAgainstGeos::compareOutline(const TrenchPoint& a, const TrenchPoint& b) const {
  const Ring ring = trenchOutline(a, b);
  const oracle::Shape own = geos.polygon(ring), line = geos.line({a.at, b.at});
  EXPECT_TRUE(geos.isValid(own));
  EXPECT_NEAR(geos.area(own), geos.length(line) * (a.top + b.top) / 2, 1e-9);
  for (std::size_t corner = 0; corner < 4; ++corner) {
    const double half = (corner == 0 || corner == 3 ? a.top : b.top) / 2;
    EXPECT_NEAR(geos.distance(geos.point(ring[corner]), line), half, 1e-9);
  }
  if (a.top != b.top) return 0;
  const oracle::Shape grown = geos.buffer(line, a.top / 2);
  EXPECT_NEAR(geos.area(own), geos.area(grown), 1e-9);
  EXPECT_LT(geos.distance(geos.point(geos.centroid(own)), geos.point(geos.centroid(grown))), 1e-9);
  return 1;
}

TEST_F(TrenchesAgainstGeos, OutlinesAreTheLineGrownByHalfTheirWidth) {
  int even = 0, all = 0;
  for (int round = 0; round < 100; ++round) {
    const Plan plan = randomTrench(random);
    const Study study = studyOf(plan);
    for (const TrenchStudy& trench : study.earth.trenches) {
      for (const TrenchStretch& stretch : trench.stretches) {
        for (std::size_t i = 1; i < stretch.size(); ++i, ++all)
          even += compareOutline(stretch[i - 1], stretch[i]);
      }
    }
  }
  EXPECT_GE(even, 20);
  EXPECT_GE(all - even, 20);
}

TEST_F(TrenchesAgainstGeos, ClashesAreTheBuildingsThatTheOutlinesMeet) {
  int met = 0, missed = 0;
  for (int round = 0; round < 200; ++round) {
    const Plan plan = randomTrench(random);
    const Study study = studyOf(plan);
    for (const TrenchStudy& trench : study.earth.trenches) {
      std::vector<oracle::Shape> pieces;
      for (const TrenchStretch& stretch : trench.stretches) {
        for (std::size_t i = 1; i < stretch.size(); ++i)
          pieces.push_back(geos.polygon(trenchOutline(stretch[i - 1], stretch[i])));
      }
      const oracle::Shape line = centreline(study.runs[0]);
      for (const Building& building : plan.buildings) {
        const oracle::Shape shape = geos.polygon(building.outline);
        double shared = 0;
        for (const oracle::Shape& piece : pieces)
          shared = std::max(shared, geos.area(geos.intersection(piece, shape)));
        const bool entered = geos.touchesOrCovers(line, shape); // meant, no clash
        if (!entered && shared > 0 && shared < 1e-5) continue;  // too near to call
        const bool told = std::ranges::any_of(trench.clashes, [&](const DigClash& clash) {
          return clash.kind == DigClashKind::Building && clash.object == building.id;
        });
        EXPECT_EQ(told, !entered && shared > 0) << building.id << " " << shared;
        ++(told ? met : missed);
      }
    }
  }
  EXPECT_GE(met, 20);
  EXPECT_GE(missed, 100);
}

} // namespace
} // namespace sump::test
