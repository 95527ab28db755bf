#pragma once
// The basis of the calculations (core/plan/basis.h) as a form: every figure with its field, what
// cannot be decided while it is unknown, and the small tables. Knows no widget.

#include "app/panels/field.h"

#include <functional>
#include <vector>

namespace sump {

/// One figure.
struct BasisItem {
  std::string key; ///< its place in the plan file: `water.temperature`, `site.groundwater`
  Field field;
  QString need; ///< what cannot be decided without it; empty: nothing waits for it
  bool known = true;
};

/// A list of things that are alike, one a row.
struct BasisTable {
  std::string key; ///< `demand.devices`
  QString title;
  QString noun; ///< `wash device`, for the steps of undo
  QString need; ///< what cannot be decided while the table is empty
  QStringList headings;
  std::vector<std::vector<Field>> rows; ///< cells in the order of the headings
  /// Cells of a row that does not exist yet, all empty.
  std::vector<Field> draft;
  std::vector<int> required;            ///< columns without which a row is none
  std::function<Plan(const Plan&)> add; ///< appends a row whose cells are then written
  std::function<Plan(const Plan&, std::size_t)> remove;
};

struct BasisGroup {
  QString title;
  QString lead; ///< one sentence of caution or advice; may be empty
  std::vector<BasisItem> items;
  std::vector<BasisTable> tables;
  /// How many figures and tables something waits for.
  int unknown() const;
};

std::vector<BasisGroup> basisGroups(const FieldContext& context);

/// Appends a row with these texts (by column; empty ones are left as they are), or says why not.
FieldResult addBasisRow(const FieldContext& context, const BasisTable& table,
                        const std::vector<QString>& texts);

/// The key of the figure or table that a sentence such as `needs the water temperature` names;
/// empty when it names none. The longest name wins.
std::string basisKeyNamed(const std::vector<BasisGroup>& groups, const QString& sentence);

BasisGroup waterGroup(const FieldContext& context);
BasisGroup demandGroup(const FieldContext& context);
BasisGroup pumpGroup(const FieldContext& context);
BasisGroup freshWaterGroup(const FieldContext& context);
BasisGroup groundGroup(const FieldContext& context);
BasisGroup wiringGroup(const FieldContext& context);

} // namespace sump
