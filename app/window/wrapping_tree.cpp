#include "app/window/wrapping_tree.h"

#include <QHeaderView>
#include <QScrollBar>
#include <QStyledItemDelegate>
#include <QTimer>
#include <QWheelEvent>

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

WrappingTree::WrappingTree(int wrapped, QWidget* parent)
    : QTreeWidget(parent), later_(new QTimer(this)) {
  setWordWrap(true);
  setUniformRowHeights(false);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setItemDelegate(new WrappedCells(*this, wrapped));
  later_->setSingleShot(true); // once for all columns that change together
  later_->setInterval(0);
  connect(later_, &QTimer::timeout, this, &WrappingTree::layOut);
  connect(header(), &QHeaderView::sectionResized, later_, qOverload<>(&QTimer::start));
  connect(verticalScrollBar(), &QScrollBar::actionTriggered, this, [this] { following_ = false; });
}

void WrappingTree::followCurrent() {
  following_ = true;
  later_->start();
}

/// Only when its rows have been wrapped are their places known.
void WrappingTree::layOut() {
  doItemsLayout();
  if (!following_ || currentItem() == nullptr) return;
  scrollToItem(currentItem());
  // That takes all rows to be as high as the last ones.
  if (visualItemRect(currentItem()).bottom() > viewport()->rect().bottom())
    scrollToItem(currentItem(), PositionAtBottom);
}

void WrappingTree::resizeEvent(QResizeEvent* event) {
  QTreeWidget::resizeEvent(event);
  if (following_) later_->start();
}

void WrappingTree::wheelEvent(QWheelEvent* event) {
  following_ = false;
  QTreeWidget::wheelEvent(event);
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
