// How the numbers of the earth study came about.

#include "core/study/context.h"

namespace sump {

namespace {

constexpr const char* kBuoyancySource =
    "sum of downward forces over uplift, effective soil weight under water; FEMA, Engineering "
    "Principles and Practices for Retrofitting Flood-Prone Residential Structures, example C7";
constexpr const char* kDigSource = "29 CFR 1926 Subpart P, App. B table B-1; prismoidal rule";

using Inputs = std::vector<CalculationInput>;

template <class T> double number(const T& value) {
  if constexpr (std::is_arithmetic_v<T>) {
    return static_cast<double>(value);
  } else {
    return value.value();
  }
}

/// Text and place of one calculation, before its result.
struct Heading {
  const char* id;
  const char* section;
  const char* title;
  const char* formula;
  const char* source;
};

template <class T>
void report(std::vector<Calculation>& all, const Heading& heading, const Id& object,
            const Decided<T>& result, QuantityKind kind, const Inputs& inputs) {
  Calculation c;
  c.id = heading.id;
  c.object = object;
  c.section = heading.section;
  c.title = heading.title;
  c.formula = heading.formula;
  c.source = heading.source;
  c.kind = kind;
  c.decided = static_cast<bool>(result);
  if (result) {
    c.result = number(*result);
    c.inputs = inputs;
  } else {
    c.needs = needsText(result.needs);
  }
  all.push_back(std::move(c));
}

/// An input that is there whenever the result is.
template <class T>
CalculationInput input(const char* symbol, const char* name, const Decided<T>& value,
                       QuantityKind kind, const char* from) {
  return {symbol, name, value ? number(*value) : 0, kind, from};
}

void reportVault(std::vector<Calculation>& all, const EarthFigures& f, const BuoyancyStudy& b) {
  const double weight = b.weight.value() * kGravity;
  report(
      all,
      {"buoyancy.uplift", "Buoyancy", "Uplift of the empty vault", "U = V_s x rho_w x g",
       kBuoyancySource},
      b.vault, b.uplift, QuantityKind::Force,
      {input("V_s", "outside volume below groundwater", b.submerged, QuantityKind::Volume, "plan"),
       {"rho_w", "water", f.water.value(), QuantityKind::Density, "limits"}});
  if (b.uplift && *b.uplift <= newtons(0)) return; // stands above the groundwater
  const CalculationInput uplift =
      input("U", "uplift", b.uplift, QuantityKind::Force, "buoyancy.uplift");
  const CalculationInput soil =
      input("S", "effective weight of the soil counted", b.soilForce, QuantityKind::Force, "plan");
  const CalculationInput own{"W", b.makersWeight ? "weight, the maker's" : "weight, worked out",
                             weight, QuantityKind::Force, "plan"};
  report(all,
         {"buoyancy.factor", "Buoyancy", "Factor of safety against flotation", "FS = (W + S) / U",
          kBuoyancySource},
         b.vault, b.factor, QuantityKind::Number, {own, soil, uplift});
  report(all,
         {"buoyancy.ballast", "Buoyancy", "Concrete to add under water",
          "V = (FS_least x U - W - S) / ((rho_c - rho_w) x g), not below 0", kBuoyancySource},
         b.vault, b.ballast, QuantityKind::Volume,
         {{"FS_least", "least factor", f.factor, QuantityKind::Number, "limits"},
          uplift,
          own,
          soil,
          {"rho_c", "concrete", f.concrete.value(), QuantityKind::Density, "limits"},
          {"rho_w", "water", f.water.value(), QuantityKind::Density, "limits"}});
}

void reportLid(std::vector<Calculation>& all, const LidLoadStudy& lid) {
  report(
      all,
      {"lid.live", "Lid loads", "Live load on the lid, one HS-20 truck (screening only)",
       "p = wheel load x (1 + impact) / (1.75 x cover)^2; where the squares of the two wheels, 6 "
       "ft apart, overlap: axle load x (1 + impact) / ((1.75 x cover + 6 ft) x 1.75 x cover)",
       "AASHTO Standard Specifications for Highway Bridges, 17th ed., 3.8.2.3 and 6.4, from "
       "memory"},
      lid.vault, lid.live, QuantityKind::Pressure,
      {input("H", "least cover", lid.cover, QuantityKind::Length, "plan"),
       {"P", "wheel load", 16000 * kNewtonsPerPound, QuantityKind::Force, "AASHTO"}});
}

void reportPit(std::vector<Calculation>& all, const EarthStudy& earth, const PitStudy& pit) {
  const CalculationInput depth =
      input("h", "greatest depth", pit.depth, QuantityKind::Length, "dig.depth");
  report(all,
         {"dig.depth", "Excavation", "Depth of the dig",
          "highest grade at the top less underside of the bed", kDigSource},
         pit.vaults.front(), pit.depth, QuantityKind::Length,
         {input("z_g", "highest grade", pit.grade, QuantityKind::Length, "plan"),
          {"z_b", "lowest bottom", pit.bottom.value(), QuantityKind::Length, "plan"}});
  report(all,
         {"dig.volume", "Excavation", "Bank volume of the dig",
          "area of the outline, grown by slope x height, summed over the mean depth; digs that run "
          "into each other counted once",
          kDigSource},
         pit.vaults.front(), pit.dug, QuantityKind::Volume,
         {depth,
          {"m", "run over rise of deep sides", earth.sideSlope, QuantityKind::Number,
           earth.soilAssumed ? "type C, as soil is not classified" : "soil class"}});
}

void reportTotals(std::vector<Calculation>& all, const EarthStudy& earth) {
  const CalculationInput dug =
      input("V_d", "dug, pits and trenches", earth.dug, QuantityKind::Volume, "dig.volume");
  const CalculationInput back =
      input("V_b", "backfilled", earth.backfill, QuantityKind::Volume, "study");
  const CalculationInput swell{"s", "swell", earth.figures.swell, QuantityKind::Share, "limits"};
  const char* practice = "common practice, no source";
  report(all,
         {"dig.surplus", "Excavation", "Spoil hauled off, loose",
          "(V_d - V_b) x (1 + s); each run in a trench of its own, shared trenches counted twice",
          practice},
         {}, earth.surplus, QuantityKind::Volume, {dug, back, swell});
  report(all,
         {"dig.truckloads", "Excavation", "Truckloads", "surplus / truck, rounded up", practice},
         {}, earth.truckloads, QuantityKind::Number,
         {input("V", "surplus", earth.surplus, QuantityKind::Volume, "dig.surplus"),
          {"T", "one truck", earth.figures.truck.value(), QuantityKind::Volume, "limits"}});
}

} // namespace

std::vector<Calculation> earthCalculations(const Plan&, const Study& study) {
  std::vector<Calculation> all;
  const EarthStudy& earth = study.earth;
  for (const BuoyancyStudy& vault : earth.buoyancy)
    reportVault(all, earth.figures, vault);
  for (const LidLoadStudy& lid : earth.lids)
    reportLid(all, lid);
  for (const PitStudy& pit : earth.pits)
    reportPit(all, earth, pit);
  if (!earth.pits.empty() || !earth.trenches.empty()) reportTotals(all, earth);
  return all;
}

} // namespace sump
