#pragma once
// Puts the section's texts where they cover neither each other nor a handle: beside what they are
// about, else staggered farther off with a leader; what finds no room is left out, the least
// weighty first.

#include "app/canvas/theme.h"
#include "core/sheet/section_marks.h"

#include <QFont>
#include <QLineF>
#include <QPainter>
#include <QRectF>

#include <functional>
#include <optional>
#include <vector>

namespace sump {

struct PlacedNote {
  SectionNote note;
  QRectF box;
  std::optional<QLineF> leader; ///< from the box to what it is about
};

/// Where a station and a level stand on the screen.
using ToPixel = std::function<QPointF(double station, Length level)>;

/// `notes` by weight; all boxes stay inside `area` and off `taken`.
std::vector<PlacedNote> placeNotes(const std::vector<SectionNote>& notes, const ToPixel& toPixel,
                                   const QRectF& area, std::vector<QRectF> taken,
                                   const QFont& font);

void paintSectionNotes(QPainter& painter, const std::vector<PlacedNote>& notes,
                       const CanvasTheme& theme);

/// The font of the section's texts.
QFont noteFont(QFont font);

} // namespace sump
