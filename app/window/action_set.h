#pragma once
// QActions, menus and tool bars made from the table of actions.

#include "app/actions.h"

#include <QAction>
#include <QActionGroup>

#include <functional>
#include <map>

class QMainWindow;
class QMenu;

namespace sump {

class ActionSet : public QObject {
  Q_OBJECT

public:
  explicit ActionSet(QMainWindow* window);
  QAction* at(ActionId id) const { return actions_.at(id); }
  QMenu* menu(MenuId id) const { return menus_.at(id); }
  void on(ActionId id, std::function<void()> work);
  /// Takes the keys from the table and the user's settings.
  void applyKeys();
  /// Redraws icons in the colours of the window's palette.
  void drawIcons();

private:
  void makeActions();
  void makeMenus();
  void makeStrips();

  QMainWindow* window_;
  std::map<ActionId, QAction*> actions_;
  std::map<MenuId, QMenu*> menus_;
  QActionGroup* tools_ = nullptr;
};

} // namespace sump
