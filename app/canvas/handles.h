#pragma once
// The places by which what is selected can be taken hold of: corners, legs, ends, and the parts
// inside a vault, a room or a line. Pure geometry without Qt.

#include "core/plan/plan.h"

#include <set>
#include <vector>

namespace sump {

enum class HandleKind {
  Corner, ///< of an outline, a path or a run
  Leg,    ///< the middle of a leg; dragged, it makes a corner
  RunEnd,
  Part,   ///< on a run
  Port,   ///< of a room
  Manway, ///< of a vault
  Baffle, ///< of a vault
  Door,   ///< of a room
  Skid,
  PlumbingArea,
  Panel,
  Turn, ///< all that is selected, about its middle
};

struct Handle {
  HandleKind kind = HandleKind::Corner;
  Id object;             ///< that is selected; empty: the property line
  Id part;               ///< baffle, manway, part, port
  std::size_t index = 0; ///< corner or leg; of run ends 0 is the start
  Point2 at;             ///< where its mark stands
  /// What else takes hold of it: a line, or with three points and more an area.
  std::vector<Point2> reach;
  bool operator==(const Handle& o) const {
    return kind == o.kind && object == o.object && part == o.part && index == o.index;
  }
};

/// Of the selected objects that are not locked, at this many pixels a metre. A single object shows
/// its parts as far as there is room for them; nothing selected shows the property line's corners.
std::vector<Handle> handlesOf(const Plan& plan, const std::set<Id>& selection, double scale);
/// Of every object of the plan, those of one kind.
std::vector<Handle> handlesOf(const Plan& plan, HandleKind kind);

/// The nearest mark within reach, else the line within reach, else the smallest area that holds the
/// point; null for none.
const Handle* handleAt(const std::vector<Handle>& handles, Point2 at, double reach);

} // namespace sump
