#pragma once
// Puts a new object where the user clicks; a drag from there turns it. What is placed, in which
// models, with which outline and typed values comes from a Placeable, so that one tool serves
// vaults, rooms, drains and the rest.

#include "app/canvas/tools/aim.h"

#include <functional>

namespace sump {

/// All that decides the new object.
struct Placing {
  int model = 0;
  Point2 at;
  Angle angle;
  Entry typed; ///< levels and sizes, as far as they were typed
};

struct Placeable {
  QString step;                   ///< `Place vault`
  QString hint;                   ///< what to click
  QString modelLabel;             ///< empty: nothing to choose
  std::vector<QString> models;    ///< in the order of Placing::model
  bool turns = true;              ///< has a direction
  bool levelFirst = false;        ///< the first digits typed are its level, not its place
  std::vector<EntryField> fields; ///< besides place and angle
  /// Models that take sizes of their own, which are typed.
  int ownSizesModel = -1;
  /// The object added to the plan; its id in `made`.
  std::function<Plan(const ToolHost&, const Placing&, Id& made)> make;
  /// Its outline before it is placed; empty for a point.
  std::function<Ring(const ToolHost&, const Placing&)> ghost;
};

Placeable placeableVault(const ToolHost& host);
Placeable placeableRoom(const ToolHost& host);
Placeable placeableBasin();
Placeable placeableSewer();
Placeable placeableWash();
Placeable placeableSpot();
Placeable placeableWell();

class PlaceTool : public Tool {
public:
  PlaceTool(ToolHost& host, Placeable what) : Tool(host), what_(std::move(what)) {}
  void press(const Pointer& pointer) override;
  void move(const Pointer& pointer) override;
  void release(const Pointer& pointer) override;
  bool key(int key, Qt::KeyboardModifiers modifiers) override;
  std::vector<EntryField> entryFields() const override;
  std::vector<Polyline> underWay() const override;
  void typing(const Entry& entry) override;
  bool enter(const Entry& entry, Qt::KeyboardModifiers modifiers) override;
  void cancel() override;
  bool busy() const override { return pressed_.has_value(); }
  void paint(Overlay& overlay) const override;
  QString hint() const override;
  std::vector<Choice> choices() const override;
  void choose(std::size_t choice, int item) override;

private:
  Placing placing(Point2 at) const;
  bool place(Point2 at);
  void turnTowards(const Pointer& pointer);

  Placeable what_;
  int model_ = 0;
  double angle_ = 0; ///< radians
  Entry typed_;
  Entry sizes_; ///< own sizes last typed; they stay for the next one
  Pointer pointer_;
  std::optional<Snapped> now_;
  std::optional<Point2> pressed_; ///< where the button went down
};

} // namespace sump
