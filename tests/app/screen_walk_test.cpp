// The window with its docks, pages, tools and menus (tests/app/screen_walk.h).

#include "app/panels/acceptance.h"
#include "app/panels/basis_panel.h"
#include "app/panels/cost_bar.h"
#include "app/panels/findings_panel.h"
#include "core/plan/edits.h"
#include "tests/app/screen_walk.h"

#include <QContextMenuEvent>
#include <QDockWidget>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QMenu>
#include <QMenuBar>
#include <QProcess>
#include <QScrollArea>
#include <QTreeWidget>

namespace sump {
namespace {

using testing::ScreenWalk;

TEST_P(ScreenWalk, TheWindowWithEveryDock) {
  open(testing::samplePath("transit-depot.sump"));
  for (QDockWidget* dock : window->findChildren<QDockWidget*>()) {
    dock->show();
    dock->raise();
    settle();
    look("window-" + dock->objectName(), window.get());
  }
  auto* groups = window->findChild<QListWidget*>("basis-groups");
  window->findChild<QDockWidget*>("dock-basis")->raise();
  for (int i = 0; i < groups->count(); ++i) {
    groups->setCurrentRow(i);
    look(QString("known-%1").arg(i), window->findChild<BasisPanel*>());
  }
  window->action(ActionId::Find)->trigger();
  QTest::keyClicks(QApplication::focusWidget(), "vault");
  look("find", window.get());
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
  settle();
  look("find-next", window.get());
}

// With what is bought priced: the bar tells the sum, and what has no price.
TEST_P(ScreenWalk, CostsByAPriceList) {
  open(testing::samplePath("transit-depot.sump"));
  auto* dock = window->findChild<QDockWidget*>("dock-take-off");
  dock->raise();
  QFile file(folder.filePath("own.csv"));
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write("item,size,unit,price,currency\nbox-12x6-2-traffic,,each,9000,USD\n"
             "pvc-sch80,6,stick,310.50,USD\n");
  file.close();
  auto* bar = window->findChild<CostBar*>();
  bar->usePrices(file.fileName());
  auto* sum = bar->findChild<QLabel*>("cost-sum");
  QTRY_VERIFY2(sum->text().contains("19,242.00"), qPrintable(sum->text()));
  look("costs", dock);
  window->resize(1366, 740);
  settle();
  look("costs-small", window.get());
}

// A usual laptop (1366 x 768 less the desktop's bars): nothing may force the window to be larger.
TEST_P(ScreenWalk, ASmallScreen) {
  open(testing::samplePath("transit-depot.sump"));
  window->resize(1366, 740);
  settle();
  EXPECT_LE(window->width(), 1366);
  EXPECT_LE(window->height(), 740);
  for (QDockWidget* dock : window->findChildren<QDockWidget*>()) {
    dock->show();
    dock->raise();
    settle();
    look("small-" + dock->objectName(), window.get());
  }
}

TEST_P(ScreenWalk, FindingsOfAFaultyPlan) {
  open(testing::samplePath("faulty/flow-order.sump"));
  auto* table = window->findings().findChild<QTableWidget*>("findings");
  ASSERT_GT(table->rowCount(), 0);
  QTest::mouseClick(table->viewport(), Qt::LeftButton, Qt::NoModifier,
                    table->visualItemRect(table->item(0, 1)).center());
  settle();
  look("findings-chosen", window.get());
  const Finding& first = document().reviewed()->review.findings.front();
  ASSERT_FALSE(document().commit(FindingsPanel::tr("Accept"),
                                 withAcceptance(plan(), {first.key(),
                                                         "The owner digs it up again next year and "
                                                         "wants no other line there until then.",
                                                         "R. Okafor", "2026-11-02"})));
  settle();
  table->setCurrentCell(table->rowCount() - 1, 0); // accepted ones come last
  look("findings-accepted", window.get());
}

TEST_P(ScreenWalk, WhatIsTypedWrongly) {
  open(testing::samplePath("transit-depot.sump"));
  canvas().select({"V1"});
  QCoreApplication::processEvents();
  for (QLineEdit* line : window->properties().findChildren<QLineEdit*>()) {
    if (line->text() != "12'-0\"") continue;
    line->setFocus();
    line->selectAll();
    QTest::keyClicks(line, "twelve");
    QTest::keyClick(line, Qt::Key_Return);
    break;
  }
  look("wrong-property", &window->properties());
  window->action(ActionId::ToolVault)->trigger();
  QTest::mouseMove(&canvas(), canvas().rect().center());
  QTest::keyClicks(&canvas(), "1 yard");
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
  look("wrong-entry", window->centralWidget());
}

TEST_P(ScreenWalk, EveryContextMenu) {
  open(testing::samplePath("transit-depot.sump"));
  canvas().lookAt({"V1", "V2", "ER-1"}, std::nullopt);
  settle();
  for (const char* id : {"V1", "ER-1", "WW-1", "PV-YARD"}) {
    const QPoint where = pixel(placeOn(id));
    QContextMenuEvent event(QContextMenuEvent::Mouse, where, canvas().mapToGlobal(where));
    QApplication::sendEvent(&canvas(), &event);
    auto* menu = canvas().findChild<QMenu*>("context-menu");
    ASSERT_NE(menu, nullptr) << id;
    look(QString("context-") + id, menu);
    menu->close();
    QCoreApplication::sendPostedEvents(menu, QEvent::DeferredDelete);
    QCoreApplication::processEvents();
  }
}

TEST_P(ScreenWalk, EveryPageOfCalculations) {
  open(testing::samplePath("transit-depot.sump"));
  auto* dock = window->findChild<QDockWidget*>("dock-calculations");
  dock->raise();
  window->resizeDocks({dock}, {480}, Qt::Vertical);
  auto* tree = dock->findChild<QTreeWidget*>();
  ASSERT_NE(tree, nullptr);
  ASSERT_GT(tree->topLevelItemCount(), 3);
  for (int i = 0; i < tree->topLevelItemCount(); ++i) {
    QTreeWidgetItem* section = tree->topLevelItem(i);
    tree->setCurrentItem(section);
    look(QString("works-%1").arg(i), dock);
    if (section->childCount() == 0) continue;
    tree->setCurrentItem(section->child(0));
    look(QString("works-%1-first").arg(i), dock);
  }
}

TEST_P(ScreenWalk, LongSectionOfEachLine) {
  open(testing::samplePath("transit-depot.sump"));
  window->action(ActionId::LongSection)->trigger();
  settle();
  for (const char* id : {"WW-1", "OF-1", "SU-1", "RC-1", "PC-1"}) {
    canvas().select({id});
    settle();
    look(QString("section-") + id, window->findChild<QDockWidget*>("dock-section"));
  }
  canvas().select({});
  settle();
  look("section-train", window->findChild<QDockWidget*>("dock-section"));
}

TEST_P(ScreenWalk, EmptyPlanAndStartPage) {
  look("empty", window.get());
  open(testing::samplePath("transit-depot.sump"));
  window->showStart();
  look("start", window.get());
}

TEST_P(ScreenWalk, PropertiesOfEveryKind) {
  open(testing::samplePath("transit-depot.sump"));
  Underlay picture;
  picture.id = "PIC-1";
  picture.name = "Site survey";
  picture.file = "survey.png";
  picture.width = picture.height = metres(20);
  ASSERT_FALSE(document().commit("Picture", withObject(plan(), picture)));
  settle();
  QScrollArea& panel = window->properties();
  lookInside("properties-project", &panel);
  for (const char* id : {"B-BAY", "PV-YARD", "U-WATER", "E-1", "W-1", "TD-1", "SW-1", "WA-1",
                         "ER-1", "V1", "PIC-1"}) {
    canvas().select({id});
    lookInside(QString("properties-") + id, &panel);
  }
  for (const sump::Run& run : plan().runs) {
    canvas().select({run.id});
    lookInside("properties-" + QString::fromStdString(run.id), &panel);
  }
  canvas().select({"V1", "V2"});
  lookInside("properties-two", &panel);
}

TEST_P(ScreenWalk, EveryToolAndItsEntry) {
  open(testing::samplePath("transit-depot.sump"));
  for (const ActionRow& row : actionTable()) {
    if (row.strip != Strip::Tools) continue;
    window->action(row.id)->trigger();
    QTest::mouseMove(&canvas(), canvas().rect().center());
    QTest::keyClick(&canvas(), Qt::Key_1);
    look(QString("tool-") + row.name, window->centralWidget());
    QTest::keyClick(&canvas(), Qt::Key_Escape);
  }
}

TEST_P(ScreenWalk, EveryMenu) {
  for (QMenu* menu : window->menuBar()->findChildren<QMenu*>()) {
    menu->popup(QPoint(0, 0));
    // One column, with the first and the last in sight: nothing to be scrolled to.
    EXPECT_EQ(menu->size(), menu->sizeHint()) << menu->title().toStdString();
    for (QAction* action : menu->actions()) {
      EXPECT_TRUE(!action->isVisible() || menu->rect().contains(menu->actionGeometry(action)))
          << action->text().toStdString();
    }
    look("menu-" + menu->title().remove('&').left(9).simplified().replace(' ', '-'), menu);
    menu->hide();
  }
}

INSTANTIATE_TEST_SUITE_P(Looks, ScreenWalk, testing::everyLook(), testing::lookName);

// The scale of a screen can only be chosen before the application starts.
TEST(ScreenWalkTwice, TheSameAtTwiceTheScale) {
  QProcess again;
  QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
  environment.insert("QT_SCALE_FACTOR", "2");
  again.setProcessEnvironment(environment);
  again.start(QCoreApplication::applicationFilePath(),
              {"--gtest_filter=*/ScreenWalk.*:*/GestureWalk.*"});
  ASSERT_TRUE(again.waitForFinished(800000));
  EXPECT_EQ(again.exitCode(), 0) << again.readAllStandardOutput().right(6000).toStdString();
}

} // namespace
} // namespace sump
