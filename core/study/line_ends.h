#pragma once
// What a line needs beside its pipe, fittings and parts: adapters and bells where conduit ends, the
// float at the end of its conduit, and the boxes through which buried valves are reached. For
// take-off and bill.

#include "core/study/study.h"

#include <string>
#include <string_view>
#include <vector>

namespace sump {

/// Stands for the material of what comes with the equipment, so that nobody else buys it too.
inline constexpr std::string_view kBySupplier = "By the equipment supplier";
/// Comes with the equipment: the eductor and the float.
bool isBySupplier(std::string_view key);

struct LineItem {
  std::string category; ///< as QuantityLine's
  std::string key;
  std::string description;
  std::string size; ///< nominal, or empty
  std::string material;
};

/// Of a run that could be worked out. An end of conduit that lies in the open, of which the plan
/// does not say what it goes into, has none.
std::vector<LineItem> lineItems(const Plan& plan, const Study& study, const Run& run,
                                const RunStudy& line);
/// The adapters and bells alone; each is cemented to the conduit.
std::vector<LineItem> conduitEnds(const Run& run, const RunStudy& line);

} // namespace sump
