#include "core/sheet/section_marks.h"

#include "core/sheet/section_frames.h"
#include "core/sheet/section_pen.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

Point2 placeOf(const SectionPlane& plane, const ProfilePoint& p) {
  return plane.at(p.station, p.invert);
}
Point2 placeOf(const SectionPlane& plane, const TrainPoint& p) {
  return plane.at(p.station, p.invert);
}

/// The longest piece gets the arrow.
template <class Point>
void markArrow(SectionPen& pen, const SectionPlane& plane, const Id& id, Service service,
               const std::vector<Point>& points) {
  std::size_t longest = 0;
  double length = 0;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const double d = std::abs(points[i + 1].station - points[i].station);
    if (d > length) {
      length = d;
      longest = i;
    }
  }
  if (length > 0)
    pen.arrow(id, service, placeOf(plane, points[longest]), placeOf(plane, points[longest + 1]));
}

void markTrainRun(SectionPen& pen, const SectionPlane& plane, const TrainRun& run) {
  const auto& points = run.points;
  for (std::size_t i = 0; i + 1 < points.size(); ++i)
    pen.pipe(run.id, run.service, run.bore, placeOf(plane, points[i]),
             placeOf(plane, points[i + 1]));
  markArrow(pen, plane, run.id, run.service, points);
  if (points.size() > 1 && !run.comesFromElsewhere)
    pen.end(run.id, run.service, run.startFitting, run.bore, placeOf(plane, points[0]),
            placeOf(plane, points[1]), run.startLeg);
  if (points.size() > 1 && !run.goesElsewhere)
    pen.end(run.id, run.service, run.endFitting, run.bore, placeOf(plane, points.back()),
            placeOf(plane, points[points.size() - 2]), run.endLeg);
  for (const bool first : {true, false}) {
    if (first ? !run.comesFromElsewhere : !run.goesElsewhere) continue;
    const TrainPoint& broken = first ? points.front() : points.back();
    if (!run.throughSide) {
      pen.breakOff(run.id, placeOf(plane, broken));
    } else if (run.bore) {
      pen.endOn(run.id, run.service, broken.station, run.bore->underside(broken.invert),
                run.bore->top(broken.invert));
    }
  }
}

/// On the leg where the other run ends.
void markBranch(SectionPen& pen, const RunProfile& profile, const ProfileBranch& branch) {
  for (std::size_t i = 0; i < profile.legs.size(); ++i) {
    const ProfilePoint &a = profile.points[i], &b = profile.points[i + 1];
    constexpr double kSlack = 1e-3; // m
    if (profile.legs[i].vertical || branch.station < a.station - kSlack ||
        branch.station > b.station + kSlack)
      continue;
    const double length = b.station - a.station;
    const double along = length > 0 ? (branch.station - a.station) / length : 0;
    pen.branch(profile.run, profile.service, branch, profile.legs[i].bore,
               a.invert + along * (b.invert - a.invert));
    return;
  }
}

/// Widens to hold a level.
void take(SectionExtent& extent, Length level) {
  extent.low = std::min(extent.low, level);
  extent.high = std::max(extent.high, level);
}

void take(SectionExtent& extent, const std::vector<ProfileVault>& vaults,
          const std::vector<ProfileGround>& ground) {
  for (const ProfileVault& vault : vaults) {
    take(extent, vault.underside);
    take(extent, vault.lidTop);
    for (const ProfileManway& m : vault.manways) {
      if (m.rim) take(extent, *m.rim);
    }
  }
  for (const ProfileGround& g : ground)
    take(extent, g.level);
}

/// Water in the ground that is nearly as high as a vault's base is shown: the vault could float.
SectionExtent roomy(SectionExtent extent, const std::vector<ProfileVault>& vaults,
                    const std::optional<Length>& groundwater) {
  constexpr Length kNear = metres(1), kUnderWater = metres(0.1);
  const Length air = std::max(0.06 * (extent.high - extent.low), metres(0.15));
  const bool near = groundwater && !vaults.empty() && *groundwater > extent.low - kNear;
  extent.low -= air;
  extent.high += air;
  if (near) extent.low = std::min(extent.low, *groundwater - kUnderWater);
  return extent;
}

} // namespace

