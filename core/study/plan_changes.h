#pragma once
// What differs between an earlier plan and a later one, in words and in the later plan's units, so
// that list, sheet and window all tell the same. Filled by exchange/compare_plans.h.

#include "core/geometry/box_index.h"
#include "core/plan/items.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sump {

enum class ChangeKind {
  Added,
  Removed,
  Moved,
  Turned,
  Resized,
  Level,       ///< an invert, lid, floor, rim or other elevation
  Count,       ///< how many parts, baffles, manways, corners ...
  Specified,   ///< service, nominal size, material, kind
  Reconnected, ///< an end is attached elsewhere
  Reordered,   ///< flow order of vaults, order of a list
  Renamed,
  Project, ///< title block, units, site facts without a place
  Basis,
  Limits, ///< code profile and the project's own limits
  Record, ///< accepted findings, revision block, locks
};
std::string_view name(ChangeKind kind);

/// What stands for a value or object that is not there.
inline constexpr const char* kNotGiven = "not given";
inline constexpr const char* kNone = "none";

struct PlanChange {
  ChangeKind kind = ChangeKind::Record;
  Id object;          ///< top-level object, of either plan; empty: of the plan as a whole
  Id part;            ///< baffle, manway, port or inline part of it, or the id of a limit; or empty
  std::string noun;   ///< `vault`, `run`, `basis`
  std::string called; ///< the object's name, or its id
  std::string what;   ///< `floor`, `corner 2: invert`; empty for added and removed objects
  std::string before; ///< kNone or kNotGiven where there was nothing
  std::string after;
  std::string difference;    ///< `2'-0" toward N 45° E`, `+0.25`; may be empty
  std::optional<Box> extent; ///< what a cloud goes round: after, or before if removed
  Polyline line;             ///< of a run as a whole: what the cloud follows; else empty
  bool ownWords = false;     ///< before and after are what somebody wrote, in no language
};

/// A line of the bill of materials whose amount to buy changed; amounts in `unit`, rounded.
struct BillChange {
  std::string trade;
  std::string key;
  std::string description;
  std::string size;
  std::string unit;
  int decimals = 0;
  std::optional<double> before; ///< 0 when there was no such line; nothing: cannot be decided
  std::optional<double> after;
  std::optional<double> difference() const;
};

struct PlanComparison {
  std::string earlier; ///< by what the earlier plan is called: its file
  std::vector<PlanChange> changes;
  std::vector<BillChange> bill;
  bool empty() const { return changes.empty() && bill.empty(); }
};

/// `vault V1`, `Vault 1`, `run Overflow`: the noun only where the name does not say it already.
std::string objectWords(const PlanChange& change);
/// `Vault 1: baffle BF2: offset`: object and what of it, for lists.
std::string subject(const PlanChange& change);
/// The whole change as a sentence's part: `vault V1: floor: 96.20 to 95.95 (-0.25)`.
std::string told(const PlanChange& change);

} // namespace sump
