#pragma once
// What a view shows where labels and their leaders are to go. Private to core/sheet.

#include "core/sheet/clip.h"

#include <cstdint>
#include <vector>

namespace sump {

/// A place for a label.
struct LabelCandidate;
/// The label and its leader.
PaperBox reachOf(const LabelCandidate& candidate);

inline constexpr double kDotAir = 1.2; ///< mm kept between a leader and the end of another
inline constexpr double kSameEnd =
    1.5; ///< mm; a leader cannot keep off what is so close to its end
/// The leader runs over the end of another that is not as good as its own.
bool runsOverDot(Point2 from, Point2 to, Point2 dot);

/// Lines, symbols and forbidden parts of the paper, found by where they are.
class Obstacles {
public:
  explicit Obstacles(PaperBox area);
  /// Nothing may lie on it.
  void forbid(const PaperBox& box) { taken_.push_back(box); }
  /// A line that a label had better not cover: as bad as so many mm of distance; a leader that
  /// crosses it costs `leader`.
  void addLine(Point2 a, Point2 b, double cost, double leader);
  /// A symbol that no label should cover and no leader run through, but to its own place in it.
  void addSymbol(const PaperBox& box) { symbols_.push_back(box); }
  bool inSymbol(Point2 p) const;
  /// The end of another leader.
  void addDot(Point2 at) { dots_.push_back(at); }
  /// True where the candidate's leader runs through one, other than its own end.
  bool leaderOverDot(const LabelCandidate& candidate) const;

  /// False where the label would leave the area or lie on what is forbidden.
  bool allows(const LabelCandidate& candidate) const;
  /// What it would cover and cross there; as soon as that passes `bound`, no more than so much.
  double cost(const LabelCandidate& candidate, double bound) const;

private:
  struct Line {
    Point2 a, b;
    PaperBox box;
    double cost, leader;
  };
  std::vector<std::uint32_t>& cell(int column, int row) {
    return cells_[static_cast<std::size_t>(row * columns_ + column)];
  }
  int columnOf(double x) const;
  int rowOf(double y) const;
  template <typename Use> void forEachNear(const PaperBox& box, Use use) const;
  double lineCost(const LabelCandidate& candidate, Point2 from, const Line& line) const;
  double dotCost(const LabelCandidate& candidate) const;
  double symbolCost(const LabelCandidate& candidate, Point2 from) const;

  PaperBox area_;
  int columns_, rows_;
  std::vector<std::vector<std::uint32_t>> cells_; ///< the lines that may touch each
  std::vector<Line> lines_;
  mutable std::vector<std::uint32_t> seen_; ///< the look at which each line was last found
  mutable std::uint32_t look_ = 0;
  std::vector<PaperBox> symbols_, taken_;
  std::vector<Point2> dots_;
};

} // namespace sump
