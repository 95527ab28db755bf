#pragma once
// Puts a part into something that is there: a baffle or a manway into a vault, a valve on a line,
// or cuts a line. The place follows the pointer, or is typed; a part that is there already is
// dragged. What is put in comes from an Insertable, so that one tool serves them all.

#include "app/canvas/tools/handle_drag.h"

#include <functional>

namespace sump {

/// What a click would do.
struct Insertion {
  Plan plan;
  Id made;            ///< the part; empty where a line is cut
  std::set<Id> shown; ///< selected afterwards
  Point2 at;
  std::vector<Point2> ghost; ///< a line, or from three points on an area
  std::vector<Span> gaps;
  QString tag;
};

struct InsertAsk {
  Pointer pointer;
  Entry typed;
  int kind = 0;
};

struct Insertable {
  QString step; ///< `Place baffle`
  QString hint;
  std::optional<HandleKind> drags; ///< what of those already there is dragged
  std::vector<EntryField> fields;
  QString kindLabel; ///< empty: nothing to choose
  QStringList kinds;
  QString kindTip;
  /// Nothing, and why, where none can be put.
  std::function<std::optional<Insertion>(const ToolHost&, const InsertAsk&, QString& why)> at;
};

Insertable insertableBaffle();
Insertable insertableManway();
Insertable insertablePart(const ToolHost& host);
Insertable insertableCut();
/// Of the equipment room under the pointer. A room has one door: a second click moves it.
Insertable insertablePort();
Insertable insertableDoor();

/// The run under the pointer; else, while a place on it is typed, the one that is selected.
const Run* runMeant(const ToolHost& host, const Pointer& pointer, bool typed);
/// The invert of a run at a fraction of a leg, of the newest study; nothing where it is not known.
std::optional<Length> invertOn(const ToolHost& host, const Id& run, int leg, double along);

class InsertTool : public Tool {
public:
  InsertTool(ToolHost& host, Insertable what) : Tool(host), what_(std::move(what)), drag_(host) {}
  void press(const Pointer& pointer) override;
  void move(const Pointer& pointer) override;
  void release(const Pointer& pointer) override;
  bool key(int key, Qt::KeyboardModifiers modifiers) override;
  /// Delete is for the part, never for all that holds it.
  bool claims(int key) const override {
    return drag_.claims(key) || (what_.drags && erases(key)) || Tool::claims(key);
  }
  std::vector<EntryField> entryFields() const override;
  std::vector<Polyline> underWay() const override;
  void typing(const Entry& entry) override;
  bool enter(const Entry& entry, Qt::KeyboardModifiers modifiers) override;
  void cancel() override;
  bool busy() const override { return pressed_ || drag_.dragging(); }
  void paint(Overlay& overlay) const override;
  QString hint() const override;
  std::vector<Choice> choices() const override;
  void choose(std::size_t choice, int item) override;

private:
  std::vector<Handle> handles() const;
  std::optional<Insertion> asked(QString& why) const;
  bool insert();
  static bool erases(int key) { return key == Qt::Key_Delete || key == Qt::Key_Backspace; }
  /// Takes hold of the part that was put in last; false when it is gone.
  bool takeLast();

  Insertable what_;
  HandleDrag drag_;
  int kind_ = 0;
  bool pressed_ = false;
  Id last_; ///< the part that was put in last
  Entry typed_;
  Pointer pointer_;
  std::optional<Insertion> now_; ///< what a click here would do
};

} // namespace sump
