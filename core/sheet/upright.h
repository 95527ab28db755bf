#pragma once
// Upright pages with a frame, shared by the calculation report and the operations sheets. Private
// to core/sheet.

#include "core/sheet/border.h"
#include "core/sheet/page.h"
#include "core/sheet/report_flow.h"

#include <string>
#include <vector>

namespace sump {

/// Letter or A4, upright; `key` empty: what goes with the units. Throws std::invalid_argument for
/// another.
const PaperSize& uprightPaper(const std::string& key, UnitSystem units);

/// Adds a framed page and returns where text may stand: above the title block on a cover, above a
/// title strip else.
PaperBox turnUpright(std::vector<Page>& pages, const std::string& title, const PaperSize& paper,
                     bool cover);

/// A ruled heading across the page.
FlowPiece uprightHeading(const std::string& text, double width);

} // namespace sump
