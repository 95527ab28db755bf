#pragma once
// The end of a dimension note for a place on the site: the other way round of
// Locator::position(NoteEnd).

#include "core/plan/plan.h"

namespace sump {

/// An end on the object at this site point; an end on the site for an unknown or empty id.
NoteEnd noteEndAt(const Plan& plan, const Id& object, Point2 site);

} // namespace sump
