#pragma once
// Site pictures that lie beside the plan's file are named from its folder.

#include "core/plan/plan.h"

#include <QString>

namespace sump {

/// The plan with the same pictures when its file moves from `from` to `to`: their names follow.
/// With an empty `to` they are named in full; a plan that was in no file (`from` empty) has full
/// names.
Plan withPicturesFrom(const Plan& plan, const QString& from, const QString& to);

} // namespace sump
