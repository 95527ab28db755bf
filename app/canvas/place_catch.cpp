#include "app/canvas/place_catch.h"

#include "app/canvas/tools/aim.h"

namespace sump {

PlaceCatch catchPlace(const ToolHost& host, const Pointer& pointer, std::optional<Point2> last) {
  AimFrom from;
  from.last = last;
  const Snapped found = aim(host, pointer, from);
  PlaceCatch place{{}, found.at, {}, found};
  if (found.owner.empty()) return place;
  Snapped thing = found;
  thing.guides.clear(); // what it is in line with is no part of its name
  place.name = snapWords(host.plan(), thing);
  if (!place.name.isEmpty()) place.object = found.owner;
  return place;
}

void paintPlace(Overlay& overlay, const PlaceCatch& place) {
  Snapped mark = place.snapped;
  mark.at = place.at;
  paintSnap(overlay, mark);
  if (!place.name.isEmpty()) overlay.plate(overlay.view().toScreen(place.at), {place.name});
}

} // namespace sump
