#include "core/plan/edits_objects.h"

#include "core/plan/carry.h"

namespace sump {

namespace {

/// Erases or frees the runs that hang on what is gone. A run that goes may carry others.
void releaseRuns(Plan& plan, const Plan& before, std::set<Id> gone) {
  const Locator locator(before);
  bool again = true;
  while (again) {
    again = false;
    for (const Run& run : before.runs) {
      const bool from = gone.contains(holder(locator, run.from));
      const bool to = gone.contains(holder(locator, run.to));
      if (from && to) again = gone.insert(run.id).second || again;
    }
  }
  for (const Run& run : before.runs) {
    if (gone.contains(run.id)) {
      plan.runs.erase(run.id);
      continue;
    }
    Run next = run;
    for (RunEnd* end : {&next.from, &next.to}) {
      if (gone.contains(holder(locator, *end))) freeEnd(locator, *end);
    }
    if (next.eductor && locator.vaultOfManway(next.eductor->manway) != nullptr &&
        gone.contains(locator.vaultOfManway(next.eductor->manway)->id)) {
      next.eductor.reset();
    }
    if (!(next == run)) plan.runs.put(std::move(next));
  }
}

/// Forgets ids of objects that `next` no longer has: dimension notes stay where they were, and the
/// basis keeps what it knew without them.
void releaseMentions(Plan& next, const Plan& before) {
  const Locator was(before), is(next);
  const auto lost = [&is](const Id& id) { return !id.empty() && !is.find(id); };
  std::vector<DimensionNote> freed;
  for (const DimensionNote& note : next.notes) {
    DimensionNote copy = note;
    for (NoteEnd* end : {&copy.from, &copy.to}) {
      if (!lost(end->object)) continue;
      *end = {{}, was.position(*end).value_or(end->at)};
    }
    if (!(copy == note)) freed.push_back(std::move(copy));
  }
  for (DimensionNote& note : freed)
    next.notes.put(std::move(note));
  std::erase_if(next.locked, lost);
  for (WashDevice& device : next.basis.demand.devices) {
    if (lost(device.wash)) device.wash.clear();
  }
  for (Supply& supply : next.basis.wiring.supplies) {
    if (lost(supply.run)) supply.run.clear();
  }
  for (SignalCircuit& signal : next.basis.wiring.signalCircuits) {
    if (lost(signal.run)) signal.run.clear();
  }
}

/// Hands out ids that neither the plan nor an earlier copy has.
class Copier {
public:
  explicit Copier(const Plan& plan) : plan_(plan) {}

