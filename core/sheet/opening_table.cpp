// Where the vault maker leaves openings: every pipe through a wall, a baffle or a riser.

#include "core/sheet/set_tables.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/tags.h"
#include "core/study/hole_gaps.h"
#include "core/study/pass_slant.h"
#include "core/study/riser_passes.h"
#include "core/units/print_levels.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

bool isSlant(Angle slant) {
  return inDegrees(slant) >= kSlantFrom;
}

/// To whole degrees: nobody sets a form closer.
std::string slantText(Angle slant) {
  return fixed(inDegrees(slant), 0) + "\u00B0";
}

/// A face of the vault by its corners, and how far along it from the first of them a place is.
struct Face {
  std::string name;
  double along = 0; ///< m
};

/// Corners 1 to 4 go counter-clockwise from the low corner of the vault's own frame, as on the
/// placement plan.
Face faceAt(const Vault& vault, Point2 local) {
  const double halfLength = inMetres(vault.length) / 2, halfWidth = inMetres(vault.width) / 2;
  if (inEndWall(vault, local)) {
    const bool low = local.x < 0;
    return {low ? "1-4" : "2-3", local.y + halfWidth};
  }
  const bool low = local.y < 0;
  return {low ? "1-2" : "4-3", local.x + halfLength};
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
  explicit Openings(const SheetJob& job)
      : job_(job), tags_(runTags(job.plan())),
        gaps_(holeGaps(job.plan(), job.catalog, job.study())) {}

  void add(const VaultStudy& studied, const RunStudy& run) {
    const Vault& vault = *job_.plan().vaults.find(studied.id);
    for (const Penetration& hole : run.penetrations) {
      if (hole.vault != studied.id) continue;
      const Point2 local = vault.frame().toLocal(flat(hole.at));
      Face face = faceAt(vault, local);
      if (!hole.baffle.empty())
        face = {"baffle " + hole.baffle,
                local.y + inMetres(vault.width) / 2 - inMetres(vault.wall)};
      const Angle slant = wayThrough(run, vault, hole).slant();
      addRow(studied, run, face, hole.at, hole.size, slant);
      if (hole.baffle.empty()) noteWidth(run, vault, hole.size, slant);
    }
    for (std::size_t i = 0; run.resolved && i < studied.manways.size(); ++i) {
      const ManwayStudy& manway = studied.manways[i];
      for (const RiserPass& pass : riserPasses(run, studied, manway, vault.manways[i].diameter)) {
        const Point2 local = vault.frame().toLocal(flat(pass.at));
        addRow(studied, run, riserFace(vault, vault.manways[i], manway.chamber, local), pass.at,
               pass.size, pass.slant);
      }
    }
  }
  const std::vector<std::vector<std::string>>& rows() const { return rows_; }
  bool anySlant() const { return slants_; }
  /// How wide openings are where runs pass walls at a slant: `SU-1, 45 degrees: 320 mm`.
  const std::string& widths() const { return widths_; }

private:
  void addRow(const VaultStudy& vault, const RunStudy& run, const Face& face, Point3 at,
              const std::string& size, Angle slant) {
    const UnitSystem units = job_.units();
    const PipeSize* pipe = job_.catalog.pipeSize(job_.plan().runs.find(run.id)->pipe, size);
    const auto gap = leastGap(gaps_, vault.id, run.id, flat(at));
    const bool room = pipe != nullptr && gap && *gap > metres(0);
    rows_.push_back({vault.id, tags_.at(run.id), sizeText(size),
                     pipe != nullptr ? printSize(pipe->outside, units) : "?",
                     room ? printSize(pipe->outside + 2.0 * *gap, units) : "-", face.name,
                     printLength(metres(face.along), units),
                     isSlant(slant) ? slantText(slant) : "-", printElevation(metres(at.z), units),
                     printLength(heightBetween(vault.floor, metres(at.z), units), units)});
    slants_ = slants_ || isSlant(slant);
  }
  void noteWidth(const RunStudy& run, const Vault& vault, const std::string& size, Angle slant) {
    const PipeSize* pipe = job_.catalog.pipeSize(job_.plan().runs.find(run.id)->pipe, size);
    if (!isSlant(slant) || pipe == nullptr) return;
    widths_ += (widths_.empty() ? "" : "; ") + tags_.at(run.id) + " in " + called(vault) + ", " +
               slantText(slant) + ": " +
               printSize(openingWidth(pipe->outside, vault.wall, slant), job_.units());
  }

  const SheetJob& job_;
  std::unordered_map<Id, std::string> tags_;
  std::vector<HoleGap> gaps_;
  std::vector<std::vector<std::string>> rows_;
  bool slants_ = false;
  std::string widths_;
};

