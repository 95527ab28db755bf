#pragma once
// Scales a site picture: two places on it, then their distance, which the user is asked for.

#include "app/canvas/place_catch.h"

#include <functional>

namespace sump {

class UnderlayTool : public Tool {
public:
  /// `ask` gets the distance as it is now; nothing: the user gave up.
  using Ask = std::function<std::optional<Length>(Length now)>;
  UnderlayTool(ToolHost& host, Id picture, Ask ask)
      : Tool(host), picture_(std::move(picture)), ask_(std::move(ask)) {}
  void move(const Pointer& pointer) override;
  void release(const Pointer& pointer) override;
  bool key(int key, Qt::KeyboardModifiers modifiers) override;
  void cancel() override;
  bool busy() const override { return first_.has_value(); }
  void paint(Overlay& overlay) const override;
  QString hint() const override;

private:
  Id picture_;
  Ask ask_;
  std::optional<Point2> first_;
  std::optional<Point2> hover_;
};

} // namespace sump
