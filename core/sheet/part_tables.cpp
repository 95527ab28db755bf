// What is set in the runs and at their ends, and where runs join what is there already.

#include "core/geometry/polygon.h"
#include "core/sheet/part_list.h"
#include "core/sheet/set_tables.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/tags.h"
#include "core/study/access_risers.h"
#include "core/study/connections.h"
#include "core/units/list_words.h"
#include "core/units/print_levels.h"

#include <algorithm>
#include <set>

namespace sump {

namespace {

/// Of fresh water, whose pressure is its supply's.
std::string pressureText(const SheetJob& job, const Connection& joint) {
  const bool fresh = job.study().run(joint.run)->service == Service::MakeUp;
  return fresh ? "; its pressure at the flow that is needed: ______" : "";
}

/// Of the run where it is joined.
Length centrelineAt(const SheetJob& job, const Connection& joint) {
  const Run& run = *job.plan().runs.find(joint.run);
  const PipeSize* pipe = job.catalog.pipeSize(run.pipe, sizeThere(run, joint, job.study()));
  return pipe != nullptr ? joint.invert + pipe->inside / 2.0 : joint.invert;
}

/// The sewer on which a connection lies, as far as the plan knows it.
std::string sewerText(const SheetJob& job, const Connection& joint) {
  constexpr double kBeside = 0.3; // m; records are not better
  for (const Utility& utility : job.plan().utilities) {
    if (utility.kind != UtilityKind::Sewer || distanceToLine(joint.at, utility.path) > kBeside)
      continue;
    const std::string level =
        utility.elevation ? " of " + utility.name + " is " +
                                printElevation(*utility.elevation, job.units()) + " by records"
                          : " of " + utility.name + " is not known";
    return "the invert told is the run's own; the centreline" + level +
           ": expose it and check level, size and material first; the excavator widens and deepens "
           "the trench there by hand, as far as its owner asks, beyond what is tabled";
  }
  return "expose it and check its invert first; its size and material: ______";
}

/// What is to be done there before the run is laid.
std::string joinText(const SheetJob& job, const Connection& joint) {
  const bool conduit = isConduit(job.study().run(joint.run)->service);
  switch (joint.kind) {
  case ConnectionKind::Stub:
    return std::string("find it, and check its size and level before the run is laid") +
           pressureText(job, joint) +
           (conduit ? "; panel and circuit that feed it: ______ (owner, electrician)" : "");
  case ConnectionKind::Sewer:
    return "wye, saddle or manhole as its owner asks, to suit its flow, which is to ______; " +
           sewerText(job, joint);
  case ConnectionKind::Utility:
    break;
  }
  const std::string level = joint.level
                                ? "its centreline is " + printElevation(*joint.level, job.units()) +
                                      " by records, the run's there " +
                                      printElevation(centrelineAt(job, joint), job.units()) +
                                      ": expose it by hand, check, and bring the run to it"
                                : std::string("its level is not known: expose it by hand first");
  return (conduit ? "joined by its owner or a licensed electrician, with it dead, in box or splice "
                    "______; "
                  : "tee or tapping saddle with a shut-off valve, as its owner asks; ") +
         level + pressureText(job, joint);
}

/// How the pipe gets through the wall of a basin or drain, which may stand already or be cast new.
std::string entryText(const Plan& plan, const BasinEntry& entry) {
  const bool drain = plan.basins.find(entry.basin)->kind == BasinKind::TrenchDrain;
  return std::string("through its wall") + (drain ? " or its outlet fitting" : "") +
         ", cut flush inside, with a flexible watertight connector; one that stands: find its bars "
         "and joints, then core the hole to the connector's size; a new one: cast the connector "
         "in" +
         (entry.atStart ? "; an outlet that it has already: found at ______, leads to ______, "
                          "plugged watertight when this run takes over by ______"
                        : "");
}

/// `north 3.000, east 47.850, invert 1.450`
std::string siteText(const SheetJob& job, Point2 at, Length invert) {
  const auto level = [&](Length v) { return printElevation(v, job.units()); };
  return "north " + level(metres(at.y)) + ", east " + level(metres(at.x)) + ", invert " +
         level(invert);
}

/// Who makes the joint at wash equipment, which its supplier brings.
std::string washText(const SheetJob& job, const Run& run, const WashEquipment& wash) {
  if (isConduit(run.service))
    return "adapter with bushing into its box by the electrician, who joins the wires there as its "
           "supplier's diagram asks: box and terminals ______";
  const std::string inlet = run.service == Service::Product && !wash.inletSize.empty()
                                ? "its inlet " + sizeText(wash.inletSize) + " at " +
                                      printElevation(wash.inletElevation, job.units()) + ", with "
                                : std::string();
  return inlet +
         "union and shut-off valve by its supplier, joined by the plumber: thread or flange "
         "______";
}

/// At the far ends of the runs to wash equipment.
void addWashes(const SheetJob& job, bool conduits, std::vector<std::string>& texts) {
  const auto tags = runTags(job.plan());
  for (const RunStudy& studied : job.study().runs) {
    const Run& run = *job.plan().runs.find(studied.id);
    if (isConduit(run.service) != conduits || !studied.resolved) continue;
    for (bool atStart : {true, false}) {
      const RunEnd& end = atStart ? run.from : run.to;
      const WashEquipment* wash =
          end.kind == EndKind::Wash ? job.plan().washes.find(end.target) : nullptr;
      if (wash == nullptr) continue;
      const Point3 at = (atStart ? studied.points.front() : studied.points.back()).at;
      texts.push_back(tags.at(run.id) + (atStart ? " starts at " : " ends at ") + called(*wash) +
                      ", " + siteText(job, flat(at), metres(at.z)) + ": " +
                      washText(job, run, *wash) + ".");
    }
  }
}

/// `CLEANOUTS AND PULL BOXES`: what of them the plan has.
std::string reachedText(const std::set<PartKind>& kinds) {
  std::vector<std::string> names;
  if (kinds.contains(PartKind::Cleanout)) names.emplace_back("CLEANOUTS");
  if (kinds.contains(PartKind::BackwaterValve)) names.emplace_back("BACKWATER VALVES");
  if (kinds.contains(PartKind::PullBox)) names.emplace_back("PULL BOXES");
  return listInWords(names, " AND ");
}

std::string riserText(PartKind kind) {
  if (kind == PartKind::Cleanout) return "cleanout, riser of the pipe's full size";
  return kind == PartKind::PullBox ? "pull box, opened at grade to pull wire"
                                   : "backwater valve, box to lift its flap out";
}

} // namespace

Block partTable(const SheetJob& job, double width) {
  const auto tags = runTags(job.plan());
  std::vector<std::vector<std::string>> rows;
  for (const ListedPart& part : listedParts(job)) {
    const auto& where = part.where;
    const auto level = [&](double v) {
      return where ? printElevation(metres(v), job.units()) : std::string("?");
    };
    const Point3 at = where ? where->at : Point3{};
    rows.push_back({std::to_string(rows.size() + 1), part.mark, tags.at(part.run), part.size,
                    where ? printRunLength(metres(where->along), job.units()) : "?", level(at.y),
                    level(at.x), level(at.z), part.what});
  }
  Block block = table("VALVES AND PARTS IN THE RUNS",
                      {{"No. on|plan", Align::Right},
                       {"Mark"},
                       {"Run"},
                       {"Size", Align::Centre},
                       {"Station,|in plan", Align::Right},
                       {"North", Align::Right},
                       {"East", Align::Right},
                       {"Invert", Align::Right},
                       {"What"}},
                      rows, width);
  block.anchor = partTableAnchor();
  if (!rows.empty())
    addNote(block, "Numbers are those in boxes on the plan of the tankage, sheet " +
                       sheetOf(planAnchor()) + ".");
  return block;
}

Block accessTable(const SheetJob& job, double width) {
  const auto tags = runTags(job.plan());
  const UnitSystem units = job.units();
  std::vector<std::vector<std::string>> rows;
  std::set<PartKind> kinds;
  for (const AccessRiser& riser : accessRisers(job.plan(), job.study())) {
    kinds.insert(riser.kind);
    const Length invert = metres(riser.at.z);
    rows.push_back({riser.part, tags.at(riser.run), sizeText(riser.size),
                    printRunLength(metres(riser.station), units), printElevation(invert, units),
                    levelText(riser.grade, units),
                    riser.grade ? printHeight(invert, *riser.grade, units) : "?",
                    riser.traffic ? "traffic" : "pedestrian", riserText(riser.kind)});
  }
  return table("RISERS TO " + reachedText(kinds),
               {{"Mark"},
                {"Run"},
                {"Size", Align::Centre},
                {"Station,|in plan", Align::Right},
                {"Invert", Align::Right},
                {"Cover|at grade", Align::Right},
                {"Height over|invert", Align::Right},
                {"Cover|rating"},
                {"What"}},
               rows, width);
}

Block connectionNotes(const SheetJob& job, bool conduits, double width) {
  const auto tags = runTags(job.plan());
  const auto length = [&](Length v) { return printLength(v, job.units()); };
  std::vector<std::string> texts;
  for (const Connection& joint : connections(job.plan(), job.study())) {
    if (isConduit(job.study().run(joint.run)->service) != conduits) continue;
    const std::string what = joint.other.empty()
                                 ? std::string("a stub")
                                 : objectName(joint.other, job.plan()) + " (existing)";
    texts.push_back(tags.at(joint.run) + (joint.atStart ? " starts at " : " ends at ") + what +
                    ", " + siteText(job, joint.at, joint.invert) + ": " + joinText(job, joint) +
                    ".");
  }
  for (const RunStudy& run : job.study().runs) {
    if (isConduit(run.service) != conduits) continue;
    for (const BasinEntry& entry : basinEntries(job.plan(), *job.plan().runs.find(run.id), run)) {
      texts.push_back(tags.at(entry.run) + (entry.atStart ? " leaves " : " enters ") +
                      objectName(entry.basin, job.plan()) + " (" +
                      length(job.plan().basins.find(entry.basin)->length) + " x " +
                      length(job.plan().basins.find(entry.basin)->width) +
                      " inside) at its wall, " + sizeText(entry.size) + ", " +
                      siteText(job, flat(entry.at), metres(entry.at.z)) + ": " +
                      entryText(job.plan(), entry) + ".");
    }
  }
  addWashes(job, conduits, texts);
  return paragraphs("WHERE RUNS JOIN WHAT IS THERE OR OTHERS SET", texts, width, false);
}

} // namespace sump
