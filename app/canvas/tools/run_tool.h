#pragma once
// Draws a run click by click in the direction of flow. The first click is its start; a click that
// takes hold of something, a double click or Enter ends it.

#include "app/canvas/tools/catch_end.h"
#include "app/canvas/tools/tool.h"

namespace sump {

class RunTool : public Tool {
public:
  explicit RunTool(ToolHost& host);
  void press(const Pointer& pointer) override;
  void move(const Pointer& pointer) override;
  void doubleClick(const Pointer& pointer) override;
  bool key(int key, Qt::KeyboardModifiers modifiers) override;
  void cancel() override;
  bool busy() const override { return start_.has_value(); }
  void paint(QPainter& painter, const CanvasTheme& theme) const override;
  QString hint() const override;
  std::vector<Choice> choices() const override;
  void choose(std::size_t choice, int item) override;

private:
  Catch caughtAt(const Pointer& pointer) const;
  Point2 lastPoint() const { return corners_.empty() ? start_->at : corners_.back(); }
  void takeBack();
  void finish(const Catch& end);
  void setService(Service service);
  const PipeProduct* pipe() const;

  Service service_ = Service::Inlet;
  std::string pipeKey_;
  std::string size_;
  std::optional<Catch> start_;
  std::vector<Point2> corners_;
  std::optional<Catch> now_; ///< under the pointer
};

/// `p` put on the nearest of the eight directions from `from` that standard bends make.
Point2 onEighth(Point2 from, Point2 p);

} // namespace sump
