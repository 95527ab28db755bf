// G-6: the key figures of the calculations. How each came about is in the calculation report.

#include "core/sheet/flow.h"
#include "core/sheet/set_tables.h"
#include "core/sheet/tags.h"
#include "core/study/calculation_print.h"
#include "core/study/connections.h"
#include "core/units/earth.h"
#include "core/units/print.h"

#include <algorithm>

namespace sump {

namespace {

using Rows = std::vector<std::vector<std::string>>;

/// Nothing here is known better; the calculation report shows more.
constexpr int kFigures = 3;

/// Prints a decided quantity of one kind.
class Figures {
public:
  explicit Figures(UnitSystem units) : units_(units) {}
  template <class Q> std::string operator()(const Decided<Q>& v, QuantityKind kind) const {
    return decidedText(
        v, [&](const Q& q) { return printQuantity(q.value(), kind, units_, kFigures); });
  }
  std::string operator()(const Decided<double>& v, QuantityKind kind = QuantityKind::Number) const {
    return decidedText(v, [&](double q) { return printQuantity(q, kind, units_, kFigures); });
  }
  std::string elevation(const Decided<Length>& v) const {
    return decidedText(v, [&](Length q) { return printElevation(q, units_); });
  }

private:
  UnitSystem units_;
};

Block storageTable(const SheetJob& job, double width) {
  const Figures f(job.units());
  const Study& s = job.study();
  const DemandStudy& d = s.hydraulics.demand;
  const Rows rows = {
      {"Working volume at rest", printVolume(s.workingVolume, job.units())},
      {"Usable volume, rest level to float", f(s.train.usable, QuantityKind::Volume)},
      {"Peak inflow to the vaults", f(s.train.peakInflow, QuantityKind::Flow)},
      {"Peak draw of product water", f(s.train.peakDraw, QuantityKind::Flow)},
      {"Recirculation", f(s.train.recirculation, QuantityKind::Flow)},
      {"Wash water a day", f(d.dailyWash, QuantityKind::Volume)},
      {"Fresh water drawn by devices a day", f(d.dailyFresh, QuantityKind::Volume)},
      {"Make-up water a day", f(d.dailyMakeUp, QuantityKind::Volume)},
      {"Share of the wash water reclaimed (neither fresh nor make-up)",
       f(d.reclaimShare, QuantityKind::Share)},
      {"Time to fill the usable volume", f(s.train.fill, QuantityKind::Time)},
      {"Time to draw it down", f(s.train.drawDown, QuantityKind::Time)},
      {"Sludge a day", f(s.train.sludgePerDay, QuantityKind::Volume)},
      {"Pump-out, if all settles in the first chamber",
       f(s.train.pumpOutFirst, QuantityKind::Time)},
      {"Pump-out, if it spreads over all chambers", f(s.train.pumpOutTrain, QuantityKind::Time)}};
  return table("STORAGE AND FLOWS", {{"Quantity"}, {"Value"}}, rows, width);
}

/// Of a suction, with its strainer at the dirt that it is allowed.
Decided<Length> dirtyLoss(const HydraulicsStudy& h, const Id& run) {
  const auto found = std::ranges::find(h.runs, run, &PressureRun::run);
  if (found == h.runs.end()) return undecided<Length>({"losses of the run " + run});
  return decide([](const RunLoss& loss) { return loss.dirty; }, found->loss);
}

Block pumpTable(const SheetJob& job, double width) {
  const Figures f(job.units());
  const HydraulicsStudy& h = job.study().hydraulics;
  Rows rows = {{"Pump flow at the peak", f(h.pumpFlow, QuantityKind::Flow)},
               {"Pump head at that flow", f(h.pumpHead, QuantityKind::HeadOfWater)}};
  const auto tags = runTags(job.plan());
  for (const SuctionStudy& s : h.suctions) {
    const std::string tag = tags.at(s.run) + ": ";
    rows.push_back({tag + "pump above low water", f(s.liftLow, QuantityKind::Length)});
    rows.push_back(
        {tag + "losses, strainer dirty", f(dirtyLoss(h, s.run), QuantityKind::HeadOfWater)});
    rows.push_back(
        {tag + "suction lift, both together", f(s.suctionLift, QuantityKind::HeadOfWater)});
    rows.push_back({tag + "NPSH available", f(s.npshAvailable, QuantityKind::HeadOfWater)});
    rows.push_back({tag + "NPSH required", f(s.npshRequired, QuantityKind::HeadOfWater)});
    rows.push_back(
        {tag + "NPSH ratio", decidedText(s.npshRatio, [](double x) { return fixed(x, 2); })});
    rows.push_back({tag + "water to prime with", f(s.primingVolume, QuantityKind::Volume)});
    rows.push_back({tag + "low water", f.elevation(s.lowWater)});
  }
  return table("PUMP AND SUCTION", {{"Quantity"}, {"Value"}}, rows, width);
}

/// What the pressures at the runs' ends rest on.
std::string pressureBasis(const SheetJob& job) {
  const bool hasMakeUp =
      std::ranges::any_of(job.study().hydraulics.runs,
                          [](const PressureRun& run) { return run.service == Service::MakeUp; });
  const auto& supply = job.plan().basis.makeUp.pressure;
  std::string text = "Pressure at the end, at the flow told: the pump's head at the peak less the "
                     "rise over low water and the losses of suction, run and, of product water "
                     "alone, equipment.";
  if (!hasMakeUp) return text;
  text += " Of make-up: the static pressure where it is connected, ";
  text += supply ? printQuantity(supply->value(), QuantityKind::Pressure, job.units(), kFigures) +
                       " as typed in the plan"
                 : std::string("______");
  return text + ", less the run's own rise and losses; what the supply loses before it at that "
                "flow is not in the plan: ______ (water utility).";
}

Block pressureTable(const SheetJob& job, double width) {
  const Figures f(job.units());
  const auto tags = runTags(job.plan());
  Rows rows;
  for (const PressureRun& run : job.study().hydraulics.runs) {
    const auto velocity = decide([](const RunLoss& loss) { return loss.fastest; }, run.loss);
    const auto loss = decide([](const RunLoss& loss) { return loss.total; }, run.loss);
    const bool suction = run.service == Service::Suction || run.service == Service::SpareSuction;
    rows.push_back(
        {tags.at(run.run), f(run.flow, QuantityKind::Flow), f(velocity, QuantityKind::Velocity),
         printQuantity(run.ceiling.value(), QuantityKind::Velocity, job.units(), kFigures),
         f(loss, QuantityKind::HeadOfWater), suction ? "-" : f(run.atEnd, QuantityKind::Pressure)});
  }
  Block block = table("PRESSURE RUNS",
                      {{"Run"},
                       {"Flow"},
                       {"Velocity"},
                       {"Ceiling"},
                       {"Loss, strainer clean"},
                       {"Pressure at the end"}},
                      rows, width);
  addNote(block, pressureBasis(job));
  return block;
}

Block gravityTable(const SheetJob& job, double width) {
  const Figures f(job.units());
  const auto tags = runTags(job.plan());
  Rows rows;
  std::string joined;
  for (const GravityStudy& run : job.study().train.gravity) {
    for (const Id& flush : underflowsInto(job.plan(), *job.plan().runs.find(run.run)))
      joined += tags.at(run.run) + " carries the flush of " + tags.at(flush) +
                ", too, which may run at the peak. ";
    rows.push_back({tags.at(run.run), f(run.peak, QuantityKind::Flow),
                    f(run.fullFlow, QuantityKind::Flow), f(run.share, QuantityKind::Share),
                    f(run.velocity, QuantityKind::Velocity)});
  }
  Block block = table("GRAVITY RUNS AT THE PEAK",
                      {{"Run"}, {"Carries"}, {"Full flow"}, {"Share"}, {"Velocity"}}, rows, width);
  if (!joined.empty())
    addNote(block, joined + "Water levels at the peak are reckoned without a flush.");
  return block;
}

Block levelsAtPeak(const SheetJob& job, double width) {
  Rows rows;
  for (const VaultStudy& vault : job.study().vaults) {
    for (const ChamberStudy& chamber : vault.chambers) {
      const auto level = [&](const Decided<TrainLevels>& train) {
        return decidedText(train, [&](const TrainLevels& t) {
          const ChamberLevel* found = t.chamber(vault.id, chamber.number);
          return found ? printElevation(found->level, job.units()) : std::string("-");
        });
      };
      const ChamberDuty* duty = job.study().train.duty(vault.id, chamber.number);
      const Figures f(job.units());
      rows.push_back({called(*job.plan().vaults.find(vault.id)), std::to_string(chamber.number),
                      levelText(vault.waterLevel, job.units()),
                      level(job.study().train.pumpRunning), level(job.study().train.pumpStopped),
                      duty ? f(duty->activeDepth, QuantityKind::Length) : "-",
                      duty ? f(duty->detention, QuantityKind::Time) : "-",
                      duty ? f(duty->overflowRate, QuantityKind::Velocity) : "-"});
    }
  }
  Block block = table("CHAMBERS AT THE PEAK",
                      {{"Vault"},
                       {"Ch.", Align::Centre},
                       {"At rest", Align::Right},
                       {"Pump|running", Align::Right},
                       {"Pump|stopped", Align::Right},
                       {"Depth|used", Align::Right},
                       {"Detention"},
                       {"Overflow|rate"}},
                      rows, width);
  addNote(block, "Detention: of the water in the depth used, which is that at rest less what the "
                 "plan allows for sludge and oil.");
  return block;
}

/// The plan has one level, and no word on who found it how: that is left to be filled in.
std::string groundwaterNote(const Plan& plan) {
  const auto& level = plan.site.groundwater;
  if (!level) {
    return "Groundwater: the plan gives no level. Have it observed (standpipe or boring, the "
           "highest "
           "of a wet season) before the vaults are ordered.";
  }
  return "Groundwater taken: the highest expected, elevation " +
         printElevation(*level, plan.project.units) +
         ", as typed in the plan, with no margin added to it. Whether it was observed (boring, "
         "standpipe, date) or assumed: ______ (owner's soil report). Water that stands higher, as "
         "after a flood or in a backfilled pit, lifts more.";
}

Block buoyancyTable(const SheetJob& job, double width) {
  const Figures f(job.units());
  const auto factor = [&](const Decided<double>& v) {
    return decidedText(v, [&](double x) {
      return std::isfinite(x) ? printQuantity(x, QuantityKind::Number, job.units(), kFigures)
                              : std::string("above groundwater");
    });
  };
  Rows rows;
  for (const BuoyancyStudy& b : job.study().earth.buoyancy) {
    const Force weight = newtons(b.weight.value() * kGravity);
    rows.push_back(
        {called(*job.plan().vaults.find(b.vault)),
         printQuantity(weight.value(), QuantityKind::Force, job.units(), kFigures),
         job.plan().site.groundwater
             ? printLength(job.study().vault(b.vault)->underside - *job.plan().site.groundwater,
                           job.units())
             : std::string("?"),
         f(b.uplift, QuantityKind::Force), f(b.soilForce, QuantityKind::Force), factor(b.factor),
         decidedText(b.ballast, [&](Volume v) { return earthText(v, job.units()); })});
  }
  Block block = table("FLOTATION OF THE EMPTY VAULTS",
                      {{"Vault"},
                       {"Weight,|a force", Align::Right},
                       {"Underside over|groundwater", Align::Right},
                       {"Uplift"},
                       {"Soil held"},
                       {"Factor of|safety"},
                       {"Ballast to add"}},
                      rows, width);
  if (!rows.empty()) addNote(block, groundwaterNote(job.plan()));
  return block;
}

} // namespace

Block earthTable(const SheetJob& job, double width) {
  const EarthStudy& e = job.study().earth;
  const auto volume = [&](const Decided<Volume>& v) {
    return decidedText(v, [&](Volume x) { return earthText(x, job.units()); });
  };
  const Rows rows = {
      {"Dug, bank volume", volume(e.dug)},
      {"Bedding", volume(e.bedding)},
      {"Pipe zone", volume(e.pipeZone)},
      {e.backfilled.empty() ? "Backfill"
                            : "Backfill; also bed and zone of pipe in the vaults' digs",
       volume(e.backfill)},
      {"Spoil, loose", volume(e.spoil)},
      {"Hauled off, loose", volume(e.surplus)},
      {"Truckloads", decidedText(e.truckloads, [](double n) { return fixed(n, 0); })},
      {"Spoil heap clear of the edge",
       decidedText(e.spoilClear, [&](Length v) { return printLength(v, job.units()); })}};
  Block block = table("EARTHWORK, EACH DIG AS IF ALONE", {{"Quantity"}, {"Value"}}, rows, width);
  block.width = std::max(block.width, width); // for the note
  addNote(block,
          "Each run is reckoned in a trench of its own: where runs share one, less is dug, "
          "filled and hauled off than these totals. Every volume is rounded by itself, so that "
          "printed parts may differ from their total in the last digit.");
  return block;
}

void calculationSummarySheet(const SheetJob& job, PageFlow& flow) {
  const double wide = std::min(flow.fullWidth(), 240.0), column = flow.columnWidth();
  std::vector<Block> blocks = {storageTable(job, column)};
  if (!job.study().hydraulics.runs.empty()) {
    blocks.push_back(pumpTable(job, column));
    blocks.push_back(pressureTable(job, wide));
  }
  blocks.push_back(gravityTable(job, column));
  blocks.push_back(levelsAtPeak(job, wide));
  blocks.push_back(buoyancyTable(job, wide));
  blocks.push_back(earthTable(job, column));
  blocks.push_back(paragraphs(
      "NOTES",
      {"The figures are those of the study that the plan file gives; the calculation report shows "
       "how each came about. What an input is missing for says what it needs.",
       "Screening for planning: licensed engineers decide about flotation, lids, excavation "
       "support "
       "and electrical work under the adopted codes."},
      column, true));
  flow.addAll(std::move(blocks));
}

} // namespace sump
