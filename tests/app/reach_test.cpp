// Every field and button of every panel and dialog has a name that a screen reader can say, is
// reached by Tab, and shows that it has the keys.

#include "app/panels/acceptance.h"
#include "app/panels/basis_panel.h"
#include "app/window/day_dialog.h"
#include "app/window/glossary.h"
#include "app/window/guided_dialog.h"
#include "app/window/help_dialogs.h"
#include "app/window/recovery_dialog.h"
#include "app/window/settings_dialog.h"
#include "tests/app/window_fixture.h"

#include <QAccessible>
#include <QAccessibleInterface>
#include <QDockWidget>
#include <QLineEdit>
#include <QListWidget>
#include <QMessageBox>
#include <QScrollArea>

namespace sump {
namespace {

bool isInput(const QWidget* widget) {
  return widget->isVisible() && widget->isEnabled() && (widget->focusPolicy() & Qt::TabFocus) != 0;
}

std::string nameOf(const QWidget* widget) {
  return std::string(widget->metaObject()->className()) + " " + widget->objectName().toStdString() +
         " " + widget->accessibleName().toStdString();
}

class Reach : public testing::WindowTest {
protected:
  static QList<QWidget*> inputsOf(QWidget* top) {
    QList<QWidget*> inputs;
    for (QWidget* widget : top->findChildren<QWidget*>()) {
      // A scrolled area that holds fields is walked by way of its fields.
      const auto* area = qobject_cast<const QScrollArea*>(widget);
      // What hands its keys on is reached by way of that.
      if (isInput(widget) && area == nullptr && widget->focusProxy() == nullptr) inputs << widget;
    }
    return inputs;
  }

  void expectNames(const QList<QWidget*>& inputs, const std::string& where) {
    for (QWidget* input : inputs) {
      QAccessibleInterface* said = QAccessible::queryAccessibleInterface(input);
      ASSERT_NE(said, nullptr) << where << ": " << nameOf(input);
      EXPECT_FALSE(said->text(QAccessible::Name).trimmed().isEmpty())
          << where << ": " << nameOf(input) << " has no name";
    }
  }

  /// Tab from the first input must come past each of them.
  void expectTab(QWidget* shown, const std::string& where) {
    QCoreApplication::processEvents();
    QList<QWidget*> left = inputsOf(shown);
    ASSERT_FALSE(left.empty()) << where;
    expectNames(left, where);
    QWidget* top = shown->window();
    left.front()->setFocus(Qt::TabFocusReason);
    const qsizetype most = 3 * top->findChildren<QWidget*>().size();
    for (qsizetype i = 0; i < most && !left.empty(); ++i) {
      QWidget* now = top->focusWidget();
      if (now == nullptr) break;
      left.removeAll(now);
      QTest::keyClick(now, Qt::Key_Tab);
    }
    for (QWidget* missed : left)
      ADD_FAILURE() << where << ": Tab does not reach " << nameOf(missed);
  }
  void expectTabIn(QDialog* dialog, const std::string& where) {
    const std::unique_ptr<QDialog> owned(dialog);
    dialog->setAttribute(Qt::WA_DeleteOnClose, false);
    dialog->show();
    dialog->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(dialog)) << where;
    expectTab(dialog, where);
    dialog->close();
  }
};

TEST_F(Reach, EveryDock) {
  open(testing::samplePath("transit-depot.sump"));
  for (QDockWidget* dock : window->findChildren<QDockWidget*>()) {
    dock->show();
    dock->raise();
    settle();
    if (isInput(dock->widget())) expectNames({dock->widget()}, dock->objectName().toStdString());
    if (!inputsOf(dock->widget()).empty())
      expectTab(dock->widget(), dock->objectName().toStdString());
  }
  auto* basis = window->findChild<BasisPanel*>();
  window->findChild<QDockWidget*>("dock-basis")->raise();
  auto* groups = basis->findChild<QListWidget*>("basis-groups");
  for (int i = 0; i < groups->count(); ++i) {
    groups->setCurrentRow(i);
    expectTab(basis, "What we know, group " + std::to_string(i));
  }
}

TEST_F(Reach, PropertiesOfEveryKind) {
  open(testing::samplePath("transit-depot.sump"));
  for (const char* id : {"B-BAY", "PV-YARD", "U-WATER", "E-1", "W-1", "TD-1", "SW-1", "WA-1",
                         "ER-1", "V1", "RC-1"}) {
    canvas().select({id});
    expectTab(&window->properties(), id);
  }
}

TEST_F(Reach, StartPage) {
  window->showStart();
  expectTab(window->centralWidget(), "start page");
}

TEST_F(Reach, EveryDialog) {
  open(testing::samplePath("transit-depot.sump"));
  expectTabIn(new GuidedDialog(window.get()), "guided plan");
  expectTabIn(new SettingsDialog(*window->findChild<ActionSet*>(), "kept", window.get()),
              "settings");
  expectTabIn(keysDialog(window.get()), "keys");
  expectTabIn(guideDialog(window.get()), "guide");
  expectTabIn(glossaryDialog(window.get()), "glossary");
  expectTabIn(aboutDialog(window.get()), "about");
  expectTabIn(new AcceptanceDialog("A finding", "A name", window.get()), "accept");
  expectTabIn(saveBox(window.get(), "plan.sump"), "save?");
  expectTabIn(changedBox(window.get(), "plan.sump", true), "changed");
  expectTabIn(new DayDialog("Day", "Begins on:", QDate(2026, 12, 1), window.get()), "day");
  expectTabIn(heldBox(window.get(), "plan.sump", "a window"), "held");
  std::vector<Leftover> found(2);
  found[0].head.title = "Wash bay";
  found[1].problem = "cut off";
  expectTabIn(new RecoveryDialog(found, window.get()), "recovery");
}

// A widget with the keys must look otherwise than without them.
TEST_F(Reach, FocusShows) {
  open(testing::samplePath("transit-depot.sump"));
  for (const bool dark : {false, true}) {
    window->setDarkWindow(dark);
    canvas().select({"RC-1"});
    QCoreApplication::processEvents();
    QSet<QString> kinds;
    for (QWidget* input : inputsOf(&window->properties())) {
      const QString kind = input->metaObject()->className();
      if (kinds.contains(kind)) continue;
      kinds << kind;
      window->properties().ensureWidgetVisible(input);
      canvas().setFocus();
      QCoreApplication::processEvents();
      const QImage without = input->grab().toImage();
      input->setFocus(Qt::TabFocusReason);
      QCoreApplication::processEvents();
      if (auto* line = qobject_cast<QLineEdit*>(input)) line->deselect();
      EXPECT_NE(without, input->grab().toImage()) << kind.toStdString() << (dark ? ", dark" : "");
    }
    EXPECT_GE(kinds.size(), 4) << "fields, choices, boxes and buttons";
  }
}

} // namespace
} // namespace sump
