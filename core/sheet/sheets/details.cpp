// P-5: details drawn to scale from the plan's own sizes; and P-3: every pipe run unrolled.

#include "core/geometry/polygon.h"
#include "core/sheet/arm_notes.h"
#include "core/sheet/detail_measures.h"
#include "core/sheet/end_names.h"
#include "core/sheet/flow.h"
#include "core/sheet/part_list.h"
#include "core/sheet/run_block.h"
#include "core/sheet/run_section.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/structure_cut.h"
#include "core/sheet/tags.h"
#include "core/sheet/typical_interconnect.h"
#include "core/sheet/view_references.h"
#include "core/study/exposed_pipe.h"
#include "core/study/manway_way.h"
#include "core/study/relief.h"
#include "core/units/print_levels.h"

#include <algorithm>

namespace sump {

namespace {

constexpr const char* kLiftedOut =
    "lift it out at its union, from above with a long tool or under an entry permit with the water "
    "pumped below it, before anyone goes in by that.";

struct Detail {
  const RunStudy* run;
  RunWindow window;
  std::string title;
  std::vector<std::string> notes;
};

constexpr const char* kArms = "Arms of tees and elbows are those of the fittings alone, from the "
                              "pipe's axis to the open end; their maker's sizes govern.";
constexpr double kPast = 0.8; // m shown past what a detail is about

/// Up to its last inline part near the start, or the wall.
double startReach(const SheetJob& job, const RunStudy& run) {
  double reach = firstWall(job, run).value_or(0);
  for (const InlinePart& part : job.plan().runs.find(run.id)->parts) {
    constexpr double kNear = 5; // m
    const auto place = partPlace(run, part);
    if (place && place->along < reach + kNear) reach = std::max(reach, place->along);
  }
  return std::min(planEnd(run), reach + kPast);
}

double firstPart(const SheetJob& job, const RunStudy& run) {
  double first = planEnd(run);
  for (const InlinePart& part : job.plan().runs.find(run.id)->parts) {
    if (const auto place = partPlace(run, part)) first = std::min(first, place->along);
  }
  return std::max(0.0, first - kPast);
}

/// Can the union be reached through the opening of the manway that the eductor hangs in?
std::string unionNote(const SheetJob& job, const Run& run) {
  const RunStudy& studied = *job.study().run(run.id);
  bool any = false;
  for (const InlinePart& part : run.parts) {
    const auto place = partPlace(studied, part);
    if (part.kind != PartKind::Union || !place || !run.eductor) continue;
    any = true;
    for (const Vault& vault : job.plan().vaults) {
      for (const Manway& manway : vault.manways) {
        if (manway.id != run.eductor->manway) continue;
        const Point2 middle = vault.frame().toSite(manway.at);
        if (distance(flat(place->at), middle) <= inMetres(manway.diameter) / 2)
          return "union within reach from the manway";
      }
    }
  }
  return any ? "union outside the riser: move it inside the manway to reach it"
             : "put a union within reach from the manway";
}

/// `the manway of Vault 2, suction, ch. 1`
std::string manwayText(const SheetJob& job, const Id& id) {
  for (const VaultStudy& studied : job.study().vaults) {
    const Vault& vault = *job.plan().vaults.find(studied.id);
    for (std::size_t i = 0; i < studied.manways.size(); ++i) {
      if (vault.manways[i].id != id) continue;
      return "the manway of " + called(vault) + ", ch. " +
             std::to_string(studied.manways[i].chamber);
    }
  }
  return "manway " + id;
}

std::vector<std::string> eductorNotes(const SheetJob& job, const Run& run) {
  std::vector<std::string> notes;
  if (run.eductor) {
    notes.push_back("Foot of bracket " + printElevation(run.eductor->bracketFoot, job.units()) +
                    ", outlet end " + printElevation(run.eductor->outletEnd, job.units()) +
                    ", hung in " + manwayText(job, run.eductor->manway) + ".");
  }
  notes.push_back("Air inlet above the water and free; " + unionNote(job, run) + ".");
  const VaultStudy* vault = job.study().vault(run.to.target);
  if (run.eductor && vault != nullptr && vault->waterLevel &&
      *vault->waterLevel < run.eductor->outletEnd)
    notes.push_back("It hangs in the air, as drawn, and is not dipped in: its jet falls " +
                    printHeight(*vault->waterLevel, run.eductor->outletEnd, job.units()) +
                    " to the water at rest and takes air down with it.");
  if (run.eductor) notes.push_back(std::string("It hangs in the manway: ") + kLiftedOut);
  return notes;
}

/// Who goes in by that manway has less room beside it, or takes it out before.
std::vector<std::string> openingNotes(const SheetJob& job, const Run& run) {
  std::vector<std::string> notes;
  const RunStudy& studied = *job.study().run(run.id);
  const ManwayWays ways(job.plan(), job.study());
  for (const VaultStudy& vault : job.study().vaults) {
    const bool loose = std::ranges::any_of(run.parts, [&](const InlinePart& part) {
      const auto place = partPlace(studied, part);
      return part.kind == PartKind::Union && place && contains(vault.outline, flat(place->at));
    });
    for (std::size_t i = 0; i < vault.manways.size(); ++i) {
      for (const ManwayLine& line : ways.lines(vault, i)) {
        if (line.run != run.id) continue;
        std::string& note = notes.emplace_back("It stands in the clear opening of ");
        note += manwayText(job, vault.manways[i].id);
        note += loose ? ": " : " and narrows it.";
        if (loose) note += kLiftedOut;
      }
    }
  }
  return notes;
}

/// What keeps reclaimed water out of the drinking water, as it is drawn.
std::string crossConnectionNote(const Run& run) {
  std::string drawn;
  for (const InlinePart& part : run.parts) {
    const char* what = part.kind == PartKind::AirGap ? "air gap"
                       : part.kind == PartKind::ReducedPressureAssembly
                           ? "reduced-pressure assembly"
                       : part.kind == PartKind::DoubleCheck ? "double check"
                                                            : nullptr;
    if (what != nullptr) drawn += (drawn.empty() ? "" : ", ") + (what + (" " + part.id));
  }
  return "CROSS-CONNECTION: " + (drawn.empty() ? std::string("NO PROTECTION") : drawn) +
         " drawn; the local code decides which it must be. Within reach, and tested when set and "
         "each year where it can be tested; no way round it.";
}

/// Where the water goes that a leaking assembly lets out.
std::vector<std::string> makeUpNotes(const SheetJob& job, const Run& run) {
  std::vector<std::string> notes = {crossConnectionNote(run)};
  for (const RoomAssembly& assembly : roomAssemblies(job.plan(), job.study())) {
    if (assembly.run != run.id) continue;
    const EquipmentRoom& room = *job.plan().rooms.find(assembly.room);
    notes.push_back(
        "RELIEF OPENING of " + assembly.part +
        ": discharges in sight, through an air gap of twice its opening at least, to the floor "
        "drain of " +
        called(room) + (room.floorDrain ? "" : " (place: ______)") +
        "; air gap by the plumber, drain by the general contractor.");
  }
  return notes;
}

/// Where a pipe that comes up through the floor stands: the dimensions of its detail start there.
std::vector<std::string> riserNotes(const SheetJob& job, const RunStudy& run) {
  std::vector<std::string> notes;
  for (std::size_t i = 0; i < run.legs.size(); ++i) {
    const Point2 at = flat(run.points[i].at);
    if (!run.legs[i].vertical) continue;
    for (const EquipmentRoom& room : job.plan().rooms) {
      const double floor = inMetres(room.floor);
      const auto [low, high] = std::minmax(run.points[i].at.z, run.points[i + 1].at.z);
      if (low >= floor || high <= floor || !contains(outline(room), at)) continue;
      const Point2 local = room.frame().toLocal(at);
      const double north = inMetres(room.width) - local.y, east = inMetres(room.length) - local.x;
      const auto length = [&](double v) { return printLength(metres(v), job.units()); };
      notes.push_back("It comes up through the floor " + length(std::min(local.x, east)) +
                      " from the inside face of the local " + (local.x <= east ? "west" : "east") +
                      " wall and " + length(std::min(local.y, north)) + " from that of the " +
                      (local.y <= north ? "south" : "north") +
                      " wall; the dimensions along it start there.");
    }
  }
  return notes;
}

/// In the vault where it ends; nothing for one that joins another line.
std::optional<Detail> inletDetail(const SheetJob& job, const RunStudy& run, const Run& given,
                                  const std::string& tag) {
  if (given.to.kind != EndKind::Chamber) return std::nullopt;
  const double end = planEnd(run);
  double wall = end;
  for (double station : wallStations(job, run))
    wall = station < end ? station : wall; // the last one before the end
  std::vector<std::string> notes = downLegNotes(job, run);
  const std::vector<std::string> upper = upperArmNotes(job, run);
  notes.insert(notes.end(), upper.begin(), upper.end());
  notes.emplace_back(kArms);
  return Detail{&run, {std::max(0.0, wall - kPast / 2), end}, "INLET" + tag, std::move(notes)};
}

/// One for all that are alike.
std::optional<Detail> interconnectDetail(const SheetJob& job, const RunStudy& run) {
  const std::vector<Id> alike = alikeInterconnects(job.plan(), job.study(), run.id);
  if (alike.front() != run.id) return std::nullopt;
  std::vector<std::string> notes = downLegNotes(job, run);
  std::ranges::move(interconnectNotes(job, alike), std::back_inserter(notes));
  notes.emplace_back(kArms);
  return Detail{
      &run, {0, planEnd(run)}, "INTERCONNECT, " + interconnectTags(job, alike), std::move(notes)};
}

std::optional<Detail> detailOf(const SheetJob& job, const RunStudy& run) {
  const Run& given = *job.plan().runs.find(run.id);
  const double end = planEnd(run);
  const std::string tag = ", " + runTags(job.plan()).at(run.id);
  const auto withOpening = [&](std::string note) {
    std::vector<std::string> notes = openingNotes(job, given);
    notes.insert(notes.begin(), std::move(note));
    return notes;
  };
  switch (run.service) {
  case Service::Interconnect:
    return interconnectDetail(job, run);
  case Service::Link: {
    std::vector<std::string> notes = downLegNotes(job, run);
    notes.emplace_back("The way out at high level with its drop keeps floatables behind.");
    notes.emplace_back(kArms);
    return Detail{&run, {0, end}, "HIGH-LEVEL LINK" + tag, std::move(notes)};
  }
  case Service::Recirculation:
    return Detail{
        &run, {std::max(0.0, end - 2.2), end}, "EDUCTOR MOUNTING" + tag, eductorNotes(job, given)};
  case Service::Suction:
  case Service::SpareSuction:
    return Detail{&run,
                  {0, std::min(end, firstWall(job, run).value_or(end) + kPast)},
                  "SUCTION ENTRY" + tag,
                  withOpening("Rises all the way to the pump, no high pocket.")};
  case Service::Inlet:
    return inletDetail(job, run, given, tag);
  case Service::Overflow: {
    std::vector<std::string> notes =
        withOpening("The backwater valve is to be reached for cleaning.");
    for (const auto& arms : {downLegNotes(job, run), upperArmNotes(job, run)})
      notes.insert(notes.end(), arms.begin(), arms.end());
    return Detail{
        &run, {0, startReach(job, run)}, "OVERFLOW WITH BACKFLOW PROTECTION" + tag, notes};
  }
  case Service::MakeUp: {
    std::vector<std::string> notes = riserNotes(job, run);
    const std::vector<std::string> more = makeUpNotes(job, given);
    notes.insert(notes.end(), more.begin(), more.end());
    return Detail{&run, {firstPart(job, run), end}, "FRESH-WATER MAKE-UP" + tag, std::move(notes)};
  }
  default:
    return std::nullopt;
  }
}

/// It turns in plan within the window: drawn straight, it is measured round the corner.
bool turnsWithin(const RunStudy& run, const RunWindow& window) {
  const std::vector<double> stations = planStations(run);
  return std::ranges::any_of(run.bends, [&](const Bend& bend) {
    const double at = stations[static_cast<std::size_t>(bend.point)];
    return !bend.vertical && at > window.from && at < window.to;
  });
}

bool isDrawable(const RunStudy& run) {
  return run.resolved && run.points.size() >= 2;
}

/// At this distance from the run's start in plan.
Point2 placeOn(const RunStudy& run, double along) {
  const std::vector<double> stations = planStations(run);
  for (std::size_t i = 1; i < stations.size(); ++i) {
    if (stations[i] < along || stations[i] <= stations[i - 1]) continue;
    const double share = (along - stations[i - 1]) / (stations[i] - stations[i - 1]);
    return lerp(flat(run.points[i - 1].at), flat(run.points[i].at), std::max(share, 0.0));
  }
  return flat(run.points.back().at);
}

} // namespace

/// A detail in another vault is its own, too: each vault tells where to look.
std::vector<DetailPlace> detailPlaces(const SheetJob& job) {
  std::vector<DetailPlace> places;
  for (const RunStudy& run : job.study().runs) {
    if (!isDrawable(run)) continue;
    const std::optional<Detail> detail = detailOf(job, run);
    if (!detail && !isFirstInItsVault(job, run.id)) continue;
    constexpr double kShare = 0.65; // not where the run's own label points to
    const auto [from, to] = detail ? detail->window : RunWindow{0, planEnd(run)};
    places.push_back(
        {placeOn(run, from + (to - from) * kShare), detailAnchor(job.plan(), job.study(), run.id)});
  }
  return places;
}

void detailSheet(const SheetJob& job, PageFlow& flow) {
  const Point2 most = flow.figureSize({300, 200}, true);
  for (const RunStudy& run : job.study().runs) {
    if (!isDrawable(run)) continue;
    const std::optional<Detail> detail = detailOf(job, run);
    if (!detail) continue;
    Drawing drawing = runSection(job, run, detail->window, 1);
    addDetailMeasures(job, run, detail->window, drawing);
    drawing.title = detail->title;
    if (turnsWithin(run, detail->window)) // before the run's tag, which ends the title
      drawing.title.insert(drawing.title.rfind(", "), " UNROLLED ALONG THE RUN");
    drawing.notes = detail->notes;
    drawing.anchor = detailAnchor(job.plan(), job.study(), run.id);
    drawing.finest = job.units() == UnitSystem::Metric ? 20 : 16;
    flow.add(figure(drawing, job.units(), most));
  }
}

namespace {

/// What the plumber asks of a run: size, material, length, slope, and whence and whither.
SectionTitle sectionTitle(const SheetJob& job, const RunStudy& run) {
  const Run& given = *job.plan().runs.find(run.id);
  const std::string slope = slopeText(run, job.units());
  SectionTitle title{runTags(job.plan()).at(run.id) + "  " + runName(given.name, given.service),
                     {sizeAndMaterial(given, job.catalog) + ", length of pipe with drops " +
                          lengthText(run, job.units()) + (slope.empty() ? "" : ", " + slope),
                      "From " + runEndText(job.plan(), job.study(), given, true) + " to " +
                          runEndText(job.plan(), job.study(), given, false)},
                     sectionAnchor(job.plan(), run.id)};
  if (isTaped(given, run)) title.facts.push_back(kNonpotableMarking);
  return title;
}

} // namespace

void runSectionSheet(const SheetJob& job, PageFlow& flow) {
  const Point2 most = flow.figureSize({400, 188}, false);
  for (const RunStudy& run : job.study().runs) {
    if (!isDrawable(run) || run.service == Service::Interconnect) continue;
    if (planEnd(run) < 1e-6) continue; // it only rises: the room's elevation shows it
    if (const auto profile = runProfile(job.plan(), job.study(), job.catalog, run.id)) {
      Block block = runSectionBlock(*profile, sectionTitle(job, run), job.units(), most,
                                    isSmallPaper(job.paper));
      block.run = runTags(job.plan()).at(run.id);
      block.anchor = sectionAnchor(job.plan(), run.id);
      flow.add(std::move(block));
    }
  }
}

} // namespace sump
