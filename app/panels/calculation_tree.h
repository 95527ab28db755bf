#pragma once
// The list beside the page of 'How it works out': sections, and in each its calculations with what
// they are of and what comes out.

#include "app/core_text.h"
#include "app/window/wrapping_tree.h"
#include "core/study/calculation_outline.h"

#include <set>
#include <string>
#include <vector>

namespace sump {

/// How the results of a list are written.
struct ResultWriting {
  UnitSystem units;
  const KeptWords& kept; ///< the plan's own names, which stay as they are
};

class CalculationTree : public WrappingTree {
  Q_OBJECT

public:
  explicit CalculationTree(QWidget* parent = nullptr);
  /// Lists these; `open` unfolds every section, else those that the user has unfolded.
  void fill(const std::vector<CalculationSection>& listed, bool open, const ResultWriting& writing);
  /// Makes the calculation or section of this number the current row, in sight.
  void mark(const std::string& number);

signals:
  /// Somebody has chosen this calculation or section.
  void chosen(const std::string& number);

private:
  void fold(const QTreeWidgetItem& item, bool open);
  bool isSameAs(const std::vector<CalculationSection>& listed) const;
  void update(const std::vector<CalculationSection>& listed, const ResultWriting& writing);
  void rebuild(const std::vector<CalculationSection>& listed, const ResultWriting& writing);

  std::set<QString> unfolded_; ///< titles of sections
  bool all_ = false;           ///< all sections are unfolded
  bool filling_ = false;
};

} // namespace sump
