#pragma once
// One calculation as a block of a report page. Private to core/sheet.

#include "core/plan/plan.h"
#include "core/sheet/report_flow.h"
#include "core/study/calculation_outline.h"
#include "core/units/quantity.h"

#include <string>
#include <unordered_map>
#include <vector>

namespace sump {

/// A cell of a row: its text is broken into lines no wider than the cell.
struct RowCell {
  double left = 0; ///< mm
  double width = 0;
  std::string text;
  Align align = Align::Left;
  bool bold = false;
  Ink ink = Ink::Black;
};
/// The row as strips of one line each, so that even a very long text can be carried on.
std::vector<PaperStrip> rowStrips(const std::vector<RowCell>& cells, double height = kTextHeight);
void appendStrips(std::vector<PaperStrip>& to, std::vector<PaperStrip> more);

/// Objects as the sheets call them; the id, which formulas and steps use, beside it where it
/// differs. Others by their names. The plan must outlive it.
class ObjectNames {
public:
  explicit ObjectNames(const Plan& plan);
  std::string of(const Id& id) const;

private:
  const Plan& plan_;
  std::unordered_map<Id, std::string> names_;
};

/// Title, formula, inputs, steps, result and source, `width` mm wide.
FlowPiece calculationPiece(const CalculationOutline& outline, const ObjectNames& names,
                           const NumberedCalculation& entry, UnitSystem units, double width);

} // namespace sump
