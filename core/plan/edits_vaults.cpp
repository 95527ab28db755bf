#include "core/plan/edits_vaults.h"

#include "core/geometry/polygon.h"
#include "core/plan/edits_objects.h"
#include "core/plan/ends.h"
#include "core/plan/inside.h"

#include <algorithm>

namespace sump {

namespace {

/// A chamber shorter than this is no chamber that anyone means by a drag.
constexpr double kLeastChamber = 0.0254; // metres
constexpr Length kManwayOpening = inches(24);

std::optional<double> between(double low, double high, double wanted) {
  if (low > high) return std::nullopt;
  return std::clamp(wanted, low, high);
}

/// Puts a chamber end into the chamber of its number, at the nearest place in it.
void pushInto(const std::vector<ChamberBox>& boxes, RunEnd& end) {
  const auto index = static_cast<std::size_t>(end.chamber) - 1;
  if (end.chamber < 1 || index >= boxes.size()) return;
  end.at.x = std::clamp(end.at.x, boxes[index].low.x, boxes[index].high.x);
}

/// Gives the end the number of the chamber nearest to where it stands.
void renumber(const std::vector<ChamberBox>& boxes, RunEnd& end) {
  double least = 1e300;
  for (const ChamberBox& box : boxes) {
    const double off = std::max({box.low.x - end.at.x, end.at.x - box.high.x, 0.0});
    if (off >= least) continue;
    least = off;
    end.chamber = box.number;
  }
  pushInto(boxes, end);
}

bool endsIn(const RunEnd& end, const Id& vault) {
  return end.kind == EndKind::Chamber && end.target == vault;
}

/// Applies `change` to a copy of every run and keeps those that differ.
template <class Change> void changeRuns(Plan& plan, Change change) {
  std::vector<Run> changed;
  for (const Run& run : plan.runs) {
    Run copy = run;
    change(copy);
    if (!(copy == run)) changed.push_back(std::move(copy));
  }
  for (Run& run : changed)
    plan.runs.put(std::move(run));
}

template <class Change> void changeEnds(Plan& plan, const Id& vault, Change change) {
  changeRuns(plan, [&](Run& run) {
    for (RunEnd* end : {&run.from, &run.to}) {
      if (endsIn(*end, vault)) change(*end);
    }
  });
}

/// True for a run from one side of the baffle of this index to the other.
bool passes(const Run& run, const Id& vault, std::size_t index) {
  const int before = static_cast<int>(index) + 1;
  return endsIn(run.from, vault) && endsIn(run.to, vault) &&
         std::min(run.from.chamber, run.to.chamber) == before &&
         std::max(run.from.chamber, run.to.chamber) == before + 1;
}

std::optional<ObjectPlace> placeOf(const Locator& where, std::string_view id, ObjectKind kind) {
  const std::optional<ObjectPlace> place = where.find(id);
  return place && place->kind == kind ? place : std::nullopt;
}

void shiftPassing(Plan& plan, const Vault& vault, std::size_t index, double by) {
  const Point2 step = vault.frame().toSite({by, 0}) - vault.frame().toSite({0, 0});
  changeRuns(plan, [&](Run& run) {
    if (!passes(run, vault.id, index)) return;
    run.from.at.x += by;
    run.to.at.x += by;
    for (Vertex& corner : run.vertices)
      corner.at = corner.at + step;
  });
}

} // namespace

Length usualBaffleThickness(const Vault& vault) {
  return vault.baffles.empty() ? inches(6) : vault.baffles.front().thickness;
}

std::optional<Length> baffleOffset(const Vault& vault, Length wanted, Length thickness) {
  const double thick = inMetres(thickness), middle = inMetres(wanted) + thick / 2;
  double low = kLeastChamber;
  double high = insideLength(vault) - kLeastChamber - thick;
  for (const Baffle& b : vault.baffles) {
    const double near = inMetres(b.offset), far = near + inMetres(b.thickness);
    if (middle >= (near + far) / 2) {
      low = std::max(low, far + kLeastChamber);
    } else {
      high = std::min(high, near - kLeastChamber - thick);
    }
  }
  const std::optional<double> offset = between(low, high, inMetres(wanted));
  return offset ? std::optional(metres(*offset)) : std::nullopt;
}

Plan addBaffle(const Plan& plan, std::string_view vault, Length wanted, Id& made) {
  const Vault* found = plan.vaults.find(vault);
  if (found == nullptr) return plan;
  const Length thickness = usualBaffleThickness(*found);
  const std::optional<Length> offset = baffleOffset(*found, wanted, thickness);
  if (!offset) return plan;
  Vault changed = *found;
  made = freshId(plan, changed.id + "-B");
  Baffle baffle = changed.baffles.empty() ? Baffle{} : changed.baffles.front();
  baffle.id = made;
  baffle.offset = *offset;
  baffle.thickness = thickness;
  const auto after = std::ranges::find_if(
      changed.baffles, [&](const Baffle& b) { return inMetres(b.offset) > inMetres(*offset); });
  changed.baffles.insert(after, baffle);
  Plan next = plan;
  const std::vector<ChamberBox> boxes = chambers(changed);
  changeEnds(next, changed.id, [&boxes](RunEnd& end) { renumber(boxes, end); });
  next.vaults.put(std::move(changed));
  return next;
}

Plan moveBaffle(const Plan& plan, std::string_view baffle, Length wanted) {
  const Locator where(plan);
  const std::optional<ObjectPlace> place = placeOf(where, baffle, ObjectKind::Baffle);
  if (!place) return plan;
  Vault changed = plan.vaults[place->index];
  const std::size_t i = place->part;
  Baffle& moved = changed.baffles[i];
  const auto far = [](const Baffle& b) { return inMetres(b.offset + b.thickness); };
  const double low = (i > 0 ? far(changed.baffles[i - 1]) : 0) + kLeastChamber;
  const double end = i + 1 < changed.baffles.size() ? inMetres(changed.baffles[i + 1].offset)
                                                    : insideLength(changed);
  const auto offset =
      between(low, end - kLeastChamber - inMetres(moved.thickness), inMetres(wanted));
  if (!offset) return plan;
  const double by = *offset - inMetres(moved.offset);
  if (by == 0) return plan;
  moved.offset = metres(*offset);
  Plan next = plan;
  shiftPassing(next, changed, i, by);
  const std::vector<ChamberBox> boxes = chambers(changed);
  changeEnds(next, changed.id, [&boxes](RunEnd& e) { pushInto(boxes, e); });
  next.vaults.put(std::move(changed));
  return next;
}

Plan eraseBaffle(const Plan& plan, std::string_view baffle) {
  const Locator where(plan);
  const std::optional<ObjectPlace> place = placeOf(where, baffle, ObjectKind::Baffle);
  if (!place) return plan;
  Vault changed = plan.vaults[place->index];
  std::set<Id> pointless;
  for (const Run& run : plan.runs) {
    if (run.service == Service::Interconnect && passes(run, changed.id, place->part))
      pointless.insert(run.id);
  }
  Plan next = eraseObjects(plan, pointless);
  changed.baffles.erase(changed.baffles.begin() + static_cast<std::ptrdiff_t>(place->part));
  const std::vector<ChamberBox> boxes = chambers(changed);
  changeEnds(next, changed.id, [&boxes](RunEnd& end) { renumber(boxes, end); });
  next.vaults.put(std::move(changed));
  return next;
}

Point2 manwayPlace(const Vault& vault, Point2 local, Length diameter) {
  const auto within = [&](Length outside, double v) {
    const double half = inMetres(outside) / 2 - inMetres(vault.wall) - inMetres(diameter) / 2;
    return half <= 0 ? 0 : std::clamp(v, -half, half);
  };
  return {within(vault.length, local.x), within(vault.width, local.y)};
}

Plan addManway(const Plan& plan, std::string_view vault, Point2 local, Id& made) {
  const Vault* found = plan.vaults.find(vault);
  if (found == nullptr) return plan;
  Vault changed = *found;
  made = freshId(plan, changed.id + "-M");
  changed.manways.push_back({made, manwayPlace(changed, local, kManwayOpening), kManwayOpening,
                             std::nullopt, changed.trafficLid});
  Plan next = plan;
  next.vaults.put(std::move(changed));
  return next;
}

Plan moveManway(const Plan& plan, std::string_view manway, Point2 local) {
  const Locator where(plan);
  const std::optional<ObjectPlace> place = placeOf(where, manway, ObjectKind::Manway);
  if (!place) return plan;
  Vault changed = plan.vaults[place->index];
  Manway& moved = changed.manways[place->part];
  moved.at = manwayPlace(changed, local, moved.diameter);
  Plan next = plan;
  next.vaults.put(std::move(changed));
  return next;
}

Plan eraseManway(const Plan& plan, std::string_view manway) {
  const Locator where(plan);
  const std::optional<ObjectPlace> place = placeOf(where, manway, ObjectKind::Manway);
  if (!place) return plan;
  Vault changed = plan.vaults[place->index];
  changed.manways.erase(changed.manways.begin() + static_cast<std::ptrdiff_t>(place->part));
  Plan next = plan;
  changeRuns(next, [&](Run& run) {
    if (run.eductor && run.eductor->manway == manway) run.eductor.reset();
  });
  next.vaults.put(std::move(changed));
  return next;
}

const Vault* vaultHolding(const Plan& plan, Point2 site) {
  const Vault* found = nullptr;
  for (const Vault& vault : plan.vaults) {
    if (contains(outline(vault), site)) found = &vault;
  }
  return found;
}

} // namespace sump
