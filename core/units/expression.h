#pragma once
// Simple sums in number fields: `3' 6" + 2*4"`, `(1.2 + 0.4) / 2`, `10 m - 2,5 m`. Every text that
// parse.h reads means the same here: `12' - 6"` is twelve feet six, as drawings write it, and
// `6-1/2` is six and a half; `12' - 0'-6"`, `12'-6'` and `6 - 1/2` subtract.
//
// A bare number in a sum with a quantity takes the unit of the caller's UnitSystem; in a product it
// is only a factor.

#include "core/units/parse.h"

namespace sump {

Parsed<Length> evaluateLength(std::string_view text, UnitSystem bare);
Parsed<Volume> evaluateVolume(std::string_view text, UnitSystem bare);
Parsed<Flow> evaluateFlow(std::string_view text, UnitSystem bare);
Parsed<Pressure> evaluatePressure(std::string_view text, UnitSystem bare);
Parsed<Mass> evaluateMass(std::string_view text, UnitSystem bare);
Parsed<double> evaluateSlope(std::string_view text, UnitSystem bare);
Parsed<Angle> evaluateAngle(std::string_view text);
/// Without unit: `12`, `1/4`, `2*3,5`.
Parsed<double> evaluateNumber(std::string_view text);
/// A number that comes out whole.
Parsed<int> evaluateWhole(std::string_view text);

} // namespace sump
