#pragma once
// Border with grid references (ISO 5457) and title block (ISO 7200). Private to core/sheet.

#include "core/rules/review.h"
#include "core/sheet/block.h"

namespace sump {

inline constexpr double kTitleWidth = 180; ///< mm, ISO 7200
inline constexpr double kTitleHeight = 87;
inline constexpr double kFootTitleHeight = 36; ///< of a small sheet
inline constexpr double kTitleStripHeight = 12;

struct SheetFacts {
  std::string documentType; ///< `Plan`, `Schedules`
  std::string scale;
  std::string paper;
  int sheet = 1;
  int sheets = 1;
};

/// The drawing space inside the frame.
PaperBox drawingSpace(const Page& page);
/// Small paper, unless it stands upright, carries its title block along the whole foot, with the
/// same fields.
bool hasFootTitle(const Page& page);
/// Where the title block stands: the lower right corner of the drawing space, or its foot.
PaperBox titleBox(const Page& page);
void drawBorder(Page& page);
/// The frame alone, for the upright pages of a report, which need no grid references.
void drawFrame(Page& page);
void drawTitleBlock(const Project& project, const SheetFacts& facts, Page& page);
/// What tells the further pages of a report: number, title, revision, date, page.
void drawTitleStrip(const Project& project, const SheetFacts& facts, Page& page);

} // namespace sump
