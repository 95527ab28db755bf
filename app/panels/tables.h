#pragma once
// What the three tables share: filling without losing the place, and going to what a row is about.

#include "core/plan/items.h"

#include <QLabel>
#include <QString>
#include <QStringList>
#include <QTableWidget>

#include <set>
#include <vector>

namespace sump {

/// One row with the objects that it is about.
struct TableRow {
  QStringList cells;
  std::set<Id> objects;
  QString tip;
};

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
  const std::vector<TableRow>& rows() const { return rows_; }

signals:
  /// A click or Enter on a row.
  void chosen(int row);

protected:
  void keyPressEvent(QKeyEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

private:
  int wide_ = 0; ///< the column that takes the room that is left
  std::vector<TableRow> rows_;
  std::vector<bool> figures_;
};

/// A grey sentence that stands in for an empty table.
QLabel* emptyNote(const QString& text, QWidget* parent);

} // namespace sump