SectionExtent sectionExtent(const RunProfile& profile) {
  SectionExtent extent{profile.from, profile.to, profile.points[0].invert,
                       profile.points[0].invert};
  for (std::size_t i = 0; i < profile.points.size(); ++i) {
    const auto& bore = profile.legs[std::min(i, profile.legs.size() - 1)].bore;
    take(extent, profile.points[i].invert);
    if (bore) take(extent, bore->crown(profile.points[i].invert));
  }
  for (const ProfileCrossing& c : profile.crossings) {
    if (c.underside) take(extent, *c.underside);
    if (c.top) take(extent, *c.top);
  }
  for (const ProfileStructure& s : profile.structures) {
    if (s.level) take(extent, *s.level);
    const bool footed = s.kind == StructureKind::Building && !cutWalls(profile, s).empty();
    if (s.bottom && (footed || s.kind == StructureKind::Basin)) take(extent, *s.bottom);
  }
  for (const CutWall& wall : passedWalls(profile))
    take(extent, wall.high);
  for (const ProfilePart& part : profile.parts) {
    if (part.cover) take(extent, *part.cover);
  }
  take(extent, profile.vaults, profile.ground);
  return roomy(extent, profile.vaults, profile.groundwater);
}

SectionExtent sectionExtent(const TrainProfile& profile) {
  const Length first = profile.vaults.front().floor;
  SectionExtent extent{profile.from, profile.to, first, first};
  take(extent, profile.vaults, profile.ground);
  for (const TrainRun& run : profile.runs) {
    if (!run.carriesFlow) continue; // a vent's top would leave nothing of the vaults
    for (const TrainPoint& p : run.points)
      take(extent, p.invert);
  }
  return roomy(extent, profile.vaults, profile.groundwater);
}

const ProfileChamber* suctionChamber(const TrainProfile& profile) {
  if (profile.vaults.empty() || profile.vaults.back().chambers.empty()) return nullptr;
  const std::vector<ProfileChamber>& chambers = profile.vaults.back().chambers;
  for (const TrainRun& run : profile.runs) {
    if (run.service != Service::Suction || run.points.empty()) continue;
    const double at = run.points.front().station;
    for (const ProfileChamber& c : chambers) {
      if (at >= c.from && at <= c.to) return &c;
    }
  }
  return &chambers.back();
}

bool repeats(const std::vector<ProfilePoint>& points, std::size_t i) {
  if (i == 0 || i >= points.size()) return false;
  const ProfilePoint &a = points[i - 1], &b = points[i];
  return std::abs(b.station - a.station) < 1e-6 &&
         std::abs(inMetres(b.invert - a.invert)) < kSameLevel;
}

double groundwaterSign(double from, double to) {
  return from + 0.03 * (to - from);
}

double lowWaterSign(const ProfileChamber& chamber) {
  return chamber.from + 0.7 * (chamber.to - chamber.from);
}

bool isIndoors(const RunProfile& profile, double station) {
  return std::ranges::any_of(profile.structures, [&](const ProfileStructure& s) {
    return s.kind != StructureKind::Basin && s.level && station > s.from - kSameLevel &&
           station < s.to + kSameLevel;
  });
}

namespace {

/// The run's lowest invert there, or where it ends before that.
Length lowestAt(const RunProfile& profile, double station) {
  const std::vector<ProfilePoint>& points = profile.points;
  const double at = std::clamp(station, points.front().station, points.back().station);
  Length lowest = metres(1e9);
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const ProfilePoint &a = points[i], &b = points[i + 1];
    if (at < a.station - kSameLevel || at > b.station + kSameLevel) continue;
    const double length = b.station - a.station;
    const Length there = length > kSameLevel
                             ? a.invert + (at - a.station) / length * (b.invert - a.invert)
                             : std::min(a.invert, b.invert);
    lowest = std::min(lowest, there);
  }
  return lowest;
}

/// Where buildings touch and a room in this one reaches the line clear, the one wall is the
/// other's.
bool isOthersWall(const RunProfile& profile, const ProfileStructure& building, double at) {
  const bool left = at == building.from;
  const auto ends = [&](const ProfileStructure& s, StructureKind kind, bool atItsLeft) {
    return s.kind == kind && std::abs((atItsLeft ? s.from : s.to) - at) < kSameLevel;
  };
  return std::ranges::any_of(profile.structures,
                             [&](const auto& s) { return ends(s, StructureKind::Room, left); }) &&
         std::ranges::any_of(profile.structures, [&](const auto& s) {
           return ends(s, StructureKind::Building, !left);
         });
}

} // namespace

