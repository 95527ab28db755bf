#include "app/panels/basis_panel.h"

#include "app/core_text.h"

#include "app/panels/field_editor.h"
#include "app/window/field_note.h"
#include "app/window/glossary.h"

#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QScrollArea>
#include <QTimer>
#include <QVBoxLayout>

namespace sump {

namespace {

constexpr int kListWidth = 178;
/// A figure's label, editor and note need about this much.
constexpr int kColumnWidth = 330;

/// The first column of a table often holds a name.
constexpr int kNameWidth = 130;

/// In tables there is room for every choice; the form scrolls.
void showWhole(QWidget* editor) {
  auto* combo = qobject_cast<QComboBox*>(editor);
  if (combo == nullptr) return;
  combo->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  combo->setMinimumWidth(combo->sizeHint().width());
}

QString draftKeyEnd() {
  return ".new";
}

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
  area_->setProperty("many-columns", true); // of its tables
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
  for (const BasisItem& item : group.items)
    text += item.field.label + item.field.choices.join('|');
  for (const BasisTable& table : group.tables) {
    text += QString(" %1 %2 %3 ")
                .arg(shown(table.key))
                .arg(table.rows.size())
                .arg(drafts_.contains(table.key));
    for (const Field& cell : table.draft)
      text += cell.choices.join('|');
  }
  return text;
}

void BasisPanel::rebuild(const BasisGroup& group) {
  const QWidget* focused = focusWidget();
  const QString focusName = focused != nullptr ? focused->objectName() : QString();
  shape_ = shape(group);
  shown_.clear();
  auto* body = new QWidget;
  auto* column = new QVBoxLayout(body);
  column->setContentsMargins(12, 8, 12, 10);
  column->setSpacing(6);
  if (!group.lead.isEmpty()) {
    auto* lead = new QLabel(group.lead, body);
    lead->setWordWrap(true);
    column->addWidget(lead);
  }
  addItems(group, *column);
  for (const BasisTable& table : group.tables)
    addTable(table, *column);
  column->addStretch();
  area_->setWidget(body); // deletes the old one
  if (focusName.isEmpty() || focusName == list_->objectName()) return;
  if (auto* again = body->findChild<QWidget*>(focusName)) again->setFocus();
}

void BasisPanel::addItems(const BasisGroup& group, QVBoxLayout& column) {
  auto* grid = new QGridLayout;
  grid->setHorizontalSpacing(8);
  grid->setVerticalSpacing(2);
  const int across = columns();
  for (int c = 0; c < across; ++c) {
    grid->setColumnMinimumWidth(c * 3, 128);
    grid->setColumnStretch(c * 3 + 1, 1);
    if (c + 1 < across) grid->setColumnMinimumWidth(c * 3 + 2, 18);
  }
  int i = 0;
  for (const BasisItem& item : group.items) {
    const int row = i / across * 2, at = i % across * 3;
    auto* label = new QLabel(item.field.label, column.parentWidget());
    label->setToolTip(tipWithTerms(item.field.label, item.field.tip));
    label->setWordWrap(true);
    grid->addWidget(label, row, at);
    place(item.key, item.field, *grid, row, at + 1);
    Shown& shown = shown_.at(item.key);
    label->setBuddy(shown.editor);
    shown.need = item.need;
    shown.note = new FieldNote(column.parentWidget());
    grid->addWidget(shown.note, row + 1, at, 1, 2);
    showNote(shown, item.known);
    ++i;
  }
  column.addLayout(grid);
}

void BasisPanel::place(const std::string& key, const Field& field, QGridLayout& grid, int row,
                       int column) {
  Shown shown;
  shown.field = field;
  shown.editor = makeFieldEditor(field, [this, key](const QString& text) { write(key, text); });
  shown.editor->setObjectName(sump::shown(key));
  grid.addWidget(shown.editor, row, column);
  shown_[key] = std::move(shown);
}

void BasisPanel::addTable(const BasisTable& table, QVBoxLayout& column) {
  QWidget* parent = column.parentWidget();
  auto* title = new QLabel(table.title, parent);
  QFont font = title->font();
  font.setBold(true);
  title->setFont(font);
  title->setContentsMargins(0, 8, 0, 0);
  title->setToolTip(tipWithTerms(table.title, {}));
  column.addWidget(title);
  auto* grid = new QGridLayout;
  grid->setHorizontalSpacing(4);
  grid->setVerticalSpacing(2);
  const bool draft = drafts_.contains(table.key);
  if (!table.rows.empty() || draft) {
    for (int c = 0; c < table.headings.size(); ++c) {
      auto* heading = new QLabel(table.headings[c], parent);
      heading->setWordWrap(true);
      heading->setToolTip(
          tipWithTerms(table.headings[c], table.draft[static_cast<std::size_t>(c)].tip));
      grid->addWidget(heading, 0, c);
    }
  }
  for (std::size_t row = 0; row < table.rows.size(); ++row)
    addRow(table, row, *grid);
  if (draft) addDraft(table, *grid);
  column.addLayout(grid);
  Shown end;
  end.need = table.need;
  end.note = new FieldNote(parent);
  column.addWidget(end.note);
  showNote(end, !table.rows.empty());
  shown_[table.key] = std::move(end);
  auto* add = new QPushButton(tr("Add a %1").arg(table.noun), parent);
  add->setToolTip(tipWithTerms(add->text(), {}));
  add->setObjectName(shown(table.key) + ".add");
  add->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
  add->setEnabled(!draft);
  connect(add, &QPushButton::clicked, this, [this, key = table.key, cells = table.draft.size()] {
    drafts_[key] = std::vector<QString>(cells);
    refresh();
    if (QWidget* first = editor(key + draftKeyEnd().toStdString() + ".0")) first->setFocus();
  });
  column.addWidget(add);
}

void BasisPanel::addRow(const BasisTable& table, std::size_t row, QGridLayout& grid) {
  const std::string base = table.key + "." + std::to_string(row);
  int c = 0;
  for (const Field& cell : table.rows[row]) {
    place(base + "." + std::to_string(c), cell, grid, static_cast<int>(row) + 1, c);
    showWhole(editor(base + "." + std::to_string(c)));
    if (auto* line = qobject_cast<QLineEdit*>(editor(base + "." + std::to_string(c)))) {
      constexpr int kBesideText = 18; // frame and cursor
      const int whole = line->fontMetrics().horizontalAdvance(cell.text) + kBesideText;
      grid.setColumnMinimumWidth(
          c, std::max({grid.columnMinimumWidth(c), c == 0 ? kNameWidth : 0, whole}));
    }
    ++c;
  }
  auto* remove = new QPushButton(tr("Remove"), grid.parentWidget());
  remove->setObjectName(shown(base) + ".remove");
  remove->setAccessibleName(tr("Remove %1 %2").arg(table.noun).arg(row + 1));
  remove->setToolTip(tipWithTerms(remove->accessibleName(), {}));
  connect(remove, &QPushButton::clicked, this, [this, key = table.key, row] {
    const BasisTable* list = this->table(key);
    if (list != nullptr)
      commit(key, tr("Remove %1").arg(list->noun), {list->remove(document_.plan(), row), {}});
  });
  grid.addWidget(remove, static_cast<int>(row) + 1, c);
}

void BasisPanel::addDraft(const BasisTable& table, QGridLayout& grid) {
  const std::string base = table.key + draftKeyEnd().toStdString();
  const int row = static_cast<int>(table.rows.size()) + 1;
  int c = 0;
  for (const Field& cell : table.draft) {
    Shown shown;
    shown.field = cell;
    shown.field.text = drafts_[table.key][static_cast<std::size_t>(c)];
    shown.editor = makeFieldEditor(shown.field, [this, key = table.key, c](const QString& text) {
      if (const BasisTable* list = this->table(key)) writeDraft(*list, c, text);
    });
    const std::string key = base + "." + std::to_string(c);
    shown.editor->setObjectName(sump::shown(key));
    if (auto* line = qobject_cast<QLineEdit*>(shown.editor);
        line != nullptr && std::ranges::find(table.required, c) != table.required.end()) {
      line->setPlaceholderText(tr("needed"));
    }
    showWhole(shown.editor);
    grid.addWidget(shown.editor, row, c);
    shown_[key] = std::move(shown);
    ++c;
  }
  auto* drop = new QPushButton(tr("Drop"), grid.parentWidget());
  drop->setObjectName(shown(base) + ".remove");
  drop->setAccessibleName(tr("Drop the new %1").arg(table.noun));
  connect(drop, &QPushButton::clicked, this, [this, key = table.key] {
    drafts_.erase(key);
    later();
  });
  grid.addWidget(drop, row, c);
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
