#pragma once
// Where things are: which object an id names, and where on the site a run's end lies. Used by
// consistency, edits, study and the window, so that a run's end is worked out in one place only.

#include "core/plan/plan.h"

#include <optional>
#include <string_view>
#include <unordered_map>

namespace sump {

/// The kinds of object that carry an id. Those after Run are parts of another object.
enum class ObjectKind {
  Building,
  Pavement,
  Utility,
  Spot,
  Well,
  Basin,
  Sewer,
  Wash,
  Room,
  Vault,
  Note,     ///< a dimension note
  Underlay, ///< a picture to draw over
  Run,
  Port,   ///< of a room
  Baffle, ///< of a vault
  Manway, ///< of a vault
  Part,   ///< of a run
};

/// Position of an object in the plan: index in its list; for parts, the owner's index and then the
/// position in the owner's own list.
struct ObjectPlace {
  ObjectKind kind = ObjectKind::Building;
  std::size_t index = 0;
  std::size_t part = 0;
  bool operator==(const ObjectPlace&) const = default;
};

/// A run may tee into a run that tees into another, this many in a row; more is taken for a circle
/// (and bounds the work, since both ends of each may branch).
inline constexpr int kDeepestBranching = 8;

/// An index of the plan by id; building it is one pass. It refers to the plan's objects, so the
/// plan must outlive it unchanged. Of several objects of one id the first is found.
class Locator {
public:
  explicit Locator(const Plan& plan);

  std::optional<ObjectPlace> find(std::string_view id) const;
  const Vault* vault(std::string_view id) const;
  const Basin* basin(std::string_view id) const;
  const SewerConnection* sewer(std::string_view id) const;
  const WashEquipment* wash(std::string_view id) const;
  const EquipmentRoom* room(std::string_view id) const;
  const Run* run(std::string_view id) const;
  const Port* port(std::string_view id) const;
  const EquipmentRoom* roomOfPort(std::string_view id) const;
  const Vault* vaultOfManway(std::string_view id) const;

  /// Site position of a run's end. A Run end is projected onto the nearest point of the other run
  /// in plan. Nothing when the target does not exist, is of another kind, or when runs hang on
  /// each other in a circle.
  std::optional<Point2> position(const RunEnd& end) const;
  /// Site position of a note's end; nothing when its object does not exist.
  std::optional<Point2> position(const NoteEnd& end) const;
  /// from, vertices..., to on the site; nothing when an end has no position.
  std::optional<Polyline> centreline(const Run& run) const;

private:
  std::optional<Point2> position(const RunEnd& end, int depth) const;
  std::optional<Polyline> centreline(const Run& run, int depth) const;
  void addPartIds();
  template <class T> const T* at(const Items<T>& list, ObjectKind kind, std::string_view id) const;

  const Plan* plan_;
  std::unordered_map<std::string_view, ObjectPlace> places_;
};

/// As Locator::position for a single look-up; use a Locator where many are asked.
std::optional<Point2> sitePosition(const Plan& plan, const RunEnd& end);

/// The point of the line that is nearest to p in plan; p itself for an empty line.
Point2 nearestOnLine(Point2 p, const Polyline& line);

} // namespace sump
