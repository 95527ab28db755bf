#include "core/sheet/figure.h"

#include "core/sheet/label_board.h"
#include "core/sheet/sheet_refs.h"
#include "core/units/print.h"

#include <algorithm>
#include <optional>

namespace sump {

namespace {

constexpr double kSideRoom = 30, kFootRoom = 16; // mm kept about the drawing for callouts
constexpr double kBareRoom = 5;
constexpr double kLeastWidth = 84; // for title and scale
constexpr double kNumberInset = 2; // mm less beside a figure's number than beside a plan's

PaperBox extent(const Drawing& drawing) {
  std::vector<Point2> points;
  for (const Mark& mark : drawing.marks) {
    if (mark.round) {
      const double r = distance(mark.points[0], mark.points[1]);
      points.push_back(mark.points[0] - Point2{r, r});
      points.push_back(mark.points[0] + Point2{r, r});
    } else {
      points.insert(points.end(), mark.points.begin(), mark.points.end());
    }
  }
  return around(points);
}

struct Room {
  double left, right, top, foot; ///< mm about the drawing inside its frame
};

Room roomAbout(const Drawing& drawing, double sideRoom) {
  const double side = drawing.bare ? kBareRoom : sideRoom;
  const double least = drawing.bare ? kBareRoom : kFootRoom;
  double foot = least, top = least;
  for (const Measure& m : drawing.measures) {
    if (m.from.y != m.to.y) continue; // it stands in the room at the side
    (m.offset < 0 ? foot : top) = std::max(m.offset < 0 ? foot : top, std::abs(m.offset) + 8);
  }
  return {side, side + ladderWidth(drawing.levels), top, foot};
}

/// Standard scales, with those larger than a plan's for a drawing that asks for them (ISO 5455;
/// 3 in and 1-1/2 in = 1 ft).
std::vector<double> scalesFor(UnitSystem units, double finest) {
  std::vector<double> scales = standardScales(units);
  const std::vector<double> larger =
      units == UnitSystem::Metric ? std::vector<double>{5} : std::vector<double>{4, 8};
  if (finest > 0) scales.insert(scales.begin(), larger.begin(), larger.end());
  return scales;
}

double fittedScale(const PaperBox& size, const Room& room, UnitSystem units, Point2 most,
                   double finest) {
  const double wide = most.x - room.left - room.right, high = most.y - room.top - room.foot;
  for (double scale : scalesFor(units, finest)) {
    if (scale < finest) continue;
    if (size.width() * 1000 / scale <= wide && size.height() * 1000 / scale <= high) return scale;
  }
  // Beyond the standard ones: whatever still shows it all.
  return std::ceil(std::max(size.width() * 1000 / std::max(wide, 20.0),
                            size.height() * 1000 / std::max(high, 20.0)));
}

/// Half of a small sheet gives less to the callouts, so that the drawing is not tiny; a whole one
/// where the drawing would be.
Room roomFor(const Drawing& drawing, const PaperBox& shown, UnitSystem units, Point2 most) {
  constexpr double kHalfSheet = 240, kLittle = 14, kTiny = 50;
  const Room little = roomAbout(drawing, kLittle), wide = roomAbout(drawing, kSideRoom);
  if (most.x < kHalfSheet) return little;
  const double scale = fittedScale(shown, wide, units, most, drawing.finest);
  const double larger = fittedScale(shown, little, units, most, drawing.finest);
  return larger < scale && (scale > kTiny || drawing.finest > 0) ? little : wide;
}

/// Callouts get as much room at the sides as is left of `width` mm, up to what they need.
void widen(Room& room, double width) {
  const double spare = std::max(0.0, (width - room.left - room.right) / 2);
  const double more = std::min(spare, std::max(0.0, kSideRoom - room.left));
  room.left += more;
  room.right += more;
}

/// Extension lines, the dimension line with its strokes. Returns the dimension line's ends, along
/// which its text goes; nothing for one too short to see.
std::optional<std::pair<Point2, Point2>> drawMeasure(const Measure& m, const SheetView& view,
                                                     LabelBoard& board) {
  const Point2 a = view.toPaper(m.from), b = view.toPaper(m.to);
  const double length = distance(a, b);
  if (length < 0.2) return std::nullopt;
  const Point2 along = (b - a) * (1 / length);
  const Point2 left{along.y, -along.x}; // y is down on the paper
  const Point2 from = a + left * m.offset, to = b + left * m.offset;
  const auto line = [&](Point2 p, Point2 q, double width) {
    constexpr double kCover = 160, kLeader = 6;
    board.measureLine(p, q, LineStyle{Ink::Black, width, {}}, kCover);
    board.keepOff(p, q, 0, kLeader);
  };
  const double sign = m.offset < 0 ? -1 : 1;
  line(a + left * sign, from + left * (sign * 1.5), 0.18);
  line(b + left * sign, to + left * (sign * 1.5), 0.18);
  line(from, to, 0.18);
  const Point2 stroke = (along + left) * 0.9;
  line(from - stroke, from + stroke, 0.35);
  line(to - stroke, to + stroke, 0.35);
  return std::pair(from, to);
}

/// What finds no room is told below the title, by a key that stands at its place.
void tellByKey(const std::string& text, Point2 at, LabelBoard& board,
               std::vector<std::string>& unplaced) {
  const std::string key = keyName(unplaced.size());
  constexpr double kNear = 0.8, kReach = 40;
  unplaced.push_back(board.atPoint({{key}}, at, kNear, kReach) ? key + " " + text : text);
}

/// A dimension along the drawing does not lie on the line of a level.
Measure offLevels(Measure m, const Drawing& drawing, const SheetView& view) {
  constexpr double kAir = 1.6, kStep = 1.2; // mm
  constexpr int kTries = 6;
  if (m.from.y != m.to.y || m.offset == 0) return m;
  const double along = m.to.x > m.from.x ? 1 : -1;
  const auto isOnOne = [&] {
    const double y = view.toPaper(m.from).y - along * m.offset;
    return std::ranges::any_of(drawing.levels, [&](const LevelTag& level) {
      return std::abs(view.toPaper({0, level.y}).y - y) < kAir;
    });
  };
  for (int i = 0; i < kTries && isOnOne(); ++i)
    m.offset += m.offset < 0 ? -kStep : kStep;
  return m;
}

/// All lines first, so that no text stands on one.
void drawMeasures(const Drawing& drawing, const SheetView& view, LabelBoard& board,
                  std::vector<std::string>& unplaced) {
  std::vector<std::pair<const Measure*, Polyline>> told;
  for (const Measure& m : drawing.measures) {
    if (const auto ends = drawMeasure(offLevels(m, drawing, view), view, board)) {
      told.push_back({&m, {view.toSite(ends->first), view.toSite(ends->second)}});
    }
  }
  for (const auto& [m, line] : told) {
    if (!board.alongLine({{m->text}}, line, 40))
      tellByKey(m->text, lerp(line.front(), line.back(), 0.5), board, unplaced);
  }
}

void nameLines(const Drawing& drawing, LabelBoard& board, std::vector<std::string>& unplaced) {
  constexpr double kReach = 40; // mm
  for (const NamedLine& named : drawing.named) {
    if (!board.alongLine({{named.name}, false, false, named.ink}, named.line, kReach))
      tellByKey(named.name, lerp(named.line.front(), named.line.back(), 0.5), board, unplaced);
  }
}

void keepUncut(const Drawing& drawing, const SheetView& view, LabelBoard& board) {
  constexpr double kCover = 600, kLeader = 10; // each of a pair
  constexpr double kAir = 0.8;                 // mm about the line
  for (const Polyline& line : drawing.uncut) {
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
      const Point2 a = view.toPaper(line[i]), b = view.toPaper(line[i + 1]);
      const double length = distance(a, b);
      if (length <= 0) continue;
      const Point2 aside = Point2{a.y - b.y, b.x - a.x} * (kAir / length);
      board.keepOff(a + aside, b + aside, kCover, kLeader);
      board.keepOff(a - aside, b - aside, kCover, kLeader);
    }
  }
}

/// As near to the middle of its place as nothing else stands.
void drawElevations(const Drawing& drawing, const SheetView& view, LabelBoard& board) {
  for (const ElevationMark& mark : drawing.elevations) {
    SheetLabel label{{viewOf(mark.anchor), sheetOf(mark.anchor)}};
    label.bubble = true;
    label.sight = {mark.sight.x, -mark.sight.y};
    const PaperBox where = around({view.toPaper(mark.within.low), view.toPaper(mark.within.high)});
    const Point2 half = board.size(label) * 0.5;
    const PaperBox middles{where.low + half, where.high - half};
    std::vector<LabelCandidate> places;
    constexpr int kSteps = 12;
    for (int i = 0; i <= kSteps; ++i) {
      for (int k = 0; k <= kSteps; ++k) {
        const Point2 at =
            middles.low + Point2{middles.width() * i / kSteps, middles.height() * k / kSteps};
        places.push_back({{at - half, at + half}, {}, distance(at, where.centre()) * 0.1});
      }
    }
    if (middles.width() > 0 && middles.height() > 0) board.atOneOf(label, places);
  }
}

void drawCallout(const Callout& callout, LabelBoard& board, std::vector<std::string>& unplaced) {
  SheetLabel label{callout.lines, false, callout.bold, callout.ink};
  constexpr double kNear = 3, kReach = 70;
  if (callout.leader ? board.withLeader(label, callout.at, kNear, kReach)
                     : board.atPoint(label, callout.at, kNear, kReach))
    return;
  std::string text;
  for (const std::string& line : callout.lines)
    text += (text.empty() ? "" : " ") + line;
  tellByKey(text, callout.at, board, unplaced);
}

void drawCallouts(const Drawing& drawing, const SheetView& view, LabelBoard& board,
                  std::vector<std::string>& unplaced) {
  board.refuseLeadersOverDots();
  for (const Callout& callout : drawing.callouts)
    board.keepClear(callout.at);
  const auto draw = [&](bool first) {
    for (const Callout& callout : drawing.callouts) {
      if (callout.first == first) drawCallout(callout, board, unplaced);
    }
  };
  draw(true);
  for (const PaperBox& box : drawing.ground)
    board.forbid(around({view.toPaper(box.low), view.toPaper(box.high)}));
  draw(false);
}

/// How much farther the words under a figure reach than a scale bar beside them reckons with.
double beyondUsual(const std::vector<std::string>& title, const std::vector<std::string>& lines) {
  constexpr double kUsual = 45; // mm
  double widest = 0;
  for (const std::string& line : title)
    widest = std::max(widest, textWidth(line, 3.5, true));
  for (const std::string& line : lines)
    widest = std::max(widest, textWidth(line, kTextHeight, false));
  return std::max(0.0, widest - kUsual);
}

/// Title, scale and notes under the frame; returns the y below them.
double drawFigureTitle(const Drawing& drawing, const SheetView& view, UnitSystem units,
                       const std::vector<std::string>& unplaced, Page& page) {
  const double left = view.frame.low.x, x = left + kBesideNumber - kNumberInset;
  double y = view.frame.high.y + 5.5;
  constexpr double kNorth = 26; // mm taken by the north arrow
  const double width = view.frame.width() - (x - left) - (drawing.north ? kNorth : 0);
  const std::vector<std::string> title = wrapped(drawing.title, width, 3.5, true);
  std::string scale = "Scale " + scaleText(view.scale, units);
  if (drawing.steeper != 1) {
    scale += ", heights " + fixed(drawing.steeper, 0) + " times as large";
  }
  std::vector<std::string> lines = wrapped(scale, width, kTextHeight, false);
  for (std::string text : drawing.notes) {
    for (std::string& line : wrapped(text, width, kTextHeight, false))
      lines.push_back(std::move(line));
  }
  for (const std::string& text : unplaced) {
    for (std::string& line : wrapped("Marked in the view: " + text, width, kTextHeight, false))
      lines.push_back(std::move(line));
  }
  if (drawing.north) {
    drawNorthAndBar(view, units, *drawing.north, x + beyondUsual(title, lines), page);
  }
  if (!drawing.anchor.empty())
    drawViewNumber({left + kViewBubble + 0.25, y + 1}, viewOf(drawing.anchor), page);
  for (const std::string& line : title) {
    page.items.push_back(words({x, y}, line, 3.5, true));
    y += 5;
  }
  for (std::string& line : lines) {
    page.items.push_back(words({x, y - 0.3}, std::move(line)));
    y += kLinePitch;
  }
  return drawing.north ? std::max(y, view.frame.high.y + kViewTitle) : y;
}

} // namespace

