#include "app/window/run_window.h"

#include "app/window/main_window.h"
#include "app/window/pseudo_language.h"
#include "app/window/recovery_dialog.h"
#include "app/window/resources.h"

#include <QApplication>

namespace sump {

namespace {

MainWindow* newWindow(Talk& talk) {
  auto* window = new MainWindow(talk);
  window->setAttribute(Qt::WA_DeleteOnClose);
  return window;
}

/// Offers what a crash left; true when at least one window was opened on it.
bool recover(Talk& talk) {
  std::vector<Leftover> found = leftovers(recoveryFolder());
  if (found.empty()) return false;
  RecoveryDialog dialog(found);
  dialog.exec();
  const std::vector<RecoveryChoice> choices = dialog.choices();
  bool any = false;
  for (std::size_t i = 0; i < found.size(); ++i) {
    if (choices[i] == RecoveryChoice::Discard) found[i].slot->discard();
    if (choices[i] != RecoveryChoice::Open) continue;
    MainWindow* window = newWindow(talk);
    if (window->resume(std::move(found[i].slot))) {
      window->show();
      any = true;
    } else {
      window->close();
    }
  }
  return any;
}

} // namespace

int runWindow(int argc, char** argv, const std::vector<QString>& files) {
  QApplication app(argc, argv);
  nameApplication();
  installPseudoLanguageIfAsked();
  Talk talk;
  const bool recovered = recover(talk);
  for (const QString& file : files) {
    MainWindow* window = newWindow(talk);
    // Read before showing, so that the first picture is of the plan.
    window->files().open(file);
    window->show();
  }
  if (files.empty() && !recovered) {
    MainWindow* window = newWindow(talk);
    window->showStart();
    window->show();
  }
  return QApplication::exec();
}

} // namespace sump
