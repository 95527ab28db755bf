// Flotation of the empty vaults, and the dig: sides, ways out, spoil, footings and what is near.
// Screening for planning: a licensed engineer and a competent person decide.

#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/object_names.h"
#include "core/study/trench_outline.h"
#include "core/units/earth.h"

#include <algorithm>

namespace sump {

namespace {

void checkBuoyancy(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const double need = input.limits.number("earth.flotation-factor");
  for (const BuoyancyStudy& vault : input.study.earth.buoyancy) {
    if (!vault.factor) {
      out.needs({vault.vault}, vault.factor.needs);
      continue;
    }
    if (*vault.factor >= need) continue;
    // Less than 1 is no matter of margin: the empty vault rises.
    Finding& finding = *vault.factor < 1
                           ? out.impossible("floats", {vault.vault})
                           : out.against("earth.flotation-factor", "light", {vault.vault});
    finding.measured = fixed(*vault.factor, 2);
    finding.required = fixed(need, 2);
  }
}

/// What pits and trenches have in common for the rules here.
struct Dig {
  std::vector<Id> objects; ///< vaults of the pit, or the run of the trench
  const Egress& egress;
  const std::vector<DigClash>& clashes;
  const std::vector<FootingCheck>& footings;
  Needs needs; ///< why its depth or outline is not known
};

std::vector<Dig> digs(const EarthStudy& earth) {
  std::vector<Dig> all;
  for (const PitStudy& pit : earth.pits) {
    Needs needs = pit.top.needs;
    addNeeds(needs, pit.depth.needs);
    all.push_back({pit.vaults, pit.egress, pit.clashes, pit.footings, needs});
  }
  for (const TrenchStudy& trench : earth.trenches) {
    all.push_back({{trench.run}, trench.egress, trench.clashes, trench.footings, {}});
  }
  return all;
}

void checkFooting(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (const Dig& dig : digs(input.study.earth)) {
    if (!dig.needs.empty()) out.needs(dig.objects, dig.needs);
    for (const FootingCheck& footing : dig.footings) {
      std::vector<Id> objects = dig.objects;
      objects.push_back(footing.building);
      if (!footing.below) {
        out.needs(objects, footing.below.needs);
      } else if (*footing.below > metres(kRounding)) {
        Finding& finding = out.report("below", objects,
                                      {{"dig", spokenNames(input.plan, dig.objects)},
                                       {"building", spokenName(input.plan, footing.building)}});
        finding.measured = printShort(*footing.below, out.units());
        finding.required = "0";
      }
    }
  }
}

std::string_view clashName(DigClashKind kind) {
  switch (kind) {
  case DigClashKind::Building:
    return "building";
  case DigClashKind::Boundary:
    return "boundary";
  case DigClashKind::TrafficPavement:
    return "road";
  case DigClashKind::Well:
    return "well";
  case DigClashKind::Utility:
    return "utility";
  case DigClashKind::Trench:
    return "trench";
  case DigClashKind::Run:
    break;
  }
  return {};
}

/// A pavement in which the vaults themselves stand is dug up anyway.
bool standsIn(const Study& study, const Dig& dig, const Id& pavement) {
  return std::ranges::any_of(dig.objects, [&](const Id& id) {
    const VaultStudy* vault = study.vault(id);
    return vault != nullptr && vault->trafficPavement == pavement;
  });
}

/// A trench that runs along a pit without going into it: the ground between them does not stand.
void tellTrench(Reporter& out, const PitStudy& pit, const DigClash& clash) {
  std::vector<Id> objects = {clash.object};
  objects.insert(objects.end(), pit.vaults.begin(), pit.vaults.end());
  const std::string vaults = spokenNames(out.input().plan, pit.vaults);
  out.report("trench", objects, {{"vault", vaults}}).place = clash.at;
}

/// Between a trench and an upright side that is deep enough to need support stands a thin strip of
/// ground, which the support does not hold from both sides. Whoever shares ground has been told.
void checkBerms(Reporter& out, const PitStudy& pit) {
  const EarthStudy& earth = out.input().study.earth;
  if (!pit.top || earth.sideSlope > 0 || *pit.depth < earth.figures.protectionFrom) return;
  const Length need = out.input().limits.length("dig.berm");
  for (const TrenchStudy& trench : earth.trenches) {
    const bool told = std::ranges::any_of(pit.clashes, [&](const DigClash& clash) {
      return clash.kind == DigClashKind::Trench && clash.object == trench.run;
    });
    if (told) continue;
    const auto berm = bermBeside(trench, *pit.top, inMetres(need) - kRounding);
    if (!berm) continue;
    std::vector<Id> objects = {trench.run};
    objects.insert(objects.end(), pit.vaults.begin(), pit.vaults.end());
    const std::string vaults = spokenNames(out.input().plan, pit.vaults);
    Finding& finding = out.against("dig.berm", "berm", objects, {{"vault", vaults}});
    finding.measured = printShort(metres(berm->least), out.units());
    finding.required = printShort(need, out.units());
    finding.place = berm->at;
  }
}

/// Trenches cross roads and utilities by their nature, but no building that they do not go into.
void checkTrenches(Reporter& out) {
  for (const TrenchStudy& trench : out.input().study.earth.trenches) {
    for (const DigClash& clash : trench.clashes) {
      if (clash.kind != DigClashKind::Building) continue;
      out.report("trench-building", {trench.run, clash.object},
                 {{"other", spokenName(out.input().plan, clash.object)}})
          .place = clash.at;
    }
  }
}

void checkOverlap(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (const PitStudy& pit : input.study.earth.pits) {
    const Dig dig{pit.vaults, pit.egress, pit.clashes, pit.footings, {}};
    if (!pit.top) out.needs(pit.vaults, pit.top.needs);
    for (const DigClash& clash : pit.clashes) {
      const bool road = clash.kind == DigClashKind::TrafficPavement;
      if (clash.kind == DigClashKind::Run || (road && standsIn(input.study, dig, clash.object))) {
        continue;
      }
      if (clash.kind == DigClashKind::Trench) {
        tellTrench(out, pit, clash);
        continue;
      }
      std::vector<Id> objects = pit.vaults;
      if (!clash.object.empty()) objects.push_back(clash.object);
      const bool named = clash.kind != DigClashKind::Boundary;
      out.report(clashName(clash.kind), objects,
                 named ? Arguments{{"other", spokenName(input.plan, clash.object)}} : Arguments{})
          .place = clash.at;
    }
  }
  for (const PitStudy& pit : input.study.earth.pits)
    checkBerms(out, pit);
  checkTrenches(out);
}

void checkProtection(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const EarthStudy& earth = input.study.earth;
  if (input.plan.vaults.empty() && input.plan.runs.empty()) return;
  if (!earth.protectionNeeded || !earth.deepest) {
    Needs needs = earth.protectionNeeded.needs;
    addNeeds(needs, earth.deepest.needs);
    out.needs({}, needs);
    return;
  }
  const auto protection = input.plan.basis.earth.protection;
  const bool none = !protection || *protection == ProtectiveSystem::None;
  const auto measured = printShort(*earth.deepest, out.units());
  if (*earth.protectionNeeded && none) {
    Finding& finding = out.against("dig.protection-depth", "none", {});
    finding.measured = measured;
    finding.required =
        "under " + printShort(input.limits.length("dig.protection-depth"), out.units());
  }
  if (earth.engineerNeeded && *earth.engineerNeeded && protection != ProtectiveSystem::Engineered) {
    Finding& finding = out.against("dig.engineer-depth", "engineer", {});
    finding.measured = measured;
    finding.required =
        "at most " + printShort(input.limits.length("dig.engineer-depth"), out.units());
  }
}

/// `of` comes before the names of the cases: nothing for a pit.
void checkWaysOut(Reporter& out, const Egress& egress, const std::vector<Id>& objects,
                  const std::string& of) {
  const Length most = out.input().limits.length("dig.egress-travel");
  if (!egress.needed) return;
  if (egress.ladders.empty()) {
    out.report(of + "none", objects).required = std::to_string(egress.laddersNeeded);
  } else if (egress.farthest && *egress.farthest > most) {
    Finding& finding = out.against("dig.egress-travel", of + "far", objects);
    finding.measured = printLength(*egress.farthest, out.units());
    finding.required = printLength(most, out.units());
  }
}

void checkEgress(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (const PitStudy& pit : input.study.earth.pits) {
    if (!pit.depth) {
      out.needs(pit.vaults, pit.depth.needs);
    } else {
      checkWaysOut(out, pit.egress, pit.vaults, "");
    }
  }
  for (const TrenchStudy& trench : input.study.earth.trenches)
    checkWaysOut(out, trench.egress, {trench.run}, "trench-");
}

void checkSpoil(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const EarthStudy& earth = input.study.earth;
  if (earth.pits.empty() && earth.trenches.empty()) return;
  const Length need = input.limits.length("dig.spoil-distance");
  if (!earth.spoilClear) {
    out.needs({}, earth.spoilClear.needs);
  } else if (*earth.spoilClear < need - metres(kRounding)) {
    Finding& finding = out.against("dig.spoil-distance", "near", {});
    finding.measured = printLength(*earth.spoilClear, out.units());
    finding.required = printLength(need, out.units());
  }
}

void checkSpoilRoom(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const EarthStudy& earth = input.study.earth;
  if (earth.pits.empty() && earth.trenches.empty()) return;
  if (!earth.kept || !earth.heapHolds) {
    Needs needs = earth.kept.needs;
    addNeeds(needs, earth.heapHolds.needs);
    out.needs({}, needs);
  } else if (*earth.heapHolds < *earth.kept - cubicMetres(kRounding)) {
    const std::string holds = earthText(*earth.heapHolds, out.units());
    const std::string kept = earthText(*earth.kept, out.units());
    Finding& finding =
        out.against("dig.spoil-slope", "small", {}, {{"holds", holds}, {"kept", kept}});
    finding.measured = holds;
    finding.required = kept;
  }
}

} // namespace

const Rule kBuoyancy = {
    "buoyancy",
    "An empty vault does not float at the highest groundwater",
    "ASTM C890 8.2: flotation is to be considered; the factor is the engineer's, from memory",
    Confidence::FromMemory,
    Severity::Error,
    checkBuoyancy,
    Trade::SiteWork};

const Rule kFootingPlane = {"footing-plane",
                            "The dig stays out of the 45 degree plane under a footing",
                            "IPC 307.5; 29 CFR 1926.651(i), from memory",
                            Confidence::FromMemory,
                            Severity::Warning,
                            checkFooting,
                            Trade::SiteWork};

const Rule kDigOverlap = {
    "dig-overlap",
    "The pit with its sides keeps clear of buildings, roads, boundary and what lies near",
    "29 CFR 1926 Subpart P, App. B table B-1 for the sides",
    Confidence::SeenSecondHand,
    Severity::Warning,
    checkOverlap,
    Trade::SiteWork};

const Rule kDigProtection = {"dig-protection",
                             "A deep dig has a protective system",
                             "29 CFR 1926.652(a)(1), (b)",
                             Confidence::SeenSecondHand,
                             Severity::Error,
                             checkProtection,
                             Trade::SiteWork};

const Rule kDigEgress = {"dig-egress",
                         "There is a way out near everybody in a deep dig",
                         "29 CFR 1926.651(c)(2)",
                         Confidence::Seen,
                         Severity::Warning,
                         checkEgress,
                         Trade::SiteWork};

const Rule kSpoilEdge = {"spoil-edge",
                         "Spoil is kept off the edge of the dig",
                         "29 CFR 1926.651(j)(2)",
                         Confidence::SeenSecondHand,
                         Severity::Warning,
                         checkSpoil,
                         Trade::SiteWork};

const Rule kSpoilRoom = {"spoil-room",      "The place of the spoil heap holds what is kept",
                         kPractice,         Confidence::CommonPractice,
                         Severity::Warning, checkSpoilRoom,
                         Trade::SiteWork};

} // namespace sump
