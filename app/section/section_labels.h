#pragma once
// Puts the section's texts where they cover neither each other nor a handle nor a line, close to
// what they are about: beside it, else a little farther off with a leader, else in brief. What
// finds no room there is left out, the least weighty first, and told when one points at the thing.

#include "app/canvas/theme.h"
#include "core/sheet/section_marks.h"

#include <QFont>
#include <QLineF>
#include <QPainter>
#include <QPolygonF>
#include <QRectF>

#include <functional>
#include <optional>
#include <set>
#include <vector>

namespace sump {

/// No text stands farther than this from what it is about, pixels.
inline constexpr double kFarthestNote = 30;

struct PlacedNote {
  SectionNote note;
  QString text; ///< the note's own or its brief one
  QRectF box;
  QPointF anchor;               ///< what it is about
  std::optional<QLineF> leader; ///< from the box to the anchor
};

struct SectionTexts {
  std::vector<PlacedNote> placed;
  /// What is told in brief or not at all, though what it is about is in sight.
  std::vector<std::pair<SectionNote, QPointF>> untold;
};

/// Where a station and a level stand on the screen.
using ToPixel = std::function<QPointF(double station, Length level)>;

/// Where texts may stand.
struct SectionRoom {
  QRectF area;
  std::vector<QRectF> taken{};    ///< handles and flags
  std::vector<QPolygonF> drawn{}; ///< lines and symbols, which leaders may cross
};

/// `notes` by weight, those of `first` before all others. What stands at a place already is not
/// told there again.
SectionTexts placeNotes(const std::vector<SectionNote>& notes, const std::set<Id>& first,
                        const ToPixel& toPixel, const SectionRoom& room, const QFont& font);

void paintSectionNotes(QPainter& painter, const std::vector<PlacedNote>& notes,
                       const CanvasTheme& theme);

/// The font of the section's texts.
QFont noteFont(QFont font);

} // namespace sump
