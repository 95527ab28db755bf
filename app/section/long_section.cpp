#include "app/section/long_section.h"

#include "app/canvas/tools/tool.h"
#include "app/plain_text.h"
#include "app/section/level_steps.h"
#include "core/geometry/polygon.h"
#include "core/units/print.h"

#include <QAccessible>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QToolTip>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kLeft = 58, kFoot = 36, kTop = 4, kRight = 4; // gutters, pixels
constexpr double kDragFrom = 3;                                ///< pixels before a press is a drag

} // namespace

LongSection::LongSection(Document& document, QWidget* parent)
    : QWidget(parent), document_(document), alive_(&document) {
  setObjectName("long-section");
  setAccessibleName(tr("Long section"));
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setAttribute(Qt::WA_OpaquePaintEvent);
  entry_ = new EntryBox(this);
  connect(entry_, &EntryBox::entered, this, &LongSection::enterTyped);
  connect(entry_, &EntryBox::givenUp, this, &LongSection::shutEntry);
  connect(&document_, &Document::changed, this, &LongSection::planChanged);
}

QRectF LongSection::plot() const {
  return QRectF(rect()).adjusted(kLeft, kTop, -kRight, -kFoot);
}

Point2 LongSection::planePoint(QPointF pixel) const {
  return view_.toSite(pixel - plot().topLeft());
}

QPointF LongSection::place(double station, Length level) const {
  return view_.toScreen(plane_.at(station, level)) + plot().topLeft();
}

void LongSection::present(SectionKind kind, const Id& run) {
  if (kind == kind_ && run == run_ && !drawing_.empty()) return;
  giveUp();
  kind_ = kind;
  run_ = run;
  current_.reset();
  readOut_.clear();
  fitted_ = true;
  refresh();
}

void LongSection::markStale() {
  stale_ = true;
  update();
}

void LongSection::refresh() {
  stale_ = false;
  const ReviewedPtr reviewed = document_.reviewed();
  if (!reviewed) return;
  drawing_ = sectionDrawing(reviewed->review, document_.catalog(), kind_, run_);
  // While a level is dragged the ground must not move under the pointer.
  if (fitted_ && !dragging()) {
    fit();
  } else {
    takeMarks();
  }
  update();
}

void LongSection::takeMarks() {
  marks_ = drawing_.marks(plane_);
}

void LongSection::select(std::set<Id> ids) {
  selection_ = std::move(ids);
  update();
}

void LongSection::setDark(bool dark) {
  dark_ = dark;
  update();
}

void LongSection::setStretch(std::optional<double> stretch) {
  wishedStretch_ = stretch;
  fit();
}

void LongSection::fit() {
  fitted_ = true;
  view_.resize(plot().size());
  if (drawing_.empty()) return update();
  const SectionExtent& extent = drawing_.extent;
  const double width = extent.to - extent.from, height = inMetres(extent.high - extent.low);
  // Room for texts, less of it in a low panel.
  const double margin = std::clamp(plot().height() * 0.08, 4.0, 26.0);
  const double across = std::max(plot().width() - 2 * margin, 40.0);
  const double down = std::max(plot().height() - 2 * margin, 40.0);
  plane_.stretch = 1;
  for (double factor : {2.0, 5.0, 10.0, 20.0, 50.0}) {
    if (height * factor * across / width <= down) plane_.stretch = factor;
  }
  if (wishedStretch_) plane_.stretch = *wishedStretch_;
  view_.fit({plane_.at(extent.from, extent.low), plane_.at(extent.to, extent.high)}, margin);
  takeMarks();
  viewWasChanged();
}

void LongSection::zoomBy(double factor) {
  fitted_ = false;
  view_.zoomAt(QRectF({}, view_.size()).center(), factor);
  viewWasChanged();
}

void LongSection::viewWasChanged() {
  emit viewChanged();
  update();
}

void LongSection::resizeEvent(QResizeEvent*) {
  view_.resize(plot().size());
  if (fitted_) fit();
}

const SectionHandle* LongSection::current() const {
  if (!current_) return nullptr;
  const auto found = std::ranges::find_if(
      drawing_.handles, [this](const SectionHandle& h) { return h.same(*current_); });
  return found == drawing_.handles.end() ? nullptr : &*found;
}

void LongSection::setCurrent(const SectionHandle& handle) {
  current_ = handle;
  announceCurrent();
  update();
}

/// The nearest; of two at one place the one that the keyboard is on.
const SectionHandle* LongSection::handleAt(QPointF pixel) const {
  const SectionHandle* best = nullptr;
  double least = kReachPixels;
  for (const SectionHandle& handle : drawing_.handles) {
    double away = QLineF(place(handle), pixel).length();
    if (current_ && handle.same(*current_)) away -= 0.5;
    if (away > least) continue;
    least = away;
    best = &handle;
  }
  return best;
}

Id LongSection::objectAt(QPointF pixel) const {
  const Point2 at = planePoint(pixel);
  const double reach = kReachPixels / view_.scale();
  for (auto mark = marks_.rbegin(); mark != marks_.rend(); ++mark) {
    if (mark->object.empty() || mark->points.size() < 2) continue;
    const bool hit =
        mark->round    ? distance(at, mark->points[0]) <= distance(mark->points[0], mark->points[1])
        : mark->closed ? contains(mark->points, at)
                       : distanceToLine(at, mark->points) <= reach;
    if (hit) return mark->object;
  }
  return {};
}

/// Is it the line that the section is about, or a part on it?
bool LongSection::isOwn(const Id& object) const {
  if (!drawing_.line || object.empty()) return false;
  return object == run_ || std::ranges::find(drawing_.line->parts, object, &ProfilePart::id) !=
                               drawing_.line->parts.end();
}

