#pragma once
// Tables, notes and legends as strips that stand one below the other, so that a block that does not
// fit can be cut between strips and go on in another column or page. Private to core/sheet.

#include "core/sheet/clip.h"
#include "core/sheet/page.h"

#include <string>
#include <vector>

namespace sump {

inline constexpr double kTextHeight = 2.5;              ///< mm, ISO 3098-1 nominal size
inline constexpr double kLinePitch = 1.7 * kTextHeight; ///< baseline to baseline

/// Items relative to the strip's top left corner.
struct PaperStrip {
  double height = 0;
  std::vector<PageItem> items;
  bool note = false; ///< under the rows of a table; stays with the last of them
};

struct Block {
  double width = 0;
  std::vector<PaperStrip> head; ///< repeated on every continuation
  std::vector<PaperStrip> body;
  bool toScale = false; ///< a drawing: it may not be enlarged
  std::string run{};    ///< the tag of the run that it is the section of; else empty
  std::string anchor{}; ///< by which other sheets refer to the one that it begins on
  double height() const;
};

void moveItem(PageItem& item, Point2 by);
PageShape rule(Point2 a, Point2 b, double width);
PageText words(Point2 at, std::string text, double height = kTextHeight, bool bold = false,
               Align align = Align::Left);

/// Lettering and rows `times` as large; lines keep their widths.
Block enlarged(Block block, double times);

/// Lines no wider than `width` mm, broken at spaces; a longer word is broken where it must be.
std::vector<std::string> wrapped(const std::string& text, double width, double height, bool bold);

struct Column {
  std::string heading; ///< `|` breaks the line
  Align align = Align::Left;
};
/// A ruled table with its title; columns as wide as their widest cell, the rest shared out up to
/// `width`. Cells of the last column wrap if the table is wider than that.
Block table(const std::string& title, const std::vector<Column>& columns,
            const std::vector<std::vector<std::string>>& rows, double width);
/// Words under a table or a legend, in its width.
void addNote(Block& block, const std::string& note);
/// A heading with numbered or bulleted paragraphs.
Block paragraphs(const std::string& title, const std::vector<std::string>& texts, double width,
                 bool numbered);

/// Draws as many strips of `block` as fit above `bottom`, from `at` down, and takes them off the
/// block. Returns the y below the last one; `at.y` when not even one body strip fits.
double place(Block& block, Point2 at, double bottom, Page& page);

} // namespace sump
