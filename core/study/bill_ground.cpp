// Earthwork and concrete.

#include "core/study/bill_parts.h"
#include "core/study/buoyancy.h"
#include "core/study/surface_cuts.h"

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
  addVolume(maker,
            volumeLine("bedding", "bedding", "Bedding under vaults and pipe",
                       "compacted; in the vaults' digs pipe's bed comes out of their backfill"),
            earth.bedding, &PitStudy::bedding, &TrenchStudy::bedding);
  addVolume(maker,
            volumeLine("bedding", "pipe-zone", "Selected backfill about pipe",
                       "compacted; in the vaults' digs it comes out of their backfill"),
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

/// The plan does not say which pavement or floor is there already, so the words hold for both.
void addSurfaces(BillMaker& maker) {
  struct Row {
    const char* key;
    const char* description;
    const char* note;
    BillUnit unit;
    double (*amount)(const SurfaceCuts&);
  };
  static constexpr Row kRows[] = {
      {"pavement-cut", "Pavement saw cut over trenches and digs",
       "both sides and ends, as wide as the dig at the top; new pavement: lay it after the "
       "backfill",
       BillUnit::Length, [](const SurfaceCuts& c) { return inMetres(c.pavementCut); }},
      {"pavement-patch", "Pavement broken out and made good", "area of the digs in it",
       BillUnit::Area, [](const SurfaceCuts& c) { return c.pavement.value(); }},
      {"floor-cut", "Floor opening or saw cut over trenches under floors",
       "both sides and ends; saw cut in a floor that stands, boxed out in a new one",
       BillUnit::Length, [](const SurfaceCuts& c) { return inMetres(c.floorCut); }},
      {"floor-patch", "Floor slab broken out or left open, and made good", "area of the digs in it",
       BillUnit::Area, [](const SurfaceCuts& c) { return c.floor.value(); }}};
  const Decided<SurfaceCuts> cuts = surfaceCuts(maker.context().plan, maker.context().study.earth);
  for (const Row& row : kRows) {
    const auto amount = decide([&](const SurfaceCuts& c) { return row.amount(c); }, cuts);
    if (amount && *amount <= 0) continue;
    BillLine like = billLine("site work", "surface", row.key, row.description, "", row.unit);
    like.note = row.note;
    maker.line(like).net = amount;
  }
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
  const Plan& plan = maker.context().plan;
  if (!plan.pavements.empty() || !plan.buildings.empty() || !plan.rooms.empty()) addSurfaces(maker);
  addConcrete(maker);
}

} // namespace sump
