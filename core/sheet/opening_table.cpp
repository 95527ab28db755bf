// Where the vault maker leaves openings: every pipe through a wall or a baffle.

#include "core/sheet/set_tables.h"
#include "core/sheet/tags.h"
#include "core/units/print.h"

#include <cmath>

namespace sump {

namespace {

/// A face of the vault by its corners, and how far along it from the first of them a place is.
struct Face {
  std::string name;
  std::string from;
  double along = 0; ///< m
};

/// Corners 1 to 4 go counter-clockwise from the low corner of the vault's own frame, as on the
/// placement plan.
Face faceAt(const Vault& vault, Point2 local) {
  const double halfLength = inMetres(vault.length) / 2, halfWidth = inMetres(vault.width) / 2;
  const double end = halfLength - std::abs(local.x), side = halfWidth - std::abs(local.y);
  if (end <= side) {
    const bool low = local.x < 0;
    return {low ? "1-4" : "2-3", low ? "1" : "2", local.y + halfWidth};
  }
  const bool low = local.y < 0;
  return {low ? "1-2" : "4-3", low ? "1" : "4", local.x + halfLength};
}

} // namespace

Block openingTable(const SheetJob& job, double width) {
  const UnitSystem units = job.units();
  const auto tags = runTags(job.plan());
  std::vector<std::vector<std::string>> rows;
  for (const VaultStudy& studied : job.study().vaults) {
    const Vault& vault = *job.plan().vaults.find(studied.id);
    for (const RunStudy& run : job.study().runs) {
      for (const Penetration& hole : run.penetrations) {
        if (hole.vault != studied.id) continue;
        const Point2 local = vault.frame().toLocal(flat(hole.at));
        Face face = faceAt(vault, local);
        if (!hole.baffle.empty()) {
          face = {"baffle " + hole.baffle, "side 1-2", local.y + inMetres(vault.width) / 2};
        }
        const bool over = hole.at.z >= inMetres(studied.lidTop);
        rows.push_back({called(vault), tags.at(run.id), sizeText(hole.size),
                        over ? "riser over " + face.name : face.name, face.from,
                        printLength(metres(face.along), units),
                        printElevation(metres(hole.at.z), units),
                        printLength(metres(hole.at.z) - studied.floor, units)});
      }
    }
  }
  return table("OPENINGS IN WALLS AND BAFFLES",
               {{"Vault"},
                {"Run"},
                {"Pipe", Align::Centre},
                {"Wall by|corners"},
                {"Measured|from"},
                {"To pipe's|centre", Align::Right},
                {"Invert", Align::Right},
                {"Invert|over floor", Align::Right}},
               rows, width);
}

} // namespace sump
