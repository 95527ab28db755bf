#pragma once
// Blocks set onto pages, column by column, round what stands there already; over more pages where
// they do not fit. Private to core/sheet.

#include "core/sheet/block.h"
#include "core/sheet/sheet_set.h"

#include <string>
#include <vector>

namespace sump {

inline constexpr double kSheetInset = 4; ///< mm between the frame and what stands in it
inline constexpr double kSheetGap = 6;   ///< between two blocks

/// How large things are set: drawings and lettering shrink until a sheet takes them.
struct SheetFit {
  double figures = 0;  ///< 0: the least size that a maker asks for, 1: the page
  double letters = 1;  ///< lettering of tables and notes, of the usual size
  bool inRows = false; ///< blocks fill the page from the top down, not from the left
};

class PageFlow {
public:
  explicit PageFlow(const SheetJob& job, SheetFit fit = {});

  /// What is added from now on is of this kind of sheet. It goes on where the kind before it ended.
  void begin(std::size_t kind) { kind_ = kind; }

  /// The widest a block may be, in the size of lettering that it is made in.
  double fullWidth() const;
  /// A width in which text reads well: that of the column over the title block, where there is one.
  double columnWidth() const;
  /// The largest figure that a page of its own takes, and what a page of several is cut into.
  Point2 largestFigure() const;
  /// The largest that one of several figures may be; `least` where they must share a page. Small
  /// paper takes one on a page, or two compact ones side by side where it is wide enough.
  Point2 figureSize(Point2 least, bool compact) const;
  double letters() const { return fit_.letters; }

  /// A new page's region for a drawing: all but the column over the title block, or on small paper
  /// everything above the title block. Blocks added later go round it.
  PaperBox beginDrawing();
  /// Other sheets refer to that of the next drawing by this.
  void announce(const std::string& anchor) { announced_ = anchor; }
  /// The page last begun; for drawing into the region.
  Page& page();
  void turnPage();
  /// The last page shows this part of a plan: `A2`; one of several.
  void markPart(const std::string& part, bool several);

  /// Where it fits first, whole if the rest of the last page takes it; a drawing also on an earlier
  /// one of its kind, where smaller ones find room; else cut between its strips.
  /// Throws std::invalid_argument when an empty page does not take one strip.
  void add(Block block);
  void addAll(std::vector<Block> blocks);

  DraftPages done() { return std::move(pages_); }

private:
  std::optional<Point2> placeFor(std::size_t page, double width, double height) const;
  bool placeWhole(Block& block);
  bool placeOnEarlier(Block& block);
  bool placePart(Block& block, std::size_t rows);
  void put(Block& block, std::size_t page, Point2 at, double height);

  void markKind(std::size_t page);
  void take(std::size_t page, const PaperBox& box);
  std::size_t last() const { return pages_.size() - 1; }

  const SheetJob& job_;
  SheetFit fit_;
  std::size_t kind_ = 0;
  std::string announced_;
  DraftPages pages_;
  std::vector<std::vector<PaperBox>> taken_; ///< of each page
  PaperBox space_;
};

/// Where the title block runs along the whole foot of the sheet: paper too low for a column over
/// it.
bool isSmallPaper(const PaperSize& paper);

} // namespace sump
