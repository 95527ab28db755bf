#pragma once
// The bill of materials: what is laid, what waste adds, and what to order, with what the take-off
// alone does not hold: sticks by the cutting list, joints and cement, supports, marking, earthwork.
// Worked out on demand from Plan, Study and tables; every list and panel shows this one.

#include "core/catalog/supplies.h"
#include "core/study/cutting.h"
#include "core/study/decided.h"
#include "core/study/study.h"

#include <string>
#include <vector>

namespace sump {

/// What a line is counted in. Amounts are SI: m, m2, m3; a volume of cement is m3, too.
enum class BillUnit { Each, Length, Area, Volume, Liquid };

/// What one run or vault has of a line.
struct BillShare {
  Id from;
  double amount = 0;
};

struct BillLine {
  std::string trade;    ///< `plumbing`, `electrical`, `site work`
  std::string category; ///< as QuantityLine's, and `joint`, `cement`, `support`, `marking`, ...
  std::string key;      ///< in price lists
  std::string description;
  std::string size;
  std::string material;
  BillUnit unit = BillUnit::Each;
  Decided<double> net;   ///< in place
  double waste = 0;      ///< share added
  Decided<double> order; ///< to buy: whole pieces, whole sticks, whole cans
  int sticks = 0;        ///< of pipe
  bool bought = true;    ///< false: counted for the work alone, and has no price
  std::string note;
  std::vector<BillShare> shares; ///< add up to `net`; empty: of the site as a whole
};

/// Sizes are nominal inches, but for those of vaults and of a metric plan's manways, which carry
/// their units.
bool sizeHasUnit(const BillLine& line);

struct Bill {
  std::vector<BillLine> lines;
  /// What no line can say: thrust, runs that are not counted, where allowances come from.
  std::vector<std::string> notes;
};

Bill billOf(const Plan& plan, const Study& study, const Catalog& catalog, const Supplies& supplies,
            const CuttingList& cutting);

} // namespace sump
