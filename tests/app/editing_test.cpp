// Cut, paste, turn, lock, measure and dimension in a real window; 10,000 edits and back.

#include "app/canvas/live_dimensions.h"
#include "app/canvas/measure_tool.h"
#include "app/panels/field.h"
#include "app/window/find_bar.h"
#include "app/window/picture_desk.h"
#include "tests/app/window_fixture.h"

#include "core/exchange/plan_file.h"
#include "core/plan/edits.h"
#include "core/plan/edits_group.h"
#include "core/plan/edits_objects.h"
#include "tests/support/random_plan.h"

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

namespace sump {

using testing::samplePath;

class EditingWindow : public testing::WindowTest {};

TEST_F(EditingWindow, CutAndPasteKeepTheObjectAndUndoNamesTheSteps) {
  open(samplePath("transit-depot.sump"));
  const Plan before = plan();
  canvas().select({"V1"});
  window->action(ActionId::Cut)->trigger();
  EXPECT_EQ(plan().vaults.find("V1"), nullptr);
  EXPECT_EQ(document().undoStep(), "Cut");
  window->action(ActionId::Paste)->trigger();
  ASSERT_NE(plan().vaults.find("V1"), nullptr) << "its id was free again";
  EXPECT_EQ(plan().vaults.find("V1")->baffles, before.vaults.find("V1")->baffles);
  EXPECT_EQ(document().undoStep(), "Paste");
  EXPECT_EQ(canvas().selection(), std::set<Id>{"V1"});
  document().undo();
  document().undo();
  EXPECT_EQ(plan(), before);
}

TEST_F(EditingWindow, FourQuarterTurnsComeRoundAndLockedThingsStay) {
  open(samplePath("transit-depot.sump"));
  const Point2 before = plan().vaults.find("V2")->centre;
  canvas().select({"V1", "V2"});
  window->action(ActionId::TurnLeft)->trigger();
  EXPECT_GT(distance(plan().vaults.find("V2")->centre, before), 0.5);
  for (int i = 0; i < 3; ++i)
    window->action(ActionId::TurnLeft)->trigger();
  EXPECT_NEAR(distance(plan().vaults.find("V2")->centre, before), 0, 1e-9);
  window->action(ActionId::Lock)->trigger();
  const Plan locked = plan();
  window->action(ActionId::TurnLeft)->trigger();
  EXPECT_EQ(plan(), locked);
}

TEST_F(EditingWindow, ADimensionIsPlacedByThreeClicksAndFollows) {
  open(samplePath("transit-depot.sump"));
  window->action(ActionId::ToolNote)->trigger();
  // On free ground, so that none of them catches on something.
  click({40, 1.5});
  click({44, 1.5});
  click({42, 3.5});
  ASSERT_EQ(plan().notes.size(), 2u) << "beside the one that the depot has";
  EXPECT_EQ(document().undoStep(), "Place dimension");
  EXPECT_NEAR(inMetres(plan().notes[1].offset), 2, 0.5);
  window->action(ActionId::Delete)->trigger();
  EXPECT_EQ(plan().notes.size(), 1u);
}

TEST_F(EditingWindow, OneFieldChangesAllThatAreSelected) {
  open(samplePath("transit-depot.sump"));
  canvas().select({"V1", "V2"});
  auto* wall = field<QLineEdit>("Wall");
  ASSERT_NE(wall, nullptr);
  wall->setFocus();
  wall->selectAll();
  QTest::keyClicks(wall, "3\" + 2*1\"");
  QTest::keyClick(wall, Qt::Key_Return);
  for (const Vault& v : plan().vaults)
    EXPECT_NEAR(inInches(v.wall), 5, 1e-9) << v.id;
}

TEST_F(EditingWindow, APictureIsPlacedScaledSavedAndReopened) {
  open(samplePath("transit-depot.sump"));
  const QString file = folder.filePath("site.png");
  QImage image(200, 100, QImage::Format_RGB32);
  image.fill(Qt::green);
  ASSERT_TRUE(image.save(file));
  window->pictures().askFile = [file] { return file; };
  window->pictures().askDistance = [](const QString&, const QString& error) {
    return error.isEmpty() ? QString("ten") : QString("2*5 m"); // the first is not understood
  };
  window->action(ActionId::PictureIn)->trigger();
  ASSERT_EQ(plan().underlays.size(), 1u);
  const Underlay before = plan().underlays[0];
  EXPECT_NEAR((before.width / before.height).value(), 2, 1e-9);
  const Point2 corner = before.at + Point2{1, -1}, other = corner + Point2{5, 0};
  click(corner);
  click(other);
  EXPECT_EQ(document().undoStep(), "Scale site picture");
  EXPECT_NEAR((plan().underlays[0].width / before.width).value(), 2, 0.1);
  talk.saveFile = folder.filePath("with-picture.sump");
  window->action(ActionId::SaveAs)->trigger();
  const Underlay saved = plan().underlays[0];
  open(talk.saveFile);
  ASSERT_EQ(plan().underlays.size(), 1u);
  EXPECT_EQ(plan().underlays[0].data, saved.data);
  EXPECT_NEAR(inMetres(plan().underlays[0].width), inMetres(saved.width), 1e-9);
  // Beside: named from where the plan lies.
  window->action(ActionId::PictureBeside)->trigger();
  EXPECT_EQ(plan().underlays.back().file, "site.png");
  EXPECT_TRUE(talk.told.isEmpty());
}

TEST(SitePicture, TellsWhatCannotBeUsed) {
  EXPECT_TRUE(checkPicture("no picture", "a.txt").error.contains("a.txt"));
  EXPECT_TRUE(checkPicture("\x89PNG\r\n\x1a\nrest", "b.png").error.contains("damaged"));
  EXPECT_TRUE(checkPicture(QByteArray(kLargestPicture + 1, 'x'), "c.png").error.contains("30 MB"));
  EXPECT_FALSE(readPicture("/no/such/file.png").error.isEmpty());
  const PictureFile svg =
      checkPicture("<svg xmlns='http://www.w3.org/2000/svg' width='30' height='20'/>", "d.svg");
  EXPECT_EQ(svg.media, "image/svg+xml");
  EXPECT_EQ(svg.shape, QSizeF(30, 20));
}

TEST_F(EditingWindow, HiddenThingsAreNotPickedAndFindLooksAtWhatItFinds) {
  open(samplePath("transit-depot.sump"));
  const Point2 on = placeOn("V1");
  Shown shown;
  shown.set("kind/vault", false);
  canvas().setShown(shown);
  click(on);
  EXPECT_FALSE(canvas().selection().contains("V1"));
  canvas().setShown(Shown());
  window->action(ActionId::Find)->trigger();
  auto* line = window->findChild<QLineEdit*>("find-text");
  ASSERT_NE(line, nullptr);
  QTest::keyClicks(line, "su-1");
  QTest::keyClick(line, Qt::Key_Return);
  EXPECT_EQ(canvas().selection(), std::set<Id>{"SU-1"});
}

TEST_F(EditingWindow, FindWalksForwardAndBackAndIsShutByEsc) {
  open(samplePath("transit-depot.sump"));
  window->action(ActionId::Find)->trigger();
  auto* bar = window->findChild<QWidget*>("find-bar");
  auto* line = window->findChild<QLineEdit*>("find-text");
  auto* count = window->findChild<QLabel*>("find-count");
  auto* next = window->findChild<QPushButton*>("find-next");
  auto* previous = window->findChild<QPushButton*>("find-previous");
  ASSERT_TRUE(bar->isVisible());
  EXPECT_FALSE(next->isEnabled()) << "nothing is looked for";
  QTest::keyClicks(line, "vault");
  const std::vector<Id> found = findObjects(plan(), "vault");
  ASSERT_GE(found.size(), 3u);
  const auto of = [&found](std::size_t which) {
    return QString("%1 of %2").arg(which).arg(found.size());
  };
  EXPECT_EQ(count->text(), QString("%1 found").arg(found.size()));
  QTest::mouseClick(next, Qt::LeftButton);
  EXPECT_EQ(count->text(), of(1));
  EXPECT_EQ(canvas().selection(), std::set<Id>{found[0]});
  QTest::keyClick(line, Qt::Key_Return);
  EXPECT_EQ(count->text(), of(2));
  EXPECT_EQ(canvas().selection(), std::set<Id>{found[1]});
  QTest::mouseClick(previous, Qt::LeftButton);
  EXPECT_EQ(canvas().selection(), std::set<Id>{found[0]});
  QTest::keyClick(line, Qt::Key_F3, Qt::ShiftModifier);
  EXPECT_EQ(count->text(), of(found.size())) << "round from the first to the last";
  EXPECT_EQ(canvas().selection(), std::set<Id>{found.back()});
  QTest::keyClick(line, Qt::Key_F3);
  EXPECT_EQ(count->text(), of(1));
  line->selectAll();
  QTest::keyClicks(line, "none of this name");
  EXPECT_EQ(count->text(), "0 found");
  EXPECT_FALSE(next->isEnabled());
  QTest::keyClick(next, Qt::Key_Escape);
  EXPECT_FALSE(bar->isVisible());
  window->action(ActionId::Find)->trigger();
  QTest::mouseClick(window->findChild<QPushButton*>("find-close"), Qt::LeftButton);
  EXPECT_FALSE(bar->isVisible());
}

TEST(Bearings, AreToldAndTypedFromTheNorthThatTheArrowShows) {
  Plan plan;
  EXPECT_EQ(bearingText({0, 0}, {1, 0}, plan), "E true");
  EXPECT_EQ(bearingText({0, 0}, {-1, 0}, plan), "W true");
  // True north turned 10 degrees counter-clockwise: straight up is 10 degrees east of it.
  plan.site.north = degrees(10);
  EXPECT_EQ(bearingText({0, 0}, {0, 1}, plan), "N 10.0° E true");
  EXPECT_TRUE(measured(plan, nullptr, {0, 0}, {0, 1}).contains("Bearing N 10.0° E true"));
  // What is told can be typed.
  const Parsed<double> read = parseEntry(EntryUnit::Bearing, "N 10.0 E", UnitSystem::Metric);
  ASSERT_TRUE(read);
  const TypedPoint typed =
      typedPoint({{EntryKey::Length, 5}, {EntryKey::Bearing, *read.value}}, plan.site.north);
  const auto at = placeOf(typed, Point2{2, 3}, {9, 9});
  ASSERT_TRUE(at);
  EXPECT_NEAR(at->x, 2, 1e-9);
  EXPECT_NEAR(at->y, 8, 1e-9);
}

// 10,000 edits at random through the document; back to the start and forward again, byte for byte.
TEST(ManyEdits, UndoGivesTheFirstPlanAndRedoTheLast) {
  std::mt19937 rng(11);
  const auto real = [&rng](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(rng);
  };
  Document document(builtinCatalog());
  document.startNew(test::randomPlan(rng));
  const std::string first = writePlanText(document.plan());
  const auto one = [&] {
    const std::vector<Id> ids = allObjects(document.plan());
    return ids[std::uniform_int_distribution<std::size_t>(0, ids.size() - 1)(rng)];
  };
  int steps = 0;
  for (int i = 0; steps < 10'000; ++i) {
    ASSERT_LT(i, 100'000);
    const Plan& plan = document.plan();
    Plan next;
    switch (i % 5) {
    case 0:
      next = moveObjects(plan, {one(), one()}, {real(-1, 1), real(-1, 1)});
      break;
    case 1:
      next = rotateObjects(plan, {one()}, {0, 0}, degrees(real(-9, 9)));
      break;
    case 2:
      next = mirrorObjects(plan, {one()}, {0, 0}, {1, 1});
      break;
    case 3:
      next = lockObjects(plan, {one()}, i % 2 == 0);
      break;
    default:
      next = moveVertex(plan, one(), 0, {real(-9, 9), real(-9, 9)});
    }
    if (next == plan) continue;
    ++steps;
    const auto problem = document.commit("Edit", std::move(next));
    ASSERT_FALSE(problem) << i << ": " << problem->pointer << " " << problem->what;
  }
  const std::string last = writePlanText(document.plan());
  EXPECT_NE(first, last);
  int undone = 0;
  for (; document.canUndo(); ++undone)
    document.undo();
  EXPECT_EQ(undone, 10'000);
  EXPECT_EQ(writePlanText(document.plan()), first);
  while (document.canRedo())
    document.redo();
  EXPECT_EQ(writePlanText(document.plan()), last);
}

} // namespace sump
