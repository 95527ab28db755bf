#include "app/window/upkeep_table_dialog.h"

#include "app/core_text.h"
#include "app/window/talk.h"

#include "core/exchange/plan_file.h"

#include <QDialogButtonBox>
#include <QDir>
#include <QFileInfo>
#include <QLabel>
#include <QPushButton>
#include <QSettings>
#include <QVBoxLayout>

namespace sump {

namespace {

constexpr const char* kKey = "upkeep/table";

QString chosenPath() {
  return QSettings().value(kKey).toString();
}

} // namespace

UpkeepTable chosenUpkeep() {
  const QString path = chosenPath();
  return path.isEmpty() ? builtinUpkeep() : readUpkeepFile(path.toStdString());
}

UpkeepTableDialog::UpkeepTableDialog(Talk& talk, QWidget* parent) : QDialog(parent), talk_(talk) {
  setWindowTitle(tr("Table of start-up and upkeep"));
  auto* what = new QLabel(tr("The upkeep sheets and the calendar are made from a table of steps, "
                             "intervals and cautions. Write it to a file, change it with any text "
                             "editor, and choose that file here."),
                          this);
  what->setWordWrap(true);
  used_ = new QLabel(this);
  used_->setObjectName("upkeep-table-used");
  used_->setTextFormat(Qt::PlainText);
  used_->setWordWrap(true);
  auto* start = new QPushButton(tr("Write the built-in table to a file..."), this);
  auto* choose = new QPushButton(tr("Choose a table..."), this);
  builtin_ = new QPushButton(tr("Use the built-in table"), this);
  auto* close = new QDialogButtonBox(QDialogButtonBox::Close, this);
  auto* column = new QVBoxLayout(this);
  for (QWidget* part : std::initializer_list<QWidget*>{what, used_, start, choose, builtin_, close})
    column->addWidget(part);
  connect(start, &QPushButton::clicked, this, &UpkeepTableDialog::writeStart);
  connect(choose, &QPushButton::clicked, this, &UpkeepTableDialog::choose);
  connect(builtin_, &QPushButton::clicked, this, &UpkeepTableDialog::useBuiltin);
  connect(close, &QDialogButtonBox::rejected, this, &QDialog::reject);
  show(chosenPath());
}

void UpkeepTableDialog::show(const QString& path) {
  used_->setText(path.isEmpty() ? tr("Used now: the built-in table")
                                : tr("Used now: %1").arg(QDir::toNativeSeparators(path)));
  builtin_->setEnabled(!path.isEmpty());
}

void UpkeepTableDialog::choose() {
  const QString folder = QFileInfo(chosenPath()).absolutePath();
  const QString path =
      talk_.askTable(this, tr("Choose a table of upkeep"), folder, tr("Upkeep tables (*.json)"));
  if (path.isEmpty()) return;
  try {
    readUpkeepFile(path.toStdString());
  } catch (const std::exception& error) {
    talk_.tellProblem(this, tr("The table cannot be used"), errorWords(error));
    return;
  }
  QSettings().setValue(kKey, path);
  show(path);
}

void UpkeepTableDialog::writeStart() {
  const QString path =
      talk_.askSaveFile(this, tr("Write the built-in table"), QDir::home().filePath("upkeep.json"),
                        tr("Upkeep tables (*.json)"));
  if (path.isEmpty()) return;
  try {
    writeFileAtomically(path.toStdString(), builtinUpkeepText());
  } catch (const std::exception& error) {
    talk_.tellProblem(this, tr("Nothing is written"), errorWords(error));
  }
}

void UpkeepTableDialog::useBuiltin() {
  QSettings().remove(kKey);
  show(QString());
}

} // namespace sump
