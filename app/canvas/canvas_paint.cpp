// How the drawing looks.

#include "app/canvas/backdrop.h"
#include "app/canvas/canvas.h"
#include "app/canvas/drawn_lines.h"
#include "app/canvas/finding_place.h"
#include "app/canvas/grid.h"
#include "app/canvas/label_places.h"
#include "app/canvas/mark_painter.h"

#include "core/plan/edits_objects.h"

#include <QFileInfo>
#include <QTimer>

#include <algorithm>
#include <cmath>
#include <limits>

namespace sump {

namespace {

bool isEmptySite(const Plan& plan) {
  return plan.vaults.empty() && plan.runs.empty() && allObjects(plan).empty();
}

/// As far as the first of the closed outlines.
QLineF outside(const QLineF& way, const std::vector<QPolygonF>& outlines) {
  QLineF most = way;
  QPointF meet;
  for (const QPolygonF& outline : outlines) {
    for (qsizetype i = 1; i < outline.size(); ++i) {
      const QLineF edge(outline[i - 1], outline[i]);
      if (most.intersects(edge, &meet) == QLineF::BoundedIntersection) most.setP2(meet);
    }
  }
  return most;
}

/// From the box to what is being typed, shortest first.
std::vector<QLineF> waysFrom(const QRectF& box, const QLineF& straight,
                             const std::vector<QPolygonF>& outlines) {
  std::vector<QLineF> ways{straight};
  for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0}) {
    for (const double y : {box.top(), box.bottom()})
      ways.emplace_back(QPointF(std::lerp(box.left(), box.right(), share), y), straight.p2());
  }
  for (QLineF& way : ways)
    way = outside(way, outlines);
  std::ranges::stable_sort(ways, {}, &QLineF::length);
  return ways;
}

/// From the entry to what is being typed: along no line that is being drawn, through none of the
/// tool's texts and as little else as can be; names step aside. Nothing where there is no such way,
/// or the entry stands close.
std::optional<QLineF> leaderOf(const EntryBox& entry, const std::vector<QPolygonF>& drawn,
                               const std::vector<QPolygonF>& names,
                               const std::vector<Overlay::Tag>& tags, const DrawnLines* below) {
  const std::optional<QLineF> straight = entry.leader();
  if (!straight || !entry.parentWidget()->rect().contains(straight->p2().toPoint()))
    return std::nullopt;
  constexpr double kAtItsEnd = 8, kLeast = 16; // pixels: there it meets what is being drawn
  constexpr double kName = 60, kLine = 30;     // that it is longer rather than through one
  DrawnLines::But but;
  but.paving = true;
  std::vector<QLineF> lines;
  std::vector<QPolygonF> outlines;
  for (const QPolygonF& shape : drawn) {
    if (shape.size() > 3 && shape.isClosed()) outlines.push_back(shape);
    for (qsizetype i = 1; i < shape.size(); ++i)
      lines.emplace_back(shape[i - 1], shape[i]);
  }
  const QRectF box(entry.geometry());
  std::optional<QLineF> best;
  double least = std::numeric_limits<double>::max();
  for (const QLineF& way : waysFrom(box, *straight, outlines)) {
    if (way.length() < kLeast) continue;
    const QPolygonF line({way.p1(), way.pointAt(1 - kAtItsEnd / way.length())});
    const auto meets = [&](const QPolygonF& other) { return convexOverlap(line, other); };
    const bool leaves = !box.adjusted(1, 1, -1, -1).contains(way.pointAt(3 / way.length()));
    const auto onLine = [&](const QLineF& other) { return meets(asShape(other)); };
    const auto onTag = [&](const Overlay::Tag& tag) { return meets(QPolygonF(tag.box)); };
    if (!leaves || std::ranges::any_of(lines, onLine) || std::ranges::any_of(tags, onTag)) continue;
    const double cost = way.length() +
                        kName * static_cast<double>(std::ranges::count_if(names, meets)) +
                        kLine * (below == nullptr ? 0 : below->count(line, but));
    if (cost >= least) continue;
    least = cost;
    best = way;
  }
  return best;
}

/// What of the line lies outside of the texts, which stand on it.
std::vector<QLineF> around(const QLineF& line, const std::vector<QPolygonF>& texts) {
  constexpr double kGap = 1.5, kLeast = 6; // pixels to a text, and of a piece
  const double length = std::max(line.length(), 1.0);
  std::vector<double> cuts{0, 1};
  QPointF meet;
  for (const QPolygonF& text : texts) {
    for (qsizetype i = 0; i < text.size(); ++i) {
      const QLineF edge(text[i], text[(i + 1) % text.size()]);
      if (line.intersects(edge, &meet) == QLineF::BoundedIntersection)
        cuts.push_back(QLineF(line.p1(), meet).length() / length);
    }
  }
  std::ranges::sort(cuts);
  std::vector<QLineF> pieces;
  for (std::size_t i = 1; i < cuts.size(); ++i) {
    const double from = cuts[i - 1] + (i > 1 ? kGap / length : 0);
    const double to = cuts[i] - (i + 1 < cuts.size() ? kGap / length : 0);
    const QPointF middle = line.pointAt((from + to) / 2);
    const bool under = std::ranges::any_of(texts, [middle](const QPolygonF& text) {
      return text.containsPoint(middle, Qt::OddEvenFill);
    });
    if (!under && (to - from) * length >= kLeast)
      pieces.emplace_back(line.pointAt(from), line.pointAt(to));
  }
  return pieces;
}

} // namespace

