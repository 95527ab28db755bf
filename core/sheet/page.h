#pragma once
// A sheet is data: lines, fills and text in paper millimetres, origin at the top left, y down.

#include "core/sheet/style.h"

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace sump {

/// What a shape is to the reader, so that a page can be looked over for what covers what.
enum class PageRole : std::uint8_t {
  Other,
  Wall,
  Symbol,
  Leader,
  Dot,
  Plate,
  ViewFrame,
  ViewNumber, ///< the bubble beside a view's title
  Reference   ///< one that names a view and its sheet
};

struct PageShape {
  std::vector<Point2> points;
  bool closed = false;
  bool round = false; ///< points[0] centre, points[1] on the rim
  std::optional<LineStyle> line;
  std::optional<FillStyle> fill;
  PageRole role = PageRole::Other;
  std::uint32_t symbol = 0; ///< the same for all shapes of one symbol of a view
};

enum class Align { Left, Centre, Right };

/// `at` is on the baseline. Width is known from sheet/text_width.h for the embedded font.
struct PageText {
  Point2 at;
  std::string text;
  double height = 2.5; ///< capital height, mm (ISO 3098)
  Align align = Align::Left;
  double angle = 0; ///< degrees counter-clockwise on the paper
  bool bold = false;
  Ink ink = Ink::Black;
};

using PageItem = std::variant<PageShape, PageText>;

struct Page {
  std::string number; ///< sheet number, `P-101`
  std::string title;
  double width = 0; ///< mm
  double height = 0;
  std::vector<PageItem> items;
};

struct PaperSize {
  std::string_view key;  ///< `arch-d`
  std::string_view name; ///< `ARCH D`
  double width, height;  ///< mm, landscape
};
const std::vector<PaperSize>& paperSizes();
const PaperSize* paperSize(std::string_view key);

/// Advance width in mm of one line of text at this capital height, from the embedded font's table.
double textWidth(std::string_view utf8, double height, bool bold);
/// The corners of the text's box (ascent and descent included), for overlap tests.
Ring textBox(const PageText& text);
/// A stable text form of the page for golden files.
std::string dump(const Page& page);

} // namespace sump
