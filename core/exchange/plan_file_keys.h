#pragma once
// The known keys of each struct of the plan file, taken from its description. Private to exchange/.

#include "core/exchange/plan_file_fields.h"

#include <string_view>
#include <vector>

namespace sump {

struct KnownKey {
  std::string_view key;
  bool needed = false;
};

/// A visitor that lists the keys.
struct KeyCollector {
  std::vector<KnownKey> keys;
  template <class V> void need(std::string_view key, V&, std::string_view) {
    keys.push_back({key, true});
  }
  template <class V> void may(std::string_view key, V&, std::string_view) {
    keys.push_back({key, false});
  }
};

template <class T> std::vector<KnownKey> collectKeys() {
  KeyCollector collector;
  if constexpr (std::same_as<T, Plan>) collector.keys = {{"format", true}, {"version", true}};
  const T blank{};
  describe(collector, blank);
  return collector.keys;
}

/// In file order.
template <class T> const std::vector<KnownKey>& knownKeys() {
  static const std::vector<KnownKey> keys = collectKeys<T>();
  return keys;
}

} // namespace sump
