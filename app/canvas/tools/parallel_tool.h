#pragma once
// Lays a line beside another at a spacing that the pointer or typing gives.

#include "app/canvas/tools/insert_tool.h"

namespace sump {

class ParallelTool : public Tool {
public:
  explicit ParallelTool(ToolHost& host);
  void press(const Pointer& pointer) override;
  void move(const Pointer& pointer) override;
  bool key(int key, Qt::KeyboardModifiers modifiers) override;
  std::vector<EntryField> entryFields() const override;
  std::vector<Polyline> underWay() const override;
  void typing(const Entry& entry) override;
  bool enter(const Entry& entry, Qt::KeyboardModifiers modifiers) override;
  void cancel() override;
  bool busy() const override { return !source_.empty(); }
  void paint(Overlay& overlay) const override;
  QString hint() const override;

private:
  /// From the line to the place beside it that is nearest to the pointer.
  std::optional<std::pair<Point2, Point2>> across() const;
  std::optional<Polyline> line() const;
  /// Metres to the left of the line; on the pointer's side when typed.
  double spacing() const;
  bool lay();

  Id source_; ///< the line beside which another is laid; empty: none yet
  Entry typed_;
  Pointer pointer_;
};

} // namespace sump
