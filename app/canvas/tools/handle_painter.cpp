#include "app/canvas/tools/handle_painter.h"

namespace sump {

namespace {

/// Of any handle in any state, with its halo.
constexpr double kHandleRadius = 8;

QPolygonF diamond(QPointF at, double r) {
  return QPolygonF(
      {at + QPointF(0, -r), at + QPointF(r, 0), at + QPointF(0, r), at - QPointF(r, 0)});
}

void paintReach(QPainter& painter, const View& view, const Handle& handle, HandleState state,
                const CanvasTheme& theme) {
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(theme.accent, state == HandleState::Idle ? 1 : 2.4,
                      state == HandleState::Idle ? Qt::DotLine : Qt::SolidLine));
  if (handle.reach.size() == 2) {
    painter.drawLine(view.toScreen(handle.reach[0]), view.toScreen(handle.reach[1]));
  } else if (handle.reach.size() > 2) {
    painter.drawPolygon(view.toScreen(handle.reach));
  }
}

/// An open ring with an arrow head.
void paintTurn(QPainter& painter, QPointF at, double r) {
  const QRectF box(at - QPointF(r, r), QSizeF(2 * r, 2 * r));
  painter.drawArc(box, 30 * 16, 290 * 16);
  painter.drawPolyline(
      QPolygonF({at + QPointF(r - 4, -r * 0.5 - 3), at + QPointF(r * 0.87, -r * 0.5),
                 at + QPointF(r * 0.87 + 2, -r * 0.5 - 6)}));
}

void paintMark(QPainter& painter, QPointF at, HandleKind kind, double r) {
  switch (kind) {
  case HandleKind::Corner:
    painter.drawRect(QRectF(at - QPointF(r, r), QSizeF(2 * r, 2 * r)));
    return;
  case HandleKind::Leg:
    painter.drawEllipse(at, r * 0.7, r * 0.7);
    return;
  case HandleKind::Part:
    painter.drawPolygon(diamond(at, r + 2));
    return;
  case HandleKind::Baffle:
    painter.drawPolygon(diamond(at, r));
    return;
  case HandleKind::Turn:
    painter.setBrush(Qt::NoBrush);
    paintTurn(painter, at, r + 3);
    return;
  case HandleKind::Door:
    painter.drawRect(QRectF(at - QPointF(r, r), QSizeF(2 * r, 2 * r)));
    return;
  default:
    painter.drawEllipse(at, r, r);
  }
}

} // namespace

void paintHandle(Overlay& overlay, const Handle& handle, HandleState state) {
  QPainter& painter = overlay.painter();
  const View& view = overlay.view();
  const CanvasTheme& theme = overlay.theme();
  paintReach(painter, view, handle, state, theme);
  // A box is taken by its whole area: a mark in its middle would only cover it.
  const bool box = handle.kind == HandleKind::Skid || handle.kind == HandleKind::Panel ||
                   handle.kind == HandleKind::PlumbingArea;
  if (box) return;
  const QPointF at = view.toScreen(handle.at);
  const double r = state == HandleState::Idle ? 4 : 5;
  overlay.keepHandle(at, kHandleRadius);
  painter.setPen(QPen(theme.background, 4));
  painter.setBrush(theme.background);
  paintMark(painter, at, handle.kind, r);
  painter.setPen(QPen(theme.accent, 1.6));
  painter.setBrush(state == HandleState::Idle ? theme.background : theme.accent);
  paintMark(painter, at, handle.kind, r);
}

} // namespace sump
