#include "core/exchange/compare_plans.h"

#include "core/exchange/plan_differ.h"

namespace sump {

namespace {

template <class T> constexpr bool kHasId = requires(const T& v) {
  v.id;
};
template <class V> struct ListTrait { static constexpr bool is = false; };
template <class T> struct ListTrait<std::vector<T>> {
  static constexpr bool is = true;
  static constexpr bool top = false;
  using Item = T;
};
template <class T> struct ListTrait<Items<T>> {
  static constexpr bool is = true;
  static constexpr bool top = true;
  using Item = T;
};

template <class T> std::string noun() {
  if constexpr (std::is_same_v<T, Building>) return std::string("building");
  if constexpr (std::is_same_v<T, Pavement>) return std::string("pavement");
  if constexpr (std::is_same_v<T, Utility>) return std::string("utility line");
  if constexpr (std::is_same_v<T, SpotElevation>) return std::string("spot elevation");
  if constexpr (std::is_same_v<T, Well>) return std::string("well");
  if constexpr (std::is_same_v<T, Basin>) return std::string("basin");
  if constexpr (std::is_same_v<T, SewerConnection>) return std::string("sewer connection");
  if constexpr (std::is_same_v<T, WashEquipment>) return std::string("wash equipment");
  if constexpr (std::is_same_v<T, EquipmentRoom>) return std::string("room");
  if constexpr (std::is_same_v<T, Vault>) return std::string("vault");
  if constexpr (std::is_same_v<T, Run>) return std::string("run");
  if constexpr (std::is_same_v<T, DimensionNote>) return std::string("note");
  if constexpr (std::is_same_v<T, Underlay>) return std::string("site picture");
  if constexpr (std::is_same_v<T, Port>) return std::string("port");
  if constexpr (std::is_same_v<T, Baffle>) return std::string("baffle");
  if constexpr (std::is_same_v<T, Manway>) return std::string("manway");
  if constexpr (std::is_same_v<T, InlinePart>) return std::string("part");
  if constexpr (std::is_same_v<T, WashDevice>) return std::string("wash device");
  if constexpr (std::is_same_v<T, Supply>) return std::string("supply");
  if constexpr (std::is_same_v<T, SignalCircuit>) return std::string("signal");
  if constexpr (std::is_same_v<T, Vertex>) return std::string("corner");
  if constexpr (std::is_same_v<T, VehicleTraffic>) return std::string("kind of vehicle");
  if constexpr (std::is_same_v<T, PumpPoint>) return std::string("point");
  if constexpr (std::is_same_v<T, Conductor>) return std::string("conductor");
  if constexpr (std::is_same_v<T, Acceptance>) return std::string("accepted finding");
  if constexpr (std::is_same_v<T, RevisionEntry>) return std::string("revision");
}

template <class T> std::string calledOf(const T& item) {
  if constexpr (requires { item.name; }) {
    if (!item.name.empty()) return item.name;
  }
  return item.id;
}

template <class T> std::string summary(const T& item, UnitSystem units) {
  if constexpr (std::is_same_v<T, Run>) return summaryOf(item);
  if constexpr (std::is_same_v<T, Vault>) return summaryOf(item, units);
  if constexpr (std::is_same_v<T, InlinePart>) return std::string(wordOf(item.kind));
  return "there";
}

/// Where the fields of one struct are, in the order of its description.
struct FieldAddresses {
  std::vector<const void*> list;
  template <class V> void need(std::string_view, const V& value, std::string_view) {
    list.push_back(&value);
  }
  template <class V> void may(std::string_view, const V& value, std::string_view) {
    list.push_back(&value);
  }
};

class Differ {
public:
  explicit Differ(DiffJob& job) : job_(job) {}

  template <class T> void fields(const DiffPlace& place, const T& b, const T& a);
  /// One field of an Owner.
  template <class Owner, class V>
  void field(const DiffPlace& place, std::string_view key, const V& b, const V& a);

private:
  template <class Owner, class V>
  void value(const DiffPlace& place, std::string_view key, const V& b, const V& a);
  template <class Owner, class V>
  void optional(const DiffPlace& place, std::string_view key, const std::optional<V>& b,
                const std::optional<V>& a);
  template <class T, class List>
  void keyed(const DiffPlace& place, std::string_view key, const List& b, const List& a);
  template <class T, class List>
  void order(const DiffPlace& place, std::string_view key, const List& b, const List& a);
  template <class T>
  void unnamed(const DiffPlace& place, std::string_view key, const std::vector<T>& b,
               const std::vector<T>& a);
  template <class T> bool alike(const T& b, const T& a);
  template <class T>
  DiffPlace placeOf(const DiffPlace& owner, const T& item, bool inAfter, bool top) const;
  template <class V> static ChangeKind kindOf(std::string_view key);

