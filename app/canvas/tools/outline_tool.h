#pragma once
// Draws outlines and paths corner by corner: property line, buildings, paving, existing lines. What
// becomes of the corners comes from an Outlined, so that one tool serves them all.

#include "app/canvas/tools/aim.h"

#include <functional>

namespace sump {

struct Outlined {
  QString step; ///< `Draw building`
  QString name; ///< of what is drawn, in hints: `the building`
  bool closed = true;
  QString kindLabel; ///< empty: nothing to choose
  QStringList kinds;
  /// The plan with the outline; the new object's id in `made`, empty for the property line.
  std::function<Plan(const ToolHost&, int kind, const std::vector<Point2>& corners, Id& made)> make;
};

Outlined outlinedBoundary();
Outlined outlinedBuilding();
Outlined outlinedPavement();
Outlined outlinedUtility();

class OutlineTool : public Tool {
public:
  OutlineTool(ToolHost& host, Outlined what) : Tool(host), what_(std::move(what)) {}
  void press(const Pointer& pointer) override;
  void move(const Pointer& pointer) override;
  void doubleClick(const Pointer& pointer) override;
  bool key(int key, Qt::KeyboardModifiers modifiers) override;
  std::vector<EntryField> entryFields() const override;
  std::vector<Polyline> underWay() const override;
  void typing(const Entry& entry) override;
  bool enter(const Entry& entry, Qt::KeyboardModifiers modifiers) override;
  void cancel() override;
  bool busy() const override { return !corners_.empty(); }
  void paint(Overlay& overlay) const override;
  QString hint() const override;
  std::vector<Choice> choices() const override;
  void choose(std::size_t choice, int item) override;

private:
  std::size_t least() const { return what_.closed ? 3 : 2; }
  bool asRectangle(Qt::KeyboardModifiers modifiers) const;
  AimFrom from() const;
  Snapped aimed(const Pointer& pointer) const;
  void take(Point2 at, bool rectangle);
  bool closesAt(Point2 at) const;
  void finish();

  Outlined what_;
  int kind_ = 0;
  bool rectangles_ = false;
  std::vector<Point2> corners_;
  Entry typed_;
  Pointer pointer_;
  std::optional<Snapped> now_;
};

} // namespace sump
