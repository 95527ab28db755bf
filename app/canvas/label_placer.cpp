#include "app/canvas/label_placer.h"

#include "core/geometry/polygon.h"

#include <QFontMetricsF>

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

/// What of the window takes names: they keep off its rim.
QRectF inset(QSizeF window) {
  constexpr double kRim = 4; // pixels
  return QRectF(QPointF(0, 0), window).adjusted(kRim, kRim, -kRim, -kRim);
}

/// Middles round `bounds`, a gap away: along the sides that are long enough for the text first,
/// then at the corners and between.
std::vector<QPointF> placesRound(const QRectF& bounds, QSizeF size, double gap) {
  const QPointF middle = bounds.center();
  const double x = (bounds.width() + size.width()) / 2 + gap;
  const double y = (bounds.height() + size.height()) / 2 + gap;
  const std::vector<QPointF> across{{x, 0}, {-x, 0}}, along{{0, -y}, {0, y}};
  const bool wide = bounds.width() > size.width();
  std::vector<QPointF> all = wide ? along : across;
  const std::vector<QPointF>& others = wide ? across : along;
  all.insert(all.end(), others.begin(), others.end());
  for (const QPointF corner : {QPointF(x, -y), QPointF(x, y), QPointF(-x, -y), QPointF(-x, y)})
    all.push_back(corner);
  for (const double share : {0.5, -0.5}) {
    for (const double side : {1.0, -1.0}) {
      all.emplace_back(side * x, share * y);
      all.emplace_back(share * x, side * y);
    }
  }
  for (QPointF& place : all)
    place += middle;
  return all;
}

} // namespace

QFont labelFont(QFont font, const Label& label) {
  font.setPixelSize(static_cast<int>(label.size));
  font.setBold(label.bold);
  return font;
}

QPolygonF boxOf(const Label& label, QSizeF textSize) {
  return turnedBox(label.centre, label.angle, {textSize.width() + 8, textSize.height()});
}

QSizeF TextSizes::of(const Label& label) {
  const auto key = std::tuple(label.size, label.bold, label.text);
  const auto known = sizes_.find(key);
  if (known != sizes_.end()) return known->second;
  const QFontMetricsF metrics(labelFont(font_, label));
  return sizes_.emplace(key, metrics.size(0, label.text)).first->second;
}

Placer::Placer(const Scene& scene, const View& view, const QFont& font, const LabelRoom& room,
               const DrawnLines& lines)
    : scene_(scene), view_(view), lines_(lines), window_(inset(view.size())), sizes_(font) {
  if (!room.scaleBar.isEmpty()) taken_.take(QPolygonF(room.scaleBar));
  for (const QRectF& mark : room.marks)
    taken_.take(QPolygonF(mark));
}

/// The label's box about the origin, turned.
QPolygonF Placer::shapeOf(Label label) {
  label.centre = {};
  return boxOf(label, sizes_.of(label));
}

/// Puts the label there; false when the place is taken or out of sight.
bool Placer::sits(Label& label, QPointF centre, const QPolygonF& shape) const {
  if (!window_.contains(centre)) return false;
  label.centre = centre;
  label.box = shape.translated(centre);
  return window_.contains(label.box.boundingRect()) && taken_.isFree(label.box);
}

bool Placer::keep(Label label) {
  taken_.take(label.box);
  if (label.leader) taken_.take(*label.leader);
  kept_.push_back(std::move(label));
  return true;
}

/// What a sign or a note now covers is looked for like what has changed.
void Placer::keepStanding(const LabelsBefore& before) {
  anew_ = before.anew;
  for (const Label& label : before.standing) {
    if (scene_.plan().notes.find(label.object) != nullptr) continue; // they stand already
    const bool led =
        label.leader && !taken_.isFree(QPolygonF({label.leader->p1(), label.leader->p2()}));
    if (led || !taken_.isFree(label.box) || !scene_.shows(label.object)) {
      anew_->insert(label.object);
    } else {
      keep(label);
    }
  }
}

