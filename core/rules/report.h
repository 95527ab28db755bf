#pragma once
// How a rule's check makes findings. Private to core/rules.

#include "core/rules/rule.h"
#include "core/study/decided.h"
#include "core/units/print.h"

#include <initializer_list>
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
  /// Measured against a limit, whose source and confidence the finding takes.
  Finding& against(std::string_view limit, std::string_view name, std::vector<Id> objects,
                   Arguments arguments = {});
  /// What cannot be, whatever a code says.
  Finding& impossible(std::string_view name, std::vector<Id> objects, Arguments arguments = {});
  /// A statement that is no fault.
  Finding& note(std::string_view name, std::vector<Id> objects, Arguments arguments = {});
  /// What cannot be decided is a warning, never a pass.
  Finding& undecided(std::string_view name, std::vector<Id> objects, Arguments arguments = {});
  /// Message `undecided`: "... cannot be decided: needs {needs}."
  Finding& needs(std::vector<Id> objects, const Needs& needs);
  /// The same about lines whose levels are not known, all in one; nothing for none.
  void needLevels(const std::vector<Id>& runs);

  const RuleInput& input() const { return input_; }
  UnitSystem units() const { return input_.plan.project.units; }

private:
  const RuleInput& input_;
  const Rule& rule_;
  std::vector<Finding>& findings_;
};

/// For what a rule says on another footing than its own.
void cite(Finding& finding, std::string_view source, Confidence confidence);

/// Every run of a service with its study, in the plan's order.
std::vector<std::pair<const Run*, const RunStudy*>> runsOf(const RuleInput& input, Service service);

/// Runs of these services (of all, for none) whose levels are not known, in the plan's order.
std::vector<Id> unresolved(const RuleInput& input, std::initializer_list<Service> services = {});

/// The vault that a run's end is in, with its place in the flow (0 first), or nothing.
struct ChamberPlace {
  std::size_t vault = 0;
  int chamber = 0;
};
std::optional<ChamberPlace> chamberPlace(const RuleInput& input, const RunEnd& end);

/// How far up the water column z stands: 0 at the floor, 1 at the rest level. Nothing when the
/// level is unknown or there is no water.
std::optional<double> waterFraction(const VaultStudy& vault, double z);

/// `water level of V1`, what undecided findings ask for.
std::string levelOf(const Plan& plan, const Id& vault);

/// The invert of a resolved run at one end, before a drop that is drawn there.
Length invertBeforeDrop(const RunStudy& run, bool atEnd);

/// Longer than a hair: what adding up coordinates rounds away, in metres.
inline constexpr double kRounding = 1e-6;

bool hasPart(const Run& run, PartKind kind);
std::string percent(double fraction);
std::string printSpeed(Velocity speed, UnitSystem units); ///< `4.2 ft/s`, `1.28 m/s`

} // namespace sump
