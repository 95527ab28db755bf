#pragma once
// Trenches for buried runs. Private to core/study and its tests.

#include "core/study/context.h"
#include "core/study/excavation.h"

namespace sump {

/// Greater of OD + 16 in and 1.25 OD + 12 in (ASTM D2321 practice, from memory; the two added
/// lengths are limits).
Length trenchWidth(Length outsideDiameter, const Limits& limits);

/// Areas of a trench's section from its bottom up, in m2: the bed, the pipe zone less the pipe, and
/// what is filled over it. A shallow trench has less of the upper ones.
struct TrenchSection {
  double bedding = 0, pipeZone = 0, backfill = 0, pipe = 0;
  double dug() const { return bedding + pipeZone + backfill + pipe; }
};
/// `slope`: run over rise of the sides. All lengths in metres.
TrenchSection trenchSection(double width, double depth, double slope, double bedding,
                            double pipeZone, double outsideDiameter);

/// What trenches are dug into: the ground, structures and the digs for vaults.
struct TrenchGround {
  const StudyContext& context;
  const EarthFigures& figures;
  DigSides sides;
  std::vector<VaultDig> digs;
  OutlineSet tops;           ///< of `digs`, in their order
  std::vector<Ring> bottoms; ///< the same
};

struct DugRun {
  std::optional<TrenchStudy> trench;
  std::optional<BackfilledRun> backfilled;
};

/// The trench of a run outside vaults and basins, under the ground, the floor of the building that
/// it passes below or the dug surface of the vaults' digs, whichever of these is there and lower.
/// Nothing where the run does not lie in the ground or no ground is known. Clashes and footings are
/// left empty. And what of it lies in vaults' digs over that.
DugRun trench(const TrenchGround& ground, const RunStudy& run);

/// Ladders that stand in the trench, and the farthest way to one from where it is deep. Who walks
/// in it follows its bends (29 CFR 1926.651(c)(2): lateral travel), so the way is that along the
/// centreline; where it passes through a pit, straight through.
void fillTrenchLadders(const TrenchGround& ground, TrenchStudy& trench);

} // namespace sump
