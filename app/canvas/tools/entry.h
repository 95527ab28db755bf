#pragma once
// Values that a tool takes by typing while it draws: which, in what unit, and how they are read.

#include "app/canvas/typed_point.h"
#include "core/units/quantity.h"

#include <QString>

#include <map>
#include <vector>

namespace sump {

enum class EntryKey {
  Length,    ///< of the leg, from the last corner
  Bearing,   ///< of the leg, clockwise from true north
  East,      ///< on the site
  North,     ///< on the site
  Level,     ///< elevation or invert
  Angle,     ///< counter-clockwise from east, as the plan keeps it
  SizeEast,  ///< of an upright rectangle
  SizeNorth, ///< of an upright rectangle
  Long,      ///< of the object itself
  Wide,      ///< of the object itself
  Distance,  ///< from where the tool counts
  Along,     ///< in the frame of what holds it
  Across,    ///< in the frame of what holds it
  Share,     ///< of a leg, 0 to 1
};

enum class EntryUnit { Length, Elevation, Bearing, Angle, Share };

struct EntryField {
  EntryKey key;
  EntryUnit unit;
  QString label;
  QString tip;
};

/// What was typed, in SI: metres and radians.
using Entry = std::map<EntryKey, double>;

/// The value, or the sentence that says what would be read.
Parsed<double> parseEntry(EntryUnit unit, const QString& text, UnitSystem units);

/// Length, bearing, east and north; only the latter two before there is a corner to start from.
std::vector<EntryField> placeFields(bool hasLast);
/// On the plan, whose true north is turned so far.
TypedPoint typedPoint(const Entry& entry, Angle trueNorth);
/// The value, or nothing when it was not typed.
std::optional<double> typedValue(const Entry& entry, EntryKey key);

} // namespace sump
