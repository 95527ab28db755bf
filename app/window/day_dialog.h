#pragma once
// Asks for a day.

#include <QDate>
#include <QDialog>

class QDateEdit;

namespace sump {

class DayDialog : public QDialog {
  Q_OBJECT
public:
  DayDialog(const QString& title, const QString& label, QDate shown, QWidget* parent);
  QDate day() const;

private:
  QDateEdit* edit_;
};

} // namespace sump
