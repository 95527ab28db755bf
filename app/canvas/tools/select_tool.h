#pragma once
// Points at objects: a click takes one, Shift adds or takes away, a drag on empty ground draws a
// box. A drag that starts on an object is handed to MoveTool.

#include "app/canvas/tools/move_tool.h"

namespace sump {

class SelectTool : public Tool {
public:
  explicit SelectTool(ToolHost& host) : Tool(host), mover_(host) {}
  void press(const Pointer& pointer) override;
  void move(const Pointer& pointer) override;
  void release(const Pointer& pointer) override;
  bool key(int key, Qt::KeyboardModifiers modifiers) override;
  void cancel() override;
  bool busy() const override { return boxing_ || mover_.busy(); }
  void paint(QPainter& painter, const CanvasTheme& theme) const override;
  QString hint() const override;
  bool nudges() const override { return true; }
  QCursor cursor() const override { return Qt::ArrowCursor; }

private:
  void toggle(const Id& id);
  void finishBox(const Pointer& pointer);

  MoveTool mover_;
  bool moving_ = false;
  bool pressedEmpty_ = false;
  bool boxing_ = false;
  Pointer start_;
  Pointer now_;
};

} // namespace sump