namespace {

/// Without the white that parts a pipe from what lies behind it: it has no line to keep off.
std::vector<Mark> seenLines(std::vector<Mark> marks) {
  std::erase_if(marks, [](const Mark& mark) {
    return !mark.line && mark.fill && mark.fill->ink == Ink::White;
  });
  return marks;
}

/// At the largest scale that leaves `titleRoom` mm below the drawing.
Block drawnFigure(const Drawing& drawing, UnitSystem units, Point2 most, double titleRoom) {
  const PaperBox shown = extent(drawing);
  Room room = roomFor(drawing, shown, units, {most.x, most.y - titleRoom});
  SheetView view{"", drawing.title, {}, {}, 1};
  view.scale = fittedScale(shown, room, units, {most.x, most.y - titleRoom}, drawing.finest);
  const double k = 1000 / view.scale;
  if (!drawing.bare) widen(room, most.x - shown.width() * k);
  const double width = std::max(kLeastWidth, shown.width() * k + room.left + room.right);
  view.frame = {{0, 0}, {width, shown.height() * k + room.top + room.foot}};
  // The drawing stands in the middle of what the levels leave free.
  view.centre =
      shown.centre() + Point2{ladderWidth(drawing.levels) / 2 / k, (room.top - room.foot) / 2 / k};
  Page page;
  drawView(view, drawing.marks, page);
  constexpr double kCare = 3; // a section has more room than a plan
  LabelBoard board(view, seenLines(drawing.marks), page, kCare);
  std::vector<std::string> unplaced;
  drawLadder(drawing.levels, view, ladderWidth(drawing.levels), board, page);
  keepUncut(drawing, view, board);
  drawMeasures(drawing, view, board, unplaced);
  for (const PaperBox& box : drawing.clear)
    board.forbid(around({view.toPaper(box.low), view.toPaper(box.high)}));
  drawElevations(drawing, view, board);
  nameLines(drawing, board, unplaced);
  drawCallouts(drawing, view, board, unplaced);
  board.finish();
  const double below = drawFigureTitle(drawing, view, units, unplaced, page);
  return {width, {}, {PaperStrip{below, std::move(page.items)}}, true, {}, drawing.anchor};
}

} // namespace

