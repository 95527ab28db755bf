#pragma once
// What stands on the site and in the rooms, and what a tape measures between. Part of
// known_numbers.h.

#include "tests/sheet/known_numbers.h"

namespace sump::testing {

inline void KnownNumbers::site(const Plan& plan) {
  const Id all;
  levels(all, plan.site.groundwater);
  lengths(all, plan.site.frostDepth);
  put(Printed::Angle, all, std::abs(inRadians(plan.site.north)));
  // The datum in the designer's own words, and how often pipe is labelled.
  for (const PrintedNumber& number : printedNumbers(plan.site.datum))
    put(number.kind, all, number.value);
  lengths(all, builtinSupplies().labelSpacing);
  for (const SpotElevation& spot : plan.spots)
    levels(spot.id, spot.elevation);
  for (const Building& building : plan.buildings) {
    levels(building.id, building.floor, building.footing, building.roof);
    for (Point2 p : building.outline)
      levels(building.id, p.x, p.y);
  }
  for (const Utility& utility : plan.utilities) {
    levels(utility.id, utility.elevation);
    lengths(utility.id, utility.diameter);
    if (utility.diameter) put(Printed::Nominal, utility.id, inMetres(*utility.diameter));
  }
  for (const Basin& basin : plan.basins) {
    levels(basin.id, basin.rim, basin.outletInvert, bottom(basin));
    lengths(basin.id, basin.length, basin.width, basin.sump);
    for (const Run& run : plan.runs) { // where it joins, the basin's size is told
      if (run.from.target == basin.id || run.to.target == basin.id)
        lengths(run.id, basin.length, basin.width);
    }
  }
  for (const SewerConnection& sewer : plan.sewers)
    levels(sewer.id, sewer.invert, sewer.upstreamManholeRim);
  for (const WashEquipment& wash : plan.washes) {
    levels(wash.id, wash.inletElevation);
    nominal(wash.id, wash.inletSize);
  }
}

inline void KnownNumbers::ofPort(const Id& object, const EquipmentRoom& room, const Port& port) {
  levels(object, room.floor + port.height);
  lengths(object, port.at.x, port.at.y, port.height);
  if (room.skid) { // the gap in plan from the end to the skid
    const double x = inMetres(room.skid->length), y = inMetres(room.skid->depth);
    const Point2 off = port.at - room.skid->corner;
    lengths(object,
            std::hypot(std::max({0.0, -off.x, off.x - x}), std::max({0.0, -off.y, off.y - y})));
  }
  nominal(object, port.size);
}

inline void KnownNumbers::rooms(const Plan& plan) {
  for (const EquipmentRoom& room : plan.rooms) {
    levels(room.id, room.floor);
    lengths(room.id, room.length, room.width);
    for (const auto* box : {&room.skid, &room.plumbingArea, &room.panel}) {
      if (!*box) continue;
      const RoomBox& b = **box;
      lengths(room.id, b.length, b.depth, b.height, b.corner.x, b.corner.y,
              room.length.value() - b.corner.x - b.length.value(),
              room.width.value() - b.corner.y - b.depth.value());
    }
    if (room.door) lengths(room.id, room.door->width, room.door->offset);
    if (room.floorDrain)
      lengths(room.id, room.floorDrain->x, room.floorDrain->y,
              room.length.value() - room.floorDrain->x, room.width.value() - room.floorDrain->y);
    for (const Port& port : room.ports) {
      ofPort(port.id, room, port);
      for (const Run& run : plan.runs) {
        if (run.from.target != port.id && run.to.target != port.id) continue;
        ofPort(run.id, room, port);
        // It may rise elsewhere than at its port.
        for (const Vertex& vertex : run.vertices) {
          const Point2 at = room.frame().toLocal(vertex.at);
          lengths(run.id, at.x, at.y, room.length.value() - at.x, room.width.value() - at.y);
        }
      }
    }
  }
}

/// What a tape measures: between the corners of buildings and vaults, and the plan's dimensions.
inline void KnownNumbers::distances(const Plan& plan) {
  const Locator where(plan);
  for (const Vault& vault : plan.vaults) {
    for (Point2 corner : outline(vault)) {
      for (const Building& building : plan.buildings) {
        for (Point2 fixed : building.outline)
          lengths(vault.id, distance(corner, fixed));
      }
      for (const Vault& other : plan.vaults) {
        for (Point2 far : outline(other))
          if (other.id != vault.id) lengths(vault.id, distance(corner, far));
      }
    }
  }
  for (const DimensionNote& note : plan.notes) {
    const auto a = where.position(note.from), b = where.position(note.to);
    if (a && b) lengths(note.id, distance(*a, *b));
  }
}

/// P-4 and E-1: between what stands along a wall, and its door.
inline void KnownNumbers::roomGaps(const Plan& plan) {
  const auto between = [&](const std::vector<double>& stops) {
    for (double a : stops) {
      for (double b : stops) {
        for (const char* series : {"P-4", "E-1"})
          on(series, Printed::Length, b - a);
      }
    }
  };
  for (const EquipmentRoom& room : plan.rooms) {
    const double x = room.length.value(), y = room.width.value();
    std::vector<double> along{0, x}, across{0, y};
    for (const auto* box : {&room.skid, &room.plumbingArea, &room.panel}) {
      if (!*box) continue;
      const RoomBox& b = **box;
      along.insert(along.end(), {b.corner.x, b.corner.x + b.length.value()});
      across.insert(across.end(), {b.corner.y, b.corner.y + b.depth.value()});
    }
    for (const Supply& supply : plan.basis.wiring.supplies) {
      if (!supply.disconnect) continue;
      const Point2 at = room.frame().toLocal(*supply.disconnect);
      along.push_back(at.x);
      across.push_back(at.y);
    }
    between(along);
    between(across);
    if (!room.door) continue;
    const double from = room.door->offset.value(), to = from + room.door->width.value();
    const bool lengthwise = room.door->side == Side::South || room.door->side == Side::North;
    between({0, from, to, lengthwise ? x : y});
  }
}

/// P-4: where valves stand in the rooms, and how far apart the supports of open pipe may be.
inline void KnownNumbers::roomWork(const Review& review) {
  const Plan& plan = review.plan;
  for (const EquipmentRoom& room : plan.rooms) {
    for (const RunStudy& study : review.study.runs) {
      for (const InlinePart& part : plan.runs.find(study.id)->parts) {
        const auto leg = static_cast<std::size_t>(part.leg);
        if (leg + 1 >= study.points.size()) continue;
        const Point3 a = study.points[leg].at, b = study.points[leg + 1].at;
        const Point2 at = room.frame().toLocal(lerp(flat(a), flat(b), part.along));
        for (double length : {at.x, at.y, room.length.value() - at.x, room.width.value() - at.y,
                              a.z + (b.z - a.z) * part.along - room.floor.value()})
          on("P-4", Printed::Length, length);
      }
    }
  }
  for (const DisconnectSpace& space : disconnectSpaces(plan, review.limits, review.study.runs)) {
    lengths(Id{}, review.limits.length("wiring.enclosure"));
    for (const Id& object : {space.supply, space.room})
      lengths(object, space.depthNeeded, space.depthClear, space.widthNeeded, space.widthClear,
              space.heightNeeded);
  }
  for (const ExposedPipe& pipe : exposedPipes(plan, review.study, builtinSupplies()))
    lengths(pipe.run, pipe.all.length, pipe.spacing);
}

} // namespace sump::testing
