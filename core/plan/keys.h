#pragma once
// The words by which enumerations stand in files and lists.

#include "core/plan/plan.h"

#include <array>
#include <optional>
#include <string_view>
#include <utility>

namespace sump {

template <class E, std::size_t N> using KeyTable = std::array<std::pair<E, std::string_view>, N>;

inline constexpr KeyTable<PartKind, 13> kPartKeys = {{
    {PartKind::Union, "union"},
    {PartKind::BallValve, "ball-valve"},
    {PartKind::GateValve, "gate-valve"},
    {PartKind::CheckValve, "check-valve"},
    {PartKind::BackwaterValve, "backwater-valve"},
    {PartKind::ReducedPressureAssembly, "reduced-pressure-assembly"},
    {PartKind::DoubleCheck, "double-check"},
    {PartKind::AirGap, "air-gap"},
    {PartKind::Strainer, "strainer"},
    {PartKind::Cleanout, "cleanout"},
    {PartKind::Reducer, "reducer"},
    {PartKind::PullBox, "pull-box"},
    {PartKind::SolenoidValve, "solenoid-valve"},
}};

inline constexpr KeyTable<EndFitting, 9> kEndFittingKeys = {{
    {EndFitting::Plain, "plain"},
    {EndFitting::Tee, "tee"},
    {EndFitting::ElbowDown, "elbow-down"},
    {EndFitting::ElbowUp, "elbow-up"},
    {EndFitting::FootValve, "foot-valve"},
    {EndFitting::Strainer, "strainer"},
    {EndFitting::Eductor, "eductor"},
    {EndFitting::Cap, "cap"},
    {EndFitting::ScreenedVent, "screened-vent"},
}};

inline constexpr KeyTable<EndKind, 7> kEndKindKeys = {{
    {EndKind::Free, "free"},
    {EndKind::Chamber, "chamber"},
    {EndKind::Basin, "basin"},
    {EndKind::Sewer, "sewer"},
    {EndKind::Port, "port"},
    {EndKind::Wash, "wash"},
    {EndKind::Run, "run"},
}};

inline constexpr KeyTable<BasinKind, 2> kBasinKeys = {{
    {BasinKind::CatchBasin, "catch-basin"},
    {BasinKind::TrenchDrain, "trench-drain"},
}};

inline constexpr KeyTable<UtilityKind, 7> kUtilityKeys = {{
    {UtilityKind::PotableWater, "potable-water"},
    {UtilityKind::Sewer, "sewer"},
    {UtilityKind::StormDrain, "storm-drain"},
    {UtilityKind::Gas, "gas"},
    {UtilityKind::Electric, "electric"},
    {UtilityKind::Communication, "communication"},
    {UtilityKind::Other, "other"},
}};

inline constexpr KeyTable<Side, 4> kSideKeys = {{
    {Side::South, "south"},
    {Side::East, "east"},
    {Side::North, "north"},
    {Side::West, "west"},
}};

inline constexpr KeyTable<UnitSystem, 2> kUnitKeys = {{
    {UnitSystem::UsCustomary, "us-customary"},
    {UnitSystem::Metric, "metric"},
}};

inline constexpr KeyTable<SoilClass, 4> kSoilKeys = {{
    {SoilClass::StableRock, "stable-rock"},
    {SoilClass::TypeA, "type-a"},
    {SoilClass::TypeB, "type-b"},
    {SoilClass::TypeC, "type-c"},
}};

inline constexpr KeyTable<ProtectiveSystem, 5> kProtectionKeys = {{
    {ProtectiveSystem::None, "none"},
    {ProtectiveSystem::Sloped, "sloped"},
    {ProtectiveSystem::Shored, "shored"},
    {ProtectiveSystem::Shielded, "shielded"},
    {ProtectiveSystem::Engineered, "engineered"},
}};

inline constexpr KeyTable<SoilHold, 3> kSoilHoldKeys = {{
    {SoilHold::LidOnly, "lid-only"},
    {SoilHold::Column, "column"},
    {SoilHold::Wedge, "wedge"},
}};

inline constexpr KeyTable<CircuitKind, 3> kCircuitKeys = {{
    {CircuitKind::Power, "power"},
    {CircuitKind::Control, "control"},
    {CircuitKind::Class2, "class-2"},
}};

inline constexpr KeyTable<SupplyKind, 2> kSupplyKeys = {{
    {SupplyKind::Control1Phase, "control-1-phase"},
    {SupplyKind::Motor3Phase, "motor-3-phase"},
}};

inline constexpr KeyTable<SignalKind, 4> kSignalKeys = {{
    {SignalKind::Dc24, "24-v-dc"},
    {SignalKind::Ac24, "24-v-ac"},
    {SignalKind::Ac110, "110-v-ac"},
    {SignalKind::Ac220, "220-v-ac"},
}};

inline constexpr KeyTable<FacingPanel, 3> kFacingPanelKeys = {{
    {FacingPanel::Insulated, "insulated"},
    {FacingPanel::Grounded, "grounded"},
    {FacingPanel::LiveParts, "live-parts"},
}};

template <class E, std::size_t N>
constexpr std::string_view keyIn(const KeyTable<E, N>& table, E value) {
  for (const auto& [item, word] : table) {
    if (item == value) return word;
  }
  return {};
}

template <class E, std::size_t N>
constexpr std::optional<E> fromKey(const KeyTable<E, N>& table, std::string_view word) {
  for (const auto& [item, key] : table) {
    if (key == word) return item;
  }
  return std::nullopt;
}

constexpr std::string_view key(PartKind kind) {
  return keyIn(kPartKeys, kind);
}
constexpr std::string_view key(EndFitting fitting) {
  return keyIn(kEndFittingKeys, fitting);
}

} // namespace sump
