#include "core/sheet/sample_strip.h"

namespace sump {

std::vector<PageItem> sampleBox(const LineStyle& line, std::optional<FillStyle> fill) {
  return {PageShape{{{2, 0.8}, {14, 0.8}, {14, 4.8}, {2, 4.8}}, true, false, line, fill}};
}

PaperStrip sampleStrip(std::vector<PageItem> sample, const std::string& text) {
  PaperStrip strip{5.8, std::move(sample)};
  strip.items.push_back(words({18, 4.0}, text));
  return strip;
}

} // namespace sump
