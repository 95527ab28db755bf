#pragma once
// Walks two plans side by side over the plan file's description (plan_file_fields.h) and notes what
// differs. Private to exchange/.

#include "core/catalog/limits.h"
#include "core/exchange/change_words.h"
#include "core/exchange/plan_file_keys.h"
#include "core/plan/edits_group.h"
#include "core/plan/ends.h"

#include <algorithm>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace sump {

template <class V>
concept Described = requires(KeyCollector& f, const V& v) {
  describe(f, v);
};

/// What the walk stands on.
struct DiffPlace {
  Id object, part;
  std::string noun, called, path;
  std::optional<ChangeKind> forced; ///< of everything in it, whatever the field
  Angle turn;                       ///< of the frame that its points are local to
  bool turned = true;               ///< the frame's angle is known
  std::optional<Box> extent;
  Polyline line; ///< of a run, while the place is all of it

  void narrow(const Box& box) {
    extent = box;
    line.clear();
  }
  DiffPlace inside(const std::string& step) const {
    DiffPlace place = *this;
    place.path += (place.path.empty() ? "" : ": ") + step;
    return place;
  }
};

/// Both plans and what was found.
struct DiffJob {
  const Plan& before;
  const Plan& after;
  const Limits& limits;
  UnitSystem units;
  Locator inBefore, inAfter;
  std::vector<PlanChange> changes;

  DiffJob(const Plan& b, const Plan& a, const Limits& l)
      : before(b), after(a), limits(l), units(a.project.units), inBefore(b), inAfter(a) {}

  void note(ChangeKind kind, const DiffPlace& place, std::string b, std::string a,
            std::string difference = {});
};

/// Of a baffle, manway, port or inline part; nothing for others.
std::optional<Box> partExtent(const Plan& plan, const Locator& locator, const Id& id);

void diffOutline(DiffJob& job, const DiffPlace& place, std::string_view key, const Ring& b,
                 const Ring& a);
void diffLimits(DiffJob& job, const DiffPlace& place, const std::map<std::string, double>& b,
                const std::map<std::string, double>& a);
/// The angle of what a chamber, basin or wash end is local to.
Angle targetAngle(const DiffJob& job, const RunEnd& end);
/// What is said of an object that came or went.
std::string summaryOf(const Run& run);
std::string summaryOf(const Vault& vault, UnitSystem units);

} // namespace sump
