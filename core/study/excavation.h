#pragma once
// Shape and volume of the digs for vaults. Private to core/study and its tests. Screening: soil is
// classified, and the dig inspected daily, by a competent person (29 CFR 1926.651(k), Subpart P
// App. A); local code and the engineer of the excavation support govern.

#include "core/geometry/box_index.h"
#include "core/geometry/frame.h"
#include "core/geometry/surface.h"
#include "core/plan/plan.h"
#include "core/study/context.h"

namespace sump {

/// How the sides of all digs are drawn.
struct DigSides {
  double slope = 0;    ///< run over rise where the dig is deep enough; 0: vertical
  double deepFrom = 0; ///< m; a shallower dig may stand vertical (29 CFR 1926.652(a)(1)(ii))
  /// Run over rise at a depth in metres.
  double at(double depth) const { return depth >= deepFrom - 1e-9 ? slope : 0; }
};

/// Previously disturbed soil is at best type B, soil that is not classified is type C (29 CFR
/// 1926 Subpart P App. A, 1926.652(b)(1)).
SoilClass soilForSides(const EarthBasis& earth);
/// Vertical in stable rock and where a shield, shoring, an engineer's design or nothing at all
/// holds the sides; sloped for the soil where that is chosen or nothing was chosen.
DigSides digSides(const EarthBasis& earth, const Limits& limits);

/// The dig of one vault: a rectangle at the bottom, its sides at one slope.
struct VaultDig {
  std::size_t vault = 0; ///< index into the plan's vaults
  Frame frame;
  Point2 along{1, 0};                   ///< direction of the frame's x, reckoned once
  double halfLength = 0, halfWidth = 0; ///< of the bottom
  double bottom = 0;                    ///< elevation
  double gradeHigh = 0, gradeMean = 0;  ///< at the top outline
  double slope = 0;                     ///< run over rise
  double reach = 0;                     ///< from the bottom's outline to the top's
  double depth() const { return gradeHigh > bottom ? gradeHigh - bottom : 0; }
  double meanDepth() const { return gradeMean > bottom ? gradeMean - bottom : 0; }
  /// The bottom outline grown by so much, with square corners.
  Ring outline(double by) const;
  Ring bottomOutline() const { return outline(0); }
  Ring topOutline() const { return outline(reach); }
  /// Elevation of the dug surface there: the bottom or its side; beyond an upright side nothing is
  /// dug, however high the ground.
  double surface(Point2 p) const;
};

/// Nothing when there is no ground.
std::optional<VaultDig> digOf(const Vault& vault, std::size_t index, const Surface& ground,
                              const DigSides& sides, const EarthFigures& figures);

/// Bank volume of one dig with even ground at its mean grade (prismoidal rule, exact for it).
double digVolume(const VaultDig& dig);
/// Of digs that run into each other: the sum of their volumes, less the share that they have in
/// common in plan at equal parts of their depths. Exact for digs of one depth or digs apart.
double digVolume(const std::vector<VaultDig>& digs);

/// Groups of digs whose tops overlap, as indices; groups and members in rising order.
std::vector<std::vector<std::size_t>> joinedDigs(const std::vector<Ring>& tops);

/// Farthest place in the outlines from the nearest of the ladders; nothing without ladders.
std::optional<double> farthestFrom(const std::vector<Ring>& outlines,
                                   const std::vector<Point2>& ladders);
/// Part of a line, as stations on it.
struct WayPart {
  double from = 0, to = 0;
};
/// The same along a line: ladders are the stations beside which they stand.
std::optional<double> farthestAlong(const std::vector<WayPart>& parts, std::vector<double> ladders);
/// One for each two travels' length begun, one at least.
int laddersFor(double length, double travel);

/// All digs for vaults, merged where they run into each other. Clashes and footings are left empty.
std::vector<PitStudy> pits(const StudyContext& context, const EarthFigures& figures,
                           const std::vector<std::optional<VaultDig>>& digs);

} // namespace sump
