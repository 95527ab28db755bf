#pragma once
// The lines of the drawing on the screen, by place: what a text over them would make hard to read,
// itself and the lines. Gathered cell by cell as they are asked for.

#include "app/canvas/scene.h"
#include "app/canvas/view.h"

#include <QHash>
#include <QLineF>
#include <QPolygonF>

#include <vector>

namespace sump {

class DrawnLines {
public:
  DrawnLines(const Scene& scene, const View& view) : scene_(scene), view_(view) {}

  /// Which lines a text may lie over.
  struct But {
    Id line{};           ///< the run or utility whose own line it is; its symbols count
    bool paving = false; ///< edges of paving, pale and thin
  };
  /// Does any line run through the box?
  bool cross(const QPolygonF& box, const But& but) const;
  bool cross(const QPolygonF& box) const { return cross(box, But{}); }
  bool cross(const QRectF& box) const { return cross(QPolygonF(box), But{}); }
  /// How many lines do.
  int count(const QPolygonF& box, const But& but) const;
  int count(const QRectF& box, const But& but) const { return count(QPolygonF(box), but); }
  int count(const QRectF& box) const { return count(box, But{}); }

private:
  struct Piece {
    QPolygonF shape; ///< a line, or the square about a round mark
    QRectF bounds;
    std::size_t mark;
  };
  const std::vector<Piece>& cell(int x, int y) const;
  void gather(const Mark& mark, std::size_t index, const QRectF& cell,
              std::vector<Piece>& into) const;
  bool counts(const Piece& piece, const But& but) const;
  template <typename Visit> void eachNear(const QPolygonF& box, Visit visit) const;

  const Scene& scene_;
  View view_;
  mutable QHash<qint64, std::vector<Piece>> cells_;
};

} // namespace sump
