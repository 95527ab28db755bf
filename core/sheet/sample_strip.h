#pragma once
// A legend's lines: a sample and what it means. Private to core/sheet.

#include "core/sheet/block.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

/// A box as large as a legend's sample, drawn as things of that kind are.
std::vector<PageItem> sampleBox(const LineStyle& line, std::optional<FillStyle> fill);

/// The sample, 16 mm wide and up to 5 mm high from the strip's top left corner, with its text.
PaperStrip sampleStrip(std::vector<PageItem> sample, const std::string& text);

/// Two to a line of a block of this width.
void addInPairs(std::vector<PaperStrip> strips, double width, Block& block);

} // namespace sump
