#include "app/canvas/tools/catch_end.h"

#include "core/geometry/polygon.h"

#include <QCoreApplication>

#include <algorithm>
#include <optional>

namespace sump {

namespace {

QString q(const std::string& text) {
  return QString::fromStdString(text);
}

Catch caught(EndKind kind, const Id& target, Point2 local, Point2 at, const std::string& name) {
  Catch found;
  found.end.kind = kind;
  found.end.target = target;
  found.end.at = local;
  found.at = at;
  found.name = q(name.empty() ? target : name);
  return found;
}

/// Ports stand close together; one that serves the run counts as half as far.
std::optional<Catch> catchPort(const Plan& plan, Point2 p, double reach, Service service) {
  std::optional<Catch> best;
  double nearest = reach;
  for (const EquipmentRoom& room : plan.rooms) {
    for (const Port& port : room.ports) {
      const Point2 at = room.frame().toSite(port.at);
      const double d = distance(at, p);
      const double felt = port.service == service ? d / 2 : d;
      if (d > reach || felt > nearest) continue;
      nearest = felt;
      best = caught(EndKind::Port, port.id, {}, at, port.name);
    }
  }
  return best;
}

std::optional<Catch> catchSewer(const Plan& plan, Point2 p, double reach) {
  for (const SewerConnection& s : plan.sewers) {
    if (distance(s.at, p) <= reach) return caught(EndKind::Sewer, s.id, {}, s.at, s.name);
  }
  return std::nullopt;
}

/// A point in the local rectangle, nearest to the pointer.
Point2 clampedLocal(const Frame& frame, Point2 p, Length length, Length width) {
  const Point2 local = frame.toLocal(p);
  const double x = inMetres(length) / 2, y = inMetres(width) / 2;
  return {std::clamp(local.x, -x, x), std::clamp(local.y, -y, y)};
}

template <class T>
std::optional<Catch> catchBox(const Items<T>& items, EndKind kind, Point2 p, double reach) {
  for (const T& item : items) {
    const Point2 local = clampedLocal(item.frame(), p, item.length, item.width);
    const Point2 at = item.frame().toSite(local);
    if (distance(at, p) <= reach) return caught(kind, item.id, local, at, item.name);
  }
  return std::nullopt;
}

std::optional<Catch> catchChamber(const Plan& plan, Point2 p) {
  for (const Vault& vault : plan.vaults) {
    if (!contains(outline(vault), p)) continue;
    const Point2 local = vault.frame().toLocal(p);
    for (const ChamberBox& box : chambers(vault)) {
      const Point2 inside{std::clamp(local.x, box.low.x, box.high.x),
                          std::clamp(local.y, box.low.y, box.high.y)};
      // Walls and baffles are thinner than half a chamber: the nearest chamber is the one meant.
      if (distance(inside, local) > inMetres(vault.wall) + 1e-9) continue;
      Catch found =
          caught(EndKind::Chamber, vault.id, inside, vault.frame().toSite(inside), vault.name);
      found.end.chamber = box.number;
      found.name =
          QCoreApplication::translate("Tools", "%1, chamber %2").arg(found.name).arg(box.number);
      return found;
    }
  }
  return std::nullopt;
}

} // namespace

Catch catchEnd(const Plan& plan, Point2 pointer, double reach, Service service) {
  if (auto port = catchPort(plan, pointer, reach, service)) return *port;
  if (auto sewer = catchSewer(plan, pointer, reach)) return *sewer;
  if (auto wash = catchBox(plan.washes, EndKind::Wash, pointer, reach)) return *wash;
  if (auto basin = catchBox(plan.basins, EndKind::Basin, pointer, reach)) return *basin;
  if (auto chamber = catchChamber(plan, pointer)) return *chamber;
  Catch free;
  free.end.at = free.at = pointer;
  return free;
}

} // namespace sump
