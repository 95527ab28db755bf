#include "core/sheet/sample_strip.h"

#include <algorithm>
#include <utility>

namespace sump {

std::vector<PageItem> sampleBox(const LineStyle& line, std::optional<FillStyle> fill) {
  return {PageShape{{{2, 0.8}, {14, 0.8}, {14, 4.8}, {2, 4.8}}, true, false, line, fill}};
}

PaperStrip sampleStrip(std::vector<PageItem> sample, const std::string& text) {
  PaperStrip strip{5.8, std::move(sample)};
  strip.items.push_back(words({18, 4.0}, text));
  return strip;
}

void addInPairs(std::vector<PaperStrip> strips, double width, Block& block) {
  for (std::size_t i = 0; i < strips.size(); i += 2) {
    PaperStrip line = std::move(strips[i]);
    if (i + 1 < strips.size()) {
      line.height = std::max(line.height, strips[i + 1].height);
      for (PageItem& item : strips[i + 1].items) {
        moveItem(item, {width / 2, 0});
        line.items.push_back(std::move(item));
      }
    }
    block.body.push_back(std::move(line));
  }
}

} // namespace sump
