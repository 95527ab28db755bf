#include "core/plan/consistency.h"

#include "core/geometry/polygon.h"
#include "core/plan/consistency_checks.h"

#include <algorithm>
#include <array>
#include <charconv>

namespace sump {

namespace {

constexpr std::size_t kLongestId = 100;

bool isBlank(char c) {
  return c == ' ' || (c >= 0 && c < 0x20) || c == 0x7f;
}

} // namespace

std::string brief(double v) {
  if (!std::isfinite(v)) return "not a number";
  std::array<char, 400> buffer;
  const double rounded = std::round(v * 1e6) / 1e6;
  const auto last = std::to_chars(buffer.data(), buffer.data() + buffer.size(), rounded,
                                  std::chars_format::fixed);
  return {buffer.data(), last.ptr};
}

std::vector<Problem> inconsistencies(const Plan& plan) {
  return ConsistencyCheck(plan).run();
}

/// In the order of the plan file.
std::vector<Problem> ConsistencyCheck::run() {
  const FilePlace root;
  site();
  buildings(root);
  utilities(root);
  plainIds(plan_.spots, root / "spots");
  plainIds(plan_.wells, root / "wells");
  basins(root);
  rooms(root);
  vaults(root);
  notes(root);
  underlays(root);
  mentions(root);
  runs(root);
  return std::move(problems_);
}

bool ConsistencyCheck::demand(bool holds, const FilePlace& at, std::string_view what,
                              std::string_view mend) {
  if (!holds) problems_.push_back({at.pointer(), std::string(what), std::string(mend)});
  return holds;
}

void ConsistencyCheck::id(const Id& id, const FilePlace& at) {
  const FilePlace place = at / "id";
  const bool named = demand(!id.empty(), place, "is empty", "give an id that no other object has");
  if (!named) return;
  demand(id.size() <= kLongestId, place, "is longer than 100 bytes", "give a shorter id");
  demand(std::ranges::none_of(id, isBlank), place, "holds a space or control character",
         "write the id without, as V1 or R-12");
  if (!seen_.insert(id).second) {
    demand(false, place, "is \"" + id + "\", which another object has",
           "give an id that no other object has");
  }
}

template <class T> void ConsistencyCheck::plainIds(const Items<T>& list, const FilePlace& at) {
  std::size_t i = 0;
  for (const T& item : list) {
    id(item.id, at[i]);
    point(item.at, at[i] / "at");
    ++i;
  }
}

bool ConsistencyCheck::positive(Length v, const FilePlace& at, std::string_view mend) {
  if (inMetres(v) > 0 && std::isfinite(inMetres(v))) return true;
  return demand(false, at, "is " + brief(inMetres(v)) + ", must be more than 0", mend);
}

bool ConsistencyCheck::notNegative(Length v, const FilePlace& at, std::string_view mend) {
  if (inMetres(v) >= 0 && std::isfinite(inMetres(v))) return true;
  return demand(false, at, "is " + brief(inMetres(v)) + ", must not be less than 0", mend);
}

void ConsistencyCheck::point(Point2 p, const FilePlace& at) {
  demand(std::isfinite(p.x) && std::isfinite(p.y), at, "is not a finite point",
         "give [x, y] in metres");
}

void ConsistencyCheck::outlineIsSimple(const Ring& ring, const FilePlace& at) {
  if (ring.size() < 3) {
    demand(false, at, "has " + std::to_string(ring.size()) + " points, must have at least 3",
           "give the corners in order, without repeating the first");
    return;
  }
  const bool finite =
      std::ranges::all_of(ring, [](Point2 p) { return std::isfinite(p.x) && std::isfinite(p.y); });
  if (!demand(finite, at, "has a point that is not finite", "give [x, y] in metres")) return;
  demand(isSimple(ring), at, "crosses or touches itself, or has no area",
         "put the corners in order round the outline");
}

void ConsistencyCheck::site() {
  const FilePlace root;
  const FilePlace at = root / "site";
  if (!plan_.site.boundary.empty()) outlineIsSimple(plan_.site.boundary, at / "boundary");
  if (plan_.site.frostDepth) {
    notNegative(*plan_.site.frostDepth, at / "frostDepth", "give the depth below grade in metres");
  }
}

void ConsistencyCheck::buildings(const FilePlace& root) {
  const FilePlace list = root / "buildings";
  std::size_t i = 0;
  for (const Building& building : plan_.buildings) {
    const FilePlace at = list[i++];
    id(building.id, at);
    outlineIsSimple(building.outline, at / "outline");
    if (building.roof && building.floor)
      demand(*building.roof > *building.floor, at / "roof", "is not over the floor",
             "give the elevation of the roof's highest point, not its height over the floor");
  }
  const FilePlace pavements = root / "pavements";
  i = 0;
  for (const Pavement& pavement : plan_.pavements) {
    const FilePlace at = pavements[i++];
    id(pavement.id, at);
    outlineIsSimple(pavement.outline, at / "outline");
  }
}

void ConsistencyCheck::utilities(const FilePlace& root) {
  const FilePlace list = root / "utilities";
  std::size_t i = 0;
  for (const Utility& utility : plan_.utilities) {
    const FilePlace at = list[i++];
    id(utility.id, at);
    const double length = utility.path.size() < 2 ? 0 : planLength(utility.path);
    demand(length >= kLeastLength, at / "path", "is shorter than 1 mm",
           "give at least two points that lie apart");
    if (utility.diameter) {
      positive(*utility.diameter, at / "diameter", "give the outside diameter in metres");
    }
  }
}

void ConsistencyCheck::basins(const FilePlace& root) {
  const FilePlace list = root / "basins";
  std::size_t i = 0;
  for (const Basin& basin : plan_.basins) {
    const FilePlace at = list[i++];
    id(basin.id, at);
    point(basin.at, at / "at");
    positive(basin.length, at / "length", "give the length in metres");
    positive(basin.width, at / "width", "give the width in metres");
    if (basin.sump) notNegative(*basin.sump, at / "sump", "give its depth in metres, 0 for none");
  }
  plainIds(plan_.sewers, root / "sewers");
  const FilePlace washes = root / "washes";
  i = 0;
  for (const WashEquipment& wash : plan_.washes) {
    const FilePlace at = washes[i++];
    id(wash.id, at);
    point(wash.at, at / "at");
    positive(wash.length, at / "length", "give the length in metres");
    positive(wash.width, at / "width", "give the width in metres");
  }
}

} // namespace sump
