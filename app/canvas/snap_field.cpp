#include "app/canvas/snap_field.h"

#include "core/plan/ends.h"

#include <map>

namespace sump {

namespace {

/// More than this many points of a big selection are not all worth trying at every move.
constexpr std::size_t kMostGrips = 48;

class Collector {
public:
  std::vector<SnapPoint> points;
  std::vector<SnapEdge> edges;
  bool insides = true; ///< of vaults and rooms

  void point(Point2 at, SnapKind kind, const Id& owner) { points.push_back({at, kind, owner}); }
  void line(const Polyline& line, const Id& owner, bool closed) {
    const std::size_t count = line.size();
    for (std::size_t i = 0; i < count; ++i) {
      point(line[i], SnapKind::End, owner);
      if (i + 1 == count && (!closed || count < 3)) break;
      const Point2 next = line[(i + 1) % count];
      if (line[i] == next) continue; // a drop
      edges.push_back({line[i], next, owner});
      point(lerp(line[i], next, 0.5), SnapKind::Middle, owner);
    }
  }
  void ring(const Ring& outline, const Id& owner) { line(outline, owner, true); }
  template <class T> void box(const T& object) {
    ring(outline(object), object.id);
    point(object.at, SnapKind::Centre, object.id);
  }
};

void addVault(Collector& into, const Vault& vault) {
  into.ring(outline(vault), vault.id);
  into.point(vault.centre, SnapKind::Centre, vault.id);
  if (!into.insides) return;
  for (const ChamberBox& box : chambers(vault)) {
    into.ring(vault.frame().rectangle(box.low, box.high), vault.id);
    into.point(vault.frame().toSite(lerp(box.low, box.high, 0.5)), SnapKind::Centre, vault.id);
  }
  for (const Manway& m : vault.manways)
    into.point(vault.frame().toSite(m.at), SnapKind::Centre, vault.id);
}

void collectRoom(Collector& into, const EquipmentRoom& room) {
  const Frame frame = room.frame();
  into.ring(outline(room), room.id);
  into.point(frame.toSite({inMetres(room.length) / 2, inMetres(room.width) / 2}), SnapKind::Centre,
             room.id);
  if (!into.insides) return;
  for (const auto* box : {&room.skid, &room.plumbingArea, &room.panel}) {
    if (*box) into.ring(outline(room, **box), room.id);
  }
  for (const Port& port : room.ports)
    into.point(frame.toSite(port.at), SnapKind::End, room.id);
}

void addSite(Collector& into, const Plan& plan) {
  into.ring(plan.site.boundary, {});
  for (const Building& b : plan.buildings)
    into.ring(b.outline, b.id);
  for (const Pavement& p : plan.pavements)
    into.ring(p.outline, p.id);
  for (const Utility& u : plan.utilities)
    into.line(u.path, u.id, false);
  for (const SpotElevation& s : plan.spots)
    into.point(s.at, SnapKind::Centre, s.id);
  for (const Well& w : plan.wells)
    into.point(w.at, SnapKind::Centre, w.id);
  for (const SewerConnection& s : plan.sewers)
    into.point(s.at, SnapKind::Centre, s.id);
}

Collector collect(const Plan& plan, bool insides) {
  Collector into;
  into.insides = insides;
  addSite(into, plan);
  for (const Basin& b : plan.basins)
    into.box(b);
  for (const WashEquipment& w : plan.washes)
    into.box(w);
  for (const EquipmentRoom& r : plan.rooms)
    collectRoom(into, r);
  for (const Vault& v : plan.vaults)
    addVault(into, v);
  const Locator locator(plan);
  for (const Run& run : plan.runs) {
    if (const auto line = locator.centreline(run)) into.line(*line, run.id, false);
  }
  return into;
}

} // namespace

SnapField snapField(const Plan& plan, const std::function<bool(const Id&)>& shows) {
  Collector all = collect(plan, true);
  if (shows) {
    std::map<Id, bool> known;
    const auto hidden = [&](const auto& item) {
      const auto [it, fresh] = known.try_emplace(item.owner, true);
      if (fresh && !item.owner.empty()) it->second = shows(item.owner);
      return !it->second;
    };
    std::erase_if(all.points, hidden);
    std::erase_if(all.edges, hidden);
  }
  return {std::move(all.points), std::move(all.edges)};
}

std::vector<Point2> gripPoints(const Plan& plan, const std::set<Id>& ids) {
  std::vector<Point2> found;
  for (const SnapPoint& p : collect(plan, false).points) {
    if (p.kind != SnapKind::Middle && ids.contains(p.owner)) found.push_back(p.at);
    if (found.size() >= kMostGrips) break;
  }
  return found;
}

} // namespace sump
