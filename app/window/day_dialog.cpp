#include "app/window/day_dialog.h"

#include <QDateEdit>
#include <QDialogButtonBox>
#include <QLabel>
#include <QVBoxLayout>

namespace sump {

DayDialog::DayDialog(const QString& title, const QString& label, QDate shown, QWidget* parent)
    : QDialog(parent), edit_(new QDateEdit(shown, this)) {
  setWindowTitle(title);
  edit_->setCalendarPopup(true);
  edit_->setDisplayFormat(QStringLiteral("yyyy-MM-dd")); // ISO 8601, as everywhere in a plan
  auto* text = new QLabel(label, this);
  text->setBuddy(edit_);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  auto* column = new QVBoxLayout(this);
  column->addWidget(text);
  column->addWidget(edit_);
  column->addWidget(buttons);
}

QDate DayDialog::day() const {
  return edit_->date();
}

} // namespace sump
