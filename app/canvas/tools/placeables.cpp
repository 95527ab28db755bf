// What PlaceTool can put on the site.

#include "app/canvas/tools/new_objects.h"
#include "app/canvas/tools/place_tool.h"
#include "app/core_text.h"

#include "core/plan/edits_objects.h"
#include "core/units/print.h"

#include <array>

namespace sump {

namespace {

/// Of the plan as it is; a tool may place before the first review.
Surface groundOf(const ToolHost& host) {
  return host.scene() != nullptr ? host.scene()->study().ground : Surface();
}

Ring pointGhost(const ToolHost&, const Placing&) {
  return {};
}

EntryField levelField(const QString& label, const QString& tip) {
  return {EntryKey::Level, EntryUnit::Elevation, label, tip};
}

/// Puts the typed value where it belongs; what was not typed stays.
void take(const Placing& how, EntryKey key, Length& into) {
  if (const auto typed = typedValue(how.typed, key)) into = metres(*typed);
}

struct RoomSize {
  double length, width; ///< ft, inside
};
// The skid with its plumbing and panel needs 11 ft of wall (common practice, no source).
constexpr std::array<RoomSize, 3> kRoomSizes = {{{12, 8}, {12, 12}, {16, 12}}};

EquipmentRoom roomAt(const ToolHost& host, const Placing& how) {
  const RoomSize s = kRoomSizes[static_cast<std::size_t>(how.model)];
  EquipmentRoom room =
      newRoom(host.plan(), groundOf(host), feet(s.length), feet(s.width), how.at, how.angle);
  take(how, EntryKey::Level, room.floor);
  return room;
}

/// The usual box, for sizes of one's own (common practice, no source: about 12 x 6 x 6 ft).
VaultModel ownModel(const Placing& how) {
  VaultModel model;
  model.trafficClass = "traffic";
  model.length = feet(12);
  model.width = feet(6);
  model.wall = inches(6);
  model.lid = inches(8);
  model.floor = inches(6);
  model.insideHeight = feet(5);
  model.baffleThickness = inches(6);
  take(how, EntryKey::Long, model.length);
  take(how, EntryKey::Wide, model.width);
  return model;
}

Vault vaultAt(const ToolHost& host, const Placing& how) {
  const std::vector<VaultModel>& models = host.catalog().vaults;
  const auto index = static_cast<std::size_t>(how.model);
  const VaultModel model = index < models.size() ? models[index] : ownModel(how);
  Vault vault = newVault(host.plan(), groundOf(host), model, how.at, how.angle);
  take(how, EntryKey::Level, vault.floor);
  return vault;
}

Basin basinAt(const ToolHost& host, const Placing& how) {
  const BasinKind kind = how.model == 1 ? BasinKind::TrenchDrain : BasinKind::CatchBasin;
  Basin basin = newBasin(host.plan(), groundOf(host), kind, how.at, how.angle);
  const Length depth = basin.rim - basin.outletInvert;
  take(how, EntryKey::Level, basin.rim);
  basin.outletInvert = basin.rim - depth;
  return basin;
}

} // namespace

Placeable placeableVault(const ToolHost& host) {
  Placeable what;
  what.step = toolText("Place vault");
  what.hint = toolText("Click where the middle of the vault goes; drag from there, or T, turns "
                       "it. The dot is the end that water leaves by. "
                       "Vaults are placed in flow order.");
  what.modelLabel = toolText("Model");
  for (const VaultModel& model : host.catalog().vaults)
    what.models.push_back(coreText(model.name));
  what.ownSizesModel = static_cast<int>(what.models.size());
  what.models.push_back(toolText("Own sizes"));
  what.fields = {levelField(toolText("Inside floor"), toolText("Elevation"))};
  what.make = [](const ToolHost& h, const Placing& how, Id& made) {
    return withAdded(h.plan(), &Plan::vaults, vaultAt(h, how), made);
  };
  what.ghost = [](const ToolHost& h, const Placing& how) { return outline(vaultAt(h, how)); };
  return what;
}

Placeable placeableRoom(const ToolHost& host) {
  Placeable what;
  what.step = toolText("Place equipment room");
  what.hint =
      toolText("Click where the room's inside corner goes; door, skid, panel and pipe ports "
               "come with it. T turns it.");
  what.modelLabel = toolText("Clear size");
  const UnitSystem units = host.plan().project.units;
  for (const RoomSize& s : kRoomSizes) {
    what.models.push_back(
        QString("%1 x %2").arg(QString::fromStdString(printShort(feet(s.length), units)),
                               QString::fromStdString(printShort(feet(s.width), units))));
  }
  what.fields = {levelField(toolText("Floor"), toolText("Elevation"))};
  what.make = [](const ToolHost& h, const Placing& how, Id& made) {
    return withAdded(h.plan(), &Plan::rooms, roomAt(h, how), made);
  };
  what.ghost = [](const ToolHost& h, const Placing& how) { return outline(roomAt(h, how)); };
  return what;
}

Placeable placeableBasin() {
  Placeable what;
  what.step = toolText("Place drain");
  what.hint = toolText("Click where the middle of the drain goes. T turns it.");
  what.modelLabel = toolText("Kind");
  what.models = {toolText("Catch basin"), toolText("Trench drain")};
  what.fields = {levelField(toolText("Rim"), toolText("Elevation of the grate"))};
  what.make = [](const ToolHost& h, const Placing& how, Id& made) {
    return withAdded(h.plan(), &Plan::basins, basinAt(h, how), made);
  };
  what.ghost = [](const ToolHost& h, const Placing& how) { return outline(basinAt(h, how)); };
  return what;
}

Placeable placeableSewer() {
  Placeable what;
  what.step = toolText("Place sewer connection");
  what.hint = toolText("Click where the overflow may join the sewer; type its invert.");
  what.turns = false;
  what.fields = {levelField(toolText("Invert"), toolText("Elevation"))};
  what.make = [](const ToolHost& h, const Placing& how, Id& made) {
    SewerConnection sewer = newSewer(h.plan(), groundOf(h), how.at);
    take(how, EntryKey::Level, sewer.invert);
    return withAdded(h.plan(), &Plan::sewers, std::move(sewer), made);
  };
  what.ghost = pointGhost;
  return what;
}

Placeable placeableWash() {
  Placeable what;
  what.step = toolText("Place wash equipment");
  what.hint = toolText("Click where the middle of the wash equipment goes. T turns it.");
  what.fields = {levelField(toolText("Inlet"), toolText("Elevation of the product water inlet"))};
  const auto washAt = [](const ToolHost& h, const Placing& how) {
    WashEquipment wash = newWash(h.plan(), groundOf(h), how.at, how.angle);
    take(how, EntryKey::Level, wash.inletElevation);
    return wash;
  };
  what.make = [washAt](const ToolHost& h, const Placing& how, Id& made) {
    return withAdded(h.plan(), &Plan::washes, washAt(h, how), made);
  };
  what.ghost = [washAt](const ToolHost& h, const Placing& how) { return outline(washAt(h, how)); };
  return what;
}

Placeable placeableSpot() {
  Placeable what;
  what.step = toolText("Place spot elevation");
  what.hint =
      toolText("Point where the level was shot, type it and press Enter. A click places one "
               "at the grade known so far.");
  what.turns = false;
  what.levelFirst = true;
  what.fields = {levelField(toolText("Elevation"), toolText("As shot"))};
  what.make = [](const ToolHost& h, const Placing& how, Id& made) {
    SpotElevation spot = newSpot(h.plan(), groundOf(h), how.at);
    take(how, EntryKey::Level, spot.elevation);
    return withAdded(h.plan(), &Plan::spots, std::move(spot), made);
  };
  what.ghost = pointGhost;
  return what;
}

Placeable placeableWell() {
  Placeable what;
  what.step = toolText("Place well");
  what.hint = toolText("Click where a water well stands, also one of a neighbour.");
  what.turns = false;
  what.make = [](const ToolHost& h, const Placing& how, Id& made) {
    Well well;
    well.id = freshId(h.plan(), "W");
    well.name = "Well " + std::to_string(h.plan().wells.size() + 1);
    well.at = how.at;
    return withAdded(h.plan(), &Plan::wells, std::move(well), made);
  };
  what.ghost = pointGhost;
  return what;
}

} // namespace sump
