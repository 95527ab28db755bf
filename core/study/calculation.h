#pragma once
// How a number of the study came about, so that a reviewer can follow it with a pocket calculator.
//
// Made from the Plan and the Study after the study has run; never a second computation of the
// result: `result` is the study's own number.

#include "core/plan/items.h"

#include <string>
#include <vector>

namespace sump {

enum class QuantityKind {
  Number,
  Share, ///< 0 to 1, printed in percent
  Length,
  HeadOfWater, ///< a length of water column
  Area,
  Volume, ///< of water and what it carries
  Flow,
  Velocity,
  Pressure,
  Mass,
  Force,
  Time,
  Temperature,
  Slope,
  Angle,
  SmallLength, ///< roughness, particle size; printed in micrometres
  Density,
  KinematicViscosity,
  DynamicViscosity,
  SolidVolume,     ///< of earth and concrete, which the trade measures and pays in cubic yards
  DisplacedVolume, ///< of water, by what stands in it; in cubic feet, as densities are
};

struct CalculationInput {
  std::string symbol; ///< as the formula names it, `h_f`
  std::string name;   ///< in words
  double value = 0;   ///< SI
  QuantityKind kind = QuantityKind::Number;
  std::string from; ///< where it comes from: `plan`, `catalogue`, the id of another calculation
};

/// One quantity: the formula in words, what went in, the steps, the result and the source.
struct Calculation {
  std::string id;      ///< `suction.npsh-available`; unique together with `object`
  Id object;           ///< run, vault or chamber that it is about, or empty
  std::string section; ///< heading under which it is reported, `Suction`
  std::string title;
  std::string formula; ///< in words and symbols, in SI
  std::vector<CalculationInput> inputs;
  std::vector<std::string> steps; ///< intermediate results, each a line that can be followed
  bool decided = true;            ///< false: `needs` says what is missing, `result` is void
  std::string needs;
  double result = 0; ///< SI
  QuantityKind kind = QuantityKind::Number;
  std::string source; ///< of the formula
};

} // namespace sump
