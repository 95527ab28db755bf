// Earth over pipe, conduit and lids; vaults and what stands near them; access.

#include "core/geometry/polygon.h"
#include "core/plan/traffic.h"
#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/object_names.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace sump {

namespace {

const Length kHair = metres(1e-6); // what adding up coordinates rounds away

Finding* checkCover(Reporter& out, const Id& run, std::string_view name,
                    const std::optional<CoverCheck>& cover, std::string_view limit,
                    Length more = metres(0)) {
  const Length need = out.input().limits.length(limit) + more;
  // Covers are compared to the eighth of an inch that they are printed to.
  if (!cover || cover->cover >= need - inches(1.0 / 16)) return nullptr;
  Finding& finding = out.against(limit, name, {run});
  finding.measured = printShort(cover->cover, out.units());
  finding.required = printShort(need, out.units());
  finding.place = cover->at;
  return &finding;
}

/// What no cover can be judged without, said once for all lines.
void needForCover(Reporter& out, std::vector<Id> unknown, bool any, bool frost) {
  Needs needs;
  if (frost) needs.push_back("frost depth of the site");
  if (any && out.input().study.ground.empty()) needs.push_back("ground elevation");
  for (const Id& run : unknown)
    needs.push_back("levels of " + run);
  if (!needs.empty()) out.needs(std::move(unknown), needs);
}

void checkPipe(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const auto& frost = input.plan.site.frostDepth;
  bool frostMatters = false, any = false;
  std::vector<Id> unknown;
  for (const RunStudy& run : input.study.runs) {
    const Drive drive = facts(run.service).drive;
    if (drive == Drive::Conduit) continue;
    any = true;
    if (!run.resolved) unknown.push_back(run.id);
    if (drive == Drive::Pressure || drive == Drive::Suction) {
      frostMatters |= run.leastCover.has_value();
      checkCover(out, run.id, "shallow", run.leastCover, "cover.pipe");
      if (frost) checkCover(out, run.id, "frost", run.leastCover, "cover.frost", *frost);
    }
    checkCover(out, run.id, "traffic", run.leastTrafficCover, "cover.pipe.traffic");
  }
  needForCover(out, std::move(unknown), any, frostMatters && !frost);
}

void checkConduit(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  bool any = false;
  std::vector<Id> unknown;
  for (const RunStudy& run : input.study.runs) {
    if (!isConduit(run.service)) continue;
    any = true;
    if (!run.resolved) unknown.push_back(run.id);
    const bool tooShallow = checkCover(out, run.id, "traffic", run.leastTrafficCover,
                                       "cover.conduit.traffic") != nullptr;
    // The least cover may be that same place under traffic: said once is enough.
    if (tooShallow && run.leastCover->cover >= run.leastTrafficCover->cover) continue;
    checkCover(out, run.id, "shallow", run.leastCover, "cover.conduit");
  }
  needForCover(out, std::move(unknown), any, false);
}

void checkLid(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (std::size_t v = 0; v < input.plan.vaults.size(); ++v) {
    const Vault& vault = input.plan.vaults[v];
    const VaultStudy& study = input.study.vaults[v];
    if (!study.trafficPavement.empty() && !vault.trafficLid) {
      out.report("lid", {vault.id, study.trafficPavement},
                 {{"pavement", spokenName(input.plan, study.trafficPavement)}});
    }
    if (!study.trafficPavement.empty() && vault.trafficLid && !vault.engineered) {
      out.report("engineer", {vault.id, study.trafficPavement},
                 {{"pavement", spokenName(input.plan, study.trafficPavement)}});
    }
    for (std::size_t m = 0; m < vault.manways.size(); ++m) {
      if (vault.manways[m].trafficCover || !underTraffic(input.plan, study.manways[m].at)) continue;
      out.report("cover", {vault.manways[m].id, vault.id}).place = study.manways[m].at;
    }
  }
}

/// Wide enough to be allowed, narrower than people like to work through.
void statePreferred(Reporter& out, const Id& vault, int chamber, Length widest) {
  const Length preferred = out.input().limits.length("manway.preferred");
  if (widest >= preferred - millimetres(10)) return; // 600 mm counts as 24 in
  Finding& finding = out.note("narrow", {vault}, {{"chamber", std::to_string(chamber)}});
  finding.measured = printShort(widest, out.units());
  finding.required = printShort(preferred, out.units());
  finding.which = std::to_string(chamber);
}

void checkManways(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const Length need = input.limits.length("manway.diameter");
  for (std::size_t v = 0; v < input.plan.vaults.size(); ++v) {
    const Vault& vault = input.plan.vaults[v];
    const VaultStudy& study = input.study.vaults[v];
    for (const ChamberStudy& chamber : study.chambers) {
      Length widest = metres(0);
      for (std::size_t m = 0; m < study.manways.size(); ++m) {
        if (study.manways[m].chamber == chamber.number) {
          widest = std::max(widest, vault.manways[m].diameter);
        }
      }
      if (widest >= need) {
        statePreferred(out, vault.id, chamber.number, widest);
        continue;
      }
      Finding& finding = out.against("manway.diameter", "missing", {vault.id},
                                     {{"chamber", std::to_string(chamber.number)}});
      finding.measured = printShort(widest, out.units());
      finding.required = printShort(need, out.units());
      finding.place = centroid(chamber.outline);
      finding.which = std::to_string(chamber.number);
    }
  }
}

void checkBurial(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const Length most = input.limits.length("vault.burial");
  for (std::size_t v = 0; v < input.plan.vaults.size(); ++v) {
    if (input.plan.vaults[v].engineered) continue;
    const VaultStudy& vault = input.study.vaults[v];
    // The deepest cover over the lid is what its slab has to bear.
    if (!vault.gradeHigh) {
      out.needs({vault.id}, {"ground elevation"});
      continue;
    }
    const Length cover = *vault.gradeHigh - vault.lidTop;
    if (cover <= most + kHair) continue;
    Finding& finding = out.against("vault.burial", "deep", {vault.id});
    finding.measured = printShort(cover, out.units());
    finding.required = "at most " + printShort(most, out.units());
  }
}

void checkWell(Reporter& out, const VaultStudy& vault, const Well& well) {
  const Length need = out.input().limits.length("vault.well");
  const Length clear = metres(distance(well.at, vault.outline));
  if (clear >= need - kHair) return;
  Finding& finding =
      out.against("vault.well", "well", {vault.id, well.id}, {{"other", called(well)}});
  finding.measured = printLength(clear, out.units());
  finding.required = printLength(need, out.units());
  finding.place = well.at;
}

void checkNear(Reporter& out, const VaultStudy& vault, const Id& other, const Ring& ring) {
  const Length need = out.input().limits.length("vault.clearance");
  if (overlaps(vault.outline, ring)) {
    out.impossible("overlap", {vault.id, other}, {{"other", spokenName(out.input().plan, other)}});
    return;
  }
  const Length clear = metres(distance(vault.outline, ring));
  if (clear >= need - kHair) return;
  Finding& finding = out.against("vault.clearance", "near", {vault.id, other},
                                 {{"other", spokenName(out.input().plan, other)}});
  finding.measured = printLength(clear, out.units());
  finding.required = printLength(need, out.units());
}

void checkBoundary(Reporter& out, const VaultStudy& vault) {
  const Ring& boundary = out.input().plan.site.boundary;
  if (boundary.empty()) return;
  double clear = std::numeric_limits<double>::infinity();
  bool within = true;
  for (Point2 corner : vault.outline) {
    within = within && contains(boundary, corner);
    clear = std::min(clear, distanceToEdge(corner, boundary));
  }
  // A corner of the boundary can point into a side of the vault.
  for (Point2 corner : boundary) {
    within = within && !contains(vault.outline, corner);
    clear = std::min(clear, distanceToEdge(corner, vault.outline));
  }
  if (!within) {
    out.report("outside", {vault.id});
    return;
  }
  const Length need = out.input().limits.length("vault.clearance");
  if (metres(clear) >= need - kHair) return;
  Finding& finding = out.against("vault.clearance", "boundary", {vault.id});
  finding.measured = printLength(metres(clear), out.units());
  finding.required = printLength(need, out.units());
}

/// Vaults whose centres are farther apart than their half diagonals together do not touch.
bool mayTouch(const Vault& a, const Vault& b) {
  const double halves = std::hypot(inMetres(a.length), inMetres(a.width)) / 2 +
                        std::hypot(inMetres(b.length), inMetres(b.width)) / 2;
  return distance(a.centre, b.centre) < halves;
}

void checkClash(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (std::size_t v = 0; v < input.study.vaults.size(); ++v) {
    const VaultStudy& vault = input.study.vaults[v];
    for (std::size_t w = v + 1; w < input.study.vaults.size(); ++w) {
      const VaultStudy& other = input.study.vaults[w];
      if (!mayTouch(input.plan.vaults[v], input.plan.vaults[w])) continue;
      if (!overlaps(vault.outline, other.outline)) continue;
      out.impossible("overlap", {vault.id, other.id},
                     {{"other", spokenName(input.plan, other.id)}});
    }
    for (const Building& building : input.plan.buildings) {
      checkNear(out, vault, building.id, building.outline);
    }
    for (const EquipmentRoom& room : input.plan.rooms) {
      checkNear(out, vault, room.id, outline(room));
    }
    for (const Well& well : input.plan.wells)
      checkWell(out, vault, well);
    checkBoundary(out, vault);
  }
  const bool noLine = input.plan.site.boundary.empty() && !input.plan.vaults.empty();
  if (noLine) out.needs({}, {"boundary of the site"});
}

} // namespace

