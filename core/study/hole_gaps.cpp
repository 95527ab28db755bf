#include "core/study/hole_gaps.h"

#include "core/geometry/box_index.h"
#include "core/study/context.h"
#include "core/study/part_place.h"
#include "core/study/pass_slant.h"
#include "core/study/riser_passes.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <optional>

namespace sump {

namespace {

constexpr double kAlongWall = 1e-3; ///< of a unit: flatter, and the pipe lies in the wall

enum class Wall { LowEnd, HighEnd, LowSide, HighSide };

/// A hole in an outside wall, seen from outside: where along the wall from its middle the pipe's
/// axis goes, from one face to the other, and the pipe's outside from bottom to top.
struct Hole {
  Wall wall = Wall::LowEnd;
  Id run;
  double low = 0, high = 0, bottom = 0, top = 0;
  double stretch = 1; ///< of a slanting pipe's width across the face
  Point2 at;
  double halfWidth() const { return stretch * (top - bottom) / 2; }
  double middle() const { return (top + bottom) / 2; }
};

/// Bottom and top of a pipe's outside over its invert.
struct PipeHeights {
  double bottom = 0, top = 0;
};

PipeHeights heightsOf(const Catalog& catalog, const Run& run, const std::string& size) {
  const PipeSize* pipe = catalog.pipeSize(run.pipe, size);
  if (pipe == nullptr) return {};
  const double bore = inMetres(pipe->inside), wall = inMetres(pipe->outside - pipe->inside) / 2;
  return {-wall, bore + wall};
}

/// The holes of one vault.
class GapFinder {
public:
  GapFinder(const Catalog& catalog, const Vault& vault, const VaultStudy& studied)
      : catalog_(catalog), vault_(vault), studied_(studied) {}

  void addRun(const Run& run, const RunStudy& studied) {
    for (const Penetration& p : studied.penetrations) {
      if (p.vault == studied_.id && p.baffle.empty()) addHole(run, studied, p);
    }
    addRisers(run, studied);
  }
  void moveGapsTo(std::vector<HoleGap>& all) {
    for (std::size_t k = 0; k < holes_.size(); ++k) {
      addEdges(holes_[k]);
      for (std::size_t other = k + 1; other < holes_.size(); ++other)
        addPair(holes_[k], holes_[other]);
    }
    std::ranges::move(gaps_, std::back_inserter(all));
  }

private:
  void add(HoleEdge edge, const Id& run, Id other, double clear, Point2 at) {
    gaps_.push_back({edge, studied_.id, run, std::move(other), metres(clear), at});
  }
  void addHole(const Run& run, const RunStudy& studied, const Penetration& p);
  void addRisers(const Run& run, const RunStudy& studied);
  void slantHole(PassWay way, double side, Hole& hole) const;
  void addEdges(const Hole& hole);
  void addBaffles(const Hole& hole);
  void addPair(const Hole& a, const Hole& b);

