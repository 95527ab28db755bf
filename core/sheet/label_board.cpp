#include "core/sheet/label_board.h"

#include "core/geometry/polygon.h"
#include "core/sheet/bubble.h"
#include "core/sheet/cover_cost.h"
#include "core/sheet/leader_end.h"
#include "core/sheet/lines_beside.h"
#include "core/sheet/mark_shape.h"

#include <algorithm>
#include <map>

namespace sump {

namespace {

constexpr double kLabelPitch = 4.0; // mm between the lines of a label
constexpr double kLabelPad = 0.7;
constexpr double kLabelFrameAir = 1.5; // between a label and the view's frame
const LineStyle kLeaderThin{Ink::Black, 0.18, {}};

PaperBox boxAt(Point2 centre, Point2 size) {
  return {centre - size * 0.5, centre + size * 0.5};
}

constexpr double kLeaderOverMeasure = 4;

} // namespace

std::string keyName(std::size_t index) {
  return "K" + std::to_string(index + 1);
}

LabelBoard::LabelBoard(const SheetView& view, const std::vector<Mark>& marks, Page& page,
                       double care)
    : view_(view), page_(page), placer_(view.frame.grown(-kLabelFrameAir)) {
  if (view.hidden) placer_.forbid(view.hidden->grown(kLabelFrameAir));
  avoidMarks(marks, care);
  avoidSymbols(marks);
  for (const Mark& mark : marks) {
    if (isThing(mark)) things_.push_back(paperLine(mark, view));
    if (mark.layer == Layer::Run && !mark.closed) runs_.push_back(paperLine(mark, view));
  }
}

void LabelBoard::measureLine(Point2 a, Point2 b, const LineStyle& line, double cost) {
  for (const Polyline& part : clipLine({a, b}, view_.frame)) {
    placer_.obstacles().addLine(part.front(), part.back(), cost, kLeaderOverMeasure);
    page_.items.push_back(PageShape{part, false, false, line, {}});
  }
}

void LabelBoard::avoidMarks(const std::vector<Mark>& marks, double care) {
  for (const Mark& mark : marks) {
    const Polyline line = paperLine(mark, view_);
    const CoverCost cost = coverCost(mark);
    const double cover = cost.cover < kWallCover ? care * cost.cover : cost.cover;
    for (const Polyline& part : clipLine(line, view_.frame)) {
      for (std::size_t i = 0; i + 1 < part.size(); ++i)
        placer_.obstacles().addLine(part[i], part[i + 1], cover, care * cost.leader);
    }
  }
}

void LabelBoard::avoidSymbols(const std::vector<Mark>& marks) {
  constexpr double kLargest = 14; // mm; what is larger can be told from a label's leader
  std::map<std::uint32_t, PaperBox> symbols;
  const auto take = [&](const PaperBox& box) {
    if (!view_.frame.meets(box) || std::max(box.width(), box.height()) > kLargest) return;
    placer_.obstacles().addSymbol(box);
    symbols_.push_back(box);
  };
  for (const Mark& mark : marks) {
    if (!isSymbol(mark)) continue;
    const PaperBox box = extentOf(mark, view_);
    if (mark.symbol.number == 0) {
      take(box);
      continue;
    }
    const auto [known, isNew] = symbols.emplace(mark.symbol.number, box);
    if (!isNew) known->second = around({known->second.low, known->second.high, box.low, box.high});
  }
  for (const auto& [symbol, box] : symbols)
    take(box);
}

Point2 LabelBoard::size(const SheetLabel& label) const {
  if (label.bubble) {
    const double side = 2 * (kBubble + (norm(label.sight) > 0 ? kPointer : 0));
    return {side, side};
  }
  double width = 0;
  for (std::size_t i = 0; i < label.lines.size(); ++i) {
    width = std::max(width, textWidth(label.lines[i], kTextHeight, label.boldFirst && i == 0));
  }
  const double pad = label.framed ? 2 * kLabelPad : kLabelPad;
  return {width + 2 * pad, static_cast<double>(label.lines.size()) * kLabelPitch + pad};
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

bool LabelBoard::add(const SheetLabel& label, std::vector<LabelCandidate> candidates) {
  const auto place = placer_.add(std::move(candidates), true);
  if (place) waiting_.push_back({label, *place});
  return place.has_value();
}

void LabelBoard::finish() {
  placer_.settle();
  for (const Waiting& w : waiting_)
    drawLeader(placer_.at(w.place));
  for (const Waiting& w : waiting_)
    drawPlate(w.label, placer_.at(w.place));
  waiting_.clear();
}

void LabelBoard::drawLeader(const LabelCandidate& where) {
  if (!where.leaderTo) return;
  const Point2 start = leaderStart(where), end = leaderEnd(start, *where.leaderTo, symbols_);
  PageShape line{{start, end}, false, false, kLeaderThin, {}};
  line.role = PageRole::Leader;
  page_.items.push_back(std::move(line));
  PageShape dot{{end, end + Point2{0.5, 0}}, true, true, {}, {}};
  dot.fill = FillStyle{Ink::Black, Hatch::None};
  dot.role = PageRole::Dot;
  page_.items.push_back(std::move(dot));
}

void LabelBoard::drawPlate(const SheetLabel& label, const LabelCandidate& where) {
  if (label.bubble) {
    drawReference(where.box.centre(), label.lines.at(0), label.lines.at(1), label.sight, page_);
    return;
  }
  PageShape plate{where.box.ring(), true, false, {}, FillStyle{Ink::White, Hatch::None}};
  if (label.framed) plate.line = kLeaderThin;
  plate.role = PageRole::Plate;
  page_.items.push_back(std::move(plate));
  const Point2 centre = where.box.centre();
  const double n = static_cast<double>(label.lines.size());
  for (std::size_t i = 0; i < label.lines.size(); ++i) {
    // Baseline: half a capital below the middle of the line's slot.
    const double off = (static_cast<double>(i) - (n - 1) / 2) * kLabelPitch + kTextHeight * 0.42;
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
  return add(label, placesAbout(label, site, near, reach));
}

bool LabelBoard::atPointOutside(const SheetLabel& label, Point2 site, double near, double reach,
                                const std::vector<Ring>& outlines) {
  constexpr double kInside = 500;  // mm that a place in an outline is disliked
  constexpr double kOwnEnd = 0.03; // of a leader, which may end on an outline
  std::vector<LabelCandidate> places = placesAbout(label, site, near, reach);
  for (LabelCandidate& place : places) {
    const Point2 middle = view_.toSite(place.box.centre());
    const Point2 from = place.leaderTo ? view_.toSite(leaderStart(place)) : middle;
    const Point2 to = lerp(site, from, kOwnEnd);
    const bool inside = std::ranges::any_of(outlines, [&](const Ring& ring) {
      return contains(ring, middle) ||
             (place.leaderTo && (contains(ring, to) || cutsRing(ring, from, to)));
    });
    if (inside) place.cost += kInside;
  }
  return add(label, std::move(places));
}

std::optional<double> LabelBoard::atOneOfWithin(const SheetLabel& label,
                                                const std::vector<LabelCandidate>& places,
                                                const PaperSpan& span) {
  std::vector<LabelCandidate> within = places;
  std::erase_if(within, [&](const LabelCandidate& place) {
    const double x = place.box.centre().x;
    return x <= span.left || x >= span.right;
  });
  auto where = placer_.add(std::move(within), false);
  if (!where) where = placer_.add(places, false);
  if (!where) return std::nullopt;
  waiting_.push_back({label, *where});
  return placer_.at(*where).box.centre().x;
}

bool LabelBoard::withLeader(const SheetLabel& label, Point2 site, double near, double reach) {
  const Point2 box = size(label);
  auto places = aroundPoint(view_.toPaper(site), box.x, box.y, near, reach, 0);
  for (LabelCandidate& place : places)
    place.round = label.bubble;
  return add(label, std::move(places));
}

std::vector<LabelCandidate> LabelBoard::placesIn(const SheetLabel& label, const Ring& ring) const {
  constexpr int kSteps = 14;
  constexpr double kOff = 0.03; // of a mm that a mm from the middle is disliked
  const Point2 box = size(label), middle = centroid(ring);
  const PaperBox extent = around(ring);
  std::vector<LabelCandidate> places;
  for (int i = 1; i < kSteps; ++i) {
    for (int k = 1; k < kSteps; ++k) {
      const Point2 at{extent.low.x + extent.width() * i / kSteps,
                      extent.low.y + extent.height() * k / kSteps};
      const PaperBox where = boxAt(at, box);
      const Ring corners = where.ring();
      if (std::all_of(corners.begin(), corners.end(),
                      [&](Point2 p) { return contains(ring, p); })) {
        places.push_back({where, {}, distance(at, middle) * kOff, false});
      }
    }
  }
  return places;
}

bool LabelBoard::inOutline(const SheetLabel& label, const Ring& site) {
  Ring ring;
  for (Point2 p : site)
    ring.push_back(view_.toPaper(p));
  const double whole = area(ring);
  ring = clipRing(ring, view_.frame);
  if (ring.size() < 3) return true;             // not in this view
  constexpr double kSliver = 900, kShare = 0.3; // mm2, of the whole: another view shows the rest
  if (area(ring) < std::min(kSliver, kShare * whole)) return true;
  constexpr double kOutside = 40; // mm that a leader out of it is disliked
  constexpr double kCovers = 30;  // mm; it covers a pipe or a wall, which is worse than a leader
  constexpr double kWorse = 40;
  const Point2 box = size(label);
  std::vector<LabelCandidate> places = placesIn(label, ring);
  for (LabelCandidate& place : places)
    if (costOf(place) > kCovers) place.cost += kWorse;
  const auto more = aroundPoint(leaderTarget(ring, whole), box.x, box.y, 5, 70, kOutside);
  places.insert(places.end(), more.begin(), more.end());
  for (LabelCandidate& place : places)
    place.cost += onOtherThing(place, ring, whole);
  return add(label, std::move(places));
}

/// Its middle, or else a place where nothing smaller stands, that no other leader points at.
Point2 LabelBoard::leaderTarget(const Ring& own, double whole) {
  constexpr double kApart = 2;                   // mm from another's dot
  constexpr double kShare[] = {0.35, 0.7, 0.96}; // the last in the wall round a room
  const Point2 middle = centroid(own);
  std::vector<Point2> tried{middle};
  for (const double share : kShare) {
    for (std::size_t i = 0; i < own.size(); ++i) {
      const Point2 side = lerp(own[i], own[(i + 1) % own.size()], 0.5);
      for (const Point2 to : {side, own[i]})
        tried.push_back(lerp(middle, to, share));
    }
  }
  const auto isFree = [&](Point2 p) {
    return contains(own, p) && !onSmaller(p, whole) &&
           std::ranges::all_of(targets_, [&](Point2 t) { return distance(t, p) > kApart; });
  };
  const auto found = std::ranges::find_if(tried, isFree);
  targets_.push_back(found == tried.end() ? middle : *found);
  return targets_.back();
}

bool LabelBoard::onSmaller(Point2 p, double whole) const {
  constexpr double kSmaller = 0.9;
  return std::ranges::any_of(things_, [&](const Ring& thing) {
    return area(thing) < kSmaller * whole && contains(thing, p);
  });
}

/// Inside its outline a name stands on nothing smaller, outside it on nothing else.
double LabelBoard::onOtherThing(const LabelCandidate& place, const Ring& own, double whole) const {
  constexpr double kOnOther = 60; // mm that such a place is disliked
  const Point2 middle = place.box.centre();
  const auto any = [&] {
    return std::ranges::any_of(things_, [&](const Ring& thing) { return contains(thing, middle); });
  };
  return (contains(own, middle) ? onSmaller(middle, whole) : any()) ? kOnOther : 0;
}

bool LabelBoard::whereFree(const SheetLabel& label, std::vector<LabelCandidate> places) {
  constexpr double kTooMuch = 60; // mm, as the cost of what it would cover
  std::erase_if(places, [&](const LabelCandidate& place) { return costOf(place) > kTooMuch; });
  return !places.empty() && add(label, std::move(places));
}

bool LabelBoard::besideOutline(const SheetLabel& label, const Ring& site,
                               const std::vector<Ring>& others) {
  const Point2 box = size(label);
  std::vector<LabelCandidate> places;
  constexpr double kOverOther = 60; // mm that a leader over another outline is disliked
  for (std::size_t i = 0; i < site.size(); ++i) {
    const Point2 side = view_.toPaper(lerp(site[i], site[(i + 1) % site.size()], 0.5));
    if (!view_.frame.holds(side)) continue;
    const auto more = aroundPoint(side, box.x, box.y, 6, 110, 0);
    places.insert(places.end(), more.begin(), more.end());
  }
  for (LabelCandidate& place : places) {
    const Point2 from = view_.toSite(leaderStart(place.box, *place.leaderTo));
    const Point2 to = view_.toSite(*place.leaderTo);
    if (std::ranges::any_of(others, [&](const Ring& ring) { return cutsRing(ring, from, to); }))
      place.cost += kOverOther;
  }
  return add(label, std::move(places));
}

/// Beside a leg that is level or upright on the paper and longer than the label. Between two lines
/// it might be the name of either.
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
  constexpr double kPast = 2.5,
                   kOfEither = 12; // mm beyond the label; that such a place is disliked
  const std::vector<Beside> others = linesBeside(runs_, a, b, 2 * norm(across) + kPast);
  for (int i = -kSteps; i <= kSteps; ++i) {
    const double along = length * (0.5 + slack * i / kSteps);
    for (const Point2 off : {across * -1, across}) {
      const bool isBetween = std::ranges::any_of(others, [&](const Beside& other) {
        return other.off * cross(d, off) > 0 && other.from < along + box.x / 2 &&
               other.to > along - box.x / 2;
      });
      out.push_back({boxAt(a + d * (along / length) + off, turnedSize),
                     {},
                     std::abs(i) * 0.2 + (upright ? 1 : 0) + (isBetween ? kOfEither : 0),
                     upright});
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
      constexpr double kLong = 40; // mm; a shorter leg needs fewer places for a leader
      const bool isLong = distance(part[i], part[i + 1]) > kLong;
      for (double t :
           isLong ? std::vector{0.5, 0.35, 0.65, 0.2, 0.8} : std::vector{0.5, 0.2, 0.8}) {
        const Point2 anchor = lerp(part[i], part[i + 1], t);
        constexpr double kLeader = 6, kInSymbol = 20; // mm
        const bool hidden = placer_.obstacles().inSymbol(anchor);
        const auto more =
            aroundPoint(anchor, box.x, box.y, 5, reach, kLeader + (hidden ? kInSymbol : 0));
        places.insert(places.end(), more.begin(), more.end());
      }
    }
  }
  return add(label, places);
}

} // namespace sump
