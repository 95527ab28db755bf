// How the numbers of buoyancy and lid loads came about; the digs follow in dig_report.cpp.
// Screening: a licensed engineer decides about flotation, lids and lifting.

#include "core/study/calculation_entry.h"
#include "core/study/context.h"
#include "core/study/dig_report.h"

namespace sump {

namespace {

using Kind = QuantityKind;
using Entry = CalculationEntry;

const std::string kBuoyancy =
    "sum of downward forces over uplift, effective soil weight under water; FEMA, Engineering "
    "Principles and Practices for Retrofitting Flood-Prone Residential Structures, example C7";
const std::string kAashto =
    "AASHTO Standard Specifications for Highway Bridges, 17th ed., 3.8.2.3 and 6.4, from memory";

class EarthReport {
public:
  explicit EarthReport(const EarthStudy& earth) : earth_(earth), f_(earth.figures) {}
  std::vector<Calculation> take();

private:
  void add(Entry& entry) { made_.push_back(entry.take()); }
  void weights(const BuoyancyStudy& b);
  void flotation(const BuoyancyStudy& b);
  void remedies(const BuoyancyStudy& b);
  Entry& forces(const BuoyancyStudy& b, Entry& entry) const;
  void lid(const LidLoadStudy& lid);

  const EarthStudy& earth_;
  const EarthFigures& f_;
  std::vector<Calculation> made_;
};

void EarthReport::weights(const BuoyancyStudy& b) {
  const std::string section = "Buoyancy";
  Entry weight("vault.weight", section, "Weight of the empty vault", Decided<Mass>(b.weight),
               Kind::Mass);
  weight.about(b.vault)
      .has("V_c", "concrete of walls, lid, floor, collar and baffles", b.concreteVolume,
           Kind::SolidVolume)
      .has("rho_c", "concrete", f_.concrete, Kind::Density, "limits");
  weight.formula(b.makersWeight ? "the maker's figure, and the collar's V x rho_c"
                                : "V_c x rho_c; pipe holes, risers and covers are not counted",
                 b.makersWeight ? "the plan" : "geometry");
  add(weight);
  Entry lift("vault.lift", section, "Heaviest piece to lift", Decided<Mass>(b.heaviestPiece),
             Kind::Mass);
  lift.about(b.vault)
      .has("W", "whole vault", b.weight, Kind::Mass, "vault.weight")
      .has("W_l", "its lid", b.lidWeight, Kind::Mass, "study")
      .formula("the larger of W_l and W - W_l; no allowance for rigging or for a bed that holds on",
               "geometry; the maker's certified weight, the crane's chart and a qualified rigger "
               "decide");
  add(lift);
}

void EarthReport::flotation(const BuoyancyStudy& b) {
  add(Entry("buoyancy.uplift", "Buoyancy", "Uplift of the empty vault", b.uplift, Kind::Force)
          .about(b.vault)
          .in("V_s", "outside volume below groundwater", b.submerged, Kind::DisplacedVolume)
          .has("rho_w", "water", f_.water, Kind::Density, "limits")
          .formula("U = V_s x rho_w x g", kBuoyancy));
  if (b.uplift && *b.uplift <= newtons(0)) return; // stands above the groundwater
  add(Entry("buoyancy.weight", "Buoyancy", "Weight of the empty vault as a force",
            Decided<Force>(newtons(b.weight.value() * kGravity)), Kind::Force)
          .about(b.vault)
          .has("m", b.makersWeight ? "weight, the maker's" : "weight, worked out", b.weight,
               Kind::Mass, "vault.weight")
          .formula("m x g", "Newton's second law"));
  Entry factor("buoyancy.factor", "Buoyancy", "Factor of safety against flotation", b.factor,
               Kind::Number);
  add(forces(b, factor).formula("FS = (W + S) / U", kBuoyancy));
  remedies(b);
}

/// What holds the vault down and what lifts it.
Entry& EarthReport::forces(const BuoyancyStudy& b, Entry& entry) const {
  return entry.about(b.vault)
      .has("W", "weight of the empty vault", newtons(b.weight.value() * kGravity), Kind::Force,
           "buoyancy.weight")
      .in("S", "effective weight of the soil counted", b.soilForce, Kind::Force)
      .in("U", "uplift", b.uplift, Kind::Force, "buoyancy.uplift");
}

void EarthReport::remedies(const BuoyancyStudy& b) {
  Entry ballast("buoyancy.ballast", "Buoyancy", "Concrete to add under water", b.ballast,
                Kind::SolidVolume);
  add(forces(b, ballast)
          .has("FS_least", "least factor", f_.factor, Kind::Number, "limits")
          .has("rho_c", "concrete", f_.concrete, Kind::Density, "limits")
          .has("rho_w", "water", f_.water, Kind::Density, "limits")
          .formula("V = (FS_least x U - W - S) / ((rho_c - rho_w) x g), not below 0", kBuoyancy));
  Entry collar("buoyancy.collar", "Buoyancy", "Collar of the base slab, beyond the walls", b.collar,
               Kind::Length);
  add(forces(b, collar)
          .has("FS_least", "least factor", f_.factor, Kind::Number, "limits")
          .has("rho_c", "concrete", f_.concrete, Kind::Density, "limits")
          .has("rho_w", "water", f_.water, Kind::Density, "limits")
          .has("rho_s", "moist soil", f_.soilHold, Kind::Density, "limits")
          .formula("the reach all round, as thick as the floor slab, at which FS = FS_least: its "
                   "concrete adds to W and its displacement to U, and the soil over it to S; found "
                   "by halving",
                   kBuoyancy));
}

void EarthReport::lid(const LidLoadStudy& lid) {
  add(Entry("lid.earth", "Lid loads", "Earth on the lid", lid.earth, Kind::Pressure)
          .about(lid.vault)
          .in("H", "least cover", lid.cover, Kind::Length)
          .has("rho", "moist soil", f_.soilLoad, Kind::Density, "limits")
          .formula("rho x g x H", "weight of the column of earth"));
  if (!lid.underTraffic && !lid.live) { // too little cover for the screening, and no need of it
    add(Entry("lid.traffic", "Lid loads", "Traffic pavements over the lid", Decided<int>(0),
              Kind::Number)
            .about(lid.vault)
            .formula("traffic pavements of the plan that lie over the lid; at 0 a truck's load "
                     "does not apply: keep vehicles off",
                     "geometry"));
    return;
  }
  Entry live("lid.live", "Lid loads", "Live load on the lid, one HS-20 truck (screening only)",
             lid.live, Kind::Pressure);
  live.about(lid.vault)
      .in("H", "least cover", lid.cover, Kind::Length)
      .has("P", "wheel load", newtons(16000 * kNewtonsPerPound), Kind::Force, "AASHTO")
      .formula("p = wheel load x (1 + impact) / (1.75 x cover)^2; where the squares of the two "
               "wheels, 6 ft apart, overlap: axle load x (1 + impact) / ((1.75 x cover + 6 ft) x "
               "1.75 x cover); impact 30 % to 1 ft of cover, 20 % to 2 ft, 10 % to less than 3 ft",
               kAashto);
  live.step(lid.underTraffic ? "under a traffic pavement" : "not under a traffic pavement");
  if (lid.needsTrafficLid) live.step("a lid made for traffic is needed; the plan has a light one");
  add(live);
}

std::vector<Calculation> EarthReport::take() {
  for (const BuoyancyStudy& vault : earth_.buoyancy) {
    weights(vault);
    flotation(vault);
  }
  for (const LidLoadStudy& one : earth_.lids)
    lid(one);
  return std::move(made_);
}

} // namespace

std::vector<Calculation> earthCalculations(const Plan& plan, const Study& study) {
  std::vector<Calculation> all = EarthReport(study.earth).take();
  std::vector<Calculation> digs = digCalculations(plan, study.earth);
  all.insert(all.end(), std::make_move_iterator(digs.begin()), std::make_move_iterator(digs.end()));
  return all;
}

} // namespace sump
