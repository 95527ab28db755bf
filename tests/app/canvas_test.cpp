// View, grid, labels, run ends and the table of actions, without a window.

#include "app/actions.h"
#include "app/canvas/entry_box.h"
#include "app/canvas/finding_place.h"
#include "app/canvas/grid.h"
#include "app/canvas/labels.h"
#include "app/canvas/overlay.h"
#include "app/canvas/tools/catch_end.h"
#include "app/canvas/tools/run_tool.h"
#include "app/window/appearance.h"
#include "app/window/resources.h"

#include "core/exchange/plan_file.h"
#include "core/geometry/polygon.h"
#include "core/plan/edits_parts.h"
#include "tests/support/places.h"

#include <QFont>
#include <QImage>
#include <QPainter>

#include <gtest/gtest.h>

#include <cmath>
#include <set>

namespace sump {

namespace {

Plan depot() {
  return readPlanFile(sampleFile("transit-depot"));
}

} // namespace

TEST(View, ZoomKeepsThePointUnderThePointer) {
  View view;
  view.resize({800, 600});
  view.fit({{0, 0}, {60, 40}}, 20);
  const QPointF at(123, 456);
  const Point2 before = view.toSite(at);
  view.zoomAt(at, 3.7);
  EXPECT_NEAR(view.toSite(at).x, before.x, 1e-9);
  EXPECT_NEAR(view.toSite(at).y, before.y, 1e-9);
}

TEST(View, ScaleStaysWithinItsLimits) {
  View view;
  view.zoomAt({10, 10}, 1e9);
  EXPECT_DOUBLE_EQ(view.scale(), View::kMostScale);
  view.zoomAt({10, 10}, 1e-12);
  EXPECT_DOUBLE_EQ(view.scale(), View::kLeastScale);
}

TEST(View, FitShowsAllWithItsMargin) {
  View view;
  view.resize({800, 600});
  view.fit({{-10, 5}, {90, 15}}, 40);
  EXPECT_NEAR(view.toScreen(Point2{-10, 5}).x(), 40, 1e-9);
  EXPECT_NEAR(view.toScreen(Point2{90, 5}).x(), 760, 1e-9);
  view.fit({{3, 3}, {3, 3}}, 40); // a point
  EXPECT_NEAR(view.toScreen(Point2{3, 3}).x(), 400, 1e-9);
}

TEST(View, NorthIsUp) {
  View view;
  EXPECT_LT(view.toScreen(Point2{0, 10}).y(), view.toScreen(Point2{0, 0}).y());
}

TEST(Grid, StepsAreRoundInTheProjectsUnits) {
  // 38 px a metre is 11.6 px a foot: too close for 1 ft, so 2 ft, with 10 ft as the strong lines.
  const GridSteps us = gridSteps(38, UnitSystem::UsCustomary);
  EXPECT_NEAR(us.minor, 2 * kMetresPerFoot, 1e-9);
  EXPECT_NEAR(us.major, 10 * kMetresPerFoot, 1e-9);
  const GridSteps metric = gridSteps(38, UnitSystem::Metric);
  EXPECT_NEAR(metric.minor, 0.5, 1e-9);
  EXPECT_NEAR(metric.major, 2, 1e-9);
}

TEST(Grid, LinesKeepTheirDistanceAtEveryScale) {
  for (UnitSystem units : {UnitSystem::UsCustomary, UnitSystem::Metric}) {
    for (double scale = View::kLeastScale; scale < View::kMostScale; scale *= 1.3) {
      const GridSteps steps = gridSteps(scale, units);
      EXPECT_GE(steps.minor * scale, 12 - 1e-9) << scale;
      const double ratio = steps.major / steps.minor;
      EXPECT_NEAR(ratio, std::round(ratio), 1e-6) << scale;
      EXPECT_LE(barLength(scale, units, 160) * scale, 160 + 1e-9) << scale;
    }
  }
}

/// All of it, in a window of usual size.
View overview(const Scene& scene) {
  View view;
  view.resize({1010, 616});
  view.fit(*scene.bounds({}), 48);
  return view;
}

/// The middle of what is drawn in the needle's colour in the square left of the bar, from that
/// square's middle.
QPointF needle(Angle north) {
  View view;
  view.resize({800, 600});
  QImage picture(800, 600, QImage::Format_RGB32);
  const CanvasTheme theme = canvasTheme(false);
  picture.fill(theme.background);
  QPainter painter(&picture);
  const QRectF box = scaleBarBox(view, UnitSystem::Metric, painter.font());
  paintScaleBar(painter, box, view.scale(), UnitSystem::Metric, north, theme);
  painter.end();
  const QRect square(box.topLeft().toPoint(), QSize(46, 46));
  QPointF sum;
  int count = 0;
  for (int y = square.top(); y <= square.bottom(); ++y) {
    for (int x = square.left(); x <= square.right(); ++x) {
      if (picture.pixelColor(x, y).lightness() > 100) continue;
      sum += QPointF(x + 0.5, y + 0.5);
      ++count;
    }
  }
  return sum / std::max(count, 1) - QRectF(square).center();
}

TEST(Grid, TheNorthArrowTurnsAgainstTheClock) {
  // The filled half lies right of the way that the arrow points.
  EXPECT_GT(needle(radians(0)).x(), 0.2);
  EXPECT_LT(needle(radians(kPi / 2)).y(), -0.2);
  EXPECT_LT(needle(radians(kPi)).x(), -0.2);
}

TEST(Labels, NeverCoverEachOther) {
  const ReviewedPtr reviewed = reviewNow(depot(), 1, builtinCatalog());
  const Scene scene(reviewed);
  View view;
  view.resize({1200, 800});
  view.fit(*scene.bounds({}), 30);
  const QFont font;
  for (double zoom : {1.0, 2.0, 5.0, 0.3}) {
    View closer = view;
    closer.zoomAt(closer.toScreen(Point2{20, 17}), zoom);
    const std::vector<Label> labels = placeLabels(scene, closer, font);
    if (zoom >= 1) {
      EXPECT_GT(labels.size(), 3u);
    }
    for (std::size_t i = 0; i < labels.size(); ++i) {
      for (std::size_t k = i + 1; k < labels.size(); ++k) {
        EXPECT_FALSE(convexOverlap(labelBox(labels[i], font), labelBox(labels[k], font)))
            << labels[i].text.toStdString() << " on " << labels[k].text.toStdString();
      }
    }
  }
}

// What is named in its own area or on the ground that it stands on is not taken for another thing.
TEST(Labels, StandOnNoOtherThing) {
  for (const char* sample : {"transit-depot.sump", "boatyard-pad.sump", "ferry-quay.sump"}) {
    const Plan plan = readPlanFile(sourceFolder() + "/samples/" + sample);
    const Scene scene(reviewNow(plan, 1, builtinCatalog()));
    View view = overview(scene);
    for (double zoom : {1.0, 1.6, 2.5, 4.0}) {
      View closer = view;
      closer.zoomAt(closer.toScreen(plan.vaults[0].centre), zoom);
      for (const Label& label : placeLabels(scene, closer, QFont())) {
        for (const Pavement& p : plan.pavements) {
          // Paving that the thing does not stand on.
          const Point2 middle =
              lerp(scene.bounds({label.object})->low, scene.bounds({label.object})->high, 0.5);
          if (p.id == label.object || contains(p.outline, middle) || label.leader) continue;
          if (plan.runs.find(label.object) != nullptr) continue;  // a line names itself on itself
          if (plan.notes.find(label.object) != nullptr) continue; // led by a line of its own
          EXPECT_FALSE(contains(p.outline, closer.toSite(label.centre)))
              << sample << " at " << zoom << ": " << label.text.toStdString() << " on " << p.name;
        }
      }
      for (const Vault& vault : plan.vaults) {
        for (const Label& label : placeLabels(scene, closer, QFont())) {
          if (label.object != vault.id || label.leader) continue;
          EXPECT_TRUE(contains(outline(vault), closer.toSite(label.centre))) << vault.name;
        }
      }
    }
  }
}

// A line's name covers no valve in a line where the line is long enough for both.
TEST(Labels, OfLinesSpareThePartsInThem) {
  std::size_t parts = 0, covered = 0;
  for (const char* sample : {"transit-depot.sump", "boatyard-pad.sump", "ferry-quay.sump"}) {
    const Plan plan = readPlanFile(sourceFolder() + "/samples/" + sample);
    const Scene scene(reviewNow(plan, 1, builtinCatalog()));
    View view = overview(scene);
    view.zoomAt(view.toScreen(plan.vaults[0].centre), 4);
    const std::vector<Label> labels = placeLabels(scene, view, QFont());
    for (const sump::Run& run : plan.runs) {
      const auto line = scene.locator().centreline(run);
      if (!line) continue;
      for (const InlinePart& part : run.parts) {
        const QPointF at = view.toScreen(stationOf(*line, part)->at);
        ++parts;
        for (const Label& label : labels) {
          if (plan.runs.find(label.object) && label.box.containsPoint(at, Qt::OddEvenFill))
            ++covered;
        }
      }
    }
  }
  EXPECT_GT(parts, 20u);
  EXPECT_EQ(covered, 0u);
}

// Two pipes 4 in apart at some 1:75: a name on one would lie over the other.
TEST(Labels, OfCloseLinesStandBesideThem) {
  Plan plan;
  for (const auto& [id, y] : {std::pair{"PW-1", 0.0}, {"PW-2", 0.1}}) {
    sump::Run run;
    run.id = id;
    run.service = Service::Product;
    run.size = "2";
    run.from.at = {0, y};
    run.to.at = {10, y};
    plan.runs.append(run);
  }
  const Scene scene(reviewNow(plan, 1, builtinCatalog()));
  View view;
  view.resize({800, 400});
  view.fit({{-3, -3}, {13, 3}}, 0);
  const std::vector<Label> labels = placeLabels(scene, view, QFont());
  ASSERT_EQ(labels.size(), 2u);
  EXPECT_EQ(labels[0].text, "PW-1 2\"");
  EXPECT_EQ(labels[1].text, "PW-2 2\"");
  for (const Label& label : labels) {
    for (const double y : {0.0, 0.1}) {
      const QPolygonF pipe({view.toScreen(Point2{0, y}), view.toScreen(Point2{10, y})});
      EXPECT_FALSE(convexOverlap(label.box, pipe)) << label.text.toStdString() << " over " << y;
    }
  }
}

TEST(Labels, SayTheNumberOnlyWhereThereAreSeveral) {
  Plan plan;
  sump::Run run;
  run.id = "VT-1";
  run.service = Service::Vent;
  run.size = "3";
  run.to.at = {10, 0};
  plan.runs.append(run);
  View view;
  view.resize({800, 400});
  view.fit({{-3, -3}, {13, 3}}, 0);
  const auto names = [&] {
    const Scene scene(reviewNow(plan, 1, builtinCatalog()));
    QStringList all;
    for (const Label& label : placeLabels(scene, view, QFont()))
      all << label.text;
    return all;
  };
  EXPECT_EQ(names(), QStringList{"VT 3\""});
  run.id = "VT-2";
  run.from.at = {0, 2};
  run.to.at = {10, 2};
  plan.runs.append(run);
  EXPECT_EQ(names(), (QStringList{"VT-1 3\"", "VT-2 3\""}));
}

TEST(EntryBox, StandsBesideWhatIsTypedInEveryCornerOfTheDrawing) {
  QWidget drawing;
  drawing.resize(700, 420);
  EntryBox box(&drawing);
  const std::vector<EntryField> fields = placeFields(true);
  const QPointF from(350, 210);
  for (const QPointF to : {QPointF(30, 30), QPointF(670, 30), QPointF(30, 390), QPointF(670, 390),
                           QPointF(350, 400), QPointF(690, 210), QPointF(400, 210)}) {
    box.open(fields, UnitSystem::UsCustomary, "1", [&] {
      return EntryPlace{to, {QLineF(from, to)}};
    });
    const QRectF at(box.geometry());
    EXPECT_TRUE(QRectF(drawing.rect()).contains(at)) << to.x() << ", " << to.y();
    EXPECT_FALSE(at.contains(to));
    EXPECT_FALSE(convexOverlap(at, QPolygonF({from, to}))) << to.x() << ", " << to.y();
  }
  drawing.resize(300, 420); // too narrow for all in one row
  box.open(fields, UnitSystem::UsCustomary, "1", [] { return EntryPlace{{150, 200}}; });
  EXPECT_TRUE(QRectF(drawing.rect()).contains(QRectF(box.geometry())));
}

// However far off free ground is: there it has a leader.
TEST(EntryBox, CoversNoNameWhereThereIsFreeGround) {
  QWidget drawing;
  drawing.resize(700, 420);
  EntryBox box(&drawing);
  const QPointF at(350, 210);
  EntryPlace place{at};
  box.open(placeFields(true), UnitSystem::UsCustomary, "1", [&] { return place; });
  EXPECT_FALSE(box.leader());
  for (int x = 0; x < 700; x += 100) {
    for (int y = 120; y < 420; y += 30)
      place.names.emplace_back(QRectF(x, y, 60, 14));
  }
  box.complain("not a length");
  const QRectF now(box.geometry());
  for (const QPolygonF& name : place.names)
    EXPECT_FALSE(convexOverlap(now, name)) << name.boundingRect().x();
  ASSERT_TRUE(box.leader());
  EXPECT_EQ(box.leader()->p2(), at);
  EXPECT_TRUE(now.contains(box.leader()->p1()));
}

// A few pixels aside rather than half its width, where that is all it needs.
TEST(Overlay, ATextGivesWayNoFartherThanItMust) {
  QImage image(600, 400, QImage::Format_RGB32);
  QPainter painter(&image);
  View view;
  view.resize(image.size());
  const auto settled = [&](const std::vector<QRectF>& kept) {
    Overlay overlay(painter, view, canvasTheme(false), kept);
    overlay.tag({300, 200}, "12'-6 1/2\"  N 45.0° E true");
    overlay.settle();
    return overlay.tags().at(0);
  };
  const QRectF alone = settled({}).box;
  EXPECT_NEAR(QLineF(alone.center(), {300, 200}).length(), 0, 1);
  const QRectF sign(alone.left() - 12, alone.top() - 60, 16, 140);
  const Overlay::Tag aside = settled({sign});
  EXPECT_FALSE(aside.box.intersects(sign));
  EXPECT_NEAR(aside.box.top(), alone.top(), 1e-9);
  EXPECT_LE(std::abs(aside.box.left() - alone.left()), 8 + 1e-9);
}

TEST(Overlay, NoLeaderRunsAlongALineThatIsDrawn) {
  QImage image(600, 400, QImage::Format_RGB32);
  QPainter painter(&image);
  View view;
  view.resize(image.size());
  Overlay overlay(painter, view, canvasTheme(false), {});
  overlay.keepClear({240, 20, 120, 360});
  const QLineF line(100, 200, 340, 200); // right of it there is room
  overlay.keepInSight(QPolygonF({line.p1(), line.p2()}));
  overlay.tag({300, 200}, "12'-6\"");
  overlay.settle();
  const Overlay::Tag tag = overlay.tags().at(0);
  ASSERT_TRUE(tag.leader);
  EXPECT_GT(std::abs(tag.leader->p1().y() - line.y1()), 5);
}

TEST(Findings, WithoutAPlaceAreMarkedAtWhatTheyAreAbout) {
  Plan plan;
  Vault vault;
  vault.id = "V1";
  vault.length = vault.width = metres(2);
  plan.vaults.append(vault);
  vault.id = "V2";
  vault.centre = {6, 0};
  plan.vaults.append(vault);
  Finding finding;
  EXPECT_FALSE(signPlace(plan, finding));
  finding.objects = {"R-9", "V2"}; // a line has no outline, and is what it is about
  EXPECT_FALSE(signPlace(plan, finding));
  finding.objects = {"V2", "R-9"};
  ASSERT_TRUE(signPlace(plan, finding));
  EXPECT_NEAR(distance(*signPlace(plan, finding), Point2{6, 0}), 0, 1e-9);
  finding.objects = {"V1", "V2"};
  EXPECT_NEAR(signPlace(plan, finding)->x, 3, 1e-9) << "between their walls";
  finding.place = Point2{7, 7};
  EXPECT_EQ(*signPlace(plan, finding), (Point2{7, 7}));
}

TEST(Labels, KeepOffTheScaleBarAndMarks) {
  const Scene scene(reviewNow(depot(), 1, builtinCatalog()));
  View view;
  view.resize({1010, 616});
  view.fit(*scene.bounds({}), 30);
  const std::vector<Label> before = placeLabels(scene, view, QFont());
  ASSERT_GT(before.size(), 8u);
  LabelRoom room;
  room.scaleBar = before[0].box.boundingRect();
  for (std::size_t i = 1; i < 8; ++i)
    room.marks.emplace_back(before[i].centre - QPointF(8, 8), QSizeF(16, 16));
  const std::vector<Label> after = placeLabels(scene, view, QFont(), room);
  for (const Label& label : after) {
    if (!scene.plan().notes.find(label.object)) {
      EXPECT_FALSE(convexOverlap(label.box, QPolygonF(room.scaleBar))) << label.text.toStdString();
    }
    for (const QRectF& mark : room.marks)
      EXPECT_FALSE(convexOverlap(label.box, QPolygonF(mark))) << label.text.toStdString();
  }
}

TEST(Labels, LieWithinAnOutlineThatIsBentIn) {
  const QPolygonF angle({{0, 0}, {100, 0}, {100, 20}, {20, 20}, {20, 100}, {0, 100}});
  EXPECT_TRUE(liesWithin(turnedBox({50, 10}, 0, {80, 12}), angle));
  EXPECT_FALSE(liesWithin(turnedBox({50, 50}, 0, {10, 10}), angle));
  // All corners inside, its middle across the bend.
  EXPECT_FALSE(liesWithin(QPolygonF({{90, 5}, {95, 15}, {15, 95}, {5, 90}}), angle));
  EXPECT_TRUE(liesWithin(turnedBox({10, 50}, 90, {80, 12}), angle)) << "turned along its leg";
}

TEST(Labels, TurnedBoxesMeetOnlyWhereTheyDo) {
  const QPolygonF box({{0, 0}, {10, 0}, {10, 4}, {0, 4}});
  EXPECT_TRUE(convexOverlap(box, box.translated(9, 3)));
  EXPECT_FALSE(convexOverlap(box, box.translated(10, 0))) << "touching is no overlap";
  // Its bounding box meets the other; the diamond itself does not.
  const QPolygonF diamond({{14, 4}, {18, 8}, {14, 12}, {10, 8}});
  EXPECT_FALSE(convexOverlap(QPolygonF({{9, 3}, {11, 3}, {11, 5}, {9, 5}}), diamond));
  // A rectangle's outline comes back to its first corner.
  EXPECT_TRUE(convexOverlap(QPolygonF(QRectF(0, 0, 10, 4)), QPolygonF(QRectF(9, 3, 5, 5))));
  EXPECT_FALSE(convexOverlap(QPolygonF(QRectF(0, 0, 10, 4)), QPolygonF(QRectF(11, 3, 5, 5))));
}

TEST(SceneOfTheDepot, PicksWhatIsDrawnOnTop) {
  const Scene scene(reviewNow(depot(), 1, builtinCatalog()));
  // The inlet runs along x = 24.384 over the yard: within reach the line, beyond it the paving.
  EXPECT_EQ(scene.objectAt({24.40, 18}, 0.1), "WW-1");
  EXPECT_EQ(scene.objectAt({26.5, 18}, 0.1), "PV-YARD");
  EXPECT_EQ(scene.objectAt({-50, -50}, 0.1), "");
  // A baffle is picked as its vault.
  EXPECT_EQ(scene.objectAt({20.72, 14.6}, 0.05), "V1");
}

TEST(CatchEnd, TakesChambersPortsDrainsAndTheSewer) {
  const Plan plan = depot();
  const Vault& v2 = *plan.vaults.find("V2"); // stands turned by 180 degrees
  const Catch chamber = catchEnd(plan, v2.frame().toSite({1, 0.2}), 0.3, Service::Suction);
  EXPECT_EQ(chamber.end.kind, EndKind::Chamber);
  EXPECT_EQ(chamber.end.chamber, 2);
  EXPECT_NEAR(chamber.end.at.x, 1, 1e-9);
  // On the baffle itself: the nearer chamber, inside it.
  const Catch wall = catchEnd(plan, v2.frame().toSite({0.05, 0.6}), 0.01, Service::Suction);
  EXPECT_EQ(wall.end.kind, EndKind::Chamber);
  EXPECT_EQ(catchEnd(plan, {1.3, 9.2}, 0.3, Service::Overflow).end.target, "SW-1");
  EXPECT_EQ(catchEnd(plan, {18, 28.2}, 0.3, Service::Inlet).end.target, "TD-1");
  const Catch port = catchEnd(plan, {18.8976 + 0.9, 20.7264 + 0.3}, 0.3, Service::Suction);
  EXPECT_EQ(port.end.target, "P-SU");
  EXPECT_EQ(catchEnd(plan, {18.8976 + 0.8, 20.7264 + 0.3}, 0.3, Service::SpareSuction).end.target,
            "P-SS");
  EXPECT_EQ(catchEnd(plan, {45, 10}, 0.3, Service::Power).end.kind, EndKind::Free);
}

TEST(CatchEnd, TellsAnArchFromTheDrainUnderIt) {
  Plan plan = depot();
  WashEquipment arch = *plan.washes.find("WA-1");
  const Point2 at = arch.at = plan.basins.find("TD-1")->at;
  plan.washes.put(arch);
  EXPECT_EQ(catchEnd(plan, at, 0.3, Service::Product).end.target, "WA-1");
  EXPECT_EQ(catchEnd(plan, at, 0.3, Service::Signal).end.target, "WA-1");
  EXPECT_EQ(catchEnd(plan, at, 0.3, Service::Inlet).end.target, "TD-1");
  EXPECT_EQ(catchEnd(plan, at, 0.3, Service::Underflow).end.target, "TD-1");
}

TEST(RunTool, ShiftKeepsToEighths) {
  const Point2 straight = onEighth({1, 1}, {6, 1.4});
  EXPECT_NEAR(straight.y, 1, 1e-9);
  EXPECT_NEAR(straight.x, 6, 1e-9);
  const Point2 slanted = onEighth({0, 0}, {2, 1.8});
  EXPECT_NEAR(slanted.x, slanted.y, 1e-9);
}

TEST(Actions, TableIsCompleteAndFreeOfClashes) {
  nameApplication();
  std::set<std::string> names;
  std::set<QString> keys;
  std::set<ActionId> ids;
  for (const ActionRow& row : actionTable()) {
    EXPECT_TRUE(names.insert(row.name).second) << row.name;
    EXPECT_TRUE(ids.insert(row.id).second) << row.name;
    EXPECT_FALSE(std::string(row.tip).empty()) << row.name;
    if (*row.icon != '\0') {
      EXPECT_FALSE(themedIcon(row.icon, windowPalette(false)).isNull()) << row.icon;
    }
    if (row.strip != Strip::None) {
      EXPECT_NE(*row.icon, '\0') << row.name;
    }
    for (const QKeySequence& key : keysOf(row))
      EXPECT_TRUE(keys.insert(key.toString()).second)
          << row.name << " " << key.toString().toStdString();
  }
  EXPECT_EQ(ids.size(), static_cast<std::size_t>(ActionId::About) + 1);
}

} // namespace sump
