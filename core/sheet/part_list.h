#pragma once
// The numbers and names of all parts. Private to core/sheet.

#include "core/sheet/sheet_set.h"
#include "core/study/part_place.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

/// A valve or another part set in a run or at its end. Its number, counted from 1 in the order of
/// the list, stands in the table of parts and on the plan.
struct ListedPart {
  std::string mark; ///< the part's own, or the end of the run that it is at
  Id run;
  std::string size; ///< as it is printed
  std::optional<PartPlace> where;
  std::string what;
};
/// Run by run from start to end.
std::vector<ListedPart> listedParts(const SheetJob& job);

/// The words of a catalogue part, or its key.
std::string partName(const Catalog& catalog, std::string_view key);

} // namespace sump
