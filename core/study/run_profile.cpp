// The long section of one run: its own line, straightened, and what it meets on its way.

#include "core/study/access_risers.h"
#include "core/study/connections.h"
#include "core/study/cut_line.h"
#include "core/study/down_legs.h"
#include "core/study/part_place.h"
#include "core/study/profile.h"
#include "core/study/profile_joints.h"

#include "core/geometry/box_index.h"
#include "core/geometry/polygon.h"
#include "core/plan/edits_levels.h"
#include "core/study/object_names.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kSameStation = 1e-6; // m
constexpr double kBeyondRun = 0.5;    ///< shown beyond the run and the vaults at its ends, m
/// An end that hangs on another run, this near to where the two lines meet, is their joint.
constexpr double kJoint = 0.01;

class RunProfiler {
public:
  RunProfiler(const Plan& plan, const Study& study, const Catalog& catalog, const Run& run,
              const RunStudy& found)
      : plan_(plan), study_(study), catalog_(catalog), run_(run), found_(found) {}

  RunProfile make();

private:
  void cut();
  double beyond(const RunEnd& end, double station, bool backward, const CutLine& trial) const;
  void addLegs();
  void addPoints();
  void addParts();
  void addVaults();
  void cutInside(const Vault& vault, CutSpan span, ProfileVault& cut) const;
  void addVault(const Vault& vault, const VaultStudy& shell, CutSpan span);
  void addStructure(StructureKind kind, const Id& id, const std::string& name, const Ring& outline,
                    std::optional<Length> level, std::optional<Length> bottom);
  void addBasin(const Basin& basin);
  void addStructures();
  void addCrossings();
  void crossRun(const Run& other, const RunStudy& study);
  void crossUtility(const Utility& utility);
  void addCrossing(ProfileCrossing crossing, std::size_t leg, double along);
  bool joined(const Run& other, const RunStudy& study, Point2 at) const;
  bool taps(const Utility& utility, Point2 at) const;
  void fillCover();
  bool buried(double station) const;
  double legStation(std::size_t leg, double along) const;

  const Plan& plan_;
  const Study& study_;
  const Catalog& catalog_;
  const Run& run_;
  const RunStudy& found_;
  CutLine line_;
  RunProfile profile_;
};

/// How far past an end in a chamber the vault goes on, straight ahead.
double RunProfiler::beyond(const RunEnd& end, double station, bool backward,
                           const CutLine& trial) const {
  const Vault* vault = end.kind == EndKind::Chamber ? plan_.vaults.find(end.target) : nullptr;
  if (vault == nullptr) return 0;
  for (const CutSpan& span : trial.within(outline(*vault))) {
    if (span.from > station + kSameStation || span.to < station - kSameStation) continue;
    return backward ? station - span.from : span.to - station;
  }
  return 0;
}

void RunProfiler::cut() {
  const Polyline line = planLine(found_);
  Point2 axis{1, 0}; // of a run that only rises: that of its vault
  double most = kBeyondRun;
  for (const RunEnd* end : {&run_.from, &run_.to}) {
    const Vault* vault = end->kind == EndKind::Chamber ? plan_.vaults.find(end->target) : nullptr;
    if (vault == nullptr) continue;
    axis = vault->frame().toSite({1, 0}) - vault->centre;
    most = std::max(most, inMetres(vault->length + vault->width));
  }
  const CutLine trial(line, most, most, axis);
  profile_.length = inMetres(found_.plan);
  double before = beyond(run_.from, 0, true, trial);
  double after = beyond(run_.to, profile_.length, false, trial);
  if (profile_.length < kSameStation) { // both ends stand in the same place
    before = std::max(before, beyond(run_.to, 0, true, trial));
    after = std::max(after, beyond(run_.from, 0, false, trial));
  }
  before += kBeyondRun;
  after += kBeyondRun;
  line_ = CutLine(line, before, after, axis);
  profile_.from = line_.from();
  profile_.to = line_.to();
}

void RunProfiler::addLegs() {
  for (std::size_t i = 0; i < found_.legs.size(); ++i) {
    const Leg& leg = found_.legs[i];
    profile_.legs.push_back(
        {leg.size, profileBore(catalog_, run_.pipe, leg.size), leg.slope, leg.vertical});
  }
}

