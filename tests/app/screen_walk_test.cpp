// A walk through every panel, dialog, menu and page of the window, light and dark, in English and
// in the pseudo-language whose texts are two fifths longer, at 1x and 2x. Each place is checked for
// texts that are cut off and widgets that lie over each other, and with SUMPWRIGHT_SCREENSHOTS set
// to a folder a picture of each is left there for people to look at.

#include "app/panels/acceptance.h"
#include "app/panels/basis_panel.h"
#include "app/window/day_dialog.h"
#include "app/window/glossary.h"
#include "app/window/guided_dialog.h"
#include "app/window/help_dialogs.h"
#include "app/window/pseudo_language.h"
#include "app/window/recovery_dialog.h"
#include "app/window/settings_dialog.h"
#include "app/window/upkeep_table_dialog.h"
#include "core/plan/edits.h"
#include "tests/app/fit_check.h"
#include "tests/app/window_fixture.h"

#include <QDockWidget>
#include <QInputDialog>
#include <QLayout>
#include <QListWidget>
#include <QMenu>
#include <QMenuBar>
#include <QMessageBox>
#include <QProcess>
#include <QScrollArea>

namespace sump {
namespace {

struct Look {
  bool pseudo = false;
  bool dark = false;
  QString name() const {
    return QString("%1-%2-%3x")
        .arg(pseudo ? "pseudo" : "english", dark ? "dark" : "light")
        .arg(qApp->devicePixelRatio());
  }
};

class ScreenWalk : public testing::WindowTest, public ::testing::WithParamInterface<Look> {
protected:
  void SetUp() override {
    if (GetParam().pseudo) QCoreApplication::installTranslator(&pseudo_);
    WindowTest::SetUp();
    if (HasFatalFailure()) return;
    window->resize(1500, 950);
    window->setDarkWindow(GetParam().dark);
    window->setDarkDrawing(GetParam().dark);
  }
  void TearDown() override {
    window.reset();
    QCoreApplication::removeTranslator(&pseudo_);
  }

  /// Checks the widget as it stands and takes its picture.
  void look(const QString& name, QWidget* widget) {
    QCoreApplication::processEvents();
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete); // as the main loop would
    QCoreApplication::processEvents();
    for (const QString& problem : testing::FitCheck::of(widget))
      ADD_FAILURE() << GetParam().name().toStdString() << ", " << name.toStdString() << ": "
                    << problem.toStdString();
    const QString folder = qEnvironmentVariable("SUMPWRIGHT_SCREENSHOTS");
    if (folder.isEmpty()) return;
    EXPECT_TRUE(widget->grab().save(QString("%1/%2--%3.png").arg(folder, name, GetParam().name())));
  }
  void lookAtDialog(const QString& name, QDialog* dialog) {
    const std::unique_ptr<QDialog> owned(dialog);
    dialog->setAttribute(Qt::WA_DeleteOnClose, false);
    dialog->show();
    // This platform's screen has 800 dots, 400 at 2x: dialogs get the room that any desk has.
    QSize room = dialog->size().expandedTo(dialog->layout()->totalSizeHint());
    if (dialog->layout()->hasHeightForWidth())
      room.setHeight(std::max(room.height(), dialog->layout()->totalHeightForWidth(room.width())));
    dialog->setFixedSize(room); // message boxes keep the size that they chose
    look(name, dialog);
    dialog->close();
  }
  /// The whole of a scrolled panel, however little of it shows.
  void lookInside(const QString& name, QScrollArea* area) {
    QCoreApplication::processEvents();
    look(name, area);
    look(name + "-whole", area->widget());
  }

private:
  PseudoTranslator pseudo_;
};

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
  look("find", window.get());
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
  for (QAction* title : window->menuBar()->actions()) {
    QMenu* menu = title->menu();
    if (menu == nullptr) continue;
    menu->popup(QPoint(0, 0));
    look("menu-" + title->text().remove('&').left(4), menu);
    menu->hide();
  }
}

TEST_P(ScreenWalk, EveryDialog) {
  open(testing::samplePath("transit-depot.sump"));
  lookAtDialog("guided", new GuidedDialog(window.get()));
  lookAtDialog("settings", new SettingsDialog(*window->findChild<ActionSet*>(),
                                              window->recovery().state(), window.get()));
  lookAtDialog("keys", keysDialog(window.get()));
  lookAtDialog("guide", guideDialog(window.get()));
  lookAtDialog("glossary", glossaryDialog(window.get()));
  lookAtDialog("about", aboutDialog(window.get()));
  lookAtDialog("accept",
               new AcceptanceDialog("The cover over this line is less than the frost depth.",
                                    "R. Okafor", window.get()));
  lookAtDialog("ask-save", saveBox(window.get(), "transit-depot.sump"));
  lookAtDialog("ask-changed", changedBox(window.get(), "transit-depot.sump", true));
  lookAtDialog("ask-day", new DayDialog("Day of start-up", "The upkeep calendar begins on:",
                                        QDate(2026, 12, 1), window.get()));
  Talk talk;
  lookAtDialog("upkeep-table", new UpkeepTableDialog(talk, window.get()));
  lookAtDialog("ask-held",
               heldBox(window.get(), "transit-depot.sump", "a window of anna on desk-4"));
  std::vector<Leftover> found(3);
  found[0].head = {"Bus wash water reclaim", "/home/anna/plans/transit-depot.sump",
                   QDateTime(QDate(2026, 11, 2), QTime(9, 30))};
  found[1].head = {"New plan", "", QDateTime(QDate(2026, 11, 1), QTime(17, 5))};
  found[2].problem = "cut off";
  lookAtDialog("recovery", new RecoveryDialog(found, window.get()));
}

INSTANTIATE_TEST_SUITE_P(Looks, ScreenWalk,
                         ::testing::Values(Look{false, false}, Look{false, true}, Look{true, false},
                                           Look{true, true}),
                         [](const auto& info) {
                           return std::string(info.param.pseudo ? "Pseudo" : "English") +
                                  (info.param.dark ? "Dark" : "Light");
                         });

// The scale of a screen can only be chosen before the application starts.
TEST(ScreenWalkTwice, TheSameAtTwiceTheScale) {
  QProcess again;
  QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
  environment.insert("QT_SCALE_FACTOR", "2");
  again.setProcessEnvironment(environment);
  again.start(QCoreApplication::applicationFilePath(), {"--gtest_filter=*/ScreenWalk.*"});
  ASSERT_TRUE(again.waitForFinished(800000));
  EXPECT_EQ(again.exitCode(), 0) << again.readAllStandardOutput().right(6000).toStdString();
}

} // namespace
} // namespace sump
