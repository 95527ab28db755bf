#include "core/study/nominal_volts.h"

namespace sump {

namespace {

struct Range {
  SupplyKind kind;
  int low, high; ///< of the equipment
  NominalSystem system;
};

constexpr Range kRanges[] = {
    {SupplyKind::Control1Phase, 110, 127, {"120 V", 120}},
    {SupplyKind::Control1Phase, 200, 208, {"208Y/120 V", 120}},
    {SupplyKind::Control1Phase, 220, 240, {"120/240 V", 120}},
    {SupplyKind::Control1Phase, 220, 240, {"230/400 V", 230}},
    {SupplyKind::Control1Phase, 265, 277, {"480Y/277 V", 277}},
    {SupplyKind::Motor3Phase, 200, 208, {"208Y/120 V", 120}},
    {SupplyKind::Motor3Phase, 380, 415, {"230/400 V", 230}},
    {SupplyKind::Motor3Phase, 440, 480, {"480Y/277 V", 277}},
    {SupplyKind::Motor3Phase, 575, 600, {"600Y/347 V", 347}},
};

} // namespace

std::optional<NominalSystem> nominalSystem(const Supply& supply) {
  for (const Range& range : kRanges) {
    if (range.kind != supply.kind || supply.volts < range.low || supply.volts > range.high)
      continue;
    if (supply.voltsToGround && *supply.voltsToGround != range.system.toGround) continue;
    return range.system;
  }
  return std::nullopt;
}

} // namespace sump
