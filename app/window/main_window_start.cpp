// How the window begins: the start page and what its ways lead to.

#include "app/window/guided_dialog.h"
#include "app/window/main_window.h"
#include "app/window/start_page.h"

#include "core/exchange/plan_file.h"

#include <QFile>
#include <QStackedWidget>

namespace sump {

namespace {

Plan samplePlan(const QString& resource) {
  QFile file(resource);
  if (!file.open(QIODevice::ReadOnly)) {
    throw InputError(resource.toStdString(), "", 0, "cannot be read", "install the program again");
  }
  return readPlanText(file.readAll().toStdString(), resource.toStdString());
}

} // namespace

void MainWindow::showStart() {
  start_->setRecent(files_->recentFiles());
  centre_->setCurrentWidget(start_);
}

void MainWindow::joinStart() {
  connect(&document_, &Document::replaced, this, [this] { centre_->setCurrentIndex(0); });
  connect(start_, &StartPage::emptyWanted, this, [this] { files_->startNew(); });
  connect(start_, &StartPage::openWanted, this, [this] { files_->askOpen(); });
  connect(start_, &StartPage::recentWanted, this,
          [this](const QString& file) { files_->open(file); });
  connect(start_, &StartPage::sampleWanted, this, [this](const QString& resource) {
    files_->startWith([resource] { return samplePlan(resource); });
  });
  connect(start_, &StartPage::guidedWanted, this, [this] {
    GuidedDialog dialog(this);
    if (dialog.exec() != QDialog::Accepted) return;
    files_->startWith([&dialog] { return guidedPlan(dialog.answers()); });
  });
}

} // namespace sump
