// The sheet's notes. Safety wording: the usual cautions, which defer to local codes and to licensed
// practice.

#include "core/rules/rule.h"
#include "core/sheet/schedules.h"
#include "core/sheet/tags.h"
#include "core/study/exposed_pipe.h"
#include "core/units/print.h"

#include <algorithm>

namespace sump {

namespace {

std::string storageStatement(const Review& review) {
  const UnitSystem units = review.plan.project.units;
  std::string text = "Working storage at rest: " + printVolume(review.study.workingVolume, units);
  if (review.limits.has("storage.minimum")) {
    text += "; wanted: " + printVolume(review.limits.volume("storage.minimum"), units);
  }
  text += ".";
  for (const Finding& finding : review.findings) {
    if (finding.rule == "storage-volume" && finding.severity == Severity::Note) {
      text += " " + render(finding.what);
    }
  }
  return text;
}

std::string groundStatement(const Review& review) {
  const Site& site = review.plan.site;
  const UnitSystem units = review.plan.project.units;
  std::string text;
  if (site.groundwater) {
    text += "Highest expected groundwater: elevation " + printElevation(*site.groundwater, units) +
            ". ";
  }
  if (site.frostDepth) text += "Frost depth: " + printShort(*site.frostDepth, units) + ". ";
  return text + "Confirm soil, groundwater and flotation of the empty vaults before setting them.";
}

const Acceptance* acceptanceFor(const Plan& plan, const Finding& finding) {
  const std::string key = finding.key();
  const auto it = std::find_if(plan.acceptances.begin(), plan.acceptances.end(),
                               [&](const Acceptance& a) { return a.finding == key; });
  return it == plan.acceptances.end() ? nullptr : &*it;
}

} // namespace

std::string northStatement(const Plan& plan) {
  const double turn = inDegrees(plan.site.north);
  if (std::abs(turn) < 0.05) return " North of the axes is true north.";
  return " North of the axes is up the sheet; true north, as on the plans, is " +
         printAngle(degrees(std::abs(turn))) +
         (turn > 0 ? " to the left of it." : " to the right of it.");
}

namespace {

/// In the words of the bill of materials; nothing where no such pipe is.
std::string nonpotableStatement(const Review& review) {
  const bool taped = std::ranges::any_of(review.study.runs, [&](const RunStudy& run) {
    return isTaped(*review.plan.runs.find(run.id), run);
  });
  return taped ? std::string(kNonpotableMarking) +
                     "; in the room labels 'NONPOTABLE WATER' with flow arrows."
               : std::string();
}

} // namespace

Block generalNotes(const Review& review, double width) {
  const bool metric = review.plan.project.units == UnitSystem::Metric;
  const std::string datum = review.plan.site.datum;
  std::vector<std::string> notes = {
      std::string("Elevations are in ") + (metric ? "metres" : "feet") + " on the site datum" +
          (datum.empty() ? "" : " (" + datum + ")") +
          ". Pipe elevations are inverts. Do not scale; use the figures." +
          northStatement(review.plan),
      "The adopted local code and the authority having jurisdiction govern over this sheet. Work "
      "is to be designed, sealed, permitted and inspected by licensed people where local law asks "
      "for it.",
      storageStatement(review),
      "Water levels are at rest. Wash water enters the first vault; the suction is in the last.",
      "Buried pressure and transfer pipe is Schedule 80 PVC unless scheduled otherwise. Lay "
      "gravity pipe at a uniform grade on firm bedding from the low end up.",
      "Suction rises all the way to the pump, with no high pocket. Test suction and pressure pipe "
      "before backfill.",
      "Every pipe through a vault wall or a riser passes a resilient connector (boot, ASTM C923), "
      "not grout alone.",
      nonpotableStatement(review),
      groundStatement(review),
      "Verify inverts of the sewer connection and the drain outlets before ordering vaults."};
  std::erase(notes, std::string());
  return paragraphs("GENERAL NOTES", notes, width, true);
}

bool hasAirGap(const Plan& plan) {
  for (const Run& run : plan.runs) {
    for (const InlinePart& part : run.parts) {
      if (part.kind == PartKind::AirGap) return true;
    }
  }
  return false;
}

Block cautions(const Plan& plan, double width) {
  return paragraphs(
      "CAUTIONS",
      {"CALL BEFORE YOU DIG: have all utilities located and marked; dig by hand near them. Lines "
       "shown are from records and may lie elsewhere.",
       "EXCAVATION: shore, slope or shield, keep spoil and loads off the edge, have a competent "
       "person inspect daily and after rain; keep people out from under unsupported ground.",
       "CONFINED SPACE: vaults are permit spaces. No entry, even briefly, without permit, gas "
       "test, "
       "ventilation, attendant and a rescue plan. Keep covers locked.",
       "LIFTING: set vaults with rated gear and the maker's lifting points, to a lift plan; nobody "
       "under the load; keep clear of overhead lines.",
       "ELECTRICAL: work by licensed electricians, locked out and tested dead; seal conduits from "
       "vaults against gas and water, at the panel.",
       std::string("CROSS-CONNECTION: reclaimed water is not for drinking. Keep the ") +
           (hasAirGap(plan) ? "air gap" : "tested backflow assembly") +
           " on the fresh-water make-up; mark reclaimed pipe and outlets; no pipe or hose joins "
           "wash equipment's fresh water with reclaimed water."},
      width, false);
}

std::string ruleTitle(const Finding& finding) {
  const Rule* found = ruleById(finding.rule);
  return found != nullptr ? std::string(found->title) : finding.rule;
}

Block findingList(const Review& review, double width) {
  std::vector<std::string> texts;
  bool anyAccepted = false;
  for (const Finding& finding : review.findings) {
    if (finding.severity == Severity::Note || finding.accepted) continue;
    std::string kind(name(finding.severity));
    std::transform(kind.begin(), kind.end(), kind.begin(),
                   [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
    texts.push_back(kind + ": " + render(finding.what));
    // Accepted is still wrong: the sheet says so, and who answers for it.
    if (const Acceptance* accepted = acceptanceFor(review.plan, finding)) {
      texts.back() +=
          " ACCEPTED by " + accepted->by + ", " + accepted->date + ": " + accepted->reason;
      anyAccepted = true;
    }
  }
  return paragraphs(anyAccepted ? "OPEN AND ACCEPTED FINDINGS OF THE CHECK"
                                : "OPEN FINDINGS OF THE CHECK",
                    texts, width, true);
}

} // namespace sump