void RunProfiler::addPoints() {
  double station = 0;
  for (std::size_t i = 0; i < found_.points.size(); ++i) {
    const RunPoint& found = found_.points[i];
    if (i > 0) station += inMetres(found_.legs[i - 1].plan);
    ProfilePoint point;
    point.vertex = found.vertex;
    point.station = station;
    point.at = flat(found.at);
    point.invert = metres(found.at.z);
    if (found.grade) point.ground = metres(*found.grade);
    point.typed = statedInvert(run_, found.vertex).has_value();
    profile_.points.push_back(point);
  }
  for (std::size_t i = 0; i < profile_.legs.size(); ++i) {
    if (!profile_.legs[i].vertical) continue;
    const ProfilePoint &a = profile_.points[i], &b = profile_.points[i + 1];
    if (a.invert != b.invert) profile_.drops.push_back({i, a.station, a.invert, b.invert});
  }
}

double RunProfiler::legStation(std::size_t leg, double along) const {
  const double a = profile_.points[leg].station, b = profile_.points[leg + 1].station;
  return a + along * (b - a);
}

void RunProfiler::addParts() {
  const std::vector<AccessRiser> risers = accessRisers(plan_, study_, found_);
  for (const InlinePart& part : run_.parts) {
    const auto leg = static_cast<std::size_t>(std::max(0, part.leg));
    if (leg >= profile_.legs.size()) continue; // consistency reports it
    const Length a = profile_.points[leg].invert, b = profile_.points[leg + 1].invert;
    profile_.parts.push_back(
        {part.id, part.kind, leg, legStation(leg, part.along), a + part.along * (b - a)});
    const auto riser = std::ranges::find(risers, part.id, &AccessRiser::part);
    if (riser != risers.end()) profile_.parts.back().cover = riser->grade;
  }
}

void RunProfiler::cutInside(const Vault& vault, CutSpan span, ProfileVault& cut) const {
  const std::vector<ChamberBox> boxes = chambers(vault);
  const auto each = [&](Point2 low, Point2 high, const auto& use) {
    for (const CutSpan& s : line_.within(vault.frame().rectangle(low, high))) {
      if (s.from >= span.from && s.to <= span.to) use(s);
    }
  };
  for (const ChamberBox& box : boxes) {
    each(box.low, box.high, [&](const CutSpan& s) {
      cut.chambers.push_back(profileChamber(study_, vault.id, box.number, s));
    });
  }
  for (std::size_t i = 0; i < vault.baffles.size() && i + 1 < boxes.size(); ++i) {
    const Baffle& baffle = vault.baffles[i];
    const Point2 low{boxes[i].high.x, boxes[i].low.y}, high{boxes[i + 1].low.x, boxes[i].high.y};
    each(low, high, [&](const CutSpan& s) {
      cut.baffles.push_back({baffle.id, s.from, s.to, cut.floor + baffle.bottomGap,
                             cut.lidUnderside - baffle.topGap});
    });
  }
}

void RunProfiler::addVault(const Vault& vault, const VaultStudy& shell, CutSpan span) {
  ProfileVault cut = profileShell(vault, shell);
  cut.from = span.from;
  cut.to = span.to;
  cutInside(vault, span, cut);
  cut.insideFrom = cut.insideTo = span.middle();
  bool first = true;
  const auto take = [&](double from, double to) {
    cut.insideFrom = first ? from : std::min(cut.insideFrom, from);
    cut.insideTo = first ? to : std::max(cut.insideTo, to);
    first = false;
  };
  for (const ProfileChamber& c : cut.chambers)
    take(c.from, c.to);
  for (const ProfileBaffle& b : cut.baffles)
    take(b.from, b.to);
  cut.manways = profileManways(vault, shell, line_, cut);
  profile_.vaults.push_back(std::move(cut));
}

void RunProfiler::addVaults() {
  for (const Vault& vault : plan_.vaults) {
    const VaultStudy* shell = study_.vault(vault.id);
    if (shell == nullptr) continue;
    for (const CutSpan& span : line_.within(outline(vault)))
      addVault(vault, *shell, span);
  }
  std::ranges::stable_sort(profile_.vaults, {}, &ProfileVault::from);
}

void RunProfiler::addStructure(StructureKind kind, const Id& id, const std::string& name,
                               const Ring& outline, std::optional<Length> level,
                               std::optional<Length> bottom) {
  for (const CutSpan& span : line_.within(outline))
    profile_.structures.push_back({kind, id, name, span.from, span.to, level, bottom});
}

