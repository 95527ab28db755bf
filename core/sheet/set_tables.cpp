#include "core/sheet/set_tables.h"

#include "core/sheet/flow.h"
#include "core/sheet/schedules.h"
#include "core/sheet/tags.h"
#include "core/sheet/trench_pairs.h"
#include "core/study/connections.h"
#include "core/units/earth.h"
#include "core/units/print.h"

#include <algorithm>
#include <set>

namespace sump {

namespace {

using Row = std::vector<std::string>;
using Rows = std::vector<Row>;

std::string vaultNames(const SheetJob& job, const std::vector<Id>& ids) {
  std::string text;
  for (const Id& id : ids)
    text += (text.empty() ? "" : ", ") + called(*job.plan().vaults.find(id));
  return text;
}

std::string egressText(const Egress& egress) {
  if (!egress.needed) return "not needed";
  std::string text = std::to_string(egress.laddersNeeded) + " or more: ";
  if (egress.ladders.empty()) return text + "none drawn";
  text += egress.ladders.size() > 1 ? "nos." : "no.";
  for (std::size_t i = 0; i < egress.ladders.size(); ++i)
    text += (i == 0 ? " " : ", ") + std::to_string(egress.ladders[i]);
  return text;
}

} // namespace

Block revisionTable(const SheetJob& job, double width) {
  Rows rows;
  for (const RevisionEntry& entry : job.plan().revisions)
    rows.push_back({entry.index, entry.date, entry.by, entry.text});
  return table("REVISIONS", {{"Rev.", Align::Centre}, {"Date"}, {"By"}, {"What changed"}}, rows,
               width);
}

Block acceptedTable(const SheetJob& job, double width) {
  Rows rows;
  for (const Finding& finding : job.review.findings) {
    if (!finding.accepted) continue;
    rows.push_back({ruleTitle(finding), finding.accepted->by, finding.accepted->date,
                    render(finding.what) + " ACCEPTED: " + finding.accepted->reason});
  }
  return table("FINDINGS ACCEPTED",
               {{"What is asked for"}, {"By"}, {"Date"}, {"Finding and reason"}}, rows, width);
}

Block settingTable(const SheetJob& job, double width) {
  const UnitSystem units = job.units();
  const Study& study = job.study();
  Rows rows;
  for (std::size_t i = 0; i < study.vaults.size(); ++i) {
    const VaultStudy& vault = study.vaults[i];
    const Vault& given = *job.plan().vaults.find(vault.id);
    Row row = {called(given),
               printLength(given.length, units) + " x " + printLength(given.width, units),
               printElevation(vault.lidTop, units),
               printElevation(vault.floor, units),
               printElevation(vault.underside, units),
               printElevation(vault.underside - study.earth.figures.bedding, units),
               vault.cover ? printShort(*vault.cover, units) : "-"};
    rows.push_back(std::move(row));
  }
  return table("VAULT SETTING",
               {{"Vault"},
                {"Outside|length x width"},
                {"Top|of lid", Align::Right},
                {"Inside|floor", Align::Right},
                {"Underside|of base", Align::Right},
                {"Bottom of|bedding", Align::Right},
                {"Least cover|over lid", Align::Right}},
               rows, width);
}

Block weightTable(const SheetJob& job, double width) {
  Rows rows;
  for (const BuoyancyStudy& b : job.study().earth.buoyancy) {
    const Vault& given = *job.plan().vaults.find(b.vault);
    rows.push_back(
        {called(given), printMass(b.weight, job.units()), b.makersWeight ? "maker" : "worked out",
         printMass(b.heaviestPiece, job.units()), given.trafficLid ? "traffic" : "pedestrian"});
  }
  return table("VAULT MASSES AND LIDS",
               {{"Vault"},
                {"Mass|empty", Align::Right},
                {"By"},
                {"Mass of|heaviest piece", Align::Right},
                {"Lid"}},
               rows, width);
}

Block pitTable(const SheetJob& job, double width) {
  const UnitSystem units = job.units();
  const auto volume = [&](const Decided<Volume>& v) {
    return decidedText(v, [&](Volume x) { return earthText(x, units); });
  };
  Rows rows;
  for (const PitStudy& pit : job.study().earth.pits) {
    rows.push_back({std::to_string(rows.size() + 1), printElevation(pit.bottom, units),
                    decidedText(pit.depth, [&](Length v) { return printLength(v, units); }),
                    volume(pit.dug), volume(pit.bedding), volume(pit.backfill),
                    egressText(pit.egress), vaultNames(job, pit.vaults)});
  }
  return table("DIGS FOR VAULTS",
               {{"Dig"},
                {"Bottom|elevation", Align::Right},
                {"Greatest|depth", Align::Right},
                {"Bank|volume", Align::Right},
                {"Bedding", Align::Right},
                {"Backfill", Align::Right},
                {"Ladders,|nos. on plan"},
                {"For"}},
               rows, width);
}

Block trenchTable(const SheetJob& job, double width) {
  const UnitSystem units = job.units();
  const auto tags = runTags(job.plan());
  // On large paper the plan tells beside each trench how deep it is from a floor, and with which
  // it is dug as one.
  const bool tellsAll = isSmallPaper(job.paper);
  std::vector<Column> columns = {{"Run"},
                                 {"Bottom|width", Align::Right},
                                 {"Length", Align::Right},
                                 {"Greatest depth|outdoors", Align::Right},
                                 {"Bank|volume", Align::Right},
                                 {"Bedding", Align::Right},
                                 {"Pipe zone", Align::Right},
                                 {"Backfill|over it", Align::Right},
                                 {"Ladders,|nos. on plan"}};
  if (tellsAll) columns.insert(columns.begin() + 4, {"And from|a floor", Align::Right});
  if (tellsAll) columns.push_back({"Dug as one with,|where they meet"});
  const TrenchPairs pairs = trenchPairs(job.study().earth.trenches);
  Rows rows;
  for (const TrenchStudy& trench : job.study().earth.trenches) {
    const auto depth = [&](bool has, Length v) { return has ? printLength(v, units) : "-"; };
    std::vector<std::string> row = {tags.at(trench.run),
                                    printShort(trench.bottomWidth, units),
                                    printRunLength(trench.length, units),
                                    depth(trench.depthOutdoors > metres(0), trench.depthOutdoors),
                                    earthText(trench.dug, units),
                                    earthText(trench.bedding, units),
                                    earthText(trench.pipeZone, units),
                                    earthText(trench.backfill, units),
                                    egressText(trench.egress)};
    if (tellsAll) {
      row.insert(row.begin() + 4, depth(trench.deepestUnderFloor(), trench.depth));
      const auto& others = pairs[rows.size()];
      row.push_back(others.empty() ? "-" : trenchNames(job, others));
    }
    rows.push_back(std::move(row));
  }
  return table("TRENCHES, EACH AS IF ALONE", columns, rows, width);
}

namespace {

/// Of a valve, a part or a connector the pipe that it joins: the maker's material must suit it.
std::string joinedPipe(const SheetJob& job, const QuantityLine& line) {
  std::set<std::string> pipes;
  for (const Id& id : line.runs) {
    const Run* run = job.plan().runs.find(id);
    const PipeProduct* product = run == nullptr ? nullptr : job.catalog.pipe(run->pipe);
    if (product != nullptr) pipes.insert(product->name);
  }
  std::string text;
  for (const std::string& pipe : pipes)
    text += (text.empty() ? "to suit " : ", ") + pipe;
  return text;
}

} // namespace

namespace {

/// What joins the runs to what is there already; the plan does not tell its material.
void addJoints(const SheetJob& job, Rows& rows) {
  const auto tags = runTags(job.plan());
  for (const Connection& made : connections(job.plan(), job.study())) {
    const Run& run = *job.plan().runs.find(made.run);
    rows.push_back({std::string(joinedBy(job.study(), made)),
                    sizeText(sizeThere(run, made, job.study())), "______", fixed(1, 0),
                    std::string(facts(run.service).trade), tags.at(made.run)});
  }
}

} // namespace

Block fittingTable(const SheetJob& job, double width) {
  const auto tags = runTags(job.plan());
  Rows rows;
  for (const QuantityLine& line : job.study().takeOff) {
    const bool shown = line.category == "fitting" || line.category == "valve" ||
                       line.category == "part" || line.category == "connector";
    if (!shown) continue;
    std::string runs;
    for (const Id& id : line.runs) {
      const auto tag = tags.find(id);
      runs += (runs.empty() ? "" : ", ") + (tag == tags.end() ? id : tag->second);
    }
    rows.push_back({line.description, sizeText(line.size),
                    line.material.empty() ? joinedPipe(job, line) : line.material,
                    fixed(line.quantity, 0), line.trade, runs});
  }
  addJoints(job, rows);
  return table("FITTINGS, VALVES AND CONNECTORS",
               {{"Item"},
                {"Size", Align::Centre},
                {"Material"},
                {"Count", Align::Right},
                {"Trade"},
                {"Runs"}},
               rows, width);
}

Block levelTable(const SheetJob& job, double width) {
  const UnitSystem units = job.units();
  Rows rows;
  for (const VaultStudy& vault : job.study().vaults) {
    const auto peak = [&](const Decided<TrainLevels>& levels) {
      return decidedText(levels, [&](const TrainLevels& train) {
        std::string text;
        for (const ChamberStudy& c : vault.chambers) {
          const ChamberLevel* chamber = train.chamber(vault.id, c.number);
          text += (text.empty() ? "" : ", ") +
                  (chamber != nullptr ? printElevation(chamber->level, units) : std::string("-"));
        }
        return text.empty() ? std::string("-") : text;
      });
    };
    const auto low = decidedText(job.study().train.lowWater, [&](const auto& levels) {
      std::string text;
      for (const ChamberLow& chamber : levels) {
        if (chamber.vault == vault.id)
          text += (text.empty() ? "" : ", ") + printElevation(chamber.level, units);
      }
      return text.empty() ? std::string("-") : text;
    });
    rows.push_back({called(*job.plan().vaults.find(vault.id)), printElevation(vault.lidTop, units),
                    printElevation(vault.lidUnderside, units),
                    levelText(vault.overflowInvert, units), levelText(vault.waterLevel, units),
                    printElevation(vault.floor, units), printElevation(vault.underside, units), low,
                    peak(job.study().train.pumpStopped)});
  }
  return table("LEVELS",
               {{"Vault"},
                {"Top|of lid", Align::Right},
                {"Underside|of lid", Align::Right},
                {"Outlet or|overflow invert", Align::Right},
                {"Water|at rest", Align::Right},
                {"Inside|floor", Align::Right},
                {"Underside|of base", Align::Right},
                {"Low water, the pump|stops, by chamber", Align::Right},
                {"Water at the peak, pump|stopped, by chamber", Align::Right}},
               rows, width);
}

} // namespace sump
