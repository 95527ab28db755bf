// States, undo, the modified flag and the background review, without a window.

#include "app/window/document.h"

#include "core/exchange/plan_file.h"
#include "tests/support/places.h"

#include <QTemporaryDir>
#include <QtTest/QSignalSpy>
#include <QtTest/QTest>

#include <gtest/gtest.h>

namespace sump {

namespace {

Plan titled(const Plan& plan, const char* title) {
  Plan next = plan;
  next.project.title = title;
  return next;
}

bool settled(Document& document) {
  return QTest::qWaitFor([&document] { return !document.isReviewStale(); }, 20000);
}

} // namespace

TEST(Document, UndoAndRedoWalkTheStates) {
  Document document(builtinCatalog());
  ASSERT_FALSE(document.commit("One", titled(document.plan(), "1")));
  ASSERT_FALSE(document.commit("Two", titled(document.plan(), "2")));
  EXPECT_EQ(document.undoStep(), "Two");
  document.undo();
  EXPECT_EQ(document.plan().project.title, "1");
  EXPECT_EQ(document.redoStep(), "Two");
  document.undo();
  EXPECT_FALSE(document.canUndo());
  document.undo(); // nothing left: nothing happens
  document.redo();
  document.redo();
  EXPECT_EQ(document.plan().project.title, "2");
  document.undo();
  ASSERT_FALSE(document.commit("Other", titled(document.plan(), "3")));
  EXPECT_FALSE(document.canRedo());
}

TEST(Document, AStepThatChangesNothingIsNone) {
  Document document(builtinCatalog());
  ASSERT_FALSE(document.commit("Nothing", document.plan()));
  EXPECT_FALSE(document.canUndo());
  EXPECT_FALSE(document.isModified());
}

TEST(Document, RefusesWhatIsNoPlanAndSaysWhy) {
  Document document(builtinCatalog());
  Plan bad;
  Vault vault;
  vault.id = "V-1"; // without sizes
  bad.vaults.append(vault);
  const std::optional<Problem> problem = document.commit("Bad", bad);
  ASSERT_TRUE(problem);
  EXPECT_FALSE(problem->what.empty());
  EXPECT_TRUE(document.plan().vaults.empty());
}

TEST(Document, ModifiedFollowsTheSavedState) {
  QTemporaryDir folder;
  Document document(builtinCatalog());
  document.commit("One", titled(document.plan(), "1"));
  EXPECT_TRUE(document.isModified());
  document.save(folder.filePath("a.sump"));
  EXPECT_FALSE(document.isModified());
  document.undo();
  EXPECT_TRUE(document.isModified());
  document.redo();
  EXPECT_FALSE(document.isModified()) << "back at the very state that was saved";
  EXPECT_THROW(document.save(folder.filePath("no/where.sump")), InputError);
  EXPECT_FALSE(document.isModified());
  EXPECT_EQ(document.filePath(), folder.filePath("a.sump"));
}

TEST(Document, ReviewsCarryTheStateTheyBelongTo) {
  Document document(builtinCatalog());
  document.open(QString::fromStdString(sampleFile("transit-depot")));
  EXPECT_TRUE(document.isReviewStale());
  ASSERT_TRUE(settled(document));
  EXPECT_EQ(document.reviewed()->review.plan, document.plan());
  // Many edits in a row: the last is what is reviewed in the end.
  for (int i = 0; i < 40; ++i)
    document.commit("Edit", titled(document.plan(), std::to_string(i).c_str()));
  ASSERT_TRUE(settled(document));
  EXPECT_EQ(document.reviewed()->review.plan.project.title, "39");
  EXPECT_EQ(document.reviewed()->revision, document.revision());
}

TEST(Document, APreviewIsNoState) {
  Document document(builtinCatalog());
  const Plan before = document.plan();
  document.preview(titled(before, "seen"));
  EXPECT_EQ(document.shown().project.title, "seen");
  EXPECT_EQ(document.plan(), before);
  EXPECT_FALSE(document.isModified());
  ASSERT_TRUE(settled(document));
  EXPECT_EQ(document.reviewed()->review.plan.project.title, "seen");
  document.preview(std::nullopt);
  EXPECT_TRUE(document.isReviewStale());
  ASSERT_TRUE(settled(document));
  EXPECT_EQ(document.reviewed()->review.plan, before);
}

TEST(Document, FreshReviewNeedsNoWaiting) {
  Document document(builtinCatalog());
  document.open(QString::fromStdString(sampleFile("transit-depot")));
  document.commit("One", titled(document.plan(), "now"));
  EXPECT_EQ(document.freshReview()->review.plan.project.title, "now");
}

} // namespace sump
