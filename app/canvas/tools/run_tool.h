#pragma once
// Draws a run click by click in the direction of flow. The first click is its start; a click that
// takes hold of something, a double click or Enter ends it. Corners can be typed with their
// inverts.

#include "app/canvas/tools/aim_end.h"

namespace sump {

class RunTool : public Tool {
public:
  explicit RunTool(ToolHost& host);
  void press(const Pointer& pointer) override;
  void move(const Pointer& pointer) override;
  void doubleClick(const Pointer& pointer) override;
  bool key(int key, Qt::KeyboardModifiers modifiers) override;
  std::vector<EntryField> entryFields() const override;
  std::vector<Polyline> underWay() const override;
  void typing(const Entry& entry) override;
  bool enter(const Entry& entry, Qt::KeyboardModifiers modifiers) override;
  void cancel() override;
  bool busy() const override { return start_.has_value(); }
  void paint(Overlay& overlay) const override;
  QString hint() const override;
  std::vector<Choice> choices() const override;
  void choose(std::size_t choice, int item) override;

private:
  EndAim foundAt(const Pointer& pointer) const;
  AimFrom from() const;
  Point2 lastPoint() const { return corners_.empty() ? start_->at : corners_.back().at; }
  void take(const Catch& found, bool corner);
  void takeBack();
  void finish(const Catch& end);
  void finishAtLastCorner();
  void setService(Service service);
  const PipeProduct* pipe() const;

  Service service_ = Service::Inlet;
  std::string pipeKey_;
  std::string size_;
  std::optional<Catch> start_;
  std::vector<Vertex> corners_;
  Entry typed_;
  Pointer pointer_;
  std::optional<EndAim> now_; ///< under the pointer
};

} // namespace sump
