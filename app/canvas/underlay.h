#pragma once
// Site pictures below the drawing: read once, kept as pixmaps, painted at their strength.

#include "app/canvas/theme.h"
#include "app/canvas/view.h"

#include "core/plan/plan.h"

#include <QPainter>
#include <QPixmap>

#include <map>
#include <set>

namespace sump {

/// Largest picture file that is taken in.
inline constexpr qint64 kLargestPicture = qint64{30} << 20;

/// A picture file that can be used, or why not.
struct PictureFile {
  QByteArray bytes;
  QString media; ///< `image/png`, `image/jpeg`, `image/svg+xml`; empty: not usable
  QSizeF shape;  ///< width and height in any unit
  QString error;
};
/// What is wrong is told with the file's name and how to mend it.
PictureFile readPicture(const QString& path);
/// The same for bytes that are at hand.
PictureFile checkPicture(const QByteArray& bytes, const QString& name);

class UnderlayPainter {
public:
  /// Those that the plan shows. `folder` is where pictures beside the plan are looked for.
  void paint(QPainter& painter, const View& view, const Plan& plan, const QString& folder,
             const CanvasTheme& theme);
  /// How often a picture was decoded; for tests of the cache.
  int decoded() const { return decoded_; }

private:
  struct Kept {
    QString source; ///< what it was made from
    QPixmap pixmap; ///< null when it cannot be read
    QString error;
  };
  const Kept& picture(const Underlay& underlay, const QString& folder);
  Kept decode(const Underlay& underlay, const QString& folder);

  std::map<Id, Kept> kept_;
  int decoded_ = 0;
};

/// Their edges, over the grid.
void paintSelectedPictures(QPainter& painter, const View& view, const Plan& plan,
                           const std::set<Id>& selection, const CanvasTheme& theme);

} // namespace sump
