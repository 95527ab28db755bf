#include "app/section/section_drawing.h"

#include "app/core_text.h"

#include "core/plan/edits_levels.h"

#include <QCoreApplication>

#include <algorithm>

namespace sump {

namespace {

SectionHandle handleOf(const Run& run, int vertex, double station, Length invert, bool typed) {
  const bool end = vertex == -1 || vertex == static_cast<int>(run.vertices.size());
  return {run.id, vertex, station, invert, typed, !typed && end && mayBeGraded(run, vertex)};
}

void addHandles(const Plan& plan, SectionDrawing& drawing) {
  if (drawing.line) {
    const Run& run = *plan.runs.find(drawing.run);
    for (const ProfilePoint& p : drawing.line->points)
      drawing.handles.push_back(handleOf(run, p.vertex, p.station, p.invert, p.typed));
    return;
  }
  for (const TrainRun& shown : drawing.train->runs) {
    if (!shown.carriesFlow && shown.service != Service::Suction) continue;
    const Run& run = *plan.runs.find(shown.id);
    for (const TrainPoint& p : shown.points) {
      if (p.vertex != kNoVertex)
        drawing.handles.push_back(handleOf(run, p.vertex, p.station, p.invert, p.typed));
    }
  }
  std::ranges::stable_sort(drawing.handles, [](const SectionHandle& a, const SectionHandle& b) {
    return a.station < b.station || (a.station == b.station && a.invert > b.invert);
  });
}

/// In the window's language.
void putInWords(const Plan& plan, std::vector<SectionNote>& notes) {
  const KeptWords kept(namesIn(plan));
  for (SectionNote& note : notes)
    note.text = coreFilled(note.text, kept).toStdString();
}

} // namespace

std::vector<Mark> SectionDrawing::marks(const SectionPlane& plane) const {
  if (line) return sectionMarks(*line, plane);
  if (train) return sectionMarks(*train, plane);
  return {};
}

std::optional<Length> SectionDrawing::groundAt(double station) const {
  if (empty()) return std::nullopt;
  const std::vector<ProfileGround>& ground = line ? line->ground : train->ground;
  for (std::size_t i = 1; i < ground.size(); ++i) {
    const ProfileGround &a = ground[i - 1], &b = ground[i];
    if (station < a.station || station > b.station) continue;
    if (b.station <= a.station) return b.level;
    return a.level + (station - a.station) / (b.station - a.station) * (b.level - a.level);
  }
  return std::nullopt;
}

SectionDrawing sectionDrawing(const Review& review, const Catalog& catalog, SectionKind kind,
                              const Id& run) {
  SectionDrawing drawing;
  drawing.kind = kind;
  drawing.run = run;
  drawing.units = review.plan.project.units;
  if (kind == SectionKind::Line) {
    drawing.line = runProfile(review.plan, review.study, catalog, run);
  } else {
    drawing.train = trainProfile(review.plan, review.study, catalog);
  }
  if (drawing.empty()) return drawing;
  drawing.extent = drawing.line ? sectionExtent(*drawing.line) : sectionExtent(*drawing.train);
  drawing.notes = drawing.line ? sectionNotes(*drawing.line, drawing.units)
                               : sectionNotes(*drawing.train, drawing.units);
  putInWords(review.plan, drawing.notes);
  addHandles(review.plan, drawing);
  return drawing;
}

QString handleName(const Plan& plan, const SectionHandle& handle) {
  const Run* run = plan.runs.find(handle.run);
  const int corners = run == nullptr ? 0 : static_cast<int>(run->vertices.size());
  const QString id = QString::fromStdString(handle.run);
  if (handle.vertex == -1) return QCoreApplication::translate("Section", "%1, start").arg(id);
  if (handle.vertex == corners) return QCoreApplication::translate("Section", "%1, end").arg(id);
  return QCoreApplication::translate("Section", "%1, corner %2").arg(id).arg(handle.vertex + 1);
}

} // namespace sump
