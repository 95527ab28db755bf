#pragma once
// Where a pointer catches: ends, middles, centres, crossings, perpendiculars, faces, alignments and
// the grid. Pure geometry without Qt; what can be caught comes from snap_field.h.

#include "core/geometry/box_index.h"
#include "core/geometry/point.h"
#include "core/plan/items.h"

#include <optional>
#include <set>
#include <vector>

namespace sump {

/// In the order in which a nearer one still yields to a stronger one.
enum class SnapKind {
  None,          ///< the pointer itself
  Grid,          ///< a crossing of the grid
  Aligned,       ///< east-west or north-south of another point, or on the last leg's own line
  Face,          ///< the nearest point of an edge
  Perpendicular, ///< where a leg meets an edge squarely
  Centre,
  Middle,
  Crossing, ///< of two edges
  End,      ///< a corner or an end
};

struct SnapPoint {
  Point2 at;
  SnapKind kind = SnapKind::End;
  Id owner; ///< the object that moves as one with it
};
struct SnapEdge {
  Point2 a, b;
  Id owner;
};

/// What is asked at one place of the pointer; lengths in metres.
struct SnapQuery {
  Point2 at;
  double reach = 0;                      ///< how far a thing still catches
  double grid = 0;                       ///< grid step; 0: no grid
  std::optional<Point2> last;            ///< the corner before the one under the pointer
  std::optional<Point2> beforeLast;      ///< gives the last leg its direction
  bool straight = false;                 ///< only along the eight directions from `last`
  const std::set<Id>* without = nullptr; ///< objects that do not catch, since they are moved
};

struct Snapped {
  Point2 at;
  SnapKind kind = SnapKind::None;
  Id owner;
  std::vector<SnapPoint> guides; ///< points that `at` is aligned with
};

/// Everything of one plan that catches, indexed by place. Immutable.
class SnapField {
public:
  SnapField() = default;
  SnapField(std::vector<SnapPoint> points, std::vector<SnapEdge> edges);

  /// Ends, crossings, middles, centres and perpendiculars first, the nearest of them; then
  /// alignments and faces, then the grid, then the pointer.
  Snapped snap(const SnapQuery& query) const;
  /// How far to shift points that are dragged together (corners and centre of an object, already at
  /// the pointer) so that one of them catches. Nothing when none is near; the grid does not count.
  std::optional<Snapped> snapAny(const std::vector<Point2>& points, const SnapQuery& query,
                                 Point2& shift) const;

  const std::vector<SnapPoint>& points() const { return points_; }
  const std::vector<SnapEdge>& edges() const { return edges_; }

private:
  struct Near {
    std::vector<const SnapPoint*> points;
    std::vector<const SnapEdge*> edges;
  };
  Near near(const SnapQuery& query) const;
  std::optional<Snapped> exact(const Near& near, const SnapQuery& query) const;
  std::optional<Snapped> aligned(const Near& near, const SnapQuery& query) const;
  std::optional<SnapPoint> alignment(const SnapQuery& query, double Point2::*along,
                                     double Point2::*across) const;
  Snapped straight(const SnapQuery& query) const;

  std::vector<SnapPoint> points_;
  std::vector<SnapEdge> edges_;
  BoxIndex pointIndex_;
  BoxIndex edgeIndex_;
};

/// `p` put on the nearest of the eight directions from `from` that standard bends make.
Point2 onEighth(Point2 from, Point2 p);

} // namespace sump
