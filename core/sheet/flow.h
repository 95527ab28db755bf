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

class PageFlow {
public:
  PageFlow(const SheetJob& job, std::string title, std::string documentType);

  /// The widest a block may be.
  double fullWidth() const;
  /// A width in which text reads well: that of the column over the title block, where there is one.
  double columnWidth() const;
  /// The largest figure that a page of its own takes, and what a page of several is cut into.
  Point2 largestFigure() const;

  /// A new page's region for a drawing: all but the column over the title block, or on small paper
  /// everything above the title block. Blocks added later go round it.
  PaperBox beginDrawing();
  /// The page last begun; for drawing into the region.
  Page& page();
  void turnPage();

  /// Where it fits first, whole if the rest of a page takes it, else cut between its strips. Throws
  /// std::invalid_argument when an empty page does not take one strip.
  void add(Block block);
  void addAll(std::vector<Block> blocks);

  DraftPages done(const std::string& scale);

private:
  std::optional<Point2> placeFor(double width, double height) const;
  bool placeWhole(Block& block);
  bool placePart(Block& block, std::size_t rows);
  void put(Block& block, Point2 at, double height);

  const SheetJob& job_;
  std::string title_, documentType_;
  std::vector<Page> pages_;
  std::vector<PaperBox> taken_; ///< of the last page
  PaperBox space_;
};

/// Where the title block runs along the whole foot of the sheet: paper too low for a column over
/// it.
bool isSmallPaper(const PaperSize& paper);

} // namespace sump