/// A column that would be empty takes room from the others.
constexpr std::size_t kSlantColumn = 7;

std::vector<std::vector<std::string>> openingRows(const Openings& openings) {
  std::vector<std::vector<std::string>> rows = openings.rows();
  if (openings.anySlant()) return rows;
  for (auto& row : rows)
    row.erase(row.begin() + kSlantColumn);
  return rows;
}

void addSlantNote(const Openings& openings, Block& block) {
  if (!openings.anySlant()) return;
  std::string text =
      "Off square: the run passes at a slant, in plan; off the radius where it passes a round "
      "riser. Connectors take little of it: ask their maker first.";
  if (!openings.widths().empty())
    text += " Width across the wall's face of an opening straight through it for the pipe alone, "
            "without its connector: " +
            openings.widths() + ".";
  addNote(block, text);
}

/// `0'-6"` where all are alike, else `V1 0'-6", V2 0'-8"`.
std::string thicknesses(const SheetJob& job,
                        const std::vector<std::pair<std::string, Length>>& walls) {
  const auto alike = [&](const auto& wall) {
    constexpr double kSame = 1e-6; // m
    return std::abs(inMetres(wall.second - walls.front().second)) <= kSame;
  };
  if (std::ranges::all_of(walls, alike)) return printSize(walls.front().second, job.units());
  std::string all;
  for (const auto& [name, thick] : walls)
    all += (all.empty() ? "" : ", ") + name + " " + printSize(thick, job.units());
  return all;
}

/// The sections cut the outside walls only; a baffle is the wall between two chambers.
std::string wallText(const SheetJob& job) {
  std::vector<std::pair<std::string, Length>> outside, baffles;
  for (const Vault& vault : job.plan().vaults) {
    outside.emplace_back(vault.id, vault.wall);
    for (const Baffle& baffle : vault.baffles)
      baffles.emplace_back(baffle.id, baffle.thickness);
  }
  std::string text = "Walls of the vaults: " + thicknesses(job, outside) + " thick";
  if (!baffles.empty())
    text += "; baffles, the walls between chambers: " + thicknesses(job, baffles) +
            " thick, other sizes on sheet " + sheetOf(baffleAnchor());
  return text + ".";
}

} // namespace

Block openingTable(const SheetJob& job, double width) {
  Openings openings(job);
  for (const VaultStudy& vault : job.study().vaults) {
    for (const RunStudy& run : job.study().runs)
      openings.add(vault, run);
  }
  std::vector<Column> columns = {{"Vault"},
                                 {"Run"},
                                 {"Pipe", Align::Centre},
                                 {"Pipe|outside", Align::Right},
                                 {"Room for|opening", Align::Right},
                                 {"Wall by|corners"},
                                 {"From first|to centre", Align::Right},
                                 {"Invert at|outside face", Align::Right},
                                 {"Invert|over floor", Align::Right}};
  if (openings.anySlant())
    columns.insert(columns.begin() + kSlantColumn, Column{"Off|square", Align::Centre});
  Block block =
      table("OPENINGS IN WALLS, BAFFLES AND RISERS", columns, openingRows(openings), width);
  block.anchor = openingAnchor();
  if (openings.rows().empty()) return block;
  const VaultStudy& first = job.study().vaults.front();
  std::string note =
      "Outside corners 1 to 4 of each vault and its chambers (ch.) are marked on sheets " +
      sheetOf(placementAnchor()) + " and " + sheetOf(planAnchor()) + ": " +
      cornerName(first.id, 0) + " is corner 1 of " + called(*job.plan().vaults.find(first.id)) +
      ". Distances to the pipe's centre are from the outside corner named first, in baffles from "
      "the inside of wall 1-2.";
  addNote(block, note);
  addNote(block, wallText(job));
  addNote(block,
          "Room: widest opening clear of lid, floor, corners, baffles, riser's ends and half way "
          "to the next pipe. Connector by its maker for the pipe's outside; ask before casting "
          "if it wants more room.");
  addSlantNote(openings, block);
  return block;
}

} // namespace sump
