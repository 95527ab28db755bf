#pragma once
// The sizes and heights of sections, details and tables.

#include "core/units/print.h"

namespace sump {

/// A size in a section or detail: feet-inches to 1/16 in, or whole millimetres; levels beside it
/// are in feet or metres.
std::string printSize(Length v, UnitSystem units);

/// How high one level is over another, from the levels as printElevation writes them.
Length heightBetween(Length low, Length high, UnitSystem units);

/// How high one level is over another, as a size: the difference of the two as printElevation
/// writes them, so that whoever subtracts them finds it, and every sheet tells the same height. Of
/// what is made to a size (a lid, a wall) printSize tells that size instead.
std::string printHeight(Length low, Length high, UnitSystem units);

} // namespace sump
