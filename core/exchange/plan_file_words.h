#pragma once
// Enumerations as words of the plan file, by type: the tables of plan/keys.h and plan/service.h
// under one name. Private to exchange/.

#include "core/plan/keys.h"
#include "core/plan/service.h"

#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

namespace sump {

template <class E> constexpr const auto& keyTable() {
  if constexpr (std::is_same_v<E, PartKind>) return kPartKeys;
  if constexpr (std::is_same_v<E, EndFitting>) return kEndFittingKeys;
  if constexpr (std::is_same_v<E, EndKind>) return kEndKindKeys;
  if constexpr (std::is_same_v<E, BasinKind>) return kBasinKeys;
  if constexpr (std::is_same_v<E, UtilityKind>) return kUtilityKeys;
  if constexpr (std::is_same_v<E, Side>) return kSideKeys;
  if constexpr (std::is_same_v<E, UnitSystem>) return kUnitKeys;
  if constexpr (std::is_same_v<E, SoilClass>) return kSoilKeys;
  if constexpr (std::is_same_v<E, ProtectiveSystem>) return kProtectionKeys;
  if constexpr (std::is_same_v<E, SoilHold>) return kSoilHoldKeys;
  if constexpr (std::is_same_v<E, CircuitKind>) return kCircuitKeys;
  if constexpr (std::is_same_v<E, SupplyKind>) return kSupplyKeys;
  if constexpr (std::is_same_v<E, SignalKind>) return kSignalKeys;
  if constexpr (std::is_same_v<E, FacingPanel>) return kFacingPanelKeys;
}

template <class E> std::vector<std::string_view> wordsOf() {
  std::vector<std::string_view> words;
  if constexpr (std::is_same_v<E, Service>) {
    for (const ServiceFacts& row : serviceTable())
      words.push_back(row.key);
  } else {
    for (const auto& row : keyTable<E>())
      words.push_back(row.second);
  }
  return words;
}

template <class E> std::string_view wordOf(E value) {
  if constexpr (std::is_same_v<E, Service>) {
    return facts(value).key;
  } else {
    return keyIn(keyTable<E>(), value);
  }
}

template <class E> std::optional<E> fromWord(std::string_view word) {
  if constexpr (std::is_same_v<E, Service>) {
    return serviceFromKey(word);
  } else {
    return fromKey(keyTable<E>(), word);
  }
}

/// The accepted word that is nearest to a mistyped one by single-letter changes, when it is near
/// enough to be meant; else empty.
std::string_view nearestWord(std::string_view typed, const std::vector<std::string_view>& words);
/// `a, b, c` for messages.
std::string listed(const std::vector<std::string_view>& words);

} // namespace sump
