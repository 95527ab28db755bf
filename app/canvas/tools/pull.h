#pragma once
// What becomes of the plan when a handle is dragged to a place or its place is typed. Functions
// without state: each works from the committed plan.

#include "app/canvas/handles.h"
#include "app/canvas/tools/aim_end.h"

#include <utility>

namespace sump {

using Span = std::pair<Point2, Point2>;

struct Pull {
  Plan plan;
  Point2 at;              ///< where the handle then stands
  Snapped caught;         ///< what the place itself caught
  Catch held;             ///< of a run's end; named when something holds it
  std::vector<Span> legs; ///< shown with length and bearing
  std::vector<Span> gaps; ///< shown with their length
  QString tag;            ///< beside the handle; may be empty
};

/// `start` is where the button went down, `now` where the pointer is. Typed values win.
Pull pulled(const ToolHost& host, const Handle& handle, const Pointer& start, const Pointer& now,
            const Entry& typed);
/// Name of the step in undo.
QString pullStep(const Handle& handle);
/// What dragging does, what may be typed, and which key takes it away.
QString pullHint(const Handle& handle);
std::vector<EntryField> pullFields(const Plan& plan, const Handle& handle);
/// The plan without the corner, baffle, manway or part. Nothing for what cannot be taken away.
std::optional<Plan> withoutHandle(const Plan& plan, const Handle& handle);

// Parts of pulled(), by where the handle stands.
Pull pulledInVault(const ToolHost& host, const Handle& handle, const Pointer& start,
                   const Pointer& now, const Entry& typed);
Pull pulledInRoom(const ToolHost& host, const Handle& handle, const Pointer& start,
                  const Pointer& now, const Entry& typed);

/// A step that can be told apart on the screen; 0 while Alt is held or catching is off.
double fineStep(const ToolHost& host, const Pointer& pointer);
double onFineStep(double value, double step);
/// The clear lengths of the vault's chambers, drawn along its flow.
std::vector<Span> chamberSpans(const Vault& vault);

} // namespace sump
