#include "core/rules/families.h"
#include "core/rules/review.h"

#include <algorithm>
#include <array>

namespace sump {

std::span<const Rule> allRules() {
  static const std::array rules = {
      kLevelKnown,    kLinesPresent,      kStorageVolume,    kFlowOrder,        kGravitySlope,
      kVaultLink,     kInterconnectDepth, kBaffleFullHeight, kLidAirspace,      kEductorMount,
      kSuctionSource, kSuctionRise,       kProductSize,      kOverflowBackflow, kMakeUpProtection,
      kRoomClearance, kPipeCover,         kConduitCover,     kTrafficLid,       kManwayPerChamber,
      kVaultClash,    kStockBend};
  return rules;
}

const Rule* ruleById(std::string_view id) {
  const auto found = std::ranges::find(allRules(), id, &Rule::id);
  return found == allRules().end() ? nullptr : &*found;
}

bool Review::hasErrors() const {
  return std::ranges::any_of(findings,
                             [](const Finding& f) { return f.severity == Severity::Error; });
}

Review review(const Plan& plan, const Catalog& catalog) {
  Review result{plan, catalog.limits.with(plan.limits), {}, {}};
  result.study = study(result.plan, catalog, result.limits);
  const RuleInput input{result.plan, result.study, catalog, result.limits};
  for (const Rule& rule : allRules())
    rule.check(input, rule, result.findings);
  std::ranges::stable_sort(result.findings, std::greater<>(), &Finding::severity);
  return result;
}

} // namespace sump
