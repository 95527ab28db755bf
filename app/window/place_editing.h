#pragma once
// Commands that act at a place: where the context menu was opened, else where the pointer is. Also
// the context menu itself, and the commands on selected lines.

#include "app/canvas/canvas.h"
#include "app/canvas/tools/insert_tool.h"
#include "app/window/action_set.h"
#include "app/window/document.h"

#include <QObject>

namespace sump {

class PlaceEditing : public QObject {
  Q_OBJECT

public:
  PlaceEditing(Document& document, Canvas& canvas, ActionSet& actions);

  /// A menu fitted to what lies there, which is selected first.
  void openMenu(const QPoint& globalPosition);

signals:
  void told(const QString& sentence);
  /// There is no place: the tool of the same name is wanted instead.
  void toolWanted(ActionId tool);

private:
  /// Where the menu was opened, or the pointer; nothing while that is not over the drawing.
  std::optional<Point2> place() const;
  /// The corner, baffle, manway or part there.
  std::optional<Handle> partAt(Point2 place) const;
  Id objectAt(Point2 place) const;
  void cornerHere();
  void removeHere();
  /// Without a place `tool` is wanted, where there is one of that name.
  void insertHere(const Insertable& what, std::optional<ActionId> tool = std::nullopt);
  void joinLines();
  void reverseLines();
  std::vector<Id> selectedLines() const;
  void commit(const QString& step, Plan plan);

  Document& document_;
  Canvas& canvas_;
  ActionSet& actions_;
  std::optional<Point2> menuPlace_; ///< while its menu is open
};

} // namespace sump
