// Marking of the lines that bring reclaimed water to where people can reach it.

#include "core/rules/families.h"
#include "core/rules/report.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

namespace sump {

namespace {

std::string lowered(std::string text) {
  for (char& c : text)
    c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text;
}

/// A lettered note at the line, which prints on the sheet, says it in the codes' own words.
bool saysNonpotable(const Plan& plan, const Id& run) {
  constexpr std::array kWords = {"nonpotable", "non-potable", "not potable", "do not drink"};
  for (const DimensionNote& note : plan.notes) {
    if (note.from.object != run && note.to.object != run) continue;
    const std::string text = lowered(note.text);
    const bool says = std::ranges::any_of(
        kWords, [&](const char* word) { return text.find(word) != std::string::npos; });
    if (says) return true;
  }
  return false;
}

void checkMarking(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const Length apart = input.limits.length("marking.labels");
  for (const auto& [run, study] : runsOf(input, Service::Product)) {
    if (!study->resolved) {
      out.needLevels({run->id});
      continue;
    }
    const double labels = std::ceil(inMetres(study->developed) / inMetres(apart) - 1e-9);
    const Arguments arguments = {{"tape", printRunLength(study->developed, out.units())},
                                 {"labels", fixed(std::max(1.0, labels), 0)},
                                 {"apart", printRunLength(apart, out.units())}};
    if (saysNonpotable(input.plan, run->id)) {
      out.note("stated", {run->id}, arguments);
    } else {
      out.report("unmarked", {run->id}, arguments);
    }
  }
}

} // namespace

const Rule kReclaimedMarking = {
    "reclaimed-marking",
    "Reclaimed water is marked as nonpotable along its line",
    "2018 IRC P2901.2.2.3 (tape); IPC 608.9.2 and NYC Administrative Code 704.7 (labels)",
    Confidence::Seen,
    Severity::Warning,
    checkMarking,
    Trade::Plumbing};

} // namespace sump
