#include "app/canvas/labels.h"

#include "app/canvas/notes.h"

#include "core/geometry/polygon.h"
#include "core/study/object_names.h"
#include "core/units/print.h"

#include <QFontMetricsF>
#include <QHash>
#include <QLineF>

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

/// The boxes that are taken, by cells of the screen: a label is compared with its neighbours only.
class TakenBoxes {
public:
  bool isFree(const QPolygonF& box, const QRectF& bounds) const {
    bool free = true;
    eachCell(bounds, [&](qint64 cell) {
      const auto near = cells_.constFind(cell);
      if (!free || near == cells_.cend()) return;
      free = std::ranges::none_of(*near, [&](std::size_t i) {
        return bounds.intersects(bounds_[i]) && convexOverlap(box, boxes_[i]);
      });
    });
    return free;
  }
  void take(const QPolygonF& box, const QRectF& bounds) {
    eachCell(bounds, [&](qint64 cell) { cells_[cell].push_back(boxes_.size()); });
    boxes_.push_back(box);
    bounds_.push_back(bounds);
  }

private:
  template <typename Visit> static void eachCell(const QRectF& bounds, Visit visit) {
    constexpr double kCell = 96; // pixels: about as long as a run's label
    const auto cell = [](double at) { return static_cast<qint64>(std::floor(at / kCell)); };
    for (qint64 x = cell(bounds.left()); x <= cell(bounds.right()); ++x)
      for (qint64 y = cell(bounds.top()); y <= cell(bounds.bottom()); ++y)
        visit(x * 100'003 + y);
  }

  std::vector<QPolygonF> boxes_;
  std::vector<QRectF> bounds_;
  QHash<qint64, std::vector<std::size_t>> cells_;
};

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

QPolygonF turnedBox(const Label& label, QSizeF size) {
  const double w = size.width() / 2 + 4, h = size.height() / 2;
  QTransform turn;
  turn.translate(label.centre.x(), label.centre.y());
  turn.rotate(-label.angle);
  return turn.map(QPolygonF({{-w, -h}, {w, -h}, {w, h}, {-w, h}}));
}

/// Gathers candidates in order of weight and keeps those that fit.
class Placer {
public:
  Placer(const Scene& scene, const View& view, const QFont& font)
      : scene_(scene), view_(view), window_(QPointF(0, 0), view.size()), sizes_(font) {}
  /// A text that keeps its place.
  void fixed(Label label) {
    const QPolygonF box = turnedBox(label, sizes_.of(label));
    taken_.take(box, box.boundingRect());
    kept_.push_back(std::move(label));
  }

  /// An area's name at `at`; only when it is no wider than `room` pixels and in sight.
  void area(const Id& id, const QString& text, Point2 at, double room, double size, bool bold) {
    Label label{id, text, view_.toScreen(at), 0, size, bold, std::nullopt};
    if (!text.isEmpty() && sizes_.of(label).width() <= room) add(std::move(label));
  }
  /// Beside a small symbol: right, left, above or below, whichever is free.
  void beside(const Id& id, const QString& text, Point2 at, double away) {
    if (text.isEmpty()) return;
    Label label{id, text, {}, 0, 12, false, std::nullopt};
    const double half = sizes_.of(label).width() / 2 + 4;
    for (QPointF side : {QPointF(half + away, 0), QPointF(-half - away, 0), QPointF(0, -away - 10),
                         QPointF(0, away + 10)}) {
      label.centre = view_.toScreen(at) + side;
      if (add(label)) return;
    }
  }
  void run(const Run& run, const Polyline& line);
  std::vector<Label> take() { return std::move(kept_); }

private:
  bool add(Label label) {
    if (!scene_.shows(label.object)) return false;
    if (!window_.contains(label.centre)) return false;
    const QPolygonF box = turnedBox(label, sizes_.of(label));
    const QRectF bounds = box.boundingRect();
    if (!window_.contains(bounds) || !taken_.isFree(box, bounds)) return false;
    taken_.take(box, bounds);
    kept_.push_back(std::move(label));
    return true;
  }

