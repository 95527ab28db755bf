#pragma once
// Turns what is selected about its middle: by a drag from anywhere, or by a typed angle.

#include "app/canvas/tools/pull.h"

namespace sump {

class TurnTool : public Tool {
public:
  using Tool::Tool;
  void press(const Pointer& pointer) override;
  void move(const Pointer& pointer) override;
  void release(const Pointer& pointer) override;
  bool key(int key, Qt::KeyboardModifiers modifiers) override;
  std::vector<EntryField> entryFields() const override;
  void typing(const Entry& entry) override;
  bool enter(const Entry& entry, Qt::KeyboardModifiers modifiers) override;
  void cancel() override;
  bool busy() const override { return pull_.has_value(); }
  void paint(Overlay& overlay) const override;
  QString hint() const override;

private:
  /// False, with the reason told, when nothing can be turned.
  bool any() const;
  void pull(const Pointer& now, const Entry& typed);
  bool commit();

  bool pressed_ = false;
  Pointer start_;
  std::optional<Pull> pull_;
};

} // namespace sump
