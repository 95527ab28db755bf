// P-5: details drawn to scale from the plan's own sizes; and P-3: every pipe run unrolled.

#include "core/sheet/flow.h"
#include "core/sheet/part_place.h"
#include "core/sheet/run_section.h"
#include "core/sheet/tags.h"
#include "core/units/print.h"

#include <algorithm>
#include <set>

namespace sump {

namespace {

struct Detail {
  const RunStudy* run;
  RunWindow window;
  std::string title;
  std::vector<std::string> notes;
};

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

std::vector<std::string> eductorNotes(const SheetJob& job, const Run& run) {
  std::vector<std::string> notes;
  if (run.eductor) {
    notes.push_back("Foot of bracket " + printElevation(run.eductor->bracketFoot, job.units()) +
                    ", outlet end " + printElevation(run.eductor->outletEnd, job.units()) +
                    ", hung in manway " + run.eductor->manway + ".");
  }
  notes.push_back("Air inlet above the water and free; union within reach from the manway.");
  return notes;
}

std::optional<Detail> detailOf(const SheetJob& job, const RunStudy& run, std::set<Id>& shown) {
  const Run& given = *job.plan().runs.find(run.id);
  const double end = planEnd(run);
  const std::string tag = ", " + runTags(job.plan()).at(run.id);
  switch (run.service) {
  case Service::Interconnect:
    if (!shown.insert(given.from.target).second) return std::nullopt; // one for each vault
    return Detail{&run,
                  {0, end},
                  "INTERCONNECT" + tag,
                  {"Through the baffle at about the middle of the water; sealed all round."}};
  case Service::Link:
    return Detail{&run,
                  {0, end},
                  "HIGH-LEVEL LINK" + tag,
                  {"The way out at high level with its drop keeps floatables behind."}};
  case Service::Recirculation:
    return Detail{
        &run, {std::max(0.0, end - 2.2), end}, "SPARGER MOUNTING" + tag, eductorNotes(job, given)};
  case Service::Suction:
  case Service::SpareSuction:
    return Detail{&run,
                  {0, std::min(end, firstWall(job, run).value_or(end) + kPast)},
                  "SUCTION ENTRY" + tag,
                  {"Rises all the way to the pump, no high pocket."}};
  case Service::Overflow:
    return Detail{&run,
                  {0, startReach(job, run)},
                  "OVERFLOW WITH BACKFLOW PROTECTION" + tag,
                  {"The backwater valve is to be reached for cleaning."}};
  case Service::MakeUp:
    return Detail{&run,
                  {firstPart(job, run), end},
                  "FRESH-WATER MAKE-UP" + tag,
                  {"CROSS-CONNECTION: air gap or tested assembly, reached for its yearly test; no "
                   "way round it."}};
  default:
    return std::nullopt;
  }
}

/// Heights are enlarged until they are worth looking at beside the length.
double steepness(const RunStudy& run) {
  double low = run.points.front().at.z, high = low;
  for (const RunPoint& p : run.points) {
    low = std::min({low, p.at.z, p.grade.value_or(p.at.z)});
    high = std::max({high, p.at.z, p.grade.value_or(p.at.z)});
  }
  const double wanted = 0.12 * planEnd(run) / std::max(high - low, 0.3);
  return wanted > 5 ? 10 : wanted > 2 ? 5 : wanted > 1 ? 2 : 1;
}

Point2 figureSize(const SheetJob& job, const PageFlow& flow, double width, double height) {
  const Point2 most = flow.largestFigure();
  if (isSmallPaper(job.paper)) return most;
  return {std::min(most.x, width), std::min(most.y, height)};
}

bool isDrawable(const RunStudy& run) {
  return run.resolved && run.points.size() >= 2;
}

} // namespace

DraftPages detailSheet(const SheetJob& job) {
  PageFlow flow(job, "Plumbing details", "Detail");
  const Point2 most = figureSize(job, flow, 300, 200);
  std::set<Id> shown;
  for (const RunStudy& run : job.study().runs) {
    if (!isDrawable(run)) continue;
    const std::optional<Detail> detail = detailOf(job, run, shown);
    if (!detail) continue;
    Drawing drawing = runSection(job, run, detail->window, 1);
    drawing.title = detail->title;
    drawing.notes = detail->notes;
    flow.add(figure(drawing, job.units(), most));
  }
  return flow.done("As shown");
}

DraftPages runSectionSheet(const SheetJob& job) {
  PageFlow flow(job, "Sections of the runs", "Section");
  const Point2 most = figureSize(job, flow, 400, 180);
  const auto tags = runTags(job.plan());
  for (const RunStudy& run : job.study().runs) {
    if (!isDrawable(run) || isConduit(run.service) || run.service == Service::Interconnect)
      continue;
    const double end = planEnd(run);
    if (end < 1e-6) continue; // it only rises: the room's elevation shows it
    Drawing drawing = runSection(job, run, {0, end}, steepness(run));
    drawing.title = tags.at(run.id) + "  " + called(*job.plan().runs.find(run.id));
    flow.add(figure(drawing, job.units(), most));
  }
  return flow.done("As shown");
}

} // namespace sump
