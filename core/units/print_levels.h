#pragma once
// The sizes of details. A height between two levels is the true one, rounded once: it is built by
// the tape, and the difference of two rounded levels may be a step off on it.

#include "core/units/print.h"

namespace sump {

/// A size in a section or detail: feet-inches to 1/16 in, or whole millimetres; levels beside it
/// are in feet or metres.
std::string printSize(Length v, UnitSystem units);

} // namespace sump
