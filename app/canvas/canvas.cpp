#include "app/canvas/canvas.h"

#include "app/canvas/backdrop.h"
#include "app/canvas/drawn_lines.h"
#include "app/canvas/snap_field.h"
#include "app/canvas/tools/select_tool.h"

#include "app/core_text.h"
#include "core/geometry/polygon.h"
#include "core/plan/edits_objects.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kFitMargin = 58; // pixels: in it the scale bar has room
constexpr double kLookScale = 70; // pixels a metre at which a pipe and its fittings can be read

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
    entry_->giveWay();
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
  // A drag changes a few of thousands of marks.
  if (const auto changes = before ? changesBetween(*before, *scene_) : std::nullopt) {
    backdrop_->forget(changes->boxes, view_);
    forgetPlaces(*changes);
  } else {
    backdrop_->forget();
    forgetPlaces();
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
  standing_.reset();
}

/// In a drag names that have nothing to do with what moves stay where they are.
void Canvas::forgetPlaces(const SceneChanges& changes) {
  if (!document_.isPreviewing() || (!labels_ && !standing_)) return forgetPlaces();
  if (!standing_) standing_ = labelsBefore();
  std::vector<QRectF> boxes;
  for (const Box& box : changes.boxes) {
    constexpr double kWide = 4; // pixels: half the widest line
    const QRectF on = QRectF(view_.toScreen(box.low), view_.toScreen(box.high)).normalized();
    boxes.push_back(on.adjusted(-kWide, -kWide, kWide, kWide));
  }
  const auto isLoose = [&](const Label& label) {
    QRectF room = label.box.boundingRect();
    if (label.leader) room |= QRectF(label.leader->p1(), label.leader->p2()).normalized();
    return changes.objects.contains(label.object) ||
           std::ranges::any_of(boxes, [&](const QRectF& box) { return box.intersects(room); });
  };
  for (const Label& label : standing_->standing) {
    if (isLoose(label)) standing_->anew.insert(label.object);
  }
  std::erase_if(standing_->standing, isLoose);
  standing_->anew.insert(changes.objects.begin(), changes.objects.end());
  lines_.reset();
  labels_.reset();
}

/// All that stand; a name that had to go while things moved may come back.
LabelsBefore Canvas::labelsBefore() const {
  LabelsBefore before{*labels_, namesAtRest_};
  for (const Label& label : before.standing)
    before.anew.erase(label.object);
  return before;
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
  fitted_ = false;
  view_.pan(pixels);
  viewWasChanged();
}

void Canvas::zoomAt(QPointF at, double factor) {
  fitted_ = false;
  view_.zoomAt(at, factor);
  viewWasChanged();
}

void Canvas::zoomBy(double factor) {
  zoomAt(QRectF(rect()).center(), factor);
}

void Canvas::fitAll() {
  const std::optional<Box> all = scene_ ? scene_->bounds({}) : std::nullopt;
  view_.fit(all.value_or(Box{{0, 0}, {30, 20}}), kFitMargin);
  fitted_ = true;
  viewWasChanged();
}

void Canvas::fitSelection() {
  const std::optional<Box> box =
      scene_ && !selection_.empty() ? scene_->bounds(selection_) : std::nullopt;
  if (!box) return fitAll();
  view_.fit(*box, kFitMargin * 2);
  fitted_ = false;
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
  fitted_ = false;
  view_.fit(*box, kFitMargin * 2.5);
  if (view_.scale() > kLookScale) {
    view_.zoomAt(QRectF(rect()).center(), kLookScale / view_.scale());
  }
  viewWasChanged();
}

void Canvas::resizeEvent(QResizeEvent*) {
  view_.resize(QSizeF(size()));
  // What was shown whole stays so, with room round it for texts and the scale bar; else what is in
  // the middle stays there, also while docks open and close. Nothing moves in the midst of a
  // gesture.
  const bool resting = !tool_->busy() && !toolPressed_ && !entry_->isVisible();
  if (resting && fitted_) return fitAll();
  viewWasChanged();
}

} // namespace sump
