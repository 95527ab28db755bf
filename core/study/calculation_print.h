#pragma once
// Results of calculations written for people.

#include "core/study/calculation.h"
#include "core/units/quantity.h"

#include <string>
#include <vector>

namespace sump {

/// A number in SI as its kind is read in the project's units, with the unit: `17.4 ft`, `4.7 ft/s`,
/// `29 %`. Five figures are enough to follow the sum with a pocket calculator; `figures` 3 for a
/// summary. Digits before the point are never rounded away.
std::string printQuantity(double si, QuantityKind kind, UnitSystem units, int figures = 5);

/// A calculation's result and its inputs.
std::string printResult(const Calculation& calculation, UnitSystem units, int figures = 5);
std::string printInput(const CalculationInput& input, UnitSystem units);

/// The same in SI, as the formulas take it: `5.3035 m`, `0.00126 m3/s`, `101325 Pa`; a share as 0
/// to 1, a slope as rise over run. Seven figures, so that levels can be subtracted.
std::string printSi(double si, QuantityKind kind);

/// The unit alone: `m3/s`; empty for plain numbers.
std::string siUnit(QuantityKind kind);

/// The calculations as plain text: a heading for each section, then formula, inputs, steps, result
/// and source of each; one that cannot be decided says what it needs.
std::string calculationText(const std::vector<Calculation>& calculations, UnitSystem units);

} // namespace sump
