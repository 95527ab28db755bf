#pragma once
// What a canvas tool is and what it may ask for. Tools know neither the canvas nor the window.

#include "app/canvas/overlay.h"
#include "app/canvas/scene.h"
#include "app/canvas/snap.h"
#include "app/canvas/theme.h"
#include "app/canvas/tools/entry.h"
#include "app/canvas/view.h"
#include "core/catalog/catalog.h"

#include <QCoreApplication>
#include <QCursor>
#include <QStringList>

#include <optional>
#include <set>
#include <vector>

namespace sump {

/// How the pointer is helped; switched in the View menu.
struct DrawingAids {
  bool snap = true;      ///< catch ends, faces, the grid ...
  bool straight = false; ///< legs only in the eight directions, as while Shift is held
};

/// What surrounds a tool.
class ToolHost {
public:
  virtual ~ToolHost() = default;
  virtual const Plan& plan() const = 0; ///< committed
  virtual const Catalog& catalog() const = 0;
  virtual const Scene* scene() const = 0; ///< null before the first review
  virtual const View& view() const = 0;
  virtual const std::set<Id>& selection() const = 0;
  virtual void select(std::set<Id> ids) = 0;
  /// False when the plan was refused; the reason has then been told.
  virtual bool commit(const QString& step, Plan plan) = 0;
  virtual void preview(std::optional<Plan> plan) = 0;
  /// What the tool paints or hints at has changed.
  virtual void refresh() = 0;
  /// What of the committed plan catches the pointer.
  virtual const SnapField& snapField() const = 0;
  virtual const DrawingAids& aids() const = 0;
  /// Tells the user why something cannot be.
  virtual void refuse(const QString& reason) = 0;
};

struct Pointer {
  QPointF screen;
  Point2 site;
  Qt::KeyboardModifiers modifiers;
};

/// A choice that the tool offers before or while it works: which model, which size.
struct Choice {
  QString label;
  QStringList items;
  int current = 0;
  QString tip;
};

class Tool {
public:
  explicit Tool(ToolHost& host) : host_(host) {}
  virtual ~Tool() = default;
  Tool(const Tool&) = delete;
  Tool& operator=(const Tool&) = delete;

  virtual void press(const Pointer&) {}
  virtual void move(const Pointer&) {}
  virtual void release(const Pointer&) {}
  virtual void doubleClick(const Pointer&) {}
  /// True when the key was used.
  virtual bool key(int /*key*/, Qt::KeyboardModifiers /*modifiers*/) { return false; }
  /// True for keys that are the tool's at this moment, whatever menus they also stand in.
  virtual bool claims(int key) const;
  /// Values that may be typed at this moment; the first takes the first digit.
  virtual std::vector<EntryField> entryFields() const { return {}; }
  /// Lines on the site that are being drawn or moved; the last ends where the pointer or what was
  /// typed puts it. The typed entry stands beside them.
  virtual std::vector<Polyline> underWay() const { return {}; }
  /// What is being typed, at every change; empty when typing is given up.
  virtual void typing(const Entry&) {}
  /// Enter after typing. False when nothing came of it and typing should go on.
  virtual bool enter(const Entry&, Qt::KeyboardModifiers) { return false; }
  /// Ends whatever is under way and leaves no trace of it.
  virtual void cancel() {}
  virtual bool busy() const { return false; }
  virtual void paint(Overlay&) const {}
  /// What to do next, in a sentence or two.
  virtual QString hint() const = 0;
  /// Arrow keys move what is selected, not the view.
  virtual bool nudges() const { return false; }
  virtual QCursor cursor() const { return Qt::CrossCursor; }
  virtual std::vector<Choice> choices() const { return {}; }
  virtual void choose(std::size_t /*choice*/, int /*item*/) {}

protected:
  ToolHost& host() const { return host_; }

private:
  ToolHost& host_;
};

/// How far from a thing a click still means it, in pixels.
inline constexpr double kReachPixels = 7;

/// Text of the tools, translatable in one context.
inline QString toolText(const char* text) {
  return QCoreApplication::translate("Tools", text);
}

} // namespace sump
