#include "core/sheet/room_parts.h"

#include "core/plan/keys.h"
#include "core/sheet/room_figure.h"
#include "core/sheet/room_tables.h"
#include "core/sheet/set_tables.h"
#include "core/sheet/tags.h"
#include "core/study/exposed_pipe.h"
#include "core/units/print.h"

namespace sump {

namespace {

bool isUpright(const RunStudy& run, InlinePart part) {
  constexpr double kSame = 1e-6; // m
  part.along = 0;
  const auto low = partPlace(run, part);
  part.along = 1;
  const auto high = partPlace(run, part);
  return low && high && distance(flat(low->at), flat(high->at)) < kSame;
}

} // namespace

std::vector<RoomPart> partsIn(const SheetJob& job, const EquipmentRoom& room, double about) {
  const PaperBox inside = insideOf(room).grown(about);
  std::vector<RoomPart> found;
  for (const RunStudy& study : job.study().runs) {
    const Run& run = *job.plan().runs.find(study.id);
    if (isConduit(run.service)) continue;
    for (const InlinePart& part : run.parts) {
      const auto place = partPlace(study, part);
      if (!place || place->at.z <= inMetres(room.floor)) continue;
      const Point2 local = room.frame().toLocal(flat(place->at));
      if (!inside.holds(local)) continue;
      found.push_back({&run, &part, local, place->at.z - inMetres(room.floor),
                       isUpright(study, part), place->size.empty() ? run.size : place->size,
                       partName(job.catalog, key(part.kind))});
    }
  }
  return found;
}

Block roomPartTable(const SheetJob& job, const EquipmentRoom& room, double width) {
  const auto tags = runTags(job.plan());
  const WallView wall = wallOf(room);
  const auto print = [&](double v) { return printLength(metres(v), job.units()); };
  std::vector<std::vector<std::string>> rows;
  for (const RoomPart& p : partsIn(job, room)) {
    rows.push_back({p.part->id, tags.at(p.run->id), sizeText(p.size),
                    print(wall.length - wall.right(room, p.local)), print(wall.off(room, p.local)),
                    print(p.height), p.what});
  }
  return table("VALVES AND PARTS ABOVE THE FLOOR, " + called(room),
               {{"Mark"},
                {"Run"},
                {"Size", Align::Centre},
                {"From the|right end", Align::Right},
                {"Off the|wall", Align::Right},
                {"Height|over floor", Align::Right},
                {"What"}},
               rows, width);
}

namespace {

/// None where something else carries it, which is named.
std::string supportsText(const ExposedPipe& pipe) {
  return decidedText(pipe.supports, [&](int n) -> std::string {
    if (n > 0) return std::to_string(n);
    return pipe.all.bracket ? "none: bracket" : "none: wall";
  });
}

bool hasLiftedDrop(const Plan& plan) {
  const auto lifted = [](const RunEnd& end) {
    return end.kind == EndKind::Chamber &&
           (end.fitting == EndFitting::FootValve || end.fitting == EndFitting::Strainer);
  };
  for (const Run& run : plan.runs)
    if (lifted(run.from) || lifted(run.to)) return true;
  return false;
}

} // namespace

Block supportTable(const SheetJob& job, double width) {
  const auto tags = runTags(job.plan());
  const auto print = [&](Length v) { return printLength(v, job.units()); };
  std::vector<std::vector<std::string>> rows;
  for (const ExposedPipe& pipe : exposedPipes(job.plan(), job.study(), builtinSupplies())) {
    // Lengths of pipe are told as the run schedule does: to the millimetre they would seem to be
    // heights, which are the differences of printed levels.
    rows.push_back({tags.at(pipe.run), sizeText(pipe.all.size), std::string(name(pipe.all.where)),
                    pipe.all.vertical ? "upright" : "level",
                    printRunLength(pipe.all.length, job.units()), decidedText(pipe.spacing, print),
                    supportsText(pipe)});
  }
  Block block = table("PIPE AND CONDUIT IN THE OPEN, AND ITS SUPPORTS",
                      {{"Run"},
                       {"Size", Align::Centre},
                       {"Where"},
                       {"Way"},
                       {"Length in|the open", Align::Right},
                       {"Supports no farther|apart than", Align::Right},
                       {"Supports,|as in the bill", Align::Right}},
                      rows, width);
  if (rows.empty()) return block;
  addNote(block,
          "Pipe: the lesser of code (IPC 308.5) and trade tables for this water; conduit: "
          "NEC 352, which the electrician checks. At least one to each leg, but for pipe in vaults "
          "that "
          "connectors in walls, baffles and risers or the eductor's bracket carry for half a "
          "spacing each way (none: wall, none: bracket); the local code decides. Vault: with its "
          "manways' risers. What they hang from or stand "
          "on: ______ (contractor).");
  if (hasLiftedDrop(job.plan()))
    addNote(block, "Upright pipe to a foot valve or strainer comes out of the vault with it: its "
                   "supports are clamps that open, of a stuff that does not rust.");
  return block;
}

} // namespace sump
