// Handles of what is selected, and the tools that put parts into it, by real mouse and key events
// on the transit depot sample.

#include "app/canvas/handles.h"
#include "tests/app/window_fixture.h"

#include "core/plan/consistency.h"
#include "core/plan/edits_parts.h"
#include "core/plan/edits_rooms.h"
#include "core/plan/edits_runs.h"
#include "core/plan/ends.h"

#include <QContextMenuEvent>
#include <QLineEdit>
#include <QMenu>

namespace sump {

using testing::samplePath;

class Handles : public testing::WindowTest {
protected:
  void SetUp() override {
    WindowTest::SetUp();
    open(samplePath("transit-depot.sump"));
  }
  /// Close enough that a pixel is less than 2 cm.
  void lookClosely(const Id& id) {
    canvas().lookAt({id}, std::nullopt);
    while (canvas().view().scale() < 70)
      canvas().zoomBy(1.3);
  }
  void lookClosely(Point2 place) {
    canvas().lookAt({}, place);
    while (canvas().view().scale() < 70)
      canvas().zoomBy(1.3);
  }
  double pixelSize() { return 1 / canvas().view().scale(); }
  void drag(Point2 from, Point2 to, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
    QTest::mouseMove(&canvas(), pixel(from));
    QTest::mousePress(&canvas(), Qt::LeftButton, modifiers, pixel(from));
    // QTest's moves carry no modifiers.
    for (Point2 p : {lerp(from, to, 0.5), to}) {
      QMouseEvent move(QEvent::MouseMove, QPointF(pixel(p)), canvas().mapToGlobal(pixel(p)),
                       Qt::NoButton, Qt::LeftButton, modifiers);
      QApplication::sendEvent(&canvas(), &move);
    }
    QTest::mouseRelease(&canvas(), Qt::LeftButton, modifiers, pixel(to));
  }
  /// QTest moves the cursor, which brings no event where it rests already.
  void hover(Point2 at) {
    QMouseEvent move(QEvent::MouseMove, QPointF(pixel(at)), canvas().mapToGlobal(pixel(at)),
                     Qt::NoButton, Qt::NoButton, Qt::NoModifier);
    QApplication::sendEvent(&canvas(), &move);
  }
  void type(const char* text) {
    QTest::keyClicks(&canvas(), text);
    QTest::keyClick(&canvas(), Qt::Key_Return);
  }
  QString hint() { return canvas().tool().hint(); }
  void expectPlan() { EXPECT_TRUE(inconsistencies(plan()).empty()); }
  /// In the vault's own frame, on the site.
  Point2 inVault(const Id& id, Point2 local) {
    return plan().vaults.find(id)->frame().toSite(local);
  }
  Point2 inRoom(Point2 local) { return plan().rooms[0].frame().toSite(local); }
  const sump::Run& run(const Id& id) { return *plan().runs.find(id); }
  Polyline lineOf(const Id& id) { return *Locator(plan()).centreline(run(id)); }
};

TEST_F(Handles, ABaffleIsPlacedByAClickInAVault) {
  lookClosely("V1");
  window->action(ActionId::ToolBaffle)->trigger();
  click(inVault("V1", {1.3, 0.4}), Qt::AltModifier);
  const Vault& vault = *plan().vaults.find("V1");
  ASSERT_EQ(vault.baffles.size(), 2u);
  EXPECT_EQ(document().undoStep(), "Place baffle");
  // 3.6576 less two walls of 0.1524 is 3.3528 inside; its middle at local 1.3.
  EXPECT_NEAR(inMetres(vault.baffles[1].offset + 0.5 * vault.baffles[1].thickness), 1.6764 + 1.3,
              pixelSize());
  EXPECT_EQ(canvas().selection(), std::set<Id>{"V1"});
  EXPECT_EQ(run("IC-1").to.chamber, 2);
  expectPlan();
  click({30, 30});
  EXPECT_EQ(plan().vaults.find("V1")->baffles.size(), 2u) << "there is no vault there";
  // Delete takes out the baffle that was placed, never the vault that is selected with it.
  QTest::keyClick(&canvas(), Qt::Key_Delete);
  QTest::keyClick(&canvas(), Qt::Key_Delete);
  ASSERT_NE(plan().vaults.find("V1"), nullptr);
  EXPECT_EQ(plan().vaults.find("V1")->baffles.size(), 1u);
}

TEST_F(Handles, ABaffleCatchesWhereItHalvesTheChamberAndTakesATypedPlace) {
  lookClosely("V2");
  window->action(ActionId::ToolBaffle)->trigger();
  // Its second chamber: local 0.0762 to 1.6764, the middle at 0.8763.
  click(inVault("V2", {0.8763 + 4 * pixelSize(), 0.4}));
  const Vault& vault = *plan().vaults.find("V2");
  ASSERT_EQ(vault.baffles.size(), 2u);
  EXPECT_NEAR(inMetres(vault.baffles[1].offset) + 0.0762, 1.6764 + 0.8763, 1e-9);
  document().undo();
  hover(inVault("V2", {-1, 0.4}));
  type("2'6\"");
  ASSERT_EQ(plan().vaults.find("V2")->baffles.size(), 2u);
  EXPECT_NEAR(inFeet(plan().vaults.find("V2")->baffles[0].offset), 2.5, 1e-9);
  expectPlan();
}

TEST_F(Handles, ABaffleIsDraggedWithItsInterconnect) {
  lookClosely("V1");
  click(placeOn("V1"));
  const Plan before = plan();
  const Point2 from = inVault("V1", {0, 0.35}); // off its interconnect
  drag(from, inVault("V1", {-0.5, 0.35}), Qt::AltModifier);
  EXPECT_EQ(document().undoStep(), "Move baffle");
  const double moved = inMetres(plan().vaults.find("V1")->baffles[0].offset) - 1.6002;
  EXPECT_NEAR(moved, -0.5, 2 * pixelSize());
  EXPECT_NEAR(run("IC-1").from.at.x, -0.3048 + moved, 1e-9);
  EXPECT_NEAR(run("IC-1").to.at.x, 0.3048 + moved, 1e-9);
  expectPlan();
  // Now it is taken: digits place it, Delete takes it out, Esc lets it go.
  type("1.2 m");
  EXPECT_NEAR(inMetres(plan().vaults.find("V1")->baffles[0].offset), 1.2, 1e-9);
  QTest::keyClick(&canvas(), Qt::Key_Delete);
  EXPECT_TRUE(plan().vaults.find("V1")->baffles.empty());
  EXPECT_EQ(plan().runs.find("IC-1"), nullptr);
  EXPECT_EQ(document().undoStep(), "Delete baffle");
  while (document().canUndo())
    document().undo();
  EXPECT_EQ(plan(), before);
}

TEST_F(Handles, EscPutsADraggedHandleBack) {
  lookClosely("V1");
  click(placeOn("V1"));
  const Plan before = plan();
  const Point2 from = inVault("V1", {0, 0.35});
  dragFrom(from, inVault("V1", {0.6, 0.35}));
  EXPECT_FALSE(document().shown() == before);
  QTest::keyClick(&canvas(), Qt::Key_Escape);
  release(inVault("V1", {0.6, 0.35}));
  EXPECT_EQ(document().shown(), before);
  EXPECT_FALSE(document().canUndo());
}

TEST_F(Handles, ManwaysArePlacedDraggedAndTakenOut) {
  lookClosely("V1");
  window->action(ActionId::ToolManway)->trigger();
  click(inVault("V1", {0.2, 0.3}), Qt::AltModifier);
  ASSERT_EQ(plan().vaults.find("V1")->manways.size(), 3u);
  EXPECT_NEAR(plan().vaults.find("V1")->manways[2].at.x, 0.2, pixelSize());
  EXPECT_NEAR(plan().vaults.find("V1")->manways[2].at.y, 0.3, pixelSize());
  // One that is there is dragged, not placed again; it stays within the walls.
  drag(inVault("V1", {-0.88392, 0}), inVault("V1", {-3, -0.2}));
  ASSERT_EQ(plan().vaults.find("V1")->manways.size(), 3u);
  EXPECT_EQ(document().undoStep(), "Move manway");
  EXPECT_NEAR(plan().vaults.find("V1")->manways[0].at.x, -(1.6764 - 0.381), 1e-9)
      << "an opening of 30 in";
  QTest::keyClick(&canvas(), Qt::Key_Delete);
  EXPECT_EQ(plan().vaults.find("V1")->manways.size(), 2u);
  EXPECT_NE(plan().vaults.find("V1"), nullptr);
  expectPlan();
}

TEST_F(Handles, AValveIsSetOnALineDraggedAlongItAndTakenOff) {
  lookClosely(Point2{24.384, 19});
  window->action(ActionId::ToolPart)->trigger();
  canvas().tool().choose(0, 1); // ball valve
  click({24.384, 19}, Qt::AltModifier);
  ASSERT_EQ(run("WW-1").parts.size(), 2u);
  const InlinePart valve = run("WW-1").parts[1];
  EXPECT_EQ(valve.kind, PartKind::BallValve);
  EXPECT_NEAR(stationOf(lineOf("WW-1"), valve)->at.y, 19, pixelSize());
  EXPECT_EQ(document().undoStep(), "Place part");
  // With the select tool: its line is selected, so it is a handle.
  window->action(ActionId::ToolSelect)->trigger();
  drag({24.384, 19}, {24.7, 18}, Qt::AltModifier);
  EXPECT_EQ(document().undoStep(), "Move part");
  EXPECT_NEAR(stationOf(lineOf("WW-1"), run("WW-1").parts[1])->at.y, 18, 2 * pixelSize());
  EXPECT_EQ(lineOf("WW-1"), (Locator(plan()).centreline(run("WW-1")))) << "the line stays";
  QTest::keyClick(&canvas(), Qt::Key_Delete);
  ASSERT_NE(plan().runs.find("WW-1"), nullptr);
  EXPECT_EQ(run("WW-1").parts.size(), 1u);
  expectPlan();
}

TEST_F(Handles, APartTakesATypedStationAndOnlyWhereItFits) {
  lookClosely(Point2{24.384, 19});
  window->action(ActionId::ToolPart)->trigger();
  hover({24.384, 19});
  type("3 m");
  ASSERT_EQ(run("WW-1").parts.size(), 2u);
  EXPECT_NEAR(stationOf(lineOf("WW-1"), run("WW-1").parts[0])->run, 3, 1e-9)
      << "before the cleanout that was there";
  canvas().tool().choose(0, 11); // pull box: not on a pipe
  click({24.384, 18});
  EXPECT_EQ(run("WW-1").parts.size(), 2u);
}

TEST_F(Handles, CornersOfALineAreDraggedMadeAndTakenOut) {
  const Point2 corner = run("WW-1").vertices[2].at; // at the foot of the long leg
  lookClosely(corner + Point2{0, 1.4});
  click(corner + Point2{0, 2.4});
  ASSERT_EQ(canvas().selection(), std::set<Id>{"WW-1"});
  const Polyline before = lineOf("WW-1");
  drag(corner, {25, 15}, Qt::AltModifier);
  EXPECT_EQ(document().undoStep(), "Move corner");
  EXPECT_NEAR(run("WW-1").vertices[2].at.x, 25, pixelSize());
  EXPECT_NEAR(run("WW-1").vertices[2].at.y, 15, pixelSize());
  ASSERT_EQ(run("WW-1").vertices.size(), 6u);
  // It stays taken: a typed place, then the arrow keys, then out with it.
  QTest::keyClicks(&canvas(), "e25 m");
  QTest::keyClick(&canvas(), Qt::Key_Tab);
  type("15.5 m");
  EXPECT_NEAR(run("WW-1").vertices[2].at.x, 25, 1e-9);
  EXPECT_NEAR(run("WW-1").vertices[2].at.y, 15.5, 1e-9);
  QTest::keyClick(&canvas(), Qt::Key_Up);
  EXPECT_GT(run("WW-1").vertices[2].at.y, 15.5);
  QTest::keyClick(&canvas(), Qt::Key_Delete);
  ASSERT_NE(plan().runs.find("WW-1"), nullptr) << "the corner goes, not the line";
  EXPECT_EQ(run("WW-1").vertices.size(), 5u);
  expectPlan();
}

TEST_F(Handles, AMiddleOfALegAndADoubleClickMakeCorners) {
  const Point2 middle = lerp(run("WW-1").vertices[3].at, run("WW-1").vertices[4].at, 0.5);
  const Point2 beside = middle + Point2{0.8, 0}; // on the leg, which lies along the axis
  lookClosely(middle);
  click(beside);
  ASSERT_EQ(canvas().selection(), std::set<Id>{"WW-1"});
  drag(middle, middle + Point2{0, -0.6}, Qt::AltModifier);
  EXPECT_EQ(document().undoStep(), "Add corner");
  ASSERT_EQ(run("WW-1").vertices.size(), 7u);
  EXPECT_NEAR(run("WW-1").vertices[4].at.y, middle.y - 0.6, 2 * pixelSize());
  document().undo();
  settle();
  QTest::keyClick(&canvas(), Qt::Key_Escape);
  QTest::mouseDClick(&canvas(), Qt::LeftButton, Qt::NoModifier, pixel(beside));
  ASSERT_EQ(run("WW-1").vertices.size(), 7u);
  EXPECT_NEAR(run("WW-1").vertices[4].at.x, beside.x, pixelSize());
  EXPECT_EQ(run("WW-1").vertices[4].at.y, beside.y) << "on the leg";
  EXPECT_EQ(document().undoStep(), "Add corner");
  expectPlan();
}

TEST_F(Handles, AnEndIsDraggedToAnotherChamberAndIntoTheOpen) {
  lookClosely(Point2{20.2, 14.6});
  click({19.9, 13.9328}); // on the slanted leg before its end
  ASSERT_EQ(canvas().selection(), std::set<Id>{"WW-1"});
  const Point2 end = lineOf("WW-1").back();
  drag(end, inVault("V1", {0.5, -0.5}));
  EXPECT_EQ(document().undoStep(), "Move end of line");
  EXPECT_EQ(run("WW-1").to.kind, EndKind::Chamber);
  EXPECT_EQ(run("WW-1").to.chamber, 2);
  EXPECT_EQ(run("WW-1").to.fitting, EndFitting::Tee);
  EXPECT_TRUE(run("WW-1").to.invert.has_value());
  const auto level = run("WW-1").to.invert;
  drag(lineOf("WW-1").back(), {18.2, 14.2}, Qt::AltModifier);
  EXPECT_EQ(run("WW-1").to.kind, EndKind::Free);
  EXPECT_EQ(run("WW-1").to.invert, level) << "it stays at its level";
  expectPlan();
}

TEST_F(Handles, OutlinesAndThePropertyLineAreDraggedByTheirCorners) {
  lookClosely(Point2{9.144, 24.384});
  click({9.6, 24.9});
  ASSERT_EQ(canvas().selection(), std::set<Id>{"B-BAY"});
  drag({9.144, 24.384}, {8.5, 24}, Qt::AltModifier);
  EXPECT_NEAR(plan().buildings.find("B-BAY")->outline[0].x, 8.5, pixelSize());
  EXPECT_NEAR(plan().buildings.find("B-BAY")->outline[0].y, 24, pixelSize());
  QTest::keyClick(&canvas(), Qt::Key_Delete);
  EXPECT_EQ(plan().buildings.find("B-BAY")->outline.size(), 3u);
  QTest::keyClick(&canvas(), Qt::Key_Delete);
  EXPECT_EQ(plan().buildings.find("B-BAY"), nullptr) << "no corner is taken: now it is the whole";
  document().undo();

  QTest::keyClick(&canvas(), Qt::Key_Escape);
  QTest::keyClick(&canvas(), Qt::Key_Escape);
  ASSERT_TRUE(canvas().selection().empty());
  lookClosely(Point2{0, 42.672});
  drag({0, 42.672}, {1, 42}, Qt::AltModifier);
  EXPECT_NEAR(plan().site.boundary[4].x, 1, pixelSize());
  EXPECT_EQ(document().undoStep(), "Move corner");
  QTest::mouseDClick(&canvas(), Qt::LeftButton, Qt::NoModifier,
                     pixel(lerp(plan().site.boundary[3], plan().site.boundary[4], 0.95)));
  EXPECT_EQ(plan().site.boundary.size(), 6u);
  expectPlan();
}

TEST_F(Handles, WhatStandsInTheRoomIsDraggedWithinIt) {
  lookClosely("ER-1");
  click(inRoom({1.8, 2.5}));
  ASSERT_EQ(canvas().selection(), std::set<Id>{"ER-1"});
  const EquipmentRoom before = plan().rooms[0];
  // The skid with its plumbing area, which its pipes follow.
  drag(inRoom({2.2, 0.4}), inRoom({2.2, 1.4}), Qt::AltModifier);
  EXPECT_EQ(document().undoStep(), "Move skid");
  EXPECT_NEAR(plan().rooms[0].skid->corner.y, 1, 2 * pixelSize());
  EXPECT_NEAR(plan().rooms[0].plumbingArea->corner.y, 1, 2 * pixelSize());
  EXPECT_NEAR(plan().rooms[0].ports[0].at.y, 1.3048, 2 * pixelSize());
  EXPECT_EQ(plan().rooms[0].panel, before.panel);
  // The door from the east wall to the north wall.
  const auto [from, to] = doorEnds(before, *before.door);
  drag(inRoom(lerp(from, to, 0.5)), inRoom({1.8, 3.6}));
  EXPECT_EQ(plan().rooms[0].door->side, Side::North);
  drag(inRoom(plan().rooms[0].ports[8].at), inRoom({3.3, 2}), Qt::AltModifier);
  EXPECT_EQ(document().undoStep(), "Move port");
  EXPECT_NEAR(plan().rooms[0].ports[8].at.y, 2, pixelSize());
  // Elsewhere in the room the room itself is dragged.
  drag(inRoom({0.5, 3}), inRoom({0.5, 4}), Qt::AltModifier);
  EXPECT_EQ(document().undoStep(), "Move");
  expectPlan();
}

TEST_F(Handles, LinesAreCutJoinedReversedAndLaidBeside) {
  lookClosely(Point2{24.384, 19});
  const std::size_t runs = plan().runs.size();
  const Polyline whole = lineOf("WW-1");
  window->action(ActionId::ToolCut)->trigger();
  click({24.384, 19}, Qt::AltModifier);
  ASSERT_EQ(plan().runs.size(), runs + 1);
  EXPECT_EQ(canvas().selection().size(), 2u);
  EXPECT_TRUE(run("WW-1").to.invert.has_value()) << "at the level that the line had there";
  settle();
  window->action(ActionId::JoinLines)->trigger();
  EXPECT_EQ(plan().runs.size(), runs);
  EXPECT_EQ(lineOf("WW-1").front(), whole.front());
  EXPECT_EQ(lineOf("WW-1").back(), whole.back());
  EXPECT_EQ(document().undoStep(), "Join lines");
  window->action(ActionId::ReverseLines)->trigger();
  EXPECT_EQ(lineOf("WW-1").front(), whole.back());
  window->action(ActionId::ReverseLines)->trigger();
  window->action(ActionId::JoinLines)->trigger();
  EXPECT_EQ(document().undoStep(), "Reverse lines") << "one line alone is not joined";

  window->action(ActionId::ToolParallel)->trigger();
  hover({25.5, 19});
  type("18\"");
  ASSERT_EQ(plan().runs.size(), runs + 1);
  EXPECT_EQ(document().undoStep(), "Lay parallel line");
  // East of the long leg, on the pointer's side.
  bool beside = false;
  for (const Vertex& corner : plan().runs.back().vertices)
    beside = beside || std::abs(corner.at.x - (24.384 + 0.4572)) < 1e-6;
  EXPECT_TRUE(beside);
  expectPlan();
}

TEST_F(Handles, TypedAnglesAndTheTurningHandleTurn) {
  canvas().select({"V1"});
  window->action(ActionId::ToolTurn)->trigger();
  type("30");
  EXPECT_NEAR(inDegrees(plan().vaults.find("V1")->angle), 30, 1e-9);
  EXPECT_EQ(document().undoStep(), "Turn");
  document().undo();
  window->action(ActionId::ToolSelect)->trigger();
  lookClosely("V1");
  const Vault& vault = *plan().vaults.find("V1");
  const Point2 grip{vault.centre.x, vault.centre.y + 0.9144 + 30 * pixelSize()};
  const double radius = grip.y - vault.centre.y;
  // From above it to its left: a quarter turn.
  drag(grip, vault.centre + Point2{-radius, 0});
  EXPECT_NEAR(inDegrees(plan().vaults.find("V1")->angle), 90, 1e-9);
  // The link's end and its drop inside the vault went along.
  EXPECT_EQ(run("LK-1").from.at, (Point2{1.3716, 0.3048}));
  EXPECT_NEAR(distance(run("LK-1").vertices[0].at, lineOf("LK-1").front()), 0, 1e-9);
  expectPlan();
}

TEST_F(Handles, AGroupTakesTheLinesBetweenItAlongAndTheEndsOfOthers) {
  const Polyline link = lineOf("LK-1"), inlet = lineOf("WW-1");
  canvas().select({"V1", "V2"});
  const Point2 from = placeOn("V1");
  drag(from, from + Point2{3, -4});
  const Point2 by = plan().vaults.find("V1")->centre - Point2{20.7264, 15.24};
  EXPECT_GT(norm(by), 3);
  for (std::size_t i = 0; i < link.size(); ++i)
    EXPECT_NEAR(distance(lineOf("LK-1")[i], link[i] + by), 0, 1e-9);
  EXPECT_NEAR(distance(lineOf("WW-1").back(), inlet.back() + by), 0, 1e-9);
  EXPECT_EQ(lineOf("WW-1").front(), inlet.front());
  expectPlan();
}

TEST_F(Handles, ADragLandsOnTheGridOrWithinReachOfWhatItCatches) {
  canvas().lookAt({"V1", "V2"}, std::nullopt);
  ASSERT_GT(canvas().view().scale(), 40) << "the grid is a foot or less";
  canvas().select({"V2"});
  for (Point2 by : {Point2{0, -3}, Point2{3, 1}, Point2{-2.5, 1.4}}) {
    const Point2 before = plan().vaults.find("V2")->centre;
    const Point2 from = surePlaceOn("V2");
    drag(from, from + by);
    const Point2 moved = plan().vaults.find("V2")->centre - before;
    // Six pixels for what is caught, half a step for the grid, and the pixel itself.
    const double most = std::max(7 * pixelSize(), 0.5 * kMetresPerFoot + pixelSize());
    EXPECT_LT(std::abs(moved.x - by.x), most);
    EXPECT_LT(std::abs(moved.y - by.y), most);
    settle();
  }
}

TEST_F(Handles, PasteInPlacePutsACopyWhereItCameFrom) {
  canvas().select({"V2"});
  window->action(ActionId::Copy)->trigger();
  window->action(ActionId::PasteInPlace)->trigger();
  ASSERT_EQ(plan().vaults.size(), 3u);
  EXPECT_EQ(plan().vaults[2].centre, plan().vaults.find("V2")->centre);
  EXPECT_EQ(canvas().selection(), std::set<Id>{plan().vaults[2].id});
}

TEST_F(Handles, StraightIsHeldByShiftAndSwitchedByItsKey) {
  const auto draw = [this](Qt::KeyboardModifiers modifiers) {
    window->action(ActionId::ToolRun)->trigger();
    canvas().tool().choose(0, static_cast<int>(Service::Signal));
    click({44, 10});
    click({48, 10.8}, modifiers);
    QTest::keyClick(&canvas(), Qt::Key_Return);
    const Polyline line = lineOf(plan().runs.back().id);
    return std::abs(line.back().y - line.front().y);
  };
  EXPECT_LT(draw(Qt::ShiftModifier), 1e-9);
  window->action(ActionId::Snap)->setChecked(false);
  EXPECT_GT(draw(Qt::NoModifier), 0.5);
  QTest::keyClick(window.get(), Qt::Key_J, Qt::ControlModifier);
  EXPECT_TRUE(window->action(ActionId::Straight)->isChecked());
  EXPECT_LT(draw(Qt::NoModifier), 1e-9);
}

TEST_F(Handles, TheContextMenuFitsWhatLiesThere) {
  const auto menuAt = [this](Point2 at) {
    const QPoint where = pixel(at);
    QContextMenuEvent event(QContextMenuEvent::Mouse, where, canvas().mapToGlobal(where));
    QApplication::sendEvent(&canvas(), &event);
    return canvas().findChild<QMenu*>("context-menu");
  };
  const auto shut = [](QMenu* menu) {
    menu->close();
    QCoreApplication::sendPostedEvents(menu, QEvent::DeferredDelete);
    QCoreApplication::processEvents();
  };
  lookClosely(Point2{24.384, 19});
  QMenu* menu = menuAt({24.384, 18.5});
  ASSERT_NE(menu, nullptr);
  EXPECT_EQ(canvas().selection(), std::set<Id>{"WW-1"});
  EXPECT_TRUE(menu->actions().contains(window->action(ActionId::CornerHere)));
  EXPECT_FALSE(menu->actions().contains(window->action(ActionId::BaffleHere)));
  window->action(ActionId::CornerHere)->trigger();
  EXPECT_EQ(run("WW-1").vertices.size(), 7u);
  shut(menu);
  settle();
  // On that corner: out with it.
  menu = menuAt({24.384, 18.5});
  EXPECT_TRUE(menu->actions().contains(window->action(ActionId::RemoveHere)));
  window->action(ActionId::RemoveHere)->trigger();
  EXPECT_EQ(run("WW-1").vertices.size(), 6u);
  shut(menu);

  lookClosely("V1");
  settle();
  menu = menuAt(placeOn("V1"));
  EXPECT_TRUE(menu->actions().contains(window->action(ActionId::BaffleHere)));
  shut(menu);
  menu = menuAt(inVault("V1", {1.3, 0.4}));
  window->action(ActionId::BaffleHere)->trigger();
  EXPECT_EQ(plan().vaults.find("V1")->baffles.size(), 2u);
  shut(menu);

  canvas().fitAll();
  menu = menuAt({3, 3});
  EXPECT_TRUE(canvas().selection().empty());
  EXPECT_TRUE(menu->actions().contains(window->action(ActionId::PasteInPlace)));
  EXPECT_FALSE(menu->actions().contains(window->action(ActionId::Delete)));
  shut(menu);
}

TEST_F(Handles, LockedThingsAndManyThingsShowNoPartsToTake) {
  canvas().select({"V1"});
  window->action(ActionId::Lock)->trigger();
  EXPECT_TRUE(handlesOf(plan(), {"V1"}, 100).empty());
  for (const Handle& h : handlesOf(plan(), HandleKind::Baffle))
    EXPECT_NE(h.object, "V1");
  const std::vector<Handle> two = handlesOf(plan(), {"V2", "ER-1"}, 100);
  ASSERT_EQ(two.size(), 1u);
  EXPECT_EQ(two[0].kind, HandleKind::Turn);
  // From far off the inside of a vault is not taken by accident.
  for (const Handle& h : handlesOf(plan(), {"V2"}, 15))
    EXPECT_EQ(h.kind, HandleKind::Turn);
}

TEST_F(Handles, EveryToolSaysWhatClickAndEscDo) {
  for (const ActionRow& row : actionTable()) {
    if (row.strip != Strip::Tools) continue;
    window->action(row.id)->trigger();
    EXPECT_TRUE(hint().contains("Esc")) << row.name << ": " << hint().toStdString();
    const bool told = hint().contains("lick") || hint().contains("rag") || hint().contains("oint");
    EXPECT_TRUE(told) << row.name;
    if (!canvas().tool().entryFields().empty()) {
      EXPECT_TRUE(hint().contains("type") || hint().contains("Type")) << row.name;
    }
  }
}

TEST_F(Handles, TheSitesCornersAndCodeAreFieldsWhenNothingIsSelected) {
  canvas().select({});
  auto* east = field<QLineEdit>("1 east");
  ASSERT_NE(east, nullptr);
  east->setFocus();
  east->selectAll();
  QTest::keyClicks(east, "-3 ft");
  QTest::keyClick(east, Qt::Key_Return);
  EXPECT_NEAR(inFeet(metres(plan().site.boundary[0].x)), -3, 1e-9);
  const FieldContext context{plan(), document().catalog(), nullptr};
  for (const Field& f : projectFields(context)) {
    if (f.label != "Code profile") continue;
    ASSERT_GT(f.choices.size(), 1);
    const FieldResult result = f.write(plan(), "1");
    ASSERT_TRUE(result.plan);
    EXPECT_EQ(result.plan->project.profile, document().catalog().profiles[0].key);
    return;
  }
  FAIL() << "no code profile among the fields";
}

// Pictures for people to look at: set SUMPWRIGHT_SCREENSHOTS to a folder.
TEST_F(Handles, Screenshots) {
  const QString into = qEnvironmentVariable("SUMPWRIGHT_SCREENSHOTS");
  if (into.isEmpty()) GTEST_SKIP() << "SUMPWRIGHT_SCREENSHOTS is not set";
  const auto shoot = [this, &into](const char* name) {
    settle();
    EXPECT_TRUE(window->grab().save(into + "/" + name + ".png"));
  };
  canvas().select({"WW-1"});
  lookClosely(Point2{23, 14});
  shoot("handles-line");
  canvas().select({"V1"});
  lookClosely("V1");
  dragFrom(inVault("V1", {0, 0.35}), inVault("V1", {-0.5, 0.35}));
  shoot("handles-baffle");
  QTest::keyClick(&canvas(), Qt::Key_Escape);
  release(inVault("V1", {-0.5, 0.35}));
  canvas().select({"ER-1"});
  lookClosely("ER-1");
  shoot("handles-room");
  window->action(ActionId::ToolBaffle)->trigger();
  lookClosely("V2");
  hover(inVault("V2", {-1, 0.3}));
  shoot("handles-baffle-tool");
  canvas().select({"WW-1"});
  window->action(ActionId::ToolParallel)->trigger();
  lookClosely(Point2{24.384, 17});
  hover({25.2, 17});
  window->setDarkDrawing(true);
  shoot("handles-parallel");
}

} // namespace sump
