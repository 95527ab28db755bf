// `levels`: how deep everything lies.

#include "app/command/open_plan.h"
#include "core/exchange/review_json.h"
#include "core/units/print.h"

#include <ostream>

namespace sump {

namespace {

std::string elevation(const std::optional<Length>& level, UnitSystem units) {
  return level ? printElevation(*level, units) : "-";
}

std::string vaultTable(const Review& review) {
  const UnitSystem units = review.plan.project.units;
  std::vector<std::vector<std::string>> rows;
  for (const VaultStudy& vault : review.study.vaults) {
    rows.push_back({vault.id, elevation(vault.gradeCentre, units),
                    printElevation(vault.lidTop, units), elevation(vault.waterLevel, units),
                    elevation(vault.overflowInvert, units), printElevation(vault.floor, units),
                    printElevation(vault.underside, units),
                    vault.cover ? printShort(*vault.cover, units) : "-",
                    printVolume(vault.workingVolume, units)});
  }
  return columns({"vault", ">grade", ">lid top", ">water", ">overflow inv.", ">floor", ">underside",
                  ">cover", ">working volume"},
                 rows);
}

std::string runTable(const Review& review) {
  const UnitSystem units = review.plan.project.units;
  std::vector<std::vector<std::string>> rows;
  for (const RunStudy& run : review.study.runs) {
    const Run* given = review.plan.runs.find(run.id);
    std::vector<std::string> row = {run.id, std::string(facts(run.service).code), given->size};
    if (run.resolved) {
      row.insert(row.end(),
                 {printElevation(run.startInvert, units), printElevation(run.endInvert, units),
                  printRunLength(run.developed, units), printSlope(run.slope, units),
                  run.leastCover ? printShort(run.leastCover->cover, units) : "-"});
    } else {
      row.insert(row.end(), 5, "-");
    }
    rows.push_back(std::move(row));
  }
  return columns(
      {"run", "code", "size", ">start inv.", ">end inv.", ">length", ">slope", ">least cover"},
      rows);
}

int run(const QCommandLineParser& parsed, Streams streams) {
  const OpenedPlan opened = openPlan(parsed);
  if (parsed.isSet("json")) {
    streams.out << levelsJson(opened.review);
    return opened.status();
  }
  const Plan& plan = opened.review.plan;
  streams.out << "Elevations in " << (plan.project.units == UnitSystem::Metric ? "metres" : "feet")
              << " on the site datum" << (plan.site.datum.empty() ? "" : ": ") << plan.site.datum
              << "\n\n"
              << vaultTable(opened.review) << "\n"
              << runTable(opened.review);
  return opened.status();
}

} // namespace

Command levelsCommand() {
  return {"levels",
          "List the elevations of vaults and runs, with cover and slope.",
          "PLAN [options]",
          "  sumpwright levels samples/transit-depot.sump\n"
          "  sumpwright levels --json samples/boatyard-pad.sump\n",
          [] {
            return QList<QCommandLineOption>{jsonOption(), catalogOption(), profileOption()};
          },
          run};
}

} // namespace sump
