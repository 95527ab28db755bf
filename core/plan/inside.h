#pragma once
// A vault's inside, between its walls.

#include "core/plan/plan.h"

namespace sump {

/// Clear length between the end walls, m.
inline double insideLength(const Vault& vault) {
  return inMetres(vault.length) - 2 * inMetres(vault.wall);
}

/// Clear width between the side walls, m.
inline double insideWidth(const Vault& vault) {
  return inMetres(vault.width) - 2 * inMetres(vault.wall);
}

} // namespace sump
