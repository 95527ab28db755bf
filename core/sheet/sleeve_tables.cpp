// What passes through the walls, footings and floor slabs of buildings, new or standing: sleeves to
// set before pouring, or holes to core.

#include "core/sheet/set_tables.h"
#include "core/sheet/tags.h"
#include "core/study/wall_sleeves.h"
#include "core/units/print_levels.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

/// For what the plan does not tell.
constexpr const char* kToFillIn = "______";

std::string passText(const WallSleeve& sleeve, Length thickness) {
  switch (passOf(sleeve, thickness)) {
  case WallPass::Unknown:
    return "wall (2)";
  case WallPass::Wall:
    return "wall";
  case WallPass::Under:
    return "under footing (1)";
  case WallPass::Footing:
    break;
  }
  const bool within =
      sleeve.low >= *sleeve.footing && sleeve.high <= *sleeve.lowestFooting + thickness;
  return within ? "footing (1)" : "partly footing (1)";
}

std::string ownersText(const WallSleeve& sleeve, const Plan& plan) {
  std::string names;
  for (const Id& id : sleeve.buildings)
    names += (names.empty() ? "" : ", ") + objectName(id, plan);
  return sleeve.buildings.size() > 1 ? "Common wall of " + names : names;
}

std::string sleeveText(const std::optional<std::string>& sleeve) {
  return sleeve ? sizeText(*sleeve) : std::string(kToFillIn);
}

/// To whole degrees: nobody sets a drill closer.
std::string skewText(const WallSleeve& sleeve) {
  return fixed(inDegrees(sleeve.skew), 0) + "\u00B0";
}

std::vector<std::string> sleeveRow(const SheetJob& job, const WallSleeve& sleeve,
                                   const std::string& tag, Length thickness, bool skew) {
  const UnitSystem units = job.units();
  const auto level = [&](double v) { return printElevation(metres(v), units); };
  const bool built = isBuiltIn(sleeve);
  const Length low = built ? sleeve.low : sleeve.pipeLow;
  std::vector<std::string> row = {ownersText(sleeve, job.plan()),
                                  tag,
                                  sizeText(sleeve.size),
                                  built ? sleeveText(sleeve.sleeve) : std::string("-"),
                                  level(sleeve.at.y),
                                  level(sleeve.at.x),
                                  level(sleeve.at.z),
                                  sleeve.footing ? printLength(low - *sleeve.footing, units)
                                                 : kToFillIn,
                                  passText(sleeve, thickness)};
  if (skew) row.insert(row.begin() + 2, built && isSkew(sleeve) ? skewText(sleeve) : "-");
  return row;
}

/// How wide the opening is where a run passes at a slant, in walls of two thicknesses that are
/// often built (common practice, no source): the plan has none.
void addSkewNote(const SheetJob& job, const std::vector<WallSleeve>& sleeves, Block& block) {
  const bool metric = job.units() == UnitSystem::Metric;
  const Length thin = metric ? metres(0.2) : inches(8), thick = metric ? metres(0.3) : inches(12);
  const auto print = [&](Length v) { return printSize(v, job.units()); };
  const auto tags = runTags(job.plan());
  std::vector<std::pair<std::string, std::string>> openings; // runs, by what they need
  for (const WallSleeve& sleeve : sleeves) {
    if (!isBuiltIn(sleeve) || !isSkew(sleeve) || !sleeve.sleeve) continue;
    const std::string text = skewText(sleeve) + ", sleeve " + sizeText(*sleeve.sleeve) + ": " +
                             print(straightOpening(sleeve, thin)) + " in a wall of " + print(thin) +
                             ", " + print(straightOpening(sleeve, thick)) + " in one of " +
                             print(thick);
    const auto known =
        std::ranges::find(openings, text, &std::pair<std::string, std::string>::second);
    if (known == openings.end()) {
      openings.emplace_back(tags.at(sleeve.run), text);
    } else if (known->first.find(tags.at(sleeve.run)) == std::string::npos) {
      known->first += ", " + tags.at(sleeve.run);
    }
  }
  if (openings.empty()) return;
  std::string all;
  for (const auto& [runs, text] : openings)
    all += (all.empty() ? "" : "; ") + runs + ", " + text;
  addNote(block,
          "Off square: the run passes the wall at a slant. Core or sleeve it along the pipe, "
          "or cut a longer opening straight through. Width across the wall's face of the "
          "latter, which is the sleeve's outside over the cosine of the slant and the wall's "
          "thickness times its tangent: " +
              all +
              ". Measure the wall first. Where such openings would meet, or pass a corner: one "
              "opening for both, or core along the pipes.");
}