  template <class T> void rename(T& part) {
    const Id old = part.id;
    const std::string stem = stemOf(old);
    if (!locator_) locator_.emplace(plan_);
    int& n = next_[stem];
    do {
      part.id = stem + "-" + std::to_string(++n);
    } while (locator_->find(part.id));
    copies_[old] = part.id;
  }
  template <class T, class Parts>
  void copy(Items<T>& into, const std::set<Id>& ids, Parts renameParts) {
    std::vector<T> added; // appended last: the loop reads the list
    for (const T& item : into) {
      if (!ids.contains(item.id)) continue;
      T twin = item;
      rename(twin);
      renameParts(twin);
      added.push_back(std::move(twin));
    }
    for (T& twin : added)
      into.append(std::move(twin));
  }
  const std::map<Id, Id>& copies() const { return copies_; }

private:
  const Plan& plan_;
  std::optional<Locator> locator_;
  std::map<std::string, int> next_;
  std::map<Id, Id> copies_;
};

void copyLists(Plan& plan, Copier& copier, const std::set<Id>& ids) {
  const auto none = [](auto&) {};
  const auto each = [&copier](auto& parts) {
    for (auto& part : parts)
      copier.rename(part);
  };
  copier.copy(plan.buildings, ids, none);
  copier.copy(plan.pavements, ids, none);
  copier.copy(plan.utilities, ids, none);
  copier.copy(plan.spots, ids, none);
  copier.copy(plan.wells, ids, none);
  copier.copy(plan.basins, ids, none);
  copier.copy(plan.sewers, ids, none);
  copier.copy(plan.washes, ids, none);
  copier.copy(plan.rooms, ids, [&each](EquipmentRoom& room) { each(room.ports); });
  copier.copy(plan.vaults, ids, [&each](Vault& vault) {
    each(vault.baffles);
    each(vault.manways);
  });
  copier.copy(plan.notes, ids, none);
  copier.copy(plan.underlays, ids, none);
  copier.copy(plan.runs, ids, [&each](Run& run) { each(run.parts); });
}

/// Copied notes follow the copies of what their originals follow.
void retargetNotes(Plan& plan, const std::map<Id, Id>& copies) {
  for (const auto& [original, copy] : copies) {
    const DimensionNote* note = plan.notes.find(copy);
    if (note == nullptr) continue;
    DimensionNote twin = *note;
    for (Id* object : {&twin.from.object, &twin.to.object}) {
      if (copies.contains(*object)) *object = copies.at(*object);
    }
    plan.notes.put(std::move(twin));
  }
}

template <class T> void addIds(const Items<T>& items, std::vector<Id>& ids) {
  for (const T& item : items)
    ids.push_back(item.id);
}

} // namespace

std::string stemOf(const Id& id) {
  const std::size_t last = id.find_last_not_of("0123456789");
  const std::size_t end = last == Id::npos ? Id::npos : id.find_last_not_of('-', last);
  return end == Id::npos ? "X" : id.substr(0, end + 1);
}

Id freshId(const Plan& plan, std::string_view stem) {
  const Locator locator(plan);
  for (int n = 1;; ++n) {
    Id id = std::string(stem) + "-" + std::to_string(n);
    if (!locator.find(id)) return id;
  }
}

Plan moveObjects(const Plan& plan, const std::set<Id>& ids, Point2 by) {
  return carried(plan, ids, Motion::shift(by));
}

Plan reframeVault(const Plan& plan, const Id& vault, const Frame& frame) {
  const Vault* found = plan.vaults.find(vault);
  if (found == nullptr) return plan;
  Plan next = carried(plan, {vault}, Motion::between(found->frame(), frame));
  Vault exact = *next.vaults.find(vault);
  exact.centre = frame.origin;
  exact.angle = frame.angle;
  next.vaults.put(std::move(exact));
  return next;
}

Plan eraseObjects(const Plan& plan, const std::set<Id>& ids) {
  Plan next = plan;
  for (const Id& id : ids) {
    next.buildings.erase(id);
    next.pavements.erase(id);
    next.utilities.erase(id);
    next.spots.erase(id);
    next.wells.erase(id);
    next.basins.erase(id);
    next.sewers.erase(id);
    next.washes.erase(id);
    next.rooms.erase(id);
    next.vaults.erase(id);
    next.notes.erase(id);
    next.underlays.erase(id);
    std::erase(next.locked, id);
  }
  releaseRuns(next, plan, ids);
  releaseMentions(next, plan);
  return next;
}

Copied copyObjects(const Plan& plan, const std::set<Id>& ids, Point2 by) {
  Copied result{plan, {}};
  Copier copier(plan);
  copyLists(result.plan, copier, ids);
  result.copies = copier.copies();
  std::set<Id> moved;
  for (const auto& [original, copy] : result.copies) {
    moved.insert(copy);
    const Run* run = result.plan.runs.find(copy);
    if (run == nullptr) continue;
    Run twin = *run;
    for (Id* target : {&twin.from.target, &twin.to.target}) {
      if (result.copies.contains(*target)) *target = result.copies.at(*target);
    }
    if (twin.eductor && result.copies.contains(twin.eductor->manway)) {
      twin.eductor->manway = result.copies.at(twin.eductor->manway);
    }
    result.plan.runs.put(std::move(twin));
  }
  retargetNotes(result.plan, result.copies);
  result.plan = moveObjects(result.plan, moved, by);
  return result;
}

std::vector<Id> allObjects(const Plan& plan) {
  std::vector<Id> ids;
  addIds(plan.buildings, ids);
  addIds(plan.pavements, ids);
  addIds(plan.utilities, ids);
  addIds(plan.spots, ids);
  addIds(plan.wells, ids);
  addIds(plan.basins, ids);
  addIds(plan.sewers, ids);
  addIds(plan.washes, ids);
  addIds(plan.rooms, ids);
  addIds(plan.vaults, ids);
  addIds(plan.runs, ids);
  addIds(plan.notes, ids);
  addIds(plan.underlays, ids);
  return ids;
}

} // namespace sump
