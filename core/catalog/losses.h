#pragma once
// What pipe and fittings cost in head: roughness by pipe product, loss coefficients by fitting.
// Read from resources/catalog/losses.json.
//
// A fitting's coefficient K (loss = K v^2/2g, v in the pipe of the fitting's size) is either its
// length-to-diameter ratio times fT, the friction factor of clean steel pipe of that size in full
// turbulence (the method of Crane TP-410; K does not go with the roughness of the pipe it is set
// in), or one figure for all sizes. Some parts lose a head that hardly depends on the flow.

#include "core/catalog/source.h"
#include "core/units/quantity.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sump {

/// Exactly one of `ratio`, `k` and `head` is given.
struct LossRow {
  std::string key; ///< FittingKind, PartKind or EndFitting key, `tee-branch`, `entry-inward` ...
  std::string name;
  std::optional<double> ratio; ///< L/D
  std::optional<double> k;
  std::optional<Length> head;
  Source source;
};

struct TurbulentFactor {
  std::string nominal;
  double factor = 0; ///< fT
};

struct PipeSurface {
  std::string pipe; ///< key of the pipe product
  Length roughness;
  double hazenWilliams = 0; ///< C
  Source source;
};

struct LossTable {
  std::vector<TurbulentFactor> factors;
  Source factorSource;
  std::vector<LossRow> fittings;
  std::vector<PipeSurface> surfaces;
  const LossRow* fitting(std::string_view key) const;
  const PipeSurface* surface(std::string_view pipe) const;
  /// K of one fitting; nothing for a row with a head, and for a ratio at a size that fT is not
  /// tabulated for.
  std::optional<double> k(const LossRow& row, std::string_view nominal) const;
};

} // namespace sump
