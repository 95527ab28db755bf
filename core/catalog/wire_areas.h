#pragma once
// What conduits hold and what conductors take up: the catalogue's table wiring.json.

#include "core/catalog/source.h"
#include "core/units/quantity.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sump {

/// One insulated conductor.
struct ConductorArea {
  std::string size; ///< AWG, `12`, `1/0`
  Area area;
  Source source;
};

/// The whole inside of a conduit.
struct ConduitArea {
  std::string nominal;
  Area area;
};

struct ConduitAreas {
  std::string pipe; ///< key of the pipe product
  std::vector<ConduitArea> sizes;
  Source source;
};

/// Nothing for a size that the tables do not have.
struct WireAreas {
  std::vector<ConductorArea> conductors;
  std::vector<ConduitAreas> conduits;
  const ConductorArea* conductor(std::string_view size) const;
  const ConduitAreas* conduit(std::string_view pipe) const;
  std::optional<Area> conductorArea(std::string_view size) const;
  std::optional<Area> conduitArea(std::string_view pipe, std::string_view nominal) const;
};

} // namespace sump
