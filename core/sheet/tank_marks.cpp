// The equipment room and the vaults, as a plan section just above the water.

#include "core/sheet/mark_pen.h"

#include <algorithm>

namespace sump {

namespace {

const LineStyle kThin{Ink::Black, 0.25, {}};
const LineStyle kMedium{Ink::Black, 0.35, {}};
const LineStyle kWall{Ink::Black, 0.7, {}};

/// A wall's start corner and its direction, counter-clockwise round the room.
std::pair<Point2, Point2> wall(const EquipmentRoom& room, Side side) {
  const double x = inMetres(room.length), y = inMetres(room.width);
  switch (side) {
  case Side::South:
    return {{0, 0}, {1, 0}};
  case Side::East:
    return {{x, 0}, {0, 1}};
  case Side::North:
    return {{x, y}, {-1, 0}};
  case Side::West:
    return {{0, y}, {0, -1}};
  }
  return {{0, 0}, {1, 0}};
}

/// The opening, the leaf standing open outward (the way out), and its swing.
void markDoor(const EquipmentRoom& room, MarkPen& pen) {
  const auto [start, along] = wall(room, room.door->side);
  const double width = inMetres(room.door->width);
  const Point2 out{along.y, -along.x};
  const Point2 hinge = start + along * inMetres(room.door->offset);
  const Frame frame = room.frame();
  pen.path({frame.toSite(hinge), frame.toSite(hinge + along * width)}, {Ink::White, 1.0, {}});
  pen.path({frame.toSite(hinge), frame.toSite(hinge + out * width)}, kMedium);
  Polyline swing;
  constexpr int kSteps = 12;
  for (int i = 0; i <= kSteps; ++i) {
    const double a = kPi / 2 * i / kSteps;
    const Point2 local = hinge + (along * std::cos(a) + out * std::sin(a)) * width;
    swing.push_back(frame.toSite(local));
  }
  pen.path(swing, kThin);
}

void markRoom(const EquipmentRoom& room, std::vector<Mark>& marks) {
  MarkPen pen(marks, room.id, Layer::Room);
  pen.ring(outline(room), kWall, FillStyle{Ink::White});
  if (room.door) markDoor(room, pen);
  if (room.skid) {
    const Ring ring = outline(room, *room.skid);
    pen.ring(ring, kMedium, FillStyle{Ink::PaleGrey});
    pen.path({ring[0], ring[2]}, kThin);
  }
  if (room.plumbingArea) {
    pen.ring(outline(room, *room.plumbingArea), LineStyle{Ink::Black, 0.35, {2, 1}});
  }
  if (room.panel) {
    const Ring ring = outline(room, *room.panel);
    pen.ring(ring, kMedium, FillStyle{Ink::White});
    // Pale, so that what is wired to it can be told on it.
    pen.ring({ring[0], ring[1], ring[2]}, kMedium, FillStyle{Ink::PaleGrey});
  }
  if (room.floorDrain) {
    constexpr double kGrate = 0.1; // m, half of a usual one; the maker's size governs
    SymbolPen drain(MarkPen(marks, room.id, Layer::Symbol),
                    Frame{room.frame().toSite(*room.floorDrain), room.angle}, kGrate, kThin);
    drawFloorDrain(drain);
  }
  for (const Port& port : room.ports) {
    // 4 in across, or ports of small pipe would vanish on paper; square, since a circle says that
    // the pipe turns up or down.
    constexpr double kHalf = 0.05;
    SymbolPen symbol(MarkPen(marks, port.id, Layer::Symbol),
                     Frame{room.frame().toSite(port.at), room.angle}, kHalf,
                     LineStyle{ink(facts(port.service).color), 0.25, {}});
    symbol.open({{-1, -1}, {1, -1}, {1, 1}, {-1, 1}});
  }
}

void markManway(const Vault& vault, const Manway& manway, std::vector<Mark>& marks) {
  MarkPen pen(marks, manway.id, Layer::Manway);
  const Point2 at = vault.frame().toSite(manway.at);
  const double radius = inMetres(manway.diameter) / 2;
  pen.circle(at, radius, LineStyle{Ink::Black, 0.5, {}});
  // The cover's seat inside the frame; a traffic cover shows a heavier ring.
  pen.circle(at, radius * 0.86, LineStyle{Ink::Black, manway.trafficCover ? 0.5 : 0.18, {}});
}

void markVault(const Vault& vault, bool wet, std::vector<Mark>& marks) {
  MarkPen pen(marks, vault.id, Layer::Vault);
  pen.ring(outline(vault), LineStyle{Ink::Black, 0.5, {}}, FillStyle{Ink::Concrete});
  const std::vector<ChamberBox> boxes = chambers(vault);
  for (const ChamberBox& box : boxes) {
    pen.ring(vault.frame().rectangle(box.low, box.high), kThin,
             FillStyle{wet ? Ink::Water : Ink::White});
  }
  for (std::size_t i = 0; i < vault.baffles.size() && i + 1 < boxes.size(); ++i) {
    const Point2 low{boxes[i].high.x, boxes[i].low.y};
    const Point2 high{boxes[i + 1].low.x, boxes[i].high.y};
    MarkPen(marks, vault.baffles[i].id, Layer::Baffle)
        .ring(vault.frame().rectangle(low, high), kThin, FillStyle{Ink::Grey});
  }
  for (const Manway& manway : vault.manways)
    markManway(vault, manway, marks);
}

} // namespace

void markRooms(const Plan& plan, std::vector<Mark>& marks) {
  for (const EquipmentRoom& room : plan.rooms)
    markRoom(room, marks);
}

void markVaults(const Plan& plan, const Study& study, std::vector<Mark>& marks) {
  for (const Vault& vault : plan.vaults) {
    const auto found = study.vaultIndex.find(vault.id);
    const bool wet = found != study.vaultIndex.end() && study.vaults[found->second].waterLevel;
    markVault(vault, wet, marks);
  }
}

} // namespace sump
