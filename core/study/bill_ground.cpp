// Earthwork and concrete.

#include "core/study/bill_parts.h"
#include "core/study/buoyancy.h"

#include <algorithm>

namespace sump {

namespace {

double inCubicMetres(Volume v) {
  return v.value();
}

/// A line with shares of pits (under their first vault) and trenches; undecided as the total is.
void addVolume(BillMaker& maker, const BillLine& like, const Decided<Volume>& total,
               Decided<Volume> PitStudy::*ofPit, Volume TrenchStudy::*ofTrench) {
  BillLine& line = maker.line(like);
  if (!total) {
    line.net = undecided<double>(total.needs);
    return;
  }
  const EarthStudy& earth = maker.context().study.earth;
  for (const PitStudy& pit : earth.pits) {
    if (ofPit != nullptr && pit.*ofPit)
      BillMaker::add(line, pit.vaults.front(), inCubicMetres(*(pit.*ofPit)));
  }
  for (const TrenchStudy& trench : earth.trenches)
    BillMaker::add(line, trench.run, inCubicMetres(trench.*ofTrench));
}

BillLine volumeLine(const char* category, const char* key, const char* description,
                    const char* note) {
  BillLine line = billLine("site work", category, key, description, "", BillUnit::Volume);
  line.note = note;
  return line;
}

template <class T> void addTotal(BillMaker& maker, const BillLine& like, const Decided<T>& total) {
  maker.line(like).net = decide(
      [](const T& amount) {
        if constexpr (std::is_same_v<T, Volume>) {
          return inCubicMetres(amount);
        } else {
          return amount;
        }
      },
      total);
}

void addDigs(BillMaker& maker) {
  const EarthStudy& earth = maker.context().study.earth;
  addVolume(maker,
            volumeLine("excavation", "excavation", "Excavation", "in the ground, before it swells"),
            earth.dug, &PitStudy::dug, &TrenchStudy::dug);
  addVolume(maker, volumeLine("bedding", "bedding", "Bedding under vaults and pipe", "compacted"),
            earth.bedding, &PitStudy::bedding, &TrenchStudy::bedding);
  addVolume(maker, volumeLine("bedding", "pipe-zone", "Selected backfill about pipe", "compacted"),
            earth.pipeZone, nullptr, &TrenchStudy::pipeZone);
  addVolume(maker, volumeLine("backfill", "backfill", "Backfill from the dig", "compacted"),
            earth.backfill, &PitStudy::backfill, &TrenchStudy::backfill);
  BillLine spoil = volumeLine("spoil", "spoil", "Spoil", "loose, all that is dug");
  spoil.bought = false;
  addTotal(maker, spoil, earth.spoil);
  addTotal(maker, volumeLine("haulage", "surplus", "Surplus hauled off", "loose"), earth.surplus);
  BillLine loads = billLine("site work", "haulage", "truckload", "Truckloads of surplus");
  addTotal(maker, loads, earth.truckloads);
}

void addConcrete(BillMaker& maker) {
  const BillContext& context = maker.context();
  for (const Vault& vault : context.plan.vaults) {
    const Volume collar = collarVolume(vault);
    if (collar <= Volume{}) continue;
    BillMaker::add(maker.line(volumeLine("concrete", "collar-concrete", "Concrete of collars",
                                         "the slab beyond the walls, as thick as the floor")),
                   vault.id, inCubicMetres(collar));
  }
  for (const BuoyancyStudy& buoyancy : context.study.earth.buoyancy) {
    if (buoyancy.ballast && *buoyancy.ballast <= Volume{}) continue;
    BillLine& line = maker.line(
        volumeLine("concrete", "ballast-concrete", "Concrete of ballast against flotation",
                   "screening; a licensed engineer decides about flotation"));
    if (!buoyancy.ballast) {
      line.net = undecided<double>(buoyancy.ballast.needs);
    } else {
      BillMaker::add(line, buoyancy.vault, inCubicMetres(*buoyancy.ballast));
    }
  }
}

} // namespace

void addEarthwork(BillMaker& maker) {
  if (maker.context().plan.vaults.empty() && maker.context().plan.runs.empty()) return;
  addDigs(maker);
  addConcrete(maker);
}

} // namespace sump
