// How 'What we know' lays out a group: single figures in columns, tables as tables or, where they
// would be too wide, each row as a small form of its own.

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
#include <QScrollBar>
#include <QVBoxLayout>

namespace sump {

namespace {

constexpr int kMargin = 12;
constexpr int kLabelWidth = 128, kBeside = 8, kBetween = 18;
constexpr int kAnyWidth = std::numeric_limits<int>::max();

/// The first column of a table often holds a name.
constexpr int kNameWidth = 130;

/// In tables there is room for every choice.
void showWhole(QWidget* editor) {
  auto* combo = qobject_cast<QComboBox*>(editor);
  if (combo == nullptr) return;
  combo->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  combo->setMinimumWidth(combo->sizeHint().width());
}

QString draftKeyEnd() {
  return ".new";
}

QLabel* labelOf(const QString& text, const QString& tip, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setWordWrap(true);
  label->setToolTip(tipWithTerms(text, tip));
  return label;
}

/// Labels with their fields, in as many columns as there is room for, a line for a note below each.
class Pairs {
public:
  Pairs(QVBoxLayout& column, int across)
      : grid_(new QGridLayout), parent_(column.parentWidget()), across_(across) {
    grid_->setHorizontalSpacing(kBeside);
    grid_->setVerticalSpacing(2);
    for (int c = 0; c < across; ++c) {
      grid_->setColumnMinimumWidth(c * 3, kLabelWidth);
      grid_->setColumnStretch(c * 3 + 1, 1);
      if (c + 1 < across) grid_->setColumnMinimumWidth(c * 3 + 2, kBetween);
    }
    column.addLayout(grid_);
  }
  /// `wide`: over all columns.
  void add(QLabel* label, QWidget* editor, bool wide = false, QWidget* note = nullptr) {
    if (wide && next_ % across_ != 0) next_ += across_ - next_ % across_;
    const int row = next_ / across_ * 2, at = next_ % across_ * 3;
    const int cells = wide ? across_ * 3 - 2 : 1;
    if (label != nullptr) {
      label->setBuddy(editor);
      grid_->addWidget(label, row, at);
    }
    grid_->addWidget(editor, row, at + 1, 1, cells);
    if (note != nullptr) grid_->addWidget(note, row + 1, at, 1, cells + 1);
    next_ += wide ? across_ : 1;
  }
  QWidget* parent() const { return parent_; }

private:
  QGridLayout* grid_;
  QWidget* parent_;
  int across_;
  int next_ = 0;
};

} // namespace

/// For what a group shows, beside the list of groups.
int BasisPanel::room() const {
  return width() - list_->minimumWidth() - area_->verticalScrollBar()->sizeHint().width() -
         2 * kMargin;
}

/// Of a field beside its label in one of so many columns.
int BasisPanel::fieldWidth(int across) const {
  const int gaps = (across - 1) * (kBetween + 2 * kBeside);
  return (room() - gaps) / across - kLabelWidth - kBeside;
}

bool BasisPanel::isStacked(const BasisTable& table) const {
  const auto found = tableWidths_.find(table.key);
  return found != tableWidths_.end() && found->second > room();
}

QWidget* BasisPanel::build(const BasisGroup& group) {
  shown_.clear();
  auto* body = new QWidget;
  auto* column = new QVBoxLayout(body);
  column->setContentsMargins(kMargin, 8, kMargin, 10);
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
  return body;
}

QWidget* BasisPanel::make(const std::string& key, const Field& field,
                          std::function<void(const QString&)> write, int room) {
  Shown shown;
  shown.field = field;
  shown.editor = makeFieldEditor(field, std::move(write), room);
  shown.editor->setObjectName(sump::shown(key));
  QWidget* editor = shown.editor;
  shown_[key] = std::move(shown);
  return editor;
}

void BasisPanel::addItems(const BasisGroup& group, QVBoxLayout& column) {
  Pairs pairs(column, columns());
  for (const BasisItem& item : group.items) {
    const bool wide = wholeWidth(item.field) > fieldWidth(columns());
    QWidget* editor = make(
        item.key, item.field, [this, key = item.key](const QString& text) { write(key, text); },
        fieldWidth(1));
    Shown& shown = shown_.at(item.key);
    shown.need = item.need;
    shown.note = new FieldNote(pairs.parent());
    pairs.add(labelOf(item.field.label, item.field.tip, pairs.parent()), editor, wide, shown.note);
    showNote(shown, item.known);
  }
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
  addRows(table, column);
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
  add->setEnabled(!drafts_.contains(table.key));
  connect(add, &QPushButton::clicked, this, [this, key = table.key, cells = table.draft.size()] {
    drafts_[key] = std::vector<QString>(cells);
    refresh();
    if (QWidget* first = editor(key + draftKeyEnd().toStdString() + ".0")) first->setFocus();
  });
  column.addWidget(add);
}

void BasisPanel::addRows(const BasisTable& table, QVBoxLayout& column) {
  std::vector<TableLine> lines;
  for (std::size_t row = 0; row < table.rows.size(); ++row)
    lines.push_back(lineOf(table, row));
  if (drafts_.contains(table.key)) lines.push_back(draftLine(table));
  if (lines.empty()) return;
  if (isStacked(table)) {
    for (const TableLine& line : lines)
      addStacked(table, line, column);
    return;
  }
  auto* grid = new QGridLayout;
  grid->setHorizontalSpacing(4);
  grid->setVerticalSpacing(2);
  column.addLayout(grid);
  addHeadings(table, *grid);
  for (std::size_t i = 0; i < lines.size(); ++i)
    addAcross(lines[i], *grid, static_cast<int>(i) + 1);
  tableWidths_[table.key] = grid->minimumSize().width();
}

void BasisPanel::addHeadings(const BasisTable& table, QGridLayout& grid) {
  for (int c = 0; c < table.headings.size(); ++c) {
    const QString& tip = table.draft[static_cast<std::size_t>(c)].tip;
    grid.addWidget(labelOf(table.headings[c], tip, grid.parentWidget()), 0, c);
  }
}

/// No cell is cut.
void BasisPanel::addAcross(const TableLine& line, QGridLayout& grid, int row) {
  int c = 0;
  for (QWidget* cell : line.cells) {
    grid.addWidget(cell, row, c);
    if (auto* text = qobject_cast<QLineEdit*>(cell)) {
      constexpr int kBesideText = 18; // frame and cursor
      const int whole = text->fontMetrics().horizontalAdvance(text->text()) + kBesideText;
      grid.setColumnMinimumWidth(
          c, std::max({grid.columnMinimumWidth(c), c == 0 ? kNameWidth : 0, whole}));
    }
    ++c;
  }
  grid.addWidget(line.remove, row, c);
}

void BasisPanel::addStacked(const BasisTable& table, const TableLine& line, QVBoxLayout& column) {
  column.addWidget(new QLabel(line.name, column.parentWidget()));
  Pairs pairs(column, columns());
  for (std::size_t c = 0; c < line.cells.size(); ++c) {
    const QString& heading = table.headings[static_cast<qsizetype>(c)];
    const bool wide = line.cells[c]->minimumWidth() > fieldWidth(columns());
    pairs.add(labelOf(heading, table.draft[c].tip, pairs.parent()), line.cells[c], wide);
  }
  line.remove->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
  pairs.add(nullptr, line.remove);
}

BasisPanel::TableLine BasisPanel::lineOf(const BasisTable& table, std::size_t row) {
  const std::string base = table.key + "." + std::to_string(row);
  const int room = isStacked(table) ? fieldWidth(columns()) : kAnyWidth;
  TableLine line;
  line.name = sentenceCase(tr("%1 %2").arg(table.noun).arg(row + 1));
  for (std::size_t c = 0; c < table.rows[row].size(); ++c) {
    const std::string key = base + "." + std::to_string(c);
    line.cells.push_back(make(
        key, table.rows[row][c], [this, key](const QString& text) { write(key, text); }, room));
    showWhole(line.cells.back());
  }
  line.remove = new QPushButton(tr("Remove"));
  line.remove->setObjectName(shown(base) + ".remove");
  line.remove->setAccessibleName(tr("Remove %1 %2").arg(table.noun).arg(row + 1));
  line.remove->setToolTip(tipWithTerms(line.remove->accessibleName(), {}));
  connect(line.remove, &QPushButton::clicked, this, [this, key = table.key, row] {
    const BasisTable* list = this->table(key);
    if (list != nullptr)
      commit(key, tr("Remove %1").arg(list->noun), {list->remove(document_.plan(), row), {}});
  });
  return line;
}

BasisPanel::TableLine BasisPanel::draftLine(const BasisTable& table) {
  const std::string base = table.key + draftKeyEnd().toStdString();
  TableLine line;
  line.name = tr("New %1").arg(table.noun);
  int c = 0;
  for (const Field& cell : table.draft) {
    Field typed = cell;
    typed.text = drafts_[table.key][static_cast<std::size_t>(c)];
    const auto write = [this, key = table.key, c](const QString& text) {
      if (const BasisTable* list = this->table(key)) writeDraft(*list, c, text);
    };
    line.cells.push_back(make(base + "." + std::to_string(c), typed, write, kAnyWidth));
    auto* text = qobject_cast<QLineEdit*>(line.cells.back());
    if (text != nullptr && std::ranges::find(table.required, c) != table.required.end())
      text->setPlaceholderText(tr("needed"));
    showWhole(line.cells.back());
    ++c;
  }
  line.remove = new QPushButton(tr("Drop"));
  line.remove->setObjectName(shown(base) + ".remove");
  line.remove->setAccessibleName(tr("Drop the new %1").arg(table.noun));
  connect(line.remove, &QPushButton::clicked, this, [this, key = table.key] {
    drafts_.erase(key);
    later();
  });
  return line;
}

} // namespace sump
