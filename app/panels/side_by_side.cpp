#include "app/panels/side_by_side.h"

namespace sump {

SideBySide::SideBySide(ObjectTable* left, ObjectTable* right, QWidget* parent)
    : QSplitter(Qt::Horizontal, parent), left_(left), right_(right) {
  addWidget(left);
  addWidget(right);
  setChildrenCollapsible(false);
  for (ObjectTable* table : {left, right})
    connect(table, &ObjectTable::fitted, this, &SideBySide::arrange);
}

void SideBySide::resizeEvent(QResizeEvent* event) {
  QSplitter::resizeEvent(event);
  arrange();
}

/// What the columns need does not depend on where the tables stand, so this comes to rest.
void SideBySide::arrange() {
  const int left = left_->leastWidth(), right = right_->leastWidth();
  const int over = width() - handleWidth() - left - right;
  setOrientation(over < 0 ? Qt::Vertical : Qt::Horizontal);
  const bool cut = left_->width() < left || right_->width() < right;
  if (over >= 0 && cut) setSizes({left + over / 2, right + over - over / 2});
}

} // namespace sump
