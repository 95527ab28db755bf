#pragma once
// The transit depot as the ground on which each rule is tried: read once, changed in one place.

#include "core/exchange/plan_file.h"
#include "core/rules/review.h"
#include "core/rules/rule.h"
#include "tests/support/places.h"

#include <algorithm>
#include <filesystem>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace sump::testing {

inline std::filesystem::path samples() {
  return std::filesystem::path(sourceFolder()) / "samples";
}

inline const Plan& depot() {
  static const Plan plan = readPlanFile(samples() / "transit-depot.sump");
  return plan;
}

inline Review reviewed(const Plan& plan) {
  return review(plan, builtinCatalog());
}

/// Changes the object of this id, which must exist.
template <class T, class F> void change(Items<T>& items, std::string_view id, F edit) {
  T copy = *items.find(id);
  edit(copy);
  items.put(std::move(copy));
}

template <class F> void changeRun(Plan& plan, std::string_view id, F edit) {
  change(plan.runs, id, edit);
}
template <class F> void changeVault(Plan& plan, std::string_view id, F edit) {
  change(plan.vaults, id, edit);
}
template <class F> void changeRoom(Plan& plan, F edit) {
  change(plan.rooms, "ER-1", edit);
}

inline void dropPart(Plan& plan, std::string_view run, PartKind kind) {
  changeRun(plan, run,
            [&](Run& r) { std::erase_if(r.parts, [&](auto& p) { return p.kind == kind; }); });
}

inline void replacePart(Plan& plan, std::string_view run, PartKind old, PartKind kind) {
  changeRun(plan, run, [&](Run& r) {
    for (InlinePart& part : r.parts)
      if (part.kind == old) part.kind = kind;
  });
}

inline Ring ringInFeet(double x, double y, double X, double Y) {
  constexpr double f = kMetresPerFoot;
  return {{x * f, y * f}, {X * f, y * f}, {X * f, Y * f}, {x * f, Y * f}};
}

/// The first finding of this message about these objects, or null.
inline const Finding* find(const Review& review, std::string_view message,
                           const std::vector<Id>& objects) {
  const auto found = std::ranges::find_if(review.findings, [&](const Finding& f) {
    return f.what.id == message && f.objects == objects;
  });
  return found == review.findings.end() ? nullptr : &*found;
}

using Edit = std::function<void(Plan&)>;

/// One way to break a rule: `bad` is just over the limit; `good`, where given, just under it.
struct Case {
  std::string_view message;
  Severity severity = Severity::Warning;
  std::vector<Id> objects;
  Edit bad;
  Edit good = {};
};

inline Plan with(const Edit& edit) {
  Plan plan = depot();
  edit(plan);
  return plan;
}

} // namespace sump::testing
