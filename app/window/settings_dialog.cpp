#include "app/window/settings_dialog.h"

#include "app/window/help_dialogs.h"
#include "app/window/user_keys.h"

#include <QApplication>
#include <QCheckBox>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeySequenceEdit>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTreeWidget>
#include <QVBoxLayout>

namespace sump {

namespace {

QString commandName(const ActionRow& row) {
  return QCoreApplication::translate("Actions", row.text).remove('&').remove("...");
}

QString keysText(const ActionRow& row) {
  return QKeySequence::listToString(keysOf(row), QKeySequence::NativeText);
}

/// Every window takes the keys over at once.
void applyEverywhere() {
  for (QWidget* window : QApplication::topLevelWidgets()) {
    for (ActionSet* set : window->findChildren<ActionSet*>())
      set->applyKeys();
  }
}

} // namespace

SettingsDialog::SettingsDialog(ActionSet& actions, const QString& keptState, QWidget* parent)
    : QDialog(parent), actions_(actions) {
  setWindowTitle(tr("Settings"));
  auto* column = new QVBoxLayout(this);
  addLook(*column, keptState);
  addKeys(*column);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  column->addWidget(buttons);
  fill();
  currentChanged();
  resize(sizeHint().expandedTo({620, 640}));
}

void SettingsDialog::addLook(QVBoxLayout& column, const QString& keptState) {
  for (ActionId id : {ActionId::DarkWindow, ActionId::DarkDrawing}) {
    QAction* action = actions_.at(id);
    auto* box = new QCheckBox(action->text().remove('&'), this);
    box->setChecked(action->isChecked());
    connect(box, &QCheckBox::clicked, action, &QAction::trigger);
    column.addWidget(box);
  }
  auto* kept = new QLabel(
      tr("Every change is kept for recovery within two seconds. %1").arg(keptState), this);
  kept->setWordWrap(true);
  column.addWidget(kept);
}

void SettingsDialog::addKeys(QVBoxLayout& column) {
  list_ = new QTreeWidget(this);
  list_->setHeaderLabels({tr("Command"), tr("Key")});
  list_->setRootIsDecorated(false);
  list_->setAccessibleName(tr("Keys of the commands"));
  list_->header()->setSectionResizeMode(0, QHeaderView::ResizeToContents);
  column.addWidget(list_, 1);
  auto* row = new QHBoxLayout;
  key_ = new QKeySequenceEdit(this);
  key_->setAccessibleName(tr("New key"));
  if (auto* line = key_->findChild<QLineEdit*>())
    line->setMinimumWidth(line->fontMetrics().horizontalAdvance(line->placeholderText()) + 24);
  set_ = new QPushButton(tr("Set key"), this);
  none_ = new QPushButton(tr("No key"), this);
  usual_ = new QPushButton(tr("Usual key"), this);
  auto* all = new QPushButton(tr("All usual keys"), this);
  all->setObjectName("all-usual-keys");
  row->addWidget(key_, 1);
  for (QPushButton* button : {set_, none_, usual_, all}) {
    button->setAutoDefault(false);
    row->addWidget(button);
  }
  column.addLayout(row);
  answer_ = new QLabel(this);
  answer_->setObjectName("key-answer");
  answer_->setWordWrap(true);
  column.addWidget(answer_);
  connect(list_, &QTreeWidget::currentItemChanged, this, &SettingsDialog::currentChanged);
  connect(set_, &QPushButton::clicked, this, &SettingsDialog::setKey);
  connect(none_, &QPushButton::clicked, this, [this] { put({}); });
  connect(usual_, &QPushButton::clicked, this, [this] { put(usualKeysOf(*current())); });
  connect(all, &QPushButton::clicked, this, [this] {
    forgetAllUserKeys();
    refresh();
    answer_->setText(tr("All commands have their usual keys."));
  });
}

void SettingsDialog::fill() {
  QTreeWidgetItem* menu = nullptr;
  for (const ActionRow& row : actionTable()) {
    const QString title = QCoreApplication::translate("Actions", menuTitle(row.menu)).remove('&');
    if (menu == nullptr || menu->text(0) != title) {
      menu = new QTreeWidgetItem(list_, {title});
      menu->setFlags(Qt::ItemIsEnabled);
    }
    auto* item = new QTreeWidgetItem(menu, {commandName(row), keysText(row)});
    item->setData(0, Qt::UserRole, QString(row.name));
  }
  list_->expandAll();
  showColumnsWhole(*list_);
}

void SettingsDialog::choose(const QString& action) {
  for (QTreeWidgetItemIterator it(list_); *it != nullptr; ++it) {
    if ((*it)->data(0, Qt::UserRole).toString() == action) list_->setCurrentItem(*it);
  }
}

const ActionRow* SettingsDialog::current() const {
  const QTreeWidgetItem* item = list_->currentItem();
  if (item == nullptr) return nullptr;
  const QString name = item->data(0, Qt::UserRole).toString();
  for (const ActionRow& row : actionTable()) {
    if (name == row.name) return &row;
  }
  return nullptr;
}

void SettingsDialog::currentChanged() {
  const ActionRow* row = current();
  for (QWidget* widget : {static_cast<QWidget*>(key_), static_cast<QWidget*>(set_),
                          static_cast<QWidget*>(none_), static_cast<QWidget*>(usual_)})
    widget->setEnabled(row != nullptr);
  key_->clear();
  answer_->setText(row == nullptr ? tr("Choose a command, then press its new key.")
                                  : QCoreApplication::translate("Actions", row->tip));
}

void SettingsDialog::setKey() {
  const ActionRow* row = current();
  const QKeySequence key = key_->keySequence();
  if (row == nullptr || key.isEmpty()) return;
  put({key});
}

void SettingsDialog::put(const QList<QKeySequence>& keys) {
  const ActionRow* row = current();
  if (row == nullptr) return;
  for (const QKeySequence& key : keys) { // the usual key may have been given away
    if (const ActionRow* owner = ownerOf(key, *row)) {
      answer_->setText(tr("%1 is the key of \"%2\". Give that another key first.")
                           .arg(key.toString(QKeySequence::NativeText), commandName(*owner)));
      return;
    }
  }
  setUserKeys(*row, keys);
  refresh();
  answer_->setText(keys.isEmpty()
                       ? tr("\"%1\" has no key.").arg(commandName(*row))
                       : tr("\"%1\" has the key %2.").arg(commandName(*row), keysText(*row)));
}

void SettingsDialog::refresh() {
  applyEverywhere();
  for (QTreeWidgetItemIterator it(list_); *it != nullptr; ++it) {
    const QString name = (*it)->data(0, Qt::UserRole).toString();
    for (const ActionRow& row : actionTable()) {
      if (name == row.name) (*it)->setText(1, keysText(row));
    }
  }
}

} // namespace sump
