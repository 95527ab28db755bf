#include "app/window/recovery_dialog.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QDir>
#include <QFileInfo>
#include <QFrame>
#include <QGridLayout>
#include <QLabel>
#include <QLocale>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

namespace sump {

namespace {

QString when(const QDateTime& time) {
  return QLocale().toString(time, QLocale::ShortFormat);
}

/// Where the plan belongs, and whether its file has been saved since.
QString about(const Leftover& leftover) {
  if (!leftover.problem.isEmpty()) {
    return RecoveryDialog::tr("It is damaged and cannot be opened.");
  }
  const QFileInfo file(leftover.head.original);
  if (leftover.head.original.isEmpty()) return RecoveryDialog::tr("Was never saved to a file");
  const QString path = QDir::toNativeSeparators(leftover.head.original);
  if (!file.exists()) return RecoveryDialog::tr("%1 (is gone)").arg(path);
  if (file.lastModified() > leftover.head.written) {
    return RecoveryDialog::tr("%1 (saved later, %2)").arg(path, when(file.lastModified()));
  }
  return RecoveryDialog::tr("%1 (saved %2)").arg(path, when(file.lastModified()));
}

QLabel* wrapped(const QString& text, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setTextFormat(Qt::PlainText);
  label->setWordWrap(true);
  return label;
}

} // namespace

RecoveryDialog::RecoveryDialog(const std::vector<Leftover>& leftovers, QWidget* parent)
    : QDialog(parent) {
  setWindowTitle(tr("Plans that were cut off"));
  auto* column = new QVBoxLayout(this);
  column->addWidget(wrapped(tr("Sumpwright ended without saving these plans. They were kept as "
                               "they last were."),
                            this));
  auto* list = new QWidget(this);
  auto* grid = new QGridLayout(list);
  grid->setColumnStretch(0, 1);
  grid->setHorizontalSpacing(16);
  grid->setVerticalSpacing(10);
  for (const Leftover& leftover : leftovers)
    addRow(*grid, leftover);
  grid->setRowStretch(grid->rowCount(), 1);
  auto* scroll = new QScrollArea(this);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setWidget(list);
  column->addWidget(scroll, 1);
  auto* buttons = new QDialogButtonBox(this);
  buttons->addButton(tr("Do this"), QDialogButtonBox::AcceptRole);
  buttons->addButton(tr("Keep all for later"), QDialogButtonBox::RejectRole);
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  column->addWidget(buttons);
  resize(sizeHint().expandedTo({640, 280}));
}

void RecoveryDialog::addRow(QGridLayout& grid, const Leftover& leftover) {
  const int row = grid.rowCount();
  const bool readable = leftover.problem.isEmpty();
  const QString title = readable ? leftover.head.title : tr("A recovery file");
  QLabel* name = wrapped(
      tr("%1 — last change %2").arg(title, readable ? when(leftover.head.written) : tr("unknown")),
      this);
  QFont font = name->font();
  font.setBold(true);
  name->setFont(font);
  grid.addWidget(name, row, 0);
  grid.addWidget(wrapped(about(leftover), this), row + 1, 0);
  auto* box = new QComboBox(this);
  box->setAccessibleName(tr("What to do with %1").arg(title));
  if (readable) box->addItem(tr("Open"), static_cast<int>(RecoveryChoice::Open));
  box->addItem(tr("Keep for later"), static_cast<int>(RecoveryChoice::Keep));
  box->addItem(tr("Throw away"), static_cast<int>(RecoveryChoice::Discard));
  grid.addWidget(box, row, 1, 2, 1, Qt::AlignVCenter);
  boxes_.push_back(box);
}

std::vector<RecoveryChoice> RecoveryDialog::choices() const {
  std::vector<RecoveryChoice> answers(boxes_.size(), RecoveryChoice::Keep);
  if (result() != QDialog::Accepted) return answers;
  for (std::size_t i = 0; i < boxes_.size(); ++i)
    answers[i] = static_cast<RecoveryChoice>(boxes_[i]->currentData().toInt());
  return answers;
}

} // namespace sump
