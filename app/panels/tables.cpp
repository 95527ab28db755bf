#include "app/panels/tables.h"

#include "app/window/glossary.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QScrollBar>

namespace sump {

ObjectTable::ObjectTable(const QStringList& headings, const QString& accessibleName,
                         QWidget* parent)
    : QTableWidget(0, static_cast<int>(headings.size()), parent) {
  setAccessibleName(accessibleName);
  QStringList plain;
  for (const QString& heading : headings) {
    figures_.push_back(heading.startsWith('>'));
    plain << (figures_.back() ? heading.mid(1) : heading);
  }
  setHorizontalHeaderLabels(plain);
  for (int c = 0; c < columnCount(); ++c) {
    const bool figure = figures_[static_cast<std::size_t>(c)];
    horizontalHeaderItem(c)->setToolTip(tipWithTerms(plain[c], {}));
    horizontalHeaderItem(c)->setTextAlignment((figure ? Qt::AlignRight : Qt::AlignLeft) |
                                              Qt::AlignVCenter);
  }
  verticalHeader()->hide();
  verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 8);
  horizontalHeader()->setHighlightSections(false);
  setSelectionBehavior(QAbstractItemView::SelectRows);
  setSelectionMode(QAbstractItemView::SingleSelection);
  setEditTriggers(QAbstractItemView::NoEditTriggers);
  setShowGrid(false);
  setAlternatingRowColors(true);
  setTabKeyNavigation(false); // Tab leaves the table, arrows move in it
  setWordWrap(false);
  setFrameShape(QFrame::NoFrame);
  connect(this, &QTableWidget::cellClicked, this, [this](int row, int) { emit chosen(row); });
}

void ObjectTable::fill(const std::vector<TableRow>& rows, int wide) {
  const int current = currentRow();
  const int scroll = verticalScrollBar()->value();
  rows_ = rows;
  clearContents();
  setRowCount(static_cast<int>(rows.size()));
  for (int r = 0; r < rowCount(); ++r) {
    const TableRow& row = rows_[static_cast<std::size_t>(r)];
    for (int c = 0; c < columnCount(); ++c) {
      auto* item = new QTableWidgetItem(row.cells.value(c));
      const bool figure = figures_[static_cast<std::size_t>(c)];
      item->setTextAlignment((figure ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
      item->setToolTip(row.tip.isEmpty() ? row.cells.value(c) : row.tip);
      setItem(r, c, item);
    }
  }
  wide_ = wide;
  spread();
  if (current >= 0 && current < rowCount()) setCurrentCell(current, 0);
  verticalScrollBar()->setValue(scroll);
}

/// Every column as wide as it needs; one takes what is left, but never less than its heading and a
/// readable part of its text, so that a narrow table scrolls instead.
void ObjectTable::spread() {
  constexpr int kReadable = 120;
  int left = viewport()->width();
  for (int c = 0; c < columnCount(); ++c) {
    horizontalHeader()->setSectionResizeMode(c, c == wide_ ? QHeaderView::Interactive
                                                           : QHeaderView::ResizeToContents);
    if (c != wide_) left -= horizontalHeader()->sectionSize(c);
  }
  const int heading = horizontalHeader()->sectionSizeHint(wide_);
  const int needed = std::max(heading, std::min(sizeHintForColumn(wide_), kReadable));
  horizontalHeader()->resizeSection(wide_, std::max(left, needed));
}

void ObjectTable::resizeEvent(QResizeEvent* event) {
  QTableWidget::resizeEvent(event);
  spread();
}

void ObjectTable::keyPressEvent(QKeyEvent* event) {
  const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
  if (enter && currentRow() >= 0) {
    emit chosen(currentRow());
    return;
  }
  QTableWidget::keyPressEvent(event);
}

QLabel* emptyNote(const QString& text, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setAlignment(Qt::AlignCenter);
  label->setWordWrap(true);
  return label;
}

} // namespace sump