void Canvas::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const UnitSystem units = document_.shown().project.units;
  const Backdrop::Look look{units, !document_.shown().underlays.empty()};
  const auto paint = [this](QPainter& below, const QRegion& region) {
    paintBackdrop(below, region);
  };
  painter.drawPixmap(0, 0, backdrop_->picture(size(), devicePixelRatioF(), look, paint));
  drawn_ = {};
  if (scene_ && !lines_) lines_ = std::make_unique<DrawnLines>(*scene_, view_);
  drawn_.scaleBar = scaleBarPlace(painter.font());
  if (scene_) {
    paintSelected(painter, view_, *scene_, selection_, theme());
    if (scene_->showsFindings()) paintFindings(painter);
    paintLit(painter);
    if (isEmptySite(scene_->plan()) && !tool_->busy()) paintEmptyHint(painter);
  }
  Overlay overlay(painter, view_, theme(), keptClear(), lines_.get());
  tool_->paint(overlay);
  for (const QLineF& line : linesUnderWay())
    overlay.keepInSight(QPolygonF({line.p1(), line.p2()}));
  if (scene_) placeNames(overlay);
  const std::vector<QPolygonF> names = nameBoxes();
  overlay.settle(names);
  const auto leader = leaderOf(*entry_, shapesUnderWay(), names, overlay.tags(), lines_.get());
  for (const QLineF& piece : leader ? around(*leader, names) : std::vector<QLineF>()) {
    overlay.paintLeader(piece);
    drawn_.leaders.push_back(piece);
  }
  overlay.paintLeaders();
  if (scene_) paintNames(painter, overlay);
  overlay.paintTexts();
  for (const Overlay::Tag& tag : overlay.tags()) {
    drawn_.texts.push_back(tag.box);
    if (tag.leader) drawn_.leaders.push_back(*tag.leader);
  }
  paintScaleBar(painter, drawn_.scaleBar, view_.scale(), units, document_.shown().site.north,
                theme());
}

/// In the corner where it is, unless it covers lines there and fewer in another, least of all what
/// is being drawn. While the view is moved by hand it stays.
QRectF Canvas::scaleBarPlace(const QFont& font) {
  const UnitSystem units = document_.shown().project.units;
  const auto place = [&](Qt::Corner corner) { return scaleBarBox(view_, units, font, corner); };
  if (!lines_ || panning_) return place(barCorner_);
  const std::vector<QLineF> drawn = linesUnderWay();
  const auto count = [&](const QRectF& box) {
    constexpr int kDrawn = 1000;
    const auto isOn = [&](const QLineF& line) {
      return convexOverlap(QPolygonF(box), QPolygonF({line.p1(), line.p2()}));
    };
    return lines_->count(box) + (std::ranges::any_of(drawn, isOn) ? kDrawn : 0);
  };
  int least = count(place(barCorner_));
  for (const Qt::Corner corner :
       {Qt::BottomLeftCorner, Qt::BottomRightCorner, Qt::TopLeftCorner, Qt::TopRightCorner}) {
    const int covered = least == 0 ? 0 : count(place(corner));
    if (covered >= least) continue;
    least = covered;
    barCorner_ = corner;
  }
  return place(barCorner_);
}

void Canvas::paintBackdrop(QPainter& painter, const QRegion& region) {
  painter.fillRect(region.boundingRect(), theme().background);
  if (shown_.shows("kind/picture")) {
    const QString folder = QFileInfo(document_.filePath()).absolutePath();
    pictures_.paint(painter, view_, document_.shown(), folder, theme());
  }
  if (gridShown_) paintGrid(painter, view_, document_.shown().project.units, theme());
  if (shown_.shows("kind/picture"))
    paintSelectedPictures(painter, view_, document_.shown(), selection_, theme());
  if (scene_) paintScene(painter, view_, *scene_, theme(), region);
}

/// Where no text of a tool may stand.
std::vector<QRectF> Canvas::keptClear() const {
  std::vector<QRectF> kept = drawn_.marks; // so far those of findings
  kept.push_back(drawn_.scaleBar);
  if (entry_->isVisible()) kept.emplace_back(entry_->geometry());
  return kept;
}

