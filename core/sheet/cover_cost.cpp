#include "core/sheet/cover_cost.h"

namespace sump {

CoverCost coverCost(const Mark& mark) {
  constexpr CoverCost kWall{kWallCover, 1}, kPipe{40, 8};
  const bool body = mark.layer == Layer::Part && mark.closed && mark.symbol.number == 0;
  if (body) return kPipe; // of a pipe in elevation
  // Its outline tells where to dig, thin as it is.
  const bool isTrench = mark.closed && !mark.fill && mark.line && !mark.line->dash.empty();
  switch (mark.layer) {
  case Layer::Run:
    return {40, 2.5};
  case Layer::Part:
  case Layer::Symbol:
  case Layer::Note:
    return {20, 2};
  case Layer::Ground:
    if (isTrench) return {40, 0.5};
    // Edges of digs; the others are fine lines.
    return mark.line && mark.line->width > 0.5 ? kWall : CoverCost{6, 0.5};
  case Layer::Utility:
    return {20, 1};
  case Layer::Vault:
  case Layer::Room:
  case Layer::Basin:
  case Layer::Building:
    return kWall;
  case Layer::Baffle:
  case Layer::Manway:
    return {25, 1};
  case Layer::Boundary:
    return {10, 0.5};
  case Layer::Paving:
    return {0.5, 0};
  }
  return {1, 0};
}

} // namespace sump
