#include "app/panels/tables.h"

#include "app/window/glossary.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QRegularExpression>
#include <QScrollBar>

#include <numeric>

namespace sump {

namespace {

/// Column widths follow the rows in sight and some more; measuring thousands takes longer than a
/// frame of a drag.
constexpr int kMeasuredRows = 60;

/// A drag changes a few figures in a list at every step: columns only grow then, and are shared out
/// anew when it rests.
constexpr std::size_t kMeasuredCells = 24;
constexpr int kRestMs = 250;

/// Where two lists differ: `before` rows from `at` on are replaced by `after` others.
struct Middle {
  std::size_t at, before, after;
};
Middle changed(const std::vector<TableRow>& old, const std::vector<TableRow>& now) {
  const std::size_t least = std::min(old.size(), now.size());
  std::size_t head = 0, tail = 0;
  while (head < least && old[head] == now[head])
    ++head;
  while (tail < least - head && old[old.size() - 1 - tail] == now[now.size() - 1 - tail])
    ++tail;
  return {head, old.size() - head - tail, now.size() - head - tail};
}

/// In two lines where it is long: what stands below is often short, and its column need not be
/// wider.
QString folded(const QString& heading) {
  constexpr qsizetype kLong = 8;
  if (heading.size() <= kLong) return heading;
  qsizetype best = -1;
  for (qsizetype at = heading.indexOf(' '); at >= 0; at = heading.indexOf(' ', at + 1)) {
    if (best < 0 || std::abs(2 * at - heading.size()) < std::abs(2 * best - heading.size()))
      best = at;
  }
  return best < 0 ? heading : heading.left(best) + '\n' + heading.mid(best + 1);
}

/// The widest that the columns which may be narrowed (`least` below `needs`) can be, so that all of
/// them together take no more than `room`.
int widthToFit(const std::vector<int>& needs, const std::vector<int>& least, int room) {
  int low = 0, high = std::ranges::max(needs);
  while (low < high) {
    const int tried = (low + high + 1) / 2;
    int all = 0;
    for (std::size_t c = 0; c < needs.size(); ++c)
      all += std::min(needs[c], std::max(least[c], tried));
    (all <= room ? low : high) = all <= room ? tried : tried - 1;
  }
  return low;
}

} // namespace

ObjectTable::ObjectTable(const QStringList& headings, const QString& accessibleName,
                         QWidget* parent)
    : QTableWidget(0, static_cast<int>(headings.size()), parent) {
  setAccessibleName(accessibleName);
  QStringList plain;
  for (const QString& heading : headings) {
    figures_.push_back(heading.startsWith('>'));
    plain << folded(figures_.back() ? heading.mid(1) : heading);
  }
  setHorizontalHeaderLabels(plain);
  for (int c = 0; c < columnCount(); ++c) {
    const bool figure = figures_[static_cast<std::size_t>(c)];
    horizontalHeaderItem(c)->setToolTip(tipWithTerms(QString(plain[c]).replace('\n', ' '), {}));
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
  setFrameShape(QFrame::NoFrame);
  spreadLater_.setObjectName("columnsRest");
  spreadLater_.setSingleShot(true);
  spreadLater_.setInterval(kRestMs);
  connect(&spreadLater_, &QTimer::timeout, this, &ObjectTable::spread);
  connect(this, &QTableWidget::cellClicked, this, [this](int row, int) { emit chosen(row); });
}

void ObjectTable::fill(const std::vector<TableRow>& rows, int wide) {
  const int current = currentRow();
  const int scroll = verticalScrollBar()->value();
  // A drag fills the list at every review: only what lies between the rows that stay is written.
  const Middle middle = changed(rows_, rows);
  const int at = static_cast<int>(middle.at);
  const int before = static_cast<int>(middle.before), after = static_cast<int>(middle.after);
  if (before == 0 && after == 0 && wide == wide_) return;
  const bool first = rows_.empty();
  if (wide != wide_) {
    fold(0);
    wide_ = wide;
  }
  const std::vector<QModelIndex> written = replaceRows(at, rows, before, after);
  if (before != after) {
    rows_ = rows;
  } else {
    std::copy(rows.begin() + at, rows.begin() + at + after, rows_.begin() + at);
  }
  if (first) {
    spread();
  } else {
    widen(written);
    spreadLater_.start();
  }
  if (before == after) return; // the place is the same
  if (current >= 0 && current < rowCount()) setCurrentCell(current, 0);
  verticalScrollBar()->setValue(scroll);
}

/// Rows that stay where they are keep their items. Returns the cells whose text is new.
std::vector<QModelIndex> ObjectTable::replaceRows(int at, const std::vector<TableRow>& rows,
                                                  int before, int after) {
  std::vector<QModelIndex> written;
  if (after > before) model()->insertRows(at + before, after - before);
  if (before > after) model()->removeRows(at + after, before - after);
  for (int r = at; r < at + after; ++r) {
    const TableRow& row = rows[static_cast<std::size_t>(r)];
    if (before == after && row == rows_[static_cast<std::size_t>(r)]) continue;
    for (int c = 0; c < columnCount(); ++c) {
      QTableWidgetItem* item = this->item(r, c);
      const QString text = cellText(row, c);
      if (item == nullptr) {
        item = new QTableWidgetItem(text);
        const bool figure = figures_[static_cast<std::size_t>(c)];
        item->setTextAlignment((figure ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
        setItem(r, c, item);
        written.push_back(model()->index(r, c));
      } else if (item->text() != text) {
        item->setText(text);
        written.push_back(model()->index(r, c));
      }
      const QString tip = row.tip.isEmpty() ? text : row.tip;
      if (item->toolTip() != tip) item->setToolTip(tip);
    }
  }
  return written;
}

/// Makes columns wider where these cells need it. They shrink when the drag rests.
void ObjectTable::widen(const std::vector<QModelIndex>& cells) {
  QStyleOptionViewItem option;
  initViewItemOption(&option);
  std::size_t measured = 0;
  for (const QModelIndex& cell : cells) {
    // Texts may be narrower than they need (spread); figures never.
    if (cell.column() == wide_ || !figures_[static_cast<std::size_t>(cell.column())]) continue;
    if (++measured > kMeasuredCells) continue;
    const int needs = itemDelegateForIndex(cell)->sizeHint(option, cell).width();
    if (needs > columnWidth(cell.column())) return spread();
  }
}

/// The first column tells the rows apart; figures are compared down their column.
bool ObjectTable::mayFold(int column) const {
  return folds_ && column > 0 && column != wide_ && !figures_[static_cast<std::size_t>(column)];
}

/// Does it stand below the wide one's text while so many do?
bool ObjectTable::isFolded(int column, int folded) const {
  int later = 0;
  for (int c = columnCount() - 1; c > column; --c)
    later += mayFold(c) ? 1 : 0;
  return mayFold(column) && later < folded;
}

QString ObjectTable::cellText(const TableRow& row, int column, int folded) const {
  QString text = row.cells.value(column);
  for (int c = 0; column == wide_ && c < columnCount(); ++c) {
    const QString below = row.cells.value(c);
    if (!isFolded(c, folded) || below.isEmpty()) continue;
    const QString heading = horizontalHeaderItem(c)->text().replace('\n', ' ');
    text += '\n' + tr("%1: %2").arg(heading, below);
  }
  return text;
}

/// The fewest with which nothing is cut in this room.
int ObjectTable::foldsFor(int room, const std::vector<int>& needs) const {
  int most = 0;
  for (int c = 0; c < columnCount(); ++c)
    most += mayFold(c) ? 1 : 0;
  int folds = 0;
  const auto least = [&](int folded) {
    const std::vector<int> widths = leastWidths(needs, folded);
    return std::accumulate(widths.begin(), widths.end(), 0);
  };
  while (folds < most && least(folds) > room)
    ++folds;
  return folds;
}

void ObjectTable::fold(int columns) {
  if (columns == folded_) return;
  folded_ = columns;
  for (int c = 0; c < columnCount(); ++c)
    setColumnHidden(c, isFolded(c, folded_));
  for (int r = 0; r < rowCount(); ++r) {
    if (QTableWidgetItem* item = this->item(r, wide_))
      item->setText(cellText(rows_[static_cast<std::size_t>(r)], wide_));
  }
}

/// The longest word among the rows in sight and some more.
int ObjectTable::longestWord(int column, int folded) const {
  static const QRegularExpression space("\\s");
  int most = 0;
  const std::size_t rows = std::min(rows_.size(), std::size_t(kMeasuredRows));
  for (std::size_t r = 0; r < rows; ++r) {
    for (const QString& word : cellText(rows_[r], column, folded).split(space))
      most = std::max(most, advance(word));
  }
  constexpr int kRounding = 2;
  return most + 2 * margin() + kRounding;
}

/// Beside a cell's text.
int ObjectTable::margin() const {
  return style()->pixelMetric(QStyle::PM_FocusFrameHMargin, nullptr, this) + 1;
}

/// Measured once: most texts of a list stand in many of its rows.
int ObjectTable::advance(const QString& text) const {
  const auto known = advances_.constFind(text);
  if (known != advances_.cend()) return *known;
  return *advances_.insert(text, fontMetrics().horizontalAdvance(text));
}

/// In further lines where the text is longer than the room.
int ObjectTable::textHeight(const QString& text, int room) const {
  if (advance(text) <= room && !text.contains('\n')) return fontMetrics().height();
  const std::pair key(text, room);
  const auto known = heights_.constFind(key);
  if (known != heights_.cend()) return *known;
  const QRect place(0, 0, room, QWIDGETSIZE_MAX);
  const QRect lines = fontMetrics().boundingRect(place, Qt::TextWordWrap, text);
  return *heights_.insert(key, lines.height());
}

/// Texts of earlier states of the plan, and widths of other fonts.
void ObjectTable::forgetMeasures(bool all) {
  constexpr qsizetype kMost = 50'000;
  if (all || advances_.size() > kMost) advances_.clear();
  if (all || heights_.size() > kMost) heights_.clear();
}

void ObjectTable::changeEvent(QEvent* event) {
  QTableWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange)
    forgetMeasures(true);
}

/// Texts that are longer than their column go on in further lines.
void ObjectTable::setHeights() {
  forgetMeasures(false);
  const int one = verticalHeader()->defaultSectionSize();
  const int leading = one - fontMetrics().height();
  std::vector<std::pair<int, int>> rooms; // of the columns that may wrap
  for (int c = 0; c < columnCount(); ++c) {
    if (!figures_[static_cast<std::size_t>(c)] && !isColumnHidden(c))
      rooms.emplace_back(c, columnWidth(c) - 2 * margin());
  }
  for (int r = 0; r < rowCount(); ++r) {
    int height = one;
    for (const auto& [c, room] : rooms) {
      const QString text = cellText(rows_[static_cast<std::size_t>(r)], c);
      height = std::max(height, textHeight(text, room) + leading);
    }
    if (rowHeight(r) != height) setRowHeight(r, height);
  }
}

void ObjectTable::setOld(bool old) {
  if (old == old_) return;
  old_ = old;
  setAccessibleDescription(
      old ? tr("Being worked out anew: these figures are of the plan before the last change.")
          : QString());
  viewport()->update();
}

void ObjectTable::initViewItemOption(QStyleOptionViewItem* option) const {
  QTableWidget::initViewItemOption(option);
  if (old_) {
    option->palette.setColor(QPalette::Text, palette().color(QPalette::PlaceholderText));
  }
}

/// As wide as when it was seen last: what is hidden has no width.
int ObjectTable::headingWidth(int column) const {
  headingWidths_.resize(static_cast<std::size_t>(columnCount()));
  int& width = headingWidths_[static_cast<std::size_t>(column)];
  if (!isColumnHidden(column)) width = horizontalHeader()->sectionSizeHint(column);
  return width;
}

/// What each column needs for its longest text in one line.
std::vector<int> ObjectTable::columnNeeds() const {
  std::vector<int> needs;
  for (int c = 0; c < columnCount(); ++c)
    needs.push_back(std::max(sizeHintForColumn(c), headingWidth(c)));
  return needs;
}

/// The least that cuts nothing; none where a column is folded.
std::vector<int> ObjectTable::leastWidths(const std::vector<int>& needs, int folded) const {
  constexpr int kReadable = 60;
  std::vector<int> least(needs.size());
  for (int c = 0; c < columnCount(); ++c) {
    const auto i = static_cast<std::size_t>(c);
    if (isFolded(c, folded)) continue;
    least[i] = needs[i];
    if (figures_[i]) continue;
    const int wrapped = std::min(needs[i], std::max(longestWord(c, folded), kReadable));
    least[i] = std::max(headingWidth(c), wrapped);
  }
  return least;
}

int ObjectTable::leastWidth() const {
  const std::vector<int> least = leastWidths(columnNeeds(), folded_);
  return std::accumulate(least.begin(), least.end(), 0) + 2 * frameWidth() +
         verticalScrollBar()->sizeHint().width();
}

/// Every column as wide as it needs; one takes what is left. Where there is too little room the
/// longest texts wrap, down to a readable width, and then columns fold if they may; figures,
/// headings and words are never cut, so that a table that is narrower still scrolls.
void ObjectTable::spread() {
  const int room = viewport()->width();
  std::vector<int> needs = columnNeeds();
  const int folded = folds_ && !rows_.empty() ? foldsFor(room, needs) : folded_;
  if (folded != folded_) {
    fold(folded);
    needs = columnNeeds();
  }
  for (int c = 0; c < columnCount(); ++c)
    needs[static_cast<std::size_t>(c)] *= isColumnHidden(c) ? 0 : 1;
  const std::vector<int> least = leastWidths(needs, folded_);
  const std::size_t count = needs.size();
  const int most = widthToFit(needs, least, room);
  int left = room;
  for (std::size_t c = 0; c < count; ++c) {
    needs[c] = std::min(needs[c], std::max(least[c], most));
    left -= needs[c];
  }
  needs[static_cast<std::size_t>(wide_)] += std::max(left, 0);
  for (int c = 0; c < columnCount(); ++c) {
    if (!isColumnHidden(c))
      horizontalHeader()->resizeSection(c, needs[static_cast<std::size_t>(c)]);
  }
  setHeights();
  emit fitted();
}

void ObjectTable::resizeEvent(QResizeEvent* event) {
  // What is read about the current row can take room from the list: the row stays in sight.
  const int top = currentRow() < 0 ? -1 : rowViewportPosition(currentRow());
  const bool seen = top >= 0 && top < event->oldSize().height();
  QTableWidget::resizeEvent(event);
  spread();
  if (seen) scrollTo(currentIndex());
}

void ObjectTable::keyPressEvent(QKeyEvent* event) {
  const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
  if (enter && currentRow() >= 0) {
    emit chosen(currentRow());
    return;
  }
  const int before = currentRow();
  QTableWidget::keyPressEvent(event);
  if (currentRow() != before && currentRow() >= 0) emit chosen(currentRow());
}

QLabel* emptyNote(const QString& text, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setAlignment(Qt::AlignCenter);
  label->setWordWrap(true);
  return label;
}

} // namespace sump
