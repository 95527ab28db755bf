// The program's own file dialogs, where the desktop has none: names and dates stand there in full.

#include "app/window/pseudo_language.h"
#include "app/window/talk.h"
#include "tests/app/window_fixture.h"

#include <QFileDialog>
#include <QHeaderView>
#include <QTreeView>

namespace sump {
namespace {

class FileBoxes : public testing::WindowTest, public ::testing::WithParamInterface<bool> {
protected:
  void SetUp() override {
    if (GetParam()) QCoreApplication::installTranslator(&pseudo_);
    WindowTest::SetUp();
    for (const char* name : {"transit-depot.sump", "boatyard pad at the north quay, issue 3.sump"})
      ASSERT_TRUE(QFile::copy(testing::samplePath("transit-depot.sump"), folder.filePath(name)));
  }
  void TearDown() override {
    window.reset();
    QCoreApplication::removeTranslator(&pseudo_);
  }
  /// Of its text, with the sign and the margins beside it.
  static int needsOf(const QTreeView& list, const QModelIndex& cell) {
    const int margin = list.style()->pixelMetric(QStyle::PM_FocusFrameHMargin) + 1;
    const int sign = cell.data(Qt::DecorationRole).isValid()
                         ? list.style()->pixelMetric(QStyle::PM_SmallIconSize) + 2 * margin
                         : 0;
    return list.fontMetrics().horizontalAdvance(cell.data().toString()) + sign + 2 * margin;
  }
  void expectWhole(QFileDialog* made, const char* what) {
    const std::unique_ptr<QFileDialog> box(made);
    box->setOption(QFileDialog::DontUseNativeDialog);
    box->show();
    auto* list = box->findChild<QTreeView*>("treeView");
    ASSERT_NE(list, nullptr) << what;
    QTRY_COMPARE(list->model()->rowCount(list->rootIndex()), 2);
    QTest::qWait(50); // the columns follow the files
    ASSERT_EQ(list->header()->count(), 4) << what;
    for (int c = 0; c < list->header()->count(); ++c) {
      for (int row = 0; row < 2; ++row) {
        const QModelIndex cell = list->model()->index(row, c, list->rootIndex());
        EXPECT_GE(list->columnWidth(c), needsOf(*list, cell)) << what << ", column " << c;
      }
      EXPECT_GE(list->columnWidth(c), list->header()->sectionSizeHint(c)) << what << ", head " << c;
    }
    EXPECT_LE(list->header()->length(), list->viewport()->width()) << what;
    box->close();
  }

private:
  PseudoTranslator pseudo_;
};
INSTANTIATE_TEST_SUITE_P(Languages, FileBoxes, ::testing::Bool());

TEST_P(FileBoxes, ShowNamesAndDatesInFull) {
  const QString plans = QObject::tr("Sumpwright plans (*.sump)");
  expectWhole(openBox(window.get(), QObject::tr("Open a plan"), folder.path(), plans), "open");
  expectWhole(
      saveFileBox(window.get(), QObject::tr("Save the plan"), folder.filePath("new.sump"), plans),
      "save");
}

} // namespace
} // namespace sump
