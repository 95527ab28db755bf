#pragma once
// What every step of the study reads. Private to core/study.

#include "core/catalog/catalog.h"
#include "core/geometry/box_index.h"
#include "core/geometry/surface.h"
#include "core/plan/ends.h"
#include "core/plan/plan.h"
#include "core/study/study.h"

namespace sump {

struct StudyContext {
  StudyContext(const Plan& plan, const Catalog& catalog, const Limits& limits);
  const Plan& plan;
  const Catalog& catalog;
  const Limits& limits;
  Locator locator;
  Surface ground;
  OutlineSet vaults;     ///< outside outlines, in the plan's order
  OutlineSet structures; ///< vaults, rooms, buildings, basins, wash equipment: no earth cover there
  OutlineSet traffic;    ///< traffic pavements
  std::vector<Id> trafficIds;
};

/// Spot elevations as a surface, or the site's default level, or nothing.
Surface groundOf(const Plan& plan);

/// Shell levels, grade, cover and manways of each vault, in flow order.
std::vector<VaultStudy> vaultShells(const StudyContext& context);

/// Points, legs, lengths and slopes of each run, in the plan's order.
std::vector<RunStudy> runPaths(const StudyContext& context);

/// Overflow inverts, rest levels and chamber volumes, from the last vault back to the first.
void fillWater(const StudyContext& context, const std::vector<RunStudy>& runs,
               std::vector<VaultStudy>& vaults);

/// Where a run goes through vault walls and baffles.
std::vector<Penetration> penetrations(const StudyContext& context, const RunStudy& run);
/// Least cover and least cover under traffic.
void fillCover(const StudyContext& context, RunStudy& run);
/// The first high pocket that falls by more than `tolerance` before the end, if any.
std::optional<HighPocket> highPocket(const std::vector<RunPoint>& points, Length tolerance);

/// The bends of a run and the stock fittings that make them.
std::vector<Bend> bends(const StudyContext& context, const Run& run, const RunStudy& study);

/// A tee that another run's end needs on this one.
struct Branch {
  double station = 0; ///< m along this run
};
std::vector<std::vector<Branch>> branches(const StudyContext& context,
                                          const std::vector<RunStudy>& runs);
/// Items, pipe pieces, sticks and the length to buy; needs bends.
void fillPieces(const StudyContext& context, const Run& run, const std::vector<Branch>& branches,
                RunStudy& study);

/// Sticks for these cuts: cuts longer than a stick take whole sticks first (joined by couplings or
/// bells); the remainders are packed first-fit decreasing, which is at most 11/9 of the least plus
/// one (Johnson 1973).
int sticksFor(std::vector<double> cuts, double stick);

std::vector<QuantityLine> takeOff(const StudyContext& context, const Study& study);

} // namespace sump
