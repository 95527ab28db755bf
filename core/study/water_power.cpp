#include "core/study/water_power.h"

#include "core/units/print.h"

namespace sump {

Decided<Power> waterPower(const HydraulicsStudy& study) {
  return decide(
      [](Flow flow, Length head, Density density) {
        return Power::from_value(density.value() * kGravity * flow.value() * inMetres(head));
      },
      study.pumpFlow, study.pumpHead, study.water.density);
}

std::string printPower(Power power, UnitSystem units) {
  return units == UnitSystem::Metric ? fixed(power.value() / 1000, 2) + " kW"
                                     : fixed(power.value() / kWattsPerHorsepower, 2) + " hp";
}

} // namespace sump
