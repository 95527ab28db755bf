#pragma once
// Edits of corners: of buildings, paving, existing lines and the property line, whose id is empty.
// A Plan in, a Plan out; an unknown id or corner leaves the plan as it is.

#include "core/plan/plan.h"

#include <optional>
#include <string_view>

namespace sump {

/// A row of corners; `closed`: the last is joined to the first.
struct Corners {
  std::vector<Point2> points;
  bool closed = true;
  /// Fewer are no outline, or no line.
  std::size_t least() const { return closed ? 3 : 2; }
  std::size_t legs() const { return closed ? points.size() : points.size() - 1; }
};

/// Nothing for objects that have no corners of their own, and for a site without property line.
std::optional<Corners> cornersOf(const Plan& plan, std::string_view id);
Plan moveCorner(const Plan& plan, std::string_view id, std::size_t corner, Point2 to);
/// Puts a corner into the leg that starts at corner `leg`.
Plan insertCorner(const Plan& plan, std::string_view id, std::size_t leg, Point2 at);
/// Never below the least number of corners.
Plan eraseCorner(const Plan& plan, std::string_view id, std::size_t corner);

} // namespace sump
