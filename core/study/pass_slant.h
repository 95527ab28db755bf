#pragma once
// How far off square a line passes the wall or baffle of a vault, or off the radius a round riser,
// in plan: a connector takes only little of it, and the opening has to be wider.

#include "core/study/study.h"

#include <vector>

namespace sump {

/// From here on an opening cut square to the face is told as too narrow. Common practice, no
/// source.
inline constexpr double kSlantFrom = 5; // degrees

/// The end wall is the outside wall that a place, in the vault's own frame, is nearest to.
bool inEndWall(const Vault& vault, Point2 local);

/// Which way a run goes in plan on its leg that is nearest to a place, of length 1; zero where all
/// of it is upright.
Point2 wayAt(const RunStudy& run, Point2 at);

/// Of the line in plan where it passes: along the wall or baffle, and square to it. Zero where no
/// leg of the run is there.
struct PassWay {
  double along = 0; ///< in the direction of the vault's own axis that the face lies along
  double through = 0;
  Angle slant() const; ///< off square, never negative
};
PassWay wayThrough(const RunStudy& run, const Vault& vault, const Penetration& hole);

/// Across the face of a wall so thick, of an opening cut square to it, that lets something round of
/// this outside diameter pass: the diameter over the cosine of the slant and the thickness times
/// its tangent, since it leaves by so much aside of where it came in. Geometry.
Length openingWidth(Length outside, Length thickness, Angle slant);

/// A line through the outside wall of a vault or through a riser.
struct SlantPass {
  Id vault, run;
  Id manway; ///< of the riser; empty: the vault's wall
  Point2 at; ///< site
  Angle slant;
};
/// All of them, square ones too, in the plan's order of runs.
std::vector<SlantPass> slantPasses(const Plan& plan, const Study& study);

} // namespace sump
