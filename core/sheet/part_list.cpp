// The parts set in the runs and at their ends, in the order in which they are numbered.

#include "core/sheet/part_list.h"
#include "core/plan/keys.h"
#include "core/sheet/tags.h"
#include "core/units/print.h"

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

/// Collects the parts, run by run from start to end.
class PartCollector {
public:
  explicit PartCollector(const SheetJob& job) : job_(job), tags_(runTags(job.plan())) {}

  void add(const RunStudy& run) {
    const Run& given = *job_.plan().runs.find(run.id);
    addEnd(run, given.from, true);
    for (const InlinePart& part : given.parts) {
      const std::optional<PartPlace> where = partPlace(run, part);
      const std::string size = where && !where->size.empty() ? where->size : given.size;
      put(part.id, run, sizeText(size), where, partName(job_.catalog, key(part.kind)));
    }
    addEnd(run, given.to, false);
  }
  std::vector<ListedPart> take() { return std::move(parts_); }

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
      put(tags_.at(run.id) + (atStart ? " start" : " end"), run, sizeText(size), where,
          partName(job_.catalog, key(end.fitting)));
    }
    if (hasFloat) put(tags_.at(run.id) + " start", run, "-", where, floatText(job_));
  }

  void put(const std::string& mark, const RunStudy& run, const std::string& size,
           const std::optional<PartPlace>& where, const std::string& what) {
    parts_.push_back({mark, run.id, size, where, what});
  }

  const SheetJob& job_;
  const std::unordered_map<Id, std::string> tags_;
  std::vector<ListedPart> parts_;
};

} // namespace

std::string partName(const Catalog& catalog, std::string_view key) {
  const PartProduct* part = catalog.part(key);
  return part != nullptr ? part->name : std::string(key);
}

std::vector<ListedPart> listedParts(const SheetJob& job) {
  PartCollector parts(job);
  for (const RunStudy& run : job.study().runs)
    parts.add(run);
  return parts.take();
}

} // namespace sump
