// Pull boxes in buried conduit: each is opened at grade, by a cover that carries what drives there.

#include "core/geometry/polygon.h"
#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/access_risers.h"
#include "core/study/object_names.h"
#include "core/study/part_place.h"

#include <algorithm>

namespace sump {

namespace {

/// The vault or basin whose outline takes in the place, or nothing.
std::optional<Id> coveredBy(const Plan& plan, Point2 at) {
  const auto find = [at](const auto& things) -> std::optional<Id> {
    for (const auto& thing : things) {
      if (contains(outline(thing), at)) return thing.id;
    }
    return std::nullopt;
  };
  const auto vault = find(plan.vaults);
  return vault ? vault : find(plan.basins);
}

void checkRiser(Reporter& out, const InlinePart& box, const AccessRiser& riser) {
  if (!riser.grade) {
    out.needs({riser.run}, {"ground levels"}).which = box.id;
  } else if (riser.traffic && !box.trafficCover.value_or(false)) {
    Finding& finding = out.report("traffic", {riser.run}, {{"box", box.id}});
    finding.place = flat(riser.at);
    finding.which = box.id;
  }
}

void checkBox(Reporter& out, const RunStudy& run, const InlinePart& box) {
  const auto place = partPlace(run, box);
  if (!place) return;
  const Plan& plan = out.input().plan;
  if (const auto over = coveredBy(plan, flat(place->at))) {
    Finding& finding = out.report("covered", {run.id, *over},
                                  {{"box", box.id}, {"other", spokenName(plan, *over)}});
    finding.place = flat(place->at);
    finding.which = box.id;
    return;
  }
  const std::vector<AccessRiser> risers = accessRisers(plan, out.input().study, run);
  const auto riser = std::ranges::find(risers, box.id, &AccessRiser::part);
  if (riser != risers.end()) checkRiser(out, box, *riser);
}

void checkBoxes(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  std::vector<Id> unknown;
  for (std::size_t i = 0; i < input.study.runs.size(); ++i) {
    const RunStudy& run = input.study.runs[i];
    for (const InlinePart& part : input.plan.runs[i].parts) {
      if (part.kind != PartKind::PullBox) continue;
      if (run.resolved) {
        checkBox(out, run, part);
      } else if (unknown.empty() || unknown.back() != run.id) {
        unknown.push_back(run.id);
      }
    }
  }
  out.needLevels(unknown);
}

} // namespace

const Rule kBoxAccess = {"box-access",
                         "Each pull box in the ground can be opened at grade",
                         "NEC 314.29 and 314.30, from memory",
                         Confidence::FromMemory,
                         Severity::Warning,
                         checkBoxes,
                         Trade::Electrical};

} // namespace sump
