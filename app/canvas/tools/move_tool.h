#pragma once
// Drags the selection. The plan is previewed while it moves; the release commits one step.

#include "app/canvas/tools/aim.h"

namespace sump {

class MoveTool : public Tool {
public:
  using Tool::Tool;
  void press(const Pointer& pointer) override;
  void move(const Pointer& pointer) override;
  void release(const Pointer& pointer) override;
  bool key(int key, Qt::KeyboardModifiers modifiers) override;
  void cancel() override;
  bool busy() const override { return dragging_; }
  void paint(Overlay& overlay) const override;
  QString hint() const override;
  bool nudges() const override { return true; }
  QCursor cursor() const override { return Qt::SizeAllCursor; }

private:
  void begin(const Pointer& pointer);
  void show(Point2 by);

  bool pressed_ = false;
  bool dragging_ = false; ///< moved further than a click may
  Pointer start_;
  Point2 by_;
  Plan shown_;                ///< as the drag would leave it; of meaning while it runs
  std::set<Id> moved_;        ///< what is selected and not locked
  std::vector<Point2> grips_; ///< corners and centres by which it catches
  Snapped caught_;
};

} // namespace sump
