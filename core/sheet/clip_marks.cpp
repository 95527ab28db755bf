#include "core/sheet/clip_marks.h"

#include <utility>

namespace sump {

void keepInside(Mark mark, const PaperBox& box, std::vector<Mark>& kept) {
  if (mark.round) {
    if (box.holds(mark.points[0])) kept.push_back(std::move(mark));
  } else if (mark.closed) {
    mark.points = clipRing(mark.points, box);
    if (mark.points.size() >= 3) kept.push_back(std::move(mark));
  } else {
    for (Polyline& part : clipLine(mark.points, box)) {
      kept.push_back(mark);
      kept.back().points = std::move(part);
    }
  }
}

} // namespace sump
