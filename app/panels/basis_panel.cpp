#include "app/panels/basis_panel.h"

#include "app/core_text.h"

#include "app/panels/field_editor.h"
#include "app/window/field_note.h"

#include <QHBoxLayout>
#include <QListWidget>
#include <QScrollArea>
#include <QTimer>

namespace sump {

namespace {

constexpr int kListWidth = 178;
/// A figure's label, editor and note need about this much.
constexpr int kColumnWidth = 330;

} // namespace

BasisPanel::BasisPanel(Document& document, QWidget* parent) : QWidget(parent), document_(document) {
  setObjectName("basis");
  setAccessibleName(tr("What we know"));
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  list_ = new QListWidget(this);
  list_->setObjectName("basis-groups");
  list_->setAccessibleName(tr("Groups of figures"));
  list_->setFixedWidth(kListWidth);
  list_->setFrameShape(QFrame::NoFrame);
  area_ = new QScrollArea(this);
  area_->setWidgetResizable(true);
  area_->setFrameShape(QFrame::NoFrame);
  row->addWidget(list_);
  row->addWidget(area_, 1);
  groups_ = basisGroups(context());
  for (const BasisGroup& group : groups_)
    list_->addItem(group.title);
  list_->setCurrentRow(0);
  connect(list_, &QListWidget::currentRowChanged, this, &BasisPanel::refresh);
  connect(&document_, &Document::changed, this, [this] { fallBehind(*this); });
  connect(&document_, &Document::replaced, this, [this] { drafts_.clear(); });
  refresh();
}

FieldContext BasisPanel::context() const {
  return {document_.shown(), document_.catalog(), nullptr};
}

QWidget* BasisPanel::editor(const std::string& key) const {
  const auto found = shown_.find(key);
  return found == shown_.end() ? nullptr : found->second.editor;
}

const BasisTable* BasisPanel::table(const std::string& key) const {
  for (const BasisGroup& group : groups_) {
    for (const BasisTable& table : group.tables) {
      if (table.key == key) return &table;
    }
  }
  return nullptr;
}

void BasisPanel::goTo(const std::string& key) {
  for (std::size_t g = 0; g < groups_.size(); ++g) {
    const auto has = [&key](const auto& entry) { return entry.key == key; };
    if (!std::ranges::any_of(groups_[g].items, has) && !std::ranges::any_of(groups_[g].tables, has))
      continue;
    list_->setCurrentRow(static_cast<int>(g));
    const std::string first = key + ".0.0";
    QWidget* target = editor(key);
    if (target == nullptr) target = editor(first);
    if (target == nullptr) target = findChild<QWidget*>(shown(key) + ".add");
    if (target == nullptr) return;
    target->setFocus(Qt::OtherFocusReason);
    area_->ensureWidgetVisible(target);
    return;
  }
}

int BasisPanel::columns() const {
  return std::clamp((width() - kListWidth) / kColumnWidth, 1, 3);
}

void BasisPanel::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  refresh(); // the shape holds the number of columns
}

void BasisPanel::fillGroups() {
  for (std::size_t g = 0; g < groups_.size(); ++g) {
    const int unknown = groups_[g].unknown();
    QListWidgetItem* item = list_->item(static_cast<int>(g));
    item->setText(unknown == 0 ? groups_[g].title
                               : tr("%1 (%2 open)").arg(groups_[g].title).arg(unknown));
    item->setToolTip(unknown == 0 ? tr("All of it is known")
                                  : tr("%1 unknown, and something waits for each").arg(unknown));
  }
  list_->setFixedWidth(std::max(kListWidth, list_->sizeHintForColumn(0) + 12));
}

void BasisPanel::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  cameToFront();
}

void BasisPanel::refresh() {
  if (writing_) return;
  caughtUp();
  groups_ = basisGroups(context());
  fillGroups();
  const BasisGroup& group = groups_[static_cast<std::size_t>(std::max(0, list_->currentRow()))];
  if (shape(group) == shape_) {
    update(group);
  } else {
    rebuild(group);
  }
}

/// Whatever makes the form look different besides the values.
QString BasisPanel::shape(const BasisGroup& group) const {
  QString text = QString("%1 %2 ").arg(group.title).arg(columns());
  for (const BasisItem& item : group.items) {
    text += item.field.label + item.field.choices.join('|');
    if (wholeWidth(item.field) > fieldWidth(columns()))
      text += isWider(item.field, fieldWidth(1)) ? "wraps" : "wide";
  }
  for (const BasisTable& table : group.tables) {
    text += QString(" %1 %2 %3 %4 ")
                .arg(shown(table.key))
                .arg(table.rows.size())
                .arg(drafts_.contains(table.key))
                .arg(isStacked(table));
    for (const Field& cell : table.draft)
      text += cell.choices.join('|');
    if (!isStacked(table)) continue;
    for (const std::vector<Field>& row : table.rows) {
      for (const Field& cell : row)
        text += isWider(cell, fieldWidth(columns())) ? 'w' : 'l';
    }
  }
  return text;
}

