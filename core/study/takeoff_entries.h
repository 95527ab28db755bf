#pragma once
// The take-off before equal lines are joined: one entry for each object and item. Private to
// core/study.

#include "core/study/study.h"

#include <string>
#include <tuple>
#include <vector>

namespace sump {

struct TakeOffEntry {
  QuantityLine line;           ///< of one object; `runs` holds its id alone
  std::string key;             ///< in price lists: `pvc-sch80`, `sch80-socket:elbow-90`
  std::vector<double> lengths; ///< pipe: the cuts, m
};

std::vector<TakeOffEntry> takeOffEntries(const Plan& plan, const Catalog& catalog,
                                         const Study& study);

/// The order of lines in every list: trade, category, service, material, description, size.
using LineRank = std::tuple<std::size_t, std::size_t, int, std::string, std::string, double>;
LineRank lineRank(const std::string& trade, const std::string& category, const std::string& service,
                  const std::string& material, const std::string& description,
                  const std::string& size);

} // namespace sump
