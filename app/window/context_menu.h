#pragma once
// What the context menu offers over each kind of thing. All of it stands in the table of actions.

#include "app/actions.h"
#include "app/canvas/handles.h"

#include <optional>
#include <set>
#include <vector>

namespace sump {

/// What lies under the pointer.
enum class Pointed {
  Ground,
  Line,
  LineCorner,
  LinePart,
  Vault,
  BaffleOrManway,
  Room,
  PortOrDoor,
  Outline, ///< building, paving, existing line, property line
  OutlineCorner,
  Several, ///< more than one object is selected
  Other,
};

/// `object` is the one under the pointer, empty for none; `part` what of it is.
Pointed pointedAt(const Plan& plan, const std::set<Id>& selection, const Id& object,
                  const std::optional<Handle>& part);

/// In the order in which they stand; nothing stands for a line between groups.
std::vector<std::optional<ActionId>> menuFor(Pointed what);

} // namespace sump
