#pragma once
// Plan in, Study and findings out: the one call that window, command line, sheets and lists share.

#include "core/catalog/catalog.h"
#include "core/plan/plan.h"
#include "core/rules/finding.h"
#include "core/study/study.h"

namespace sump {

struct Review {
  Plan plan;
  Limits limits; ///< with the plan's own values
  Study study;
  std::vector<Finding> findings; ///< errors first, then in rule order
  bool hasErrors() const;
};

/// Pure. `plan` must be consistent (plan/consistency.h).
Review review(const Plan& plan, const Catalog& catalog);

} // namespace sump
