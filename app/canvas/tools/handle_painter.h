#pragma once
// How handles look: a shape for each kind, filled when taken.

#include "app/canvas/handles.h"
#include "app/canvas/overlay.h"

namespace sump {

enum class HandleState { Idle, Hot, Taken };

void paintHandle(Overlay& overlay, const Handle& handle, HandleState state);

} // namespace sump
