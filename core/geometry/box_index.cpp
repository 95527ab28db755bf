#include "core/geometry/box_index.h"

#include "core/geometry/boost_types.h"
#include "core/geometry/polygon.h"

#include <boost/geometry/index/rtree.hpp>
#include <boost/iterator/function_output_iterator.hpp>

#include <algorithm>

namespace sump {

namespace {

using TreeBox = boost::geometry::model::box<Point2>;
using Entry = std::pair<TreeBox, std::size_t>;

} // namespace

struct BoxIndex::Tree {
  boost::geometry::index::rtree<Entry, boost::geometry::index::rstar<16>> entries;
};

Box boxOf(const std::vector<Point2>& points) {
  if (points.empty()) return {};
  Box box{points.front(), points.front()};
  for (Point2 p : points) {
    box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
    box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
  }
  return box;
}

Box grown(Box box, double by) {
  return {{box.low.x - by, box.low.y - by}, {box.high.x + by, box.high.y + by}};
}

BoxIndex::BoxIndex() = default;

BoxIndex::BoxIndex(const std::vector<Box>& boxes) {
  std::vector<Entry> entries;
  entries.reserve(boxes.size());
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    entries.emplace_back(TreeBox(boxes[i].low, boxes[i].high), i);
  }
  tree_ = std::make_shared<const Tree>(Tree{{entries.begin(), entries.end()}});
}

std::vector<std::size_t> BoxIndex::touching(const Box& box) const {
  std::vector<std::size_t> found;
  if (tree_ == nullptr) return found;
  const auto keep = [&](const Entry& entry) { found.push_back(entry.second); };
  tree_->entries.query(boost::geometry::index::intersects(TreeBox(box.low, box.high)),
                       boost::make_function_output_iterator(keep));
  std::ranges::sort(found);
  return found;
}

OutlineSet::OutlineSet(std::vector<Ring> rings) : rings_(std::move(rings)) {
  std::vector<Box> boxes;
  boxes.reserve(rings_.size());
  for (const Ring& ring : rings_)
    boxes.push_back(boxOf(ring));
  index_ = BoxIndex(boxes);
}

int OutlineSet::holding(Point2 p) const {
  for (std::size_t i : index_.touching({p, p})) {
    if (contains(rings_[i], p)) return static_cast<int>(i);
  }
  return -1;
}

} // namespace sump
