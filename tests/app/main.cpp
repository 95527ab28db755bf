// The tests of app/ share one application on the offscreen platform, as a display may be missing.

#include "tests/app/recovery_child.h"

#include <QApplication>

#include <gtest/gtest.h>

#include <string_view>

int main(int argc, char** argv) {
  if (argc > 1 && std::string_view(argv[1]) == sump::testing::kEditUntilKilled) {
    return sump::testing::editUntilKilled(argc, argv);
  }
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QApplication application(argc, argv);
  testing::InitGoogleTest(&argc, argv);
  return RUN_ALL_TESTS();
}
