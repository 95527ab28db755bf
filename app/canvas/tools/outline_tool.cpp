#include "app/canvas/tools/outline_tool.h"

#include "app/canvas/live_dimensions.h"

#include "core/geometry/polygon.h"

namespace sump {

namespace {

constexpr double kClosePixels = 10;
constexpr double kSame = 1e-6; // metres

Ring rectangleBetween(Point2 a, Point2 b) {
  return {a, {b.x, a.y}, b, {a.x, b.y}};
}

} // namespace

bool OutlineTool::asRectangle(Qt::KeyboardModifiers modifiers) const {
  return what_.closed && corners_.size() == 1 &&
         (rectangles_ || modifiers.testFlag(Qt::ControlModifier));
}

AimFrom OutlineTool::from() const {
  AimFrom from;
  if (!corners_.empty()) from.last = corners_.back();
  if (corners_.size() > 1) from.beforeLast = corners_[corners_.size() - 2];
  return from;
}

bool OutlineTool::closesAt(Point2 at) const {
  return what_.closed && corners_.size() >= least() &&
         distance(at, corners_.front()) * host().view().scale() <= kClosePixels;
}

Snapped OutlineTool::aimed(const Pointer& pointer) const {
  const std::optional<double> east = typedValue(typed_, EntryKey::SizeEast);
  const std::optional<double> north = typedValue(typed_, EntryKey::SizeNorth);
  Snapped found = aim(host(), pointer, from(), typedPoint(typed_, host().plan().site.north));
  // The outline's own first corner, which no plan has yet.
  if (typed_.empty() && closesAt(pointer.site)) return {corners_.front(), SnapKind::End, {}, {}};
  if (corners_.empty()) return found;
  if (east) found.at.x = corners_.back().x + *east;
  if (north) found.at.y = corners_.back().y + *north;
  return found;
}

void OutlineTool::press(const Pointer& pointer) {
  pointer_ = pointer;
  take(aimed(pointer).at, asRectangle(pointer.modifiers));
}

void OutlineTool::move(const Pointer& pointer) {
  pointer_ = pointer;
  now_ = aimed(pointer);
  host().refresh();
}

void OutlineTool::take(Point2 at, bool rectangle) {
  if (rectangle) {
    if (at.x == corners_.front().x || at.y == corners_.front().y) return;
    corners_ = rectangleBetween(corners_.front(), at);
    return finish();
  }
  if (corners_.size() >= least() && what_.closed && distance(at, corners_.front()) < kSame)
    return finish();
  if (corners_.empty() || distance(at, corners_.back()) > kSame) corners_.push_back(at);
  typed_.clear();
  now_.reset();
  host().refresh();
}

void OutlineTool::doubleClick(const Pointer&) {
  // The first of the two clicks has set the last corner.
  if (corners_.size() >= least()) finish();
}

bool OutlineTool::key(int key, Qt::KeyboardModifiers) {
  if (key == Qt::Key_R && what_.closed) {
    rectangles_ = !rectangles_;
    return true;
  }
  if (corners_.empty()) return false;
  switch (key) {
  case Qt::Key_Escape:
    cancel();
    return true;
  case Qt::Key_Backspace:
    corners_.pop_back();
    return true;
  case Qt::Key_Return:
  case Qt::Key_Enter:
    if (corners_.size() >= least()) finish();
    return true;
  default:
    return false;
  }
}

std::vector<EntryField> OutlineTool::entryFields() const {
  if (!rectangles_ || corners_.size() != 1) return placeFields(!corners_.empty());
  return {{EntryKey::SizeEast, EntryUnit::Length, toolText("Eastward"),
           toolText("Length from the first corner; negative goes west")},
          {EntryKey::SizeNorth, EntryUnit::Length, toolText("Northward"),
           toolText("Length from the first corner; negative goes south")}};
}

std::vector<Polyline> OutlineTool::underWay() const {
  if (!now_) return {corners_};
  if (!corners_.empty() && asRectangle(pointer_.modifiers)) {
    Polyline box = rectangleBetween(corners_.front(), now_->at);
    box.push_back(box.front());
    return {box, Polyline{now_->at}};
  }
  Polyline line = corners_;
  line.push_back(now_->at);
  return {line};
}

void OutlineTool::typing(const Entry& entry) {
  typed_ = entry;
  now_ = aimed(pointer_);
  host().refresh();
}

bool OutlineTool::enter(const Entry& entry, Qt::KeyboardModifiers modifiers) {
  if (!typedPoint(entry, host().plan().site.north).empty()) {
    const auto last = from().last;
    if (!placeOf(typedPoint(entry, host().plan().site.north), last, pointer_.site)) return false;
  }
  typed_ = entry;
  take(aimed(pointer_).at, asRectangle(modifiers));
  return true;
}

void OutlineTool::finish() {
  Id made;
  Plan next = what_.make(host(), kind_, corners_, made);
  if (!host().commit(what_.step, std::move(next))) return;
  cancel();
  host().select(made.empty() ? std::set<Id>() : std::set<Id>{made});
}

void OutlineTool::cancel() {
  corners_.clear();
  typed_.clear();
  now_.reset();
  host().refresh();
}

void OutlineTool::paint(Overlay& overlay) const {
  QPainter& painter = overlay.painter();
  const CanvasTheme& theme = overlay.theme();
  const View& view = host().view();
  const UnitSystem units = host().plan().project.units;
  painter.setBrush(Qt::NoBrush);
  if (!corners_.empty() && now_) {
    painter.setPen(QPen(theme.accent, 1.4, Qt::DashLine));
    if (asRectangle(pointer_.modifiers)) {
      const Ring box = rectangleBetween(corners_.front(), now_->at);
      painter.drawPolygon(view.toScreen(box));
      paintDimension(overlay, box[0], box[1], units);
      paintDimension(overlay, box[1], box[2], units);
    } else {
      painter.drawLine(view.toScreen(corners_.back()), view.toScreen(now_->at));
      if (what_.closed && corners_.size() > 1) {
        painter.setPen(QPen(theme.accent, 0.8, Qt::DotLine));
        painter.drawLine(view.toScreen(now_->at), view.toScreen(corners_.front()));
      }
      paintLegDimensions(overlay, corners_.back(), now_->at, host().plan());
    }
  }
  painter.setPen(QPen(theme.accent, 2));
  painter.setBrush(Qt::NoBrush);
  painter.drawPolyline(view.toScreen(corners_));
  painter.setBrush(theme.accent);
  painter.setPen(Qt::NoPen);
  for (Point2 p : corners_)
    painter.drawEllipse(view.toScreen(p), 3.5, 3.5);
  if (now_) paintSnap(overlay, *now_, snapWords(host().plan(), *now_));
}

QString OutlineTool::hint() const {
  if (corners_.empty()) {
    return toolText("Click the first corner of %1, or type its place.").arg(what_.name) +
           (what_.closed ? " " + toolText("R: rectangle or corner by corner.") : QString()) + " " +
           toolText("Alt: no catching. Esc ends it.");
  }
  if (corners_.size() == 1 && rectangles_)
    return toolText("Click the opposite corner, or type how far east and north it is. Esc gives "
                    "it up.");
  const QString end = what_.closed ? toolText("Enter or the first corner closes it.")
                                   : toolText("Enter or a double click ends it.");
  const QString box = what_.closed && corners_.size() == 1
                          ? " " + toolText("Ctrl: the opposite corner of a rectangle.")
                          : QString();
  return toolText("Click corners, or type length and bearing.") + " " + end + box + " " +
         toolText(
             "Shift: straight or 45°. Alt: no catching. Backspace: one back. Esc gives it up.");
}

std::vector<Choice> OutlineTool::choices() const {
  std::vector<Choice> all;
  if (!what_.kindLabel.isEmpty()) all.push_back({what_.kindLabel, what_.kinds, kind_, {}});
  if (what_.closed) {
    all.push_back({toolText("Shape"),
                   {toolText("Corner by corner"), toolText("Rectangle")},
                   rectangles_ ? 1 : 0,
                   toolText("R changes it; Ctrl makes a rectangle this once")});
  }
  return all;
}

void OutlineTool::choose(std::size_t choice, int item) {
  if (choice == 0 && !what_.kindLabel.isEmpty()) {
    kind_ = item;
  } else {
    rectangles_ = item == 1;
  }
  host().refresh();
}

} // namespace sump
