#include "core/sheet/clip_marks.h"

#include <algorithm>
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

void keepOpenInside(const Mark& mark, const PaperBox& box, std::vector<Mark>& kept) {
  const bool whole = std::ranges::all_of(mark.points, [&](Point2 p) { return box.holds(p); });
  if (whole || mark.round || !mark.closed || !mark.line) return keepInside(mark, box, kept);
  if (mark.fill) {
    Mark filled = mark;
    filled.line.reset();
    keepInside(std::move(filled), box, kept);
  }
  Mark outline = mark;
  outline.points.push_back(mark.points.front());
  outline.closed = false;
  outline.fill.reset();
  keepInside(std::move(outline), box, kept);
}

} // namespace sump
