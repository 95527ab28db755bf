#include "core/plan/ends.h"

#include "core/geometry/polygon.h"

namespace sump {

namespace {

template <class T>
void addIds(std::unordered_map<std::string_view, ObjectPlace>& places, const Items<T>& list,
            ObjectKind kind) {
  std::size_t i = 0;
  for (const T& item : list)
    places.try_emplace(item.id, ObjectPlace{kind, i++, 0});
}

template <class T>
void addParts(std::unordered_map<std::string_view, ObjectPlace>& places, const std::vector<T>& list,
              ObjectKind kind, std::size_t owner) {
  for (std::size_t i = 0; i < list.size(); ++i) {
    places.try_emplace(list[i].id, ObjectPlace{kind, owner, i});
  }
}

} // namespace

Locator::Locator(const Plan& plan) : plan_(&plan) {
  // Most of a large plan; the rest grows it once at most.
  places_.reserve(2 * plan.runs.size() + 4 * plan.vaults.size() + plan.spots.size());
  addIds(places_, plan.buildings, ObjectKind::Building);
  addIds(places_, plan.pavements, ObjectKind::Pavement);
  addIds(places_, plan.utilities, ObjectKind::Utility);
  addIds(places_, plan.spots, ObjectKind::Spot);
  addIds(places_, plan.wells, ObjectKind::Well);
  addIds(places_, plan.basins, ObjectKind::Basin);
  addIds(places_, plan.sewers, ObjectKind::Sewer);
  addIds(places_, plan.washes, ObjectKind::Wash);
  addIds(places_, plan.rooms, ObjectKind::Room);
  addIds(places_, plan.vaults, ObjectKind::Vault);
  addIds(places_, plan.notes, ObjectKind::Note);
  addIds(places_, plan.underlays, ObjectKind::Underlay);
  addIds(places_, plan.runs, ObjectKind::Run);
  addPartIds();
}

void Locator::addPartIds() {
  for (std::size_t i = 0; i < plan_->rooms.size(); ++i) {
    addParts(places_, plan_->rooms[i].ports, ObjectKind::Port, i);
  }
  for (std::size_t i = 0; i < plan_->vaults.size(); ++i) {
    addParts(places_, plan_->vaults[i].baffles, ObjectKind::Baffle, i);
    addParts(places_, plan_->vaults[i].manways, ObjectKind::Manway, i);
  }
  for (std::size_t i = 0; i < plan_->runs.size(); ++i) {
    addParts(places_, plan_->runs[i].parts, ObjectKind::Part, i);
  }
}

std::optional<ObjectPlace> Locator::find(std::string_view id) const {
  const auto it = places_.find(id);
  if (it == places_.end()) return std::nullopt;
  return it->second;
}

template <class T>
const T* Locator::at(const Items<T>& list, ObjectKind kind, std::string_view id) const {
  const std::optional<ObjectPlace> place = find(id);
  return place && place->kind == kind ? &list[place->index] : nullptr;
}

const Vault* Locator::vault(std::string_view id) const {
  return at(plan_->vaults, ObjectKind::Vault, id);
}
const Basin* Locator::basin(std::string_view id) const {
  return at(plan_->basins, ObjectKind::Basin, id);
}
const SewerConnection* Locator::sewer(std::string_view id) const {
  return at(plan_->sewers, ObjectKind::Sewer, id);
}
const WashEquipment* Locator::wash(std::string_view id) const {
  return at(plan_->washes, ObjectKind::Wash, id);
}
const EquipmentRoom* Locator::room(std::string_view id) const {
  return at(plan_->rooms, ObjectKind::Room, id);
}
const Run* Locator::run(std::string_view id) const {
  return at(plan_->runs, ObjectKind::Run, id);
}
const EquipmentRoom* Locator::roomOfPort(std::string_view id) const {
  return at(plan_->rooms, ObjectKind::Port, id);
}
const Vault* Locator::vaultOfManway(std::string_view id) const {
  return at(plan_->vaults, ObjectKind::Manway, id);
}

const Port* Locator::port(std::string_view id) const {
  const std::optional<ObjectPlace> place = find(id);
  if (!place || place->kind != ObjectKind::Port) return nullptr;
  return &plan_->rooms[place->index].ports[place->part];
}

std::optional<Point2> Locator::position(const RunEnd& end) const {
  return position(end, 0);
}

std::optional<Point2> Locator::position(const NoteEnd& end) const {
  if (end.object.empty()) return end.at;
  if (!find(end.object)) return std::nullopt;
  if (const Vault* v = vault(end.object)) return v->frame().toSite(end.at);
  if (const EquipmentRoom* r = room(end.object)) return r->frame().toSite(end.at);
  if (const Basin* b = basin(end.object)) return b->frame().toSite(end.at);
  if (const WashEquipment* w = wash(end.object)) return w->frame().toSite(end.at);
  if (const SewerConnection* s = sewer(end.object)) return s->at + end.at;
  return end.at;
}

std::optional<Polyline> Locator::centreline(const Run& run) const {
  return centreline(run, 0);
}

std::optional<Point2> Locator::position(const RunEnd& end, int depth) const {
  switch (end.kind) {
  case EndKind::Free:
    return end.at;
  case EndKind::Chamber:
    if (const Vault* v = vault(end.target)) return v->frame().toSite(end.at);
    return std::nullopt;
  case EndKind::Basin:
    if (const Basin* b = basin(end.target)) return b->frame().toSite(end.at);
    return std::nullopt;
  case EndKind::Sewer:
    if (const SewerConnection* s = sewer(end.target)) return s->at + end.at;
    return std::nullopt;
  case EndKind::Port:
    if (const Port* p = port(end.target)) {
      return roomOfPort(end.target)->frame().toSite(p->at + end.at);
    }
    return std::nullopt;
  case EndKind::Wash:
    if (const WashEquipment* w = wash(end.target)) return w->frame().toSite(end.at);
    return std::nullopt;
  case EndKind::Run:
    if (const Run* other = run(end.target)) {
      const std::optional<Polyline> line = centreline(*other, depth + 1);
      if (line) return nearestOnLine(end.at, *line);
    }
    return std::nullopt;
  }
  return std::nullopt;
}

std::optional<Polyline> Locator::centreline(const Run& run, int depth) const {
  if (depth > kDeepestBranching) return std::nullopt;
  const std::optional<Point2> start = position(run.from, depth);
  if (!start) return std::nullopt;
  const std::optional<Point2> finish = position(run.to, depth);
  if (!finish) return std::nullopt;
  Polyline line;
  line.reserve(run.vertices.size() + 2);
  line.push_back(*start);
  for (const Vertex& v : run.vertices)
    line.push_back(v.at);
  line.push_back(*finish);
  return line;
}

std::optional<Point2> sitePosition(const Plan& plan, const RunEnd& end) {
  return Locator(plan).position(end);
}

Point2 nearestOnLine(Point2 p, const Polyline& line) {
  if (line.empty()) return p;
  Foot best{line.front(), 0, distance(p, line.front())};
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const Foot foot = nearestOnSegment(p, line[i], line[i + 1]);
    if (foot.distance < best.distance) best = foot;
  }
  return best.at;
}

} // namespace sump
