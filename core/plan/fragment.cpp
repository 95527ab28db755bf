#include "core/plan/fragment.h"

#include "core/plan/carry.h"
#include "core/plan/edits_objects.h"

#include <algorithm>

namespace sump {

namespace {

/// Gives a fragment ids that neither the plan nor the fragment has.
class Renamer {
public:
  Renamer(const Plan& plan, const Plan& fragment) : taken_(plan), own_(fragment) {}

  void operator()(Id& id) {
    const Id old = id;
    if (taken_.find(id)) id = freshFor(old);
    names_[old] = id;
  }
  template <class Parts> void all(Parts& parts) {
    for (auto& part : parts)
      (*this)(part.id);
  }
  /// An id that refers to something of the fragment.
  void follow(Id& id) const {
    if (const auto it = names_.find(id); it != names_.end()) id = it->second;
  }

private:
  Id freshFor(const Id& old) {
    const std::string stem = stemOf(old);
    int& n = next_[stem];
    Id id;
    do {
      id = stem + "-" + std::to_string(++n);
    } while (taken_.find(id) || own_.find(id));
    return id;
  }

  Locator taken_;
  Locator own_;
  std::map<std::string, int> next_;
  std::map<Id, Id> names_;
};

template <class T, class Change> void changeAll(Items<T>& items, Change change) {
  Items<T> changed;
  for (const T& item : items) {
    T copy = item;
    change(copy);
    changed.append(std::move(copy));
  }
  items = std::move(changed);
}

void renameAll(Plan& f, Renamer& rename) {
  const auto own = [&rename](auto& object) { rename(object.id); };
  changeAll(f.buildings, own);
  changeAll(f.pavements, own);
  changeAll(f.utilities, own);
  changeAll(f.spots, own);
  changeAll(f.wells, own);
  changeAll(f.basins, own);
  changeAll(f.sewers, own);
  changeAll(f.washes, own);
  changeAll(f.rooms, [&rename](EquipmentRoom& room) {
    rename(room.id);
    rename.all(room.ports);
  });
  changeAll(f.vaults, [&rename](Vault& vault) {
    rename(vault.id);
    rename.all(vault.baffles);
    rename.all(vault.manways);
  });
  changeAll(f.underlays, own);
  changeAll(f.notes, own);
  changeAll(f.runs, [&rename](Run& run) {
    rename(run.id);
    rename.all(run.parts);
  });
  changeAll(f.runs, [&rename](Run& run) {
    rename.follow(run.from.target);
    rename.follow(run.to.target);
    if (run.eductor) rename.follow(run.eductor->manway);
  });
  changeAll(f.notes, [&rename](DimensionNote& note) {
    rename.follow(note.from.object);
    rename.follow(note.to.object);
  });
}

template <class T> void appendAll(Items<T>& to, const Items<T>& from) {
  for (const T& item : from)
    to.append(item);
}

void appendObjects(Plan& plan, const Plan& f) {
  appendAll(plan.buildings, f.buildings);
  appendAll(plan.pavements, f.pavements);
  appendAll(plan.utilities, f.utilities);
  appendAll(plan.spots, f.spots);
  appendAll(plan.wells, f.wells);
  appendAll(plan.basins, f.basins);
  appendAll(plan.sewers, f.sewers);
  appendAll(plan.washes, f.washes);
  appendAll(plan.rooms, f.rooms);
  appendAll(plan.vaults, f.vaults);
  appendAll(plan.runs, f.runs);
  appendAll(plan.notes, f.notes);
  appendAll(plan.underlays, f.underlays);
}

/// Frees the ends of the chosen runs that hang on what is left behind, so that erasing the rest
/// does not take the runs along.
void freeRuns(Plan& plan, const std::set<Id>& ids) {
  const Plan before = plan;
  const Locator locator(before);
  for (const Run& run : before.runs) {
    if (!ids.contains(run.id)) continue;
    Run copy = run;
    for (RunEnd* end : {&copy.from, &copy.to}) {
      if (end->kind != EndKind::Free && !ids.contains(holder(locator, *end))) {
        freeEnd(locator, *end);
      }
    }
    plan.runs.put(std::move(copy));
  }
}

} // namespace

Plan fragmentOf(const Plan& plan, const std::set<Id>& ids) {
  Plan next = plan;
  freeRuns(next, ids);
  std::set<Id> others;
  for (const Id& id : allObjects(plan)) {
    if (!ids.contains(id)) others.insert(id);
  }
  next = eraseObjects(next, others);
  // A run between chosen objects that was not chosen itself stays behind, too.
  for (const Id& id : others)
    next.runs.erase(id);
  Plan fragment;
  fragment.project.units = plan.project.units;
  appendObjects(fragment, next);
  return fragment;
}

Pasted pasted(const Plan& plan, const Plan& fragment, Point2 by) {
  Plan renamed = fragment;
  Renamer rename(plan, fragment);
  renameAll(renamed, rename);
  const std::vector<Id> ids = allObjects(renamed);
  Pasted result{plan, {ids.begin(), ids.end()}};
  appendObjects(result.plan, moveObjects(renamed, result.added, by));
  return result;
}

} // namespace sump
