#pragma once
// Places labels on a drawing: each has candidate boxes in order of liking; the placer takes the
// cheapest one that touches no other text, and counts what it would cover. When all labels are
// there it moves them about until none has a better place. Private to core/sheet.

#include "core/sheet/clip.h"
#include "core/sheet/obstacles.h"

#include <optional>
#include <vector>

namespace sump {

inline constexpr double kLabelGap = 0.6; ///< mm of air kept between two texts

struct LabelCandidate {
  PaperBox box;
  std::optional<Point2> leaderTo; ///< a leader runs from the box's nearest edge to here
  double cost = 0;                ///< dislike of this place as such
  bool turned = false;            ///< text reads upward
  bool round = false;             ///< a circle that touches the box
};

/// Where a leader leaves the box: the foot of `to` on the box's left or right edge's middle, or the
/// top or bottom edge.
Point2 leaderStart(const PaperBox& box, Point2 to);
/// Of a label that has one.
Point2 leaderStart(const LabelCandidate& place);

class LabelPlacer {
public:
  explicit LabelPlacer(PaperBox area) : obstacles_(area) {}
  /// Nothing may lie on it (a text box already drawn, a table, the north arrow).
  void forbid(const PaperBox& box) { obstacles_.forbid(box); }
  Obstacles& obstacles() { return obstacles_; }
  /// Rather no place than one whose leader runs through the end of another.
  void refuseLeadersOverDots() { refuseOverDots_ = true; }

  /// Takes the cheapest candidate; its place among the labels, or nothing when none is free.
  /// A label that may move is settled later.
  std::optional<std::size_t> add(std::vector<LabelCandidate> candidates, bool mayMove);
  /// As add, for one that stays where it is.
  std::optional<LabelCandidate> place(std::vector<LabelCandidate> candidates);
  /// What a place costs against what is drawn and the labels placed so far; none: infinity.
  double costOf(const LabelCandidate& place) const;
  /// Where a label stands now.
  const LabelCandidate& at(std::size_t label) const { return labels_[label].chosenPlace(); }
  /// Lets every label that may move take a better place, alone or in exchange with another.
  void settle();

private:
  struct Cost {
    double atLeast = -1;
    bool isWhole = false; ///< it is no more either
  };
  struct Label {
    std::vector<LabelCandidate> places; ///< cheapest first
    std::vector<Cost> costs;            ///< of each against the obstacles, as far as it was asked
    std::size_t chosen = 0;
    bool mayMove = false;
    bool aside = false; ///< taken off for the moment
    PaperBox reach;     ///< of the chosen place and its leader
    void choose(std::size_t place);
    const LabelCandidate& chosenPlace() const { return places[chosen]; }
  };
  struct Choice {
    std::size_t place = 0;
    double cost = 0;
  };
  bool allows(const LabelCandidate& place) const;
  double onDot() const;
  double ownCost(Label& label, std::size_t place, double bound);
  double withOthers(std::size_t self, const LabelCandidate& place, double bound) const;
  std::optional<Choice> best(std::size_t label, double bound);
  double costNow(std::size_t label);
  bool improve(std::size_t label);
  bool moveBoth(std::size_t first, std::size_t second, double bound);
  bool exchange(std::size_t first, std::size_t second);
  std::vector<std::size_t> inTheWayOf(std::size_t label);
  std::optional<std::size_t> onlyOneInTheWay(std::size_t self, const LabelCandidate& place,
                                             double bound) const;
  bool exchangeAny();

  Obstacles obstacles_;
  bool refuseOverDots_ = false;
  std::vector<Label> labels_;
};

/// Candidates with a leader on rings of growing distance round a point.
std::vector<LabelCandidate> aroundPoint(Point2 anchor, double width, double height, double nearest,
                                        double farthest, double extraCost);

} // namespace sump
