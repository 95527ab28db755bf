#include "app/section/long_section.h"

#include "app/canvas/tools/tool.h"
#include "app/section/level_steps.h"
#include "core/geometry/polygon.h"
#include "core/plan/edits_group.h"
#include "core/plan/edits_levels.h"
#include "core/units/print.h"

#include <QAccessible>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kLeft = 58, kFoot = 36, kTop = 4, kRight = 4; // gutters, pixels
constexpr double kDragFrom = 3;                                ///< pixels before a press is a drag

QString q(const std::string& text) {
  return QString::fromStdString(text);
}

} // namespace

LongSection::LongSection(Document& document, QWidget* parent)
    : QWidget(parent), document_(document) {
  setObjectName("long-section");
  setAccessibleName(tr("Long section"));
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setAttribute(Qt::WA_OpaquePaintEvent);
  entry_ = new EntryBox(this);
  connect(entry_, &EntryBox::entered, this, &LongSection::enterTyped);
  connect(entry_, &EntryBox::givenUp, this, &LongSection::shutEntry);
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
  fitted_ = true;
  refresh();
}

void LongSection::refresh() {
  const ReviewedPtr reviewed = document_.reviewed();
  if (!reviewed) return;
  drawing_ = sectionDrawing(reviewed->review, document_.catalog(), kind_, run_);
  // While a level is dragged the ground must not move under the pointer.
  if (fitted_ && gesture_ != Gesture::Level) {
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

void LongSection::announceCurrent() {
  const SectionHandle* handle = current();
  if (handle == nullptr) return;
  const std::optional<RunProfile> run = profileOf(handle->run);
  const QString text =
      handleName(document_.shown(), *handle) + "    " +
      levelReadOut(run ? &*run : nullptr, handle->vertex, handle->invert, drawing_.units);
  setAccessibleDescription(text);
  QAccessibleEvent event(this, QAccessible::DescriptionChanged);
  QAccessible::updateAccessibility(&event);
  tell(text);
}

std::optional<RunProfile> LongSection::profileOf(const Id& run) const {
  const ReviewedPtr reviewed = document_.reviewed();
  if (!reviewed) return std::nullopt;
  return runProfile(reviewed->review.plan, reviewed->review.study, document_.catalog(), run);
}

void LongSection::tell(const QString& text) {
  if (text == readOut_) return;
  readOut_ = text;
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

bool LongSection::mayChange(const SectionHandle& handle) {
  if (!isLocked(document_.plan(), handle.run)) return true;
  emit refused(tr("%1 is locked. Unlock it first.").arg(q(handle.run)));
  return false;
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
      beginLevel(*handle, event->position());
    } else {
      gesture_ = Gesture::Pick;
    }
  }
}

void LongSection::beginLevel(const SectionHandle& handle, QPointF) {
  const SectionHandle pressed = handle; // announcing may bring a new drawing
  setCurrent(pressed);
  if (pressed.held) {
    gesture_ = Gesture::None;
    tell(tr("%1 has its level from what it hangs on. Type one to give it its own.")
             .arg(handleName(document_.shown(), pressed)));
    return;
  }
  if (!mayChange(pressed)) return;
  gesture_ = Gesture::Level;
  catches_ = catchLevels(drawing_, pressed);
  draggedRun_ = profileOf(pressed.run);
}

void LongSection::mouseMoveEvent(QMouseEvent* event) {
  const QPointF at = event->position();
  if (gesture_ == Gesture::None) return hover(at);
  if (!moved_ && QLineF(at, pressedAt_).length() < kDragFrom) return;
  moved_ = true;
  if (gesture_ == Gesture::Level) {
    dragLevel(at, event->modifiers().testFlag(Qt::AltModifier));
    return;
  }
  fitted_ = false;
  view_.pan(at - panFrom_);
  panFrom_ = at;
  viewWasChanged();
}

void LongSection::dragLevel(QPointF at, bool loose) {
  const Length under = current_->invert + metres((pressedAt_.y() - at.y()) / pixelsPerMetreUp());
  dragged_ = loose ? under : neatLevel(under, pixelsPerMetreUp(), drawing_.units, catches_);
  document_.preview(setInvert(document_.plan(), current_->run, current_->vertex, dragged_));
  tell(handleName(document_.plan(), *current_) + "    " +
       levelReadOut(draggedRun_ ? &*draggedRun_ : nullptr, current_->vertex, *dragged_,
                    drawing_.units));
  update();
}

void LongSection::mouseReleaseEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton && event->button() != Qt::MiddleButton) return;
  const Gesture done = gesture_;
  if (done == Gesture::Level) return endLevel();
  gesture_ = Gesture::None;
  if (done == Gesture::Pick && !moved_) {
    const Id object = objectAt(event->position());
    if (!object.empty()) emit picked(object);
  }
}