Block figure(const Drawing& drawing, UnitSystem units, Point2 most) {
  double titleRoom = 14 + kLinePitch * static_cast<double>(drawing.notes.size());
  Block block = drawnFigure(drawing, units, most, titleRoom);
  // Long titles and callouts told below take more room than was kept for them.
  constexpr int kTries = 6;
  for (int i = 0; i < kTries && block.height() > most.y; ++i) {
    titleRoom += block.height() - most.y + 1;
    block = drawnFigure(drawing, units, most, titleRoom);
  }
  if (block.height() <= most.y || drawing.measures.empty()) return block;
  // Very small paper: the levels still tell the heights, and larger paper the rest.
  Drawing bare = drawing;
  bare.measures.clear();
  return figure(bare, units, most);
}

Ring pipeOutline(const Polyline& line, double diameter) {
  const auto unit = [&](std::size_t leg) {
    const Point2 d = line[leg + 1] - line[leg];
    const double length = norm(d);
    return length > 0 ? d * (1 / length) : Point2{1, 0};
  };
  Ring left, right;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Point2 before = unit(i == 0 ? 0 : i - 1);
    const Point2 after = unit(i + 1 == line.size() ? i - 1 : i);
    // Mitre: along the bisector, longer by 1/cos of half the turn; a turn back is cut off square.
    const Point2 sum = before + after;
    const double share = dot(sum, sum) / 4; // cos^2 of half the turn
    const Point2 middle = share > 0.05 ? sum * (0.5 / share) : after;
    const Point2 aside{-middle.y * diameter / 2, middle.x * diameter / 2};
    left.push_back(line[i] + aside);
    right.push_back(line[i] - aside);
  }
  left.insert(left.end(), right.rbegin(), right.rend());
  return left;
}

} // namespace sump
