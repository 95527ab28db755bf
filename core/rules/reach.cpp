// What hangs or stands in a chamber and has to come out again: foot valves, strainers and floats
// are handled through the manways.

#include "core/geometry/polygon.h"
#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/object_names.h"
#include "core/study/part_place.h"

#include <algorithm>
#include <optional>

namespace sump {

namespace {

/// The openings over one chamber.
class ChamberOpenings {
public:
  ChamberOpenings(const RuleInput& input, const ChamberPlace& place)
      : vault_(input.plan.vaults[place.vault]), studied_(input.study.vaults[place.vault]),
        chamber_(place.chamber) {}

  const Vault& vault() const { return vault_; }
  /// How far a place lies beyond the edge of the nearest opening, negative within it; nothing
  /// without one, which manway-per-chamber tells.
  std::optional<Length> beyond(Point2 at) const {
    std::optional<Length> least;
    for (std::size_t i = 0; i < studied_.manways.size(); ++i) {
      const ManwayStudy& manway = studied_.manways[i];
      if (manway.chamber != chamber_) continue;
      const Length off = metres(distance(at, manway.at)) - vault_.manways[i].diameter / 2.0;
      least = std::min(least.value_or(off), off);
    }
    return least;
  }
  bool holds(Point2 at) const {
    const auto found = std::ranges::find(studied_.chambers, chamber_, &ChamberStudy::number);
    return found != studied_.chambers.end() && contains(found->outline, at);
  }

private:
  const Vault& vault_;
  const VaultStudy& studied_;
  int chamber_;
};

void tellFar(Reporter& out, std::string_view name, const Id& run, const ChamberOpenings& openings,
             Length far, Point2 at) {
  const Length reach = out.input().limits.length("manway.reach");
  Finding& finding = out.against("manway.reach", name, {run, openings.vault().id},
                                 {{"vault", spokenName(out.input().plan, openings.vault().id)},
                                  {"reach", printShort(reach, out.units())}});
  finding.measured = printShort(far, out.units());
  finding.required = "at most " + printShort(reach, out.units());
  finding.place = at;
}

void checkUpright(Reporter& out, const RunStudy& study, const ChamberOpenings& openings,
                  Point2 at) {
  const Length over = *openings.beyond(at) + study.outsideDiameter / 2.0;
  if (over <= metres(kRounding)) return;
  Finding& finding = out.report("upright", {study.id, openings.vault().id},
                                {{"vault", spokenName(out.input().plan, openings.vault().id)}});
  finding.measured = printShort(over, out.units());
  finding.required = "0";
  finding.place = at;
}

/// One that stands within reach lets the foot valve's end of the line come out.
void checkUnion(Reporter& out, const Run& run, const RunStudy& study,
                const ChamberOpenings& openings, Point2 end) {
  std::optional<Length> nearest;
  Point2 at = end;
  for (const InlinePart& part : run.parts) {
    const auto place = part.kind == PartKind::Union ? partPlace(study, part) : std::nullopt;
    if (!place || !openings.holds(flat(place->at))) continue;
    const Length far = *openings.beyond(flat(place->at));
    if (nearest && *nearest <= far) continue;
    nearest = far;
    at = flat(place->at);
  }
  if (!nearest) {
    out.report("no-union", {run.id, openings.vault().id},
               {{"vault", spokenName(out.input().plan, openings.vault().id)}})
        .place = end;
  } else if (*nearest > out.input().limits.length("manway.reach") + metres(kRounding)) {
    tellFar(out, "union", run.id, openings, *nearest, at);
  }
}

void checkReachOfEnd(Reporter& out, const Run& run, const RunStudy& study, bool atStart) {
  const RunEnd& end = atStart ? run.from : run.to;
  const auto place = chamberPlace(out.input(), end);
  if (!place) return;
  const ChamberOpenings openings(out.input(), *place);
  const Point2 at = flat((atStart ? study.points.front() : study.points.back()).at);
  const auto far = openings.beyond(at);
  if (!far) return;
  if (end.fitting == EndFitting::FootValve || end.fitting == EndFitting::Strainer) {
    checkUpright(out, study, openings, at);
    checkUnion(out, run, study, openings, at);
  }
  const Length reach = out.input().limits.length("manway.reach");
  if (run.service == Service::FloatConduit && *far > reach + metres(kRounding))
    tellFar(out, "float", run.id, openings, *far, at);
}

void checkReach(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  static constexpr auto services = {Service::Suction, Service::SpareSuction, Service::FloatConduit};
  for (Service service : services) {
    for (const auto& [run, study] : runsOf(input, service)) {
      if (!study->resolved) continue;
      for (bool atStart : {true, false})
        checkReachOfEnd(out, *run, *study, atStart);
    }
  }
  out.needLevels(unresolved(input, services));
}

} // namespace

const Rule kChamberReach = {
    "chamber-reach",   "Foot valves, strainers and floats can be taken out through a manway",
    kPractice,         Confidence::CommonPractice,
    Severity::Warning, checkReach,
    Trade::Plumbing};

} // namespace sump