void LongSection::endLevel() {
  gesture_ = Gesture::None;
  const std::optional<Length> level = dragged_;
  dragged_.reset();
  if (level && current_) commitLevel(*current_, level);
  update();
}

/// Leaves no trace of a drag.
void LongSection::giveUp() {
  const bool dragging = gesture_ == Gesture::Level;
  gesture_ = Gesture::None;
  dragged_.reset();
  shutEntry();
  if (dragging) document_.preview(std::nullopt);
  update();
}

void LongSection::commitLevel(const SectionHandle& handle, std::optional<Length> level) {
  const QString step = tr("Level of %1").arg(handleName(document_.plan(), handle));
  const auto problem =
      document_.commit(step, setInvert(document_.plan(), handle.run, handle.vertex, level));
  if (problem) emit refused(q(problem->what + ": " + problem->mend));
}

void LongSection::mouseDoubleClickEvent(QMouseEvent* event) {
  const SectionHandle* handle = handleAt(event->position());
  if (event->button() != Qt::LeftButton || handle == nullptr) return;
  giveUp();
  setCurrent(SectionHandle(*handle));
  openEntry(q(printElevation(handle->invert, drawing_.units)));
}

void LongSection::openEntry(const QString& text) {
  const SectionHandle* handle = current();
  if (handle == nullptr || !mayChange(*handle)) return;
  const std::vector<EntryField> fields{
      {EntryKey::Level, EntryUnit::Elevation,
       tr("Invert of %1").arg(handleName(document_.plan(), *handle)),
       tr("Inside bottom of the pipe, on the site's datum. Sums and units are read; empty gives "
          "the level back to straight grade or to what the end hangs on.")}};
  entry_->open(fields, drawing_.units, text, place(*handle).toPoint());
}

void LongSection::enterTyped() {
  const SectionHandle* handle = current();
  if (handle == nullptr) return shutEntry();
  const std::optional<double> typed = typedValue(entry_->values(), EntryKey::Level);
  const std::optional<Length> level = typed ? std::optional(metres(*typed)) : std::nullopt;
  const SectionHandle changed = *handle;
  const Run* run = document_.plan().runs.find(changed.run);
  if (!level && run != nullptr && !mayBeGraded(*run, changed.vertex))
    return entry_->complain(tr("This end needs a level: nothing that it hangs on gives one."));
  shutEntry();
  commitLevel(changed, level);
}

void LongSection::shutEntry() {
  if (!entry_->isVisible()) return;
  entry_->shut();
  setFocus();
}

void LongSection::nudge(int steps) {
  const SectionHandle* handle = current();
  if (handle == nullptr) return;
  if (handle->held)
    return tell(tr("%1 has its level from what it hangs on. Type one to give it its own.")
                    .arg(handleName(document_.plan(), *handle)));
  if (!mayChange(*handle)) return;
  const Length step = nudgeStep(drawing_.units);
  // From the plan's own level where the newest review is not there yet.
  const Run* run = document_.plan().runs.find(handle->run);
  const Length from =
      run == nullptr ? handle->invert : statedInvert(*run, handle->vertex).value_or(handle->invert);
  const double whole = std::round(inMetres(from) / inMetres(step));
  commitLevel(SectionHandle(*handle), (whole + steps) * step);
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
    if (key == Qt::Key_Escape && gesture_ == Gesture::Level) {
      event->accept();
      return true;
    }
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

void LongSection::leaveEvent(QEvent*) {
  if (gesture_ == Gesture::None) tell({});
}

void LongSection::focusOutEvent(QFocusEvent*) {
  update();
}

void LongSection::hover(QPointF at) {
  if (drawing_.empty() || !plot().contains(at)) return tell({});
  const SectionHandle* handle = handleAt(at);
  setCursor(handle == nullptr ? Qt::ArrowCursor
            : handle->held    ? Qt::PointingHandCursor
                              : Qt::SizeVerCursor);
  if (handle != nullptr) {
    const std::optional<RunProfile> run = profileOf(handle->run);
    return tell(
        handleName(document_.shown(), *handle) + "    " +
        levelReadOut(run ? &*run : nullptr, handle->vertex, handle->invert, drawing_.units));
  }
  const Point2 p = planePoint(at);
  QStringList parts{tr("at %1").arg(q(printRunLength(metres(p.x), drawing_.units))),
                    tr("level %1").arg(q(printElevation(plane_.level(p), drawing_.units)))};
  if (const auto ground = drawing_.groundAt(p.x)) {
    parts << tr("grade %1").arg(q(printElevation(*ground, drawing_.units)));
    if (plane_.level(p) < *ground)
      parts << tr("%1 deep").arg(q(printShort(*ground - plane_.level(p), drawing_.units)));
  }
  if (const Id object = objectAt(at); !object.empty()) parts << q(object);
  tell(parts.join("    "));
}

} // namespace sump
