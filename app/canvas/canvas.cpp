#include "app/canvas/canvas.h"

#include "app/canvas/grid.h"
#include "app/canvas/mark_painter.h"
#include "app/canvas/notes.h"
#include "app/canvas/snap_field.h"
#include "app/canvas/tools/select_tool.h"

#include "core/geometry/polygon.h"
#include "core/plan/edits_group.h"
#include "core/plan/edits_objects.h"
#include "core/units/print.h"

#include <QFileInfo>
#include <QGestureEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QNativeGestureEvent>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>
#include <map>

namespace sump {

namespace {

constexpr double kFitMargin = 48;   // pixels
constexpr double kWheelStep = 1.25; // zoom for a notch of the wheel
constexpr double kLookScale = 70;   // pixels a metre at which a pipe and its fittings can be read

QString q(const std::string& text) {
  return QString::fromStdString(text);
}

} // namespace

Canvas::Canvas(Document& document, QWidget* parent) : QWidget(parent), document_(document) {
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
  connect(entry_, &EntryBox::edited, this, [this] { tool_->typing(entry_->values()); });
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
    snapField_ = sump::snapField(*snapPlan_);
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
}

void Canvas::select(std::set<Id> ids) {
  if (ids == selection_) return;
  selection_ = std::move(ids);
  emit selectionChanged();
  update();
}

bool Canvas::commit(const QString& step, Plan plan) {
  const std::optional<Problem> problem = document_.commit(step, std::move(plan));
  if (problem) emit refused(q(problem->what + ": " + problem->mend));
  return !problem;
}

void Canvas::refresh() {
  emit hintChanged(tool_->hint());
  update();
}

void Canvas::takeReview() {
  scene_ = std::make_unique<Scene>(document_.reviewed());
  scene_->show(shown_);
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
  update();
}

void Canvas::setGridShown(bool shown) {
  gridShown_ = shown;
  update();
}

void Canvas::setLabelsShown(bool shown) {
  labelsShown_ = shown;
  update();
}

void Canvas::setShown(const Shown& shown) {
  if (shown == shown_) return;
  shown_ = shown;
  if (scene_) {
    scene_->show(shown_);
    std::set<Id> kept = selection_;
    std::erase_if(kept, [this](const Id& id) { return !scene_->shows(id); });
    select(std::move(kept));
  }
  update();
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
  update();
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
  painter.fillRect(rect(), theme().background);
  const UnitSystem units = document_.shown().project.units;
  if (shown_.shows("kind/picture")) {
    const QString folder = QFileInfo(document_.filePath()).absolutePath();
    pictures_.paint(painter, view_, document_.shown(), folder, selection_, theme());
  }
  if (gridShown_) paintGrid(painter, view_, units, theme());
  if (scene_) {
    paintScene(painter, view_, *scene_, theme());
    paintSelected(painter, view_, *scene_, selection_, theme());
    paintNames(painter);
    if (scene_->showsFindings()) paintFindings(painter);
    if (allObjects(scene_->plan()).empty()) paintEmptyHint(painter);
  }
  tool_->paint(painter, theme());
  paintScaleBar(painter, view_, units, theme());
}

void Canvas::paintNames(QPainter& painter) const {
  paintLabels(painter,
              labelsShown_ ? placeLabels(*scene_, view_, font()) : noteLabels(*scene_, view_),
              theme());
}

void Canvas::paintFindings(QPainter& painter) const {
  // Errors last, so that they lie on top; notes would only clutter the drawing.
  const std::vector<Finding>& findings = scene_->reviewed().review.findings;
  for (auto it = findings.rbegin(); it != findings.rend(); ++it) {
    if (it->severity == Severity::Note || !it->place) continue;
    paintSeverity(painter, view_.toScreen(*it->place), 18, it->severity, theme());
  }
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

Pointer Canvas::pointerOf(const QMouseEvent& event) const {
  return {event.position(), view_.toSite(event.position()), event.modifiers()};
}

void Canvas::showCursor() {
  if (panning_) {
    setCursor(Qt::ClosedHandCursor);
  } else if (spaceHeld_) {
    setCursor(Qt::OpenHandCursor);
  } else {
    setCursor(tool_->cursor());
  }
}

void Canvas::mousePressEvent(QMouseEvent* event) {
  const bool leftPan = event->button() == Qt::LeftButton && spaceHeld_;
  if (event->button() == Qt::MiddleButton || leftPan) {
    panning_ = true;
    panFrom_ = event->position();
    showCursor();
  } else if (event->button() == Qt::LeftButton) {
    toolPressed_ = true;
    setFocus();
    tool_->press(pointerOf(*event));
    shutEntry(); // a click takes what was typed
  }
}

void Canvas::mouseMoveEvent(QMouseEvent* event) {
  pointer_ = event->position();
  tellCoordinates(event->position());
  if (panning_) {
    panBy(event->position() - panFrom_);
    panFrom_ = event->position();
    return;
  }
  tool_->move(pointerOf(*event));
}

void Canvas::mouseReleaseEvent(QMouseEvent* event) {
  if (panning_ && (event->button() == Qt::MiddleButton || event->button() == Qt::LeftButton)) {
    panning_ = false;
    showCursor();
  } else if (event->button() == Qt::LeftButton && toolPressed_) {
    toolPressed_ = false;
    tool_->release(pointerOf(*event));
  }
}

void Canvas::mouseDoubleClickEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton && !spaceHeld_) tool_->doubleClick(pointerOf(*event));
}

