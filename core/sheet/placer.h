#pragma once
// Places labels on a drawing: each has candidate boxes in order of liking; the placer takes the
// cheapest one that touches no other text, and counts what it would cover. Private to core/sheet.

#include "core/sheet/clip.h"

#include <limits>
#include <optional>
#include <vector>

namespace sump {

/// Dislike of a leader through what another one ends at; more than of anything else.
inline constexpr double kLeaderOverDot = 400;

struct LabelCandidate {
  PaperBox box;
  std::optional<Point2> leaderTo; ///< a leader runs from the box's nearest edge to here
  double cost = 0;                ///< dislike of this place as such
  bool turned = false;            ///< text reads upward
};

/// Where a leader leaves the box: the foot of `to` on the box's left or right edge's middle, or the
/// top or bottom edge.
Point2 leaderStart(const PaperBox& box, Point2 to);

class LabelPlacer {
public:
  explicit LabelPlacer(PaperBox area) : area_(area) {}
  /// Nothing may lie on it (a text box already drawn, a table, the north arrow).
  void forbid(const PaperBox& box) { taken_.push_back(box); }
  /// A line that a label had better not cover.
  void avoid(Point2 a, Point2 b, double cost) { lines_.push_back({a, b, cost}); }
  /// A place that a leader may end at: leaders to others go round it.
  void reserveDot(Point2 at) { dots_.push_back(at); }
  /// Rather nothing than a place as bad as this.
  void refuseFrom(double cost) { most_ = cost; }
  /// The chosen candidate, which becomes forbidden to later ones; nothing when none is free.
  std::optional<LabelCandidate> place(std::vector<LabelCandidate> candidates);

private:
  struct Line {
    Point2 a, b;
    double cost;
  };
  bool isFree(const LabelCandidate& candidate) const;
  double coverCost(const LabelCandidate& candidate, double bound) const;
  double leaderCost(Point2 from, Point2 to) const;

  PaperBox area_;
  std::vector<PaperBox> taken_;
  std::vector<Line> lines_;
  std::vector<Line> leaders_;
  std::vector<Point2> dots_;
  double most_ = std::numeric_limits<double>::max();
};

/// Candidates with a leader on rings of growing distance round a point.
std::vector<LabelCandidate> aroundPoint(Point2 anchor, double width, double height, double nearest,
                                        double farthest, double extraCost);

} // namespace sump
