#pragma once
// Flotation of an empty vault, what it weighs, and what holds it down. Pure functions of a vault's
// own figures. Screening: the maker's certified weight and a licensed engineer decide.

#include "core/plan/plan.h"
#include "core/study/earth.h"

namespace sump {

/// Elevation of the lid's upper side.
Length lidTop(const Vault& vault);
/// Outside volume with lid and collar, solid.
Volume outsideVolume(const Vault& vault);
/// Outside volume below a level.
Volume volumeBelow(const Vault& vault, Length level);
/// Walls, lid, floor, collar and baffles, less the manway openings in the lid. Pipe holes, risers
/// and covers are not counted.
Volume concreteVolume(const Vault& vault);
/// Of the lid alone, less its openings.
Volume lidConcreteVolume(const Vault& vault);
/// Of the slab that reaches beyond the walls, as thick as the floor.
Volume collarVolume(const Vault& vault);

Force weightOf(Mass mass);
/// Of so much water, soil or concrete.
Force weightOf(Volume volume, Density density);

/// Concrete to add under the water table for a factor of safety: (factor x uplift - downward
/// forces) over the effective unit weight of concrete under water, 0 when that is reached already
/// (FEMA, Engineering Principles and Practices for Retrofitting Flood-Prone Residential Structures,
/// app. C, example C7).
Volume ballastFor(Force uplift, Force down, double factor, Density concrete, Density water);

/// What surrounds a vault, as far as known.
struct VaultGround {
  std::optional<Length> gradeLow; ///< over the lid
  std::optional<Length> groundwater;
  std::optional<SoilHold> hold;
};

BuoyancyStudy buoyancy(const Vault& vault, const VaultGround& ground, const EarthFigures& figures);

} // namespace sump
