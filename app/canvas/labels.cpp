#include "app/canvas/labels.h"

#include "app/canvas/label_placer.h"

#include "app/plain_text.h"
#include "core/geometry/polygon.h"
#include "core/study/object_names.h"
#include "core/units/print.h"

#include <QFontMetricsF>
#include <QStringList>

#include <algorithm>
#include <cmath>
#include <map>

namespace sump {

namespace {

/// The name, and what may stand for it where there is less room: `Vault 1` of `Vault 1, settling`.
QStringList shorter(const std::string& name, const Id& id) {
  QStringList all{q(name)};
  for (const QString& text : {all.front().section(',', 0, 0), q(id)}) {
    if (text.size() < all.back().size()) all << text;
  }
  return all;
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

/// Inside where there is room, else beside it; what is hardly seen has no name. False where there
/// was none for any text.
bool placeThing(Placer& placer, const View& view, Label label, const QStringList& texts,
                const Ring& ring, Point2 wish) {
  constexpr double kLeastPixels = 5, kLeastTank = 14;
  constexpr double kSteep = 60; // degrees: steeper names are awkward to read
  const QLineF longest = longestEdge(view.toScreen(ring));
  // Of many tanks that are hardly seen the names would fill the drawing.
  if (longest.length() < (label.bold ? kLeastTank : kLeastPixels)) return true;
  if (placer.within(label, texts, ring, wish, std::abs(uprightAngle(longest)) < kSteep))
    return true;
  return std::ranges::any_of(texts, [&](const QString& text) {
    label.text = text;
    return placer.beside(label, ring);
  });
}

bool isInSight(const Ring& ring, const View& view) {
  return view.toScreen(ring).boundingRect().intersects(QRectF(QPointF(0, 0), view.size()));
}

/// By their names less so many of the longer ones; how many in sight are left out.
int placeVaults(Placer& placer, const Scene& scene, const View& view, qsizetype shortened) {
  int out = 0;
  for (const Vault& vault : scene.plan().vaults) {
    if (!placer.wants(vault.id)) continue;
    const Ring ring = outline(vault);
    const QStringList texts = shorter(called(vault), vault.id);
    const bool stands = placeThing(placer, view, named(vault.id, 13, true),
                                   texts.mid(std::min(shortened, texts.size() - 1)), ring,
                                   besideThePipes(vault, ring, view));
    if (!stands && scene.shows(vault.id) && isInSight(ring, view)) ++out;
  }
  return out;
}

/// Vaults stand side by side: rather all by short names than the last by none.
void placeVaults(Placer& placer, const Scene& scene, const View& view) {
  constexpr int kMany = 12; // left out; then the drawing is too small for names
  const Placer::Standing before = placer.standing();
  int least = placeVaults(placer, scene, view, 0);
  for (qsizetype shortened = 1; shortened <= 2 && least > 0 && least <= kMany; ++shortened) {
    Placer::Standing longer = placer.standing();
    placer.goBack(before);
    const int out = placeVaults(placer, scene, view, shortened);
    if (out >= least) placer.goBack(std::move(longer));
    least = std::min(least, out);
  }
}

void placeTanks(Placer& placer, const Scene& scene, const View& view) {
  placeVaults(placer, scene, view);
  for (const EquipmentRoom& room : scene.plan().rooms) {
    const Ring ring = outline(room);
    placeThing(placer, view, named(room.id, 13, true), shorter(called(room), room.id), ring,
               centroid(ring));
  }
}

/// `WW 4"`, of several of its service `WW-1 4"`.
QString lineName(const Run& run, bool several) {
  const std::string code(facts(run.service).code);
  const std::string name = !several                         ? code
                           : run.id.starts_with(code + "-") ? run.id
                                                            : code + " " + run.id;
  return q(name + " " + run.size + "\"");
}

void placeRuns(Placer& placer, const Scene& scene) {
  std::map<Service, int> count;
  for (const Run& run : scene.plan().runs)
    ++count[run.service];
  for (const Run& run : scene.plan().runs) {
    if (!placer.wants(run.id)) continue;
    const std::optional<Polyline> line = scene.locator().centreline(run);
    if (!line || line->size() < 2) continue;
    Label label = named(run.id, 12, true);
    label.text = lineName(run, count[run.service] > 1);
    label.ink = ink(facts(run.service).color);
    placer.along(std::move(label), *line);
  }
}

void placeUtilities(Placer& placer, const Plan& plan) {
  for (const Utility& utility : plan.utilities) {
    Label label = named(utility.id, 12);
    label.text = q(utility.name);
    placer.along(std::move(label), utility.path);
  }
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
void placeSymbol(Placer& placer, const View& view, Label label, const QString& text, Point2 at,
                 double half) {
  label.text = text;
  const double r = std::max(4.0 / view.scale(), half);
  placer.beside(label,
                {at + Point2{-r, -r}, at + Point2{r, -r}, at + Point2{r, r}, at + Point2{-r, r}});
}

void placeSite(Placer& placer, const Scene& scene, const View& view) {
  const Plan& plan = scene.plan();
  for (const Basin& b : plan.basins)
    placeThing(placer, view, named(b.id, 12), {q(b.name)}, outline(b), b.at);
  for (const SewerConnection& s : plan.sewers)
    placeSymbol(placer, view, named(s.id, 12), q(s.name), s.at, 0.4);
  for (const WashEquipment& w : plan.washes)
    placeThing(placer, view, named(w.id, 12), {q(w.name)}, outline(w), w.at);
  for (const Well& w : plan.wells)
    placeSymbol(placer, view, named(w.id, 12), q(w.name), w.at, 0.45);
  placeUtilities(placer, plan);
  for (const Building& b : plan.buildings)
    placer.within(named(b.id, 14), {q(b.name)}, b.outline, centroid(b.outline), true);
  for (const Pavement& p : plan.pavements)
    placer.within(named(p.id, 12), {q(p.name)}, p.outline,
                  insideLowestEdge(p.outline, 12 / view.scale()), true);
  for (const SpotElevation& s : plan.spots) {
    Label label = named(s.id, 12);
    label.point = view.toScreen(s.at);
    placeSymbol(placer, view, label, q(printElevation(s.elevation, plan.project.units)), s.at, 0.2);
  }
}

} // namespace

QString fullName(const Scene& scene, const Id& object) {
  const Run* run = scene.plan().runs.find(object);
  return run == nullptr ? q(spokenName(scene.plan(), object)) : lineName(*run, true);
}

QPolygonF labelBox(const Label& label, const QFont& font) {
  return boxOf(label, TextSizes(font).of(label));
}

std::vector<Label> placeLabels(const Scene& scene, const View& view, const QFont& font,
                               const LabelRoom& room, const LabelsBefore* before) {
  const DrawnLines own(scene, view);
  Placer placer(scene, view, font, room, room.lines == nullptr ? own : *room.lines);
  placer.notes();
  if (!room.names) return placer.take();
  if (before != nullptr) placer.keepStanding(*before);
  placeTanks(placer, scene, view);
  placeRuns(placer, scene);
  placeSite(placer, scene, view);
  return placer.take();
}

namespace {

/// Levels are also of places that a vault or a building now covers.
void paintCross(QPainter& painter, QPointF at, const CanvasTheme& theme) {
  constexpr double kArm = 4;
  for (const QPen& pen : {QPen(theme.halo, 3), QPen(theme.text, 1)}) {
    painter.setPen(pen);
    painter.drawLine(at - QPointF(kArm, 0), at + QPointF(kArm, 0));
    painter.drawLine(at - QPointF(0, kArm), at + QPointF(0, kArm));
  }
}

} // namespace

void paintLabels(QPainter& painter, const std::vector<Label>& labels, const CanvasTheme& theme) {
  const QFont base = painter.font();
  QColor plate = theme.halo;
  plate.setAlpha(255); // a line that shows through the letters reads as part of them
  for (const Label& label : labels) {
    if (label.leader) {
      painter.setPen(QPen(theme.ink(Ink::Grey), 1));
      painter.drawLine(*label.leader);
      painter.setBrush(theme.ink(Ink::Grey));
      painter.drawEllipse(label.leader->p2(), 1.5, 1.5);
    }
    if (label.point) paintCross(painter, *label.point, theme);
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
    painter.setBrush(plate);
    painter.drawRoundedRect(QRectF(-w / 2 - 3, -h / 2, w + 6, h), 3, 3);
    painter.setPen(label.ink ? theme.ink(*label.ink) : theme.text);
    painter.drawText(QRectF(-w / 2 - 2, -h / 2, w + 4, h), Qt::AlignCenter, label.text);
    painter.restore();
  }
}

} // namespace sump
