#pragma once
// Which part of the site the canvas shows: a scale and a centre. Site y is up, screen y down.

#include "core/geometry/box_index.h"

#include <QPointF>
#include <QPolygonF>
#include <QRectF>
#include <QSizeF>

namespace sump {

class View {
public:
  /// Pixels (device independent) per metre: from a county on the screen to a pipe wall.
  static constexpr double kLeastScale = 0.02;
  static constexpr double kMostScale = 5000;

  double scale() const { return scale_; }
  QSizeF size() const { return size_; }
  void resize(QSizeF size) { size_ = size; }

  QPointF toScreen(Point2 site) const;
  Point2 toSite(QPointF screen) const;
  QPolygonF toScreen(const std::vector<Point2>& site) const;
  /// What is visible.
  Box visible() const;

  /// Keeps the site point under `at` where it is; the scale stays within its limits.
  void zoomAt(QPointF at, double factor);
  void pan(QPointF byPixels);
  /// Shows all of `box` with `margin` pixels around it. A point or an empty box gets 10 m.
  void fit(const Box& box, double margin);
  void centreOn(Point2 site) { centre_ = site; }

private:
  double scale_ = 20;
  Point2 centre_;
  QSizeF size_{800, 600};
};

} // namespace sump
