// C-1: the points of the runs and drains, and where manways and baffles stand in the vaults.

#include "core/sheet/flow.h"
#include "core/sheet/schedules.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/survey_notes.h"
#include "core/sheet/tags.h"
#include "core/study/stake_points.h"
#include "core/units/print.h"
#include "core/units/print_levels.h"

#include <cmath>

namespace sump {

namespace {

// mm, so that small paper takes several columns of points and the table of manways beside them.
constexpr double kPoints = 125, kManways = 160;

using Rows = std::vector<std::vector<std::string>>;

/// Inside the vaults nothing is staked out.
bool isStaked(const SheetJob& job, const Id& object) {
  const Run* run = job.plan().runs.find(object);
  return !object.empty() && (run == nullptr || run->service != Service::Interconnect);
}

/// Where the room's plan dimensions what is in it.
std::string roomWords(const SheetJob& job) {
  std::string text = "inside corners of rooms and floor drains: dimensions on ";
  std::string views;
  for (const EquipmentRoom& room : job.plan().rooms)
    views += (views.empty() ? "view " : ", ") + viewAndSheet(roomAnchor(job.plan(), room.id));
  return text + views + ", coordinates only in the list";
}

Block runPointTable(const SheetJob& job, double width) {
  const UnitSystem units = job.units();
  const auto level = [&](double v) { return printElevation(metres(v), units); };
  Rows rows;
  const std::vector<StakePoint> points = stakePoints(job.plan(), job.study());
  for (std::size_t i = 0; i < points.size(); ++i) {
    const StakePoint& p = points[i];
    if (!isStaked(job, p.object)) continue;
    rows.push_back({objectName(p.object, job.plan()), p.place, std::to_string(i + 1), level(p.at.y),
                    level(p.at.x), levelText(p.elevation, units)});
  }
  for (const WashEquipment& wash : job.plan().washes) {
    rows.push_back({called(wash), "middle, inlet", "-", level(wash.at.y), level(wash.at.x),
                    printElevation(wash.inletElevation, units)});
  }
  return table("RUN POINTS",
               {{"Mark"},
                {"Point"},
                {"No. in the|stake-out list", Align::Right},
                {"North", Align::Right},
                {"East", Align::Right},
                {"Invert", Align::Right}},
               rows, width);
}

/// From inside corner 1, which is the low corner of the vault's own frame.
Block manwayTable(const SheetJob& job, double width) {
  const UnitSystem units = job.units();
  Rows rows;
  for (const VaultStudy& studied : job.study().vaults) {
    const Vault& vault = *job.plan().vaults.find(studied.id);
    const Length alongFrom = vault.length / 2.0 - vault.wall;
    const Length acrossFrom = vault.width / 2.0 - vault.wall;
    for (std::size_t i = 0; i < studied.manways.size(); ++i) {
      const ManwayStudy& manway = studied.manways[i];
      rows.push_back({called(vault), "manway, ch. " + std::to_string(manway.chamber),
                      printLength(metres(vault.manways[i].at.x) + alongFrom, units),
                      printLength(metres(vault.manways[i].at.y) + acrossFrom, units),
                      printElevation(metres(manway.at.y), units),
                      printElevation(metres(manway.at.x), units), levelText(manway.rim, units)});
    }
  }
  return table("MANWAYS",
               {{"Vault"},
                {"What"},
                {"Along, from|inside corner 1", Align::Right},
                {"Across, from|inside corner 1", Align::Right},
                {"North", Align::Right},
                {"East", Align::Right},
                {"Rim", Align::Right}},
               rows, width);
}

/// What their maker asks for; a vault of one chamber has none.
Block baffleTable(const SheetJob& job, double width) {
  const UnitSystem units = job.units();
  const auto gap = [&](Length open) {
    return open > metres(0) ? printSize(open, units) : std::string("none");
  };
  Rows rows;
  for (const Vault& vault : job.plan().vaults) {
    for (const Baffle& baffle : vault.baffles) {
      const Length high = vault.insideHeight - baffle.bottomGap - baffle.topGap;
      rows.push_back({called(vault), baffle.id, printLength(baffle.offset, units),
                      printSize(baffle.thickness, units), gap(baffle.bottomGap),
                      printSize(high, units), gap(baffle.topGap),
                      printElevation(vault.floor + baffle.bottomGap + high, units)});
    }
  }
  Block block = table("BAFFLES, OVER THE WHOLE INSIDE WIDTH",
                      {{"Vault"},
                       {"Baffle"},
                       {"Near face from|inside of wall 1-4", Align::Right},
                       {"Thick", Align::Right},
                       {"Gap to|floor", Align::Right},
                       {"High", Align::Right},
                       {"Gap to|lid", Align::Right},
                       {"Top", Align::Right}},
                      rows, width);
  block.anchor = baffleAnchor();
  return block;
}

/// `1 to 22, 31`
std::string rangesText(const std::vector<std::size_t>& numbers) {
  std::string text;
  for (std::size_t i = 0; i < numbers.size();) {
    std::size_t k = i;
    while (k + 1 < numbers.size() && numbers[k + 1] == numbers[k] + 1)
      ++k;
    text += (text.empty() ? "" : ", ") + std::to_string(numbers[i]);
    if (k > i) text += (k == i + 1 ? ", " : " to ") + std::to_string(numbers[k]);
    i = k + 1;
  }
  return text;
}

/// Which numbers of the stake-out list are not tabled here, what they are of and where they are.
std::string untabled(const SheetJob& job) {
  const std::pair<StakeKind, std::string> kinds[] = {
      {StakeKind::Vault, "of the vaults: corners are on sheet " + sheetOf(placementAnchor()) +
                             ", manways in the table of manways here, centres only in the list"},
      {StakeKind::Run, "of pipes inside the vaults, which are set from the vaults' walls by the "
                       "table of openings, sheet " +
                           sheetOf(openingAnchor())},
      {StakeKind::Room, roomWords(job)},
      {StakeKind::Building, "corners of buildings: those to tape from on sheet " +
                                sheetOf(placementAnchor()) + ", the others only in the list"},
      {StakeKind::Pavement, "edges of paving, only in the list"}};
  const std::vector<StakePoint> points = stakePoints(job.plan(), job.study());
  std::string text;
  for (const auto& [kind, words] : kinds) {
    std::vector<std::size_t> numbers;
    std::string inside;
    for (std::size_t i = 0; i < points.size(); ++i) {
      if (points[i].kind != kind || isStaked(job, points[i].object)) continue;
      numbers.push_back(i + 1);
      const std::string mark =
          kind == StakeKind::Run ? objectName(points[i].object, job.plan()) : "";
      if (!mark.empty() && !inside.ends_with(mark)) inside += (inside.empty() ? "" : ", ") + mark;
    }
    if (numbers.empty()) continue;
    text += (text.empty() ? "" : "; ") + rangesText(numbers) + " are " + words +
            (inside.empty() ? "" : " (" + inside + ")");
  }
  return text;
}

} // namespace

void settingOutSheet(const SheetJob& job, PageFlow& flow) {
  if (job.study().vaults.empty()) return;
  const bool small = isSmallPaper(job.paper);
  const double width = flow.columnWidth();
  flow.add(paragraphs(
      "SETTING OUT",
      {axesText(job), benchmarkText(job),
       "Numbers are those of the stake-out list, the file *-stake-out.csv that is written with the "
       "sheets. It holds more points than this table: " +
           untabled(job) + ".",
       "Run points are on the pipe's centreline; levels are inverts, of drains the rim. Two points "
       "in one place with two levels are a drop.",
       "Manways are told by their centres. Corners are numbered as on sheet " +
           sheetOf(placementAnchor()) + "."},
      small ? flow.fullWidth() : width, true));
  // Columns side by side are read one after another; what is less long fills the last of them.
  Block points = runPointTable(job, small ? kPoints : width);
  const double beside = flow.fullWidth() - 2 * (points.width + kSheetGap);
  flow.add(std::move(points));
  const double inside = small && beside > kManways ? beside : width;
  flow.add(manwayTable(job, inside));
  flow.add(baffleTable(job, inside));
}

} // namespace sump
