#include "app/window/field_note.h"

#include "app/window/window_style.h"

#include <QEvent>
#include <QPainter>

namespace sump {

namespace {

constexpr int kSign = 14;  ///< pixels
constexpr int kInward = 6; ///< from the sign to the text

} // namespace

FieldNote::FieldNote(QWidget* parent) : QLabel(parent) {
  setWordWrap(true);
  setTextFormat(Qt::PlainText);
  say({}, true);
  hide();
}

void FieldNote::remark(const QString& text) {
  say(text, false);
}

void FieldNote::complain(const QString& text) {
  say(text, true);
}

void FieldNote::say(const QString& text, bool wrong) {
  wrong_ = wrong;
  setObjectName(wrong ? "field-error" : "field-need");
  setContentsMargins(wrong ? kSign + kInward : 0, 0, 0, 0);
  setText(text);
  setVisible(!text.isEmpty());
  colour();
}

void FieldNote::colour() {
  QPalette mine;
  if (wrong_) mine.setColor(QPalette::WindowText, errorColor(palette()));
  setPalette(mine);
}

void FieldNote::changeEvent(QEvent* event) {
  QLabel::changeEvent(event);
  if (event->type() != QEvent::PaletteChange || !wrong_) return;
  if (palette().color(QPalette::WindowText) != errorColor(palette())) colour();
}

/// A ring with an exclamation mark beside the first line.
void FieldNote::paintEvent(QPaintEvent* event) {
  QLabel::paintEvent(event);
  if (!wrong_) return;
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(errorColor(palette()), 1.4));
  const double down = (fontMetrics().lineSpacing() - kSign) / 2.0;
  const QRectF ring = QRectF(0, std::max(0.0, down), kSign, kSign).adjusted(1, 1, -1, -1);
  painter.drawEllipse(ring);
  const double x = ring.center().x(), y = ring.top();
  painter.drawLine(QPointF(x, y + 3), QPointF(x, y + 6.5));
  painter.drawPoint(QPointF(x, y + 9));
}

void markWrong(QWidget* field, bool wrong) {
  field->setProperty(kWrong, wrong);
  field->update();
}

} // namespace sump
