#pragma once
// Sections, elevations and details: drawings in metres of their own, x to the right and y up, set
// at the largest standard scale that fits, with levels, dimensions and callouts that do not
// overlap. Private to core/sheet.

#include "core/sheet/block.h"
#include "core/sheet/level_ladder.h"
#include "core/sheet/mark_pen.h"
#include "core/sheet/view.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

/// Words with a leader to a place.
struct Callout {
  std::vector<std::string> lines;
  Point2 at;
  Ink ink = Ink::Black;
  bool bold = false;
  bool leader = false; ///< always with a leader: others stand close by
  bool first = false;  ///< placed before others; it may stand on the drawing's ground
};

/// A dimension between two places; its line stands `offset` mm to the left of from-to.
struct Measure {
  Point2 from, to;
  double offset = 8;
  std::string text;
};

/// A line of the drawing that carries its name.
struct NamedLine {
  Polyline line;
  std::string name;
  Ink ink = Ink::Black;
};

/// Of an elevation that is seen from somewhere in here.
struct ElevationMark {
  PaperBox within; ///< metres
  Point2 sight;
  std::string anchor;
};

struct Drawing {
  std::string anchor; ///< by which other sheets refer to it; its number stands beside the title
  std::string title;
  std::vector<Mark> marks;
  std::vector<Callout> callouts;
  std::vector<Measure> measures;
  std::vector<LevelTag> levels;
  double finest = 0;              ///< the denominator of the largest scale that it asks for
  double steeper = 1;             ///< heights are drawn this many times as large as lengths
  bool bare = false;              ///< no room for callouts is kept about it
  std::vector<std::string> notes; ///< below the title
  std::vector<PaperBox> clear{};  ///< metres, as the drawing's: no callout stands in these
  std::vector<Polyline> uncut{};  ///< metres: words keep off these lines, leaders may cross them
  std::vector<ElevationMark> elevations{};
  std::vector<PaperBox> ground{}; ///< only callouts that come first stand in these
  std::optional<Angle> north{};   ///< of a plan, counter-clockwise from +y: with a scale bar
  std::vector<NamedLine> named{};
};

/// The drawing's figure with its title and scale, no larger than `most` mm. Callouts that find no
/// room are told below the title.
Block figure(const Drawing& drawing, UnitSystem units, Point2 most);

/// The outline of a pipe of this diameter about its centreline, corners mitred.
Ring pipeOutline(const Polyline& centreline, double diameter);

} // namespace sump
