#include "app/canvas/tools/catch_end.h"

#include "app/plain_text.h"
#include "core/geometry/polygon.h"

#include <QCoreApplication>

#include <algorithm>
#include <optional>

namespace sump {

namespace {

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

/// Wash equipment stands over the drain that catches its water: the run's service tells which of
/// the two is meant.
std::optional<Catch> catchWashPlace(const Plan& plan, Point2 p, double reach, Service service) {
  const auto wash = catchBox(plan.washes, EndKind::Wash, p, reach);
  const auto basin = catchBox(plan.basins, EndKind::Basin, p, reach);
  const bool toWash = service == Service::Product || service == Service::Signal;
  return toWash ? (wash ? wash : basin) : (basin ? basin : wash);
}

/// The chamber whose inside is nearest to the local point.
std::optional<Catch> chamberOf(const Vault& vault, Point2 local) {
  std::optional<Catch> best;
  double least = 1e300;
  for (const ChamberBox& box : chambers(vault)) {
    const Point2 inside{std::clamp(local.x, box.low.x, box.high.x),
                        std::clamp(local.y, box.low.y, box.high.y)};
    if (distance(inside, local) >= least) continue;
    least = distance(inside, local);
    best = caught(EndKind::Chamber, vault.id, inside, vault.frame().toSite(inside), vault.name);
    best->end.chamber = box.number;
    const char* text = least > 0 ? "Wall of %1, chamber %2" : "%1, chamber %2";
    best->name = QCoreApplication::translate("Tools", text).arg(best->name).arg(box.number);
  }
  return best;
}

/// A chamber by a point in it, or by the vault's wall a little outside.
std::optional<Catch> catchChamber(const Plan& plan, Point2 p, double reach) {
  // A vault that holds the point wins over one whose wall is only near.
  for (const double off : {0.0, reach / 2}) {
    for (const Vault& vault : plan.vaults) {
      if (distance(p, outline(vault)) <= off) return chamberOf(vault, vault.frame().toLocal(p));
    }
  }
  return std::nullopt;
}

/// A tee into another run: water into water, cable into cable. Lines are thin and lie close
/// together, so half the reach must do.
std::optional<Catch> catchRun(const Plan& plan, Point2 p, double reach, Service service,
                              const Id& without) {
  const Locator locator(plan);
  std::optional<Catch> best;
  double nearest = reach / 2;
  for (const Run& run : plan.runs) {
    if (isConduit(run.service) != isConduit(service) || run.id == without) continue;
    const std::optional<Polyline> line = locator.centreline(run);
    if (!line) continue;
    const Point2 at = nearestOnLine(p, *line);
    if (distance(at, p) >= nearest) continue;
    nearest = distance(at, p);
    best = caught(EndKind::Run, run.id, at, at, run.name);
  }
  return best;
}

} // namespace

Catch catchEnd(const Plan& plan, Point2 pointer, double reach, Service service, const Id& without) {
  if (auto port = catchPort(plan, pointer, reach, service)) return *port;
  if (auto sewer = catchSewer(plan, pointer, reach)) return *sewer;
  if (auto place = catchWashPlace(plan, pointer, reach, service)) return *place;
  if (auto chamber = catchChamber(plan, pointer, reach)) return *chamber;
  if (auto run = catchRun(plan, pointer, reach, service, without)) return *run;
  Catch free;
  free.end.at = free.at = pointer;
  return free;
}

} // namespace sump
