#include "app/window/guided_dialog.h"

#include "app/core_text.h"
#include "app/window/field_note.h"
#include "app/window/glossary.h"

#include "core/units/parse.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

namespace sump {

namespace {

/// Nothing typed is nothing known. Returns why the text is no such quantity, or nothing.
template <class Q, class Parse>
QString take(const QLineEdit& edit, UnitSystem units, Parse parse, std::optional<Q>& into) {
  into.reset();
  const QString text = edit.text().trimmed();
  if (text.isEmpty()) return {};
  const Parsed<Q> parsed = parse(text.toStdString(), units);
  if (!parsed) return typedProblem(parsed.error, text);
  into = parsed.value;
  return {};
}

} // namespace

GuidedDialog::GuidedDialog(QWidget* parent) : QDialog(parent) {
  setWindowTitle(tr("A new plan in six answers"));
  auto* form = new QFormLayout(this);
  form->setRowWrapPolicy(QFormLayout::WrapLongRows);
  auto* intro = new QLabel(tr("Every answer may be left out and changed later."), this);
  intro->setWordWrap(true);
  form->addRow(intro);
  units_ = new QComboBox(this);
  units_->setObjectName("guided-units");
  units_->addItem(tr("Feet, inches, gallons"));
  units_->addItem(tr("Metres, litres"));
  form->addRow(tr("&Units"), units_);
  length_ =
      addEntry(*form, tr("Site, west to &east"), "guided-length", tr("Such as 120 ft or 36 m"));
  width_ =
      addEntry(*form, tr("Site, &south to north"), "guided-width", tr("Such as 80 ft or 24 m"));
  ground_ = addEntry(*form, tr("&Ground elevation"), "guided-ground",
                     tr("Height of the ground above the site's datum, such as 100"));
  flow_ = addEntry(*form, tr("&Wash flow"), "guided-flow",
                   tr("What the wash equipment draws at its peak, such as 40 gpm or 150 L/min"));
  sewer_ = addEntry(*form, tr("Sewer &invert"), "guided-sewer",
                    tr("Inside bottom of the sewer pipe where the overflow joins it"));
  side_ = new QComboBox(this);
  side_->setObjectName("guided-side");
  for (const QString& name :
       {tr("Not known yet"), tr("South"), tr("East"), tr("North"), tr("West")})
    side_->addItem(name);
  form->addRow(tr("E&quipment room on the side"), side_);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
  buttons->addButton(tr("Make the plan"), QDialogButtonBox::AcceptRole);
  connect(buttons, &QDialogButtonBox::accepted, this, &GuidedDialog::tryAccept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  form->addRow(buttons);
}

GuidedDialog::Entry GuidedDialog::addEntry(QFormLayout& form, const QString& label,
                                           const char* name, const QString& tip) {
  Entry entry{new QLineEdit(this), new FieldNote(this)};
  entry.edit->setObjectName(name);
  entry.edit->setToolTip(tipWithTerms(QString(label).remove('&'), tip));
  entry.edit->setPlaceholderText(tr("not known yet"));
  form.addRow(label, entry.edit);
  form.labelForField(entry.edit)->setToolTip(entry.edit->toolTip());
  form.addRow(entry.error);
  connect(entry.edit, &QLineEdit::textEdited, entry.error, [entry] {
    entry.error->hide();
    markWrong(entry.edit, false);
  });
  return entry;
}

void GuidedDialog::fail(const Entry& entry, const QString& reason) {
  entry.error->complain(reason);
  markWrong(entry.edit, true);
  entry.edit->setFocus();
}

void GuidedDialog::tryAccept() {
  const UnitSystem units =
      units_->currentIndex() == 0 ? UnitSystem::UsCustomary : UnitSystem::Metric;
  answers_.units = units;
  answers_.equipmentSide.reset();
  constexpr Side kSides[] = {Side::South, Side::East, Side::North, Side::West};
  if (side_->currentIndex() > 0) answers_.equipmentSide = kSides[side_->currentIndex() - 1];
  const std::pair<const Entry*, QString> read[] = {
      {&length_, take(*length_.edit, units, parseLength, answers_.siteLength)},
      {&width_, take(*width_.edit, units, parseLength, answers_.siteWidth)},
      {&ground_, take(*ground_.edit, units, parseLength, answers_.ground)},
      {&flow_, take(*flow_.edit, units, parseFlow, answers_.washFlow)},
      {&sewer_, take(*sewer_.edit, units, parseLength, answers_.sewerInvert)}};
  for (const auto& [entry, reason] : read) {
    if (!reason.isEmpty()) return fail(*entry, reason);
  }
  switch (problemOf(answers_).field) {
  case GuidedProblem::SiteLength:
    return fail(length_, tr("A site is longer than nothing."));
  case GuidedProblem::SiteWidth:
    return fail(width_, tr("A site is wider than nothing."));
  case GuidedProblem::WashFlow:
    return fail(flow_, tr("Give a flow above zero, or leave it out."));
  case GuidedProblem::SewerInvert:
    return fail(sewer_, tr("The sewer would lie above the ground."));
  case GuidedProblem::None:
    break;
  }
  accept();
}

} // namespace sump
