#pragma once
// Heights between levels, and the sizes of details, as a reader of a drawing checks them.

#include "core/units/print.h"

namespace sump {

/// How far `to` is over `from`, both as printElevation prints them: who subtracts them finds it.
Length printedRise(Length from, Length to, UnitSystem units);

/// A size in a section or detail: feet-inches to 1/16 in, or whole millimetres; levels beside it
/// are in feet or metres.
std::string printSize(Length v, UnitSystem units);

} // namespace sump
