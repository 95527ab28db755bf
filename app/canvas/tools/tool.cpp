#include "app/canvas/tools/tool.h"

namespace sump {

bool Tool::claims(int key) const {
  return busy() && (key == Qt::Key_Escape || key == Qt::Key_Backspace || key == Qt::Key_Return);
}

} // namespace sump