std::vector<double> cutWalls(const RunProfile& profile, const ProfileStructure& structure) {
  std::vector<double> walls;
  for (double at : {structure.from, structure.to}) {
    const bool shown = at > profile.from + kSameLevel && at < profile.to - kSameLevel;
    const bool under = structure.level && lowestAt(profile, at) < *structure.level;
    if (shown && under && !isOthersWall(profile, structure, at)) walls.push_back(at);
  }
  return walls;
}

namespace {

constexpr double kThickestWall = 0.6; // m

/// From the face `at` of a building inward: to the face of a room against it.
double wallThickness(const RunProfile& profile, double at, double inward) {
  constexpr double kDrawn = 0.2; // m
  double thick = kDrawn;
  for (const ProfileStructure& room : profile.structures) {
    if (room.kind != StructureKind::Room) continue;
    const double off = ((inward > 0 ? room.from : room.to) - at) * inward;
    if (off > -kSameLevel && off < kThickestWall) thick = off;
  }
  return thick;
}

/// A building's wall stands there, between its outside and the room.
bool standsInBuilding(const RunProfile& profile, double face, double outward) {
  return std::ranges::any_of(profile.structures, [&](const ProfileStructure& s) {
    const double off = ((outward > 0 ? s.to : s.from) - face) * outward;
    return s.kind == StructureKind::Building && off > -kSameLevel && off < kThickestWall;
  });
}

} // namespace

std::vector<CutWall> passedWalls(const RunProfile& profile) {
  constexpr double kPartition = 0.1; // m; drawn only
  constexpr Length kOver = metres(0.4), kPipe = metres(0.1);
  std::vector<CutWall> walls;
  for (const ProfileStructure& s : profile.structures) {
    if (s.kind == StructureKind::Basin || !s.level) continue;
    for (const double inward : {1.0, -1.0}) {
      const double at = inward > 0 ? s.from : s.to;
      const bool passed = at > profile.points.front().station + kSameLevel &&
                          at < profile.points.back().station - kSameLevel;
      if (!passed || lowestAt(profile, at) < *s.level) continue;
      double face = at;
      if (s.kind == StructureKind::Building) {
        face += inward * wallThickness(profile, at, inward);
      } else if (!standsInBuilding(profile, at, -inward)) {
        face -= inward * kPartition;
      }
      if (std::abs(face - at) < kSameLevel) continue;
      walls.push_back({s.id, s.kind, std::min(at, face), std::max(at, face), *s.level - kDrawnSlab,
                       lowestAt(profile, at) + kPipe + kOver});
    }
  }
  return walls;
}

std::vector<std::vector<ProfileGround>> openGround(const RunProfile& profile) {
  std::vector<std::vector<ProfileGround>> pieces;
  const std::vector<ProfileGround>& ground = profile.ground;
  bool open = false;
  const auto add = [&](const ProfileGround& g) {
    if (!open) pieces.emplace_back();
    pieces.back().push_back(g);
    open = true;
  };
  for (std::size_t i = 0; i + 1 < ground.size(); ++i) {
    const ProfileGround &a = ground[i], &b = ground[i + 1];
    std::vector<double> cuts{a.station, b.station};
    for (const ProfileStructure& s : profile.structures) {
      for (double at : {s.from, s.to}) {
        if (at > a.station && at < b.station) cuts.push_back(at);
      }
    }
    std::ranges::sort(cuts);
    const auto at = [&](double station) {
      const double t = b.station > a.station ? (station - a.station) / (b.station - a.station) : 0;
      return ProfileGround{station, lerp(a.at, b.at, t), a.level + t * (b.level - a.level)};
    };
    for (std::size_t k = 0; k + 1 < cuts.size(); ++k) {
      if (isIndoors(profile, (cuts[k] + cuts[k + 1]) / 2)) {
        open = false;
        continue;
      }
      if (!open) add(at(cuts[k]));
      add(at(cuts[k + 1]));
    }
  }
  return pieces;
}

