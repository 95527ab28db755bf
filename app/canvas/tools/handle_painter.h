#pragma once
// How handles look: a shape for each kind, filled when taken.

#include "app/canvas/handles.h"
#include "app/canvas/theme.h"
#include "app/canvas/view.h"

#include <QPainter>

namespace sump {

enum class HandleState { Idle, Hot, Taken };

void paintHandle(QPainter& painter, const View& view, const Handle& handle, HandleState state,
                 const CanvasTheme& theme);

} // namespace sump
