#pragma once
// How a changed value is told: printed in the project's units, exactly where that would not show
// the difference, and what kind of change its field makes. Private to exchange/.

#include "core/exchange/json_text.h"
#include "core/exchange/plan_file_words.h"
#include "core/study/plan_changes.h"
#include "core/units/print.h"

#include <cmath>
#include <string>
#include <string_view>
#include <type_traits>

namespace sump {

/// `lidThickness` as `lid thickness`; `vertices` as `corners`; `from` and `to` as start and end.
std::string fieldWords(std::string_view key);
/// An elevation on the site datum, by the field's key.
bool isElevation(std::string_view key);
ChangeKind lengthKind(std::string_view key);
ChangeKind textKind(std::string_view key);

/// The number that the plan file holds for it; two plans whose files are alike are alike.
inline double filed(double v) {
  return v;
}
inline double filed(int v) {
  return v;
}
inline double filed(Angle v) {
  return inDegrees(v);
}
inline double filed(Temperature v) {
  return inCelsius(v);
}
template <class U> double filed(bu::quantity<U> v) {
  return v.value();
}

/// The plan file's rounding, a nanometre.
inline bool sameNumber(double a, double b) {
  return a == b || numberText(a) == numberText(b);
}
inline bool sameValue(Point2 a, Point2 b) {
  return sameNumber(a.x, b.x) && sameNumber(a.y, b.y);
}
template <class V> bool sameValue(const V& a, const V& b) {
  if constexpr (requires { filed(a); }) {
    return sameNumber(filed(a), filed(b));
  } else {
    return a == b;
  }
}

std::string printedValue(std::string_view key, Length v, UnitSystem units);
std::string printedValue(std::string_view key, Angle v, UnitSystem units);
std::string printedValue(std::string_view key, Flow v, UnitSystem units);
std::string printedValue(std::string_view key, Pressure v, UnitSystem units);
std::string printedValue(std::string_view key, Volume v, UnitSystem units);
std::string printedValue(std::string_view key, Mass v, UnitSystem units);
std::string printedValue(std::string_view key, Temperature v, UnitSystem units);
std::string printedValue(std::string_view key, double v, UnitSystem units);
std::string printedValue(std::string_view key, int v, UnitSystem units);
std::string printedValue(std::string_view key, bool v, UnitSystem units);
std::string printedValue(std::string_view key, const std::string& v, UnitSystem units);
std::string printedValue(std::string_view key, const Base64& v, UnitSystem units);
template <class E>
requires std::is_enum_v<E> std::string printedValue(std::string_view, E v, UnitSystem) {
  return std::string(wordOf(v));
}
/// On the site `E 12'-0", N 3'-0"`, else `along 12'-0", across 3'-0"`.
std::string printedPoint(Point2 p, bool local, UnitSystem units);

/// `2'-0" toward N 45° E`: by the plan's own grid, north its y. Without `bearing` the distance
/// only.
std::string printedMove(Point2 by, bool bearing, UnitSystem units);
/// `+0.25`, `-1'-0"`.
std::string printedStep(std::string_view key, Length by, UnitSystem units);

template <class V>
std::string printedDifference(std::string_view key, const V& b, const V& a, UnitSystem units) {
  if constexpr (std::is_same_v<V, Length>) {
    return printedStep(key, a - b, units);
  } else if constexpr (std::is_same_v<V, bool> || std::is_enum_v<V> ||
                       std::is_same_v<V, Temperature>) {
    return {};
  } else if constexpr (requires { filed(a); }) {
    return (filed(a) > filed(b) ? "+" : "-") +
           printedValue(key, a > b ? V(a - b) : V(b - a), units);
  } else {
    return {};
  }
}

/// Before and after as printed; where both would read alike, as filed.
template <class V>
std::pair<std::string, std::string> printedPair(std::string_view key, const V& b, const V& a,
                                                UnitSystem units) {
  std::pair<std::string, std::string> text{printedValue(key, b, units),
                                           printedValue(key, a, units)};
  if (text.first != text.second) return text;
  if constexpr (requires { filed(a); }) {
    return {text.first + " (" + numberText(filed(b)) + ")",
            text.second + " (" + numberText(filed(a)) + ")"};
  } else {
    text.second += " (another of this size)"; // pictures only
    return text;
  }
}

} // namespace sump
