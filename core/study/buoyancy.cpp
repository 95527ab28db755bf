#include "core/study/buoyancy.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace sump {

Length lidTop(const Vault& vault) {
  return vault.floor + vault.insideHeight + vault.lidThickness;
}

namespace {

Length underside(const Vault& vault) {
  return vault.floor - vault.floorThickness;
}
Length collarOf(const Vault& vault) {
  return vault.collar.value_or(metres(0));
}

/// Plan area of the vault with a margin all round.
Area planArea(const Vault& vault, Length margin) {
  return (vault.length + 2.0 * margin) * (vault.width + 2.0 * margin);
}
Area collarArea(const Vault& vault) {
  return planArea(vault, collarOf(vault)) - planArea(vault, metres(0));
}

Length heightBelow(Length low, Length high, Length level) {
  return std::clamp(level, low, std::max(low, high)) - low;
}

Area openings(const Vault& vault) {
  Area sum;
  for (const Manway& manway : vault.manways)
    sum += kPi / 4 * manway.diameter * manway.diameter;
  return sum;
}

/// Soil that holds the vault down, of a slice of height dz: how far the soil counted reaches beyond
/// the walls at a level above the collar.
Volume soilBetween(const Vault& vault, SoilHold hold, Angle wedge, Length from, Length to) {
  if (to <= from) return {};
  const Length top = lidTop(vault);
  const Length base = vault.floor; // top of the collar slab
  const double spread = hold == SoilHold::Wedge ? std::tan(inRadians(wedge)) : 0;
  const bool collar = hold != SoilHold::LidOnly && collarOf(vault) > metres(0);
  const Length start = collar ? base : top; // where the wedge rises from
  const Area own = planArea(vault, metres(0));
  const auto slice = [&](Length z) {
    Area area = z >= top ? own : Area{};
    if (z < start) return area;
    const Length reach = (collar ? collarOf(vault) : metres(0)) + spread * (z - start);
    return area + planArea(vault, reach) - own;
  };
  // Quadratic in z between the levels where it jumps: Simpson's rule is exact there.
  Volume sum;
  std::vector<Length> cuts = {from, to};
  for (Length z : {base, top}) {
    if (z > from && z < to) cuts.push_back(z);
  }
  std::ranges::sort(cuts);
  for (std::size_t i = 1; i < cuts.size(); ++i) {
    const Length low = cuts[i - 1], high = cuts[i], hair = 1e-12 * (high - low);
    sum += (high - low) / 6.0 *
           (slice(low + hair) + 4.0 * slice((low + high) / 2.0) + slice(high - hair));
  }
  return sum;
}

struct Soil {
  Volume volume;
  Force force;
};

/// Moist above the water table, effective (submerged) below it. Soil over the manways is not taken
/// off: their risers weigh about as much.
Soil soilOn(const Vault& vault, SoilHold hold, Length grade, Length water, const EarthFigures& f) {
  const Length base = vault.floor;
  const Length level = std::clamp(water, base, std::max(base, grade));
  const Volume wet = soilBetween(vault, hold, f.wedge, base, std::min(level, grade));
  const Volume moist = soilBetween(vault, hold, f.wedge, level, grade);
  return {wet + moist, weightOf(moist, f.soilHold) + weightOf(wet, f.soilHold - f.water)};
}

struct Balance {
  Force uplift, soil, down;
  double factor() const { return uplift.value() > 0 ? (down / uplift).value() : kNoUplift; }
  static constexpr double kNoUplift = std::numeric_limits<double>::infinity();
};

Mass emptyMass(const Vault& vault, const EarthFigures& f) {
  if (vault.emptyWeight) return *vault.emptyWeight;
  return concreteVolume(vault) * f.concrete;
}

Balance balance(const Vault& vault, SoilHold hold, Length grade, Length water,
                const EarthFigures& f) {
  Balance b;
  b.uplift = weightOf(volumeBelow(vault, water), f.water);
  b.soil = soilOn(vault, hold, grade, water, f).force;
  b.down = weightOf(emptyMass(vault, f)) + b.soil;
  return b;
}

/// The least collar that gives the factor, by halving; up to the vault's own width.
Decided<Length> collarFor(const Vault& vault, SoilHold hold, Length grade, Length water,
                          const EarthFigures& f) {
  const auto reaches = [&](Length reach) {
    Vault wider = vault;
    wider.collar = reach;
    if (vault.emptyWeight) {
      *wider.emptyWeight += (collarVolume(wider) - collarVolume(vault)) * f.concrete;
    }
    return balance(wider, hold, grade, water, f).factor() >= f.factor;
  };
  Length low = collarOf(vault), high = std::max(vault.width, low);
  if (reaches(low)) return metres(0);
  if (!reaches(high)) {
    return undecided<Length>({"another way to hold the vault down than a collar"});
  }
  while (high - low > metres(1e-6)) {
    const Length middle = (low + high) / 2.0;
    (reaches(middle) ? high : low) = middle;
  }
  return high;
}

void fillWeights(const Vault& vault, const EarthFigures& f, BuoyancyStudy& study) {
  study.vault = vault.id;
  study.outside = outsideVolume(vault);
  study.concreteVolume = concreteVolume(vault);
  study.makersWeight = vault.emptyWeight.has_value();
  study.weight = emptyMass(vault, f);
  study.lidWeight = lidConcreteVolume(vault) * f.concrete;
  study.heaviestPiece = std::max(study.lidWeight, study.weight - study.lidWeight);
}

} // namespace

