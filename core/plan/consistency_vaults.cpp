// Consistency of the equipment rooms and the vaults.

#include "core/plan/consistency_checks.h"
#include "core/plan/inside.h"

namespace sump {

void ConsistencyCheck::rooms(const FilePlace& root) {
  const FilePlace list = root / "rooms";
  for (std::size_t i = 0; i < plan_.rooms.size(); ++i) {
    const EquipmentRoom& room = plan_.rooms[i];
    const FilePlace at = list[i];
    id(room.id, at);
    point(room.corner, at / "corner");
    positive(room.length, at / "length", "give the inside length in metres");
    positive(room.width, at / "width", "give the inside width in metres");
    door(room, at);
    boxes(room, at);
    if (room.floorDrain) point(*room.floorDrain, at / "floorDrain");
    const FilePlace ports = at / "ports";
    for (std::size_t k = 0; k < room.ports.size(); ++k) {
      id(room.ports[k].id, ports[k]);
      point(room.ports[k].at, ports[k] / "at");
    }
  }
}

void ConsistencyCheck::door(const EquipmentRoom& room, const FilePlace& at) {
  if (!room.door) return;
  const FilePlace place = at / "door";
  const bool placed =
      notNegative(room.door->offset, place / "offset", "give the distance along the wall");
  const bool sized = positive(room.door->width, place / "width", "give the clear width in metres");
  if (!placed || !sized) return;
  const bool alongLength = room.door->side == Side::South || room.door->side == Side::North;
  const Length wall = alongLength ? room.length : room.width;
  demand(inMetres(room.door->offset + room.door->width) <= inMetres(wall) + kSlack, place / "width",
         "reaches past the end of a wall of " + brief(inMetres(wall)) + " m",
         "make the door narrower or set it nearer to the wall's start");
}

void ConsistencyCheck::boxes(const EquipmentRoom& room, const FilePlace& at) {
  const auto check = [&](const std::optional<RoomBox>& box, const FilePlace& place) {
    if (!box) return;
    point(box->corner, place / "corner");
    positive(box->length, place / "length", "give the length in metres");
    positive(box->depth, place / "depth", "give the depth in metres");
    positive(box->height, place / "height", "give the height in metres");
  };
  check(room.skid, at / "skid");
  check(room.plumbingArea, at / "plumbingArea");
  check(room.panel, at / "panel");
}

void ConsistencyCheck::vaults(const FilePlace& root) {
  const FilePlace list = root / "vaults";
  for (std::size_t i = 0; i < plan_.vaults.size(); ++i) {
    const FilePlace at = list[i];
    id(plan_.vaults[i].id, at);
    vault(plan_.vaults[i], at);
    baffles(plan_.vaults[i], at);
    manways(plan_.vaults[i], at);
  }
}

void ConsistencyCheck::vault(const Vault& vault, const FilePlace& at) {
  point(vault.centre, at / "centre");
  const bool length = positive(vault.length, at / "length", "give the outside length in metres");
  const bool width = positive(vault.width, at / "width", "give the outside width in metres");
  const bool wall = positive(vault.wall, at / "wall", "give the wall thickness in metres");
  positive(vault.lidThickness, at / "lidThickness", "give the lid thickness in metres");
  positive(vault.floorThickness, at / "floorThickness", "give the floor thickness in metres");
  positive(vault.insideHeight, at / "insideHeight",
           "give the height from floor to underside of lid in metres");
  if (!length || !width || !wall) return;
  demand(insideLength(vault) >= kLeastLength && insideWidth(vault) >= kLeastLength, at / "wall",
         "is " + brief(inMetres(vault.wall)) + ", which leaves no inside",
         "give a wall thinner than half the outside length and width");
}

void ConsistencyCheck::baffles(const Vault& vault, const FilePlace& at) {
  const FilePlace list = at / "baffles";
  double free = 0; // where the last chamber so far starts, from the inlet end's inside face
  for (std::size_t i = 0; i < vault.baffles.size(); ++i) {
    const Baffle& baffle = vault.baffles[i];
    const FilePlace place = list[i];
    id(baffle.id, place);
    const double offset = inMetres(baffle.offset);
    const double end = offset + inMetres(baffle.thickness);
    demand(offset >= free + kLeastLength, place / "offset",
           "is " + brief(offset) + ", which leaves no chamber before it",
           "list the baffles by rising offset, each past the one before");
    positive(baffle.thickness, place / "thickness", "give the thickness in metres");
    demand(end <= insideLength(vault) - kLeastLength, place / "offset",
           "is " + brief(offset) + ", which leaves no chamber after it",
           "give an offset less than the inside length");
    notNegative(baffle.bottomGap, place / "bottomGap", "give the gap in metres, 0 for none");
    notNegative(baffle.topGap, place / "topGap", "give the gap in metres, 0 for none");
    demand(!(baffle.bottomGap + baffle.topGap >= vault.insideHeight), place / "topGap",
           "leaves nothing of the baffle", "give gaps less than the inside height together");
    free = std::max(free, end);
  }
}

void ConsistencyCheck::manways(const Vault& vault, const FilePlace& at) {
  const FilePlace list = at / "manways";
  for (std::size_t i = 0; i < vault.manways.size(); ++i) {
    const Manway& manway = vault.manways[i];
    const FilePlace place = list[i];
    id(manway.id, place);
    const bool inside = std::abs(manway.at.x) <= insideLength(vault) / 2 + kSlack &&
                        std::abs(manway.at.y) <= insideWidth(vault) / 2 + kSlack;
    demand(inside, place / "at", "lies outside the inside faces of the vault",
           "give a point in metres from the vault's centre, along its length and width");
    positive(manway.diameter, place / "diameter", "give the clear diameter in metres");
  }
}

} // namespace sump