void Canvas::wheelEvent(QWheelEvent* event) {
  // A touch pad scrolls in pixels and pans; a wheel turns in notches and zooms.
  const bool pad = !event->pixelDelta().isNull() && event->phase() != Qt::NoScrollPhase;
  if (pad && !event->modifiers().testFlag(Qt::ControlModifier)) {
    panBy(event->pixelDelta());
  } else {
    zoomAt(event->position(), std::pow(kWheelStep, event->angleDelta().y() / 120.0));
  }
  event->accept();
}

bool Canvas::event(QEvent* event) {
  if (event->type() == QEvent::Gesture) {
    pinch(static_cast<QGestureEvent*>(event));
    return true;
  }
  if (event->type() == QEvent::NativeGesture) {
    if (nativeGesture(static_cast<QNativeGestureEvent*>(event))) return true;
  }
  if (event->type() == QEvent::ShortcutOverride &&
      tool_->claims(static_cast<QKeyEvent*>(event)->key())) {
    event->accept();
    return true;
  }
  return QWidget::event(event);
}

void Canvas::pinch(QGestureEvent* event) {
  if (auto* pinch = static_cast<QPinchGesture*>(event->gesture(Qt::PinchGesture))) {
    zoomAt(mapFromGlobal(pinch->centerPoint()), pinch->scaleFactor());
    panBy(pinch->centerPoint() - pinch->lastCenterPoint());
  }
}

bool Canvas::nativeGesture(QNativeGestureEvent* event) {
  if (event->gestureType() != Qt::ZoomNativeGesture) return false;
  zoomAt(event->position(), 1 + event->value());
  return true;
}

/// A digit opens the entry at its first field, E at the east coordinate, I at the invert or level.
bool Canvas::openEntry(const QKeyEvent& event) {
  const QString text = event.text().toUpper();
  const auto modifiers = event.modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier);
  if (text.size() != 1 || modifiers != Qt::NoModifier) return false;
  const bool digit = text[0].isDigit() || text[0] == '.' || text[0] == '-';
  const std::vector<EntryField> fields = tool_->entryFields();
  std::size_t first = 0;
  if (!digit) {
    const EntryKey key = text == "E" ? EntryKey::East : EntryKey::Level;
    if (text != "E" && text != "I") return false;
    first =
        static_cast<std::size_t>(std::ranges::find(fields, key, &EntryField::key) - fields.begin());
  }
  if (first >= fields.size()) return false;
  entry_->open(fields, plan().project.units, digit ? text : QString(), pointer_.toPoint(), first);
  return true;
}

void Canvas::shutEntry() {
  if (!entry_->isVisible()) return;
  entry_->shut();
  setFocus();
  tool_->typing({});
  refresh();
}

void Canvas::enterTyped(Qt::KeyboardModifiers modifiers) {
  const QString before = toolText("This place cannot be reached with these values.");
  if (tool_->enter(entry_->values(), modifiers)) {
    shutEntry();
  } else {
    entry_->complain(before);
  }
}

/// A step of the grid; with Shift a tenth of it, with Ctrl ten.
void Canvas::nudge(Point2 direction, Qt::KeyboardModifiers modifiers) {
  double step = gridSteps(view_.scale(), plan().project.units).minor;
  if (modifiers.testFlag(Qt::ShiftModifier)) step /= 10;
  if (modifiers.testFlag(Qt::ControlModifier)) step *= 10;
  const std::set<Id> ids = unlocked(plan(), selection_);
  if (ids.empty()) return emit refused(tr("What is selected is locked."));
  commit(tr("Nudge"), moveObjects(plan(), ids, direction * step));
}

bool Canvas::arrow(const QKeyEvent& event) {
  constexpr double kPan = 60; // pixels
  static const std::map<int, Point2> directions = {{Qt::Key_Left, {-1, 0}},
                                                   {Qt::Key_Right, {1, 0}},
                                                   {Qt::Key_Up, {0, 1}},
                                                   {Qt::Key_Down, {0, -1}}};
  const auto it = directions.find(event.key());
  if (it == directions.end()) return false;
  const Point2 d = it->second;
  if (selection_.empty() || tool_->busy() || !tool_->nudges()) {
    panBy({-d.x * kPan, d.y * kPan});
  } else {
    nudge(d, event.modifiers());
  }
  return true;
}

void Canvas::keyPressEvent(QKeyEvent* event) {
  if (entry_->isVisible()) return entry_->take(event);
  if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
    spaceHeld_ = true;
    return showCursor();
  }
  if (tool_->key(event->key(), event->modifiers())) return refresh();
  if (openEntry(*event)) return;
  if (event->key() == Qt::Key_Escape) emit toolGivenUp();
  if (!arrow(*event)) QWidget::keyPressEvent(event);
}

void Canvas::keyReleaseEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
    spaceHeld_ = false;
    showCursor();
  }
  QWidget::keyReleaseEvent(event);
}

void Canvas::contextMenuEvent(QContextMenuEvent* event) {
  if (!tool_->busy()) emit contextMenuWanted(event->globalPos());
}

void Canvas::tellCoordinates(QPointF at) {
  const UnitSystem units = document_.shown().project.units;
  const Point2 site = view_.toSite(at);
  QString text =
      tr("E %1   N %2")
          .arg(q(printElevation(metres(site.x), units)), q(printElevation(metres(site.y), units)));
  if (scene_) {
    if (const auto grade = scene_->study().ground.elevation(site))
      text += tr("   grade %1").arg(q(printElevation(metres(*grade), units)));
  }
  text += units == UnitSystem::Metric ? tr("  m") : tr("  ft");
  emit pointerMoved(text);
}

} // namespace sump
