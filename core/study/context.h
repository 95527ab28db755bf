#pragma once
// What every step of the study reads. Private to core/study.

#include "core/catalog/catalog.h"
#include "core/geometry/box_index.h"
#include "core/geometry/surface.h"
#include "core/plan/ends.h"
#include "core/plan/plan.h"
#include "core/study/study.h"

#include <map>
#include <optional>

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
  OutlineSet shells;     ///< vaults and basins: nothing is dug inside them at any depth
  OutlineSet floored;    ///< rooms, then buildings: the earth goes on below their floors
  std::vector<std::optional<double>> floors; ///< elevation, of each of `floored`
  OutlineSet traffic;                        ///< traffic pavements
  std::vector<Id> trafficIds;
};

/// Spot elevations as a surface, or the site's default level, or nothing.
Surface groundOf(const Plan& plan);

/// Shell levels, grade, cover and manways of each vault, in flow order.
std::vector<VaultStudy> vaultShells(const StudyContext& context);

/// A place on a path: on which leg, how far along it (0..1), and where that is.
struct PathPlace {
  std::size_t leg = 0;
  double along = 0;
  Point3 at;
};
/// The place nearest to `p` in plan, the first of several; nothing for fewer than two points.
std::optional<PathPlace> nearestPlace(const std::vector<Point3>& path, Point2 p);

/// Nominal size at a place on the run: that of the last reducer that stands before it.
std::string sizeAt(const Run& run, std::size_t leg, double along);

/// Points, legs, lengths and slopes of each run, in the plan's order.
std::vector<RunStudy> runPaths(const StudyContext& context);

/// Overflow inverts, rest levels and chamber volumes, from the last vault back to the first.
void fillWater(const StudyContext& context, const std::vector<RunStudy>& runs,
               std::vector<VaultStudy>& vaults);

/// Where a run goes through vault walls and baffles.
std::vector<Penetration> penetrations(const StudyContext& context, const Run& run,
                                      const RunStudy& study);
/// Least cover and least cover under traffic.
void fillCover(const StudyContext& context, RunStudy& run);
/// The first place from which the line falls by more than `tolerance` before it rises above that
/// place again, if any. One pass.
std::optional<HighPocket> highPocket(const std::vector<RunPoint>& points, Length tolerance);

/// The bends of a run and the stock fittings that make them.
std::vector<Bend> bends(const StudyContext& context, const Run& run, const RunStudy& study);

/// A tee that another run's end needs on this one.
struct Branch {
  double station = 0; ///< m along this run
  std::string size;   ///< of this run there
  std::string from;   ///< of the run that branches off
};
/// The run that another one ends on; zero where it ends elsewhere.
struct RunJoint {
  Length takeOut; ///< by its tee
  Length bore;    ///< its inside diameter
};
/// How a run is joined to others.
struct Joints {
  std::vector<Branch> branches; ///< of other runs on this one
  RunJoint start;               ///< with the run that this one starts from
  RunJoint end;                 ///< with the run that this one ends on
};
/// One for each run, in the plan's order.
std::vector<Joints> joints(const StudyContext& context, const std::vector<RunStudy>& runs);
/// Levels of the down legs at the run's ends, without their pieces; needs the water at rest.
std::vector<DownLeg> downLegs(const StudyContext& context, const Run& run, const RunStudy& study,
                              const std::vector<VaultStudy>& vaults);
/// Items, pipe pieces, sticks and the length to buy; needs bends and down legs.
void fillPieces(const StudyContext& context, const Run& run, const Joints& joints, RunStudy& study);

/// Sticks for these cuts: cuts longer than a stick take whole sticks first (joined by couplings or
/// bells); the remainders are packed best-fit decreasing, which is at most 11/9 of the least plus
/// one, as first-fit is (Johnson 1973, from memory), and needs no search through all sticks.
int sticksFor(std::vector<double> cuts, double stick);
/// Couplings in one cut: none for pipe with a bell on each stick.
int couplingsIn(Length cut, const PipeProduct& pipe);
/// The lengths to cut, in metres, by nominal size; pieces that the fittings leave no pipe for are
/// left out.
std::map<std::string, std::vector<double>> cutsBySize(const std::vector<PipePiece>& pieces);

std::vector<QuantityLine> takeOff(const StudyContext& context, const Study& study);

/// Each reads what the steps before it filled. In this order.
void fillHydraulics(const StudyContext& context, Study& study);
void fillTrain(const StudyContext& context, Study& study);
void fillEarth(const StudyContext& context, Study& study);
void fillWiring(const StudyContext& context, Study& study);

std::vector<Calculation> hydraulicsCalculations(const Plan& plan, const Study& study);
std::vector<Calculation> trainCalculations(const Plan& plan, const Study& study);
std::vector<Calculation> earthCalculations(const Plan& plan, const Study& study);
std::vector<Calculation> wiringCalculations(const Plan& plan, const Study& study);

} // namespace sump
