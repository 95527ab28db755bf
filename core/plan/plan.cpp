#include "core/plan/plan.h"

#include <algorithm>
#include <utility>

namespace sump {

namespace {

Ring centredRectangle(const Frame& frame, Length length, Length width) {
  const double x = inMetres(length) / 2, y = inMetres(width) / 2;
  return frame.rectangle({-x, -y}, {x, y});
}

} // namespace

std::vector<ChamberBox> chambers(const Vault& vault) {
  const double low = -inMetres(vault.length) / 2 + inMetres(vault.wall);
  const double high = inMetres(vault.length) / 2 - inMetres(vault.wall);
  const double half = inMetres(vault.width) / 2 - inMetres(vault.wall);
  std::vector<ChamberBox> boxes;
  double start = low;
  for (const Baffle& baffle : vault.baffles) {
    const double face = low + inMetres(baffle.offset);
    boxes.push_back({static_cast<int>(boxes.size()) + 1, {start, -half}, {face, half}});
    start = face + inMetres(baffle.thickness);
  }
  boxes.push_back({static_cast<int>(boxes.size()) + 1, {start, -half}, {high, half}});
  return boxes;
}

int chamberCount(const Vault& vault) {
  return static_cast<int>(vault.baffles.size()) + 1;
}

Ring outline(const Vault& vault) {
  return centredRectangle(vault.frame(), vault.length, vault.width);
}

Ring outline(const EquipmentRoom& room) {
  return room.frame().rectangle({0, 0}, {inMetres(room.length), inMetres(room.width)});
}

Ring outline(const EquipmentRoom& room, const RoomBox& box) {
  return room.frame().rectangle(box.corner, box.high());
}

Side nearestWall(const EquipmentRoom& room, Point2 low, Point2 high) {
  const std::pair<double, Side> walls[] = {{low.y, Side::South},
                                           {inMetres(room.length) - high.x, Side::East},
                                           {inMetres(room.width) - high.y, Side::North},
                                           {low.x, Side::West}};
  constexpr double kHair = 1e-9; // m
  const auto isNearer = [](const auto& a, const auto& b) { return a.first < b.first - kHair; };
  return std::ranges::min_element(walls, isNearer)->second;
}

Ring outline(const Basin& basin) {
  return centredRectangle(basin.frame(), basin.length, basin.width);
}

Ring outline(const WashEquipment& wash) {
  return centredRectangle(wash.frame(), wash.length, wash.width);
}

std::optional<Length> bottom(const Basin& basin) {
  if (!basin.sump) return std::nullopt;
  return basin.outletInvert - *basin.sump;
}

} // namespace sump
