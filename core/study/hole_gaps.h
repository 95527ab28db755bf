#pragma once
// How much wall is left round a pipe where it goes through a vault or a riser, for its connector:
// to the lid's joint, the floor, the corners, the baffles and the other pipes; and how far the
// upper arm of a tee or elbow reaches. Holes are those of the openings' table: Penetration in
// outside walls, RiserPass in risers.

#include "core/study/study.h"

#include <optional>
#include <vector>

namespace sump {

enum class HoleEdge { Lid, Floor, Corner, Baffle, Pipe, RiserFoot, RiserRim };

/// From the outside of a pipe to what limits its hole; negative where it reaches over that.
struct HoleGap {
  HoleEdge edge = HoleEdge::Lid;
  Id vault;
  Id run;
  Id other; ///< the baffle, the other run, or the manway of a riser
  Length clear;
  Point2 at; ///< site
};

/// Of all holes in the vaults' outside walls and risers, vault by vault. A pipe that goes
/// through its wall at a slant takes the width of its openingWidth; one through a riser is taken to
/// go along its radius.
std::vector<HoleGap> holeGaps(const Plan& plan, const Catalog& catalog, const Study& study);

/// The least of the gaps round one hole of the run, half of those to other pipes, since each has
/// its own connector; nothing where none are known, as in baffles.
std::optional<Length> leastGap(const std::vector<HoleGap>& gaps, const Id& vault, const Id& run,
                               Point2 at);

/// From the axis of the pipe to the open end of a tee's or elbow's arm: the take-out to the
/// socket's stop and the socket. Nothing where the catalogue has no such fitting.
std::optional<Length> armLength(const Catalog& catalog, const std::string& pipe,
                                const std::string& size, EndFitting fitting);

/// The upper arm of a tee or of an elbow that turns up, at a run's end in a chamber.
struct UpperArm {
  Id vault;
  Id run;
  Length underLid; ///< from its top to the underside of the lid; negative: it reaches into the lid
  bool inManway = false; ///< stands whole within a manway's opening
  bool atEdge = false;   ///< stands partly in one, under the lid's edge
  Point2 at;
  Length toEdge{}; ///< from its outside to the edge of the opening that it stands whole within
};
/// In the plan's order of runs; of fittings that the catalogue knows.
std::vector<UpperArm> upperArms(const Plan& plan, const Catalog& catalog, const Study& study);

} // namespace sump
