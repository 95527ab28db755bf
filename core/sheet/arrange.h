#pragma once
// Which views a sheet shows, at what scales, and where. Private to core/sheet.

#include "core/sheet/view.h"

#include <optional>
#include <vector>

namespace sump {

/// What there is to show, in site metres.
struct Extents {
  PaperBox site;
  std::optional<PaperBox> tankage; ///< vaults and rooms; none: no vaults
  std::vector<PaperBox> beside{};  ///< drains and wash equipment, each
};

Extents extents(const Plan& plan, const std::vector<Mark>& marks);

/// One view of the site, or the site beside an enlarged view of the tankage where that gives the
/// tankage a clearly larger scale. `scale` 0: the largest standard ones that fit; else one view at
/// that scale, about the tankage if the site does not fit.
std::vector<SheetView> arrangeViews(const Extents& extents, const PaperBox& region,
                                    UnitSystem units, double scale);

} // namespace sump
