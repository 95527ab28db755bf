#pragma once
// Which findings are listed: by weight, by trade or service, by text and by whether they were
// accepted.

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
  void fillAbout();
  bool isAbout(const Finding& finding) const;

  QComboBox* weight_ = nullptr;
  QComboBox* about_ = nullptr; ///< a trade or a service
  QComboBox* state_ = nullptr;
  QLineEdit* text_ = nullptr;
};

} // namespace sump
