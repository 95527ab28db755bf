#pragma once
// Which table of start-up and upkeep the sheets and the calendar are made from: the built-in one,
// or one of the user's own.

#include "core/study/upkeep_table.h"

#include <QDialog>

class QLabel;
class QPushButton;

namespace sump {

class Talk;

/// The user's own table, else the built-in one. Throws CatalogError when the own one cannot be
/// used: sheets by another table than was asked for would be worse than none.
UpkeepTable chosenUpkeep();

class UpkeepTableDialog : public QDialog {
  Q_OBJECT

public:
  /// `talk` must outlive the dialog.
  UpkeepTableDialog(Talk& talk, QWidget* parent);
  void choose();
  void writeStart();
  void useBuiltin();

private:
  void show(const QString& path);

  Talk& talk_;
  QLabel* used_ = nullptr;
  QPushButton* builtin_ = nullptr;
};

} // namespace sump
