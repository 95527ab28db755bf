// Runs: the line of its service, flow arrow, drops, inline parts and end fittings.

#include "core/catalog/catalog.h"
#include "core/plan/ends.h"
#include "core/sheet/mark_pen.h"
#include "core/sheet/part_symbol.h"

#include <algorithm>

namespace sump {

namespace {

constexpr double kSamePlace = 1e-6; // m; consecutive points this close stand one above the other

Frame along(Point2 at, Point2 direction) {
  return {at, radians(std::atan2(direction.y, direction.x))};
}

/// Direction of a leg in plan; of the nearest leg that has one when it is vertical.
Point2 direction(const Polyline& line, std::size_t leg) {
  for (std::size_t reach = 0; reach < line.size(); ++reach) {
    for (const std::size_t i : {leg + reach, leg - std::min(leg, reach)}) {
      if (i + 1 < line.size() && distance(line[i], line[i + 1]) > kSamePlace) {
        return line[i + 1] - line[i];
      }
    }
  }
  return {1, 0};
}

LineStyle symbolLine(const Run& run) {
  return {ink(facts(run.service).color), 0.35, {}};
}

/// Where along a leg the arrow stands farthest from the parts on it.
double arrowPlace(const Run& run, std::size_t leg) {
  double best = 0.58, room = -1;
  for (double t : {0.58, 0.42, 0.72, 0.28, 0.85}) {
    double nearest = 0.2; // as far as this is far enough
    for (const InlinePart& part : run.parts) {
      if (static_cast<std::size_t>(std::max(0, part.leg)) == leg) {
        nearest = std::min(nearest, std::abs(part.along - t));
      }
    }
    if (nearest > room + 1e-9) {
      room = nearest;
      best = t;
    }
  }
  return best;
}

/// Solid for water and air; open for conduits, where it shows the pull.
void markArrow(const Run& run, const Polyline& line, std::vector<Mark>& marks) {
  std::size_t longest = 0;
  double length = 0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    if (const double d = distance(line[i], line[i + 1]); d > length) {
      length = d;
      longest = i;
    }
  }
  if (length < 0.3) return; // no room: the symbols at its ends tell the direction
  const double half = std::min(0.12, length / 6);
  const Point2 u = direction(line, longest);
  SymbolPen pen(MarkPen(marks, run.id, Layer::Symbol),
                along(lerp(line[longest], line[longest + 1], arrowPlace(run, longest)), u), half,
                symbolLine(run));
  const Ring head{{1, 0}, {-1, 0.55}, {-1, -0.55}};
  if (isConduit(run.service)) {
    pen.open(head);
  } else {
    pen.solid(head);
  }
}

/// It has a round symbol of its own, which says that the run stands upright there.
bool isRound(EndFitting fitting) {
  return fitting == EndFitting::FootValve || fitting == EndFitting::Strainer ||
         fitting == EndFitting::ScreenedVent;
}

/// Circles where the run turns down; with a dot where it turns up (ISO 6412-1).
void markDrops(const Run& run, const RunStudy& studied, std::vector<Mark>& marks) {
  for (std::size_t i = 0; i + 1 < studied.points.size(); ++i) {
    const Point3 a = studied.points[i].at, b = studied.points[i + 1].at;
    if (distance(flat(a), flat(b)) > kSamePlace || std::abs(a.z - b.z) < kSamePlace) continue;
    const bool first = i == 0, last = i + 2 == studied.points.size();
    if ((first && isRound(run.from.fitting)) || (last && isRound(run.to.fitting))) continue;
    SymbolPen pen(MarkPen(marks, run.id, Layer::Part), Frame{flat(a), {}},
                  partSymbolSize(run) * 0.7, symbolLine(run));
    pen.openCircle({0, 0}, 1);
    if (turnsUp(studied, i)) pen.solidCircle({0, 0}, 0.25);
  }
}

void markParts(const Run& run, const Polyline& line, std::vector<Mark>& marks) {
  for (const InlinePart& part : run.parts) {
    const std::size_t leg = static_cast<std::size_t>(std::max(0, part.leg));
    if (leg + 1 >= line.size()) continue; // consistency reports it
    SymbolPen pen(MarkPen(marks, part.id, Layer::Part),
                  along(lerp(line[leg], line[leg + 1], part.along), direction(line, leg)),
                  partSymbolSize(run), symbolLine(run));
    drawPart(pen, part.kind);
  }
}

void markEnds(const Run& run, const Polyline& line, std::vector<Mark>& marks) {
  const MarkPen pen(marks, run.id, Layer::Part);
  const Point2 out = direction(line, 0) * -1;
  SymbolPen start(pen, along(line.front(), out), partSymbolSize(run), symbolLine(run));
  drawEnd(start, run.from.fitting);
  SymbolPen finish(pen, along(line.back(), direction(line, line.size() - 2)), partSymbolSize(run),
                   symbolLine(run));
  drawEnd(finish, run.to.fitting);
}

} // namespace

double partSymbolSize(const Run& run) {
  const double bore = nominalInches(run.size).value_or(2) * kMetresPerInch;
  return std::clamp(bore, 0.115, 0.3); // about the real valve
}

bool turnsUp(const RunStudy& run, std::size_t leg) {
  const bool rises = run.points[leg + 1].at.z > run.points[leg].at.z;
  const bool joinsNext = leg == 0 && run.legs.size() > 1;
  return rises != joinsNext;
}

void markRuns(const Plan& plan, const Study& study, std::vector<Mark>& marks) {
  const Locator locator(plan);
  for (const Run& run : plan.runs) {
    const std::optional<Polyline> line = locator.centreline(run);
    if (!line || line->size() < 2) continue;
    MarkPen(marks, run.id, Layer::Run).path(*line, serviceLine(run.service));
    markArrow(run, *line, marks);
    const auto found = study.runIndex.find(run.id);
    if (found != study.runIndex.end()) markDrops(run, study.runs[found->second], marks);
    markParts(run, *line, marks);
    markEnds(run, *line, marks);
  }
}

} // namespace sump