/// The ground there is the pipe's top with the cover on it.
std::optional<CoverPlace> leastCover(const RunProfile& profile) {
  if (!profile.leastCover) return std::nullopt;
  const double at = profile.leastCover->station;
  for (std::size_t i = 0; i < profile.legs.size(); ++i) {
    const ProfilePoint &a = profile.points[i], &b = profile.points[i + 1];
    const ProfileLeg& leg = profile.legs[i];
    constexpr double kSlack = 1e-3; // m; it is found on the plan, by its nearest place
    if (leg.vertical || !leg.bore || at < a.station - kSlack || at > b.station + kSlack) continue;
    const double length = b.station - a.station;
    const double along = length > 0 ? std::clamp((at - a.station) / length, 0.0, 1.0) : 0;
    const Length invert = a.invert + along * (b.invert - a.invert);
    const Length top = leg.bore->top(invert);
    return CoverPlace{
        at, i, invert, top, top + profile.leastCover->cover, clearOfWalls(profile, at)};
  }
  return std::nullopt;
}

bool isCutLeft(const RunProfile& profile) {
  return profile.points.front().station <= profile.from;
}

bool isCutRight(const RunProfile& profile) {
  return profile.points.back().station >= profile.to;
}

std::vector<Mark> sectionMarks(const RunProfile& profile, const SectionPlane& plane,
                               std::optional<Length> foot) {
  SectionPen pen(plane, profile.from, profile.to, foot.value_or(sectionExtent(profile).low));
  pen.ground(profile.ground, openGround(profile), profile.structures);
  pen.groundwater(profile.groundwater);
  for (const ProfileStructure& s : profile.structures) {
    pen.footings(s, cutWalls(profile, s));
    pen.structure(s);
  }
  for (const CutWall& wall : passedWalls(profile))
    pen.wall(wall);
  for (const ProfileVault& vault : profile.vaults)
    pen.vault(vault);
  for (const ProfilePart& part : profile.parts)
    pen.riser(part, profile.legs[part.leg].bore);
  const auto place = [&](std::size_t i) { return placeOf(plane, profile.points[i]); };
  for (std::size_t i = 0; i < profile.legs.size(); ++i)
    pen.pipe(profile.run, profile.service, profile.legs[i].bore, place(i), place(i + 1));
  markArrow(pen, plane, profile.run, profile.service, profile.points);
  for (const ProfileBranch& branch : profile.branches)
    markBranch(pen, profile, branch);
  if (profile.floatLevel)
    pen.floatSwitch(profile.run, profile.service, place(0), *profile.floatLevel);
  for (const ProfileCrossing& c : profile.crossings)
    pen.crossing(c);
  for (const ProfilePart& part : profile.parts)
    pen.part(part, profile.service, profile.legs[part.leg].bore,
             place(part.leg + 1) - place(part.leg));
  const std::size_t last = profile.legs.size();
  if (last > 0) {
    pen.end(profile.run, profile.service, profile.startFitting, profile.legs.front().bore, place(0),
            place(1), profile.startLeg);
    pen.end(profile.run, profile.service, profile.endFitting, profile.legs.back().bore, place(last),
            place(last - 1), profile.endLeg);
  }
  if (const auto cover = leastCover(profile)) pen.cover(*cover);
  return pen.take();
}

std::vector<Mark> sectionMarks(const TrainProfile& profile, const SectionPlane& plane,
                               std::optional<Length> foot) {
  SectionPen pen(plane, profile.from, profile.to, foot.value_or(sectionExtent(profile).low));
  pen.ground(profile.ground, {profile.ground}, {});
  pen.groundwater(profile.groundwater);
  for (const ProfileVault& vault : profile.vaults)
    pen.vault(vault);
  if (const ProfileChamber* c = suctionChamber(profile); c != nullptr && profile.lowWater)
    pen.lowWater(profile.vaults.back().id, *c, *profile.lowWater);
  for (const TrainRun& run : profile.runs) {
    markTrainRun(pen, plane, run);
    const bool hangs = run.service == Service::FloatConduit && !run.comesFromElsewhere;
    if (hangs && profile.lowWater)
      pen.floatSwitch(run.id, run.service, placeOf(plane, run.points.front()), *profile.lowWater);
  }
  return pen.take();
}

} // namespace sump