void RunProfiler::addBasin(const Basin& basin) {
  const std::optional<Length> low = bottom(basin);
  for (const CutSpan& span : line_.within(outline(basin)))
    profile_.structures.push_back({StructureKind::Basin, basin.id, basin.name, span.from, span.to,
                                   basin.rim, low.value_or(basin.outletInvert),
                                   low ? std::optional(basin.outletInvert) : std::nullopt});
}

void RunProfiler::addStructures() {
  for (const Building& b : plan_.buildings)
    addStructure(StructureKind::Building, b.id, b.name, b.outline, b.floor, b.footing);
  for (const EquipmentRoom& r : plan_.rooms)
    addStructure(StructureKind::Room, r.id, r.name, outline(r), r.floor, std::nullopt);
  for (const Basin& b : plan_.basins)
    addBasin(b);
}

/// Where one run branches off the other they are meant to meet.
bool RunProfiler::joined(const Run& other, const RunStudy& study, Point2 at) const {
  const auto hangs = [at](const RunEnd& end, const Id& on, Point3 place) {
    return end.kind == EndKind::Run && end.target == on && distance(flat(place), at) < kJoint;
  };
  return hangs(other.from, run_.id, study.points.front().at) ||
         hangs(other.to, run_.id, study.points.back().at) ||
         hangs(run_.from, other.id, found_.points.front().at) ||
         hangs(run_.to, other.id, found_.points.back().at);
}

/// Where this run joins an existing line, or the sewer through a connection that stands on it.
bool RunProfiler::taps(const Utility& utility, Point2 at) const {
  constexpr double kAtEnd = 0.05; // m
  return std::ranges::any_of(connections(plan_, run_, found_), [&](const Connection& made) {
    const bool sewer = made.kind == ConnectionKind::Sewer && utility.kind == UtilityKind::Sewer;
    return (sewer || made.other == utility.id) && distance(made.at, at) < kAtEnd;
  });
}

/// `along` the leg of this run that it meets. A crossing at a corner meets two legs in one place.
void RunProfiler::addCrossing(ProfileCrossing crossing, std::size_t leg, double along) {
  crossing.station = legStation(leg, along);
  for (const ProfileCrossing& other : profile_.crossings) {
    if (other.id == crossing.id && std::abs(other.station - crossing.station) < kSameStation)
      return;
  }
  const Length invert = profile_.points[leg].invert +
                        along * (profile_.points[leg + 1].invert - profile_.points[leg].invert);
  const std::optional<ProfileBore>& bore = profile_.legs[leg].bore;
  if (crossing.underside && crossing.top) {
    crossing.above = *crossing.underside + *crossing.top > 2.0 * invert;
    if (bore) {
      crossing.above =
          *crossing.underside + *crossing.top > bore->underside(invert) + bore->top(invert);
    }
    if (bore && *crossing.top > *crossing.underside) {
      crossing.clearance = crossing.above ? *crossing.underside - bore->top(invert)
                                          : bore->underside(invert) - *crossing.top;
    }
  }
  profile_.crossings.push_back(std::move(crossing));
}

void RunProfiler::crossRun(const Run& other, const RunStudy& study) {
  for (std::size_t i = 0; i + 1 < found_.points.size(); ++i) {
    if (profile_.legs[i].vertical) continue;
    const Point3 a = found_.points[i].at, b = found_.points[i + 1].at;
    for (std::size_t k = 0; k + 1 < study.points.size(); ++k) {
      if (study.legs[k].vertical) continue;
      const Point3 c = study.points[k].at, d = study.points[k + 1].at;
      const auto hit = crossSegments(flat(a), flat(b), flat(c), flat(d));
      if (!hit) continue;
      const Point3 p = lerp(c, d, hit->alongSecond);
      if (joined(other, study, flat(p))) continue;
      if (isFloorBetween(plan_, lerp(a, b, hit->alongFirst), p)) continue;
      ProfileCrossing crossing{other.id, other.name, other.service, 0, flat(p), {}, {}, {}, false};
      if (const auto bore = profileBore(catalog_, other.pipe, study.legs[k].size)) {
        crossing.underside = bore->underside(metres(p.z));
        crossing.top = bore->top(metres(p.z));
      }
      addCrossing(std::move(crossing), i, hit->alongFirst);
    }
  }
}

