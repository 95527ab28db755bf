#include "app/window/beside_pictures.h"

#include <QDir>
#include <QFileInfo>

namespace sump {

Plan withPicturesFrom(const Plan& plan, const QString& from, const QString& to) {
  Plan next = plan;
  const QDir before = QFileInfo(from).absoluteDir(), after = QFileInfo(to).absoluteDir();
  if (!from.isEmpty() && !to.isEmpty() && before == after) return next;
  for (const Underlay& underlay : plan.underlays) {
    if (underlay.file.empty()) continue;
    const QString name = QString::fromStdString(underlay.file);
    if (from.isEmpty() && QDir::isRelativePath(name)) continue; // from nowhere: left as it is
    const QString full = QDir::cleanPath(before.absoluteFilePath(name));
    Underlay moved = underlay;
    moved.file = (to.isEmpty() ? full : after.relativeFilePath(full)).toStdString();
    next.underlays.put(std::move(moved));
  }
  return next;
}

} // namespace sump
