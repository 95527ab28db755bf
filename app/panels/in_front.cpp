#include "app/panels/in_front.h"

#include <QDockWidget>

namespace sump {

bool isInFront(const QWidget& widget) {
  if (!widget.isVisible()) return false;
  // Qt moves the docks behind a tab to where the window is not.
  const QWidget* window = widget.window();
  return window->rect().intersects(QRect(widget.mapTo(window, QPoint()), widget.size()));
}

void CatchingUp::fallBehind(const QWidget& panel) {
  behind_ = true;
  if (isInFront(panel)) catchUp();
}

void tellWhenInFront(QDockWidget& dock, QWidget* content) {
  auto* fronted = dynamic_cast<Fronted*>(content);
  if (fronted == nullptr) return;
  QObject::connect(&dock, &QDockWidget::visibilityChanged, content, [fronted](bool seen) {
    if (seen) fronted->cameToFront();
  });
}

} // namespace sump
