#include "core/sheet/dig_notes.h"

#include "core/geometry/polygon.h"
#include "core/sheet/tags.h"
#include "core/study/trench_outline.h"
#include "core/study/wall_sleeves.h"
#include "core/units/print.h"

#include <algorithm>
#include <iterator>

namespace sump {

std::vector<std::string> digFindings(const SheetJob& job) {
  static constexpr std::string_view kOfDigs[] = {"footing-plane",  "footing-pass", "dig-overlap",
                                                 "dig-protection", "dig-egress",   "spoil-edge",
                                                 "spoil-room",     "buoyancy"};
  std::vector<std::string> texts;
  for (const Finding& finding : job.review.findings) {
    const bool fault = finding.severity != Severity::Note || finding.accepted;
    if (!fault || std::ranges::find(kOfDigs, finding.rule) == std::end(kOfDigs)) continue;
    std::string names;
    for (const Id& id : finding.objects) {
      const std::string name = objectName(id, job.plan());
      if (render(finding.what).find(name) == std::string::npos)
        names += (names.empty() ? "" : ", ") + name;
    }
    texts.push_back((names.empty() ? "" : names + ": ") + render(finding.what) +
                    (finding.accepted ? " Accepted by " + finding.accepted->by + ", " +
                                            finding.accepted->date + ": " + finding.accepted->reason
                                      : " Open. " + render(finding.mend)));
  }
  return texts;
}

namespace {

/// The footings that a dig passes within its depth, with whether it stays over the plane under
/// each.
void addNearFootings(const SheetJob& job, const std::string& dig,
                     const std::vector<FootingCheck>& checks, std::vector<std::string>& texts) {
  const auto length = [&](Length v) { return printLength(v, job.units()); };
  for (const FootingCheck& check : checks) {
    const Building* building = job.plan().buildings.find(check.building);
    const bool told = building != nullptr && building->footing;
    const bool reaches = check.nearest < metres(1e-3);
    std::string text =
        dig + " passes the footing of " + objectName(check.building, job.plan()) +
        (reaches ? ", up to its wall" : ", " + length(check.nearest) + " off at the nearest") +
        ", underside " + (told ? printElevation(*building->footing, job.units()) : "not given") +
        ": ";
    if (!check.below) {
      text += "find its level before digging.";
    } else if (*check.below > metres(0)) {
      text += length(*check.below) + " below its 45 degree plane.";
    } else {
      text += length(-*check.below) + " clear of its 45 degree plane.";
    }
    texts.push_back(text);
  }
}

/// `WW-1, OF-1`: the trenches that open a pavement or a floor.
std::string opening(const SheetJob& job, const Ring& surface) {
  const auto tags = runTags(job.plan());
  std::string names;
  for (const TrenchStudy& trench : job.study().earth.trenches) {
    const auto opens = [&](const Ring& outline) { return overlaps(outline, surface); };
    if (std::ranges::any_of(trenchOutlines(trench), opens))
      names += (names.empty() ? "" : ", ") + tags.at(trench.run);
  }
  return names;
}

/// The pavements, and the floors by which the bill counts, that trenches open.
void addOpenedSurfaces(const SheetJob& job, std::vector<std::string>& texts) {
  const auto list = [&](const char* what, const auto& surfaces) {
    std::string all;
    for (const auto& surface : surfaces) {
      const std::string by = opening(job, surface.outline);
      if (!by.empty())
        all += (all.empty() ? what : "; ") + objectName(surface.id, job.plan()) + " by " + by;
    }
    if (!all.empty()) texts.push_back(all + ".");
  };
  list("Trenches open pavement: ", job.plan().pavements);
  list("Trenches open the floor of: ", buildingParts(job.plan()).walled);
}

/// Wash equipment over or beside a dig; none that the run of a trench ends at.
std::string washesNear(const Plan& plan, const std::vector<Ring>& dug, const Run* run) {
  std::string names;
  for (const WashEquipment& wash : plan.washes) {
    if (run != nullptr && (run->from.target == wash.id || run->to.target == wash.id)) continue;
    const Ring stands = outline(wash);
    constexpr double kBeside = 0.3; // m; common practice, no source
    if (std::ranges::any_of(dug,
                            [&](const Ring& ring) { return distance(ring, stands) < kBeside; }))
      names += (names.empty() ? "" : ", ") + called(wash);
  }
  return names;
}

void addWashesNear(const SheetJob& job, std::vector<std::string>& texts) {
  const auto add = [&](const std::string& dig, const std::string& names) {
    if (!names.empty())
      texts.push_back(dig + " passes under or beside wash equipment: " + names + ".");
  };
  const EarthStudy& earth = job.study().earth;
  for (const PitStudy& pit : earth.pits) {
    if (pit.top)
      add("The dig to " + printElevation(pit.bottom, job.units()),
          washesNear(job.plan(), {*pit.top}, nullptr));
  }
  const auto tags = runTags(job.plan());
  for (const TrenchStudy& trench : earth.trenches)
    add("The trench of " + tags.at(trench.run),
        washesNear(job.plan(), trenchOutlines(trench), job.plan().runs.find(trench.run)));
}

} // namespace

std::vector<std::string> digNeighbours(const SheetJob& job) {
  static constexpr const char* kKinds[] = {"building", "property line", "traffic pavement", "well",
                                           "utility",  "run",           "trench of"};
  std::vector<std::string> texts;
  const auto add = [&](const std::string& what, const std::vector<DigClash>& clashes) {
    std::string text;
    for (const DigClash& clash : clashes) {
      text += (text.empty() ? "" : ", ") +
              std::string(kKinds[static_cast<std::size_t>(clash.kind)]) +
              (clash.object.empty() ? "" : " " + objectName(clash.object, job.plan()));
    }
    if (!text.empty()) texts.push_back(what + " takes in or cuts: " + text + ".");
  };
  const auto tags = runTags(job.plan());
  for (const PitStudy& pit : job.study().earth.pits) {
    const std::string dig = "The dig to " + printElevation(pit.bottom, job.units());
    add(dig, pit.clashes);
    addNearFootings(job, dig, pit.footings, texts);
  }
  for (const TrenchStudy& trench : job.study().earth.trenches) {
    const std::string dig = "The trench of " + tags.at(trench.run);
    add(dig, trench.clashes);
    addNearFootings(job, dig, trench.footings, texts);
  }
  addWashesNear(job, texts);
  addOpenedSurfaces(job, texts);
  return texts;
}

} // namespace sump
