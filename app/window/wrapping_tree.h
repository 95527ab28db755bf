#pragma once
// A tree of which one column wraps its texts, so that none is cut however narrow the place is.

#include <QTreeWidget>

namespace sump {

class WrappingTree : public QTreeWidget {
  Q_OBJECT

public:
  /// The column should stretch; the others take what their texts need.
  explicit WrappingTree(int wrapped, QWidget* parent = nullptr);
  /// Width for the texts of the wrapped column at this depth.
  int roomFor(const QModelIndex& index) const;
};

} // namespace sump
