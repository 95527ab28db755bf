#pragma once
// What the sheet of the digs says of each: what it comes near, and what the check found. Private to
// core/sheet.

#include "core/sheet/sheet_set.h"

#include <string>
#include <vector>

namespace sump {

/// Findings about the digs: who accepted them and why, or that they are open and what to do.
std::vector<std::string> digFindings(const SheetJob& job);
/// What the digs cut or come near, by name, and the footings that they pass.
std::vector<std::string> digNeighbours(const SheetJob& job);

} // namespace sump
