#include "app/window/quiet_label.h"

#include <QPainter>

namespace sump {

void QuietLabel::say(const QString& text) {
  if (text == said_) return;
  said_ = text;
  setAccessibleName(text);
  makeRoom();
  update();
}

int QuietLabel::flags() const {
  return static_cast<int>(alignment()) | (wordWrap() ? Qt::TextWordWrap : Qt::TextSingleLine);
}

/// Never less than it took before, so that what stands beside it does not jump.
void QuietLabel::makeRoom() {
  const int wide = wordWrap() ? contentsRect().width() : QWIDGETSIZE_MAX;
  const QSize needs =
      fontMetrics().boundingRect(QRect(0, 0, wide, QWIDGETSIZE_MAX), flags(), said_).size();
  if (wordWrap()) {
    if (isVisible() && needs.height() > minimumHeight()) setMinimumHeight(needs.height());
  } else if (needs.width() > minimumWidth()) {
    setMinimumWidth(needs.width());
  }
}

void QuietLabel::resizeEvent(QResizeEvent* event) {
  QLabel::resizeEvent(event);
  makeRoom();
}

void QuietLabel::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setPen(palette().color(foregroundRole()));
  painter.drawText(contentsRect(), flags(), said_);
}

} // namespace sump
