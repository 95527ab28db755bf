#include "core/sheet/cut_lid.h"

#include <algorithm>
#include <functional>
#include <utility>

namespace sump {

std::vector<SectionArea> lidPieces(const ProfileVault& vault) {
  constexpr double kRiserWall = 0.1, kLeast = 0.05; // m
  std::vector<std::pair<double, double>> openings;
  for (const ProfileManway& m : vault.manways) {
    const double half = inMetres(m.diameter) / 2 + kRiserWall;
    if (!m.beyond) openings.emplace_back(m.station - half, m.station + half);
  }
  std::ranges::sort(openings);
  openings.emplace_back(vault.to, vault.to);
  std::vector<SectionArea> pieces;
  double from = vault.from;
  for (const auto& [low, high] : openings) {
    const double to = std::min(low, vault.to);
    if (to - from > kLeast) pieces.push_back({from, to, vault.lidTop, vault.lidTop});
    from = std::max(from, high);
  }
  if (pieces.empty()) pieces.push_back({vault.from, vault.to, vault.lidTop, vault.lidTop});
  std::ranges::stable_sort(pieces, std::greater<>(),
                           [](const SectionArea& piece) { return piece.to - piece.from; });
  return pieces;
}

} // namespace sump
