#include "core/rules/concerns.h"
#include "core/rules/families.h"
#include "core/rules/review.h"
#include "core/study/limits_for.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>

namespace sump {

std::span<const Rule> allRules() {
  static const std::array rules = {
      // What is there and known
      kCodeProfile, kLevelKnown, kLinesPresent,
      // Levels and drains
      kStorageVolume, kFlowOrder, kGravitySlope, kCleanoutSpacing, kCleanoutTurn, kDrainCapacity,
      kDrainSpeed, kPeakLevel, kBasinSump, kBasinOpening,
      // Inside the vaults
      kInletAboveOutlet, kInletDip, kOutletDip, kVaultLink, kInterconnectDepth, kBaffleFullHeight,
      kFirstChamberShare, kLiquidDepth, kSludgeShare, kSludgeInterval, kPeakDetention, kSandArea,
      kLidAirspace, kVentAirSpace, kVentOverRoof, kEductorMount, kManwayClear, kConnectorRoom,
      kChamberReach,
      // Suction and equipment
      kSuctionSource, kSuctionRise, kLowWater, kSuctionLift, kNpshMargin, kLineSpeed, kLinePressure,
      kProductPressure, kProductSize, kReclaimShare, kReclaimedMarking, kOverflowBackflow,
      kMakeUpProtection, kReliefDrain, kRoomClearance,
      // Ground and what is near
      kPipeCover, kConduitCover, kTrafficLid, kDeepBurial, kManwayPerChamber, kVaultClash,
      kWaterSewerApart, kCrossingClearance, kMainDistance, kWaterOverTank, kTapLevel, kStockBend,
      kShortPipe, kBendInWall, kWallAlong, kSleeveRoom,
      // The dig
      kBuoyancy, kFootingPlane, kFootingPass, kDigOverlap, kDigProtection, kDigEgress, kSpoilEdge,
      kSpoilRoom,
      // Wiring
      kSuppliesKnown, kConduitBends, kConduitFill, kBoxAccess, kMixedRaceway, kWorkingSpace,
      kDisconnectInSight};
  return rules;
}

const Rule* ruleById(std::string_view id) {
  const auto found = std::ranges::find(allRules(), id, &Rule::id);
  return found == allRules().end() ? nullptr : &*found;
}

bool Review::hasErrors() const {
  return std::ranges::any_of(
      findings, [](const Finding& f) { return f.severity == Severity::Error && !f.accepted; });
}

Severity severityLimit(const Finding& finding) {
  if (finding.impossible) return Severity::Error;
  return finding.decided && isFirm(finding.confidence) ? Severity::Error : Severity::Warning;
}

namespace {

Finding stale(const Acceptance& acceptance) {
  Finding finding;
  finding.rule = "acceptance";
  finding.severity = Severity::Note;
  finding.which = acceptance.finding;
  finding.what = {"acceptance.stale",
                  {{"finding", acceptance.finding}, {"reason", acceptance.reason}}};
  finding.mend = {"acceptance.stale.mend", {}};
  return finding;
}

void markAccepted(const std::vector<Acceptance>& acceptances, std::vector<Finding>& findings) {
  if (acceptances.empty()) return;
  std::map<std::string_view, const Acceptance*> byKey;
  for (const Acceptance& acceptance : acceptances)
    byKey.emplace(acceptance.finding, &acceptance);
  std::set<std::string_view> met;
  for (Finding& finding : findings) {
    const auto found = byKey.find(finding.key());
    if (found == byKey.end()) continue;
    finding.accepted = *found->second;
    met.insert(found->first);
  }
  for (const auto& [key, acceptance] : byKey) {
    if (!met.contains(key)) findings.push_back(stale(*acceptance));
  }
}

} // namespace

Review review(const Plan& plan, const Catalog& catalog) {
  return review(plan, catalog, builtinSupplies());
}

Review review(const Plan& plan, const Catalog& catalog, const Supplies& supplies) {
  Review result{plan, limitsFor(plan, catalog), {}, {}};
  result.study = study(result.plan, catalog, result.limits);
  const RuleInput input{result.plan, result.study, catalog, result.limits, supplies};
  const Locator locator(result.plan);
  for (const Rule& rule : allRules()) {
    const std::size_t before = result.findings.size();
    rule.check(input, rule, result.findings);
    for (std::size_t i = before; i < result.findings.size(); ++i) {
      Finding& finding = result.findings[i];
      finding.severity = std::min(finding.severity, severityLimit(finding));
      addConcerns(locator, rule.trade, finding);
    }
  }
  markAccepted(result.plan.acceptances, result.findings);
  std::ranges::stable_sort(result.findings, [](const Finding& a, const Finding& b) {
    if (a.accepted.has_value() != b.accepted.has_value()) return b.accepted.has_value();
    return a.severity > b.severity;
  });
  return result;
}

} // namespace sump
