#pragma once
// Which of many outlines may meet a place: a spatial index over bounding boxes (Boost.Geometry
// R-tree). Answers are candidates; the caller tests the outline itself.

#include "core/geometry/point.h"

#include <cstddef>
#include <memory>
#include <vector>

namespace sump {

struct Box {
  Point2 low;
  Point2 high;
};
Box boxOf(const std::vector<Point2>& points);
Box grown(Box box, double by);

class BoxIndex {
public:
  BoxIndex();
  explicit BoxIndex(const std::vector<Box>& boxes);
  /// Indices of the boxes that touch `box`, in rising order.
  std::vector<std::size_t> touching(const Box& box) const;

private:
  struct Tree;
  std::shared_ptr<const Tree> tree_;
};

/// A fixed set of outlines with an index.
class OutlineSet {
public:
  OutlineSet() = default;
  explicit OutlineSet(std::vector<Ring> rings);
  const std::vector<Ring>& rings() const { return rings_; }
  std::vector<std::size_t> touching(const Box& box) const { return index_.touching(box); }
  /// Index of the first outline that holds p, or -1.
  int holding(Point2 p) const;

private:
  std::vector<Ring> rings_;
  BoxIndex index_;
};

} // namespace sump