/// An existing line lies level; without its diameter its outside is not known, and both are told as
/// its axis.
void RunProfiler::crossUtility(const Utility& utility) {
  for (std::size_t i = 0; i + 1 < found_.points.size(); ++i) {
    if (profile_.legs[i].vertical) continue;
    const Point2 a = flat(found_.points[i].at), b = flat(found_.points[i + 1].at);
    for (std::size_t k = 0; k + 1 < utility.path.size(); ++k) {
      const auto hit = crossSegments(a, b, utility.path[k], utility.path[k + 1]);
      if (!hit) continue;
      ProfileCrossing crossing{
          utility.id, utility.name, std::nullopt, 0,    lerp(a, b, hit->alongFirst),
          {},         {},           {},           false};
      crossing.joined = taps(utility, crossing.at);
      if (utility.elevation) {
        const Length half = utility.diameter.value_or(metres(0)) / 2.0;
        crossing.underside = *utility.elevation - half;
        crossing.top = *utility.elevation + half;
      }
      addCrossing(std::move(crossing), i, hit->alongFirst);
    }
  }
}

void RunProfiler::addCrossings() {
  const Box box = boxOf(planLine(found_));
  const auto apart = [&](const Polyline& line) {
    const Box other = boxOf(line);
    return other.low.x > box.high.x || other.high.x < box.low.x || other.low.y > box.high.y ||
           other.high.y < box.low.y;
  };
  for (const Run& other : plan_.runs) {
    const RunStudy* study = other.id == run_.id ? nullptr : study_.run(other.id);
    if (study != nullptr && study->resolved && !apart(planLine(*study))) crossRun(other, *study);
  }
  for (const Utility& utility : plan_.utilities) {
    if (!utility.path.empty() && !apart(utility.path)) crossUtility(utility);
  }
  std::ranges::stable_sort(profile_.crossings, {}, &ProfileCrossing::station);
  for (ProfileCrossing& c : profile_.crossings)
    c.repeated = std::ranges::count(profile_.crossings, c.id, &ProfileCrossing::id) > 1;
}

bool RunProfiler::buried(double station) const {
  const auto holds = [station](const auto& thing) {
    return station >= thing.from - kSameStation && station <= thing.to + kSameStation;
  };
  return std::ranges::none_of(profile_.vaults, holds) &&
         std::ranges::none_of(profile_.structures, holds);
}

void RunProfiler::fillCover() {
  for (std::size_t i = 0; i < profile_.points.size() && !profile_.legs.empty(); ++i) {
    ProfilePoint& point = profile_.points[i];
    const auto& bore = profile_.legs[std::min(i, profile_.legs.size() - 1)].bore;
    if (!point.ground || !bore || !buried(point.station)) continue;
    const Length cover = *point.ground - bore->top(point.invert);
    if (cover > metres(0)) point.cover = cover;
  }
  if (found_.leastCover) {
    profile_.leastCover =
        ProfileCover{line_.nearest(found_.leastCover->at).first, found_.leastCover->cover};
  }
}

/// A sewer, wash equipment or another run by its name; vaults, basins and rooms are drawn.
std::string endName(const Plan& plan, const RunEnd& end) {
  if (end.kind == EndKind::Sewer || end.kind == EndKind::Wash) return spokenName(plan, end.target);
  return end.kind == EndKind::Run ? end.target : std::string();
}

RunProfile RunProfiler::make() {
  profile_.run = run_.id;
  profile_.name = run_.name;
  profile_.service = run_.service;
  profile_.groundwater = plan_.site.groundwater;
  profile_.startFitting = run_.from.fitting;
  profile_.endFitting = run_.to.fitting;
  profile_.startLeg = legEnd(found_, true);
  profile_.endLeg = legEnd(found_, false);
  profile_.startsAt = endName(plan_, run_.from);
  profile_.endsAt = endName(plan_, run_.to);
  cut();
  addLegs();
  addPoints();
  addParts();
  profile_.branches = profileBranches(plan_, study_, catalog_, run_.id, line_);
  profile_.floatLevel = floatLevel(study_, run_);
  addVaults();
  addStructures();
  addCrossings();
  fillCover();
  profile_.ground = groundAlong(study_.ground, line_, profile_.from, profile_.to);
  return std::move(profile_);
}

} // namespace

std::optional<RunProfile> runProfile(const Plan& plan, const Study& study, const Catalog& catalog,
                                     std::string_view id) {
  const Run* run = plan.runs.find(id);
  const RunStudy* found = run == nullptr ? nullptr : study.run(run->id);
  if (found == nullptr || !found->resolved || found->points.size() < 2) return std::nullopt;
  return RunProfiler(plan, study, catalog, *run, *found).make();
}

} // namespace sump
