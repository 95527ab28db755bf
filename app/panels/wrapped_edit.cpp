#include "app/panels/wrapped_edit.h"

#include <QAbstractTextDocumentLayout>
#include <QKeyEvent>
#include <QMimeData>
#include <QPainter>
#include <QStyleOptionFrame>
#include <QWheelEvent>

namespace sump {

namespace {

constexpr int kAround = 3; ///< pixels from the frame to the text

} // namespace

WrappedEdit::WrappedEdit(QWidget* parent) : QPlainTextEdit(parent) {
  setFrameShape(QFrame::NoFrame); // it is drawn as that of the one-line fields
  setViewportMargins(kAround, kAround, kAround, kAround);
  document()->setDocumentMargin(0);
  setTabChangesFocus(true);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  connect(document()->documentLayout(), &QAbstractTextDocumentLayout::documentSizeChanged, this,
          &WrappedEdit::fit);
  fit();
}

/// As high as its lines.
void WrappedEdit::fit() {
  const int lines = std::max(1, qRound(document()->documentLayout()->documentSize().height()));
  setFixedHeight(lines * fontMetrics().lineSpacing() + 2 * kAround + 1);
}

bool WrappedEdit::event(QEvent* event) {
  if (event->type() != QEvent::Paint) return QPlainTextEdit::event(event);
  QStyleOptionFrame option;
  option.initFrom(this);
  option.lineWidth = style()->pixelMetric(QStyle::PM_DefaultFrameWidth, &option, this);
  option.state |= QStyle::State_Sunken;
  QPainter painter(this);
  style()->drawPrimitive(QStyle::PE_PanelLineEdit, &option, &painter, this);
  return true;
}

void WrappedEdit::keyPressEvent(QKeyEvent* event) {
  if (event->key() != Qt::Key_Return && event->key() != Qt::Key_Enter)
    return QPlainTextEdit::keyPressEvent(event);
  emit editingFinished();
}

void WrappedEdit::focusInEvent(QFocusEvent* event) {
  QPlainTextEdit::focusInEvent(event);
  update();
}

void WrappedEdit::focusOutEvent(QFocusEvent* event) {
  QPlainTextEdit::focusOutEvent(event);
  update();
  // A menu or another window takes the keys for a while only.
  if (event->reason() != Qt::PopupFocusReason && event->reason() != Qt::ActiveWindowFocusReason)
    emit editingFinished();
}

void WrappedEdit::resizeEvent(QResizeEvent* event) {
  QPlainTextEdit::resizeEvent(event);
  fit();
}

/// All of it is in sight: the wheel scrolls the form.
void WrappedEdit::wheelEvent(QWheelEvent* event) {
  event->ignore();
}

/// What is pasted becomes one line.
void WrappedEdit::insertFromMimeData(const QMimeData* source) {
  insertPlainText(source->text().simplified());
}

} // namespace sump
