#pragma once
// A rule: one named demand with its source, and a pure check over Plan and Study.

#include "core/catalog/catalog.h"
#include "core/catalog/supplies.h"
#include "core/plan/plan.h"
#include "core/rules/finding.h"
#include "core/study/study.h"

#include <span>
#include <string_view>
#include <vector>

namespace sump {

struct RuleInput {
  const Plan& plan;
  const Study& study;
  const Catalog& catalog;
  const Limits& limits;
  const Supplies& supplies;
};

struct Rule {
  std::string_view id;       ///< `storage-volume`
  std::string_view title;    ///< one line, sentence case
  std::string_view citation; ///< with edition, or `common practice, no source`
  Confidence confidence;
  Severity severity; ///< of a failure
  void (*check)(const RuleInput&, const Rule&, std::vector<Finding>&);
  Trade trade; ///< general: each finding has the trade of the lines that it is about
};

/// All rules, in the order in which findings are reported.
std::span<const Rule> allRules();
const Rule* ruleById(std::string_view id);

} // namespace sump
