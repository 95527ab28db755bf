#include "app/panels/properties_panel.h"

#include "app/panels/field_editor.h"
#include "app/window/field_note.h"
#include "app/window/glossary.h"

#include <QGridLayout>
#include <QLabel>
#include <QScrollBar>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>

namespace sump {

namespace {

constexpr int kPropertyLabelWidth = 132;

QLabel* headingLabel(const QString& text, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  QFont font = label->font();
  font.setBold(true);
  label->setFont(font);
  label->setContentsMargins(0, 8, 0, 2);
  label->setToolTip(tipWithTerms(text, {}));
  return label;
}

/// Margins of the panel beside its fields.
constexpr int kBesideFields = 26;

} // namespace

PropertiesPanel::PropertiesPanel(Document& document, QWidget* parent)
    : QScrollArea(parent), document_(document) {
  setObjectName("properties");
  setAccessibleName(tr("What is this"));
  setWidgetResizable(true);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setFrameShape(QFrame::NoFrame);
  connect(&document_, &Document::changed, this, [this] { fallBehind(*this); });
  connect(&document_, &Document::reviewArrived, this, [this] { fallBehind(*this); });
  refresh();
}

void PropertiesPanel::show(const std::set<Id>& selection) {
  selection_ = selection;
  refresh();
}

std::vector<Field> PropertiesPanel::currentFields() const {
  const ReviewedPtr reviewed = document_.reviewed();
  const FieldContext context{document_.shown(), document_.catalog(),
                             reviewed ? &reviewed->review : nullptr};
  if (selection_.empty()) return projectFields(context);
  if (selection_.size() == 1) return fieldsOf(context, *selection_.begin());
  return commonFields(context, selection_);
}

void PropertiesPanel::showEvent(QShowEvent* event) {
  QScrollArea::showEvent(event);
  cameToFront();
}

void PropertiesPanel::refresh() {
  if (writing_) return;
  caughtUp();
  QString title = tr("The project");
  if (selection_.size() == 1) title = objectTitle(document_.shown(), *selection_.begin());
  if (selection_.size() > 1) title = tr("%1 objects").arg(selection_.size());
  std::vector<Field> fields = currentFields();
  if (title == title_ && sameShape(fields)) {
    update(std::move(fields));
  } else {
    title_ = title;
    rebuild(std::move(fields));
  }
}

bool PropertiesPanel::sameShape(const std::vector<Field>& fields) const {
  if (widget() == nullptr || fields.size() != rows_.size()) return false;
  for (std::size_t i = 0; i < fields.size(); ++i) {
    const Field& old = rows_[i].field;
    if (old.kind != fields[i].kind || old.label != fields[i].label ||
        old.choices != fields[i].choices || rows_[i].below != needsAll(fields[i]) ||
        rows_[i].wraps != isWider(fields[i], fullWidth()))
      return false;
  }
  return true;
}

/// Beside its label the field would cut what it shows.
bool PropertiesPanel::needsAll(const Field& field) const {
  return wholeWidth(field) > fullWidth() - kPropertyLabelWidth;
}

/// Of a field below its label.
int PropertiesPanel::fullWidth() const {
  return viewport()->width() - kBesideFields;
}

void PropertiesPanel::resizeEvent(QResizeEvent* event) {
  QScrollArea::resizeEvent(event);
  if (event->size().width() != event->oldSize().width()) fallBehind(*this);
}

void PropertiesPanel::update(std::vector<Field> fields) {
  for (std::size_t i = 0; i < fields.size(); ++i) {
    Row& row = rows_[i];
    const bool same = row.field.text == fields[i].text && row.field.current == fields[i].current &&
                      row.field.mixed == fields[i].mixed;
    row.field = std::move(fields[i]);
    if (row.editor == nullptr) continue;
    // What is being typed, or was refused, is left alone unless the plan changed below it; and a
    // drag changes few of the fields at each step.
    if (same) continue;
    showInEditor(row.editor, row.field);
    row.error->hide();
    markWrong(row.editor, false);
  }
}

/// The keyboard stays with its field, if that is still there.
void PropertiesPanel::rebuild(std::vector<Field> fields) {
  const auto focused = std::ranges::find_if(
      rows_, [](const Row& row) { return row.editor != nullptr && row.editor->hasFocus(); });
  const std::size_t at = static_cast<std::size_t>(focused - rows_.begin());
  const QString label = focused == rows_.end() ? QString() : focused->field.label;
  rows_.clear();
  group_.clear();
  auto* body = new QWidget;
  auto* column = new QVBoxLayout(body);
  column->setContentsMargins(10, 6, 10, 10);
  column->setSpacing(3);
  auto* title = new QLabel(title_, body);
  QFont font = title->font();
  font.setPointSizeF(font.pointSizeF() * 1.2);
  font.setBold(true);
  title->setFont(font);
  title->setWordWrap(true);
  title->setToolTip(tipWithTerms(title_, {}));
  column->addWidget(title);
  rows_.reserve(fields.size());
  for (Field& field : fields)
    addRow(*column, std::move(field));
  column->addStretch();
  setWidget(body); // deletes the old one
  // There is no scrolling sideways: the panel is never narrower than what it shows.
  setMinimumWidth(body->minimumSizeHint().width() + verticalScrollBar()->sizeHint().width());
  if (!label.isEmpty() && at < rows_.size() && rows_[at].field.label == label && rows_[at].editor)
    rows_[at].editor->setFocus();
}

void PropertiesPanel::addRow(QVBoxLayout& column, Field field) {
  QWidget* parent = column.parentWidget();
  const bool below = needsAll(field), wraps = isWider(field, fullWidth());
  rows_.push_back({std::move(field), nullptr, nullptr, below, wraps});
  const std::size_t index = rows_.size() - 1;
  Row& row = rows_.back();
  if (row.field.kind == FieldKind::Heading) {
    group_ = row.field.label;
    column.addWidget(headingLabel(row.field.label, parent));
    return;
  }
  const auto changed = [this, index](const QString& text) {
    const Field& field = rows_[index].field;
    if (field.kind != FieldKind::Text || text != field.text) write(index, text);
  };
  row.editor = makeFieldEditor(row.field, changed, fullWidth());
  // Many fields are called `East` or `Remove`: the heading above tells them apart by ear.
  row.editor->setAccessibleDescription(group_.isEmpty() ? row.field.tip
                                                        : group_ + ". " + row.field.tip);
  row.error = new FieldNote(parent);
  auto* grid = new QGridLayout;
  grid->setColumnMinimumWidth(0, kPropertyLabelWidth);
  grid->setColumnStretch(1, 1);
  if (row.field.kind != FieldKind::Button) {
    auto* label = new QLabel(row.field.label, parent);
    label->setWordWrap(true);
    if (!row.below) label->setFixedWidth(kPropertyLabelWidth);
    label->setToolTip(row.editor->toolTip());
    label->setBuddy(row.editor);
    grid->addWidget(label, 0, 0, 1, row.below ? 2 : 1);
  }
  if (row.below) {
    grid->addWidget(row.editor, 1, 0, 1, 2);
  } else {
    grid->addWidget(row.editor, 0, 1);
  }
  grid->addWidget(row.error, 2, 0, 1, 2);
  column.addLayout(grid);
}

void PropertiesPanel::write(std::size_t index, const QString& text) {
  if (writing_) return;
  const Field field = rows_[index].field; // rebuilding replaces the row
  const FieldResult result = field.write(document_.plan(), text);
  if (!result.plan) return fail(index, result.error);
  writing_ = true;
  const std::optional<Problem> problem =
      document_.commit(tr("Change %1").arg(field.label.toLower()), *result.plan);
  writing_ = false;
  if (problem) return fail(index, problemText(*result.plan, *problem));
  rows_[index].error->hide();
  markWrong(rows_[index].editor, false);
  setUnmodified(rows_[index].editor);
  // After the editor's own signal has run out: rebuilding deletes it.
  QTimer::singleShot(0, this, [this, index, label = field.label] {
    if (index < rows_.size() && rows_[index].field.label == label && rows_[index].editor)
      rows_[index].field.text = QString(QChar(0)); // so that the written form is shown
    refresh();
  });
}

void PropertiesPanel::fail(std::size_t index, const QString& reason) {
  Row& row = rows_[index];
  row.error->complain(tr("Not changed: %1").arg(reason));
  if (row.field.kind == FieldKind::Text) {
    markWrong(row.editor, true);
  } else {
    showInEditor(row.editor, row.field);
  }
}

} // namespace sump
