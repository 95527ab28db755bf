#include "app/canvas/tools/parallel_tool.h"

#include "app/canvas/live_dimensions.h"

#include "core/geometry/polygon.h"
#include "core/plan/edits_parts.h"
#include "core/plan/edits_runs.h"

#include <cmath>

namespace sump {

ParallelTool::ParallelTool(ToolHost& host) : Tool(host) {
  // One line that is selected is the one that is meant.
  if (host.selection().size() != 1) return;
  const Id& id = *host.selection().begin();
  if (host.plan().runs.find(id) != nullptr) source_ = id;
}

std::optional<Polyline> ParallelTool::line() const {
  const Run* run = host().plan().runs.find(source_);
  return run == nullptr ? std::nullopt : Locator(host().plan()).centreline(*run);
}

double ParallelTool::spacing() const {
  const std::optional<Polyline> line = this->line();
  const std::optional<Station> near = line ? stationNear(*line, pointer_.site) : std::nullopt;
  if (!near) return 0;
  const auto leg = static_cast<std::size_t>(near->leg);
  const Point2 along = (*line)[leg + 1] - (*line)[leg];
  const double side = cross(along, pointer_.site - (*line)[leg]) < 0 ? -1 : 1;
  const auto typed = typedValue(typed_, EntryKey::Distance);
  if (typed) return side * *typed;
  return side * onFineStep(distance(near->at, pointer_.site), fineStep(host(), pointer_));
}

void ParallelTool::press(const Pointer& pointer) {
  pointer_ = pointer;
  if (!source_.empty()) {
    lay();
    return;
  }
  const Run* run = runMeant(host(), pointer, false);
  if (run == nullptr) return host().refuse(toolText("Click on the line that is to be followed."));
  source_ = run->id;
  host().select({source_});
  host().refresh();
}

void ParallelTool::move(const Pointer& pointer) {
  pointer_ = pointer;
  if (!source_.empty()) host().refresh();
}

bool ParallelTool::lay() {
  Id made;
  const std::optional<Plan> next = parallelRun(host().plan(), source_, spacing(), made);
  if (!next) {
    host().refuse(toolText("Point to one side of the line, or type the spacing."));
    return false;
  }
  if (!host().commit(toolText("Lay parallel line"), *next)) return false;
  typed_.clear();
  host().select({made});
  host().refresh();
  return true;
}

bool ParallelTool::key(int key, Qt::KeyboardModifiers) {
  if (key != Qt::Key_Escape || source_.empty()) return false;
  cancel();
  return true;
}

std::vector<EntryField> ParallelTool::entryFields() const {
  if (source_.empty()) return {};
  return {{EntryKey::Distance, EntryUnit::Length, toolText("Spacing"),
           toolText("From middle to middle, on the pointer's side of the line")}};
}

std::vector<Polyline> ParallelTool::underWay() const {
  const auto across = this->across();
  if (!across) return {};
  return {offsetLine(*line(), spacing()), {across->first, across->second}};
}

std::optional<std::pair<Point2, Point2>> ParallelTool::across() const {
  const std::optional<Polyline> line = this->line();
  const double offset = spacing();
  const std::optional<Station> near = line ? stationNear(*line, pointer_.site) : std::nullopt;
  if (!near || offset == 0) return std::nullopt;
  const auto leg = static_cast<std::size_t>(near->leg);
  const Point2 along = (*line)[leg + 1] - (*line)[leg];
  const Point2 left = Point2{-along.y, along.x} * (1 / norm(along));
  return std::pair(near->at, near->at + left * offset);
}

void ParallelTool::typing(const Entry& entry) {
  typed_ = entry;
  host().refresh();
}

bool ParallelTool::enter(const Entry& entry, Qt::KeyboardModifiers) {
  typed_ = entry;
  return lay();
}

void ParallelTool::cancel() {
  source_.clear();
  typed_.clear();
  host().refresh();
}

void ParallelTool::paint(Overlay& overlay) const {
  QPainter& painter = overlay.painter();
  const CanvasTheme& theme = overlay.theme();
  const std::optional<Polyline> line = this->line();
  const double offset = spacing();
  if (!line || offset == 0) return;
  const Polyline beside = offsetLine(*line, offset);
  if (beside.size() < 2) return;
  const View& view = host().view();
  painter.setPen(QPen(theme.accent, 2, Qt::DashLine));
  painter.setBrush(Qt::NoBrush);
  painter.drawPolyline(view.toScreen(beside));
  if (const auto across = this->across())
    paintDimension(overlay, across->first, across->second, host().plan().project.units);
}

QString ParallelTool::hint() const {
  if (source_.empty())
    return toolText("Click on the line beside which another is laid. Esc ends it.");
  return toolText("Point to one side and click, or type the spacing and press Enter; each lays one "
                  "more line beside the first. Alt: any spacing. Esc lets the line go.");
}

} // namespace sump
