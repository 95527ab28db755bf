// What must hold for any plan, whatever its numbers.

#include "tests/reference/two_vault_plan.h"
#include "tests/support/generated_plan.h"

#include <gtest/gtest.h>

#include <random>

namespace sump::test {
namespace {

/// Turns and moves the whole site; nothing else about the plan changes.
class SiteMove {
public:
  SiteMove(double degreesTurn, Point2 by) : frame_{by, degrees(degreesTurn)} {}

  Plan operator()(const Plan& plan) const {
    Plan moved = plan;
    each(plan.spots, moved.spots, [&](SpotElevation& s) { s.at = to(s.at); });
    each(plan.pavements, moved.pavements, [&](Pavement& p) { all(p.outline); });
    each(plan.basins, moved.basins, [&](Basin& b) { turn(b.at, b.angle); });
    each(plan.sewers, moved.sewers, [&](SewerConnection& s) { s.at = to(s.at); });
    each(plan.washes, moved.washes, [&](WashEquipment& w) { turn(w.at, w.angle); });
    each(plan.rooms, moved.rooms, [&](EquipmentRoom& r) { turn(r.corner, r.angle); });
    each(plan.vaults, moved.vaults, [&](Vault& v) { turn(v.centre, v.angle); });
    each(plan.runs, moved.runs, [&](sump::Run& r) {
      end(r.from);
      end(r.to);
      for (Vertex& vertex : r.vertices)
        vertex.at = to(vertex.at);
    });
    return moved;
  }

private:
  Point2 to(Point2 p) const { return frame_.toSite(p); }
  void turn(Point2& place, Angle& angle) const {
    place = to(place);
    angle += frame_.angle;
  }
  void all(Ring& ring) const {
    for (Point2& p : ring)
      p = to(p);
  }
  /// Ends in chambers, basins, ports and washes are local to those and move with them.
  void end(RunEnd& e) const {
    if (e.kind == EndKind::Free || e.kind == EndKind::Run) e.at = to(e.at);
  }
  template <class T, class Change>
  static void each(const Items<T>& from, Items<T>& list, Change change) {
    list = {};
    for (T item : from) {
      change(item);
      list.append(std::move(item));
    }
  }

