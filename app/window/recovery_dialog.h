#pragma once
// Asked at start after a crash: what was kept, from when, and what to do with each.

#include "app/window/recovery_file.h"

#include <QDialog>

#include <vector>

class QComboBox;
class QGridLayout;

namespace sump {

enum class RecoveryChoice { Open, Keep, Discard };

class RecoveryDialog : public QDialog {
  Q_OBJECT

public:
  explicit RecoveryDialog(const std::vector<Leftover>& leftovers, QWidget* parent = nullptr);
  /// One for each leftover. All are kept for the next start when the dialog was closed.
  std::vector<RecoveryChoice> choices() const;

private:
  void addRow(QGridLayout& grid, const Leftover& leftover);
  std::vector<QComboBox*> boxes_;
};

} // namespace sump
