#include "app/canvas/canvas.h"

#include "app/canvas/backdrop.h"
#include "app/canvas/drawn_lines.h"
#include "app/canvas/grid.h"
#include "app/canvas/mark_painter.h"
#include "app/canvas/notes.h"
#include "app/canvas/snap_field.h"
#include "app/canvas/tools/select_tool.h"

#include "app/core_text.h"
#include "core/geometry/polygon.h"
#include "core/plan/edits_objects.h"

#include <QFileInfo>

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kFitMargin = 58; // pixels: in it the scale bar has room
constexpr double kLookScale = 70; // pixels a metre at which a pipe and its fittings can be read

bool isEmptySite(const Plan& plan) {
  return plan.vaults.empty() && plan.runs.empty() && allObjects(plan).empty();
}

} // namespace

Canvas::Canvas(Document& document, QWidget* parent)
    : QWidget(parent), document_(document), backdrop_(std::make_unique<Backdrop>()) {
  setObjectName("canvas");
  setAccessibleName(tr("Site drawing"));
  setAccessibleDescription(
      tr("Plan view of the site. Arrow keys move the view, plus and minus zoom."));
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setMinimumSize(240, 180);
  setAttribute(Qt::WA_OpaquePaintEvent);
  grabGesture(Qt::PinchGesture);
  tool_ = std::make_unique<SelectTool>(*this);
  entry_ = new EntryBox(this);
  connect(entry_, &EntryBox::edited, this, [this] {
    tool_->typing(entry_->values());
    entry_->giveWay(entryPlace());
  });
  connect(entry_, &EntryBox::entered, this, &Canvas::enterTyped);
  connect(entry_, &EntryBox::givenUp, this, &Canvas::shutEntry);
  connect(&document_, &Document::reviewArrived, this, &Canvas::takeReview);
  connect(&document_, &Document::replaced, this, &Canvas::documentReplaced);
  connect(&document_, &Document::changed, this, &Canvas::dropLostSelection);
}

Canvas::~Canvas() = default;

const SnapField& Canvas::snapField() const {
  if (snapPlan_ != document_.shared()) {
    snapPlan_ = document_.shared();
    const auto shows = [this](const Id& id) { return scene_->shows(id); };
    snapField_ = shown_.everything() || !scene_ ? sump::snapField(*snapPlan_)
                                                : sump::snapField(*snapPlan_, shows);
  }
  return snapField_;
}

void Canvas::setTool(std::unique_ptr<Tool> tool) {
  shutEntry();
  tool_->cancel();
  tool_ = std::move(tool);
  toolPressed_ = false;
  showCursor();
  refresh();
  // A tool that was chosen by its key begins where the pointer rests.
  if (underMouse()) tool_->move({pointer_, view_.toSite(pointer_), Qt::NoModifier});
}

void Canvas::select(std::set<Id> ids) {
  light(std::nullopt);
  if (ids == selection_) return;
  selection_ = std::move(ids);
  emit selectionChanged();
  refresh(); // hints tell what can be done with it
}

void Canvas::light(std::optional<Point2> place) {
  if (place == lit_) return;
  lit_ = place;
  labels_.reset(); // names make room for the ring
  update();
}

bool Canvas::commit(const QString& step, Plan plan) {
  const std::optional<Problem> problem = document_.commit(step, std::move(plan));
  if (problem) emit refused(problemWords(*problem));
  return !problem;
}

void Canvas::refresh() {
  emit hintChanged(tool_->hint());
  update();
}

void Canvas::takeReview() {
  const std::unique_ptr<Scene> before = std::move(scene_);
  scene_ = std::make_unique<Scene>(document_.reviewed());
  scene_->show(shown_);
  forgetPlaces();
  // A drag changes a few of thousands of marks.
  if (const auto boxes = before ? changedBoxes(*before, *scene_) : std::nullopt) {
    backdrop_->forget(*boxes, view_);
  } else {
    backdrop_->forget();
  }
  if (fitPending_ && !document_.isReviewStale()) {
    fitPending_ = false;
    fitAll();
  }
  update();
}

void Canvas::documentReplaced() {
  shutEntry();
  tool_->cancel();
  fitPending_ = true;
  select({});
}

void Canvas::dropLostSelection() {
  // A preview moves objects; what it makes vanish comes back or is committed.
  if (selection_.empty() || document_.isPreviewing()) return;
  const Locator locator(document_.shown());
  std::set<Id> kept;
  for (const Id& id : selection_) {
    if (locator.find(id)) kept.insert(id);
  }
  select(std::move(kept));
}

std::set<Id> Canvas::knownObjects(const std::set<Id>& ids) const {
  const Locator locator(document_.shown());
  std::set<Id> known;
  for (const Id& id : ids) {
    if (const auto place = locator.find(id)) known.insert(ownerId(document_.shown(), *place, id));
  }
  return known;
}

void Canvas::setDark(bool dark) {
  dark_ = dark;
  repaintAll();
}

void Canvas::setGridShown(bool shown) {
  gridShown_ = shown;
  repaintAll();
}

void Canvas::setLabelsShown(bool shown) {
  labelsShown_ = shown;
  repaintAll();
}

void Canvas::forgetPlaces() {
  lines_.reset();
  labels_.reset();
}

void Canvas::repaintAll() {
  backdrop_->forget();
  forgetPlaces();
  update();
}

void Canvas::setShown(const Shown& shown) {
  if (shown == shown_) return;
  shown_ = shown;
  snapPlan_.reset(); // what is hidden does not catch
  if (scene_) {
    scene_->show(shown_);
    std::set<Id> kept = selection_;
    std::erase_if(kept, [this](const Id& id) { return !scene_->shows(id); });
    select(std::move(kept));
  }
  repaintAll();
}

