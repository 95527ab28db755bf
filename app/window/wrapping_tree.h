#pragma once
// A tree of which one column wraps its texts, so that none is cut however narrow the place is.

#include <QTreeWidget>

class QTimer;

namespace sump {

class WrappingTree : public QTreeWidget {
  Q_OBJECT

public:
  /// The column should stretch; the others take what their texts need.
  explicit WrappingTree(int wrapped, QWidget* parent = nullptr);
  /// Width for the texts of the wrapped column at this depth.
  int roomFor(const QModelIndex& index) const;
  /// Brings the current row into view, and keeps it there while texts wrap anew and the place
  /// changes its size, until somebody scrolls.
  void followCurrent();

protected:
  void resizeEvent(QResizeEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;

private:
  void layOut();

  QTimer* later_;
  bool following_ = false;
};

} // namespace sump
