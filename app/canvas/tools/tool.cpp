#include "app/canvas/tools/tool.h"

#include "app/canvas/grid.h"

#include <cmath>

namespace sump {

Point2 onGrid(const ToolHost& host, Point2 at, Qt::KeyboardModifiers modifiers) {
  if (modifiers.testFlag(Qt::ControlModifier)) return at;
  const double step = gridSteps(host.view().scale(), host.plan().project.units).minor;
  return {std::round(at.x / step) * step, std::round(at.y / step) * step};
}

} // namespace sump
