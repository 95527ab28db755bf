#pragma once
// Puts a new object where the user clicks. What is placed, in which models and with which outline
// comes from a Placeable, so that one tool serves vaults, rooms, basins and the rest.

#include "app/canvas/tools/tool.h"

#include <functional>

namespace sump {

struct Placeable {
  QString step;                ///< `Place vault`
  QString hint;                ///< what to click
  QString modelLabel;          ///< empty: nothing to choose
  std::vector<QString> models; ///< in the order of `make`'s index
  bool turns = true;           ///< has a direction
  /// The object added to the plan; its id in `made`.
  std::function<Plan(const ToolHost&, int model, Point2 at, Angle angle, Id& made)> make;
  /// Its outline before it is placed; empty for a point.
  std::function<Ring(const ToolHost&, int model, Point2 at, Angle angle)> ghost;
};

Placeable placeableVault(const ToolHost& host);
Placeable placeableRoom(const ToolHost& host);
Placeable placeableBasin();
Placeable placeableSewer();
Placeable placeableWash();
Placeable placeableSpot();

class PlaceTool : public Tool {
public:
  PlaceTool(ToolHost& host, Placeable what) : Tool(host), what_(std::move(what)) {}
  void move(const Pointer& pointer) override;
  void release(const Pointer& pointer) override;
  bool key(int key, Qt::KeyboardModifiers modifiers) override;
  void cancel() override;
  void paint(QPainter& painter, const CanvasTheme& theme) const override;
  QString hint() const override { return what_.hint; }
  std::vector<Choice> choices() const override;
  void choose(std::size_t choice, int item) override;

private:
  Angle angle() const { return degrees(90.0 * quarter_); }

  Placeable what_;
  int model_ = 0;
  int quarter_ = 0;
  std::optional<Point2> at_;
};

} // namespace sump
