#pragma once
// Which runs carry water that nobody may drink.

#include "core/plan/service.h"

namespace sump {

/// Marked purple by the APWA colours.
inline bool isNonpotable(Service service) {
  return facts(service).color == UtilityColor::Purple && !isConduit(service);
}

} // namespace sump
