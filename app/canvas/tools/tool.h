#pragma once
// What a canvas tool is and what it may ask for. Tools know neither the canvas nor the window.

#include "app/canvas/scene.h"
#include "app/canvas/theme.h"
#include "app/canvas/view.h"
#include "core/catalog/catalog.h"

#include <QCoreApplication>
#include <QCursor>
#include <QPainter>
#include <QStringList>

#include <optional>
#include <set>
#include <vector>

namespace sump {

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
  /// Ends whatever is under way and leaves no trace of it.
  virtual void cancel() {}
  virtual bool busy() const { return false; }
  virtual void paint(QPainter&, const CanvasTheme&) const {}
  /// What to do next, in a sentence or two.
  virtual QString hint() const = 0;
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

/// `at` on the finest grid that is drawn; as it is while Ctrl is held.
Point2 onGrid(const ToolHost& host, Point2 at, Qt::KeyboardModifiers modifiers);

/// Text of the tools, translatable in one context.
inline QString toolText(const char* text) {
  return QCoreApplication::translate("Tools", text);
}

} // namespace sump
