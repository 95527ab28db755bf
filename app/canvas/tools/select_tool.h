#pragma once
// Points at objects: a click takes one, Shift adds or takes away, a drag on empty ground draws a
// box. A drag that starts on an object is handed to MoveTool, one that starts on a handle of what
// is selected to HandleDrag.

#include "app/canvas/tools/handle_drag.h"
#include "app/canvas/tools/move_tool.h"

namespace sump {

class SelectTool : public Tool {
public:
  explicit SelectTool(ToolHost& host) : Tool(host), mover_(host), handle_(host) {}
  void press(const Pointer& pointer) override;
  void move(const Pointer& pointer) override;
  void release(const Pointer& pointer) override;
  /// Puts a corner into the leg under the pointer.
  void doubleClick(const Pointer& pointer) override;
  bool key(int key, Qt::KeyboardModifiers modifiers) override;
  bool claims(int key) const override { return handle_.claims(key) || Tool::claims(key); }
  std::vector<EntryField> entryFields() const override { return handle_.entryFields(); }
  std::vector<Polyline> underWay() const override { return handle_.underWay(); }
  void typing(const Entry& entry) override { handle_.typing(entry); }
  bool enter(const Entry& entry, Qt::KeyboardModifiers modifiers) override;
  void cancel() override;
  bool busy() const override { return boxing_ || mover_.busy() || handle_.dragging(); }
  void paint(Overlay& overlay) const override;
  QString hint() const override;
  bool nudges() const override { return true; }
  QCursor cursor() const override { return Qt::ArrowCursor; }

private:
  std::vector<Handle> handles() const;
  /// Lights up what the pointer could take hold of.
  void lookRound(const Pointer& pointer);
  void toggle(const Id& id);
  void finishBox(const Pointer& pointer);

  MoveTool mover_;
  HandleDrag handle_;
  bool moving_ = false;
  bool pressedEmpty_ = false;
  bool boxing_ = false;
  bool nearBoundary_ = false; ///< the property line shows its corners only to who comes near
  Pointer start_;
  Pointer now_;
};

} // namespace sump
