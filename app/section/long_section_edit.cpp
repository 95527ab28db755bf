// How drags, arrow keys and typed levels of the long section become edits.

#include "app/core_text.h"
#include "app/plain_text.h"
#include "app/section/level_steps.h"
#include "app/section/long_section.h"
#include "core/plan/edits_group.h"
#include "core/plan/edits_levels.h"
#include "core/units/print.h"

#include <algorithm>
#include <cmath>

namespace sump {

bool LongSection::mayChange(const Id& run) {
  if (!isLocked(document_.plan(), run)) return true;
  emit refused(tr("%1 is locked. Unlock it first.").arg(q(run)));
  return false;
}

void LongSection::beginLevel(const SectionHandle& handle) {
  const SectionHandle pressed = handle; // announcing may bring a new drawing
  setCurrent(pressed);
  if (pressed.held) {
    gesture_ = Gesture::None;
    tell(tr("%1 has its level from what it hangs on. Type one to give it its own.")
             .arg(handleName(document_.shown(), pressed)));
    return;
  }
  if (!mayChange(pressed.run)) return;
  gesture_ = Gesture::Level;
  catches_ = catchLevels(drawing_, pressed);
  draggedRun_ = profileOf(pressed.run);
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

void LongSection::endLevel() {
  gesture_ = Gesture::None;
  const std::optional<Length> level = dragged_;
  dragged_.reset();
  if (level && current_) commitLevel(*current_, level);
  update();
}

/// All stated levels of the line together; what its ends hang on stays.
void LongSection::dragLine(QPointF at, bool loose) {
  const Length under = metres((pressedAt_.y() - at.y()) / pixelsPerMetreUp());
  shift_ = loose ? under : neatLevel(under, pixelsPerMetreUp(), drawing_.units, {});
  document_.preview(shiftInverts(document_.plan(), run_, shift_));
  const bool down = shift_ < metres(0);
  const QString by = q(printShort(down ? -shift_ : shift_, drawing_.units));
  tell((down ? tr("%1 lower by %2") : tr("%1 higher by %2")).arg(q(run_), by));
}

void LongSection::endLine() {
  gesture_ = Gesture::None;
  const auto problem = document_.commit(tr("Height of %1").arg(q(run_)),
                                        shiftInverts(document_.plan(), run_, shift_));
  if (problem) emit refused(problemWords(*problem));
}

/// Undo and the like end a drag from outside.
void LongSection::planChanged() {
  if (!dragging() || !moved_ || document_.isPreviewing()) return;
  gesture_ = Gesture::None;
  dragged_.reset();
  update();
}

/// Leaves no trace of a drag.
void LongSection::giveUp() {
  const bool dragging = this->dragging();
  gesture_ = Gesture::None;
  dragged_.reset();
  shutEntry();
  if (dragging) document_.preview(std::nullopt);
  update();
}

/// By value: what the handle was read from may change with the plan.
void LongSection::commitLevel(SectionHandle handle, std::optional<Length> level) { // NOLINT
  const QString step = tr("Level of %1").arg(handleName(document_.plan(), handle));
  const auto problem =
      document_.commit(step, setInvert(document_.plan(), handle.run, handle.vertex, level));
  if (problem) emit refused(problemWords(*problem));
}

void LongSection::openEntry(const QString& text) {
  const SectionHandle* handle = current();
  if (handle == nullptr || !mayChange(handle->run)) return;
  const std::vector<EntryField> fields{
      {EntryKey::Level, EntryUnit::Elevation,
       tr("Invert of %1").arg(handleName(document_.plan(), *handle)),
       tr("Inside bottom of the pipe, on the site's datum. Sums and units are read; empty gives "
          "the level back to straight grade or to what the end hangs on.")}};
  entry_->open(fields, drawing_.units, text, [this] { return entryPlace(); });
  update(); // texts make room for it
}

/// Beside the handle and off the gutters; the line whose level is typed stays in sight, and so does
/// what else stands there where there is room.
EntryPlace LongSection::entryPlace() const {
  const SectionHandle* handle = current();
  if (handle == nullptr) return {};
  EntryPlace wanted{place(*handle)};
  if (drawing_.line) {
    for (std::size_t i = 1; i < drawing_.handles.size(); ++i)
      wanted.lines.emplace_back(place(drawing_.handles[i - 1]), place(drawing_.handles[i]));
  }
  const QRectF area = plot(), all(rect());
  wanted.boxes.emplace_back(all.topLeft(), QPointF(area.left(), all.bottom()));
  wanted.boxes.emplace_back(QPointF(all.left(), area.bottom()), all.bottomRight());
  for (const PlacedNote& placed : texts_.placed)
    wanted.names.emplace_back(placed.box);
  for (const QPolygonF& shape : drawnShapes())
    wanted.names.push_back(shape);
  return wanted;
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
  update();
}

void LongSection::nudge(int steps) {
  const SectionHandle* handle = current();
  if (handle == nullptr) return;
  if (handle->held)
    return tell(tr("%1 has its level from what it hangs on. Type one to give it its own.")
                    .arg(handleName(document_.plan(), *handle)));
  if (!mayChange(handle->run)) return;
  const Length step = nudgeStep(drawing_.units);
  // From the plan's own level where the newest review is not there yet.
  const Run* run = document_.plan().runs.find(handle->run);
  const Length from =
      run == nullptr ? handle->invert : statedInvert(*run, handle->vertex).value_or(handle->invert);
  const double whole = std::round(inMetres(from) / inMetres(step));
  commitLevel(SectionHandle(*handle), (whole + steps) * step);
}

} // namespace sump