void LongSection::mousePressEvent(QMouseEvent* event) {
  setFocus();
  pressedAt_ = panFrom_ = event->position();
  moved_ = false;
  if (event->button() == Qt::MiddleButton) {
    gesture_ = Gesture::Pan;
  } else if (event->button() == Qt::LeftButton) {
    shutEntry();
    const SectionHandle* handle = handleAt(event->position());
    if (handle != nullptr) {
      beginLevel(*handle);
    } else {
      gesture_ = Gesture::Pick;
    }
  }
}

void LongSection::mouseMoveEvent(QMouseEvent* event) {
  const QPointF at = event->position();
  if (gesture_ == Gesture::None) return hover(at);
  if (!moved_ && QLineF(at, pressedAt_).length() < kDragFrom) return;
  const bool first = !moved_, loose = event->modifiers().testFlag(Qt::AltModifier);
  moved_ = true;
  // The line that the section is about is moved as a whole by its pipe.
  if (first && gesture_ == Gesture::Pick && isOwn(objectAt(pressedAt_)) && mayChange(run_))
    gesture_ = Gesture::Line;
  if (gesture_ == Gesture::Level) return dragLevel(at, loose);
  if (gesture_ == Gesture::Line) return dragLine(at, loose);
  fitted_ = false;
  view_.pan(at - panFrom_);
  panFrom_ = at;
  viewWasChanged();
}

void LongSection::mouseReleaseEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton && event->button() != Qt::MiddleButton) return;
  const Gesture done = gesture_;
  if (done == Gesture::Level) return endLevel();
  if (done == Gesture::Line) return endLine();
  gesture_ = Gesture::None;
  if (done == Gesture::Pick && !moved_) {
    const Id object = objectAt(event->position());
    if (!object.empty()) emit picked(object);
  }
}

void LongSection::mouseDoubleClickEvent(QMouseEvent* event) {
  const SectionHandle* handle = handleAt(event->position());
  if (event->button() != Qt::LeftButton || handle == nullptr) return;
  giveUp();
  setCurrent(SectionHandle(*handle));
  openEntry(q(printElevation(handle->invert, drawing_.units)));
}

bool LongSection::focusNextPrevChild(bool next) {
  if (entry_->isVisible() || drawing_.handles.empty()) return QWidget::focusNextPrevChild(next);
  const SectionHandle* here = current();
  const auto count = static_cast<int>(drawing_.handles.size());
  const int index =
      here == nullptr ? (next ? -1 : count) : static_cast<int>(here - drawing_.handles.data());
  const int to = index + (next ? 1 : -1);
  if (to < 0 || to >= count) {
    current_.reset(); // past the last one the keyboard goes on through the window
    update();
    return QWidget::focusNextPrevChild(next);
  }
  setCurrent(drawing_.handles[static_cast<std::size_t>(to)]);
  return true;
}

bool LongSection::event(QEvent* event) {
  // Esc ends a drag here before it means anything to the window.
  if (event->type() == QEvent::ShortcutOverride) {
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (key == Qt::Key_Escape && dragging()) {
      event->accept();
      return true;
    }
  }
  if (event->type() == QEvent::ToolTip) {
    const auto* help = static_cast<QHelpEvent*>(event);
    const QString text = untoldAt(help->pos());
    text.isEmpty() ? QToolTip::hideText() : QToolTip::showText(help->globalPos(), text, this);
    return true;
  }
  return QWidget::event(event);
}

bool LongSection::handleKey(QKeyEvent* event) {
  const int ten = event->modifiers().testFlag(Qt::ControlModifier) ? 10 : 1;
  switch (event->key()) {
  case Qt::Key_Return:
  case Qt::Key_Enter:
  case Qt::Key_F2:
    openEntry(q(printElevation(current()->invert, drawing_.units)));
    return true;
  case Qt::Key_Up:
    nudge(ten);
    return true;
  case Qt::Key_Down:
    nudge(-ten);
    return true;
  default:
    break;
  }
  const QString text = event->text();
  const bool digit = text.size() == 1 && (text[0].isDigit() || text[0] == '.' || text[0] == '-');
  if (digit) openEntry(text);
  return digit;
}

void LongSection::keyPressEvent(QKeyEvent* event) {
  constexpr double kPan = 40, kZoom = 1.25;
  if (entry_->isVisible()) return entry_->take(event);
  if (event->key() == Qt::Key_Escape) {
    if (gesture_ == Gesture::None) current_.reset();
    return giveUp();
  }
  if (gesture_ != Gesture::None) return;
  if (current() != nullptr && handleKey(event)) return;
  switch (event->key()) {
  case Qt::Key_Plus:
  case Qt::Key_Equal:
    return zoomBy(kZoom);
  case Qt::Key_Minus:
    return zoomBy(1 / kZoom);
  case Qt::Key_Home:
    return fit();
  case Qt::Key_Left:
  case Qt::Key_Right:
    fitted_ = false;
    view_.pan({event->key() == Qt::Key_Left ? kPan : -kPan, 0});
    return viewWasChanged();
  default:
    QWidget::keyPressEvent(event);
  }
}

void LongSection::wheelEvent(QWheelEvent* event) {
  fitted_ = false;
  view_.zoomAt(event->position() - plot().topLeft(),
               std::pow(1.25, event->angleDelta().y() / 120.0));
  viewWasChanged();
  event->accept();
}

/// A window that goes takes its document along first.
void LongSection::hideEvent(QHideEvent*) {
  if (alive_) giveUp();
}

void LongSection::leaveEvent(QEvent*) {
  if (gesture_ == Gesture::None) tell({});
}

void LongSection::focusOutEvent(QFocusEvent*) {
  update();
}

} // namespace sump
