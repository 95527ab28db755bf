#include "app/canvas/entry_box.h"

#include "app/core_text.h"
#include "app/window/field_note.h"
#include "app/window/glossary.h"

#include <QApplication>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>

#include <algorithm>

namespace sump {

EntryBox::EntryBox(QWidget* parent) : QFrame(parent) {
  setObjectName("entry-box");
  setAccessibleName(tr("Typed values"));
  setFrameShape(QFrame::StyledPanel);
  setAutoFillBackground(true);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(6, 4, 6, 4);
  column->setSpacing(2);
  body_ = new QWidget(this);
  column->addWidget(body_);
  problem_ = new FieldNote(this);
  column->addWidget(problem_);
  hide();
}

void EntryBox::open(std::vector<EntryField> fields, UnitSystem units, const QString& text,
                    QPoint at, std::size_t first) {
  fields_ = std::move(fields);
  units_ = units;
  current_ = first;
  editors_.clear();
  auto* body = new QWidget(this);
  auto* grid = new QGridLayout(body);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(6);
  grid->setVerticalSpacing(0);
  for (std::size_t i = 0; i < fields_.size(); ++i) {
    auto* editor = new QLineEdit(body);
    editor->setFixedWidth(editor->fontMetrics().horizontalAdvance("100'-11 15/16\""));
    editor->setToolTip(tipWithTerms(fields_[i].label, fields_[i].tip));
    editor->setAccessibleName(fields_[i].label);
    editor->setAccessibleDescription(fields_[i].tip);
    editor->installEventFilter(this);
    auto* label = new QLabel(fields_[i].label, body);
    label->setToolTip(editor->toolTip());
    label->setBuddy(editor);
    grid->addWidget(label, 0, static_cast<int>(i));
    grid->addWidget(editor, 1, static_cast<int>(i));
    connect(editor, &QLineEdit::textChanged, this, &EntryBox::edited);
    editors_.push_back(editor);
  }
  delete layout()->replaceWidget(body_, body);
  body_->hide();
  body_->deleteLater();
  body_ = body;
  body_->show();
  problem_->hide();
  place(at);
  show();
  raise();
  editors_[first]->setFocus();
  editors_[first]->setText(text);
}

void EntryBox::place(QPoint at) {
  layout()->activate();
  adjustSize();
  const QRect room = parentWidget()->rect().adjusted(4, 4, -4, -4);
  QPoint corner = at + QPoint(18, 26);
  // On the other side of the pointer where there is no room; never under it.
  if (corner.y() + height() > room.bottom()) corner.setY(at.y() - 26 - height());
  corner.setX(std::clamp(corner.x(), room.left(), std::max(room.left(), room.right() - width())));
  corner.setY(std::clamp(corner.y(), room.top(), std::max(room.top(), room.bottom() - height())));
  move(corner);
}

void EntryBox::shut() {
  hide();
  fields_.clear();
  editors_.clear();
}

Entry EntryBox::values() const {
  Entry entry;
  for (std::size_t i = 0; i < editors_.size(); ++i) {
    const QString text = editors_[i]->text();
    if (text.trimmed().isEmpty()) continue;
    const Parsed<double> parsed = parseEntry(fields_[i].unit, text, units_);
    if (parsed) entry[fields_[i].key] = *parsed.value;
  }
  return entry;
}

void EntryBox::complain(const QString& why) {
  problem_->complain(why);
  adjustSize();
}

bool EntryBox::allReadable() {
  for (std::size_t i = 0; i < editors_.size(); ++i) {
    if (editors_[i]->text().trimmed().isEmpty()) continue;
    const Parsed<double> parsed = parseEntry(fields_[i].unit, editors_[i]->text(), units_);
    if (parsed) continue;
    current_ = i;
    editors_[i]->setFocus();
    complain(fields_[i].label + ": " + typedProblem(parsed.error, editors_[i]->text()));
    return false;
  }
  return true;
}

void EntryBox::step(int by) {
  const int count = static_cast<int>(editors_.size());
  current_ = static_cast<std::size_t>((static_cast<int>(current_) + by + count) % count);
  editors_[current_]->setFocus();
  editors_[current_]->selectAll();
}

bool EntryBox::key(QKeyEvent* event) {
  switch (event->key()) {
  case Qt::Key_Tab:
    step(1);
    return true;
  case Qt::Key_Backtab:
    step(-1);
    return true;
  case Qt::Key_Escape:
    emit givenUp();
    return true;
  case Qt::Key_Return:
  case Qt::Key_Enter:
    if (allReadable()) emit entered(event->modifiers());
    return true;
  default:
    return false;
  }
}

void EntryBox::take(QKeyEvent* event) {
  if (key(event) || editors_.empty()) return;
  QApplication::sendEvent(editors_[current_], event);
}

/// A key that no editor has a use for ends here: the drawing would hand it back, without end.
void EntryBox::keyPressEvent(QKeyEvent* event) {
  event->accept();
}

bool EntryBox::eventFilter(QObject* watched, QEvent* event) {
  const auto editor = std::ranges::find(editors_, watched);
  if (editor == editors_.end()) return QFrame::eventFilter(watched, event);
  if (event->type() == QEvent::FocusIn) {
    current_ = static_cast<std::size_t>(editor - editors_.begin());
  } else if (event->type() == QEvent::KeyPress) {
    if (key(static_cast<QKeyEvent*>(event))) return true;
  } else if (event->type() == QEvent::ShortcutOverride) {
    // Escape and Enter are the entry's own, whatever menus they stand in.
    const int pressed = static_cast<QKeyEvent*>(event)->key();
    if (pressed == Qt::Key_Escape || pressed == Qt::Key_Return || pressed == Qt::Key_Enter) {
      event->accept();
      return true;
    }
  }
  return QFrame::eventFilter(watched, event);
}

} // namespace sump
