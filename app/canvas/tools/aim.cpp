#include "app/canvas/tools/aim.h"

#include "app/canvas/grid.h"

#include <cmath>

namespace sump {

namespace {

/// Near enough that a careful hand can still pass by: about a third of a fingertip on a screen.
constexpr double kSnapPixels = 9;
/// An object has several corners, each of which may catch: nearer ones only, or it jumps about.
constexpr double kDragPixels = 6;
/// Of what was caught, with its halo.
constexpr double kMarkRadius = 9;

SnapQuery queryAt(const ToolHost& host, Point2 at, const AimFrom& from) {
  SnapQuery query;
  query.at = at;
  query.reach = kSnapPixels / host.view().scale();
  query.grid = gridStep(host);
  query.last = from.last;
  query.beforeLast = from.beforeLast;
  query.without = from.without;
  return query;
}

/// Shapes of their own, so that each is known without its colour or its word.
void paintShape(QPainter& painter, QPointF at, SnapKind kind) {
  constexpr double r = 7;
  const auto line = [&](double x0, double y0, double x1, double y1) {
    painter.drawLine(QPointF(at.x() + x0, at.y() + y0), QPointF(at.x() + x1, at.y() + y1));
  };
  switch (kind) {
  case SnapKind::End: // four brackets round the corner
    for (const double sx : {-1.0, 1.0}) {
      for (const double sy : {-1.0, 1.0}) {
        line(sx * r, sy * r, sx * r, sy * 3);
        line(sx * r, sy * r, sx * 3, sy * r);
      }
    }
    return;
  case SnapKind::Middle: // two bars at equal distance
    line(-r, -5, -r, 5);
    line(r, -5, r, 5);
    line(-r, 0, r, 0);
    return;
  case SnapKind::Centre:
    painter.drawEllipse(at, r, r);
    painter.drawEllipse(at, 1.5, 1.5);
    return;
  case SnapKind::Crossing: // a saltire in a ring
    painter.drawEllipse(at, r, r);
    line(-5, -5, 5, 5);
    line(-5, 5, 5, -5);
    return;
  case SnapKind::Perpendicular: // a post on a foot
    line(-r, r, r, r);
    line(0, r, 0, -r);
    return;
  case SnapKind::Face: // a wall with earth behind
    line(-r, 0, r, 0);
    for (const double x : {-4.0, 1.0, 6.0})
      line(x, 0, x - 3, 5);
    return;
  case SnapKind::Aligned:
    painter.drawPolygon(QPolygonF(
        {at + QPointF(0, -5), at + QPointF(5, 0), at + QPointF(0, 5), at - QPointF(5, 0)}));
    return;
  case SnapKind::Grid:
    line(-4, 0, 4, 0);
    line(0, -4, 0, 4);
    return;
  case SnapKind::None:
    painter.drawEllipse(at, 2.5, 2.5);
  }
}

/// In line with one thing: that settles one direction, the grid the other.
Point2 alignedShift(Point2 by, Point2 shift, Point2 stepped, Snapped& caught) {
  const bool upright = std::abs(caught.guides[0].at.x - caught.at.x) < 1e-9;
  const Point2 result =
      upright ? Point2{by.x + shift.x, stepped.y} : Point2{stepped.x, by.y + shift.y};
  caught.at = caught.at + (result - by - shift);
  return result;
}

} // namespace

double gridStep(const ToolHost& host, double leastPixels) {
  return gridSteps(host.view().scale(), host.plan().project.units, leastPixels).minor;
}

Snapped aim(const ToolHost& host, const Pointer& pointer, const AimFrom& from,
            const TypedPoint& typed) {
  const bool loose = pointer.modifiers.testFlag(Qt::AltModifier) || !host.aids().snap;
  SnapQuery query = queryAt(host, pointer.site, from);
  query.straight = pointer.modifiers.testFlag(Qt::ShiftModifier) || host.aids().straight;
  Snapped found{pointer.site, SnapKind::None, {}, {}};
  if (!loose) {
    found = host.snapField().snap(query);
  } else if (query.straight && from.last) {
    found.at = onEighth(*from.last, pointer.site);
  }
  if (typed.empty()) return found;
  const std::optional<Point2> at = placeOf(typed, from.last, found.at);
  return at ? Snapped{*at, SnapKind::None, {}, {}} : found;
}

Point2 aimShift(const ToolHost& host, const Pointer& start, const Pointer& now,
                const std::vector<Point2>& grips, const std::set<Id>& without, Snapped& caught) {
  Point2 by = now.site - start.site;
  caught = {};
  if (now.modifiers.testFlag(Qt::ShiftModifier) || host.aids().straight) by = onEighth({}, by);
  if (now.modifiers.testFlag(Qt::AltModifier) || !host.aids().snap) return by;
  std::vector<Point2> moved = grips;
  for (Point2& p : moved)
    p = p + by;
  AimFrom from;
  from.without = &without;
  const double step = gridStep(host);
  const Point2 stepped{std::round(by.x / step) * step, std::round(by.y / step) * step};
  const bool free = !now.modifiers.testFlag(Qt::ShiftModifier) && !host.aids().straight;
  SnapQuery query = queryAt(host, now.site, from);
  query.reach *= kDragPixels / kSnapPixels;
  Point2 shift;
  const std::optional<Snapped> found =
      free ? host.snapField().snapAny(moved, query, shift) : std::nullopt;
  if (!found) return stepped;
  caught = *found;
  return found->guides.size() == 1 && found->kind == SnapKind::Aligned
             ? alignedShift(by, shift, stepped, caught)
             : by + shift;
}

void paintSnap(Overlay& overlay, const Snapped& snapped, const QString& words) {
  QPainter& painter = overlay.painter();
  const View& view = overlay.view();
  const CanvasTheme& theme = overlay.theme();
  const QPointF at = view.toScreen(snapped.at);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(theme.accent, 1, Qt::DotLine));
  for (const SnapPoint& guide : snapped.guides)
    painter.drawLine(at, view.toScreen(guide.at));
  // A halo below keeps the mark readable on lines of any colour.
  painter.setPen(QPen(theme.background, 4.5, Qt::SolidLine, Qt::RoundCap));
  paintShape(painter, at, snapped.kind);
  painter.setPen(QPen(theme.accent, 1.8, Qt::SolidLine, Qt::RoundCap));
  paintShape(painter, at, snapped.kind);
  // The place itself and the grid are everywhere: nothing makes room for them.
  if (snapped.kind != SnapKind::None && snapped.kind != SnapKind::Grid)
    overlay.keepMark(at, kMarkRadius);
  if (!words.isEmpty()) overlay.tag(at, words, QPointF(12, 18), TagAnchor::Left);
}

} // namespace sump
