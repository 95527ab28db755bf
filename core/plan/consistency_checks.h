#pragma once
// The parts of consistency.cpp: what is shared by the checks of objects and of runs. Private to
// plan/.

#include "core/plan/consistency.h"
#include "core/plan/ends.h"
#include "core/plan/file_place.h"

#include <string_view>
#include <unordered_set>

namespace sump {

/// Less than this is no length at all: a millimetre.
inline constexpr double kLeastLength = 1e-3;
/// How far a point may lie outside what it belongs to: rounding of a moved coordinate.
inline constexpr double kSlack = 1e-6;

class ConsistencyCheck {
public:
  explicit ConsistencyCheck(const Plan& plan) : plan_(plan), where_(plan) {}
  std::vector<Problem> run();

private:
  void site();
  void buildings(const FilePlace& root);
  void utilities(const FilePlace& root);
  void basins(const FilePlace& root);
  void rooms(const FilePlace& root);
  void door(const EquipmentRoom& room, const FilePlace& at);
  void boxes(const EquipmentRoom& room, const FilePlace& at);
  void vaults(const FilePlace& root);
  void vault(const Vault& vault, const FilePlace& at);
  void baffles(const Vault& vault, const FilePlace& at);
  void manways(const Vault& vault, const FilePlace& at);
  void notes(const FilePlace& root);
  void underlays(const FilePlace& root);
  void mentions(const FilePlace& root);
  void demandBasis(const FilePlace& basis);
  void pumpBasis(const FilePlace& basis);
  void wiringBasis(const FilePlace& basis);
  void share(double v, const FilePlace& at);
  template <class Q>
  void notLess(const std::optional<Q>& v, const FilePlace& at, std::string_view mend);
  void runs(const FilePlace& root);
  void circles(const FilePlace& list);
  void runOf(const Run& run, const FilePlace& at);
  void end(const Run& run, const RunEnd& end, const FilePlace& at);
  bool target(const RunEnd& end, const FilePlace& at);
  void chamberEnd(const RunEnd& end, const FilePlace& at);
  void downLeg(const Run& run, const RunEnd& end, const FilePlace& at);
  void length(const Run& run, const FilePlace& at);
  void parts(const Run& run, const FilePlace& at);

  /// Notes a problem when `holds` is false.
  bool demand(bool holds, const FilePlace& at, std::string_view what, std::string_view mend);
  void id(const Id& id, const FilePlace& at);
  template <class T> void plainIds(const Items<T>& list, const FilePlace& at);
  bool positive(Length v, const FilePlace& at, std::string_view mend);
  bool notNegative(Length v, const FilePlace& at, std::string_view mend);
  void outlineIsSimple(const Ring& ring, const FilePlace& at);
  void point(Point2 p, const FilePlace& at);

  const Plan& plan_;
  Locator where_;
  std::unordered_set<std::string_view> seen_;
  std::vector<Problem> problems_;
};

/// A number for a message: at most 6 decimals.
std::string brief(double v);

} // namespace sump
