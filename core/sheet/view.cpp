#include "core/sheet/view.h"

#include "core/geometry/polygon.h"
#include "core/units/print.h"

#include <algorithm>

namespace sump {

namespace {

Ring circleRing(Point2 centre, Point2 rim) {
  constexpr int kSides = 48;
  Ring ring;
  const double r = distance(centre, rim);
  for (int i = 0; i < kSides; ++i) {
    const double a = 2 * kPi * i / kSides;
    ring.push_back(centre + Point2{std::cos(a), std::sin(a)} * r);
  }
  return ring;
}

/// An outline that the frame cuts keeps its fill as a ring; its line must not follow the frame.
void addCutRing(const PageShape& shape, const PaperBox& frame, Page& page) {
  const Ring ring = shape.round ? circleRing(shape.points[0], shape.points[1]) : shape.points;
  if (shape.fill) {
    Ring inside = clipRing(ring, frame);
    if (inside.size() >= 3)
      page.items.push_back(
          PageShape{inside, true, false, {}, shape.fill, shape.role, shape.symbol});
  }
  if (!shape.line) return;
  Polyline edge = ring;
  edge.push_back(ring.front());
  for (Polyline& part : clipLine(edge, frame)) {
    page.items.push_back(
        PageShape{std::move(part), false, false, shape.line, {}, shape.role, shape.symbol});
  }
}

void addClipped(PageShape shape, const PaperBox& frame, Page& page) {
  PaperBox box = around(shape.points);
  if (shape.round) {
    box = PaperBox{shape.points[0], shape.points[0]}.grown(
        distance(shape.points[0], shape.points[1]));
  }
  if (frame.holds(box)) {
    page.items.push_back(std::move(shape));
  } else if (!frame.meets(box.grown(1e-9))) {
    return;
  } else if (shape.closed) {
    addCutRing(shape, frame, page);
  } else {
    for (Polyline& part : clipLine(shape.points, frame)) {
      page.items.push_back(
          PageShape{std::move(part), false, false, shape.line, {}, shape.role, shape.symbol});
    }
  }
}

PageRole roleOf(const Mark& mark) {
  if (mark.symbol.number != 0) return PageRole::Symbol;
  switch (mark.layer) {
  case Layer::Building:
  case Layer::Room:
  case Layer::Vault:
    return mark.line ? PageRole::Wall : PageRole::Other;
  default:
    return PageRole::Other;
  }
}

void drawNorth(Point2 at, Angle north, Page& page) {
  const double a = inRadians(north);
  const Point2 up{-std::sin(a), -std::cos(a)}, right{std::cos(a), -std::sin(a)};
  const LineStyle line{Ink::Black, 0.35, {}};
  page.items.push_back(PageShape{{at, {at.x + 5, at.y}}, true, true, line, {}});
  const Ring left{at + up * 5, at - up * 4 - right * 2.4, at - up * 2.2};
  const Ring other{at + up * 5, at - up * 4 + right * 2.4, at - up * 2.2};
  page.items.push_back(PageShape{left, true, false, line, FillStyle{Ink::Black, Hatch::None}});
  page.items.push_back(PageShape{other, true, false, line, FillStyle{Ink::White, Hatch::None}});
  page.items.push_back(words({at.x - 8.5, at.y + 1.5}, "N", 3.5, true, Align::Centre));
}

/// A round length of the unit that prints between 12 and 30 mm a step.
double barStep(double scale, UnitSystem units) {
  const double unit = units == UnitSystem::Metric ? 1.0 : kMetresPerFoot;
  for (double step : {0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0}) {
    if (step * unit * 1000 / scale >= 12) return step;
  }
  return 1000;
}

void drawScaleBar(Point2 at, double scale, UnitSystem units, Page& page) {
  const double step = barStep(scale, units);
  const double unit = units == UnitSystem::Metric ? 1.0 : kMetresPerFoot;
  const double mm = step * unit * 1000 / scale;
  constexpr int kSteps = 3;
  for (int i = 0; i < kSteps; ++i) {
    const PaperBox box{{at.x + i * mm, at.y}, {at.x + (i + 1) * mm, at.y + 1.6}};
    page.items.push_back(PageShape{box.ring(), true, false, LineStyle{Ink::Black, 0.25, {}},
                                   FillStyle{i % 2 == 0 ? Ink::Black : Ink::White, Hatch::None}});
  }
  for (int i = 0; i <= kSteps; ++i) {
    std::string label = fixed(step * i, step < 1 ? 1 : 0);
    if (i == kSteps) label += units == UnitSystem::Metric ? " m" : " ft";
    page.items.push_back(
        words({at.x + i * mm, at.y - 1.1}, label, kTextHeight, false, Align::Centre));
  }
}

} // namespace

Point2 SheetView::toPaper(Point2 p) const {
  const double k = 1000 / scale;
  const Point2 middle = frame.centre();
  return {middle.x + (p.x - centre.x) * k, middle.y - (p.y - centre.y) * k};
}

Point2 SheetView::toSite(Point2 p) const {
  const double k = scale / 1000;
  const Point2 middle = frame.centre();
  return {centre.x + (p.x - middle.x) * k, centre.y - (p.y - middle.y) * k};
}

PaperBox SheetView::site() const {
  return around({toSite(frame.low), toSite(frame.high)});
}

bool SheetView::shows(Point2 p) const {
  return site().holds(p) && !(hidden && hidden->holds(toPaper(p)));
}

double SheetView::shownLength(const Polyline& line) const {
  double sum = 0;
  for (const Polyline& part : clipLine(line, site()))
    sum += planLength(part);
  if (!hidden) return sum;
  const PaperBox under = around({toSite(hidden->low), toSite(hidden->high)});
  for (const Polyline& part : clipLine(line, under))
    sum -= planLength(part);
  return std::max(sum, 0.0);
}

const std::vector<double>& standardScales(UnitSystem units) {
  static const std::vector<double> iso = {10, 20, 25, 50, 100, 200, 250, 500, 1000, 2000, 5000};
  // 1 in to 3/32 in = 1 ft, then 1 in = 10 ft to 1 in = 400 ft.
  static const std::vector<double> us = {12,  16,  24,  32,  48,  64,   96,   120,  128,
                                         240, 360, 480, 600, 720, 1200, 2400, 3600, 4800};
  return units == UnitSystem::Metric ? iso : us;
}

std::string scaleText(double scale, UnitSystem units) {
  const bool whole = scale == std::floor(scale);
  const std::string ratio = "1:" + fixed(scale, whole ? 0 : 1);
  const auto& standard = standardScales(units);
  const bool enlarged = scale == 4 || scale == 8; // of details
  if (units == UnitSystem::Metric ||
      (!enlarged && std::find(standard.begin(), standard.end(), scale) == standard.end())) {
    return ratio;
  }
  const bool engineer = std::fmod(scale, 120) == 0;
  const std::string text = engineer ? "1\" = " + feetInches(inches(scale))
                                    : inchesOnly(inches(12 / scale), 32) + " = 1'-0\"";
  return text + " (" + ratio + ")";
}

void drawView(const SheetView& view, const std::vector<Mark>& marks, Page& page) {
  for (const Mark& mark : marks) {
    PageShape shape{{},        mark.closed,  mark.round,        mark.line,
                    mark.fill, roleOf(mark), mark.symbol.number};
    shape.points.reserve(mark.points.size());
    for (Point2 p : mark.points)
      shape.points.push_back(view.toPaper(p));
    addClipped(std::move(shape), view.frame, page);
  }
  page.items.push_back(PageShape{
      view.frame.ring(), true, false, LineStyle{Ink::Black, 0.35, {}}, {}, PageRole::ViewFrame});
}

void drawViewNumber(Point2 centre, const std::string& number, Page& page) {
  PageShape circle{
      {centre, {centre.x + kViewBubble, centre.y}}, true, true, LineStyle{Ink::Black, 0.5, {}}, {}};
  circle.role = PageRole::ViewNumber;
  page.items.push_back(std::move(circle));
  page.items.push_back(words({centre.x, centre.y + 1.75}, number, 3.5, true, Align::Centre));
}

void drawViewTitle(const SheetView& view, UnitSystem units, Angle north, Page& page) {
  const Point2 at{view.frame.low.x, view.frame.high.y};
  drawViewNumber({at.x + 6.5, at.y + 8}, view.number, page);
  const double x = at.x + kBesideNumber;
  page.items.push_back(words({x, at.y + 7}, view.title, 3.5, true));
  page.items.push_back(words({x, at.y + 12.2}, "Scale " + scaleText(view.scale, units)));
  drawNorthAndBar(view, units, north, x, page);
}

void drawNorthAndBar(const SheetView& view, UnitSystem units, Angle north, double x, Page& page) {
  const Point2 at{view.frame.low.x, view.frame.high.y};
  const double right = view.frame.high.x;
  drawNorth({right - 7, at.y + 7.2}, north, page);
  const double step = barStep(view.scale, units) *
                      (units == UnitSystem::Metric ? 1.0 : kMetresPerFoot) * 1000 / view.scale;
  const double length = 3 * step;
  if (right - 26 - length > x + 75) {
    drawScaleBar({right - 28 - length, at.y + 9}, view.scale, units, page);
  } else if (right - 26 - length > x + 52) { // the scale in words stands on that line
    drawScaleBar({right - 28 - length, at.y + 13}, view.scale, units, page);
  }
}

} // namespace sump
