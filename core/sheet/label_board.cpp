#include "core/sheet/label_board.h"

#include "core/geometry/polygon.h"

#include <algorithm>

namespace sump {

namespace {

constexpr double kPitch = 4.0; // mm between the lines of a label
constexpr double kPad = 0.7;

PaperBox boxAt(Point2 centre, Point2 size) {
  return {centre - size * 0.5, centre + size * 0.5};
}

/// What covering a line of this layer costs, in mm of distance that one would walk to avoid it.
double coverCost(Layer layer) {
  switch (layer) {
  case Layer::Run:
    return 25;
  case Layer::Part:
  case Layer::Symbol:
  case Layer::Note:
    return 12;
  case Layer::Ground:
  case Layer::Utility:
    return 4;
  case Layer::Vault:
  case Layer::Baffle:
  case Layer::Manway:
  case Layer::Room:
  case Layer::Basin:
    return 7;
  case Layer::Boundary:
  case Layer::Building:
    return 2;
  case Layer::Paving:
    return 0.5;
  }
  return 1;
}

bool cuts(const Ring& ring, Point2 a, Point2 b) {
  for (std::size_t i = 0; i < ring.size(); ++i) {
    if (crossSegments(a, b, ring[i], ring[(i + 1) % ring.size()])) return true;
  }
  return false;
}

} // namespace

LabelBoard::LabelBoard(const SheetView& view, const std::vector<Mark>& marks, Page& page,
                       double care)
    : view_(view), page_(page), placer_(view.frame.grown(-1)) {
  if (view.hidden) placer_.forbid(*view.hidden);
  avoidMarks(marks, care);
}

void LabelBoard::refuseLeadersOverDots() {
  placer_.refuseFrom(kLeaderOverDot);
}

void LabelBoard::measureLine(Point2 a, Point2 b, const LineStyle& line, double cost) {
  for (const Polyline& part : clipLine({a, b}, view_.frame)) {
    avoid(part.front(), part.back(), cost);
    page_.items.push_back(PageShape{part, false, false, line, {}});
  }
}

void LabelBoard::avoidMarks(const std::vector<Mark>& marks, double care) {
  for (const Mark& mark : marks) {
    Polyline line;
    for (Point2 p : mark.points)
      line.push_back(view_.toPaper(p));
    if (mark.round) {
      const double r = distance(line[0], line[1]);
      const Point2 c = line[0];
      line = {{c.x - r, c.y}, {c.x, c.y - r}, {c.x + r, c.y}, {c.x, c.y + r}, {c.x - r, c.y}};
    } else if (mark.closed) {
      line.push_back(line.front());
    }
    for (const Polyline& part : clipLine(line, view_.frame)) {
      for (std::size_t i = 0; i + 1 < part.size(); ++i)
        placer_.avoid(part[i], part[i + 1], care * coverCost(mark.layer));
    }
  }
}

Point2 LabelBoard::size(const SheetLabel& label) const {
  double width = 0;
  for (std::size_t i = 0; i < label.lines.size(); ++i) {
    width = std::max(width, textWidth(label.lines[i], kTextHeight, label.boldFirst && i == 0));
  }
  const double pad = label.framed ? 2 * kPad : kPad;
  return {width + 2 * pad, static_cast<double>(label.lines.size()) * kPitch + pad};
}

void LabelBoard::onLine(const std::string& text, Point2 site, Point2 along) {
  constexpr double kAbove = 0.8; // mm between the line and the foot of the text
  const Point2 up{-along.y, along.x};
  PageText drawn = words(view_.toPaper(site) + Point2{up.x, -up.y} * kAbove, text, kTextHeight,
                         false, Align::Centre);
  drawn.angle = std::atan2(along.y, along.x) * 180 / kPi;
  placer_.forbid(around(textBox(drawn)));
  page_.items.push_back(std::move(drawn));
}

std::optional<LabelCandidate> LabelBoard::reserve(Point2 size, const std::vector<Point2>& anchors) {
  std::vector<LabelCandidate> places;
  for (Point2 anchor : anchors) {
    const auto more = aroundPoint(anchor, size.x, size.y, 1, 120, 0);
    places.insert(places.end(), more.begin(), more.end());
  }
  return placer_.place(std::move(places));
}

bool LabelBoard::draw(const SheetLabel& label, const std::vector<LabelCandidate>& candidates) {
  const auto where = placer_.place(candidates);
  if (where) drawAt(label, *where);
  return where.has_value();
}

void LabelBoard::drawAt(const SheetLabel& label, const LabelCandidate& where) {
  const LineStyle thin{Ink::Black, 0.18, {}};
  if (where.leaderTo) {
    page_.items.push_back(PageShape{
        {leaderStart(where.box, *where.leaderTo), *where.leaderTo}, false, false, thin, {}});
    page_.items.push_back(PageShape{{*where.leaderTo, *where.leaderTo + Point2{0.5, 0}},
                                    true,
                                    true,
                                    {},
                                    FillStyle{Ink::Black, Hatch::None}});
  }
  page_.items.push_back(PageShape{where.box.ring(), true, false,
                                  label.framed ? std::optional(thin) : std::nullopt,
                                  FillStyle{Ink::White, Hatch::None}});
  const Point2 centre = where.box.centre();
  const double n = static_cast<double>(label.lines.size());
  for (std::size_t i = 0; i < label.lines.size(); ++i) {
    // Baseline: half a capital below the middle of the line's slot.
    const double off = (static_cast<double>(i) - (n - 1) / 2) * kPitch + kTextHeight * 0.42;
    PageText text =
        words(where.turned ? Point2{centre.x + off, centre.y} : Point2{centre.x, centre.y + off},
              label.lines[i], kTextHeight, label.boldFirst && i == 0, Align::Centre);
    text.ink = label.ink;
    if (where.turned) text.angle = 90;
    page_.items.push_back(std::move(text));
  }
}

std::vector<LabelCandidate> LabelBoard::placesAbout(const SheetLabel& label, Point2 site,
                                                    double near, double reach) const {
  const Point2 at = view_.toPaper(site), box = size(label);
  std::vector<LabelCandidate> places;
  for (const Point2 u : {Point2{1, -1}, Point2{1, 1}, Point2{-1, -1}, Point2{-1, 1}, Point2{1, 0},
                         Point2{-1, 0}, Point2{0, -1}, Point2{0, 1}}) {
    const Point2 off{u.x * (near + box.x / 2), u.y * (near + box.y / 2)};
    places.push_back({boxAt(at + off, box), {}, 0.2 * static_cast<double>(places.size()), false});
  }
  if (reach > 0) {
    const auto more = aroundPoint(at, box.x, box.y, near + 3, reach, 4);
    places.insert(places.end(), more.begin(), more.end());
  }
  return places;
}

bool LabelBoard::atPoint(const SheetLabel& label, Point2 site, double near, double reach) {
  return draw(label, placesAbout(label, site, near, reach));
}

std::optional<double> LabelBoard::atOneOfWithin(const SheetLabel& label,
                                                const std::vector<LabelCandidate>& places,
                                                const PaperSpan& span) {
  std::vector<LabelCandidate> within = places;
  std::erase_if(within, [&](const LabelCandidate& place) {
    const double x = place.box.centre().x;
    return x <= span.left || x >= span.right;
  });
  auto where = placer_.place(std::move(within));
  if (!where) where = placer_.place(places);
  if (!where) return std::nullopt;
  drawAt(label, *where);
  return where->box.centre().x;
}

bool LabelBoard::withLeader(const SheetLabel& label, Point2 site, double near, double reach) {
  const Point2 box = size(label);
  return draw(label, aroundPoint(view_.toPaper(site), box.x, box.y, near, reach, 0));
}

bool LabelBoard::inOutline(const SheetLabel& label, const Ring& site) {
  Ring ring;
  for (Point2 p : site)
    ring.push_back(view_.toPaper(p));
  ring = clipRing(ring, view_.frame);
  if (ring.size() < 3) return true; // not in this view
  const Point2 box = size(label), middle = centroid(ring);
  const PaperBox extent = around(ring);
  std::vector<LabelCandidate> places;
  constexpr int kSteps = 14;
  for (int i = 1; i < kSteps; ++i) {
    for (int k = 1; k < kSteps; ++k) {
      const Point2 at{extent.low.x + extent.width() * i / kSteps,
                      extent.low.y + extent.height() * k / kSteps};
      const PaperBox where = boxAt(at, box);
      const Ring corners = where.ring();
      if (std::all_of(corners.begin(), corners.end(),
                      [&](Point2 p) { return contains(ring, p); })) {
        places.push_back({where, {}, distance(at, middle) * 0.03, false});
      }
    }
  }
  if (draw(label, places)) return true;
  return draw(label, aroundPoint(middle, box.x, box.y, 5, 70, 0));
}

bool LabelBoard::besideOutline(const SheetLabel& label, const Ring& site,
                               const std::vector<Ring>& others) {
  const Point2 box = size(label);
  std::vector<LabelCandidate> places;
  for (std::size_t i = 0; i < site.size(); ++i) {
    const Point2 side = view_.toPaper(lerp(site[i], site[(i + 1) % site.size()], 0.5));
    if (!view_.frame.holds(side)) continue;
    const auto more = aroundPoint(side, box.x, box.y, 6, 110, 0);
    places.insert(places.end(), more.begin(), more.end());
  }
  std::vector<LabelCandidate> clear = places;
  std::erase_if(clear, [&](const LabelCandidate& place) {
    const Point2 from = view_.toSite(leaderStart(place.box, *place.leaderTo));
    const Point2 to = view_.toSite(*place.leaderTo);
    return std::ranges::any_of(others, [&](const Ring& ring) { return cuts(ring, from, to); });
  });
  return draw(label, clear) || draw(label, places);
}

/// Beside a leg that is level or upright on the paper and longer than the label.
void LabelBoard::addLegPlaces(const SheetLabel& label, Point2 a, Point2 b,
                              std::vector<LabelCandidate>& out) const {
  constexpr double kSquare = 0.02; // sine of the angle up to which text may stand along it
  const Point2 box = size(label), d = b - a;
  const double length = norm(d);
  const bool level = std::abs(d.y) < kSquare * length, upright = std::abs(d.x) < kSquare * length;
  if (length < box.x + 1 || (!level && !upright)) return;
  const Point2 across = level ? Point2{0, box.y / 2 + 0.7} : Point2{box.y / 2 + 0.7, 0};
  const Point2 turnedSize = level ? box : Point2{box.y, box.x};
  const double slack = (length - box.x) / length / 2;
  constexpr int kSteps = 8;
  for (int i = -kSteps; i <= kSteps; ++i) {
    const Point2 at = lerp(a, b, 0.5 + slack * i / kSteps);
    for (const Point2 off : {across * -1, across}) {
      out.push_back(
          {boxAt(at + off, turnedSize), {}, std::abs(i) * 0.2 + (upright ? 1 : 0), upright});
    }
  }
}

bool LabelBoard::alongLine(const SheetLabel& label, const Polyline& site, double reach) {
  Polyline line;
  for (Point2 p : site)
    line.push_back(view_.toPaper(p));
  const Point2 box = size(label);
  std::vector<LabelCandidate> places;
  for (const Polyline& part : clipLine(line, view_.frame)) {
    for (std::size_t i = 0; i + 1 < part.size(); ++i) {
      if (distance(part[i], part[i + 1]) < 0.5) continue;
      addLegPlaces(label, part[i], part[i + 1], places);
      for (double t : {0.5, 0.2, 0.8}) {
        const auto more = aroundPoint(lerp(part[i], part[i + 1], t), box.x, box.y, 5, reach, 6);
        places.insert(places.end(), more.begin(), more.end());
      }
    }
  }
  return draw(label, places);
}

} // namespace sump
