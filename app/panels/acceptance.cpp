#include "app/panels/acceptance.h"

#include "app/window/field_note.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>

#include <algorithm>

namespace sump {

const Acceptance* acceptanceOf(const Plan& plan, std::string_view finding) {
  const auto it = std::find_if(plan.acceptances.begin(), plan.acceptances.end(),
                               [&](const Acceptance& a) { return a.finding == finding; });
  return it == plan.acceptances.end() ? nullptr : &*it;
}

Plan withAcceptance(Plan plan, Acceptance acceptance) {
  const std::string key = acceptance.finding;
  plan = withoutAcceptance(std::move(plan), key);
  plan.acceptances.push_back(std::move(acceptance));
  return plan;
}

Plan withoutAcceptance(Plan plan, std::string_view finding) {
  std::erase_if(plan.acceptances, [&](const Acceptance& a) { return a.finding == finding; });
  return plan;
}

AcceptanceDialog::AcceptanceDialog(const QString& finding, const QString& name, QWidget* parent)
    : QDialog(parent) {
  setWindowTitle(tr("Accept a finding"));
  auto* form = new QFormLayout(this);
  form->setRowWrapPolicy(QFormLayout::WrapAllRows);
  auto* what = new QLabel(finding, this);
  what->setTextFormat(Qt::PlainText);
  what->setWordWrap(true);
  what->setMinimumWidth(420);
  form->addRow(what);
  reason_ = new QPlainTextEdit(this);
  reason_->setTabChangesFocus(true);
  form->addRow(tr("&Reason"), reason_);
  reasonNote_ = new FieldNote(this);
  form->addRow(reasonNote_);
  name_ = new QLineEdit(name, this);
  form->addRow(tr("&Name"), name_);
  nameNote_ = new FieldNote(this);
  form->addRow(nameNote_);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
  buttons->addButton(tr("Accept it"), QDialogButtonBox::AcceptRole);
  connect(buttons, &QDialogButtonBox::accepted, this, &AcceptanceDialog::tryAccept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  form->addRow(buttons);
}

QString AcceptanceDialog::reason() const {
  return reason_->toPlainText().simplified();
}

QString AcceptanceDialog::name() const {
  return name_->text().simplified();
}

void AcceptanceDialog::tryAccept() {
  if (!reason().isEmpty() && !name().isEmpty()) {
    accept();
    return;
  }
  reasonNote_->complain(reason().isEmpty() ? tr("Write why it can stay as it is.") : QString());
  nameNote_->complain(name().isEmpty() ? tr("Write who answers for it.") : QString());
  markWrong(name_, name().isEmpty());
  (reason().isEmpty() ? static_cast<QWidget*>(reason_) : name_)->setFocus();
}

} // namespace sump
