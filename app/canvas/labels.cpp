#include "app/canvas/labels.h"

#include "app/canvas/label_areas.h"
#include "app/canvas/notes.h"

#include "core/geometry/polygon.h"
#include "core/plan/edits_parts.h"
#include "core/sheet/part_symbol.h"
#include "core/study/object_names.h"
#include "core/units/print.h"

#include <QFontMetricsF>
#include <QStringList>

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace sump {

namespace {

QFont labelFont(QFont font, const Label& label) {
  font.setPixelSize(static_cast<int>(label.size));
  font.setBold(label.bold);
  return font;
}

QString q(const std::string& text) {
  return QString::fromStdString(text);
}

/// Sizes of texts, measured once: most runs of a plan carry one of a few labels.
class TextSizes {
public:
  explicit TextSizes(const QFont& font) : font_(font) {}
  QSizeF of(const Label& label) {
    const auto key = std::tuple(label.size, label.bold, label.text);
    const auto known = sizes_.find(key);
    if (known != sizes_.end()) return known->second;
    const QFontMetricsF metrics(labelFont(font_, label));
    return sizes_.emplace(key, metrics.size(0, label.text)).first->second;
  }

private:
  QFont font_;
  std::map<std::tuple<double, bool, QString>, QSizeF> sizes_;
};

QPolygonF boxOf(const Label& label, QSizeF size) {
  return turnedBox(label.centre, label.angle, {size.width() + 8, size.height()});
}

/// The name, and what may stand for it where there is less room: `Vault 1` of `Vault 1, settling`.
QStringList shorter(const std::string& name, const Id& id) {
  QStringList all{q(name)};
  for (const QString& text : {all.front().section(',', 0, 0), q(id)}) {
    if (text.size() < all.back().size()) all << text;
  }
  return all;
}

/// What of the window takes names: they keep off its rim.
QRectF inset(QSizeF window) {
  constexpr double kRim = 4; // pixels
  return QRectF(QPointF(0, 0), window).adjusted(kRim, kRim, -kRim, -kRim);
}

/// Gathers candidates in order of weight and keeps those that fit.
class Placer {
public:
  Placer(const Scene& scene, const View& view, const QFont& font, const LabelRoom& room)
      : scene_(scene), view_(view), areas_(scene, view), window_(inset(view.size())), sizes_(font) {
    if (!room.scaleBar.isEmpty()) taken_.take(QPolygonF(room.scaleBar));
    for (const QRectF& mark : room.marks)
      taken_.take(QPolygonF(mark));
  }
  /// Dimension notes are never left out: one stands in its first place when all others are taken.
  void notes();

  /// The first of the texts that lies within the area, as near to `wish` as can be; `turns`: also
  /// along its longest edge. False when there is no room.
  bool within(Label label, const QStringList& texts, const Ring& ring, Point2 wish, bool turns);
  /// Beside a thing of this outline: on a side that is free, near rather than far.
  bool beside(Label label, const Ring& ring);
  void run(const Run& run, const Polyline& line);
  /// Lines' names rather stand elsewhere than on these.
  void spare(const Run& run, const Polyline& line);
  std::vector<Label> take() { return std::move(kept_); }

private:
  void note(const NoteDrawing& note, const std::vector<NoteDrawing>& all);
  /// The label's box about the origin, turned.
  QPolygonF shapeOf(Label label) {
    label.centre = {};
    return boxOf(label, sizes_.of(label));
  }
  /// Puts the label there; false when the place is taken or out of sight.
  bool sits(Label& label, QPointF centre, const QPolygonF& shape) const {
    if (!window_.contains(centre)) return false;
    label.centre = centre;
    label.box = shape.translated(centre);
    return window_.contains(label.box.boundingRect()) && taken_.isFree(label.box);
  }
  bool keep(Label label) {
    taken_.take(label.box);
    if (label.leader) taken_.take(*label.leader);
    kept_.push_back(std::move(label));
    return true;
  }
  bool turnedWithin(Label& label, const Ring& ring, const QPolygonF& outline, QPointF wish);
  bool onAnother(const Label& label, const Ring& own) const;

  const Scene& scene_;
  const View& view_;
  LabelAreas areas_;
  QRectF window_;
  TextSizes sizes_;
  TakenBoxes taken_;
  TakenBoxes parts_; ///< symbols of what stands in the lines
  std::vector<Label> kept_;
};

void Placer::notes() {
  const std::vector<NoteDrawing> all = notesInSight(scene_, view_);
  for (const NoteDrawing& drawing : all)
    note(drawing, all);
  for (const NoteDrawing& drawing : all) {
    for (const QLineF& line : noteLines(drawing, view_)) {
      if (line.length() > 0) taken_.take(line);
    }
  }
}

/// Off other texts, marks and other notes' lines.
void Placer::note(const NoteDrawing& note, const std::vector<NoteDrawing>& all) {
  Label label = noteLabel(note, view_);
  const QPolygonF shape = shapeOf(label);
  const QPolygonF line({view_.toScreen(note.lineFrom), view_.toScreen(note.lineTo)});
  const auto crossed = [&](const NoteDrawing& other) {
    if (other.id == note.id) return false;
    return std::ranges::any_of(noteLines(other, view_), [&](const QLineF& line) {
      return line.length() > 0 && convexOverlap(label.box, QPolygonF({line.p1(), line.p2()}));
    });
  };
  const auto isFree = [&](QPointF centre) {
    if (!sits(label, centre, shape) || std::ranges::any_of(all, crossed)) return false;
    label.leader.reset();
    const QLineF way = wayTo(line, label.box.boundingRect());
    if (note.lettered || way.length() < kLeaderFrom) return true;
    label.leader = way;
    return taken_.isFree(QPolygonF({way.p1(), way.p2()}));
  };
  const QPointF first = label.centre;
  if (!isFree(first) &&
      !std::ranges::any_of(otherPlaces(note, label, view_, sizes_.of(label)), isFree)) {
    label.centre = first;
    label.box = shape.translated(first);
    label.leader.reset();
  }
  keep(label);
}

/// Does the text lie on an area that is neither the thing's own nor one that it stands on?
bool Placer::onAnother(const Label& label, const Ring& own) const {
  const Point2 anchor = centroid(own);
  const QRectF bounds = label.box.boundingRect();
  const Box site{view_.toSite(bounds.bottomLeft()), view_.toSite(bounds.topRight())};
  const auto meets = [&label](const QPolygonF& outline) {
    const auto inIt = [&](QPointF p) { return outline.containsPoint(p, Qt::OddEvenFill); };
    const auto inText = [&](QPointF p) { return label.box.containsPoint(p, Qt::OddEvenFill); };
    return inIt(label.centre) || std::ranges::any_of(label.box, inIt) ||
           std::ranges::any_of(outline, inText);
  };
  return std::ranges::any_of(areas_.touching(site), [&](std::size_t i) {
    const std::vector<Point2>& points = areas_.outline(i);
    if (areas_.owner(i) == label.object || !meets(view_.toScreen(points))) return false;
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
    return sits(label, centre, shape) && liesWithin(label.box, outline) &&
           !onAnother(label, ring) && keep(label);
  };
  return here(wish) || std::ranges::any_of(spreadOver(room, size, wish), here);
}

bool Placer::within(Label label, const QStringList& texts, const Ring& ring, Point2 wish,
                    bool turns) {
  const QPolygonF outline = view_.toScreen(ring);
  if (!outline.boundingRect().intersects(window_) || !scene_.shows(label.object)) return false;
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

/// Middles round `bounds`, a gap away: along the sides that are long enough for the text first.
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
  for (QPointF& place : all)
    place += middle;
  return all;
}

bool Placer::beside(Label label, const Ring& ring) {
  const QPolygonF outline = view_.toScreen(ring);
  const QRectF bounds = outline.boundingRect();
  if (label.text.isEmpty() || !bounds.intersects(window_) || !scene_.shows(label.object))
    return false;
  const QPolygonF shape = shapeOf(label);
  const QSizeF size = shape.boundingRect().size();
  constexpr double kNear = 3;
  // On another thing's ground only with a leader, and only where nothing else is left.
  for (const auto& [gap, strange] : {std::pair(kNear, false),
                                     {kLeaderFrom + 3, false},
                                     {kFarthestName * 0.65, false},
                                     {kLeaderFrom + 3, true}}) {
    for (const QPointF centre : placesRound(bounds, size, gap)) {
      label.leader.reset();
      if (!sits(label, centre, shape) || (!strange && onAnother(label, ring))) continue;
      const QLineF way = wayTo(outline, label.box.boundingRect());
      if (way.length() > kFarthestName) continue;
      const bool led = way.length() >= kLeaderFrom - 1 || strange;
      if (led && !taken_.isFree(QPolygonF({way.p1(), way.p2()}))) continue;
      if (led) label.leader = way;
      return keep(label);
    }
    // Leaders to what is hardly more than a dot would only fill the drawing.
    constexpr double kLeastLed = 12;
    if (std::max(bounds.width(), bounds.height()) < kLeastLed) return false;
  }
  return false;
}

/// Along a leg that is long enough on the screen, longest first; several places on each.
void Placer::run(const Run& run, const Polyline& line) {
  const std::string code(facts(run.service).code);
  Label label{run.id, q(code + " " + run.size + "\""), {}, 0, 12,
              true,   ink(facts(run.service).color)};
  if (!scene_.shows(run.id)) return;
  const QSizeF size = sizes_.of(label);
  std::vector<QLineF> legs;
  for (std::size_t i = 1; i < line.size(); ++i)
    legs.emplace_back(view_.toScreen(line[i - 1]), view_.toScreen(line[i]));
  std::stable_sort(legs.begin(), legs.end(),
                   [](const QLineF& a, const QLineF& b) { return a.length() > b.length(); });
  for (const bool overParts : {false, true}) {
    for (const QLineF& leg : legs) {
      if (leg.length() < size.width() + 12) break;
      label.centre = {};
      label.angle = uprightAngle(leg);
      const QPolygonF shape = boxOf(label, size);
      for (double along : {0.42, 0.7, 0.2, 0.55, 0.3, 0.82}) {
        if (sits(label, leg.pointAt(along), shape) && (overParts || parts_.isFree(label.box)))
          return void(keep(label));
      }
    }
  }
}

void Placer::spare(const Run& run, const Polyline& line) {
  const double half = std::max(4.0, partSymbolSize(run) * view_.scale());
  for (const InlinePart& part : run.parts) {
    const std::optional<Station> station = stationOf(line, part);
    if (!station) continue;
    const QPointF at = view_.toScreen(station->at);
    if (window_.contains(at))
      parts_.take(QPolygonF(QRectF(at - QPointF(half, half), QSizeF(2 * half, 2 * half))));
  }
}

/// The middle of a vault holds baffles, interconnects and manways: where there is room its name
/// stands below them.
Point2 besideThePipes(const Vault& vault, const Ring& ring, const View& view) {
  constexpr double kRoomy = 60; // pixels across at which the lower third takes a name
  const double across = std::min(inMetres(vault.width), inMetres(vault.length));
  const Point2 lower = vault.centre - Point2{0, across * 0.3};
  return across * view.scale() >= kRoomy && contains(ring, lower) ? lower : vault.centre;
}

Label named(const Id& id, double size, bool bold = false) {
  return {id, {}, {}, 0, size, bold};
}

/// Inside where there is room, else beside it; what is hardly seen has no name.
void placeThing(Placer& placer, const View& view, Label label, const QStringList& texts,
                const Ring& ring, Point2 wish) {
  constexpr double kLeastPixels = 5, kLeastTank = 14;
  constexpr double kSteep = 60; // degrees: steeper names are awkward to read
  const QLineF longest = longestEdge(view.toScreen(ring));
  // Of many tanks that are hardly seen the names would fill the drawing.
  if (longest.length() < (label.bold ? kLeastTank : kLeastPixels)) return;
  if (placer.within(label, texts, ring, wish, std::abs(uprightAngle(longest)) < kSteep)) return;
  label.text = texts.front();
  placer.beside(label, ring);
}

void placeTanks(Placer& placer, const Scene& scene, const View& view) {
  for (const Vault& vault : scene.plan().vaults) {
    const Ring ring = outline(vault);
    placeThing(placer, view, named(vault.id, 13, true), shorter(called(vault), vault.id), ring,
               besideThePipes(vault, ring, view));
  }
  for (const EquipmentRoom& room : scene.plan().rooms) {
    const Ring ring = outline(room);
    placeThing(placer, view, named(room.id, 13, true), shorter(called(room), room.id), ring,
               centroid(ring));
  }
}

void placeRuns(Placer& placer, const Scene& scene) {
  std::vector<std::pair<const Run*, Polyline>> lines;
  for (const Run& run : scene.plan().runs) {
    const std::optional<Polyline> line = scene.locator().centreline(run);
    if (line && line->size() >= 2) lines.emplace_back(&run, *line);
  }
  for (const auto& [run, line] : lines)
    placer.spare(*run, line);
  for (const auto& [run, line] : lines)
    placer.run(*run, line);
}

/// By the middle of the edge that lies lowest in the view, this far (metres) inside of it: large
/// areas are named at their rim, so that their middle is free for what stands on them.
Point2 insideLowestEdge(const Ring& outline, double in) {
  Point2 low = outline.front();
  double least = 1e300;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Point2 middle = lerp(outline[i], outline[(i + 1) % outline.size()], 0.5);
    if (middle.y < least) {
      least = middle.y;
      low = middle;
    }
  }
  const Point2 heart = centroid(outline);
  const double way = distance(low, heart);
  return way > in ? lerp(low, heart, in / way) : heart;
}

/// Beside a symbol that reaches `half` metres round its place.
void placeSymbol(Placer& placer, const View& view, const Id& id, const QString& text, Point2 at,
                 double half) {
  Label label = named(id, 12);
  label.text = text;
  const double r = std::max(2.0 / view.scale(), half);
  placer.beside(label,
                {at + Point2{-r, -r}, at + Point2{r, -r}, at + Point2{r, r}, at + Point2{-r, r}});
}

void placeSite(Placer& placer, const Scene& scene, const View& view) {
  const Plan& plan = scene.plan();
  for (const Basin& b : plan.basins)
    placeThing(placer, view, named(b.id, 12), {q(b.name)}, outline(b), b.at);
  for (const SewerConnection& s : plan.sewers)
    placeSymbol(placer, view, s.id, q(s.name), s.at, 0.4);
  for (const WashEquipment& w : plan.washes)
    placeThing(placer, view, named(w.id, 12), {q(w.name)}, outline(w), w.at);
  for (const Well& w : plan.wells)
    placeSymbol(placer, view, w.id, q(w.name), w.at, 0.45);
  for (const Building& b : plan.buildings)
    placer.within(named(b.id, 14), {q(b.name)}, b.outline, centroid(b.outline), true);
  for (const Pavement& p : plan.pavements)
    placer.within(named(p.id, 12), {q(p.name)}, p.outline,
                  insideLowestEdge(p.outline, 12 / view.scale()), true);
  for (const SpotElevation& s : plan.spots)
    placeSymbol(placer, view, s.id, q(printElevation(s.elevation, plan.project.units)), s.at, 0.2);
}

} // namespace

QPolygonF labelBox(const Label& label, const QFont& font) {
  return boxOf(label, TextSizes(font).of(label));
}

std::vector<Label> placeLabels(const Scene& scene, const View& view, const QFont& font,
                               const LabelRoom& room) {
  Placer placer(scene, view, font, room);
  placer.notes();
  if (!room.names) return placer.take();
  placeTanks(placer, scene, view);
  placeRuns(placer, scene);
  placeSite(placer, scene, view);
  return placer.take();
}

void paintLabels(QPainter& painter, const std::vector<Label>& labels, const CanvasTheme& theme) {
  const QFont base = painter.font();
  for (const Label& label : labels) {
    if (!label.leader) continue;
    painter.setPen(QPen(theme.ink(Ink::Grey), 1));
    painter.drawLine(*label.leader);
    painter.setBrush(theme.ink(Ink::Grey));
    painter.drawEllipse(label.leader->p2(), 1.5, 1.5);
  }
  for (const Label& label : labels) {
    const QFont font = labelFont(base, label);
    const QFontMetricsF metrics(font);
    const QSizeF size = metrics.size(0, label.text); // of all its lines
    const double w = size.width(), h = size.height();
    painter.save();
    painter.translate(label.centre);
    painter.rotate(-label.angle);
    painter.setFont(font);
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme.halo);
    painter.drawRoundedRect(QRectF(-w / 2 - 3, -h / 2, w + 6, h), 3, 3);
    painter.setPen(label.ink ? theme.ink(*label.ink) : theme.text);
    painter.drawText(QRectF(-w / 2 - 2, -h / 2, w + 4, h), Qt::AlignCenter, label.text);
    painter.restore();
  }
}

} // namespace sump
