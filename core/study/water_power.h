#pragma once
// The power that a pump gives to the water: the least that its shaft takes. The shaft's is that
// over the pump's efficiency, which only its maker knows, and a motor is chosen by its nameplate.

#include "core/study/hydraulics.h"

#include <boost/units/systems/si/power.hpp>

#include <string>

namespace sump {

using Power = bu::quantity<bu::si::power>; // W

/// 1 hp = 550 ft lbf/s (NIST SP 811, app. B).
inline constexpr double kWattsPerHorsepower = 550 * kMetresPerFoot * kNewtonsPerPound;

/// rho g Q H at the pump's flow at the peak and its head there.
Decided<Power> waterPower(const HydraulicsStudy& study);

/// `1.03 hp` or `0.77 kW`.
std::string printPower(Power power, UnitSystem units);

} // namespace sump
