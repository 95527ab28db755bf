#pragma once
// Drawing marks: on the site directly, or a symbol in a frame of its own. Private to core/sheet.

#include "core/sheet/marks.h"

#include <algorithm>
#include <utility>

namespace sump {

/// Of lines that are there already, mm: thin; mains of the public network a little less so.
inline constexpr double kExistingLine = 0.25, kExistingMain = 0.35;

/// Collects the marks of one object on one layer.
class MarkPen {
public:
  MarkPen(std::vector<Mark>& marks, Id object, Layer layer)
      : marks_(&marks), object_(std::move(object)), layer_(layer) {}

  void ring(Ring points, std::optional<LineStyle> line, std::optional<FillStyle> fill = {}) {
    marks_->push_back({object_, layer_, std::move(points), true, false, line, fill, symbol_});
  }
  void path(Polyline points, const LineStyle& line) {
    marks_->push_back({object_, layer_, std::move(points), false, false, line, {}, symbol_});
  }
  void circle(Point2 centre, double radius, std::optional<LineStyle> line,
              std::optional<FillStyle> fill = {}) {
    marks_->push_back({object_,
                       layer_,
                       {centre, {centre.x + radius, centre.y}},
                       true,
                       true,
                       line,
                       fill,
                       symbol_});
  }
  /// What is drawn from now on is one symbol, another than every one among the marks.
  void beginSymbol(Point2 at, double half) {
    const std::uint32_t last = marks_->empty() ? 0 : marks_->back().symbol.number;
    const auto count = static_cast<std::uint32_t>(marks_->size());
    symbol_ = {std::max(last, count) + 1, at, half};
  }

private:
  std::vector<Mark>* marks_;
  Id object_;
  Layer layer_;
  SymbolPlace symbol_{};
};

/// A symbol drawn in units of its half-size, x along the flow.
class SymbolPen {
public:
  SymbolPen(MarkPen pen, Frame frame, double halfSize, LineStyle line)
      : pen_(std::move(pen)), frame_(frame), half_(halfSize), line_(std::move(line)) {
    pen_.beginSymbol(frame.origin, halfSize);
  }

  void path(const Polyline& local) { pen_.path(placed(local), line_); }
  void open(const Ring& local) { pen_.ring(placed(local), line_, FillStyle{Ink::White}); }
  void solid(const Ring& local) { pen_.ring(placed(local), line_, FillStyle{line_.ink}); }
  void openCircle(Point2 local, double radius) {
    pen_.circle(placed(local), radius * half_, line_, FillStyle{Ink::White});
  }
  void solidCircle(Point2 local, double radius) {
    pen_.circle(placed(local), radius * half_, line_, FillStyle{line_.ink});
  }

private:
  Point2 placed(Point2 local) const { return frame_.toSite(local * half_); }
  Polyline placed(const Polyline& local) const {
    Polyline site;
    site.reserve(local.size());
    for (Point2 p : local)
      site.push_back(placed(p));
    return site;
  }

  MarkPen pen_;
  Frame frame_;
  double half_;
  LineStyle line_;
};

void drawPart(SymbolPen& pen, PartKind kind);
void drawFloorDrain(SymbolPen& pen);
/// How far an eductor's inlet and outlet stand from its throat, and half its width, of its size.
inline constexpr double kEductorInlet = 1.2, kEductorOutlet = 1.6, kEductorHalf = 0.62;
/// x points out of the pipe's end.
void drawEnd(SymbolPen& pen, EndFitting fitting);
/// Where an eductor seen from the side stands so that its outlet is the pipe's end, whose pipe it
/// takes away from under itself.
Frame eductorFrame(const Frame& end, double size, MarkPen pen);

void markSite(const Plan& plan, std::vector<Mark>& marks);
void markRooms(const Plan& plan, std::vector<Mark>& marks);
void markVaults(const Plan& plan, const Study& study, std::vector<Mark>& marks);
void markRuns(const Plan& plan, const Study& study, std::vector<Mark>& marks);
void markNotes(const Plan& plan, std::vector<Mark>& marks);

} // namespace sump