const Rule kPipeCover = {
    "pipe-cover",
    "Pipe lies deep enough for frost and traffic",
    "IPC 305.4 (12 in below grade, 6 in below frost); under traffic ASTM D2321, "
    "from memory",
    Confidence::SeenSecondHand,
    Severity::Error,
    checkPipe,
    Trade::Plumbing};

const Rule kConduitCover = {"conduit-cover",   "Conduit lies deep enough, more under traffic",
                            "NEC table 300.5", Confidence::Seen,
                            Severity::Error,   checkConduit,
                            Trade::Electrical};

const Rule kTrafficLid = {"traffic-lid",
                          "Lids and covers under vehicles carry vehicles",
                          "ASTM C890; NC 18E .1403(b)(4)",
                          Confidence::Seen,
                          Severity::Error,
                          checkLid,
                          Trade::SiteWork};

const Rule kDeepBurial = {"deep-burial",
                          "A deeply buried vault is designed for its depth",
                          "NC 18E .1403(b)(5) (septic tanks, an analogue)",
                          Confidence::Seen,
                          Severity::Warning,
                          checkBurial,
                          Trade::SiteWork};

const Rule kManwayPerChamber = {"manway-per-chamber",
                                "Each chamber can be reached",
                                "OAR 340-073-0025 (septic tanks, an analogue)",
                                Confidence::Seen,
                                Severity::Error,
                                checkManways,
                                Trade::SiteWork};

const Rule kVaultClash = {
    "vault-clash",
    "Vaults stand clear of buildings, boundary and each other",
    "Clark County WA 24.17.120 and El Dorado County CA setback tables (septic "
    "tanks, an analogue)",
    Confidence::Seen,
    Severity::Error,
    checkClash,
    Trade::SiteWork};

} // namespace sump
