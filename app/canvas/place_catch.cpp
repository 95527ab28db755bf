#include "app/canvas/place_catch.h"

#include "app/canvas/tools/aim.h"

namespace sump {

namespace {

QString named(const Id& id, SnapKind kind) {
  const char* what = nullptr;
  switch (kind) {
  case SnapKind::End:
    what = QT_TRANSLATE_NOOP("Tools", "%1, corner");
    break;
  case SnapKind::Middle:
    what = QT_TRANSLATE_NOOP("Tools", "%1, middle");
    break;
  case SnapKind::Centre:
    what = QT_TRANSLATE_NOOP("Tools", "%1, centre");
    break;
  case SnapKind::Crossing:
    what = QT_TRANSLATE_NOOP("Tools", "%1, crossing");
    break;
  case SnapKind::Perpendicular:
    what = QT_TRANSLATE_NOOP("Tools", "%1, square to it");
    break;
  case SnapKind::Face:
    what = QT_TRANSLATE_NOOP("Tools", "%1, edge");
    break;
  case SnapKind::None:
  case SnapKind::Grid:
  case SnapKind::Aligned:
    return {};
  }
  return toolText(what).arg(QString::fromStdString(id));
}

} // namespace

PlaceCatch catchPlace(const ToolHost& host, const Pointer& pointer, std::optional<Point2> last) {
  AimFrom from;
  from.last = last;
  const Snapped found = aim(host, pointer, from);
  PlaceCatch place{{}, found.at, {}, found};
  if (found.owner.empty()) return place;
  place.name = named(found.owner, found.kind);
  if (!place.name.isEmpty()) place.object = found.owner;
  return place;
}

void paintPlace(Overlay& overlay, const PlaceCatch& place) {
  Snapped mark = place.snapped;
  mark.at = place.at;
  paintSnap(overlay, mark, false);
  if (!place.name.isEmpty()) overlay.plate(overlay.view().toScreen(place.at), {place.name});
}

} // namespace sump
