// Starts either the command line, which needs no display, or the window.

#include "app/command/command.h"
#include "app/window/run_window.h"

#include <QGuiApplication>

#include <iostream>

namespace {

/// Sheets need fonts and so a QGuiApplication; the offscreen platform gives one without a display.
int runWithoutDisplay(int argc, char** argv, const QStringList& arguments) {
  const sump::Streams streams{std::cout, std::cerr};
  if (!sump::writesPages(arguments)) {
    const QCoreApplication application(argc, argv);
    return sump::runCommand(arguments, streams);
  }
  qputenv("QT_QPA_PLATFORM", "offscreen");
  const QGuiApplication application(argc, argv);
  return sump::runCommand(arguments, streams);
}

} // namespace

int main(int argc, char** argv) {
  QStringList arguments;
  for (int i = 1; i < argc; ++i)
    arguments << QString::fromLocal8Bit(argv[i]);
  if (!arguments.isEmpty() && sump::isCommandWord(arguments.first())) {
    return runWithoutDisplay(argc, argv, arguments);
  }
  return sump::runWindow(argc, argv, {arguments.begin(), arguments.end()});
}