Point2 Canvas::pointerPlace() const {
  const QPoint at = mapFromGlobal(QCursor::pos());
  return view_.toSite(rect().contains(at) ? QPointF(at) : QRectF(rect()).center());
}

void Canvas::viewWasChanged() {
  const double pixelsPerMetre = logicalDpiX() / 0.0254;
  const double denominator = pixelsPerMetre / view_.scale();
  const double digits = std::pow(10, std::max(0.0, std::floor(std::log10(denominator)) - 1));
  emit viewChanged(tr("about 1 : %1").arg(std::round(denominator / digits) * digits, 0, 'f', 0));
  repaintAll();
}

void Canvas::panBy(QPointF pixels) {
  view_.pan(pixels);
  viewWasChanged();
}

void Canvas::zoomAt(QPointF at, double factor) {
  view_.zoomAt(at, factor);
  viewWasChanged();
}

void Canvas::zoomBy(double factor) {
  zoomAt(QRectF(rect()).center(), factor);
}

void Canvas::fitAll() {
  const std::optional<Box> all = scene_ ? scene_->bounds({}) : std::nullopt;
  view_.fit(all.value_or(Box{{0, 0}, {30, 20}}), kFitMargin);
  viewWasChanged();
}

void Canvas::fitSelection() {
  const std::optional<Box> box =
      scene_ && !selection_.empty() ? scene_->bounds(selection_) : std::nullopt;
  if (!box) return fitAll();
  view_.fit(*box, kFitMargin * 2);
  viewWasChanged();
}

void Canvas::lookAt(const std::set<Id>& ids, std::optional<Point2> place) {
  std::optional<Box> box = scene_ && !ids.empty() ? scene_->bounds(ids) : std::nullopt;
  if (place && box) {
    // The place tells more than the whole of a long run, and its surroundings more than a point.
    const Box near = grown(boxOf({*place}), 6);
    const double span = std::max(box->high.x - box->low.x, box->high.y - box->low.y);
    if (span > 12) box = near;
  } else if (place) {
    box = grown(boxOf({*place}), 4);
  }
  if (!box) return;
  view_.fit(*box, kFitMargin * 2.5);
  if (view_.scale() > kLookScale) {
    view_.zoomAt(QRectF(rect()).center(), kLookScale / view_.scale());
  }
  viewWasChanged();
}

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
  overlay.settle();
  if (scene_) paintNames(painter, overlay);
  overlay.paintTexts();
  for (const Overlay::Tag& tag : overlay.tags())
    drawn_.texts.push_back(tag.box);
  paintScaleBar(painter, drawn_.scaleBar, view_.scale(), units, document_.shown().site.north,
                theme());
}

/// In the corner where it is, unless it covers lines there and fewer in another. While the view is
/// moved by hand it stays.
QRectF Canvas::scaleBarPlace(const QFont& font) {
  const UnitSystem units = document_.shown().project.units;
  const auto place = [&](Qt::Corner corner) { return scaleBarBox(view_, units, font, corner); };
  if (!lines_ || panning_) return place(barCorner_);
  int least = lines_->count(place(barCorner_));
  for (const Qt::Corner corner :
       {Qt::BottomLeftCorner, Qt::BottomRightCorner, Qt::TopLeftCorner, Qt::TopRightCorner}) {
    const int covered = least == 0 ? 0 : lines_->count(place(corner));
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
    pictures_.paint(painter, view_, document_.shown(), folder, selection_, theme());
  }
  if (gridShown_) paintGrid(painter, view_, document_.shown().project.units, theme());
  if (scene_) paintScene(painter, view_, *scene_, theme(), region);
}

/// Where no text of a tool may stand.
std::vector<QRectF> Canvas::keptClear() const {
  std::vector<QRectF> kept = drawn_.marks; // so far those of findings
  kept.push_back(drawn_.scaleBar);
  if (entry_->isVisible()) kept.emplace_back(entry_->geometry());
  return kept;
}

/// Names stay where they are while the pointer moves: they make room for what lasts, and step aside
/// for what comes and goes.
void Canvas::paintNames(QPainter& painter, const Overlay& overlay) {
  if (!labels_ || labelHandles_ != overlay.handles()) {
    labelHandles_ = overlay.handles();
    labels_ = placeLabels(*scene_, view_, font(), labelRoom(overlay));
  }
  std::vector<QRectF> passing = overlay.marks();
  for (const Overlay::Tag& tag : overlay.tags())
    passing.push_back(tag.box);
  if (entry_->isVisible()) passing.emplace_back(entry_->geometry());
  for (const Label& label : *labels_) {
    const QRectF bounds = label.box.boundingRect();
    const bool covered = std::ranges::any_of(passing, [&](const QRectF& box) {
      return box.intersects(bounds) && convexOverlap(label.box, QPolygonF(box));
    });
    if (!covered) drawn_.names.push_back(label);
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
  // Errors last, so that they lie on top; notes would only clutter the drawing.
  const std::vector<Finding>& findings = scene_->reviewed().review.findings;
  const SeveritySigns& signs = severitySigns(theme(), devicePixelRatioF());
  const QPointF middle(SeveritySigns::kSize / 2.0, SeveritySigns::kSize / 2.0);
  const QRectF onScreen = QRectF(rect()).adjusted(-18, -18, 18, 18);
  for (auto it = findings.rbegin(); it != findings.rend(); ++it) {
    if (it->severity == Severity::Note || !it->place) continue;
    const QPointF at = view_.toScreen(*it->place);
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

void Canvas::resizeEvent(QResizeEvent*) {
  // Keep what is in the middle in the middle, also while docks open and close.
  view_.resize(QSizeF(size()));
  viewWasChanged();
}

} // namespace sump
