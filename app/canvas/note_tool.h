#pragma once
// Places a lasting dimension: two places, then how far off its line stands. Both places at one
// point make a lettered note.

#include "app/canvas/place_catch.h"

namespace sump {

class NoteTool : public Tool {
public:
  using Tool::Tool;
  void move(const Pointer& pointer) override;
  void release(const Pointer& pointer) override;
  bool key(int key, Qt::KeyboardModifiers modifiers) override;
  std::vector<Polyline> underWay() const override;
  void cancel() override;
  bool busy() const override { return from_.has_value(); }
  void paint(Overlay& overlay) const override;
  QString hint() const override;

private:
  bool lettered() const;
  /// The note as it would be with the pointer here.
  DimensionNote note(Point2 pointer) const;
  void place(Point2 pointer);

  std::optional<PlaceCatch> hover_;
  std::optional<PlaceCatch> from_;
  std::optional<PlaceCatch> to_;
  Point2 pointer_;
};

} // namespace sump
