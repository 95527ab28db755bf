#pragma once
// What a dig may run into: buildings and their footings, the boundary, traffic pavement, wells,
// lines in the ground. Private to core/study.

#include "core/geometry/box_index.h"
#include "core/study/context.h"
#include "core/study/excavation.h"
#include "core/study/trench.h"

namespace sump {

/// What stands on a footing: a building, or a room that no building holds, whose footing nobody has
/// told.
struct Footed {
  Id id;
  std::string name;
  Ring outline;
  std::optional<Length> footing;
};

class DigSurroundings {
public:
  /// `digs`: one for each vault of the plan.
  DigSurroundings(const StudyContext& context, const std::vector<std::optional<VaultDig>>& digs);

  void fillPit(PitStudy& pit) const;
  /// A building that the run goes into, and a boundary that it crosses, are meant and no clash.
  void fillTrench(const RunStudy& run, TrenchStudy& trench) const;

private:
  void clashesOf(const Ring& top, const std::vector<Id>& entered, bool crossesBoundary,
                 std::vector<DigClash>& clashes) const;
  void footingsOf(const VaultDig& dig, std::vector<FootingCheck>& footings) const;
  std::vector<Id> enteredBy(const Polyline& line) const;

  const StudyContext& context_;
  const std::vector<std::optional<VaultDig>>& digs_;
  std::vector<Footed> footed_;
  OutlineSet buildings_; ///< outlines of `footed_`
  BoxIndex utilities_;
};

/// Adds to each pit the runs that pass through it and end in none of its vaults: they are laid over
/// its backfill, or hang across it when it is opened again.
void addPassingRuns(const StudyContext& context, const std::vector<RunStudy>& runs,
                    const TrenchGround& ground, std::vector<PitStudy>& pits);

/// Adds to each pit the trenches that run along it: they share ground with it, but their line does
/// not go through it.
void addTrenchesBeside(const StudyContext& context, const std::vector<TrenchStudy>& trenches,
                       const TrenchGround& ground, std::vector<PitStudy>& pits);

/// How far a dig's bottom lies below the plane that falls at 45 degrees from the outside edge of a
/// footing's underside (IPC 307.5; 29 CFR 1926.651(i)(2) asks for support or an engineer), in
/// metres; 0 or less: clear. `distance` from the building to the toe, `slope` of the side that
/// faces it as run over rise.
double belowFootingPlane(double footing, double toe, double distance, double slope);

} // namespace sump
