// What the long section says about what is under the pointer or taken by the keyboard.

#include "app/plain_text.h"
#include "app/section/level_steps.h"
#include "app/section/long_section.h"
#include "core/units/print.h"

#include <QAccessible>
#include <QLineF>

namespace sump {

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

QString LongSection::untoldAt(QPointF pixel) const {
  constexpr double kNear = 12;
  const Id object = objectAt(pixel);
  QStringList lines;
  for (const auto& [note, anchor] : texts_.untold) {
    const bool near = QLineF(anchor, pixel).length() <= kNear;
    if (!near && (object.empty() || note.object != object)) continue;
    const QString where = note.where.empty() ? QString() : q(" (" + note.where + ")");
    lines << q(note.text) + where;
  }
  return lines.join('\n');
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
