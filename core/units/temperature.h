#pragma once
// Temperatures as people type and read them. Apart from the other quantities because their units
// differ by an offset, not by a factor alone.

#include "core/units/parse.h"
#include "core/units/quantity.h"

#include <string>
#include <string_view>

namespace sump {

/// `68 F`, `20 C`, `68°F`, `293.15 K`. A bare number is °F (US) or °C (metric).
Parsed<Temperature> parseTemperature(std::string_view text, UnitSystem bare);
/// `68 °F` or `20 °C`, to 0.1 degree.
std::string printTemperature(Temperature v, UnitSystem units);

} // namespace sump
