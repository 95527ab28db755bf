#include "core/rules/report.h"

#include "core/study/object_names.h"

#include <algorithm>

namespace sump {

Finding& Reporter::report(std::string_view name, std::vector<Id> objects, Arguments arguments) {
  Finding finding;
  finding.rule = rule_.id;
  finding.severity = rule_.severity;
  finding.source = rule_.citation;
  finding.confidence = rule_.confidence;
  finding.objects = std::move(objects);
  const std::string id = std::string(rule_.id) + "." + std::string(name);
  finding.mend = {id + ".mend", arguments};
  finding.what = {id, std::move(arguments)};
  findings_.push_back(std::move(finding));
  return findings_.back();
}

Finding& Reporter::against(std::string_view limit, std::string_view name, std::vector<Id> objects,
                           Arguments arguments) {
  Finding& finding = report(name, std::move(objects), std::move(arguments));
  const Limit& figure = input_.limits.at(limit);
  cite(finding, figure.source(), figure.confidence);
  return finding;
}

Finding& Reporter::impossible(std::string_view name, std::vector<Id> objects, Arguments arguments) {
  Finding& finding = report(name, std::move(objects), std::move(arguments));
  finding.severity = Severity::Error;
  finding.impossible = true;
  return finding;
}

void cite(Finding& finding, std::string_view source, Confidence confidence) {
  finding.source = source;
  finding.confidence = confidence;
}

Finding& Reporter::note(std::string_view name, std::vector<Id> objects, Arguments arguments) {
  Finding& finding = report(name, std::move(objects), std::move(arguments));
  finding.severity = Severity::Note;
  return finding;
}

Finding& Reporter::undecided(std::string_view name, std::vector<Id> objects, Arguments arguments) {
  Finding& finding = report(name, std::move(objects), std::move(arguments));
  finding.severity = Severity::Warning;
  finding.decided = false;
  return finding;
}

Finding& Reporter::needs(std::vector<Id> objects, const Needs& needs) {
  return undecided("undecided", std::move(objects), {{"needs", needsText(needs)}});
}

void Reporter::needLevels(const std::vector<Id>& runs) {
  if (runs.empty()) return;
  Needs levels;
  for (const Id& run : runs)
    levels.push_back("levels of " + run);
  needs(runs, levels);
}

std::vector<Id> unresolved(const RuleInput& input, std::initializer_list<Service> services) {
  std::vector<Id> ids;
  for (const RunStudy& run : input.study.runs) {
    if (run.resolved) continue;
    if (services.size() == 0 || std::ranges::find(services, run.service) != services.end()) {
      ids.push_back(run.id);
    }
  }
  return ids;
}

std::string levelOf(const Plan& plan, const Id& vault) {
  return "water level of " + spokenName(plan, vault);
}

Length invertBeforeDrop(const RunStudy& run, bool atEnd) {
  if (run.legs.empty()) return atEnd ? run.endInvert : run.startInvert;
  const bool drop = (atEnd ? run.legs.back() : run.legs.front()).vertical;
  const std::size_t last = run.points.size() - 1;
  return metres(run.points[atEnd ? last - drop : std::size_t{drop}].at.z);
}

std::vector<std::pair<const Run*, const RunStudy*>> runsOf(const RuleInput& input,
                                                           Service service) {
  std::vector<std::pair<const Run*, const RunStudy*>> found;
  std::size_t i = 0;
  for (const Run& run : input.plan.runs) {
    if (run.service == service) found.emplace_back(&run, &input.study.runs[i]);
    ++i;
  }
  return found;
}

std::optional<ChamberPlace> chamberPlace(const RuleInput& input, const RunEnd& end) {
  if (end.kind != EndKind::Chamber) return std::nullopt;
  const auto found = input.study.vaultIndex.find(end.target);
  if (found == input.study.vaultIndex.end()) return std::nullopt;
  return ChamberPlace{found->second, end.chamber};
}

std::optional<double> waterFraction(const VaultStudy& vault, double z) {
  if (!vault.waterLevel) return std::nullopt;
  const double depth = inMetres(*vault.waterLevel - vault.floor);
  if (depth <= 0) return std::nullopt;
  return (z - inMetres(vault.floor)) / depth;
}

bool hasPart(const Run& run, PartKind kind) {
  return std::ranges::any_of(run.parts, [&](const InlinePart& p) { return p.kind == kind; });
}

std::string printSpeed(Velocity speed, UnitSystem units) {
  return units == UnitSystem::Metric ? fixed(speed.value(), 2) + " m/s"
                                     : fixed(inFeetPerSecond(speed), 1) + " ft/s";
}

std::string percent(double fraction) {
  return fixed(fraction * 100, 0) + " %";
}

} // namespace sump