  Frame frame_;
};

void expectSameRun(const RunStudy& a, const RunStudy& b) {
  constexpr double kNear = 1e-6;
  ASSERT_EQ(a.resolved, b.resolved) << a.id;
  EXPECT_NEAR(inMetres(a.plan), inMetres(b.plan), kNear) << a.id;
  EXPECT_NEAR(inMetres(a.developed), inMetres(b.developed), kNear) << a.id;
  EXPECT_NEAR(a.slope, b.slope, kNear) << a.id;
  ASSERT_EQ(a.bends.size(), b.bends.size()) << a.id;
  for (std::size_t i = 0; i < a.bends.size(); ++i) {
    EXPECT_NEAR(a.bends[i].degrees, b.bends[i].degrees, 1e-5) << a.id;
    EXPECT_EQ(a.bends[i].fittings, b.bends[i].fittings) << a.id;
  }
  EXPECT_EQ(a.penetrations.size(), b.penetrations.size()) << a.id;
  EXPECT_EQ(a.sticks, b.sticks) << a.id;
  EXPECT_EQ(a.pocket.has_value(), b.pocket.has_value()) << a.id;
}

void expectSameLengths(const Plan& plan, double turn, Point2 by) {
  const Study here = studyOf(plan), there = studyOf(SiteMove(turn, by)(plan));
  ASSERT_EQ(here.runs.size(), there.runs.size());
  for (std::size_t i = 0; i < here.runs.size(); ++i)
    expectSameRun(here.runs[i], there.runs[i]);
  EXPECT_NEAR(inGallons(here.workingVolume), inGallons(there.workingVolume), 1e-6);
  EXPECT_EQ(here.takeOff.size(), there.takeOff.size());
}

TEST(StudyProperty, NothingChangesWhenTheWholeSiteIsTurnedAndMoved) {
  for (const auto& [turn, by] : {std::pair(0.0, Point2{1000, -2000}),
                                 {90.0, {0, 0}},
                                 {33.3, {-50, 7}},
                                 {-171.0, {3e4, 4e4}}}) {
    expectSameLengths(twoVaultPlan(), turn, by);
    expectSameLengths(generatedPlan(60), turn, by);
  }
}

TEST(StudyProperty, CoverOnAPlaneStaysWhenTheSiteIsTurned) {
  const Plan plan = twoVaultPlan();
  const Study here = studyOf(plan), there = studyOf(SiteMove(28, {12, 5})(plan));
  for (std::size_t i = 0; i < here.runs.size(); ++i) {
    ASSERT_EQ(here.runs[i].leastCover.has_value(), there.runs[i].leastCover.has_value());
    if (!here.runs[i].leastCover) continue;
    EXPECT_NEAR(inMetres(here.runs[i].leastCover->cover), inMetres(there.runs[i].leastCover->cover),
                1e-6);
  }
}

/// A run through random points, some of them without a level, some above one another.
sump::Run randomRun(std::mt19937& random) {
  std::uniform_real_distribution<double> place(-40, 40), level(0, 6);
  std::vector<Vertex> vertices;
  Point2 last{place(random), place(random)};
  const RunEnd from = freeEnd(last, metres(level(random)));
  for (int i = 0; i < static_cast<int>(random() % 6); ++i) {
    if (random() % 4 != 0) last = {place(random), place(random)};
    vertices.push_back(
        {last, random() % 2 == 0 ? std::optional(metres(level(random))) : std::nullopt});
  }
  return makeRun("R", Service::Suction, "pvc-sch80", "2", from,
                 freeEnd({place(random), place(random)}, metres(level(random))), vertices);
}

/// What upright pipe from an open start to its first bend is longer by than its levels differ: the
/// bend's centre lies half a bore over its invert.
double halfBoreAtStart(const RunStudy& run) {
  std::size_t leg = 0; // the first with a length
  while (leg + 1 < run.legs.size() && inMetres(run.legs[leg].developed) < 1e-9)
    ++leg;
  if (leg + 1 >= run.legs.size() || !run.legs[leg].vertical) return 0;
  const double half = inMetres(run.insideDiameter) / 2;
  return run.points[leg + 1].at.z > run.points[leg].at.z ? half : -half;
}

TEST(StudyProperty, LengthsAddUp) {
  std::mt19937 random(11);
  for (int round = 0; round < 300; ++round) {
    const RunStudy run = studyOf(randomRun(random));
    ASSERT_TRUE(run.resolved);
    EXPECT_GE(inMetres(run.developed), inMetres(run.plan) - 1e-9);
    double legs = 0, pieces = 0;
    for (const Leg& leg : run.legs) {
      EXPECT_GE(inMetres(leg.developed), inMetres(leg.plan) - 1e-12);
      legs += inMetres(leg.developed);
    }
    for (const PipePiece& piece : run.pieces) {
      pieces += inMetres(piece.centreToCentre);
      EXPECT_GE(inMetres(piece.cut), 0);
    }
    EXPECT_NEAR(legs, inMetres(run.developed), 1e-9);
    EXPECT_NEAR(run.points.back().station, inMetres(run.developed), 1e-9);
    EXPECT_NEAR(pieces, inMetres(run.developed) + halfBoreAtStart(run), 1e-4)
        << "centre to centre from end to end";
    EXPECT_GE(inMetres(run.buy), 0);
  }
}

TEST(StudyProperty, ALineDrawnBackwardHasTheSameLengthsAndTurns) {
  std::mt19937 random(12);
  for (int round = 0; round < 200; ++round) {
    const sump::Run run = randomRun(random);
    sump::Run back = run;
    std::swap(back.from, back.to);
    std::ranges::reverse(back.vertices);
    const RunStudy a = studyOf(run), b = studyOf(back);
    EXPECT_NEAR(inMetres(a.developed), inMetres(b.developed), 1e-9);
    EXPECT_NEAR(a.slope, -b.slope, 1e-9);
    ASSERT_EQ(a.bends.size(), b.bends.size());
    for (std::size_t i = 0; i < a.bends.size(); ++i) {
      EXPECT_NEAR(a.bends[i].degrees, b.bends[b.bends.size() - 1 - i].degrees, 1e-6);
    }
  }
}

TEST(StudyProperty, ABendIsStockExactlyWhenOneFittingIsNearEnough) {
  std::mt19937 random(13);
  const double tolerance = inDegrees(builtinCatalog().limits.angle("bend.tolerance"));
  int stock = 0, other = 0;
  for (int round = 0; round < 300; ++round) {
    for (const Bend& bend : studyOf(randomRun(random)).bends) {
      ASSERT_FALSE(bend.fittings.empty());
      EXPECT_LE(bend.fittings.size(), 3u);
      double nearest = 1e9;
      for (const double elbow : {90.0, 45.0, 22.5}) // what 2 in Sch 80 is stocked in
        nearest = std::min(nearest, std::abs(elbow - bend.degrees));
      EXPECT_EQ(bend.stock, nearest <= tolerance) << bend.degrees;
      EXPECT_LE(std::abs(bend.madeDegrees - bend.degrees), nearest + 1e-9);
      ++(bend.stock ? stock : other);
    }
  }
  EXPECT_GT(stock, 20);
  EXPECT_GT(other, 20);
}

TEST(StudyProperty, MoreSpotsOnThePlaneChangeNothing) {
  const Plan few = twoVaultPlan();
  Plan many = few;
  std::mt19937 random(14);
  std::uniform_real_distribution<double> x(-40, 100), y(-40, 60);
  for (int i = 0; i < 200; ++i) {
    const double east = x(random);
    many.spots.append(spot("X" + std::to_string(i), ft(east, y(random)), feet(97 - east / 100)));
  }
  const Study a = studyOf(few), b = studyOf(many);
  for (std::size_t i = 0; i < a.runs.size(); ++i) {
    ASSERT_EQ(a.runs[i].leastCover.has_value(), b.runs[i].leastCover.has_value());
    if (a.runs[i].leastCover) {
      EXPECT_NEAR(inMetres(a.runs[i].leastCover->cover), inMetres(b.runs[i].leastCover->cover),
                  1e-5);
    }
  }
  for (std::size_t i = 0; i < a.vaults.size(); ++i)
    EXPECT_NEAR(inMetres(*a.vaults[i].cover), inMetres(*b.vaults[i].cover), 1e-5);
}

/// A train with an overflow from its last vault only.
Plan randomTrain(std::mt19937& random) {
  std::uniform_real_distribution<double> level(88, 96);
  Plan plan;
  const int count = 1 + static_cast<int>(random() % 6);
  const auto name = [](int i) { return "V" + std::to_string(i); };
  for (int i = 0; i < count; ++i)
    plan.vaults.append(twoChamberVault(name(i), ft(20 * i, 0), feet(level(random) - 4)));
  for (int i = 0; i < count; ++i) {
    const RunEnd from = inChamber(name(i), 2, ft(4, 0), feet(level(random)));
    const bool last = i + 1 == count;
    const RunEnd to = last ? freeEnd(ft(500, 0), feet(level(random)))
                           : inChamber(name(i + 1), 1, ft(-4, 0), feet(level(random)));
    plan.runs.append(makeRun("R" + std::to_string(i), last ? Service::Overflow : Service::Link,
                             "pvc-sch80", "6", from, to));
  }
  return plan;
}

TEST(StudyProperty, WaterNeverStandsHigherDownstream) {
  std::mt19937 random(15);
  for (int round = 0; round < 300; ++round) {
    const Study study = studyOf(randomTrain(random));
    for (std::size_t i = 0; i < study.vaults.size(); ++i) {
      const VaultStudy& vault = study.vaults[i];
      ASSERT_TRUE(vault.waterLevel);
      EXPECT_GE(*vault.waterLevel, *vault.overflowInvert);
      if (i > 0) {
        EXPECT_LE(*vault.waterLevel, *study.vaults[i - 1].waterLevel);
      }
    }
  }
}

TEST(StudyProperty, WorkingVolumeIsTheSumOfItsChambers) {
  std::mt19937 random(16);
  for (int round = 0; round < 100; ++round) {
    const Study study = studyOf(randomTrain(random));
    double vaults = 0;
    for (const VaultStudy& vault : study.vaults) {
      double chambers = 0;
      for (const ChamberStudy& chamber : vault.chambers) {
        EXPECT_NEAR(chamber.volume.value(), chamber.area.value() * chamber.waterDepth.value(),
                    1e-12);
        EXPECT_LE(inFeet(chamber.waterDepth), 5 + 1e-9);
        chambers += chamber.volume.value();
      }
      EXPECT_NEAR(chambers, vault.workingVolume.value(), 1e-9);
      vaults += chambers;
    }
    EXPECT_NEAR(vaults, study.workingVolume.value(), 1e-9);
  }
}

TEST(StudyProperty, TheSamePlanGivesTheSameStudy) {
  const Plan plan = generatedPlan(60);
  const Study a = studyOf(plan), b = studyOf(plan);
  ASSERT_EQ(a.takeOff.size(), b.takeOff.size());
  for (std::size_t i = 0; i < a.takeOff.size(); ++i) {
    EXPECT_EQ(a.takeOff[i].item, b.takeOff[i].item);
    EXPECT_EQ(a.takeOff[i].runs, b.takeOff[i].runs);
    EXPECT_EQ(a.takeOff[i].buy.value(), b.takeOff[i].buy.value());
  }
}

TEST(StudyProperty, TheGeneratedPlanIsWhatItClaims) {
  const Plan plan = generatedPlan(200);
  EXPECT_EQ(plan.vaults.size(), 20u);
  EXPECT_EQ(plan.runs.size(), 200u);
  const Study study = studyOf(plan);
  for (const RunStudy& run : study.runs)
    EXPECT_TRUE(run.resolved && run.problem.empty()) << run.id << " " << run.problem;
  for (const VaultStudy& vault : study.vaults)
    EXPECT_TRUE(vault.waterLevel) << vault.id;
}

} // namespace
} // namespace sump::test
