#include "app/window/compare_dialog.h"

#include "app/core_text.h"
#include "app/paint/paint.h"
#include "app/panels/tables.h"
#include "app/plain_text.h"
#include "app/window/document.h"
#include "app/window/talk.h"

#include "core/exchange/change_lists.h"
#include "core/exchange/compare_plans.h"
#include "core/exchange/plan_file.h"
#include "core/sheet/compose.h"

#include <QDialogButtonBox>
#include <QFileInfo>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace sump {

namespace {

/// `none` and `not given` are said of what somebody wrote, too.
QString valueWords(const PlanChange& change, const std::string& value, const KeptWords& kept) {
  const bool written = change.ownWords && value != kNotGiven && value != kNone;
  return written ? q(value) : coreFilled(value, kept);
}

/// Step by step: a language needs no sentence for each way through the plan.
QString subjectWords(const PlanChange& change, const KeptWords& kept) {
  // Of the project, the site and the like the kind of change says it already.
  const bool said =
      change.called.empty() && change.noun == name(change.kind) && !change.what.empty();
  QStringList steps;
  PlanChange named = change;
  if (named.noun == "run") named.noun = "line"; // as the window calls it
  if (!said) steps << coreFilled(objectWords(named), kept);
  if (change.kind == ChangeKind::Limits) {
    steps << coreText(change.what); // a limit's title may have colons of its own
  } else {
    for (const QString& step : q(change.what).split(": ", Qt::SkipEmptyParts))
      steps << coreFilled(step.toStdString(), kept);
  }
  return sentenceCase(steps.join(": "));
}

/// The window's own name for what the calculations start from.
QString kindWords(ChangeKind kind) {
  return kind == ChangeKind::Basis ? CompareDialog::tr("What we know") : coreWord(name(kind));
}

TableRow changeRow(const PlanChange& change, const KeptWords& kept) {
  TableRow row{{kindWords(change.kind), subjectWords(change, kept),
                valueWords(change, change.before, kept), valueWords(change, change.after, kept),
                coreFilled(change.difference, kept)},
               {},
               {}};
  if (!change.object.empty()) row.objects.insert(change.object);
  return row;
}

/// What the two plans call things.
KeptWords keptOf(const Plan& plan, const PlanComparison& comparison) {
  QStringList names = namesIn(plan);
  for (const PlanChange& change : comparison.changes)
    names << q(change.called) << q(change.part);
  return KeptWords(names);
}

} // namespace

CompareDialog::CompareDialog(ReviewedPtr reviewed, PlanComparison comparison, Talk& talk,
                             QWidget* parent)
    : QDialog(parent), reviewed_(std::move(reviewed)), comparison_(std::move(comparison)),
      talk_(talk) {
  setWindowTitle(tr("Changes since %1").arg(q(comparison_.earlier)));
  changes_ = new ObjectTable({tr("Change"), tr("What"), tr("Before"), tr("After"), tr("By")},
                             tr("Changes of the plan"), this);
  bill_ = new ObjectTable(
      {tr("To buy"), tr("Size"), tr(">Before"), tr(">After"), tr(">By"), tr("Unit")},
      tr("Change in the bill of materials"), this);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close);
  const auto button = [&](const QString& text, void (CompareDialog::*work)()) {
    connect(buttons->addButton(text, QDialogButtonBox::ActionRole), &QPushButton::clicked, this,
            work);
  };
  button(tr("Save &list..."), &CompareDialog::saveList);
  button(tr("Clouded sheets to &PDF..."), &CompareDialog::saveSheets);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::close);
  auto* column = new QVBoxLayout(this);
  column->addWidget(new QLabel(tr("Changes of the plan")));
  column->addWidget(changes_, 2);
  column->addWidget(new QLabel(tr("Change in the bill of materials")));
  column->addWidget(bill_, 1);
  column->addWidget(buttons);
  resize(900, 640);
  fill();
  connect(changes_, &ObjectTable::chosen, this, [this](int row) {
    emit chosen(changes_->rows()[static_cast<std::size_t>(row)].objects);
  });
}

void CompareDialog::fill() {
  std::vector<TableRow> rows;
  const KeptWords kept = keptOf(reviewed_->review.plan, comparison_);
  for (const PlanChange& change : comparison_.changes)
    rows.push_back(changeRow(change, kept));
  changes_->fill(rows, 1);
  rows.clear();
  for (const BillChange& change : comparison_.bill) {
    rows.push_back({{sentenceCase(coreText(change.description)), q(change.size),
                     q(amountText(change.before, change)), q(amountText(change.after, change)),
                     q(differenceText(change)), coreText(change.unit)},
                    {},
                    {}});
  }
  bill_->fill(rows, 0);
}

template <class Write>
void CompareDialog::save(const QString& title, const QString& suffix, const QString& filter,
                         Write write) {
  const QString stem = QFileInfo(q(comparison_.earlier)).completeBaseName();
  QString path = talk_.askSaveFile(this, title, stem + tr("-changes") + suffix, filter);
  if (path.isEmpty()) return;
  if (QFileInfo(path).suffix().isEmpty()) path += suffix;
  try {
    write(pathOf(path));
  } catch (const std::exception& e) {
    talk_.tellProblem(this, tr("Nothing is written"), errorWords(e));
  }
}

void CompareDialog::saveList() {
  save(tr("Save the list of changes"), ".csv", tr("CSV (*.csv)"),
       [this](const std::filesystem::path& file) {
         writeFileAtomically(file, comparisonCsv(comparison_));
       });
}

void CompareDialog::saveSheets() {
  save(tr("Save the clouded sheets"), ".pdf", tr("PDF (*.pdf)"),
       [this](const std::filesystem::path& file) {
         const Project& project = reviewed_->review.plan.project;
         SheetOptions options;
         options.paper = project.units == UnitSystem::Metric ? "a1" : "arch-d";
         options.changes = &comparison_;
         writePdf(composeSheets(reviewed_->review, options), file, project);
       });
}

CompareDialog* askComparison(Document& document, Talk& talk, QWidget* parent) {
  const QString path = talk.askOpenFile(parent, QFileInfo(document.filePath()).absolutePath());
  if (path.isEmpty()) return nullptr;
  try {
    const Review before = review(readPlanFile(pathOf(path)), document.catalog());
    ReviewedPtr after = document.freshReview();
    PlanComparison comparison = comparePlans(before, after->review, {&document.catalog()},
                                             QFileInfo(path).fileName().toStdString());
    auto* dialog = new CompareDialog(std::move(after), std::move(comparison), talk, parent);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    return dialog;
  } catch (const std::exception& e) {
    talk.tellProblem(parent, CompareDialog::tr("The plans are not compared"), errorWords(e));
    return nullptr;
  }
}

} // namespace sump