void Placer::notes() {
  const std::vector<NoteDrawing> all = notesInSight(scene_, view_);
  NoteLines lines;
  for (const NoteDrawing& drawing : all) {
    for (const QLineF& line : noteLines(drawing, view_)) {
      if (line.length() > 0) lines.emplace_back(drawing.id, line);
    }
  }
  for (const NoteDrawing& drawing : all)
    note(drawing, lines);
  for (const auto& [id, line] : lines)
    taken_.take(line);
}

/// How hard a leader is to follow: far off, or through lines of the drawing.
double Placer::strayOf(const Label& label) const {
  constexpr double kLine = 120; // pixels that it goes rather than through a line
  if (!label.leader) return 0;
  DrawnLines::But but;
  but.paving = true;
  return label.leader->length() + kLine * lines_.count(asShape(*label.leader), but);
}

/// Off other texts, marks and other notes' lines, and so its leader where it needs one.
bool Placer::bears(const NoteDrawing& note, Label& label, QPointF centre, const NoteLines& lines) {
  const auto crossed = [&](const auto& other) {
    return other.first != note.id && convexOverlap(label.box, asShape(other.second));
  };
  if (!sits(label, centre, shapeOf(label)) || std::ranges::any_of(lines, crossed)) return false;
  // A lettered note's own line goes on to its text, so that both read as one leader, unless its end
  // is out of sight.
  const QPointF end = view_.toScreen(note.lettered ? note.textAt : note.lineTo);
  const bool goesOn = note.lettered && distance(note.textAt, note.lineTo) == 0;
  const QLineF line(goesOn ? end : view_.toScreen(note.lineFrom), end);
  const QLineF way = wayTo(asShape(line), label.box.boundingRect());
  label.leader.reset();
  if (way.length() < kLeaderFrom) return true;
  label.leader = way;
  return taken_.isFree(asShape(way));
}

std::vector<QPointF> Placer::placesOf(const NoteDrawing& note, const Label& label) {
  std::vector<QPointF> places = otherPlaces(note, label, view_, sizes_.of(label));
  places.insert(places.begin(), label.centre);
  return places;
}

/// Off the drawing's lines, with the plainest leader; nothing where there is no such place.
std::optional<Label> Placer::plainest(const NoteDrawing& note, const NoteLines& lines) {
  // Pixels that a leader is longer rather than the text higher, or on another thing's ground.
  constexpr double kNarrow = 40, kStrange = 160;
  const Ring own{note.from, note.from, note.from};
  std::optional<Label> best;
  double least = 1e300;
  for (const qsizetype letters : {kNoteLetters, kFewLetters}) {
    Label label = noteLabel(note, view_, letters);
    const double more = letters == kNoteLetters ? 0 : kNarrow;
    for (const QPointF centre : placesOf(note, label)) {
      if (!bears(note, label, centre, lines)) continue;
      const double length = label.leader ? label.leader->length() : 0;
      if (more + length >= least || !isClear(label)) continue;
      const bool strange = label.leader && onAnother(label, own);
      const double stray = more + strayOf(label) + (strange ? kStrange : 0);
      if (stray >= least) continue;
      least = stray;
      best = label;
      if (!label.leader) break;
    }
  }
  return best;
}

void Placer::note(const NoteDrawing& note, const NoteLines& lines) {
  if (std::optional<Label> best = plainest(note, lines)) return void(keep(*std::move(best)));
  Label label = noteLabel(note, view_);
  const QPointF first = label.centre;
  const auto isFree = [&](QPointF centre) { return bears(note, label, centre, lines); };
  if (!std::ranges::any_of(placesOf(note, label), isFree)) {
    if (!window_.contains(first)) return; // only the end of its line is in sight
    label.centre = first;
    label.box = shapeOf(label).translated(first);
    label.leader.reset();
  }
  keep(label);
}

const LabelAreas& Placer::areas() {
  if (!areas_) areas_.emplace(scene_, view_);
  return *areas_;
}

