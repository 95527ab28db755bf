#pragma once
// Which tool an action of the tool strip brings.

#include "app/actions.h"
#include "app/canvas/tools/tool.h"

#include <memory>

namespace sump {

/// The select tool for actions that bring none.
std::unique_ptr<Tool> makeTool(ActionId id, ToolHost& host);

} // namespace sump
