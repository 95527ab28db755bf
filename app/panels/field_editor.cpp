#include "app/panels/field_editor.h"

#include "app/panels/wrapped_edit.h"
#include "app/window/glossary.h"

#include <QAbstractItemView>
#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QCoreApplication>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollBar>
#include <QSignalBlocker>
#include <QWheelEvent>

namespace sump {

namespace {

/// A wheel that scrolls the panel must not change what it passes over.
class QuietCombo : public QComboBox {
public:
  using QComboBox::QComboBox;

  /// The list may be wider than the box, so that no choice is cut.
  void showPopup() override {
    view()->setMinimumWidth(view()->sizeHintForColumn(0) +
                            view()->verticalScrollBar()->sizeHint().width());
    QComboBox::showPopup();
  }

protected:
  void wheelEvent(QWheelEvent* event) override { event->ignore(); }
};

using Write = std::function<void(const QString&)>;

QWidget* makeCombo(const Field& field, const Write& write) {
  auto* combo = new QuietCombo;
  combo->addItems(field.choices);
  for (int i = 0; i < combo->count(); ++i)
    combo->setItemData(i, combo->itemText(i), Qt::ToolTipRole);
  combo->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  combo->setMinimumContentsLength(8);
  // Without a glossary's words of its own the box tells the whole of a choice that it cuts.
  QObject::connect(combo, &QComboBox::currentTextChanged, combo, [combo](const QString& text) {
    const QVariant told = combo->property("told-choice");
    if (combo->toolTip().isEmpty() || combo->toolTip() == told.toString()) {
      combo->setToolTip(text);
      combo->setProperty("told-choice", text);
    }
  });
  QObject::connect(combo, &QComboBox::activated, combo,
                   [write](int item) { write(QString::number(item)); });
  return combo;
}

QWidget* makeLine(const Write& write) {
  auto* line = new QLineEdit;
  QObject::connect(line, &QLineEdit::editingFinished, line, [line, write] {
    if (line->isModified()) write(line->text());
  });
  return line;
}

QWidget* makeWrapped(const Write& write) {
  auto* edit = new WrappedEdit;
  QObject::connect(edit, &WrappedEdit::editingFinished, edit, [edit, write] {
    if (edit->isModified()) write(edit->toPlainText());
  });
  return edit;
}

QWidget* makeFact() {
  auto* fact = new QLabel;
  fact->setProperty("plan-text", true); // a value of the plan, in no language
  fact->setWordWrap(true);
  fact->setTextInteractionFlags(Qt::TextSelectableByMouse);
  return fact;
}

QWidget* makeBox(const Write& write) {
  auto* box = new QCheckBox;
  QObject::connect(box, &QCheckBox::clicked, box, [write](bool on) { write(on ? "1" : "0"); });
  return box;
}

QWidget* makeButton(const Field& field, const Write& write) {
  auto* button = new QPushButton(field.label);
  QObject::connect(button, &QPushButton::clicked, button, [write] { write({}); });
  return button;
}

QString wholeTip(const QString& text, const Field& field) {
  const QString tip = tipWithTerms(field.label, field.tip);
  return text.toHtmlEscaped() + (tip.isEmpty() ? QString() : "<p>" + tip + "</p>");
}

} // namespace

int wholeWidth(const Field& field) {
  constexpr int kBesideText = 22, kBesideChoice = 48; // frame and cursor, or frame and arrow
  const QFontMetrics metrics(QApplication::font());
  if (field.kind == FieldKind::Text) return metrics.horizontalAdvance(field.text) + kBesideText;
  int most = 0;
  for (const QString& choice : field.choices)
    most = std::max(most, metrics.horizontalAdvance(choice) + kBesideChoice);
  return most;
}

QWidget* makeFieldEditor(const Field& field, Write write, int room) {
  QWidget* editor = nullptr;
  switch (field.kind) {
  case FieldKind::Choice:
    editor = makeCombo(field, write);
    break;
  case FieldKind::Toggle:
    editor = makeBox(write);
    break;
  case FieldKind::Button:
    editor = makeButton(field, write);
    break;
  case FieldKind::Fact:
    editor = makeFact();
    break;
  case FieldKind::Heading:
  case FieldKind::Text:
    editor = isWider(field, room) ? makeWrapped(write) : makeLine(write);
    break;
  }
  editor->setToolTip(tipWithTerms(field.label, field.tip));
  editor->setAccessibleName(field.label);
  editor->setAccessibleDescription(field.tip);
  showInEditor(editor, field);
  return editor;
}

void showInEditor(QWidget* editor, const Field& field) {
  const QSignalBlocker blocker(editor);
  if (auto* line = qobject_cast<QLineEdit*>(editor)) {
    line->setText(field.text);
    // What is longer than the field is told whole by its tooltip, as with choices.
    constexpr qsizetype kShort = 12;
    if (field.text.size() > kShort) line->setToolTip(wholeTip(field.text, field));
    line->setPlaceholderText(
        field.mixed ? QCoreApplication::translate("PropertiesPanel", "different values")
                    : QString());
    line->setCursorPosition(0);
  } else if (auto* wrapped = qobject_cast<WrappedEdit*>(editor)) {
    wrapped->setPlainText(field.text);
  } else if (auto* combo = qobject_cast<QComboBox*>(editor)) {
    combo->setCurrentIndex(field.current);
    // A long choice is cut in a narrow panel: its tooltip has it whole.
    combo->setToolTip(wholeTip(combo->currentText(), field));
  } else if (auto* box = qobject_cast<QCheckBox*>(editor)) {
    box->setTristate(field.mixed);
    box->setCheckState(field.mixed         ? Qt::PartiallyChecked
                       : field.text == "1" ? Qt::Checked
                                           : Qt::Unchecked);
  } else if (auto* label = qobject_cast<QLabel*>(editor)) {
    label->setText(field.text);
  }
}

void setUnmodified(QWidget* editor) {
  if (auto* line = qobject_cast<QLineEdit*>(editor)) line->setModified(false);
  if (auto* wrapped = qobject_cast<WrappedEdit*>(editor)) wrapped->setModified(false);
}

} // namespace sump
