#include "app/canvas/tools/place_tool.h"

#include "app/canvas/live_dimensions.h"

#include "core/units/print.h"

#include <cmath>

namespace sump {

namespace {

constexpr double kTurnPixels = 18; ///< a drag this long turns what is placed
constexpr double kFine = kPi / 12; ///< 15 degrees

double full(double angle) {
  const double turned = std::remainder(angle, 2 * kPi);
  return std::abs(turned) < 1e-12 ? 0 : turned;
}

/// 0 to 3 for east, north, west and south; 4 for any other direction.
int quarterOf(double angle) {
  for (int q = 0; q < 4; ++q) {
    if (std::abs(full(angle - q * kPi / 2)) < 1e-9) return q;
  }
  return 4;
}

} // namespace

Placing PlaceTool::placing(Point2 at) const {
  Entry typed = sizes_;
  for (const auto& [key, value] : typed_)
    typed[key] = value;
  return {model_, at, radians(typedValue(typed_, EntryKey::Angle).value_or(angle_)), typed};
}

void PlaceTool::press(const Pointer& pointer) {
  pointer_ = pointer;
  now_ = aim(host(), pointer, {}, typedPoint(typed_, host().plan().site.north));
  pressed_ = now_->at;
}

void PlaceTool::move(const Pointer& pointer) {
  pointer_ = pointer;
  if (pressed_ && what_.turns) {
    turnTowards(pointer);
  } else if (!pressed_) {
    now_ = aim(host(), pointer, {}, typedPoint(typed_, host().plan().site.north));
  }
  host().refresh();
}

void PlaceTool::turnTowards(const Pointer& pointer) {
  const Point2 d = pointer.site - *pressed_;
  if (norm(d) * host().view().scale() < kTurnPixels) return;
  const double angle = std::atan2(d.y, d.x);
  const bool loose = pointer.modifiers.testFlag(Qt::AltModifier);
  angle_ = full(loose ? angle : std::round(angle / kFine) * kFine);
}

void PlaceTool::release(const Pointer&) {
  if (!pressed_) return;
  const Point2 at = *pressed_;
  pressed_.reset();
  place(at);
}

bool PlaceTool::place(Point2 at) {
  const Placing how = placing(at);
  angle_ = full(inRadians(how.angle));
  for (EntryKey key : {EntryKey::Long, EntryKey::Wide}) {
    if (const auto typed = typedValue(typed_, key)) sizes_[key] = *typed;
  }
  Id made;
  Plan next = what_.make(host(), how, made);
  typed_.clear();
  if (!host().commit(what_.step, std::move(next))) return false;
  host().select({made});
  return true;
}

bool PlaceTool::key(int key, Qt::KeyboardModifiers modifiers) {
  if (key == Qt::Key_Escape && pressed_) {
    cancel();
    return true;
  }
  if (key != Qt::Key_T || !what_.turns) return false;
  const double by = modifiers.testFlag(Qt::ShiftModifier) ? kFine : kPi / 2;
  angle_ = full(angle_ + by);
  return true;
}

std::vector<EntryField> PlaceTool::entryFields() const {
  std::vector<EntryField> fields = placeFields(false);
  if (what_.turns) {
    fields.push_back({EntryKey::Angle, EntryUnit::Angle, toolText("Angle"),
                      toolText("Counter-clockwise from east")});
  }
  std::vector<EntryField> more = what_.fields;
  if (model_ == what_.ownSizesModel) {
    more.push_back({EntryKey::Long, EntryUnit::Length, toolText("Length"), toolText("Outside")});
    more.push_back({EntryKey::Wide, EntryUnit::Length, toolText("Width"), toolText("Outside")});
  }
  fields.insert(what_.levelFirst ? fields.begin() : fields.end(), more.begin(), more.end());
  return fields;
}

std::vector<Polyline> PlaceTool::underWay() const {
  if (!now_) return {};
  const Point2 at = pressed_.value_or(now_->at);
  Polyline ghost = what_.ghost(host(), placing(at));
  if (!ghost.empty()) ghost.push_back(ghost.front());
  return {ghost, Polyline{at}};
}

void PlaceTool::typing(const Entry& entry) {
  typed_ = entry;
  now_ = aim(host(), pointer_, {}, typedPoint(typed_, host().plan().site.north));
  host().refresh();
}

bool PlaceTool::enter(const Entry& entry, Qt::KeyboardModifiers) {
  typed_ = entry;
  const Point2 at = aim(host(), pointer_, {}, typedPoint(typed_, host().plan().site.north)).at;
  return place(at);
}

void PlaceTool::cancel() {
  now_.reset();
  pressed_.reset();
  typed_.clear();
  host().refresh();
}

void PlaceTool::paint(Overlay& overlay) const {
  QPainter& painter = overlay.painter();
  const CanvasTheme& theme = overlay.theme();
  if (!now_) return;
  const View& view = host().view();
  const Point2 at = pressed_.value_or(now_->at);
  const Placing how = placing(at);
  const Ring ghost = what_.ghost(host(), how);
  QColor fill = theme.accent;
  fill.setAlpha(40);
  painter.setPen(QPen(theme.accent, 1.5));
  painter.setBrush(fill);
  if (!ghost.empty()) painter.drawPolygon(view.toScreen(ghost));
  if (what_.turns && ghost.size() == 4) {
    // The side that it faces: the far end of its local x.
    const Point2 middle = lerp(ghost[0], ghost[2], 0.5), front = lerp(ghost[1], ghost[2], 0.5);
    painter.drawLine(view.toScreen(middle), view.toScreen(front));
    painter.setBrush(theme.accent);
    painter.drawEllipse(view.toScreen(front), 4, 4);
    if (pressed_ || quarterOf(inRadians(how.angle)) == 4) {
      overlay.tag(view.toScreen(middle), QString::fromStdString(printAngle(how.angle)),
                  QPointF(0, 16));
    }
  }
  if (!pressed_) paintSnap(overlay, *now_, snapWords(host().plan(), *now_));
}

QString PlaceTool::hint() const {
  if (pressed_) return toolText("Drag to turn it; release to place it. Esc gives it up.");
  return what_.hint + " " +
         toolText("Digits type place, level and sizes. Alt: no catching. Esc ends it.");
}

std::vector<Choice> PlaceTool::choices() const {
  std::vector<Choice> all;
  if (!what_.modelLabel.isEmpty()) {
    QStringList names(what_.models.begin(), what_.models.end());
    all.push_back({what_.modelLabel, names, model_, toolText("What is placed at the next click")});
  }
  if (what_.turns) {
    QStringList ways = {toolText("East"), toolText("North"), toolText("West"), toolText("South")};
    const int quarter = quarterOf(angle_);
    if (quarter == 4) ways << QString::fromStdString(printAngle(radians(angle_)));
    all.push_back({toolText("Facing"), ways, quarter,
                   toolText("Which way its length points; a vault flows that way. T turns it, "
                            "Shift+T by 15°; a drag while placing or a typed angle gives any "
                            "other.")});
  }
  return all;
}

void PlaceTool::choose(std::size_t choice, int item) {
  if (choice == 0 && !what_.modelLabel.isEmpty()) {
    model_ = item;
  } else if (item < 4) {
    angle_ = full(item * kPi / 2);
  }
  host().refresh();
}

} // namespace sump
