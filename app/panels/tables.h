#pragma once
// What the three tables share: filling without losing the place, and going to what a row is about.

#include "app/panels/table_row.h"

#include <QHash>
#include <QLabel>
#include <QString>
#include <QStringList>
#include <QTableWidget>
#include <QTimer>

#include <vector>

namespace sump {

class ObjectTable : public QTableWidget {
  Q_OBJECT

public:
  /// Columns whose heading starts with `>` hold figures: right-aligned.
  ObjectTable(const QStringList& headings, const QString& accessibleName,
              QWidget* parent = nullptr);
  /// Keeps the current row and the scroll position where they still make sense. `wide` is the
  /// column that takes the room that is left.
  void fill(const std::vector<TableRow>& rows, int wide);
  /// Shares out the width anew, where icons have been put in since `fill`.
  void spread();
  /// Where there is too little room, columns of texts go below the text of the wide one, the last
  /// first.
  void foldWhereNarrow() { folds_ = true; }
  /// What the cell shows.
  QString cellText(const TableRow& row, int column) const { return cellText(row, column, folded_); }
  /// Pale text: the rows are of an earlier state of the plan.
  void setOld(bool old);
  bool isOld() const { return old_; }
  /// In which no column is cut.
  int leastWidth() const;
  const std::vector<TableRow>& rows() const { return rows_; }

signals:
  /// A click or Enter on a row.
  void chosen(int row);
  /// The columns have been shared out.
  void fitted();

protected:
  void keyPressEvent(QKeyEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void initViewItemOption(QStyleOptionViewItem* option) const override;

private:
  std::vector<QModelIndex> replaceRows(int at, const std::vector<TableRow>& rows, int before,
                                       int after);
  void widen(const std::vector<QModelIndex>& cells);
  std::vector<int> columnNeeds() const;
  std::vector<int> leastWidths(const std::vector<int>& needs, int folded) const;
  int headingWidth(int column) const;
  bool mayFold(int column) const;
  bool isFolded(int column, int folded) const;
  void fold(int columns);
  int foldsFor(int room, const std::vector<int>& needs) const;
  QString cellText(const TableRow& row, int column, int folded) const;
  int longestWord(int column, int folded) const;
  int margin() const;
  int advance(const QString& text) const;
  int textHeight(const QString& text, int room) const;
  void forgetMeasures(bool all);
  void setHeights();
  bool old_ = false;
  QTimer spreadLater_{this};
  int wide_ = 0; ///< the column that takes the room that is left
  std::vector<TableRow> rows_;
  std::vector<bool> figures_;
  bool folds_ = false;
  int folded_ = 0; ///< so many of the columns that may are folded
  mutable std::vector<int> headingWidths_;
  mutable QHash<QString, int> advances_;                ///< widths of texts in one line
  mutable QHash<std::pair<QString, int>, int> heights_; ///< of texts in a room
};

/// A grey sentence that stands in for an empty table.
QLabel* emptyNote(const QString& text, QWidget* parent);

} // namespace sump
