#pragma once
// Runs, their sections and their details. Part of known_numbers.h.

#include "tests/sheet/known_numbers.h"

namespace sump::testing {

inline void KnownNumbers::levelsOfRun(const Run& run, const RunStudy& study) {
  for (const RunPoint& point : study.points) {
    levels(run.id, point.at.z, point.grade);
  }
  for (const Penetration& through : study.penetrations)
    levels(run.id, through.at.z);
  // A part's level: straight between the points of its leg.
  for (const InlinePart& part : run.parts) {
    const auto leg = static_cast<std::size_t>(part.leg);
    if (leg + 1 >= study.points.size()) continue;
    const double a = study.points[leg].at.z, b = study.points[leg + 1].at.z;
    levels(run.id, a + (b - a) * part.along);
    double station = 0; // in plan
    for (std::size_t i = 0; i <= leg; ++i)
      station += study.legs[i].plan.value() * (i < leg ? 1 : part.along);
    lengths(run.id, station);
    nominal(run.id, part.toSize);
  }
  if (run.eductor) {
    levels(run.id, run.eductor->bracketFoot, run.eductor->outletEnd);
    nominal(run.id, run.eductor->portSize);
  }
}

inline void KnownNumbers::runs(const Review& review) {
  for (const RunStudy& study : review.study.runs) {
    const Run& run = *review.plan.runs.find(study.id);
    nominal(run.id, run.size);
    levelsOfRun(run, study);
    levels(run.id, study.startInvert, study.endInvert);
    lengths(run.id, study.plan, study.developed);
    lengths(run.id, height(study.startInvert, study.endInvert)); // what upright legs make
    for (const RunItem& item : study.items) {
      if (item.key.starts_with("elbow-"))
        put(Printed::Angle, run.id, std::stod(item.key.substr(6)) * kPi / 180);
    }
    put(Printed::Slope, run.id, std::abs(study.slope));
    put(Printed::Slope, run.id, study.leastSlope);
    for (const Leg& leg : study.legs) {
      put(Printed::Slope, run.id, std::abs(leg.slope));
      put(Printed::Share, run.id, std::abs(leg.slope));
      lengths(run.id, leg.plan, leg.developed);
    }
    put(Printed::Share, run.id, std::abs(study.slope)); // metric slopes are in percent
    if (isConduit(study.service)) {
      lengths(run.id, review.limits.length("cover.conduit"),
              review.limits.length("cover.conduit.traffic"));
    }
    for (const auto* cover : {&study.leastCover, &study.leastTrafficCover}) {
      if (*cover) lengths(run.id, (*cover)->cover);
    }
    if (const auto under = coverUnderFloors(review.plan, buildingParts(review.plan), study))
      lengths(run.id, under->cover.value(), stationOf(study, under->at));
    const auto profile = runProfile(review.plan, review.study, builtinCatalog(), run.id);
    if (profile && profile->leastCover) lengths(run.id, profile->leastCover->station);
  }
}

/// P-6 and the electrical sheets: where parts are set and runs end, the lines that they join, and
/// where the float switches.
inline void KnownNumbers::places(const Review& review) {
  const auto level = [&](double value) {
    for (const char* series : {"P-6", "E-1", "E-6"})
      on(series, Printed::Level, value);
  };
  for (const RunStudy& study : review.study.runs) {
    lengths(study.id, 0); // the station of what is set at the start
    const auto place = [&](Point3 at) {
      level(at.x);
      level(at.y);
    };
    place(study.points.front().at);
    place(study.points.back().at);
    // The centreline where it starts at a line that is there.
    const Run& run = *review.plan.runs.find(study.id);
    if (const PipeSize* pipe = builtinCatalog().pipeSize(run.pipe, run.size))
      level(study.startInvert.value() + pipe->inside.value() / 2);
    for (const InlinePart& part : review.plan.runs.find(study.id)->parts) {
      const auto leg = static_cast<std::size_t>(part.leg);
      const Point3 a = study.points[leg].at, b = study.points[leg + 1].at;
      place({a.x + (b.x - a.x) * part.along, a.y + (b.y - a.y) * part.along, 0});
    }
  }
  for (const Utility& utility : review.plan.utilities) {
    if (utility.elevation) level(utility.elevation->value());
  }
  for (const SuctionStudy& suction : review.study.hydraulics.suctions) {
    if (suction.lowWater) level(suction.lowWater->value());
  }
}

/// The levels of what a run's drawing shows beside the run.
inline void KnownNumbers::structures(const RunProfile& profile, const std::string& sheet) {
  for (const ProfileVault& vault : profile.vaults) {
    for (Length level : {vault.floor, vault.lidTop})
      on(sheet, Printed::Level, level.value());
    for (const ProfileChamber& c : vault.chambers) {
      if (c.rest) on(sheet, Printed::Level, c.rest->value());
      if (c.peak) on(sheet, Printed::Level, c.peak->value());
    }
    for (const ProfileManway& m : vault.manways) {
      if (m.rim) on(sheet, Printed::Level, m.rim->value());
    }
  }
  for (const ProfileStructure& s : profile.structures) {
    if (s.level) on(sheet, Printed::Level, s.level->value());
    if ((s.kind == StructureKind::Building || s.outlet) && s.bottom)
      on(sheet, Printed::Level, s.bottom->value());
  }
}

/// Where the run has its least cover, and its levels there.
inline void KnownNumbers::leastCover(const RunProfile& profile, const std::string& sheet) {
  if (!profile.leastCover) return;
  const double at = profile.leastCover->station;
  on(sheet, Printed::Length, at);
  on(sheet, Printed::Length, profile.leastCover->cover.value());
  for (std::size_t i = 0; i + 1 < profile.points.size(); ++i) {
    const ProfilePoint &a = profile.points[i], &b = profile.points[i + 1];
    if (!(b.station > a.station) || at < a.station || at > b.station) continue;
    const double invert =
        std::lerp(a.invert.value(), b.invert.value(), (at - a.station) / (b.station - a.station));
    const ProfileBore& bore = *profile.legs[i].bore;
    on(sheet, Printed::Level, invert);
    on(sheet, Printed::Level,
       invert + ((bore.inside + bore.outside) / 2.0 + profile.leastCover->cover).value());
  }
}

/// Sections, details and schedules: the cover of a cleanout, pull box or valve lies at the ground,
/// or at the floor in a building, and its riser is as high as that is over the pipe's invert.
inline void KnownNumbers::risers(const Review& review) {
  for (const RunStudy& run : review.study.runs) {
    for (const InlinePart& part : review.plan.runs.find(run.id)->parts) {
      const bool covered = part.kind == PartKind::Cleanout || part.kind == PartKind::PullBox ||
                           part.kind == PartKind::BackwaterValve;
      if (!covered) continue;
      const auto leg = static_cast<std::size_t>(part.leg);
      const Point3 a = run.points[leg].at, b = run.points[leg + 1].at;
      const Point2 at{std::lerp(a.x, b.x, part.along), std::lerp(a.y, b.y, part.along)};
      std::optional<double> cover = review.study.ground.elevation(at);
      for (const Building& building : review.plan.buildings) {
        if (building.floor && contains(building.outline, at)) cover = building.floor->value();
      }
      if (!cover) continue;
      levels(run.id, *cover);
      lengths(run.id, height(metres(*cover), metres(std::lerp(a.z, b.z, part.along))));
    }
  }
}

/// P-3: where other runs end on this one, and the float that hangs on its conduit.
inline void KnownNumbers::hanging(const Review& review, const RunStudy& run,
                                  const std::string& sheet) {
  if (run.service == Service::FloatConduit) {
    for (const SuctionStudy& suction : review.study.hydraulics.suctions)
      if (suction.lowWater) on(sheet, Printed::Level, suction.lowWater->value());
  }
  for (const Run& other : review.plan.runs) {
    const RunStudy& found = *review.study.run(other.id);
    if (other.to.kind != EndKind::Run || other.to.target != run.id) continue;
    const Point2 at = flat(found.points.back().at);
    double before = 0;
    for (std::size_t i = 0; i + 1 < run.points.size(); ++i) {
      const Point2 a = flat(run.points[i].at), b = flat(run.points[i + 1].at);
      const Foot foot = nearestOnSegment(at, a, b);
      if (foot.distance < 1e-3) on(sheet, Printed::Length, before + distance(a, foot.at));
      before += distance(a, b);
    }
  }
}

/// From the pipe's top to the floors over a point of the run.
inline void KnownNumbers::underFloors(const Review& review, const RunStudy& run,
                                      const ProfilePoint& point, const std::string& sheet) {
  const Length top = point.invert + (run.insideDiameter + run.outsideDiameter) / 2.0;
  for (const EquipmentRoom& room : review.plan.rooms)
    on(sheet, Printed::Length, (room.floor - top).value());
  for (const Building& building : review.plan.buildings) {
    if (building.floor) on(sheet, Printed::Length, (*building.floor - top).value());
  }
}

/// P-3: what a run's section tells of its points, of the ground and of what it crosses.
inline void KnownNumbers::sections(const Review& review) {
  for (const RunStudy& run : review.study.runs) {
    const auto profile = runProfile(review.plan, review.study, builtinCatalog(), run.id);
    if (!profile) continue;
    const std::string sheet = "P-3:" + run.id;
    structures(*profile, sheet);
    hanging(review, run, sheet);
    if (profile->groundwater) on(sheet, Printed::Level, profile->groundwater->value());
    for (const ProfilePoint& p : profile->points) {
      on(sheet, Printed::Length, p.station);
      if (p.cover) on(sheet, Printed::Length, p.cover->value());
      if (p.ground) on(sheet, Printed::Level, p.ground->value());
      underFloors(review, run, p, sheet);
    }
    if (!profile->ground.empty()) {
      on(sheet, Printed::Level, profile->ground.front().level.value());
      on(sheet, Printed::Level, profile->ground.back().level.value());
    }
    leastCover(*profile, sheet);
    for (const ProfileCrossing& c : profile->crossings) {
      on(sheet, Printed::Length, c.station);
      if (c.clearance) on(sheet, Printed::Length, c.clearance->value());
    }
    for (const ProfileDrop& d : profile->drops)
      on(sheet, Printed::Length, height(d.start, d.end));
    for (const ProfileLeg& leg : profile->legs) {
      on(sheet, Printed::Slope, std::abs(leg.slope));
      on(sheet, Printed::Share, std::abs(leg.slope));
    }
  }
}

/// P-5: the ground over the walls of vaults and over manways; where a detail shows neither, where
/// the section or a building ends it.
inline void KnownNumbers::groundAtBreaks(const RunProfile& profile, std::vector<double> stops,
                                         const std::string& sheet) {
  std::vector<double> ends = std::move(stops);
  ends.push_back(profile.to);
  for (const ProfileVault& vault : profile.vaults) {
    for (const ProfileManway& manway : vault.manways) {
      if (manway.grade) on(sheet, Printed::Level, manway.grade->value());
    }
  }
  for (const ProfileStructure& s : profile.structures) {
    ends.push_back(s.from);
    ends.push_back(s.to);
  }
  for (std::size_t i = 0; i + 1 < profile.ground.size(); ++i) {
    const ProfileGround &a = profile.ground[i], &b = profile.ground[i + 1];
    for (double end : ends) {
      if (end < a.station || end > b.station || !(b.station > a.station)) continue;
      const double share = (end - a.station) / (b.station - a.station);
      on(sheet, Printed::Level, std::lerp(a.level.value(), b.level.value(), share));
    }
  }
}

/// P-5: between a run's ends, walls, parts and turns; of its ends over the floor and under the
/// water.
inline void KnownNumbers::details(const Review& review) {
  for (const RunStudy& run : review.study.runs) {
    const auto profile = runProfile(review.plan, review.study, builtinCatalog(), run.id);
    if (!profile) continue;
    const std::string sheet = "P-5:" + run.id;
    structures(*profile, sheet);
    std::vector<double> stops{0, profile->length};
    for (const ProfilePart& part : profile->parts)
      stops.push_back(part.station);
    for (const ProfileDrop& drop : profile->drops)
      stops.push_back(drop.station);
    for (const ProfileVault& vault : profile->vaults) {
      stops.push_back(vault.from);
      stops.push_back(vault.to);
      for (const ProfilePoint* end : {&profile->points.front(), &profile->points.back()}) {
        on(sheet, Printed::Length, height(end->invert, vault.floor));
        for (const ProfileChamber& chamber : vault.chambers) {
          if (!chamber.rest) continue;
          on(sheet, Printed::Length, height(*chamber.rest, end->invert));
          on(sheet, Printed::Length, height(*chamber.rest, vault.floor));
        }
      }
    }
    for (const ProfileStructure& s : profile->structures) {
      if (s.kind != StructureKind::Room) continue;
      stops.push_back(s.from);
      stops.push_back(s.to);
      if (s.level) on(sheet, Printed::Length, height(profile->points.back().invert, *s.level));
    }
    std::vector<double> measured = stops;
    for (const ProfilePoint& point : profile->points)
      measured.push_back(point.station);
    for (double a : measured) {
      for (double b : measured)
        on(sheet, Printed::Length, b - a);
    }
    groundAtBreaks(*profile, stops, sheet);
    for (const ProfileDrop& d : profile->drops)
      on(sheet, Printed::Length, height(d.start, d.end));
    const sump::Run& given = *review.plan.runs.find(run.id);
    for (const auto& [fitting, leg] : {std::pair(given.from.fitting, &run.legs.front()),
                                       std::pair(given.to.fitting, &run.legs.back())}) {
      const auto arm = armLength(builtinCatalog(), given.pipe, leg->size, fitting);
      if (arm) on(sheet, Printed::Length, arm->value());
    }
  }
}

} // namespace sump::testing