  const Scene& scene_;
  const View& view_;
  QRectF window_;
  TextSizes sizes_;
  TakenBoxes taken_;
  std::vector<Label> kept_;
};

double uprightAngle(const QLineF& leg) {
  double angle = leg.angle(); // degrees counter-clockwise on the screen
  if (angle > 90.5 && angle < 270.5) angle -= 180;
  if (angle >= 270.5) angle -= 360;
  return angle;
}

/// Along a leg that is long enough on the screen, longest first; two places on each.
void Placer::run(const Run& run, const Polyline& line) {
  const std::string code(facts(run.service).code);
  Label label{run.id, q(code + " " + run.size + "\""), {}, 0, 12,
              true,   ink(facts(run.service).color)};
  const double width = sizes_.of(label).width();
  std::vector<QLineF> legs;
  for (std::size_t i = 1; i < line.size(); ++i)
    legs.emplace_back(view_.toScreen(line[i - 1]), view_.toScreen(line[i]));
  std::stable_sort(legs.begin(), legs.end(),
                   [](const QLineF& a, const QLineF& b) { return a.length() > b.length(); });
  for (const QLineF& leg : legs) {
    if (leg.length() < width + 12) return;
    for (double along : {0.42, 0.7, 0.2}) {
      label.centre = leg.pointAt(along);
      label.angle = uprightAngle(leg);
      if (add(label)) return;
    }
  }
}

double pixelsAcross(const Ring& ring, const View& view) {
  const Box box = boxOf(ring);
  return std::max(box.high.x - box.low.x, box.high.y - box.low.y) * view.scale();
}

/// The middle of a vault holds baffles, interconnects and manways: where there is room its name
/// stands below them.
Point2 besideThePipes(const Vault& vault, const Ring& ring, const View& view) {
  constexpr double kRoomy = 90; // pixels across at which the lower third takes a name
  const double across = std::min(inMetres(vault.width), inMetres(vault.length));
  const Point2 lower = vault.centre - Point2{0, across * 0.3};
  return across * view.scale() >= kRoomy && contains(ring, lower) ? lower : vault.centre;
}

void placeTanks(Placer& placer, const Scene& scene, const View& view) {
  for (const Vault& vault : scene.plan().vaults) {
    const Ring ring = outline(vault);
    placer.area(vault.id, q(called(vault)), besideThePipes(vault, ring, view),
                pixelsAcross(ring, view) * 1.3, 13, true);
  }
  for (const EquipmentRoom& room : scene.plan().rooms) {
    const Ring ring = outline(room);
    placer.area(room.id, q(room.name), centroid(ring), pixelsAcross(ring, view) * 1.3, 13, true);
  }
}

void placeRuns(Placer& placer, const Scene& scene) {
  for (const Run& run : scene.plan().runs) {
    const std::optional<Polyline> line = scene.locator().centreline(run);
    if (line && line->size() >= 2) placer.run(run, *line);
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

void placeSite(Placer& placer, const Scene& scene, const View& view) {
  const Plan& plan = scene.plan();
  for (const Basin& b : plan.basins)
    placer.beside(b.id, q(b.name), b.at, 4 + inMetres(b.width) / 2 * view.scale());
  for (const SewerConnection& s : plan.sewers)
    placer.beside(s.id, q(s.name), s.at, 4 + 0.4 * view.scale());
  for (const WashEquipment& w : plan.washes)
    placer.beside(w.id, q(w.name), w.at, 4 + inMetres(w.length) / 2 * view.scale());
  for (const Well& w : plan.wells)
    placer.beside(w.id, q(w.name), w.at, 4 + 0.45 * view.scale());
  for (const Building& b : plan.buildings)
    placer.area(b.id, q(b.name), centroid(b.outline), pixelsAcross(b.outline, view), 14, false);
  for (const Pavement& p : plan.pavements) {
    placer.area(p.id, q(p.name), insideLowestEdge(p.outline, 12 / view.scale()),
                pixelsAcross(p.outline, view) * 0.7, 12, false);
  }
  for (const SpotElevation& s : plan.spots)
    placer.beside(s.id, q(printElevation(s.elevation, plan.project.units)), s.at,
                  3 + 0.2 * view.scale());
}

} // namespace

QPolygonF labelBox(const Label& label, const QFont& font) {
  return turnedBox(label, TextSizes(font).of(label));
}

bool convexOverlap(const QPolygonF& a, const QPolygonF& b) {
  const auto separated = [](const QPolygonF& p, const QPolygonF& q) {
    for (qsizetype i = 0; i < p.size(); ++i) {
      const QPointF edge = p[(i + 1) % p.size()] - p[i];
      const QPointF axis(-edge.y(), edge.x());
      const auto span = [&axis](const QPolygonF& shape) {
        double low = 1e300, high = -1e300;
        for (const QPointF& c : shape) {
          const double along = QPointF::dotProduct(axis, c);
          low = std::min(low, along);
          high = std::max(high, along);
        }
        return std::pair(low, high);
      };
      const auto [lowP, highP] = span(p);
      const auto [lowQ, highQ] = span(q);
      if (highP <= lowQ || highQ <= lowP) return true;
    }
    return false;
  };
  return !separated(a, b) && !separated(b, a);
}

std::vector<Label> placeLabels(const Scene& scene, const View& view, const QFont& font) {
  Placer placer(scene, view, font);
  for (Label& note : noteLabels(scene, view))
    placer.fixed(std::move(note));
  placeTanks(placer, scene, view);
  placeRuns(placer, scene);
  placeSite(placer, scene, view);
  return placer.take();
}

void paintLabels(QPainter& painter, const std::vector<Label>& labels, const CanvasTheme& theme) {
  const QFont base = painter.font();
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
