#pragma once
// Which findings are listed: by weight, by text and by whether they were accepted.

#include "core/rules/finding.h"

#include <QWidget>

class QComboBox;
class QLineEdit;

namespace sump {

class FindingFilter : public QWidget {
  Q_OBJECT

public:
  explicit FindingFilter(QWidget* parent = nullptr);
  bool passes(const Finding& finding, bool accepted) const;

signals:
  void changed();

private:
  QComboBox* weight_ = nullptr;
  QComboBox* state_ = nullptr;
  QLineEdit* text_ = nullptr;
};

} // namespace sump