Volume outsideVolume(const Vault& vault) {
  return volumeBelow(vault, lidTop(vault));
}

Volume volumeBelow(const Vault& vault, Length level) {
  const Length low = underside(vault);
  return planArea(vault, metres(0)) * heightBelow(low, lidTop(vault), level) +
         collarArea(vault) * heightBelow(low, vault.floor, level);
}

Volume collarVolume(const Vault& vault) {
  return collarArea(vault) * vault.floorThickness;
}

Volume lidConcreteVolume(const Vault& vault) {
  return (planArea(vault, metres(0)) - openings(vault)) * vault.lidThickness;
}

Volume concreteVolume(const Vault& vault) {
  const Area inside = planArea(vault, -vault.wall);
  const Length insideWidth = vault.width - 2.0 * vault.wall;
  Volume sum = (planArea(vault, metres(0)) - inside) * vault.insideHeight; // walls
  sum += planArea(vault, metres(0)) * vault.floorThickness + collarVolume(vault);
  sum += lidConcreteVolume(vault);
  for (const Baffle& baffle : vault.baffles) {
    const Length height = vault.insideHeight - baffle.bottomGap - baffle.topGap;
    sum += baffle.thickness * insideWidth * std::max(height, metres(0));
  }
  return sum;
}

Force weightOf(Mass mass) {
  return newtons(mass.value() * kGravity);
}

Force weightOf(Volume volume, Density density) {
  return weightOf(Mass(volume * density));
}

Volume ballastFor(Force uplift, Force down, double factor, Density concrete, Density water) {
  const double lacking = factor * uplift.value() - down.value();
  return cubicMetres(std::max(0.0, lacking) / ((concrete - water).value() * kGravity));
}

BuoyancyStudy buoyancy(const Vault& vault, const VaultGround& ground, const EarthFigures& f) {
  BuoyancyStudy study;
  fillWeights(vault, f, study);
  const auto water = given(ground.groundwater, "highest expected groundwater");
  study.submerged = decide([&](Length level) { return volumeBelow(vault, level); }, water);
  study.uplift = decide([&](Volume v) { return weightOf(v, f.water); }, study.submerged);
  const auto hold = given(ground.hold, "which soil counts against flotation");
  const auto grade = given(ground.gradeLow, "ground levels");
  const auto soil =
      decide([&](SoilHold h, Length g, Length w) { return soilOn(vault, h, g, w, f); }, hold, grade,
             water);
  study.soilVolume = decide([](const Soil& s) { return s.volume; }, soil);
  study.soilForce = decide([](const Soil& s) { return s.force; }, soil);
  if (study.uplift && *study.uplift <= newtons(0)) { // dry, whatever the soil
    study.factor = Balance::kNoUplift;
    study.ballast = cubicMetres(0);
    study.collar = metres(0);
    return study;
  }
  const auto forces =
      decide([&](SoilHold h, Length g, Length w) { return balance(vault, h, g, w, f); }, hold,
             grade, water);
  study.factor = decide([](const Balance& b) { return b.factor(); }, forces);
  study.ballast = decide(
      [&](const Balance& b) { return ballastFor(b.uplift, b.down, f.factor, f.concrete, f.water); },
      forces);
  study.collar =
      decide([&](SoilHold h, Length g, Length w) { return collarFor(vault, h, g, w, f); }, hold,
             grade, water);
  return study;
}

} // namespace sump
