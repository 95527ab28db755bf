#include "app/window/wrapping_tree.h"

#include <QHeaderView>
#include <QStyledItemDelegate>
#include <QTimer>

namespace sump {

namespace {

/// Asks for the height of the wrapped text; the tree itself asks for that of one line.
class WrappedCells : public QStyledItemDelegate {
public:
  WrappedCells(const WrappingTree& tree, int column)
      : QStyledItemDelegate(const_cast<WrappingTree*>(&tree)), tree_(tree), column_(column) {}

  QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    if (index.column() != column_) return QStyledItemDelegate::sizeHint(option, index);
    QStyleOptionViewItem wrapped(option);
    wrapped.rect = QRect(0, 0, std::max(1, tree_.roomFor(index)), 1);
    return QStyledItemDelegate::sizeHint(wrapped, index);
  }

private:
  const WrappingTree& tree_;
  int column_;
};

} // namespace

WrappingTree::WrappingTree(int wrapped, QWidget* parent) : QTreeWidget(parent) {
  setWordWrap(true);
  setUniformRowHeights(false);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setItemDelegate(new WrappedCells(*this, wrapped));
  auto* later = new QTimer(this); // once for all columns that change together
  later->setSingleShot(true);
  later->setInterval(0);
  connect(later, &QTimer::timeout, this, &QTreeView::doItemsLayout);
  connect(header(), &QHeaderView::sectionResized, later, qOverload<>(&QTimer::start));
}

int WrappingTree::roomFor(const QModelIndex& index) const {
  int inward = 0;
  if (index.column() == header()->logicalIndex(0)) {
    inward = rootIsDecorated() ? indentation() : 0;
    for (QModelIndex at = index.parent(); at.isValid(); at = at.parent())
      inward += indentation();
  }
  return columnWidth(index.column()) - inward;
}

} // namespace sump
