#pragma once
// What the things to buy cost, in words: command line and window tell the same.

#include "core/exchange/buy_list.h"

#include <string>
#include <vector>

namespace sump {

struct CostWords {
  std::vector<std::string> byTrade; ///< `plumbing: USD 1,234.50`
  std::string total;                ///< `USD 2,345.60`; what has no price is not in it
  /// Items to buy that have no price or whose amount cannot be decided: `sch80-socket:tee (6)`.
  std::vector<std::string> missing;
};

/// The list must have costs.
CostWords costWords(const BuyList& buy);

} // namespace sump
