#pragma once
// Dimension notes: where their lines and texts lie. The sheet and the canvas draw the same.

#include "core/plan/plan.h"

#include <string>
#include <vector>

namespace sump {

/// A note worked out on the site, in metres.
struct NoteDrawing {
  Id id;
  Point2 from; ///< the places measured
  Point2 to;
  Point2 lineFrom; ///< the dimension line; of a lettered note the leader
  Point2 lineTo;
  bool lettered = false; ///< both ends at one place
  std::string text;      ///< the note's own, else the plan distance
  Point2 textAt;         ///< on the dimension line
  Point2 along;          ///< unit vector in which the text reads, from west to east or upward
};

/// Of every note whose ends have a place, in the plan's order.
std::vector<NoteDrawing> noteDrawings(const Plan& plan);
/// Of a note that may not stand in the plan yet.
NoteDrawing noteDrawing(const DimensionNote& note, Point2 from, Point2 to, UnitSystem units);

} // namespace sump