/// What the marks in the last column mean, of those that stand there.
void addMarkNotes(const std::vector<std::vector<std::string>>& rows, const std::string& thickness,
                  Block& block) {
  const auto has = [&](const char* mark) {
    return std::ranges::any_of(rows, [&](const auto& row) { return row.back().ends_with(mark); });
  };
  std::string text;
  if (has("(1)"))
    text += "(1) Engineer first: nothing is cut or dug before the building's structural engineer "
            "has said how. ";
  if (has("(2)")) text += "(2) The footing's level is not known: find it first. ";
  addNote(block, text + "Assumed, since nobody has told it: footings " + thickness +
                     " thick. Over the footing's underside is the sleeve's or, under a footing, "
                     "the pipe's.");
}

void addFloorDrains(const SheetJob& job, std::vector<std::vector<std::string>>& rows) {
  const auto level = [&](double v) { return printElevation(metres(v), job.units()); };
  for (const EquipmentRoom& room : job.plan().rooms) {
    if (!room.floorDrain) continue;
    const Point2 at = room.frame().toSite(*room.floorDrain);
    rows.push_back({objectName(room.id, job.plan()), "Floor drain", "______", "-", level(at.y),
                    level(at.x), level(inMetres(room.floor))});
  }
}

} // namespace

Block sleeveTable(const SheetJob& job, double width) {
  const auto tags = runTags(job.plan());
  const Length thickness = job.review.limits.length("footing.thickness");
  std::vector<std::vector<std::string>> rows;
  const std::vector<WallSleeve> sleeves = wallSleeves(job.plan(), job.study());
  // A column that would be empty takes room from the names.
  const bool skew = std::ranges::any_of(
      sleeves, [](const WallSleeve& sleeve) { return isBuiltIn(sleeve) && isSkew(sleeve); });
  for (const WallSleeve& sleeve : sleeves)
    rows.push_back(sleeveRow(job, sleeve, tags.at(sleeve.run), thickness, skew));
  std::vector<Column> columns = {{"Building"},
                                 {"Run"},
                                 {"Pipe", Align::Centre},
                                 {"Sleeve", Align::Centre},
                                 {"North", Align::Right},
                                 {"East", Align::Right},
                                 {"Invert of|pipe", Align::Right},
                                 {"Sleeve over|footing's|underside", Align::Right},
                                 {"Through"}};
  if (skew) columns.insert(columns.begin() + 2, Column{"Off|square", Align::Centre});
  Block block = table("SLEEVES AND CORED HOLES IN WALLS OF BUILDINGS", columns, rows, width);
  if (rows.empty()) return block;
  addNote(block,
          "New walls: set the sleeve before pouring. Existing walls: locate reinforcement and "
          "lines in them, core to the sleeve's bore, cut no bar without the engineer. Fill the "
          "gap and seal it watertight as the local code asks, seal or sealant by ______. Sleeves "
          "are two sizes over the pipe (IPC 305.3; conduit: common "
          "practice), so that it can move. Places are on the outline as drawn.");
  addSkewNote(job, sleeves, block);
  addMarkNotes(rows, printLength(thickness, job.units()), block);
  return block;
}

Block slabTable(const SheetJob& job, double width) {
  const auto tags = runTags(job.plan());
  const auto level = [&](double v) { return printElevation(metres(v), job.units()); };
  std::vector<std::vector<std::string>> rows;
  for (const SlabPass& pass : slabPasses(job.plan(), job.study())) {
    rows.push_back({objectName(pass.floor, job.plan()), tags.at(pass.run), sizeText(pass.size),
                    sleeveText(pass.sleeve), level(pass.at.y), level(pass.at.x), level(pass.at.z)});
  }
  addFloorDrains(job, rows);
  Block block = table("SLEEVES AND CORED HOLES IN FLOOR SLABS",
                      {{"Floor of"},
                       {"Run"},
                       {"Pipe", Align::Centre},
                       {"Sleeve", Align::Centre},
                       {"North", Align::Right},
                       {"East", Align::Right},
                       {"Floor", Align::Right}},
                      rows, width);
  if (rows.empty()) return block;
  addNote(block,
          "New slabs: set sleeves, or box out one opening for pipes that rise side by side, "
          "before pouring. Existing slabs: locate reinforcement and lines in and under them, "
          "then core or saw out; where a trench runs under the slab, saw it along the trench and "
          "make it good. Sizes as in walls: common practice.");
  bool drained = false;
  for (const EquipmentRoom& room : job.plan().rooms)
    drained = drained || room.floorDrain.has_value();
  if (drained)
    addNote(block, "Floor drain, there already or new: ______; outlet, trap and the line that it "
                   "drains to: ______. By the general contractor: the building's plumber sizes it "
                   "under the adopted plumbing code; set before the slab is poured or made good.");
  return block;
}

} // namespace sump
