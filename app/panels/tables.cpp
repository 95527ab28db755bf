#include "app/panels/tables.h"

#include "app/window/glossary.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QScrollBar>

namespace sump {

namespace {

/// Column widths follow the rows in sight and some more; measuring thousands takes longer than a
/// frame of a drag.
constexpr int kMeasuredRows = 60;

bool same(const TableRow& a, const TableRow& b) {
  return a.cells == b.cells && a.tip == b.tip && a.objects == b.objects;
}

/// Where two lists differ: `before` rows from `at` on are replaced by `after` others.
struct Middle {
  std::size_t at, before, after;
};
Middle changed(const std::vector<TableRow>& old, const std::vector<TableRow>& now) {
  const std::size_t least = std::min(old.size(), now.size());
  std::size_t head = 0, tail = 0;
  while (head < least && same(old[head], now[head]))
    ++head;
  while (tail < least - head && same(old[old.size() - 1 - tail], now[now.size() - 1 - tail]))
    ++tail;
  return {head, old.size() - head - tail, now.size() - head - tail};
}

} // namespace

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
  horizontalHeader()->setResizeContentsPrecision(kMeasuredRows);
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
  // A drag fills the list at every review: only what lies between the rows that stay is written.
  const Middle middle = changed(rows_, rows);
  const int at = static_cast<int>(middle.at);
  if (middle.after > middle.before)
    model()->insertRows(at + static_cast<int>(middle.before),
                        static_cast<int>(middle.after - middle.before));
  if (middle.before > middle.after)
    model()->removeRows(at + static_cast<int>(middle.after),
                        static_cast<int>(middle.before - middle.after));
  rows_ = rows;
  for (int r = at; r < at + static_cast<int>(middle.after); ++r) {
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
    if (c == wide_) continue;
    const int needs = std::max(sizeHintForColumn(c), horizontalHeader()->sectionSizeHint(c));
    horizontalHeader()->resizeSection(c, needs);
    left -= needs;
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
