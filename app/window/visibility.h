#pragma once
// 'Shown': check boxes for what the drawing shows, by trade. Remembered between sessions.

#include "app/canvas/shown.h"

#include <QTreeWidget>

namespace sump {

class VisibilityPanel : public QTreeWidget {
  Q_OBJECT

public:
  explicit VisibilityPanel(QWidget* parent = nullptr);
  const Shown& shown() const { return shown_; }
  /// What was hidden when the panel was last used.
  void restore();

signals:
  void shownChanged();

private:
  void fill();
  void take();

  Shown shown_;
};

} // namespace sump