  const Catalog& catalog_;
  const Vault& vault_;
  const VaultStudy& studied_;
  std::vector<Hole> holes_;
  std::vector<HoleGap> gaps_;
};

void GapFinder::addHole(const Run& run, const RunStudy& studied, const Penetration& p) {
  const Point2 local = vault_.frame().toLocal(flat(p.at));
  const PipeHeights pipe = heightsOf(catalog_, run, p.size);
  Hole hole{Wall::LowEnd,      run.id, local.y,   local.y, p.at.z + pipe.bottom,
            p.at.z + pipe.top, 1,      flat(p.at)};
  const bool atEnd = inEndWall(vault_, local);
  if (atEnd) {
    hole.wall = local.x < 0 ? Wall::LowEnd : Wall::HighEnd;
  } else {
    hole.wall = local.y < 0 ? Wall::LowSide : Wall::HighSide;
    hole.low = hole.high = local.x;
  }
  slantHole(wayThrough(studied, vault_, p), atEnd ? local.x : local.y, hole);
  holes_.push_back(std::move(hole));
}

/// From the outside face, which lies on this side of the vault's middle, to the inside one the axis
/// goes aside by the wall times the tangent of the slant.
void GapFinder::slantHole(PassWay way, double side, Hole& hole) const {
  if (std::abs(way.through) < kAlongWall) return;
  const double aside = -std::copysign(inMetres(vault_.wall), side) * way.along / way.through;
  (aside < 0 ? hole.low : hole.high) += aside;
  hole.stretch = 1 / std::abs(way.through);
}

void GapFinder::addRisers(const Run& run, const RunStudy& studied) {
  for (std::size_t i = 0; i < studied_.manways.size(); ++i) {
    const ManwayStudy& manway = studied_.manways[i];
    for (const RiserPass& pass :
         riserPasses(studied, studied_, manway, vault_.manways[i].diameter)) {
      const PipeHeights pipe = heightsOf(catalog_, run, pass.size);
      const double foot = pass.at.z + pipe.bottom - inMetres(studied_.lidTop);
      add(HoleEdge::RiserFoot, run.id, manway.id, foot, flat(pass.at));
      if (!manway.rim) continue;
      add(HoleEdge::RiserRim, run.id, manway.id, inMetres(*manway.rim) - pass.at.z - pipe.top,
          flat(pass.at));
    }
  }
}

void GapFinder::addEdges(const Hole& hole) {
  add(HoleEdge::Lid, hole.run, {}, inMetres(studied_.lidUnderside) - hole.top, hole.at);
  add(HoleEdge::Floor, hole.run, {}, hole.bottom - inMetres(studied_.floor), hole.at);
  const bool end = hole.wall == Wall::LowEnd || hole.wall == Wall::HighEnd;
  const double half = inMetres((end ? vault_.width : vault_.length) / 2.0 - vault_.wall);
  add(HoleEdge::Corner, hole.run, {}, half - std::max(-hole.low, hole.high) - hole.halfWidth(),
      hole.at);
  if (!end) addBaffles(hole);
}

void GapFinder::addBaffles(const Hole& hole) {
  const double inside = inMetres(vault_.wall) - inMetres(vault_.length) / 2;
  for (const Baffle& baffle : vault_.baffles) {
    const double from = inside + inMetres(baffle.offset), to = from + inMetres(baffle.thickness);
    const double apart = std::max(from - hole.high, hole.low - to);
    add(HoleEdge::Baffle, hole.run, baffle.id, apart - hole.halfWidth(), hole.at);
  }
}

void GapFinder::addPair(const Hole& a, const Hole& b) {
  if (a.wall != b.wall) return;
  const double aside = std::max({a.low - b.high, b.low - a.high, 0.0});
  const double apart = std::hypot(aside, a.middle() - b.middle());
  add(HoleEdge::Pipe, a.run, b.run, apart - a.halfWidth() - b.halfWidth(), a.at);
}

/// How far inside the edge of a manway's opening a place lies; negative: that far from the nearest.
double intoManway(const Vault& vault, Point2 at) {
  double most = -std::numeric_limits<double>::infinity();
  for (const Manway& manway : vault.manways) {
    const double apart = distance(vault.frame().toSite(manway.at), at);
    most = std::max(most, inMetres(manway.diameter) / 2 - apart);
  }
  return most;
}

std::optional<UpperArm> upperArm(const Plan& plan, const Catalog& catalog, const Study& study,
                                 const Run& run, const RunStudy& studied, bool atStart) {
  const RunEnd& end = atStart ? run.from : run.to;
  const bool up = end.fitting == EndFitting::Tee || end.fitting == EndFitting::ElbowUp;
  const VaultStudy* vault = end.kind == EndKind::Chamber ? study.vault(end.target) : nullptr;
  if (!up || vault == nullptr) return std::nullopt;
  const std::string size = atStart ? run.size : sizeAt(run, studied.legs.size(), 0);
  const auto arm = armLength(catalog, run.pipe, size, end.fitting);
  if (!arm) return std::nullopt;
  const PipeSize& pipe = *catalog.pipeSize(run.pipe, size);
  const Point3 at = (atStart ? studied.points.front() : studied.points.back()).at;
  const double top = at.z + inMetres(pipe.inside / 2.0 + *arm);
  const double into = intoManway(*plan.vaults.find(vault->id), flat(at));
  const double radius = inMetres(pipe.outside) / 2;
  const Length underLid = vault->lidUnderside - metres(top);
  return UpperArm{vault->id,
                  run.id,
                  underLid,
                  into >= radius,
                  std::abs(into) < radius,
                  flat(at),
                  metres(into - radius)};
}

} // namespace

/// A socket is taken as deep as half the pipe's outside (about as those of ASTM D2467 are, from
/// memory).
std::optional<Length> armLength(const Catalog& catalog, const std::string& pipe,
                                const std::string& size, EndFitting fitting) {
  const PipeSize* found = catalog.pipeSize(pipe, size);
  const FittingFamily* family = catalog.fittingsFor(pipe);
  if (found == nullptr || family == nullptr) return std::nullopt;
  const auto takeOut =
      family->takeOut(fitting == EndFitting::Tee ? FittingKind::Tee : FittingKind::Elbow90, size);
  if (!takeOut) return std::nullopt;
  return *takeOut + found->outside / 2.0;
}

std::vector<HoleGap> holeGaps(const Plan& plan, const Catalog& catalog, const Study& study) {
  std::vector<GapFinder> finders;
  std::vector<Box> boxes;
  for (std::size_t v = 0; v < study.vaults.size(); ++v) {
    finders.emplace_back(catalog, plan.vaults[v], study.vaults[v]);
    boxes.push_back(boxOf(study.vaults[v].outline));
  }
  const BoxIndex near(boxes);
  for (std::size_t i = 0; i < study.runs.size(); ++i) {
    const RunStudy& run = study.runs[i];
    if (!run.resolved) continue;
    for (std::size_t v : near.touching(boxOf(planLine(run))))
      finders[v].addRun(plan.runs[i], run);
  }
  std::vector<HoleGap> gaps;
  for (GapFinder& finder : finders)
    finder.moveGapsTo(gaps);
  return gaps;
}

std::optional<Length> leastGap(const std::vector<HoleGap>& gaps, const Id& vault, const Id& run,
                               Point2 at) {
  constexpr double kOnePlace = 1e-6; // m
  std::optional<Length> least;
  for (const HoleGap& gap : gaps) {
    const bool pair = gap.edge == HoleEdge::Pipe;
    const bool own = gap.run == run && distance(gap.at, at) < kOnePlace;
    if (gap.vault != vault || !(own || (pair && gap.other == run))) continue;
    const Length clear = pair ? gap.clear / 2.0 : gap.clear;
    least = std::min(least.value_or(clear), clear);
  }
  return least;
}

std::vector<UpperArm> upperArms(const Plan& plan, const Catalog& catalog, const Study& study) {
  std::vector<UpperArm> arms;
  for (std::size_t i = 0; i < study.runs.size(); ++i) {
    if (!study.runs[i].resolved) continue;
    for (bool atStart : {true, false}) {
      const auto arm = upperArm(plan, catalog, study, plan.runs[i], study.runs[i], atStart);
      if (arm) arms.push_back(*arm);
    }
  }
  return arms;
}

} // namespace sump