/// Names stay where they are while the pointer moves: they make room for what lasts.
void Canvas::placeNames(const Overlay& overlay) {
  if (labels_ && labelHandles_ == overlay.handles() && labelBar_ == drawn_.scaleBar) return;
  labelHandles_ = overlay.handles();
  labelBar_ = drawn_.scaleBar;
  if (document_.isPreviewing() && labels_ && !standing_) standing_ = labelsBefore();
  const LabelsBefore* before = standing_ ? &*standing_ : nullptr;
  labels_ = placeLabels(*scene_, view_, font(), labelRoom(overlay), before);
  if (before == nullptr) {
    namesAtRest_.clear();
    for (const Label& label : *labels_)
      namesAtRest_.insert(label.object);
  }
  standing_.reset();
  if (!entry_->isVisible()) return;
  QTimer::singleShot(0, this, [this] { // no widget moves while another is painted
    entry_->giveWay();
    update();
  });
}

std::vector<QPolygonF> Canvas::nameBoxes() const {
  std::vector<QPolygonF> boxes;
  if (!labels_) return boxes;
  for (const Label& label : *labels_)
    boxes.push_back(label.box);
  return boxes;
}

/// Names step aside for what comes and goes.
void Canvas::paintNames(QPainter& painter, const Overlay& overlay) {
  std::vector<QRectF> passing = overlay.marks();
  for (const Overlay::Tag& tag : overlay.tags())
    passing.push_back(tag.box);
  const QRectF entry = entry_->isVisible() ? QRectF(entry_->geometry()) : QRectF();
  for (const Label& label : *labels_) {
    const QRectF bounds = label.box.boundingRect();
    const bool covered = std::ranges::any_of(passing, [&](const QRectF& box) {
      return box.intersects(bounds) && convexOverlap(label.box, QPolygonF(box));
    });
    const bool under = entry.intersects(bounds) && convexOverlap(label.box, QPolygonF(entry));
    if (under) drawn_.underEntry.push_back(label);
    if (!covered && !under) drawn_.names.push_back(label);
  }
  paintLabels(painter, drawn_.names, theme());
  drawn_.marks.insert(drawn_.marks.end(), overlay.handles().begin(), overlay.handles().end());
  drawn_.marks.insert(drawn_.marks.end(), overlay.marks().begin(), overlay.marks().end());
}

LabelRoom Canvas::labelRoom(const Overlay& overlay) const {
  LabelRoom room{drawn_.scaleBar, overlay.handles(), labelsShown_, lines_.get()};
  room.marks.insert(room.marks.end(), drawn_.marks.begin(), drawn_.marks.end());
  return room;
}

void Canvas::paintFindings(QPainter& painter) {
  // Errors last, so that they lie on top; notes and what is accepted would only clutter the
  // drawing.
  const std::vector<Finding>& findings = scene_->reviewed().review.findings;
  const SeveritySigns& signs = severitySigns(theme(), devicePixelRatioF());
  const QPointF middle(SeveritySigns::kSize / 2.0, SeveritySigns::kSize / 2.0);
  const QRectF onScreen = QRectF(rect()).adjusted(-18, -18, 18, 18);
  for (auto it = findings.rbegin(); it != findings.rend(); ++it) {
    if (it->severity == Severity::Note || it->accepted) continue;
    const std::optional<Point2> place = signPlace(scene_->plan(), *it);
    if (!place) continue;
    const QPointF at = view_.toScreen(*place);
    if (!onScreen.contains(at)) continue;
    painter.drawPixmap(at - middle, signs.of(it->severity));
    drawn_.marks.emplace_back(at - middle, QSizeF(SeveritySigns::kSize, SeveritySigns::kSize));
  }
}

void Canvas::paintLit(QPainter& painter) {
  if (!lit_) return;
  constexpr double kRadius = 19, kGlow = 9; // pixels: clear of the sign in the middle
  const QPointF at = view_.toScreen(*lit_);
  QColor glow = theme().accent;
  glow.setAlpha(70);
  painter.setBrush(Qt::NoBrush);
  for (const QPen& pen : {QPen(glow, kGlow), QPen(theme().accent, 2)}) {
    painter.setPen(pen);
    painter.drawEllipse(at, kRadius, kRadius);
  }
  const double half = kRadius + kGlow / 2;
  drawn_.marks.emplace_back(at - QPointF(half, half), QSizeF(2 * half, 2 * half));
}

void Canvas::paintEmptyHint(QPainter& painter) const {
  painter.setPen(theme().ink(Ink::Grey));
  QFont large = font();
  large.setPixelSize(15);
  painter.setFont(large);
  painter.drawText(rect().adjusted(40, 0, -40, 0), Qt::AlignCenter | Qt::TextWordWrap,
                   tr("An empty site. Place the drains, the sewer connection and the equipment "
                      "room, then the vaults in flow order, and draw the lines between them."));
  painter.setFont(font());
}

} // namespace sump
