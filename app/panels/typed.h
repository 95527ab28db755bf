#pragma once
// What fields make of a typed text. Private to app/panels.

#include "core/units/expression.h"

#include <QString>

#include <optional>
#include <string>

namespace sump {

inline std::string typedText(const QString& text) {
  return text.trimmed().toStdString();
}

/// In English, as the readers of core/units tell it: who shows it looks it up.
template <class V> Parsed<V> unparsed(const char* what) {
  return {std::nullopt, what};
}

} // namespace sump
