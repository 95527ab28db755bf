#pragma once
// What a run carries, and the names by which files, sheets and people know it.

#include <array>
#include <optional>
#include <string_view>

namespace sump {

/// Runs are directed: `from` to `to` is the direction of flow (of the pull, for conduits).
enum class Service {
  Inlet,         ///< wash water by gravity from a basin to vault 1, chamber 1
  Interconnect,  ///< through a baffle, chamber to chamber of one vault
  Link,          ///< high-level pipe between vaults, with a drop to mid-depth
  Suction,       ///< last chamber to the pump
  SpareSuction,  ///< second suction, capped or valved at the equipment
  Recirculation, ///< pump to the eductor in vault 1, chamber 2
  Underflow,     ///< flush from the equipment back to a basin or to vault 1, chamber 1
  FloatConduit,  ///< low-level float cable from the last chamber
  Overflow,      ///< last vault to the sewer
  MakeUp,        ///< fresh water to the equipment
  Product,       ///< reclaimed water from the equipment to the wash
  Vent,          ///< vault air to atmosphere
  Power,         ///< supply conduit to the equipment
  Signal,        ///< wash-demand signal conduit
};
inline constexpr std::size_t kServiceCount = 14;

/// How water moves in it (or that none does).
enum class Drive { Gravity, Suction, Pressure, Air, Conduit };

/// APWA Uniform Color Code groups.
enum class UtilityColor { White, Pink, Red, Yellow, Orange, Blue, Purple, Green };

struct ServiceFacts {
  Service service;
  std::string_view key;  ///< in the plan file
  std::string_view code; ///< letters on the drawing
  std::string_view name; ///< in English, sentence case
  Drive drive;
  UtilityColor color;
  std::string_view trade; ///< `plumbing` or `electrical`
};

/// In the order of the enumeration.
const std::array<ServiceFacts, kServiceCount>& serviceTable();
const ServiceFacts& facts(Service service);
std::optional<Service> serviceFromKey(std::string_view key);

/// Buried water under the ground that is levelled by invert and falls with the flow.
bool isGravity(Service service);
bool isConduit(Service service);

} // namespace sump
