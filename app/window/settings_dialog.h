#pragma once
// The key of every command, and how the window looks.

#include "app/window/action_set.h"

#include <QDialog>

class QKeySequenceEdit;
class QLabel;
class QPushButton;
class QTreeWidget;
class QTreeWidgetItem;
class QVBoxLayout;

namespace sump {

class SettingsDialog : public QDialog {
  Q_OBJECT

public:
  /// `keptState`: what recovery says of the plan at the moment; may be empty.
  SettingsDialog(ActionSet& actions, const QString& keptState, QWidget* parent = nullptr);
  /// Chooses the command of this name in the list.
  void choose(const QString& action);

private:
  void addLook(QVBoxLayout& column, const QString& keptState);
  void addKeys(QVBoxLayout& column);
  void fill();
  const ActionRow* current() const;
  void currentChanged();
  void setKey();
  void put(const QList<QKeySequence>& keys);
  void refresh();

  ActionSet& actions_;
  QTreeWidget* list_ = nullptr;
  QKeySequenceEdit* key_ = nullptr;
  QLabel* answer_ = nullptr;
  QPushButton* set_ = nullptr;
  QPushButton* none_ = nullptr;
  QPushButton* usual_ = nullptr;
};

} // namespace sump