/// Does the text lie on an area that is neither the thing's own nor one that it stands on?
bool Placer::onAnother(const Label& label, const Ring& own) {
  const Point2 anchor = centroid(own);
  const QRectF bounds = label.box.boundingRect();
  const Box site{view_.toSite(bounds.bottomLeft()), view_.toSite(bounds.topRight())};
  const auto meets = [&label](const QPolygonF& outline) {
    const auto inIt = [&](QPointF p) { return outline.containsPoint(p, Qt::OddEvenFill); };
    const auto inText = [&](QPointF p) { return label.box.containsPoint(p, Qt::OddEvenFill); };
    return inIt(label.centre) || std::ranges::any_of(label.box, inIt) ||
           std::ranges::any_of(outline, inText);
  };
  return std::ranges::any_of(areas().touching(site), [&](std::size_t i) {
    const std::vector<Point2>& points = areas().outline(i);
    if (areas().owner(i) == label.object || !meets(view_.toScreen(points))) return false;
    return !contains(points, anchor) || area(points) <= area(own);
  });
}

bool Placer::turnedWithin(Label& label, const Ring& ring, const QPolygonF& outline, QPointF wish) {
  const QPolygonF shape = shapeOf(label);
  const QSizeF size = shape.boundingRect().size();
  // What touches the outline does not lie within it.
  const QRectF room = (outline.boundingRect() & window_).adjusted(1, 1, -1, -1);
  if (room.width() < size.width() || room.height() < size.height()) return false;
  const auto here = [&](QPointF centre) {
    return sits(label, centre, shape) && liesWithin(label.box, outline) && isClear(label) &&
           !onAnother(label, ring) && keep(label);
  };
  return here(wish) || std::ranges::any_of(spreadOver(room, size, wish), here);
}

bool Placer::within(Label label, const QStringList& texts, const Ring& ring, Point2 wish,
                    bool turns) {
  const QPolygonF outline = view_.toScreen(ring);
  if (!outline.boundingRect().intersects(window_) || !shows(label.object)) return false;
  const QPointF at = view_.toScreen(wish);
  const double along = uprightAngle(longestEdge(outline));
  for (const QString& text : texts) {
    label.text = text;
    label.angle = 0;
    if (text.isEmpty()) continue;
    if (turnedWithin(label, ring, outline, at)) return true;
    label.angle = along;
    if (turns && along != 0 && turnedWithin(label, ring, outline, at)) return true;
  }
  return false;
}

bool Placer::beside(Label label, const Ring& ring) {
  const QPolygonF outline = view_.toScreen(ring);
  const QRectF bounds = outline.boundingRect();
  if (label.text.isEmpty() || !bounds.intersects(window_) || !shows(label.object)) return false;
  const QPolygonF shape = shapeOf(label);
  const QSizeF size = shape.boundingRect().size();
  constexpr double kNear = 3;
  const bool tank = label.bold; // they stand side by side: one's name is not to seem the other's
  // On another thing's ground only with a leader, and only where nothing else is left.
  for (const auto& [gap, strange] : {std::pair(kNear, false),
                                     {kLeaderFrom + 3, false},
                                     {kFarthestName * 0.65, false},
                                     {kLeaderFrom + 3, true},
                                     {kFarthestName * 0.65, true}}) {
    if (tank && gap == kNear) continue;
    for (const QPointF centre : placesRound(bounds, size, gap)) {
      label.leader.reset();
      if (!sits(label, centre, shape) || !isClear(label)) continue;
      if (!strange && onAnother(label, ring)) continue;
      const QLineF way = wayTo(outline, label.box.boundingRect());
      if (way.length() > kFarthestName) continue;
      const bool led = way.length() >= kLeaderFrom - 1 || strange;
      if (led && !taken_.isFree(QPolygonF({way.p1(), way.p2()}))) continue;
      if (led) label.leader = label.point ? QLineF(way.p1(), *label.point) : way;
      return keep(label);
    }
    // Leaders to what is hardly more than a dot would only fill the drawing.
    constexpr double kLeastLed = 12;
    if (std::max(bounds.width(), bounds.height()) < kLeastLed) return false;
  }
  return false;
}

} // namespace sump
