#pragma once
// A result that may not be decidable because an input is missing. Unknown input is never a pass and
// never a silent default, so what is missing travels with the result that lacks it.
//
// Convention of all of core/study: exactly one of `value` and `needs` is there. A need is a few
// plain words that complete "cannot be decided: needs ...", as a designer would name the input:
// `water temperature`, `pump curve`, `flow of the recirculation`. No ids, no JSON pointers, no full
// stop, no capital (but for names).
//
//     const auto head = decide([](Pressure air, Pressure vapour) { ... },
//                              airPressure, given(basis.vapour, "vapour pressure"));

#include <algorithm>
#include <concepts>
#include <optional>
#include <string>
#include <type_traits>
#include <utility>
#include <vector>

namespace sump {

using Needs = std::vector<std::string>;

/// Adds what is not yet there, keeping the order in which things were asked for.
inline void addNeeds(Needs& needs, const Needs& more) {
  for (const std::string& need : more) {
    if (std::ranges::find(needs, need) == needs.end()) needs.push_back(need);
  }
}

/// `water temperature, pump curve`
inline std::string needsText(const Needs& needs) {
  std::string text;
  for (const std::string& need : needs)
    text += (text.empty() ? "" : ", ") + need;
  return text;
}

template <class T> struct Decided {
  std::optional<T> value;
  Needs needs; ///< empty when decided
  /// Never asked for: of no use until it is assigned.
  Decided() : needs{"a calculation that was not made"} {}
  Decided(T known) : value(std::move(known)) {} // NOLINT: a known value is a decided one
  explicit operator bool() const { return value.has_value(); }
  const T& operator*() const { return *value; }
  const T* operator->() const { return &*value; }
  bool operator==(const Decided&) const = default;
};

/// `needs` must not be empty.
template <class T> Decided<T> undecided(Needs needs) {
  Decided<T> result;
  result.needs = std::move(needs);
  return result;
}

/// An input of the plan, or what to ask for.
template <class T> Decided<T> given(const std::optional<T>& input, std::string need) {
  if (input) return *input;
  return undecided<T>({std::move(need)});
}

namespace detail {
template <class R> struct Undecorated { using type = R; };
template <class T> struct Undecorated<Decided<T>> { using type = T; };
} // namespace detail

/// `work` on the values when all are there; otherwise everything that any of them needs. `work`
/// may itself return a Decided.
template <class Work, class... T> auto decide(Work&& work, const Decided<T>&... parts) {
  using Result =
      typename detail::Undecorated<std::remove_cvref_t<std::invoke_result_t<Work, T...>>>::type;
  if ((parts.value.has_value() && ...)) return Decided<Result>(work(*parts.value...));
  Needs needs;
  (addNeeds(needs, parts.value ? Needs{} : parts.needs), ...);
  return undecided<Result>(std::move(needs));
}

} // namespace sump
