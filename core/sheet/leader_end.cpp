#include "core/sheet/leader_end.h"

#include <algorithm>
#include <tuple>

namespace sump {

namespace {

constexpr double kLargestPassed = 9;  // mm; a leader to what is larger points into it
constexpr double kMiddleOf = 1;       // mm: it is the symbol that is pointed at
constexpr double kShortestLeader = 1; // mm that are still seen as one

/// Where the way from a place in the box to one out of it leaves the box.
Point2 wayOut(const PaperBox& box, Point2 inside, Point2 outside) {
  const Point2 way = outside - inside;
  double share = 1;
  for (const auto& [step, low, high] :
       {std::tuple{way.x, box.low.x - inside.x, box.high.x - inside.x},
        std::tuple{way.y, box.low.y - inside.y, box.high.y - inside.y}}) {
    if (step != 0) share = std::min(share, (step > 0 ? high : low) / step);
  }
  return inside + way * share;
}

} // namespace

Point2 leaderEnd(Point2 from, Point2 to, const std::vector<PaperBox>& symbols) {
  Point2 end = to;
  for (const PaperBox& box : symbols) {
    const bool passed = std::max(box.width(), box.height()) <= kLargestPassed && box.holds(to) &&
                        !box.holds(from) && distance(box.centre(), to) <= kMiddleOf;
    if (!passed) continue;
    const Point2 edge = wayOut(box, to, from);
    if (distance(from, edge) >= kShortestLeader && distance(to, edge) > distance(to, end))
      end = edge;
  }
  return end;
}

} // namespace sump
