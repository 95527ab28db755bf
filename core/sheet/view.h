#pragma once
// A window on the site at a true scale. Private to core/sheet.

#include "core/sheet/block.h"
#include "core/sheet/marks.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

inline constexpr double kViewTitle = 15; ///< mm under a view for its title, scale bar, north arrow

struct SheetView {
  std::string number; ///< `1`
  std::string title;
  PaperBox frame;                   ///< paper
  Point2 centre;                    ///< site, at the frame's centre
  double scale = 100;               ///< denominator
  std::optional<PaperBox> hidden{}; ///< paper: another view lies over this part of the frame
  std::optional<PaperBox> whole{};  ///< site: what this and its neighbours show, of several parts
  Point2 toPaper(Point2 site) const;
  Point2 toSite(Point2 paper) const;
  /// Site extent of the frame (y up).
  PaperBox site() const;
  bool shows(Point2 site) const;
  /// How much of the line can be seen, m.
  double shownLength(const Polyline& site) const;
};

/// The standard scales of the project's units, largest drawing first: ISO 5455 with the customary
/// 1:25 and 1:250 for metric; engineer's and architect's scales for US.
const std::vector<double>& standardScales(UnitSystem units);
/// `1/4" = 1'-0" (1:48)`, `1" = 20'-0" (1:240)`, `1:50`.
std::string scaleText(double scale, UnitSystem units);

/// Frame, clipped marks.
void drawView(const SheetView& view, const std::vector<Mark>& marks, Page& page);
inline constexpr double kViewBubble = 4.5;  ///< mm, radius of the circle with a view's number
inline constexpr double kBesideNumber = 14; ///< from its left side to the view's title
/// The circle about a view's number.
void drawViewNumber(Point2 centre, const std::string& number, Page& page);
/// Title, scale bar and north arrow below the frame. `north` counter-clockwise from +y.
void drawViewTitle(const SheetView& view, UnitSystem units, Angle north, Page& page);
/// Bar and arrow alone, right-aligned under a frame. `left`: paper, what the title takes.
void drawNorthAndBar(const SheetView& view, UnitSystem units, Angle north, double left, Page& page);

} // namespace sump
