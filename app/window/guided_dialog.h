#pragma once
// Asks the six things that a first plan needs.

#include "app/window/guided_plan.h"

#include <QDialog>

class QComboBox;
class QFormLayout;
class QLineEdit;

namespace sump {

class FieldNote;

class GuidedDialog : public QDialog {
  Q_OBJECT

public:
  explicit GuidedDialog(QWidget* parent = nullptr);
  /// Good once the dialog was accepted.
  const GuidedAnswers& answers() const { return answers_; }

private:
  struct Entry {
    QLineEdit* edit = nullptr;
    FieldNote* error = nullptr;
  };
  Entry addEntry(QFormLayout& form, const QString& label, const char* name, const QString& tip);
  void tryAccept();
  void fail(const Entry& entry, const QString& reason);

  QComboBox* units_ = nullptr;
  QComboBox* side_ = nullptr;
  Entry length_, width_, ground_, flow_, sewer_;
  GuidedAnswers answers_;
};

} // namespace sump
