#include "core/sheet/survey_notes.h"

#include "core/sheet/fitted_symbols.h"
#include "core/sheet/mark_pen.h"
#include "core/sheet/schedules.h"
#include "core/sheet/sheet_refs.h"

#include <algorithm>

namespace sump {

namespace {

/// Empty when the origin is no corner of it.
std::string cornerOfProperty(const Plan& plan) {
  constexpr double kSame = 0.001; // m
  const bool corner =
      std::ranges::any_of(plan.site.boundary, [](Point2 p) { return norm(p) < kSame; });
  return corner ? ", a corner of the property line" : "";
}

} // namespace

void markOrigin(std::vector<Mark>& marks) {
  constexpr double kArm = 0.6, kRadius = 0.2; // m
  std::vector<Mark> added;
  MarkPen pen(added, {}, Layer::Symbol);
  pen.beginSymbol({}, kArm);
  pen.circle({}, kRadius, LineStyle{Ink::Black, 0.35, {}});
  pen.path({{-kRadius, 0}, {kArm, 0}}, LineStyle{Ink::Black, 0.35, {}});
  pen.path({{0, -kRadius}, {0, kArm}}, LineStyle{Ink::Black, 0.35, {}});
  addSymbols(std::move(added), marks);
}

void labelOrigin(const SheetView& view, LabelBoard& board) {
  constexpr double kNear = 3, kReach = 40; // mm
  if (view.shows({})) board.atPoint({{"Origin", "N 0, E 0"}}, {}, kNear, kReach);
}

std::string axesText(const SheetJob& job) {
  return std::string("North and east are in ") +
         (job.units() == UnitSystem::Metric ? "metres" : "feet") +
         " from the origin of the axes (N 0, E 0)" + cornerOfProperty(job.plan()) +
         ", drawn on sheet " + sheetOf(originAnchor()) + "." + northStatement(job.plan());
}

std::string benchmarkText(const SheetJob& job) {
  const std::string& datum = job.plan().site.datum;
  return "ELEVATIONS are from: " + (datum.empty() ? "________________" : datum) +
         ". The plan does not hold where the benchmark stands. Surveyor to find it and enter: "
         "north ________, east ________, elevation found ________, by ________, date ________.";
}

} // namespace sump
