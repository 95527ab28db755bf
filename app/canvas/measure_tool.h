#pragma once
// A measuring tape: two places, and what lies between them. Changes nothing.

#include "app/canvas/place_catch.h"

namespace sump {

/// Distance, east and north parts, bearing from true north, and the ground's rise where known.
QStringList measured(const Plan& plan, const Surface* ground, Point2 from, Point2 to);

class MeasureTool : public Tool {
public:
  using Tool::Tool;
  void move(const Pointer& pointer) override;
  void release(const Pointer& pointer) override;
  bool key(int key, Qt::KeyboardModifiers modifiers) override;
  std::vector<Polyline> underWay() const override;
  void cancel() override;
  bool busy() const override { return from_ && !to_; }
  void paint(Overlay& overlay) const override;
  QString hint() const override;

private:
  QStringList lines() const;
  std::optional<Point2> last() const;

  std::optional<PlaceCatch> hover_;
  std::optional<PlaceCatch> from_;
  std::optional<PlaceCatch> to_; ///< fixed
};

} // namespace sump
