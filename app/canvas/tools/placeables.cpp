// What PlaceTool can put on the site.

#include "app/canvas/tools/new_objects.h"
#include "app/canvas/tools/place_tool.h"

#include "core/units/print.h"

#include <array>

namespace sump {

namespace {

/// Of the plan as it is; a tool may place before the first review.
Surface groundOf(const ToolHost& host) {
  return host.scene() != nullptr ? host.scene()->study().ground : Surface();
}

template <class T> Plan with(const ToolHost& host, Items<T> Plan::*list, T item, Id& made) {
  Plan next = host.plan();
  made = item.id;
  (next.*list).append(std::move(item));
  return next;
}

Ring pointGhost(const ToolHost&, int, Point2, Angle) {
  return {};
}

struct RoomSize {
  double length, width; ///< ft, inside
};
// The skid with its plumbing and panel needs 11 ft of wall (common practice, no source).
constexpr std::array<RoomSize, 3> kRoomSizes = {{{12, 8}, {12, 12}, {16, 12}}};

EquipmentRoom roomAt(const ToolHost& host, int size, Point2 at, Angle angle) {
  const RoomSize s = kRoomSizes[static_cast<std::size_t>(size)];
  return newRoom(host.plan(), groundOf(host), feet(s.length), feet(s.width), at, angle);
}

} // namespace

Placeable placeableVault(const ToolHost& host) {
  Placeable what;
  what.step = toolText("Place vault");
  what.hint = toolText("Click where the middle of the vault goes. T turns it; the dot is the end "
                       "that water leaves by. Vaults are placed in flow order.");
  what.modelLabel = toolText("Model");
  for (const VaultModel& model : host.catalog().vaults)
    what.models.push_back(QString::fromStdString(model.name));
  const auto vaultAt = [](const ToolHost& h, int model, Point2 at, Angle angle) {
    return newVault(h.plan(), groundOf(h), h.catalog().vaults[static_cast<std::size_t>(model)], at,
                    angle);
  };
  what.make = [vaultAt](const ToolHost& h, int model, Point2 at, Angle angle, Id& made) {
    return with(h, &Plan::vaults, vaultAt(h, model, at, angle), made);
  };
  what.ghost = [vaultAt](const ToolHost& h, int model, Point2 at, Angle angle) {
    return outline(vaultAt(h, model, at, angle));
  };
  return what;
}

Placeable placeableRoom(const ToolHost& host) {
  Placeable what;
  what.step = toolText("Place equipment room");
  what.hint = toolText("Click where the room's inside corner goes; skid, panel and pipe ports come "
                       "with it. T turns it.");
  what.modelLabel = toolText("Clear size");
  const UnitSystem units = host.plan().project.units;
  for (const RoomSize& s : kRoomSizes) {
    what.models.push_back(
        QString("%1 x %2").arg(QString::fromStdString(printShort(feet(s.length), units)),
                               QString::fromStdString(printShort(feet(s.width), units))));
  }
  what.make = [](const ToolHost& h, int model, Point2 at, Angle angle, Id& made) {
    return with(h, &Plan::rooms, roomAt(h, model, at, angle), made);
  };
  what.ghost = [](const ToolHost& h, int model, Point2 at, Angle angle) {
    return outline(roomAt(h, model, at, angle));
  };
  return what;
}

Placeable placeableBasin() {
  Placeable what;
  what.step = toolText("Place drain");
  what.hint = toolText("Click where the middle of the drain goes. T turns it.");
  what.modelLabel = toolText("Kind");
  what.models = {toolText("Catch basin"), toolText("Trench drain")};
  const auto basinAt = [](const ToolHost& h, int model, Point2 at, Angle angle) {
    const BasinKind kind = model == 1 ? BasinKind::TrenchDrain : BasinKind::CatchBasin;
    return newBasin(h.plan(), groundOf(h), kind, at, angle);
  };
  what.make = [basinAt](const ToolHost& h, int model, Point2 at, Angle angle, Id& made) {
    return with(h, &Plan::basins, basinAt(h, model, at, angle), made);
  };
  what.ghost = [basinAt](const ToolHost& h, int model, Point2 at, Angle angle) {
    return outline(basinAt(h, model, at, angle));
  };
  return what;
}

Placeable placeableSewer() {
  Placeable what;
  what.step = toolText("Place sewer connection");
  what.hint = toolText("Click where the overflow may join the sewer.");
  what.turns = false;
  what.make = [](const ToolHost& h, int, Point2 at, Angle, Id& made) {
    return with(h, &Plan::sewers, newSewer(h.plan(), groundOf(h), at), made);
  };
  what.ghost = pointGhost;
  return what;
}

Placeable placeableWash() {
  Placeable what;
  what.step = toolText("Place wash equipment");
  what.hint = toolText("Click where the middle of the wash equipment goes. T turns it.");
  what.make = [](const ToolHost& h, int, Point2 at, Angle angle, Id& made) {
    return with(h, &Plan::washes, newWash(h.plan(), groundOf(h), at, angle), made);
  };
  what.ghost = [](const ToolHost& h, int, Point2 at, Angle angle) {
    return outline(newWash(h.plan(), groundOf(h), at, angle));
  };
  return what;
}

Placeable placeableSpot() {
  Placeable what;
  what.step = toolText("Place spot elevation");
  what.hint = toolText("Click where the level was shot, then type it under 'What is this'.");
  what.turns = false;
  what.make = [](const ToolHost& h, int, Point2 at, Angle, Id& made) {
    return with(h, &Plan::spots, newSpot(h.plan(), groundOf(h), at), made);
  };
  what.ghost = pointGhost;
  return what;
}

} // namespace sump
