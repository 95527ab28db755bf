#include "app/window/resources.h"

#include "app/window/appearance.h"

#include <QApplication>

// Resources of a static library must be named by hand, outside any namespace (Qt documentation,
// Q_INIT_RESOURCE).
static void initIcons() {
  Q_INIT_RESOURCE(sumpwright);
}

namespace sump {

void nameApplication() {
  initIcons();
  QApplication::setApplicationName("Sumpwright");
  QApplication::setOrganizationName("Sumpwright");
  QApplication::setApplicationVersion(SUMPWRIGHT_VERSION);
  QApplication::setDesktopFileName("sumpwright");
  QApplication::setWindowIcon(QIcon(":/icons/sumpwright.svg"));
}

} // namespace sump
