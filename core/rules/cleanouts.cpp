// Access to drain lines: how far apart cleanouts are, and turns without one.

#include "core/rules/families.h"
#include "core/rules/report.h"

#include <algorithm>
#include <array>

namespace sump {

namespace {

/// Lines that run part full and clog: the interconnects and links are reached from the manways.
constexpr std::array kDrains = {Service::Inlet, Service::Overflow};

/// Stations from which a rod reaches the line: its ends, which open into a drain, a chamber under a
/// manway or the public sewer's own access, and its cleanouts. Rising.
std::vector<double> accesses(const Run& run, const RunStudy& study) {
  std::vector<double> stations = {0, inMetres(study.developed)};
  for (const InlinePart& part : run.parts) {
    if (part.kind != PartKind::Cleanout) continue;
    const auto leg = static_cast<std::size_t>(part.leg); // legs and points go together
    if (leg >= study.legs.size()) continue;
    stations.push_back(study.points[leg].station +
                       part.along * inMetres(study.legs[leg].developed));
  }
  std::ranges::sort(stations);
  return stations;
}

void checkSpacing(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const Length most = input.limits.length("cleanout.spacing");
  for (Service service : kDrains) {
    for (const auto& [run, study] : runsOf(input, service)) {
      if (!study->resolved) {
        out.needs({run->id}, {"inverts of " + run->id});
        continue;
      }
      const std::vector<double> stations = accesses(*run, *study);
      double widest = 0;
      for (std::size_t i = 1; i < stations.size(); ++i) {
        widest = std::max(widest, stations[i] - stations[i - 1]);
      }
      if (widest <= inMetres(most) + kRounding) continue;
      Finding& finding = out.against("cleanout.spacing", "far", {run->id});
      finding.measured = printRunLength(metres(widest), out.units());
      finding.required = printRunLength(most, out.units());
    }
  }
}

/// Upstream of the turn, developed; the run's own start counts.
double wayBack(const std::vector<double>& stations, double turn) {
  double nearest = 0;
  for (double station : stations) {
    if (station <= turn + 0.3) nearest = station; // a cleanout at the turn itself, within a foot
  }
  return std::max(0.0, turn - nearest);
}

void checkTurns(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const double most =
      inDegrees(input.limits.angle("cleanout.turn") + input.limits.angle("bend.tolerance"));
  const Length reach = input.limits.length("cleanout.reach");
  for (Service service : kDrains) {
    for (const auto& [run, study] : runsOf(input, service)) {
      if (!study->resolved) {
        out.needs({run->id}, {"inverts of " + run->id});
        continue;
      }
      const std::vector<double> stations = accesses(*run, *study);
      for (const Bend& bend : study->bends) {
        const RunPoint& at = study->points[static_cast<std::size_t>(bend.point)];
        const double back = wayBack(stations, at.station);
        if (bend.degrees <= most || back <= inMetres(reach) + kRounding) continue;
        Finding& finding = out.against("cleanout.reach", "far", {run->id},
                                       {{"turn", printAngle(degrees(bend.degrees))}});
        finding.measured = printRunLength(metres(back), out.units());
        finding.required = printRunLength(reach, out.units());
        finding.which = std::to_string(bend.point);
        finding.place = flat(at.at);
      }
    }
  }
}

} // namespace

const Rule kCleanoutSpacing = {
    "cleanout-spacing",
    "Drain lines can be rodded: cleanouts are not too far apart",
    "IPC 708.1; UPC 719.1, in the form of Chicago Municipal Code 18-29-708.3",
    Confidence::SeenSecondHand,
    Severity::Error,
    checkSpacing,
    Trade::Plumbing};

const Rule kCleanoutTurn = {"cleanout-turn",
                            "A sharp turn of a drain has a cleanout upstream",
                            "IPC 708.1.4, edition 2018",
                            Confidence::Seen,
                            Severity::Warning,
                            checkTurns,
                            Trade::Plumbing};

} // namespace sump
