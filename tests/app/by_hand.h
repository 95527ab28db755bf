#pragma once
// A window that is worked as a person works it: mouse and key events only, no call of a command,
// a setter or an edit.

#include "app/panels/basis_panel.h"
#include "tests/app/window_fixture.h"

#include <QAbstractItemView>
#include <QCheckBox>
#include <QComboBox>
#include <QDockWidget>
#include <QLineEdit>
#include <QListWidget>
#include <QMenu>
#include <QMenuBar>
#include <QPointer>
#include <QPushButton>
#include <QScrollArea>
#include <QTabBar>

namespace sump::testing {

class ByHand : public WindowTest {
protected:
  /// Lets signals and timers of no length run out, and the review of the last change arrive: panels
  /// are made anew by them, and a field that was looked up before would be gone.
  void rest() {
    QCoreApplication::processEvents();
    QTest::qWait(1);
    settle();
  }
  /// What a window manager does when a list or menu closes; this platform has none.
  void takeKeysBack() {
    window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
  }
  /// Where keys go: the entry or field in use, else the drawing.
  QWidget* keyTarget() {
    QWidget* focus = window->focusWidget();
    return focus == nullptr ? &canvas() : focus;
  }
  /// `\t` is Tab, `\n` Enter, `^` Ctrl+Enter.
  void type(const QString& text) {
    for (const QChar c : text) {
      if (c == '\t') {
        QTest::keyClick(keyTarget(), Qt::Key_Tab);
      } else if (c == '\n') {
        QTest::keyClick(keyTarget(), Qt::Key_Return);
      } else if (c == '^') {
        QTest::keyClick(keyTarget(), Qt::Key_Return, Qt::ControlModifier);
      } else {
        QTest::keyClicks(keyTarget(), QString(c));
      }
    }
    QCoreApplication::processEvents();
  }
  /// By its key where it has one, else through the menu bar.
  void command(ActionId id) {
    QAction* action = window->action(id);
    const QKeySequence key = action->shortcut();
    if (key.isEmpty()) return throughMenu(action);
    QTest::keyClick(&canvas(), key[0].key(), key[0].keyboardModifiers());
    rest();
  }
  void throughMenu(QAction* action) {
    QMenuBar* bar = window->menuBar();
    for (QAction* title : bar->actions()) {
      QMenu* menu = title->menu();
      if (menu == nullptr || !menu->actions().contains(action)) continue;
      QTest::mouseClick(bar, Qt::LeftButton, Qt::NoModifier, bar->actionGeometry(title).center());
      ASSERT_TRUE(menu->isVisible()) << title->text().toStdString();
      QTest::mouseClick(menu, Qt::LeftButton, Qt::NoModifier,
                        menu->actionGeometry(action).center());
      takeKeysBack();
      return rest();
    }
    FAIL() << action->objectName().toStdString() << " stands in no menu";
  }
  void useTool(ActionId id) {
    command(id);
    ASSERT_TRUE(window->action(id)->isChecked())
        << window->action(id)->objectName().toStdString() << " by "
        << window->action(id)->shortcut().toString().toStdString() << " while the keys are at "
        << keyTarget()->metaObject()->className() << " " << keyTarget()->objectName().toStdString()
        << ", tool " << canvas().tool().hint().toStdString();
    QTest::mouseMove(&canvas(), QPoint(5, 5)); // on the drawing, where nothing is
    rest();
  }
  /// Brings a widget of a scrolled panel into sight, as the wheel would.
  static void bringIntoSight(QWidget* widget) {
    for (QWidget* up = widget->parentWidget(); up != nullptr; up = up->parentWidget()) {
      if (auto* area = qobject_cast<QScrollArea*>(up)) area->ensureWidgetVisible(widget);
    }
    QCoreApplication::processEvents();
  }
  void clickOn(QWidget* asked) {
    const QPointer<QWidget> widget(asked);
    const std::string name = asked->accessibleName().toStdString();
    bringIntoSight(widget);
    ASSERT_FALSE(widget.isNull()) << name << " was made anew before it was clicked";
    ASSERT_TRUE(widget->isVisible()) << name;
    // A check box answers where its box is drawn.
    const bool box = qobject_cast<QCheckBox*>(widget) != nullptr;
    const QPoint at = box ? QPoint(8, widget->height() / 2) : widget->rect().center();
    QTest::mouseClick(widget, Qt::LeftButton, Qt::NoModifier, at);
  }
  /// Opens the list by a click and walks down to the item.
  void pick(QComboBox* asked, int item) {
    ASSERT_NE(asked, nullptr);
    ASSERT_GT(asked->count(), item);
    if (asked->currentIndex() == item) return;
    const QPointer<QComboBox> combo(asked);
    ASSERT_NO_FATAL_FAILURE(clickOn(combo));
    ASSERT_FALSE(combo.isNull()) << "made anew when it was clicked";
    const QPointer<QAbstractItemView> list(combo->view());
    ASSERT_TRUE(!list.isNull() && list->isVisible());
    QTest::keyClick(list.data(), Qt::Key_Home);
    for (int i = 0; i < item; ++i)
      QTest::keyClick(list.data(), Qt::Key_Down);
    ASSERT_FALSE(list.isNull()) << "the list was made anew while it was open";
    QTest::keyClick(list.data(), Qt::Key_Return);
    takeKeysBack();
    rest();
  }
  void write(QLineEdit* asked, const QString& text) {
    ASSERT_NE(asked, nullptr);
    const QPointer<QLineEdit> line(asked);
    ASSERT_NO_FATAL_FAILURE(clickOn(line));
    ASSERT_FALSE(line.isNull()) << "made anew before " << text.toStdString() << " was typed";
    QTest::keyClick(line, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(line, text);
    ASSERT_FALSE(line.isNull()) << "made anew while " << text.toStdString() << " was typed";
    QTest::keyClick(line, Qt::Key_Return);
    rest();
  }

  template <class T> T* fieldOf(const QString& label, int index) {
    for (T* editor : window->properties().widget()->findChildren<T*>()) {
      if (editor->accessibleName() == label && index-- == 0) return editor;
    }
    return nullptr;
  }
  /// The `index`th field of this name in 'What is this', in sight. The panel is made anew when its
  /// scroll bar comes or goes; then it is looked for again, as one would.
  template <class T> T* nth(const QString& label, int index) {
    constexpr int kLooks = 5;
    for (int look = 0; look < kLooks; ++look) {
      const QPointer<T> field(fieldOf<T>(label, index));
      if (field.isNull()) break;
      bringIntoSight(field);
      if (!field.isNull()) return field;
    }
    ADD_FAILURE() << "no field " << label.toStdString() << " that stays";
    return nullptr;
  }
  void set(const QString& label, const QString& text, int index = 0) {
    if (auto* line = nth<QLineEdit>(label, index)) write(line, text);
    backToDrawing();
  }
  void setChoice(const QString& label, int item, int index = 0) {
    if (auto* combo = nth<QComboBox>(label, index)) pick(combo, item);
    backToDrawing();
  }
  void tick(const QString& label, int index = 0) {
    if (auto* box = nth<QCheckBox>(label, index)) clickOn(box);
    rest();
    backToDrawing();
  }
  void press(const QString& label, int index = 0) {
    if (auto* button = nth<QPushButton>(label, index)) clickOn(button);
    rest();
    backToDrawing();
  }
  /// The wheel button pressed and let go: gives the drawing the keys and draws nothing.
  void backToDrawing() {
    QTest::mouseClick(&canvas(), Qt::MiddleButton, Qt::NoModifier, QPoint(5, 5));
    canvas().setFocus();
    rest();
  }
  /// In the strip above the drawing.
  void choose(const QString& label, int item) {
    QComboBox* found = nullptr;
    for (QComboBox* combo : window->findChild<QWidget*>("tool-strip")->findChildren<QComboBox*>()) {
      if (combo->accessibleName() == label && combo->isVisibleTo(window.get())) found = combo;
    }
    ASSERT_NE(found, nullptr) << label.toStdString();
    pick(found, item);
    backToDrawing();
  }

  /// Once: the window may do away with a tab bar when its dock comes to the front.
  void clickTabOf(const QDockWidget* dock) {
    for (QTabBar* bar : window->findChildren<QTabBar*>()) {
      for (int i = 0; i < bar->count(); ++i) {
        if (!bar->isVisible() || bar->tabText(i) != dock->windowTitle()) continue;
        return QTest::mouseClick(bar, Qt::LeftButton, Qt::NoModifier, bar->tabRect(i).center());
      }
    }
  }
  BasisPanel& basis() { return *window->findChild<BasisPanel*>("basis"); }
  /// Raises the dock by its tab, then clicks the group.
  void openGroup(int group) {
    if (!basis().isVisible()) {
      clickTabOf(window->findChild<QDockWidget*>("dock-basis"));
      rest();
    }
    ASSERT_TRUE(basis().isVisible());
    auto* list = basis().findChild<QListWidget*>("basis-groups");
    QTest::mouseClick(list->viewport(), Qt::LeftButton, Qt::NoModifier,
                      list->visualItemRect(list->item(group)).center());
    rest();
  }
  void know(const std::string& key, const QString& text) {
    auto* line = qobject_cast<QLineEdit*>(basis().editor(key));
    ASSERT_NE(line, nullptr) << key;
    write(line, text);
  }
  void knowChoice(const std::string& key, int item) {
    auto* combo = qobject_cast<QComboBox*>(basis().editor(key));
    ASSERT_NE(combo, nullptr) << key;
    pick(combo, item);
  }
  void knowTick(const std::string& key) {
    QWidget* box = basis().editor(key);
    ASSERT_NE(box, nullptr) << key;
    clickOn(box);
    rest();
  }
  /// A new row of a table, its cells from the first; empty ones are left alone.
  void addRow(const std::string& table, const QStringList& cells) {
    auto* add = basis().findChild<QPushButton*>(QString::fromStdString(table) + ".add");
    ASSERT_NE(add, nullptr) << table;
    int row = 0;
    while (basis().editor(table + "." + std::to_string(row) + ".0") != nullptr)
      ++row;
    clickOn(add);
    rest();
    for (int i = 0; i < cells.size(); ++i) {
      if (cells[i].isEmpty()) continue;
      // Once all that is needed is there, the draft is a row of the plan.
      const std::string cell = "." + std::to_string(i);
      QWidget* editor = basis().editor(table + ".new" + cell);
      if (editor == nullptr) editor = basis().editor(table + "." + std::to_string(row) + cell);
      ASSERT_NE(editor, nullptr) << table << cell;
      if (auto* line = qobject_cast<QLineEdit*>(editor)) {
        write(line, cells[i]);
      } else if (auto* combo = qobject_cast<QComboBox*>(editor)) {
        pick(combo, combo->findText(cells[i]));
      } else {
        clickOn(editor);
        rest();
      }
    }
  }
};

} // namespace sump::testing
