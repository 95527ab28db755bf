#pragma once
// What lines leave free of the way down through a manway: its opening in the lid, its riser and the
// shaft under it down to the floor.

#include "core/geometry/box_index.h"
#include "core/study/study.h"

#include <vector>

namespace sump {

/// A stretch of pipe in plan, measured from the manway's centre.
struct ShaftPipe {
  Point2 a, b;
  double radius = 0; ///< outside
};

/// A line that takes up some of the way down.
struct ManwayLine {
  Id run;
  bool ends = false;  ///< it ends in the way down, and so is reached through this manway
  bool hangs = false; ///< its eductor hangs in this manway, from where it can be lifted out
  Point2 at;          ///< site, nearest to the manway's centre
  std::vector<ShaftPipe> pipes;
};

/// Looks lines up, manway by manway. Plan and study must outlive it.
class ManwayWays {
public:
  ManwayWays(const Plan& plan, const Study& study);
  /// In the plan's order.
  std::vector<ManwayLine> lines(const VaultStudy& vault, std::size_t manway) const;

private:
  const Plan& plan_;
  const Study& study_;
  std::vector<std::size_t> resolved_; ///< runs with known levels, as the boxes are numbered
  BoxIndex boxes_;
};

/// The diameter of the largest circle that fits into the opening beside the pipes, less at most half
/// a millimetre.
Length clearWay(Length diameter, const std::vector<ShaftPipe>& pipes);

} // namespace sump
