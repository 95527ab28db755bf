#pragma once
// From a Review to pages.

#include "core/rules/review.h"
#include "core/sheet/page.h"
#include "core/study/plan_changes.h"

#include <string>
#include <string_view>
#include <vector>

namespace sump {

/// One kind of sheet of the set; it may take several pages, numbered on.
struct SheetKind {
  std::string_view key;    ///< by which it is chosen: `excavation`
  std::string_view series; ///< discipline and type of its number: `C-1` of C-102
  std::string_view title;
};
/// In the order of the set. Discipline letters and types of sheet as in the US National CAD
/// Standard's sheet identification (G general, C civil, P plumbing, E electrical; 0 general,
/// 1 plans, 3 sections, 4 large scale, 5 details, 6 schedules).
const std::vector<SheetKind>& sheetKinds();

struct SheetOptions {
  std::string paper = "arch-d"; ///< a PaperSize key
  double scale =
      0; ///< of the plans, denominator, 120 for 1:120; 0: the largest standard one that fits
  const Catalog* catalog = nullptr; ///< names of materials; null: the built-in catalogue
  /// Which sheets: keys of kinds (`plan`), letters of disciplines (`P`), series (`P-1`) or numbers
  /// (`P-101`), in any case; empty: all. Numbers are those of the whole set.
  std::vector<std::string> sheets{};
  /// What changed since an earlier plan: clouded on the plan, listed with the revisions; null: the
  /// set shows no changes.
  const PlanComparison* changes = nullptr;
};

/// The sheet set. Throws std::invalid_argument for an unknown paper size or sheet, and for paper
/// too small for a table's columns.
std::vector<Page> composeSheets(const Review& review, const SheetOptions& options);

} // namespace sump
