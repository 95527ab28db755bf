// Where the vault maker leaves openings: every pipe through a wall, a baffle or a riser.

#include "core/sheet/set_tables.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/tags.h"
#include "core/study/riser_passes.h"
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

/// The side of the riser that faces a wall of the vault, and how far along that wall.
Face riserFace(const Vault& vault, const Manway& manway, int chamber, Point2 local) {
  const Point2 off = local - manway.at;
  const double halfLength = inMetres(vault.length) / 2, halfWidth = inMetres(vault.width) / 2;
  const bool end = std::abs(off.x) > std::abs(off.y);
  const Point2 wall = end ? Point2{off.x < 0 ? -halfLength : halfLength, 0}
                          : Point2{0, off.y < 0 ? -halfWidth : halfWidth};
  Face face = faceAt(vault, wall);
  face.along = end ? local.y + halfWidth : local.x + halfLength;
  face.name = "riser ch. " + std::to_string(chamber) + ", side " + face.name;
  return face;
}

/// Collects the rows.
class Openings {
public:
  explicit Openings(const SheetJob& job) : job_(job), tags_(runTags(job.plan())) {}

  void add(const VaultStudy& studied, const RunStudy& run) {
    const Vault& vault = *job_.plan().vaults.find(studied.id);
    for (const Penetration& hole : run.penetrations) {
      if (hole.vault != studied.id) continue;
      const Point2 local = vault.frame().toLocal(flat(hole.at));
      Face face = faceAt(vault, local);
      if (!hole.baffle.empty())
        face = {"baffle " + hole.baffle, "side 1-2", local.y + inMetres(vault.width) / 2};
      addRow(studied, run, face, hole.at, hole.size);
    }
    for (std::size_t i = 0; run.resolved && i < studied.manways.size(); ++i) {
      const ManwayStudy& manway = studied.manways[i];
      for (const RiserPass& pass : riserPasses(run, studied, manway, vault.manways[i].diameter)) {
        const Point2 local = vault.frame().toLocal(flat(pass.at));
        addRow(studied, run, riserFace(vault, vault.manways[i], manway.chamber, local), pass.at,
               pass.size);
      }
    }
  }
  const std::vector<std::vector<std::string>>& rows() const { return rows_; }

private:
  void addRow(const VaultStudy& vault, const RunStudy& run, const Face& face, Point3 at,
              const std::string& size) {
    const UnitSystem units = job_.units();
    rows_.push_back({called(*job_.plan().vaults.find(vault.id)), tags_.at(run.id), sizeText(size),
                     face.name, face.from, printLength(metres(face.along), units),
                     printElevation(metres(at.z), units),
                     printLength(metres(at.z) - vault.floor, units)});
  }

  const SheetJob& job_;
  std::unordered_map<Id, std::string> tags_;
  std::vector<std::vector<std::string>> rows_;
};

} // namespace

Block openingTable(const SheetJob& job, double width) {
  Openings openings(job);
  for (const VaultStudy& vault : job.study().vaults) {
    for (const RunStudy& run : job.study().runs)
      openings.add(vault, run);
  }
  Block block = table("OPENINGS IN WALLS, BAFFLES AND RISERS",
                      {{"Vault"},
                       {"Run"},
                       {"Pipe", Align::Centre},
                       {"Wall by|corners"},
                       {"From outside|corner"},
                       {"To pipe's|centre", Align::Right},
                       {"Invert at|outside face", Align::Right},
                       {"Invert|over floor", Align::Right}},
                      openings.rows(), width);
  block.anchor = openingAnchor();
  if (openings.rows().empty()) return block;
  const VaultStudy& first = job.study().vaults.front();
  std::string note =
      "Outside corners 1 to 4 of each vault and its chambers (ch.) are marked on sheets " +
      sheetOf(placementAnchor()) + " and " + sheetOf(planAnchor()) + ": " +
      cornerName(first.id, 0) + " is corner 1 of " + called(*job.plan().vaults.find(first.id)) +
      ".";
  bool hasBaffles = false;
  for (const Vault& vault : job.plan().vaults)
    hasBaffles = hasBaffles || !vault.baffles.empty();
  if (hasBaffles) note += " Sizes of baffles: sheet " + sheetOf(baffleAnchor()) + ".";
  addNote(block, note);
  return block;
}

} // namespace sump
