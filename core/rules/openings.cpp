// Room for people and for connectors: the ways down through the manways are free of lines, and each
// pipe goes through its wall or riser where a connector has wall all round.

#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/hole_gaps.h"
#include "core/study/manway_way.h"
#include "core/study/object_names.h"
#include "core/study/pass_slant.h"

#include <algorithm>
#include <tuple>

namespace sump {

namespace {

/// An eductor can be lifted out, but who climbs down in haste finds it there.
void checkHung(Reporter& out, const VaultStudy& vault, std::size_t manway,
               const std::vector<ManwayLine>& lines, std::vector<ShaftPipe> pipes) {
  const Plan& plan = out.input().plan;
  const ManwayStudy& place = vault.manways[manway];
  const auto hung = std::ranges::find(lines, true, &ManwayLine::hangs);
  if (hung == lines.end()) return;
  pipes.insert(pipes.end(), hung->pipes.begin(), hung->pipes.end());
  const Length diameter = plan.vaults.find(vault.id)->manways[manway].diameter;
  const Length clear = clearWay(diameter, pipes);
  const Length need = out.input().limits.length("manway.clear-way");
  if (clear >= std::min(need, diameter) - metres(kRounding)) return;
  Finding& finding = out.against("manway.clear-way", "eductor", {hung->run, place.id, vault.id},
                                 {{"vault", spokenName(plan, vault.id)}});
  finding.measured = printShort(clear, out.units());
  finding.required = printShort(need, out.units());
  finding.place = hung->at;
}

void checkWay(Reporter& out, const VaultStudy& vault, std::size_t manway,
              const std::vector<ManwayLine>& lines) {
  const Plan& plan = out.input().plan;
  const ManwayStudy& place = vault.manways[manway];
  const Length diameter = plan.vaults.find(vault.id)->manways[manway].diameter;
  std::vector<ShaftPipe> pipes;
  for (const ManwayLine& line : lines)
    if (!line.hangs) pipes.insert(pipes.end(), line.pipes.begin(), line.pipes.end());
  const Length clear = clearWay(diameter, pipes);
  bool across = false;
  for (const ManwayLine& line : lines) {
    if (line.ends || line.hangs) continue;
    across = true;
    Finding& finding = out.report("passes", {line.run, place.id, vault.id},
                                  {{"vault", spokenName(plan, vault.id)}});
    finding.measured = printShort(clear, out.units());
    finding.required = printShort(diameter, out.units());
    finding.place = line.at;
  }
  const Length need = out.input().limits.length("manway.clear-way");
  if (across) return;
  if (clear >= std::min(need, diameter) - metres(kRounding))
    return checkHung(out, vault, manway, lines, std::move(pipes));
  Finding& finding = out.against("manway.clear-way", "narrow", {place.id, vault.id},
                                 {{"vault", spokenName(plan, vault.id)}});
  finding.measured = printShort(clear, out.units());
  finding.required = printShort(need, out.units());
  finding.place = place.at;
}

void checkManwayOpenings(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  if (input.plan.vaults.empty()) return;
  out.needLevels(unresolved(input));
  const ManwayWays ways(input.plan, input.study);
  for (const VaultStudy& vault : input.study.vaults) {
    for (std::size_t i = 0; i < vault.manways.size(); ++i) {
      if (!vault.manways[i].rim) out.needs({vault.manways[i].id, vault.id}, {"ground levels"});
      const std::vector<ManwayLine> lines = ways.lines(vault, i);
      if (!lines.empty()) checkWay(out, vault, i, lines);
    }
  }
}

std::string_view edgeName(HoleEdge edge) {
  switch (edge) {
  case HoleEdge::Lid:
    return "lid";
  case HoleEdge::Floor:
    return "floor";
  case HoleEdge::Corner:
    return "corner";
  case HoleEdge::Baffle:
    return "baffle";
  case HoleEdge::Pipe:
    return "pipe";
  case HoleEdge::RiserFoot:
    return "riser-foot";
  case HoleEdge::RiserRim:
    break;
  }
  return "riser-rim";
}

/// A line may go through one wall more than once: its tightest hole is told.
std::vector<HoleGap> tightest(std::vector<HoleGap> gaps, const Length& need) {
  const auto place = [](const HoleGap& gap) {
    return std::tie(gap.vault, gap.edge, gap.run, gap.other);
  };
  std::vector<HoleGap> kept;
  for (HoleGap& gap : gaps) {
    // Each of two pipes asks for its own connector's room.
    const Length wanted = gap.edge == HoleEdge::Pipe ? 2.0 * need : need;
    if (gap.clear >= wanted - metres(kRounding)) continue;
    const auto known = std::ranges::find_if(
        kept, [&](const HoleGap& other) { return place(other) == place(gap); });
    if (known == kept.end()) {
      kept.push_back(std::move(gap));
    } else if (gap.clear < known->clear) {
      *known = std::move(gap);
    }
  }
  return kept;
}

void checkArms(Reporter& out) {
  const RuleInput& input = out.input();
  const Length need = input.limits.length("fitting.under-lid");
  for (const UpperArm& arm : upperArms(input.plan, input.catalog, input.study)) {
    if (arm.inManway || arm.underLid >= need - metres(kRounding)) continue;
    Finding& finding =
        out.against("fitting.under-lid", arm.atEdge ? "edge" : "arm", {arm.run, arm.vault},
                    {{"vault", spokenName(input.plan, arm.vault)}});
    finding.measured = printShort(arm.underLid, out.units());
    finding.required = printShort(need, out.units());
    finding.place = arm.at;
  }
}

/// A line may go through one wall or riser more than once: the worst slant is told.
void checkSlants(Reporter& out) {
  const RuleInput& input = out.input();
  const double most = input.limits.number("connector.slant");
  std::vector<SlantPass> worst;
  for (SlantPass& pass : slantPasses(input.plan, input.study)) {
    if (inDegrees(pass.slant) <= most + kRounding) continue;
    const auto known = std::ranges::find_if(worst, [&](const SlantPass& other) {
      return std::tie(other.run, other.vault, other.manway) ==
             std::tie(pass.run, pass.vault, pass.manway);
    });
    if (known == worst.end()) {
      worst.push_back(std::move(pass));
    } else if (known->slant < pass.slant) {
      *known = std::move(pass);
    }
  }
  for (const SlantPass& pass : worst) {
    const bool riser = !pass.manway.empty();
    std::vector<Id> objects = {pass.run, pass.vault};
    if (riser) objects.insert(objects.begin() + 1, pass.manway);
    Finding& finding =
        out.against("connector.slant", riser ? "riser-slant" : "slant", std::move(objects),
                    {{"vault", spokenName(input.plan, pass.vault)}});
    finding.measured = printAngle(pass.slant);
    finding.required = "at most " + printAngle(degrees(most));
    finding.place = pass.at;
  }
}

void checkConnectors(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  if (input.plan.vaults.empty()) return;
  out.needLevels(unresolved(input));
  const Length need = input.limits.length("connector.clear");
  for (const HoleGap& gap : tightest(holeGaps(input.plan, input.catalog, input.study), need)) {
    std::vector<Id> objects = {gap.run, gap.vault};
    if (!gap.other.empty()) objects.insert(objects.begin() + 1, gap.other);
    Finding& finding = out.against("connector.clear", edgeName(gap.edge), objects,
                                   {{"vault", spokenName(input.plan, gap.vault)}});
    finding.measured = printShort(gap.clear, out.units());
    finding.required = printShort(gap.edge == HoleEdge::Pipe ? 2.0 * need : need, out.units());
    finding.place = gap.at;
  }
  checkArms(out);
  checkSlants(out);
}

} // namespace

const Rule kManwayClear = {"manway-clear",    "The ways down through the manways are free of lines",
                           kPractice,         Confidence::CommonPractice,
                           Severity::Warning, checkManwayOpenings,
                           Trade::General};

const Rule kConnectorRoom = {
    "connector-room",  "Each pipe has room for its connector and fitting in the vault",
    kPractice,         Confidence::CommonPractice,
    Severity::Warning, checkConnectors,
    Trade::General};

} // namespace sump
