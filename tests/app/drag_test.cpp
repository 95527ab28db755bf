// What is shown while and after the plan changes: lists that are worked out aside, reviews that
// come too late, and the parts of the drawing that a drag paints anew.

#include "tests/app/window_fixture.h"

#include "app/canvas/backdrop.h"
#include "app/panels/lists.h"
#include "app/panels/review_table.h"
#include "app/window/side_work.h"
#include "core/exchange/plan_file.h"
#include "core/plan/edits_objects.h"
#include "core/plan/edits_vaults.h"

#include <QDockWidget>

#include <atomic>
#include <map>

namespace sump {

using testing::samplePath;

namespace {

Plan draggedDepot() {
  return readPlanFile(samplePath("transit-depot.sump").toStdString());
}

Plan titledAnew(const Plan& plan, const char* title) {
  Plan next = plan;
  next.project.title = title;
  return next;
}

bool isSettled(Document& document) {
  return QTest::qWaitFor([&document] { return document.isSettled(); }, 20000);
}

/// Titles of the plans in the order in which their reviews were shown.
struct ShownTitles {
  explicit ShownTitles(Document& document) {
    QObject::connect(&document, &Document::reviewArrived, &document, [this, &document] {
      titles.push_back(document.reviewed()->review.plan.project.title);
    });
  }
  /// Nothing else is shown, however long one waits.
  void isOnly(const std::string& title) const {
    QTest::qWait(400);
    EXPECT_FALSE(titles.empty());
    for (const std::string& seen : titles)
      EXPECT_EQ(seen, title);
  }
  std::vector<std::string> titles;
};

} // namespace

class Drag : public testing::WindowTest {
protected:
  void toFront(const char* dock) {
    auto* found = window->findChild<QDockWidget*>(dock);
    found->show();
    found->raise();
    settle();
  }
  ReviewTable& list(const char* name, const char* dock) {
    toFront(dock);
    return *window->findChild<ReviewTable*>(name);
  }
  ReviewTable& toBuy() { return list("take-off", "dock-take-off"); }
  Plan moved(const Id& id, Point2 by) { return moveObjects(plan(), {id}, by); }
  QImage drawn() {
    QCoreApplication::processEvents();
    return canvas().grab().toImage();
  }
};

TEST(LateReview, OfAStateThatWasUndoneIsNeverShown) {
  Document document(builtinCatalog());
  document.startNew(titledAnew(draggedDepot(), "first"));
  ASSERT_TRUE(isSettled(document));
  ShownTitles shown(document);
  document.commit("Second", titledAnew(document.plan(), "second"));
  QThread::msleep(300); // its review is done and waits in this thread's queue
  document.undo();
  shown.isOnly("first");
  EXPECT_EQ(document.reviewed()->revision, document.revision());
}

TEST(LateReview, OfAFileThatWasLeftIsNeverShown) {
  Document document(builtinCatalog());
  document.startNew(titledAnew(draggedDepot(), "old file"));
  QThread::msleep(300);
  ShownTitles shown(document);
  document.startNew(titledAnew(draggedDepot(), "new file"));
  ASSERT_TRUE(isSettled(document));
  EXPECT_EQ(shown.titles, std::vector<std::string>{"new file"});
}

TEST(LateReview, OfAPreviewThatWasGivenUpIsNeverShown) {
  Document document(builtinCatalog());
  document.startNew(titledAnew(draggedDepot(), "kept"));
  ASSERT_TRUE(isSettled(document));
  ShownTitles shown(document);
  document.preview(titledAnew(document.plan(), "given up"));
  QThread::msleep(300);
  document.preview(std::nullopt);
  shown.isOnly("kept");
}

TEST(LateReview, OfAnEarlierStepOfADragIsShownAsStale) {
  Document document(builtinCatalog());
  document.startNew(titledAnew(draggedDepot(), "0"));
  ASSERT_TRUE(isSettled(document));
  document.preview(titledAnew(document.plan(), "1"));
  QThread::msleep(300);
  bool stale = false;
  QObject::connect(&document, &Document::reviewArrived, &document, [&] {
    if (document.reviewed()->review.plan.project.title == "1") stale = document.isReviewStale();
  });
  document.preview(titledAnew(document.plan(), "2"));
  ASSERT_TRUE(isSettled(document));
  EXPECT_TRUE(stale) << "the first step was shown before the second, and not as the newest";
  EXPECT_EQ(document.reviewed()->review.plan.project.title, "2");
}

TEST(LateReview, DoesNotReplaceOneThatWasMadeAtOnce) {
  Document document(builtinCatalog());
  document.startNew(titledAnew(draggedDepot(), "a"));
  ASSERT_TRUE(isSettled(document));
  document.commit("Edit", titledAnew(document.plan(), "b"));
  ShownTitles shown(document);
  EXPECT_EQ(document.freshReview()->review.plan.project.title, "b");
  shown.isOnly("b");
}

TEST(SideWork, AnswersTheNewestQuestionOfEachOwnerAndNoDeadOnes) {
  SideWork work;
  QObject first;
  auto second = std::make_unique<QObject>();
  std::atomic<bool> go = false;
  std::vector<int> got;
  const auto ask = [&](QObject* owner, int what, bool wait) {
    work.ask(owner, [&got, &go, what, wait]() -> SideWork::Delivery {
      while (wait && !go)
        QThread::msleep(1);
      return [&got, what] { got.push_back(what); };
    });
  };
  ask(&first, 1, true);
  QThread::msleep(50); // begun
  ask(&first, 2, false);
  ask(&first, 3, false);
  ask(second.get(), 4, false);
  second.reset();
  EXPECT_TRUE(work.isBusy());
  go = true;
  ASSERT_TRUE(QTest::qWaitFor([&work] { return !work.isBusy(); }, 5000));
  EXPECT_EQ(got, (std::vector<int>{1, 3}));
}

TEST_F(Drag, WhatToBuyFollowsTheLastPlan) {
  open(samplePath("transit-depot.sump"));
  ReviewTable& table = toBuy();
  EXPECT_EQ(table.rows(), takeOffRows(document().reviewed()->review));
  for (int step = 1; step <= 5; ++step)
    document().commit("Move", moved("V2", {0.5 * step, 0.2}));
  settle();
  const ReviewedPtr last = reviewNow(plan(), 1, builtinCatalog());
  EXPECT_EQ(table.rows(), takeOffRows(last->review));
  EXPECT_EQ(table.shownRevision(), document().revision());
  EXPECT_EQ(table.rowCount(), static_cast<int>(table.rows().size()));
  for (int r = 0; r < table.rowCount(); ++r) {
    for (int c = 0; c < table.columnCount(); ++c)
      EXPECT_EQ(table.item(r, c)->text(), table.rows()[static_cast<std::size_t>(r)].cells[c]);
  }
}

TEST_F(Drag, LevelsFollowTheLastPlan) {
  open(samplePath("transit-depot.sump"));
  ReviewTable& lines = list("run-levels", "dock-levels");
  document().commit("Move", moved("V2", {1, 0}));
  settle();
  const ReviewedPtr last = reviewNow(plan(), 1, builtinCatalog());
  EXPECT_EQ(lines.rows(), runLevelRows(last->review));
  EXPECT_EQ(window->findChild<ReviewTable*>("vault-levels")->rows(), vaultLevelRows(last->review));
}

TEST_F(Drag, AListThatIsBehindItsPlanSaysSo) {
  open(samplePath("transit-depot.sump"));
  ReviewTable& table = toBuy();
  EXPECT_FALSE(table.isOld());
  // As long as a large plan's list: the rows cannot follow while the other thread is held.
  std::atomic<bool> go = false;
  QObject other;
  document().sideWork().ask(&other, [&go]() -> SideWork::Delivery {
    while (!go)
      QThread::msleep(1);
    return {};
  });
  document().commit("Move", moved("V2", {1, 0}));
  EXPECT_TRUE(QTest::qWaitFor([&table] { return table.isOld(); }, 5000));
  EXPECT_FALSE(table.accessibleDescription().isEmpty());
  go = true;
  settle();
  EXPECT_FALSE(table.isOld());
  EXPECT_TRUE(table.accessibleDescription().isEmpty());
}

TEST_F(Drag, AListBehindAnotherTabIsMadeWhenItComesToTheFront) {
  open(samplePath("transit-depot.sump"));
  ReviewTable& table = toBuy();
  toFront("dock-findings");
  EXPECT_FALSE(isInFront(table));
  const Revision before = table.shownRevision();
  document().commit("Move", moved("V2", {1, 0}));
  settle();
  EXPECT_EQ(table.shownRevision(), before) << "nobody sees it";
  toBuy();
  EXPECT_TRUE(isInFront(table));
  EXPECT_EQ(table.shownRevision(), document().revision());
}

TEST_F(Drag, PaintsAnewWhatChangedAndNothingElse) {
  open(samplePath("transit-depot.sump"));
  canvas().select({});
  const QImage start = drawn();
  const Plan other = moved("V2", {0.75, 0.25});
  document().commit("Move", other);
  settle();
  const QImage parts = drawn();
  EXPECT_NE(parts, start);
  canvas().setDark(false); // all of it
  EXPECT_EQ(drawn(), parts);
  document().undo();
  settle();
  EXPECT_EQ(drawn(), start);
}

TEST_F(Drag, TellsWhereTwoDrawingsDiffer) {
  const Plan plan = draggedDepot();
  const Scene before(reviewNow(plan, 1, builtinCatalog()));
  const Scene same(reviewNow(plan, 2, builtinCatalog()));
  ASSERT_TRUE(changesBetween(before, same));
  EXPECT_TRUE(changesBetween(before, same)->boxes.empty());
  EXPECT_TRUE(changesBetween(before, same)->objects.empty());
  const Id well = "W-test";
  Plan more = plan;
  more.wells.append({well, "", {1, 1}});
  const Scene after(reviewNow(more, 3, builtinCatalog()));
  const auto changes = changesBetween(before, after);
  ASSERT_TRUE(changes);
  EXPECT_FALSE(changes->boxes.empty());
  for (const Box& box : changes->boxes)
    EXPECT_LT(distance(lerp(box.low, box.high, 0.5), Point2{1, 1}), 2) << "the well and no more";
  EXPECT_EQ(changes->objects, std::set<Id>{well});
  EXPECT_EQ(changesBetween(after, before)->boxes.size(), changes->boxes.size());
}

// What has nothing to do with the vault keeps its name where it is; let go, all names stand as if
// they were placed for the first time.
TEST_F(Drag, KeepsNamesWhereTheyAre) {
  open(samplePath("transit-depot.sump"));
  canvas().select({"V1"}); // what is told of it takes its room before the drag
  settle();
  const auto names = [this] {
    canvas().repaint();
    std::map<Id, QPointF> places;
    for (const Label& label : canvas().drawn().names)
      places[label.object] = label.centre;
    return places;
  };
  const std::map<Id, QPointF> before = names();
  const Point2 at = placeOn("V1"), to = at + Point2{4, -3};
  dragFrom(at, to);
  settle();
  const std::map<Id, QPointF> during = names();
  for (const char* far : {"B-BAY", "PV-YARD", "U-WATER", "E-1"}) {
    if (!before.contains(far)) continue;
    ASSERT_TRUE(during.contains(far)) << far;
    EXPECT_EQ(during.at(far), before.at(far)) << far;
  }
  ASSERT_TRUE(before.contains("V1"));
  EXPECT_TRUE(!during.contains("V1") || during.at("V1") != before.at("V1"));
  release(to);
  settle();
  const std::map<Id, QPointF> after = names();
  canvas().setDark(false); // all anew
  EXPECT_EQ(names(), after);
}

} // namespace sump