  DiffJob& job_;
};

/// The second half of a pair of visits: each field of the later struct with its earlier one.
template <class Owner> struct FieldPairs {
  Differ& differ;
  const DiffPlace& place;
  const std::vector<const void*>& before;
  std::size_t next = 0;
  template <class V> void need(std::string_view key, const V& after, std::string_view) {
    // The same description gave both, so the types agree.
    differ.field<Owner>(place, key, *static_cast<const V*>(before[next++]), after);
  }
  template <class V> void may(std::string_view key, const V& after, std::string_view what) {
    need(key, after, what);
  }
};

template <class T> void Differ::fields(const DiffPlace& place, const T& b, const T& a) {
  FieldAddresses before;
  describe(before, b);
  FieldPairs<T> pairs{*this, place, before.list};
  describe(pairs, a);
}

template <class V> ChangeKind Differ::kindOf(std::string_view key) {
  if constexpr (std::is_same_v<V, Point2>) return ChangeKind::Moved;
  if constexpr (std::is_same_v<V, Angle>) return ChangeKind::Turned;
  if constexpr (std::is_same_v<V, Length>) return lengthKind(key);
  if constexpr (std::is_same_v<V, std::string>) return textKind(key);
  if constexpr (std::is_same_v<V, EndKind>) return ChangeKind::Reconnected;
  if (key == "chamber") return ChangeKind::Reconnected;
  if (key == "leg" || key == "along") return ChangeKind::Moved;
  return key == "count" ? ChangeKind::Count : ChangeKind::Specified;
}

template <class Owner, class V>
void Differ::value(const DiffPlace& place, std::string_view key, const V& b, const V& a) {
  if (sameValue(b, a)) return;
  const DiffPlace where = place.inside(fieldWords(key));
  constexpr bool kLocal = std::is_same_v<Owner, RoomBox> || std::is_same_v<Owner, Port> ||
                          std::is_same_v<Owner, Manway> || std::is_same_v<Owner, RunEnd> ||
                          std::is_same_v<Owner, NoteEnd>;
  if constexpr (std::is_same_v<V, Point2>) {
    const Point2 by = kLocal ? Frame{{}, place.turn}.toSite(a - b) : a - b;
    std::string before = printedPoint(b, kLocal, job_.units);
    std::string after = printedPoint(a, kLocal, job_.units);
    if (before == after) {
      before += " (" + numberText(b.x) + ", " + numberText(b.y) + ")";
      after += " (" + numberText(a.x) + ", " + numberText(a.y) + ")";
    }
    job_.note(ChangeKind::Moved, where, before, after, printedMove(by, place.turned, job_.units));
  } else {
    ChangeKind kind = kindOf<V>(key);
    if (std::is_same_v<Owner, Port> && key == "height") kind = ChangeKind::Level;
    if (std::is_same_v<Owner, Project> && key == "profile") {
      job_.note(kind, where, printedValue(key, b, job_.units), printedValue(key, a, job_.units));
      job_.changes.back().kind = ChangeKind::Limits;
      return;
    }
    auto [before, after] = printedPair(key, b, a, job_.units);
    job_.note(kind, where, before, after, printedDifference(key, b, a, job_.units));
    job_.changes.back().ownWords = std::is_same_v<V, std::string>;
  }
}

template <class Owner, class V>
void Differ::optional(const DiffPlace& place, std::string_view key, const std::optional<V>& b,
                      const std::optional<V>& a) {
  if (!b && !a) return;
  if (b && a) {
    field<Owner>(place, key, *b, *a);
    return;
  }
  const DiffPlace where = place.inside(fieldWords(key));
  const auto text = [&](const std::optional<V>& v) -> std::string {
    if (!v) return Described<V> ? kNone : kNotGiven;
    if constexpr (Described<V>) {
      return "there";
    } else if constexpr (std::is_same_v<V, Point2>) {
      return printedPoint(*v, false, job_.units);
    } else {
      return printedValue(key, *v, job_.units);
    }
  };
  const ChangeKind came = a ? ChangeKind::Added : ChangeKind::Removed;
  job_.note(Described<V> ? came : kindOf<V>(key), where, text(b), text(a));
  job_.changes.back().ownWords = std::is_same_v<V, std::string>;
}

template <class T>
DiffPlace Differ::placeOf(const DiffPlace& owner, const T& item, bool inAfter, bool top) const {
  const Plan& plan = inAfter ? job_.after : job_.before;
  const Locator& locator = inAfter ? job_.inAfter : job_.inBefore;
  if (!top) {
    DiffPlace place = owner.inside(noun<T>() + " " + calledOf(item));
    place.part = item.id;
    const auto own = partExtent(plan, locator, item.id);
    if (own) place.narrow(*own);
    return place;
  }
  DiffPlace place;
  place.object = item.id;
  place.noun = noun<T>();
  place.called = calledOf(item);
  if constexpr (requires { item.angle; }) place.turn = item.angle;
  if constexpr (std::is_same_v<T, Run>) {
    const auto line = locator.centreline(item);
    if (line && !line->empty()) {
      place.extent = boxOf(*line);
      place.line = *line;
    }
  } else {
    place.extent = extentOf(plan, item.id);
  }
  return place;
}

template <class T, class List> const T* itemOf(const List& list, const Id& id) {
  for (const T& item : list) {
    if (item.id == id) return &item;
  }
  return nullptr;
}

template <class T, class List> std::vector<Id> sharedOrder(const List& list, const List& other) {
  std::vector<Id> ids;
  for (const T& item : list) {
    if (itemOf<T>(other, item.id) != nullptr) ids.push_back(item.id);
  }
  return ids;
}

template <class T, class List>
void Differ::order(const DiffPlace& place, std::string_view key, const List& b, const List& a) {
  const std::vector<Id> was = sharedOrder<T>(b, a), is = sharedOrder<T>(a, b);
  if (was == is) return;
  const auto text = [](const std::vector<Id>& ids) {
    std::string all;
    for (const Id& id : ids)
      all += (all.empty() ? "" : ", ") + id;
    return all;
  };
  DiffPlace where =
      place.inside(std::is_same_v<T, Vault> ? "flow order" : "order of " + fieldWords(key));
  if (where.noun.empty()) where.noun = "plan";
  job_.note(ChangeKind::Reordered, where, text(was), text(is));
}

template <class T, class List>
void Differ::keyed(const DiffPlace& place, std::string_view key, const List& b, const List& a) {
  constexpr bool kTop = ListTrait<List>::top;
  for (const T& item : b) {
    if (itemOf<T>(a, item.id) != nullptr) continue;
    job_.note(ChangeKind::Removed, placeOf(place, item, false, kTop), summary(item, job_.units),
              kNone);
  }
  for (const T& item : a) {
    const T* was = itemOf<T>(b, item.id);
    if (was == nullptr) {
      job_.note(ChangeKind::Added, placeOf(place, item, true, kTop), kNone,
                summary(item, job_.units));
    } else if (!(*was == item)) {
      fields(placeOf(place, item, true, kTop), *was, item);
    }
  }
  if (!kTop && b.size() != a.size()) {
    job_.note(ChangeKind::Count, place.inside(fieldWords(key)), std::to_string(b.size()),
              std::to_string(a.size()));
  }
  order<T>(place, key, b, a);
}

template <class T> bool Differ::alike(const T& b, const T& a) {
  const std::size_t known = job_.changes.size();
  fields(DiffPlace{}, b, a);
  const bool same = job_.changes.size() == known;
  job_.changes.resize(known);
  return same;
}

/// `corner 3 new`, `corners 2 to 4 changed`.
std::string itemRange(const std::string& noun, std::size_t first, std::size_t count,
                      const char* how) {
  const std::string from = std::to_string(first + 1);
  if (count == 1) return noun + " " + from + " " + how;
  return noun + " " + from + " to " + std::to_string(first + count) + " " + how;
}

template <class T>
void Differ::unnamed(const DiffPlace& place, std::string_view key, const std::vector<T>& b,
                     const std::vector<T>& a) {
  const std::size_t least = std::min(b.size(), a.size());
  const auto at = [&](const std::vector<T>& list, std::size_t i) {
    DiffPlace where = place.inside(noun<T>() + " " + std::to_string(i + 1));
    if constexpr (std::is_same_v<T, Vertex>) where.narrow({list[i].at, list[i].at});
    return where;
  };
  if (b.size() == a.size()) {
    for (std::size_t i = 0; i < least; ++i)
      fields(at(a, i), b[i], a[i]);
    return;
  }
  std::size_t head = 0, tail = 0;
  while (head < least && alike(b[head], a[head]))
    ++head;
  while (tail < least - head && alike(b[b.size() - 1 - tail], a[a.size() - 1 - tail]))
    ++tail;
  const std::size_t was = b.size() - head - tail, is = a.size() - head - tail;
  DiffPlace where = at(is > 0 ? a : b, head);
  where.path = place.inside(fieldWords(key)).path;
  const std::string detail = is == 0    ? itemRange(noun<T>(), head, was, "gone")
                             : was == 0 ? itemRange(noun<T>(), head, is, "new")
                                        : itemRange(noun<T>(), head, is, "changed");
  job_.note(ChangeKind::Count, where, std::to_string(b.size()), std::to_string(a.size()), detail);
}

template <class Owner, class V>
void Differ::field(const DiffPlace& place, std::string_view key, const V& b, const V& a) {
  if constexpr (requires { b.has_value(); }) {
    optional<Owner>(place, key, b, a);
  } else if constexpr (std::is_same_v<V, std::vector<Point2>>) {
    diffOutline(job_, place, key, b, a);
  } else if constexpr (std::is_same_v<V, std::vector<std::string>>) {
    const auto text = [](const std::vector<std::string>& words) {
      std::string all;
      for (const std::string& word : words)
        all += (all.empty() ? "" : ", ") + word;
      return all.empty() ? std::string(kNone) : all;
    };
    if (b != a) job_.note(ChangeKind::Record, place.inside(fieldWords(key)), text(b), text(a));
  } else if constexpr (std::is_same_v<V, std::map<std::string, double>>) {
    diffLimits(job_, place, b, a);
  } else if constexpr (ListTrait<V>::is) {
    using Item = typename ListTrait<V>::Item;
    if constexpr (kHasId<Item>) {
      keyed<Item>(place, key, b, a);
    } else {
      unnamed(place, key, b, a);
    }
  } else if constexpr (Described<V>) {
    DiffPlace where = place.inside(fieldWords(key));
    if constexpr (std::is_same_v<V, RunEnd>) {
      where.turn = targetAngle(job_, a);
      if (const auto at = job_.inAfter.position(a)) where.narrow({*at, *at});
    }
    if constexpr (std::is_same_v<V, NoteEnd>) where.turned = a.object.empty();
    fields(where, b, a);
  } else {
    value<Owner>(place, key, b, a);
  }
}

/// The fields of the plan itself: each is a list of objects or an area of its own.
struct PlanFields {
  Differ& differ;
  const std::vector<const void*>& before;
  std::size_t next = 0;

  template <class V> void need(std::string_view key, const V& after, std::string_view) {
    const V& was = *static_cast<const V*>(before[next++]);
    DiffPlace place;
    if constexpr (Described<V>) {
      place.noun = std::string(key); // project, site, basis
      if constexpr (std::is_same_v<V, Project>) place.forced = ChangeKind::Project;
      if constexpr (std::is_same_v<V, Basis>) place.forced = ChangeKind::Basis;
      differ.fields(place, was, after);
      return;
    }
    if constexpr (!requires { after.front().id; }) {
      const bool limits = key == "limits";
      place.noun = limits ? "limits" : "record";
      place.forced = limits ? ChangeKind::Limits : ChangeKind::Record;
    }
    differ.field<Plan>(place, key, was, after);
  }
  template <class V> void may(std::string_view key, const V& after, std::string_view what) {
    need(key, after, what);
  }
};

} // namespace

std::vector<PlanChange> changesBetween(const Plan& before, const Plan& after,
                                       const Limits& limits) {
  DiffJob job(before, after, limits);
  Differ differ(job);
  FieldAddresses addresses;
  describe(addresses, before);
  PlanFields fields{differ, addresses.list};
  describe(fields, after);
  return std::move(job.changes);
}

} // namespace sump
