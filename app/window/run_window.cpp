#include "app/window/run_window.h"

#include "app/window/main_window.h"
#include "app/window/resources.h"

#include <QApplication>

namespace sump {

int runWindow(int argc, char** argv, const std::vector<QString>& files) {
  QApplication app(argc, argv);
  nameApplication();
  Talk talk;
  const std::size_t count = files.empty() ? 1 : files.size();
  for (std::size_t i = 0; i < count; ++i) {
    auto* window = new MainWindow(talk);
    window->setAttribute(Qt::WA_DeleteOnClose);
    // Read before showing, so that the first picture is of the plan.
    if (i < files.size()) window->files().open(files[i]);
    window->show();
  }
  return QApplication::exec();
}

} // namespace sump
