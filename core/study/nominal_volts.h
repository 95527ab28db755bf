#pragma once
// Nominal voltages of supply systems: equipment is named by less volts than the system that feeds
// it.

#include "core/plan/basis.h"

#include <optional>
#include <string_view>

namespace sump {

struct NominalSystem {
  std::string_view name; ///< `480Y/277 V`
  int toGround;          ///< volts
};

/// The system that feeds equipment of these volts: NFPA 70 220.5(A) lists 120, 120/240, 208Y/120,
/// 480Y/277 and 600Y/347 V, ANSI C84.1 the equipment's 110 to 575 V on them, IEC 60038 230/400 V
/// (from memory). Of two systems the first, unless the plan's volts to ground are the other's.
/// Nothing for three-phase 220 to 240 V, where systems differ in their volts to ground, and where
/// the plan states volts to ground that are no such system's.
std::optional<NominalSystem> nominalSystem(const Supply& supply);

} // namespace sump
