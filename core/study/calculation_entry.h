#pragma once
// Writes one calculation of the report. Private to core/study.

#include "core/study/calculation.h"
#include "core/study/decided.h"

#include <optional>
#include <string>
#include <type_traits>
#include <utility>

namespace sump {

/// A number, or a quantity in SI, as a report holds it.
template <class T> double plainNumber(const T& value) {
  if constexpr (std::is_arithmetic_v<T>) {
    return static_cast<double>(value);
  } else {
    return value.value();
  }
}

class CalculationEntry {
public:
  template <class T>
  CalculationEntry(std::string id, std::string section, std::string title, const Decided<T>& result,
                   QuantityKind kind) {
    made_.id = std::move(id);
    made_.section = std::move(section);
    made_.title = std::move(title);
    made_.kind = kind;
    made_.decided = static_cast<bool>(result);
    if (result) made_.result = plainNumber(*result);
    made_.needs = needsText(result.needs);
  }
  CalculationEntry& about(const Id& object) {
    made_.object = object;
    return *this;
  }
  CalculationEntry& formula(std::string text, std::string source) {
    made_.formula = std::move(text);
    made_.source = std::move(source);
    return *this;
  }
  /// An input that is there; one that is missing stands in `needs`.
  template <class T>
  CalculationEntry& in(std::string symbol, std::string name, const std::optional<T>& value,
                       QuantityKind kind, std::string from = "plan") {
    if (value) add(std::move(symbol), std::move(name), plainNumber(*value), kind, std::move(from));
    return *this;
  }
  template <class T>
  CalculationEntry& in(std::string symbol, std::string name, const Decided<T>& value,
                       QuantityKind kind, std::string from = "plan") {
    return in(std::move(symbol), std::move(name), value.value, kind, std::move(from));
  }
  /// An input that is always there.
  template <class T>
  CalculationEntry& has(std::string symbol, std::string name, const T& value, QuantityKind kind,
                        std::string from = "plan") {
    add(std::move(symbol), std::move(name), plainNumber(value), kind, std::move(from));
    return *this;
  }
  CalculationEntry& step(std::string text) {
    made_.steps.push_back(std::move(text));
    return *this;
  }
  Calculation take() { return std::move(made_); }

private:
  void add(std::string symbol, std::string name, double value, QuantityKind kind,
           std::string from) {
    made_.inputs.push_back({std::move(symbol), std::move(name), value, kind, std::move(from)});
  }

  Calculation made_;
};

} // namespace sump
