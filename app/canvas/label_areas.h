#pragma once
// The areas in sight on which a name would seem to be theirs: paving, buildings, rooms, vaults and
// the like, by place.

#include "app/canvas/scene.h"
#include "app/canvas/view.h"
#include "core/geometry/box_index.h"

#include <vector>

namespace sump {

class LabelAreas {
public:
  LabelAreas(const Scene& scene, const View& view);
  std::vector<std::size_t> touching(const Box& box) const { return index_.touching(box); }
  const std::vector<Point2>& outline(std::size_t i) const {
    return scene_.marks()[marks_[i]].points;
  }
  const Id& owner(std::size_t i) const { return scene_.owner(marks_[i]); }

private:
  const Scene& scene_;
  std::vector<std::size_t> marks_;
  BoxIndex index_;
};

} // namespace sump
