#include "app/canvas/tools/snap_words.h"

#include "app/canvas/tools/tool.h"
#include "app/plain_text.h"
#include "core/plan/ends.h"

#include <algorithm>

namespace sump {

namespace {

constexpr double kSameSpot = 1e-6; // metres

bool same(Point2 a, Point2 b) {
  return distance(a, b) < kSameSpot;
}

/// Does a line end there, rather than turn?
bool endsAt(const Plan& plan, const Id& owner, Point2 at) {
  std::optional<Polyline> line;
  if (const Run* run = plan.runs.find(owner)) line = Locator(plan).centreline(*run);
  if (const Utility* utility = plan.utilities.find(owner)) line = utility->path;
  return line && !line->empty() && (same(line->front(), at) || same(line->back(), at));
}

bool isLine(const Plan& plan, const Id& owner) {
  return plan.runs.find(owner) != nullptr || plan.utilities.find(owner) != nullptr;
}

const Port* portOf(const Plan& plan, const Id& owner, Point2 at) {
  const EquipmentRoom* room = plan.rooms.find(owner);
  if (room == nullptr) return nullptr;
  const auto found = std::ranges::find_if(
      room->ports, [&](const Port& p) { return same(room->frame().toSite(p.at), at); });
  return found == room->ports.end() ? nullptr : &*found;
}

QString cornerWords(const Plan& plan, const SnapPoint& p) {
  if (p.owner.empty()) {
    const Ring& boundary = plan.site.boundary;
    const bool own = std::ranges::any_of(boundary, [&](Point2 b) { return same(b, p.at); });
    return own ? toolText("corner of the property line") : toolText("the last corner");
  }
  if (const Port* port = portOf(plan, p.owner, p.at)) return toolText("port %1").arg(q(port->id));
  const char* what = endsAt(plan, p.owner, p.at) ? QT_TRANSLATE_NOOP("Tools", "end of %1")
                                                 : QT_TRANSLATE_NOOP("Tools", "corner of %1");
  return toolText(what).arg(q(p.owner));
}

/// A vault has manways and chambers, each with a middle; spots, wells and sewers are points.
QString centreWords(const Plan& plan, const SnapPoint& p) {
  const bool point = plan.spots.find(p.owner) != nullptr || plan.wells.find(p.owner) != nullptr ||
                     plan.sewers.find(p.owner) != nullptr;
  if (point) return q(p.owner);
  const Vault* vault = plan.vaults.find(p.owner);
  if (vault == nullptr || same(vault->centre, p.at))
    return toolText("centre of %1").arg(q(p.owner));
  const auto manway = std::ranges::find_if(
      vault->manways, [&](const Manway& m) { return same(vault->frame().toSite(m.at), p.at); });
  return manway != vault->manways.end() ? toolText("manway %1").arg(q(manway->id))
                                        : toolText("middle of a chamber of %1").arg(q(p.owner));
}

QString middleWords(const Id& owner) {
  return owner.empty() ? toolText("middle of the property line's side")
                       : toolText("middle of %1").arg(q(owner));
}

QString faceWords(const Plan& plan, const Id& owner) {
  if (owner.empty()) return toolText("property line");
  if (plan.runs.find(owner) != nullptr) return toolText("pipe %1").arg(q(owner));
  if (isLine(plan, owner)) return toolText("line %1").arg(q(owner));
  const bool walled = plan.vaults.find(owner) != nullptr || plan.rooms.find(owner) != nullptr ||
                      plan.buildings.find(owner) != nullptr;
  return toolText(walled ? QT_TRANSLATE_NOOP("Tools", "wall of %1")
                         : QT_TRANSLATE_NOOP("Tools", "edge of %1"))
      .arg(q(owner));
}

QString pointWords(const Plan& plan, const SnapPoint& p) {
  switch (p.kind) {
  case SnapKind::End:
    return cornerWords(plan, p);
  case SnapKind::Middle:
    return middleWords(p.owner);
  case SnapKind::Centre:
    return centreWords(plan, p);
  case SnapKind::Crossing:
    return p.owner.empty() ? toolText("crossing of the property line")
                           : toolText("crossing of %1").arg(q(p.owner));
  case SnapKind::Perpendicular:
    return p.owner.empty() ? toolText("square to the property line")
                           : toolText("square to %1").arg(q(p.owner));
  case SnapKind::Face:
    return faceWords(plan, p.owner);
  case SnapKind::None:
  case SnapKind::Grid:
  case SnapKind::Aligned:
    break;
  }
  return {};
}

} // namespace

QString snapWords(const Plan& plan, const Snapped& snapped) {
  QStringList words;
  words << pointWords(plan, {snapped.at, snapped.kind, snapped.owner});
  if (snapped.guides.size() == 1) {
    words << toolText("in line with %1").arg(pointWords(plan, snapped.guides[0]));
  } else if (snapped.guides.size() > 1) {
    words << toolText("in line with %1 and %2")
                 .arg(pointWords(plan, snapped.guides[0]), pointWords(plan, snapped.guides[1]));
  }
  words.removeAll(QString());
  return words.join(", ");
}

} // namespace sump
