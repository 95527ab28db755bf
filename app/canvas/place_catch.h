#pragma once
// The place on an object that the pointer means: for the measuring tape, dimension notes and the
// two points of a site picture.

#include "app/canvas/tools/tool.h"

#include <optional>

namespace sump {

struct PlaceCatch {
  Id object; ///< empty: a place on the site
  Point2 at; ///< site
  QString name;
  Snapped snapped = {}; ///< what the pointer caught, if anything
  bool caught() const { return !object.empty(); }
};

/// What every tool catches; with `last`, the place before, also squarely and in line with it.
PlaceCatch catchPlace(const ToolHost& host, const Pointer& pointer,
                      std::optional<Point2> last = std::nullopt);

/// The mark of what was caught with its name beside it.
void paintPlace(Overlay& overlay, const PlaceCatch& place);

} // namespace sump
