#pragma once
// Text of the plan's, as the window's: names, ids and printed values, which are not translated; and
// the names of files.

#include <QString>

#include <filesystem>
#include <string_view>

namespace sump {

inline QString q(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

inline std::filesystem::path pathOf(const QString& file) {
  return std::filesystem::path(file.toStdU16String());
}

} // namespace sump
