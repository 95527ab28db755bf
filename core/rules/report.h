#pragma once
// How a rule's check makes findings. Private to core/rules.

#include "core/rules/rule.h"
#include "core/units/print.h"

#include <string>
#include <string_view>
#include <utility>

namespace sump {

using Arguments = std::map<std::string, std::string>;

/// One rule's reports. The case names the message: `<rule>.<case>` says what is wrong and
/// `<rule>.<case>.mend` how to mend it; both are in resources/messages.
class Reporter {
public:
  Reporter(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings)
      : input_(input), rule_(rule), findings_(findings) {}

  Finding& report(std::string_view name, std::vector<Id> objects, Arguments arguments = {});
  /// A statement that is no fault.
  Finding& note(std::string_view name, std::vector<Id> objects, Arguments arguments = {});
  /// What cannot be decided is a warning, never a pass.
  Finding& undecided(std::string_view name, std::vector<Id> objects, Arguments arguments = {});

  const RuleInput& input() const { return input_; }
  UnitSystem units() const { return input_.plan.project.units; }

private:
  const RuleInput& input_;
  const Rule& rule_;
  std::vector<Finding>& findings_;
};

/// Every run of a service with its study, in the plan's order.
std::vector<std::pair<const Run*, const RunStudy*>> runsOf(const RuleInput& input, Service service);

/// The vault that a run's end is in, with its place in the flow (0 first), or nothing.
struct ChamberPlace {
  std::size_t vault = 0;
  int chamber = 0;
};
std::optional<ChamberPlace> chamberPlace(const RuleInput& input, const RunEnd& end);

/// How far up the water column z stands: 0 at the floor, 1 at the rest level. Nothing when the
/// level is unknown or there is no water.
std::optional<double> waterFraction(const VaultStudy& vault, double z);

bool hasPart(const Run& run, PartKind kind);
std::string percent(double fraction);

} // namespace sump
