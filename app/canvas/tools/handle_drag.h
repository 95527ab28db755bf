#pragma once
// Takes hold of a handle, drags it with the plan previewed, and commits at the release. A handle
// that was only clicked stays taken: keys nudge it, typing places it, Delete takes it out. No tool
// of its own; tools pass their gestures on.

#include "app/canvas/tools/pull.h"

namespace sump {

class HandleDrag {
public:
  explicit HandleDrag(ToolHost& host) : host_(host) {}

  /// True when one of the handles lies under the pointer and is taken; else what was taken is let
  /// go.
  bool press(const Pointer& pointer, const std::vector<Handle>& handles);
  /// As if it had been clicked.
  void take(const Handle& handle) { handle_ = handle; }
  void move(const Pointer& pointer);
  void release(const Pointer& pointer);
  /// Lights up the handle under the pointer.
  void hover(const Pointer& pointer, const std::vector<Handle>& handles);
  bool key(int key, Qt::KeyboardModifiers modifiers);
  bool claims(int key) const;
  void cancel();

  std::vector<EntryField> entryFields() const;
  /// What is pulled, and last where its handle stands.
  std::vector<Polyline> underWay() const;
  void typing(const Entry& entry);
  bool enter(const Entry& entry);

  bool pressed() const { return pressed_; }
  bool dragging() const { return dragging_; }
  bool taken() const;
  bool hovering() const { return hot_.has_value(); }
  QString hint() const;
  /// The marks of the handles, and sizes round the one that is dragged.
  void paint(Overlay& overlay, const std::vector<Handle>& handles) const;
  void paintPull(Overlay& overlay) const;

private:
  void pull(const Pointer& pointer);
  /// The handle's own place as a pointer that catches nothing.
  Pointer own() const;
  bool commit();
  bool nudge(int key, Qt::KeyboardModifiers modifiers);
  bool erase();

  ToolHost& host_;
  std::optional<Handle> handle_; ///< taken
  std::optional<Handle> hot_;    ///< under the pointer
  std::optional<Pull> pull_;
  bool pressed_ = false;
  bool dragging_ = false; ///< moved further than a click may
  Pointer start_;
};

} // namespace sump
