#pragma once
// Edits of several objects together: a Plan in, a Plan out. None of them judges the result; the
// caller asks plan/consistency.h. What hangs on the objects follows as in moveObjects.

#include "core/geometry/box_index.h"
#include "core/plan/plan.h"

#include <optional>
#include <set>
#include <string_view>

namespace sump {

/// Turns the objects counter-clockwise about a point of the site.
Plan rotateObjects(const Plan& plan, const std::set<Id>& ids, Point2 about, Angle by);

/// Mirrors the objects about the line through two points. Vaults keep their flow along their length
/// and so their chambers and baffles; what lies across is turned round. Pictures stay.
Plan mirrorObjects(const Plan& plan, const std::set<Id>& ids, Point2 a, Point2 b);

/// Which sides or middles come to one line; Left, Centre and Right move objects east or west.
enum class Alignment { Left, Centre, Right, Top, Middle, Bottom };

/// Aligns to the sides of the box round all of them. Runs and notes follow what they hang on and
/// are not aligned themselves.
Plan alignObjects(const Plan& plan, const std::set<Id>& ids, Alignment to);

/// Brings the middles of the others onto the vault's line of flow, or with `abreast` onto the line
/// across it through its middle.
Plan alignWithVault(const Plan& plan, const std::set<Id>& ids, std::string_view vault,
                    bool abreast);

/// Equal gaps from the westernmost to the easternmost, or with `northward` from the southernmost to
/// the northernmost; those two stay. Fewer than three objects stay as they are.
Plan distributeObjects(const Plan& plan, const std::set<Id>& ids, bool northward);

/// Of a site picture, on the site.
Ring pictureOutline(const Underlay& picture);

/// The box round an object's outline, path or point on the site; nothing for an unknown id.
std::optional<Box> extentOf(const Plan& plan, const Id& id);
/// The box round all of them; nothing when none has an extent.
std::optional<Box> extentOf(const Plan& plan, const std::set<Id>& ids);

bool isLocked(const Plan& plan, const Id& id);
/// Those that gestures may change.
std::set<Id> unlocked(const Plan& plan, const std::set<Id>& ids);
Plan lockObjects(const Plan& plan, const std::set<Id>& ids, bool locked);

} // namespace sump
