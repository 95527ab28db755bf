// What is too wide for its place goes on in further lines instead of being cut or scrolled
// sideways.

#include "app/panels/basis_panel.h"
#include "app/panels/review_table.h"
#include "app/panels/wrapped_edit.h"
#include "tests/app/window_fixture.h"

#include <QDockWidget>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QScrollArea>
#include <QScrollBar>

namespace sump {
namespace {

using testing::samplePath;

class Room : public testing::WindowTest {
protected:
  BasisPanel& basis(int group, int width) {
    auto* panel = window->findChild<BasisPanel*>();
    window->findChild<QDockWidget*>("dock-basis")->raise();
    panel->findChild<QListWidget*>("basis-groups")->setCurrentRow(group);
    resize(*panel, width);
    return *panel;
  }
  /// Out of its dock, which would be as wide as the window lets it.
  void resize(QWidget& widget, int width) {
    widget.setParent(nullptr);
    widget.resize(width, 600);
    widget.show();
    QCoreApplication::processEvents();
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    QCoreApplication::processEvents();
    moved_.emplace_back(&widget);
  }
  void TearDown() override {
    for (const QPointer<QWidget>& widget : moved_)
      delete widget.data();
    window.reset();
  }
  static bool scrollsSideways(const QAbstractScrollArea& area) {
    return area.horizontalScrollBar()->maximum() > area.horizontalScrollBar()->minimum();
  }

private:
  std::vector<QPointer<QWidget>> moved_;
};

TEST_F(Room, TablesOfTheFormStandAsFormsWhereTheyAreTooWide) {
  open(samplePath("transit-depot.sump"));
  BasisPanel& panel = basis(5, 1200);
  const auto* area = panel.findChild<QScrollArea*>();
  const auto below = [&panel](const std::string& a, const std::string& b) {
    return panel.editor(b)->y() > panel.editor(a)->geometry().bottom();
  };
  EXPECT_FALSE(below("wiring.supplies.0.0", "wiring.supplies.0.5")) << "a table";
  panel.resize(560, 600);
  QCoreApplication::processEvents();
  EXPECT_FALSE(scrollsSideways(*area));
  EXPECT_TRUE(below("wiring.supplies.0.0", "wiring.supplies.0.5")) << "one below the other";
  auto* volts = qobject_cast<QLineEdit*>(panel.editor("wiring.supplies.0.2"));
  ASSERT_NE(volts, nullptr);
  volts->setFocus();
  volts->selectAll();
  QTest::keyClicks(volts, "575");
  QTest::keyClick(volts, Qt::Key_Return);
  QCoreApplication::processEvents();
  EXPECT_EQ(plan().basis.wiring.supplies[0].volts, 575);
  panel.resize(1200, 600);
  QCoreApplication::processEvents();
  EXPECT_FALSE(below("wiring.supplies.0.0", "wiring.supplies.0.5")) << "a table again";
}

TEST_F(Room, LongFiguresWrapAndEnterTakesThem) {
  open(samplePath("transit-depot.sump"));
  BasisPanel& panel = basis(4, 700);
  auto* ladders = qobject_cast<WrappedEdit*>(panel.editor("earth.ladders"));
  ASSERT_NE(ladders, nullptr);
  EXPECT_GT(ladders->blockCount() == 1 ? ladders->document()->lineCount() : 1, 1);
  EXPECT_FALSE(ladders->verticalScrollBar()->isVisible());
  const int lines = ladders->document()->lineCount();
  EXPECT_GE(ladders->viewport()->height(), lines * ladders->fontMetrics().lineSpacing())
      << "all of it is in sight";
  ladders->setFocus();
  ladders->selectAll();
  QTest::keyClicks(ladders, "60 ft, 53 ft; 75 ft, 53 ft; 49 ft, 57 ft; 16 ft, 42 ft; 80 ft, 62 ft; "
                            "64 ft, 62 ft; 70 ft, 63 ft; 61 ft, 64 ft");
  QTest::keyClick(ladders, Qt::Key_Return);
  QCoreApplication::processEvents();
  ASSERT_EQ(plan().basis.earth.ladders.size(), 8u);
  EXPECT_NEAR(inFeet(metres(plan().basis.earth.ladders[1].x)), 75, 1e-9);
  EXPECT_EQ(document().undoStep(), "Change ladders at");
  // A short text has a field of one line again.
  auto* again = qobject_cast<WrappedEdit*>(panel.editor("earth.ladders"));
  ASSERT_NE(again, nullptr);
  again->setFocus();
  again->selectAll();
  QTest::keyClicks(again, "60 ft, 53 ft");
  QTest::keyClick(again, Qt::Key_Tab);
  QCoreApplication::processEvents();
  EXPECT_EQ(plan().basis.earth.ladders.size(), 1u);
  EXPECT_NE(qobject_cast<QLineEdit*>(panel.editor("earth.ladders")), nullptr);
}

TEST_F(Room, TheDatumIsSeenWhole) {
  open(samplePath("transit-depot.sump"));
  auto* datum = field<WrappedEdit>("Datum");
  ASSERT_NE(datum, nullptr);
  EXPECT_EQ(datum->toPlainText().toStdString(), plan().site.datum);
  EXPECT_GE(datum->viewport()->height(),
            datum->document()->lineCount() * datum->fontMetrics().lineSpacing());
}

TEST_F(Room, TheTakeOffFoldsColumnsWhereItIsTooNarrow) {
  open(samplePath("transit-depot.sump"));
  window->findChild<QDockWidget*>("dock-take-off")->raise();
  settle();
  auto* table = window->findChild<ReviewTable*>("take-off");
  ASSERT_GT(table->rowCount(), 3);
  const int from = table->columnCount() - 1, item = 1;
  EXPECT_FALSE(table->isColumnHidden(from));
  const QString line = table->item(0, from)->text();
  resize(*table, 520);
  EXPECT_FALSE(scrollsSideways(*table));
  ASSERT_TRUE(table->isColumnHidden(from));
  EXPECT_TRUE(table->item(0, item)->text().endsWith("\nComes from: " + line));
  const QRect text =
      table->fontMetrics().boundingRect(QRect(0, 0, table->columnWidth(item), QWIDGETSIZE_MAX),
                                        Qt::TextWordWrap, table->item(0, item)->text());
  EXPECT_GE(table->rowHeight(0), text.height());
  table->resize(1300, 600);
  QCoreApplication::processEvents();
  EXPECT_FALSE(table->isColumnHidden(from));
  EXPECT_FALSE(table->item(0, item)->text().contains('\n'));
}

} // namespace
} // namespace sump
