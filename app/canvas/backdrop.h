#pragma once
// What lies below the selection on the drawing: paper, pictures, grid and the marks of the scene.
// Kept as a picture of the screen, of which a drag repaints only what changed.

#include "app/canvas/scene.h"
#include "app/canvas/theme.h"
#include "app/canvas/underlay.h"
#include "app/canvas/view.h"

#include <QPainter>
#include <QPixmap>
#include <QRegion>

#include <functional>
#include <optional>
#include <set>
#include <vector>

namespace sump {

struct SceneChanges {
  std::vector<Box> boxes; ///< of the marks that came, went or moved, site metres
  std::set<Id> objects;   ///< theirs
};
/// How the drawings of two scenes differ; nothing when they differ too much to say.
std::optional<SceneChanges> changesBetween(const Scene& before, const Scene& after);

class Backdrop {
public:
  /// Paints all that touches the painter's clip region, which lies in `region` (device independent
  /// pixels).
  using Paint = std::function<void(QPainter& painter, const QRegion& region)>;

  /// All of it is to be painted anew.
  void forget() { whole_ = true; }
  /// Of these places only; `view` is the one that it was painted for.
  void forget(const std::vector<Box>& boxes, const View& view);
  /// What it looks like apart from the scene. Pictures are not compared: with any it is painted
  /// anew each time.
  struct Look {
    UnitSystem units = UnitSystem::UsCustomary; ///< of the grid
    bool pictures = false;
  };
  /// Brought up to date for a surface of this size and ratio of device pixels.
  const QPixmap& picture(QSize size, double ratio, const Look& look, const Paint& paint);

private:
  QPixmap picture_;
  Look look_;
  QRegion stale_;
  bool whole_ = true;
};

/// The scene's marks that touch a region of the screen.
void paintScene(QPainter& painter, const View& view, const Scene& scene, const CanvasTheme& theme,
                const QRegion& region);

} // namespace sump
