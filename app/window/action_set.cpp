#include "app/window/action_set.h"

#include "app/window/appearance.h"
#include "app/window/menu_letters.h"

#include <QGuiApplication>
#include <QMainWindow>
#include <QMenu>
#include <QMenuBar>
#include <QToolBar>
#include <QToolButton>

namespace sump {

namespace {

QString actionText(const char* source) {
  return QCoreApplication::translate("Actions", source);
}

/// The tip with the key behind it, as tool tips show it.
QString tipWithKey(const ActionRow& row) {
  const QList<QKeySequence> keys = keysOf(row);
  const QString tip = actionText(row.tip);
  return keys.isEmpty()
             ? tip
             : QString("%1 (%2)").arg(tip, keys.first().toString(QKeySequence::NativeText));
}

QToolBar* makeStrip(QMainWindow* window, const QString& title, const char* name,
                    Qt::ToolBarArea area, Qt::ToolButtonStyle style) {
  auto* bar = new QToolBar(title, window);
  bar->setObjectName(name);
  bar->setIconSize(QSize(24, 24));
  bar->setToolButtonStyle(style);
  bar->setMovable(false);
  window->addToolBar(area, bar);
  return bar;
}

} // namespace

ActionSet::ActionSet(QMainWindow* window) : QObject(window), window_(window) {
  tools_ = new QActionGroup(this);
  makeActions();
  makeMenus();
  makeStrips();
  drawIcons();
}

void ActionSet::on(ActionId id, std::function<void()> work) {
  connect(at(id), &QAction::triggered, this, [work] { work(); });
}

void ActionSet::makeActions() {
  for (const ActionRow& row : actionTable()) {
    auto* action = new QAction(actionText(row.text), this);
    action->setObjectName(row.name);
    action->setStatusTip(actionText(row.tip));
    action->setCheckable(row.checkable);
    if (row.strip == Strip::Tools) tools_->addAction(action);
    actions_[row.id] = action;
  }
  applyKeys();
}

void ActionSet::applyKeys() {
  for (const ActionRow& row : actionTable()) {
    at(row.id)->setShortcuts(keysOf(row));
    at(row.id)->setToolTip(tipWithKey(row));
  }
}

void ActionSet::makeMenus() {
  for (const ActionRow& row : actionTable()) {
    QMenu*& menu = menus_[row.menu];
    if (menu == nullptr) {
      menu = window_->menuBar()->addMenu(actionText(menuTitle(row.menu)));
      connect(menu, &QMenu::aboutToShow, menu, [menu] { giveLetters(*menu); });
    }
    menu->addAction(at(row.id));
    if (row.separatorAfter) menu->addSeparator();
  }
}

void ActionSet::makeStrips() {
  QToolBar* top = makeStrip(window_, tr("Files and view"), "top-strip", Qt::TopToolBarArea,
                            Qt::ToolButtonIconOnly);
  QToolBar* tools = makeStrip(window_, tr("Tools"), "tools-strip", Qt::LeftToolBarArea,
                              Qt::ToolButtonTextBesideIcon);
  tools->setIconSize(QSize(20, 20));
  for (const ActionRow& row : actionTable()) {
    if (row.strip == Strip::None) continue;
    QToolBar* bar = row.strip == Strip::Top ? top : tools;
    bar->addAction(at(row.id));
    if (row.separatorAfter) bar->addSeparator();
  }
}

void ActionSet::drawIcons() {
  for (const ActionRow& row : actionTable())
    at(row.id)->setIcon(themedIcon(row.icon, QGuiApplication::palette()));
  // All tools as wide as the widest, so that their names stand in line.
  const QList<QToolButton*> buttons =
      window_->findChild<QToolBar*>("tools-strip")->findChildren<QToolButton*>();
  int widest = 0;
  for (QToolButton* button : buttons) {
    button->setMinimumWidth(0);
    button->ensurePolished();
    if (!button->text().isEmpty()) widest = std::max(widest, button->sizeHint().width());
  }
  for (QToolButton* button : buttons) {
    if (!button->text().isEmpty()) button->setMinimumWidth(widest);
  }
}

} // namespace sump
