// The tests of app/ share one application on the offscreen platform, as a display may be missing.

#include "tests/app/recovery_child.h"
#include "tests/support/places.h"

#include <QApplication>

#include <gtest/gtest.h>

#include <string_view>

int main(int argc, char** argv) {
  if (argc > 1 && std::string_view(argv[1]) == sump::testing::kEditUntilKilled) {
    return sump::testing::editUntilKilled(argc, argv);
  }
  // A desk's screen: on the platform's own, of 800 dots, menus and dialogs would be squeezed.
  const QByteArray platform = qgetenv("QT_QPA_PLATFORM");
  if (platform.isEmpty() || platform == "offscreen") {
    qputenv("QT_QPA_PLATFORM",
            ("offscreen:configfile=" + sump::sourceFolder() + "/tests/app/screen.json").c_str());
  }
  QApplication application(argc, argv);
  testing::InitGoogleTest(&argc, argv);
  return RUN_ALL_TESTS();
}