/// As tables where there is room for their columns; else each row's cells stand one below the
/// other.
void BasisPanel::rebuild(const BasisGroup& group) {
  const QWidget* focused = focusWidget();
  const QString focusName = focused != nullptr ? focused->objectName() : QString();
  tableWidths_.clear();
  QWidget* body = build(group);
  const auto stacks = [this](const BasisTable& table) { return isStacked(table); };
  if (std::ranges::any_of(group.tables, stacks)) body = build(group);
  shape_ = shape(group);
  if (focusName.isEmpty() || focusName == list_->objectName()) return;
  if (auto* again = body->findChild<QWidget*>(focusName)) again->setFocus();
}

void BasisPanel::update(const BasisGroup& group) {
  for (const BasisItem& item : group.items)
    updateOne(item.key, item.field, item.known);
  for (const BasisTable& table : group.tables) {
    for (std::size_t row = 0; row < table.rows.size(); ++row) {
      for (std::size_t c = 0; c < table.rows[row].size(); ++c) {
        const std::string key = table.key + "." + std::to_string(row) + "." + std::to_string(c);
        updateOne(key, table.rows[row][c], true);
      }
    }
  }
}

void BasisPanel::updateOne(const std::string& key, const Field& field, bool known) {
  const auto found = shown_.find(key);
  if (found == shown_.end()) return;
  Shown& shown = found->second;
  const bool same = shown.field.text == field.text && shown.field.current == field.current;
  shown.field = field;
  // What is being typed, or was refused, is left alone unless the plan changed below it.
  if (same && (shown.editor->hasFocus() || shown.failed)) return;
  if (!same) showInEditor(shown.editor, field);
  shown.failed = false;
  markWrong(shown.editor, false);
  showNote(shown, known);
}

void BasisPanel::showNote(Shown& shown, bool known) {
  if (shown.note == nullptr) return;
  const bool missing = !known && !shown.need.isEmpty();
  shown.note->remark(missing ? tr("Not known: %1 cannot be decided.").arg(shown.need) : QString());
}

void BasisPanel::write(const std::string& key, const QString& text) {
  const auto found = shown_.find(key);
  if (writing_ || found == shown_.end() || text == found->second.field.text) return;
  const Field field = found->second.field; // rebuilding replaces it
  commit(key, tr("Change %1").arg(field.label.toLower()), field.write(document_.plan(), text));
}

void BasisPanel::writeDraft(const BasisTable& table, int column, const QString& text) {
  const auto draft = drafts_.find(table.key);
  if (writing_ || draft == drafts_.end()) return;
  draft->second[static_cast<std::size_t>(column)] = text;
  for (const int needed : table.required) {
    if (draft->second[static_cast<std::size_t>(needed)].isEmpty()) return;
  }
  const FieldContext now{document_.plan(), document_.catalog(), nullptr};
  const std::vector<QString> texts = draft->second;
  const std::string key = table.key;
  if (commit(key, tr("Add %1").arg(table.noun), addBasisRow(now, table, texts))) {
    drafts_.erase(key);
  }
}

/// False when it was refused; then the reason stands below the field or table.
bool BasisPanel::commit(const std::string& key, const QString& step, const FieldResult& result) {
  QString reason = result.error;
  if (result.plan) {
    writing_ = true;
    const std::optional<Problem> problem = document_.commit(step, *result.plan);
    writing_ = false;
    if (problem) reason = problemWords(*problem, ". ");
  }
  tell(key, reason);
  later();
  return reason.isEmpty();
}

/// A cell tells its trouble below its table.
FieldNote* BasisPanel::noteOf(std::string key) const {
  while (true) {
    const auto found = shown_.find(key);
    if (found != shown_.end() && found->second.note != nullptr) return found->second.note;
    const std::size_t dot = key.rfind('.');
    if (dot == std::string::npos) return nullptr;
    key.resize(dot);
  }
}

void BasisPanel::tell(const std::string& key, const QString& reason) {
  if (const auto found = shown_.find(key); found != shown_.end()) {
    found->second.failed = !reason.isEmpty();
    if (found->second.editor != nullptr) markWrong(found->second.editor, found->second.failed);
    // So that the written form is shown.
    if (reason.isEmpty()) found->second.field.text = QString(QChar(0));
  }
  FieldNote* note = noteOf(key);
  if (note == nullptr) return;
  note->complain(reason.isEmpty() ? QString() : tr("Not changed: %1").arg(reason));
}

/// After the editor's own signal has run out: rebuilding deletes it.
void BasisPanel::later() {
  QTimer::singleShot(0, this, &BasisPanel::refresh);
}

} // namespace sump
