#pragma once
// The text files under resources/ that are built into the program (see resources/embed.cmake).

#include <string_view>
#include <vector>

namespace sump {

/// The bytes of `resources/<name>`, e.g. `catalog/pipes.json`; empty when there is no such file.
std::string_view embeddedText(std::string_view name);
std::vector<std::string_view> embeddedNames();

} // namespace sump
