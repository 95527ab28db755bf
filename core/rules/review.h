#pragma once
// Plan in, Study and findings out: the one call that window, command line, sheets and lists share.

#include "core/catalog/catalog.h"
#include "core/plan/plan.h"
#include "core/rules/finding.h"
#include "core/study/study.h"

namespace sump {

struct Supplies;

struct Review {
  Plan plan;
  Limits limits; ///< with the plan's own values
  Study study;
  /// Open ones before accepted ones, errors first, then in rule order.
  std::vector<Finding> findings;
  bool hasErrors() const; ///< that nobody accepted
};

/// The severity that a finding may have at most: a warning where its source is no firmer than
/// memory or common practice, or where nothing could be decided.
Severity severityLimit(const Finding& finding);

/// Pure. `plan` must be consistent (plan/consistency.h). Findings whose key() the plan accepts
/// carry that acceptance; an acceptance that fits no finding gives the note `acceptance.stale`.
Review review(const Plan& plan, const Catalog& catalog, const Supplies& supplies);
/// With the built-in supplies.
Review review(const Plan& plan, const Catalog& catalog);

} // namespace sump
