#include "core/sheet/upright.h"

#include "core/sheet/calculation_block.h"
#include "core/sheet/calculation_report.h"

#include <stdexcept>

namespace sump {

namespace {

constexpr double kInset = 4; // mm between the frame and what stands in it
constexpr double kSectionText = 4;

const std::vector<PaperSize>& uprightPapers() {
  // ANSI/ASME Y14.1 size A and ISO 216 A4, both upright.
  static const std::vector<PaperSize> sizes = {{"letter", "Letter", 215.9, 279.4},
                                               {"a4", "A4", 210, 297}};
  return sizes;
}

} // namespace

const PaperSize& uprightPaper(const std::string& key, UnitSystem units) {
  const std::string_view wanted = key.empty() ? reportPaper(units) : std::string_view(key);
  for (const PaperSize& size : uprightPapers()) {
    if (size.key == wanted) return size;
  }
  throw std::invalid_argument("There is no report paper '" + key + "'. Use letter or a4.");
}

PaperBox turnUpright(std::vector<Page>& pages, const std::string& title, const PaperSize& paper,
                     bool cover) {
  pages.push_back({"", title, paper.width, paper.height, {}});
  Page& page = pages.back();
  drawFrame(page);
  PaperBox space = drawingSpace(page);
  space.high.y -= cover ? kTitleHeight : kTitleStripHeight;
  return space.grown(-kInset);
}

FlowPiece uprightHeading(const std::string& text, double width) {
  FlowPiece piece;
  piece.block.width = width;
  piece.block.body = rowStrips({{0, width, text, Align::Left, true}}, kSectionText);
  piece.block.body.back().items.push_back(
      rule({0, piece.block.body.back().height}, {width, piece.block.body.back().height}, 0.5));
  piece.gap = 2;
  return piece;
}

} // namespace sump
