#pragma once
// Border with grid references (ISO 5457) and title block (ISO 7200). Private to core/sheet.

#include "core/rules/review.h"
#include "core/sheet/block.h"

namespace sump {

inline constexpr double kTitleWidth = 180; ///< mm, ISO 7200
inline constexpr double kTitleHeight = 87;
inline constexpr double kFootTitleHeight = 36; ///< of a small sheet

struct SheetFacts {
  std::string documentType; ///< `Plan`, `Schedules`
  std::string scale;
  std::string paper;
  int sheet = 1;
  int sheets = 1;
};

/// The drawing space inside the frame.
PaperBox drawingSpace(const Page& page);
/// Small paper carries its title block along the whole foot, with the same fields.
bool hasFootTitle(const Page& page);
/// Where the title block stands: the lower right corner of the drawing space, or its foot.
PaperBox titleBox(const Page& page);
void drawBorder(Page& page);
void drawTitleBlock(const Project& project, const SheetFacts& facts, Page& page);

} // namespace sump
