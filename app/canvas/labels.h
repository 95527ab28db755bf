#pragma once
// Names on the drawing in constant, readable text: inside what they name or close beside it, with a
// leader where they might be taken for another thing's. What would cover another label, a mark or
// a line of the drawing is left out until there is room; vaults and rooms go first.

#include "app/canvas/label_places.h"
#include "app/canvas/scene.h"
#include "app/canvas/theme.h"
#include "app/canvas/view.h"

#include <QPainter>
#include <QString>

#include <optional>
#include <set>
#include <vector>

namespace sump {

class DrawnLines;

struct Label {
  Id object;
  QString text;
  QPointF centre;   ///< screen
  double angle = 0; ///< degrees, counter-clockwise, within -90..90
  double size = 12; ///< pixels
  bool bold = false;
  std::optional<Ink> ink{};       ///< of the service; otherwise the theme's text
  std::optional<QLineF> leader{}; ///< from the text to what it names
  std::optional<QPointF> point{}; ///< that it is about, marked over all that is drawn there
  QPolygonF box{};                ///< that it takes; empty until it is placed
};

/// How far a name may stand from what it names, pixels; from `kLeaderFrom` on by a leader.
inline constexpr double kFarthestName = 40, kLeaderFrom = 13;

/// What labels keep off.
struct LabelRoom {
  QRectF scaleBar;
  std::vector<QRectF> marks{};       ///< handles and signs of findings
  bool names = true;                 ///< else dimension notes only
  const DrawnLines* lines = nullptr; ///< of the same scene and view, where they are known
};

/// While things move, names do not: they stand where they stood before as long as they can.
struct LabelsBefore {
  std::vector<Label> standing; ///< what they are about has not changed, nor what is drawn there
  std::set<Id> anew;           ///< whose names are looked for; all others have none
};

/// The labels that fit, in order of weight; `before`: in this view.
std::vector<Label> placeLabels(const Scene& scene, const View& view, const QFont& font,
                               const LabelRoom& room = {}, const LabelsBefore* before = nullptr);
void paintLabels(QPainter& painter, const std::vector<Label>& labels, const CanvasTheme& theme);
/// What the object is called in full, for when its name has no room on the drawing.
QString fullName(const Scene& scene, const Id& object);
/// The label's box on the screen, turned with it.
QPolygonF labelBox(const Label& label, const QFont& font);

} // namespace sump
