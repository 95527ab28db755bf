// What is set in the runs and at their ends, and where runs join what is there already.

#include "core/plan/keys.h"
#include "core/sheet/part_place.h"
#include "core/sheet/set_tables.h"
#include "core/sheet/tags.h"
#include "core/study/access_risers.h"
#include "core/study/connections.h"
#include "core/units/print_levels.h"

#include <algorithm>

namespace sump {

namespace {

/// Fittings at ends that are parts to buy and to find again, not turns of the pipe itself.
bool isPart(EndFitting fitting) {
  switch (fitting) {
  case EndFitting::FootValve:
  case EndFitting::Strainer:
  case EndFitting::Eductor:
  case EndFitting::Cap:
  case EndFitting::ScreenedVent:
    return true;
  case EndFitting::Plain:
  case EndFitting::Tee:
  case EndFitting::ElbowDown:
  case EndFitting::ElbowUp:
    break;
  }
  return false;
}

/// The level at which the float stops the pump, as the suctions reckon with it.
std::string floatText(const SheetJob& job) {
  for (const SuctionStudy& suction : job.study().hydraulics.suctions) {
    if (suction.lowWater)
      return "Low-level float, switches at " + printElevation(*suction.lowWater, job.units());
  }
  return "Low-level float, level not stated";
}

/// Collects the rows, run by run from start to end.
class PartRows {
public:
  explicit PartRows(const SheetJob& job) : job_(job), tags_(runTags(job.plan())) {}

  void add(const RunStudy& run) {
    const Run& given = *job_.plan().runs.find(run.id);
    addEnd(run, given.from, true);
    for (const InlinePart& part : given.parts) {
      const std::optional<PartPlace> where = partPlace(run, part);
      const std::string size = where && !where->size.empty() ? where->size : given.size;
      put(part.id, run, sizeText(size), where, partName(key(part.kind)));
    }
    addEnd(run, given.to, false);
  }
  const std::vector<std::vector<std::string>>& rows() const { return rows_; }

private:
  void addEnd(const RunStudy& run, const RunEnd& end, bool atStart) {
    const bool hasFloat =
        atStart && run.service == Service::FloatConduit && end.kind == EndKind::Chamber;
    if (!isPart(end.fitting) && !hasFloat) return;
    std::optional<PartPlace> where;
    if (run.resolved && !run.points.empty()) {
      const Point3 at = (atStart ? run.points.front() : run.points.back()).at;
      where = PartPlace{at, atStart ? 0 : planStations(run).back(), {}};
    }
    const Run& given = *job_.plan().runs.find(run.id);
    if (isPart(end.fitting)) {
      const std::string size = atStart || run.legs.empty() ? given.size : run.legs.back().size;
      put(atStart ? "start" : "end", run, sizeText(size), where, partName(key(end.fitting)));
    }
    if (hasFloat) put("start", run, "-", where, floatText(job_));
  }

  void put(const std::string& mark, const RunStudy& run, const std::string& size,
           const std::optional<PartPlace>& where, const std::string& what) {
    const auto level = [&](double v) {
      return where ? printElevation(metres(v), job_.units()) : std::string("?");
    };
    const Point3 at = where ? where->at : Point3{};
    rows_.push_back({mark, tags_.at(run.id), size,
                     where ? printRunLength(metres(where->along), job_.units()) : "?", level(at.y),
                     level(at.x), level(at.z), what});
  }

  /// The words of a catalogue part, or its key.
  std::string partName(std::string_view key) const {
    const PartProduct* part = job_.catalog.part(key);
    return part != nullptr ? part->name : std::string(key);
  }

  const SheetJob& job_;
  std::unordered_map<Id, std::string> tags_;
  std::vector<std::vector<std::string>> rows_;
};

/// What is to be done there before the run is laid.
std::string joinText(const SheetJob& job, const Connection& joint) {
  const bool conduit = isConduit(job.study().run(joint.run)->service);
  switch (joint.kind) {
  case ConnectionKind::Stub:
    return std::string("find it, and check its size and level before the run is laid") +
           (conduit ? "; panel and circuit that feed it: ______ (owner, electrician)" : "");
  case ConnectionKind::Sewer:
    return "wye, saddle or manhole as its owner asks; expose it and check its invert first";
  case ConnectionKind::Utility:
    break;
  }
  const std::string level = joint.level
                                ? "its centreline is " + printElevation(*joint.level, job.units()) +
                                      " by records: expose it by hand and check"
                                : std::string("its level is not known: expose it by hand first");
  return (conduit ? "joined by its owner or a licensed electrician, with it dead; "
                  : "tee or tapping saddle with a shut-off valve, as its owner asks; ") +
         level;
}

} // namespace

Block partTable(const SheetJob& job, double width) {
  PartRows rows(job);
  for (const RunStudy& run : job.study().runs)
    rows.add(run);
  return table("VALVES AND PARTS IN THE RUNS",
               {{"Mark"},
                {"Run"},
                {"Size", Align::Centre},
                {"Station,|in plan", Align::Right},
                {"North", Align::Right},
                {"East", Align::Right},
                {"Invert", Align::Right},
                {"What"}},
               rows.rows(), width);
}

Block accessTable(const SheetJob& job, double width) {
  const auto tags = runTags(job.plan());
  const UnitSystem units = job.units();
  std::vector<std::vector<std::string>> rows;
  for (const AccessRiser& riser : accessRisers(job.plan(), job.study())) {
    const bool cleanout = riser.kind == PartKind::Cleanout;
    const Length invert = metres(riser.at.z);
    rows.push_back({riser.part, tags.at(riser.run), sizeText(riser.size),
                    printRunLength(metres(riser.station), units), printElevation(invert, units),
                    levelText(riser.grade, units),
                    riser.grade ? printSize(printedRise(invert, *riser.grade, units), units) : "?",
                    riser.traffic ? "traffic" : "pedestrian",
                    cleanout ? "cleanout, riser of the pipe's full size"
                             : "backwater valve, box to lift its flap out"});
  }
  return table("RISERS TO CLEANOUTS AND BACKWATER VALVES",
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
  const auto level = [&](Length v) { return printElevation(v, job.units()); };
  std::vector<std::string> texts;
  for (const Connection& joint : connections(job.plan(), job.study())) {
    if (isConduit(job.study().run(joint.run)->service) != conduits) continue;
    const std::string what = joint.other.empty()
                                 ? std::string("a stub")
                                 : objectName(joint.other, job.plan()) + " (existing)";
    texts.push_back(tags.at(joint.run) + (joint.atStart ? " starts at " : " ends at ") + what +
                    ", north " + level(metres(joint.at.y)) + ", east " + level(metres(joint.at.x)) +
                    ", invert " + level(joint.invert) + ": " + joinText(job, joint) + ".");
  }
  return paragraphs("WHERE RUNS JOIN WHAT IS THERE", texts, width, false);
}

} // namespace sump
