#pragma once
// Every number that a sheet may print, taken from Plan and Study without the sheets' code: of each
// object, and of the site as a whole.

#include "core/catalog/catalog.h"
#include "core/catalog/supplies.h"
#include "core/geometry/point.h"
#include "core/geometry/polygon.h"
#include "core/plan/ends.h"
#include "core/rules/review.h"
#include "core/study/connections.h"
#include "core/study/disconnect_space.h"
#include "core/study/exposed_pipe.h"
#include "core/study/floor_cover.h"
#include "core/study/hole_gaps.h"
#include "core/study/manway_way.h"
#include "core/study/nominal_volts.h"
#include "core/study/part_place.h"
#include "core/study/profile.h"
#include "core/study/vent_ends.h"
#include "core/study/wall_sleeves.h"
#include "tests/sheet/printed_numbers.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace sump::testing {

class KnownNumbers {
public:
  explicit KnownNumbers(const Review& review);

  /// Is there such a number of this object (of any, for an empty id)?
  bool has(const PrintedNumber& number, const Id& object) const {
    const auto of = sets_.find({object, number.kind});
    if (of == sets_.end()) return false;
    const auto near = of->second.lower_bound(number.value - number.half);
    return near != of->second.end() && *near <= number.value + number.half;
  }

private:
  template <class Unit> static double si(const bu::quantity<Unit>& v) { return v.value(); }
  static double si(double v) { return v; }
  static double si(int v) { return v; }
  static double si(const RunLoss& v) { return v.total.value(); }

  void put(Printed kind, const Id& object, double value) {
    sets_[{object, kind}].insert(value);
    sets_[{Id{}, kind}].insert(value);
  }
  template <class T> void put(Printed kind, const Id& object, const T& value) {
    put(kind, object, si(value));
  }
  template <class T> void put(Printed kind, const Id& object, const std::optional<T>& value) {
    if (value) put(kind, object, *value);
  }
  template <class T> void put(Printed kind, const Id& object, const Decided<T>& value) {
    if (value) put(kind, object, *value);
  }
  template <class... T> void levels(const Id& object, const T&... values) {
    (put(Printed::Level, object, values), ...);
  }
  template <class... T> void lengths(const Id& object, const T&... values) {
    (put(Printed::Length, object, values), ...);
  }
  template <class... T> void volumes(const Id& object, const T&... values) {
    (put(Printed::Volume, object, values), ...);
  }
  void nominal(const Id& object, const std::string& size) {
    // `6`, `1-1/2`, `6 x 4`
    for (std::size_t from = 0; from < size.size();) {
      const std::size_t end = std::min(size.find(" x ", from), size.size());
      put(Printed::Nominal, object, detail::mixed(size.substr(from, end - from)) * kMetresPerInch);
      from = end + 3;
    }
  }

  void site(const Plan& plan);
  void ofPort(const Id& object, const EquipmentRoom& room, const Port& port);
  void rooms(const Plan& plan);
  void vaults(const Review& review);
  void levelsOfRun(const Run& run, const RunStudy& study);
  void runs(const Review& review);
  void places(const Review& review);
  void earth(const EarthStudy& earth);
  void train(const TrainStudy& train);
  void pumping(const HydraulicsStudy& hydraulics);
  void wiring(const Plan& plan, const WiringStudy& wiring);
  void basis(const Basis& basis);
  void distances(const Plan& plan);
  void calculated(const Review& review);
  void openings(const Review& review);
  void wallsAndSlabs(const Review& review);
  void vents(const Review& review);
  void dips(const Review& review);
  void slant(const WallSleeve& sleeve);
  void digs(const Review& review);
  void digClearances(const Review& review, const PitStudy& pit);
  void roomGaps(const Plan& plan);
  void roomWork(const Review& review);
  void structures(const RunProfile& profile, const std::string& sheet);
  /// Of two levels, unsigned.
  static double between(Length a, Length b) { return std::abs((a - b).value()); }
  /// Of two levels as they are printed, unsigned.
  double height(Length a, Length b) const {
    const double step = metric_ ? 0.001 : 0.01 * kMetresPerFoot;
    return std::abs(std::round(a.value() / step) - std::round(b.value() / step)) * step;
  }
  void leastCover(const RunProfile& profile, const std::string& sheet);
  void underFloors(const Review& review, const RunStudy& run, const ProfilePoint& point,
                   const std::string& sheet);
  void risers(const Review& review);
  void hanging(const Review& review, const RunStudy& run, const std::string& sheet);
  void sections(const Review& review);
  void details(const Review& review);
  void groundAtBreaks(const RunProfile& profile, std::vector<double> stops,
                      const std::string& sheet);
  /// A number that stands on one series of sheets only, `C-1`, or there in the drawing of one run,
  /// `P-3:WW-1`, so that it proves nothing elsewhere.
  void on(const std::string& series, Printed kind, double value) {
    sets_[{series, kind}].insert(value);
  }

  bool metric_;
  std::map<std::pair<Id, Printed>, std::set<double>> sets_;
};

inline KnownNumbers::KnownNumbers(const Review& review)
    : metric_(review.plan.project.units == UnitSystem::Metric) {
  site(review.plan);
  rooms(review.plan);
  vaults(review);
  runs(review);
  places(review);
  earth(review.study.earth);
  train(review.study.train);
  pumping(review.study.hydraulics);
  wiring(review.plan, review.study.wiring);
  basis(review.plan.basis);
  distances(review.plan);
  calculated(review);
  openings(review);
  digs(review);
  roomGaps(review.plan);
  risers(review);
  roomWork(review);
  sections(review);
  details(review);
}

} // namespace sump::testing

#include "tests/sheet/known_figures.h"
#include "tests/sheet/known_runs.h"
#include "tests/sheet/known_site.h"
#include "tests/sheet/known_vaults.h"
