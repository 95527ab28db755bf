// What is said about handles: steps, hints and what may be typed.

#include "app/canvas/tools/pull.h"

namespace sump {

namespace {

EntryField lengthField(EntryKey key, const QString& label, const QString& tip) {
  return {key, EntryUnit::Length, label, tip};
}

std::vector<EntryField> alongAcross(const QString& tip) {
  return {lengthField(EntryKey::Along, toolText("Along"), tip),
          lengthField(EntryKey::Across, toolText("Across"), tip)};
}

EntryField invertField() {
  return {EntryKey::Level, EntryUnit::Elevation, toolText("Invert"),
          toolText("Elevation of the inside bottom here; left empty, it stays")};
}

} // namespace

QString pullStep(const Handle& handle) {
  switch (handle.kind) {
  case HandleKind::Corner:
    return toolText("Move corner");
  case HandleKind::Leg:
    return toolText("Add corner");
  case HandleKind::RunEnd:
    return handle.index == 0 ? toolText("Move start of line") : toolText("Move end of line");
  case HandleKind::Part:
    return toolText("Move part");
  case HandleKind::Port:
    return toolText("Move port");
  case HandleKind::Manway:
    return toolText("Move manway");
  case HandleKind::Baffle:
    return toolText("Move baffle");
  case HandleKind::Door:
    return toolText("Move door");
  case HandleKind::Skid:
    return toolText("Move skid");
  case HandleKind::PlumbingArea:
    return toolText("Move plumbing area");
  case HandleKind::Panel:
    return toolText("Move panel");
  case HandleKind::Turn:
    break;
  }
  return toolText("Turn");
}

QString pullHint(const Handle& handle) {
  switch (handle.kind) {
  case HandleKind::Corner:
    return toolText("Drag the corner, or click it and type length and bearing from the corner "
                    "before, or E for its place; arrow keys nudge it. Delete takes it out. Shift: "
                    "straight or 45°. Alt: no catching. Esc puts it back.");
  case HandleKind::Leg:
    return toolText("Drag to make a corner here. Shift: straight or 45°. Alt: no catching. Esc "
                    "gives it up.");
  case HandleKind::RunEnd:
    return toolText("Drag the end to a chamber, port, drain, wall or line, which then holds it, or "
                    "click it and type E for its place, I for its invert. Alt: no catching. Esc "
                    "puts it back.");
  case HandleKind::Part:
    return toolText("Drag the part along its line, or click it and type how far from the line's "
                    "start. Delete takes it off. Esc puts it back.");
  case HandleKind::Manway:
    return toolText("Drag the manway, or click it and type where it is from the vault's middle. "
                    "Delete takes it out. Alt: no catching. Esc puts it back.");
  case HandleKind::Baffle:
    return toolText("Drag the baffle along the vault, or click it and type how far its near face "
                    "is from the inlet end. Delete takes it out. Alt: no catching. Esc puts it "
                    "back.");
  case HandleKind::Door:
    return toolText("Drag the door along the walls and round the corners, or click it and type how "
                    "far it is from the wall's start. Esc puts it back.");
  case HandleKind::Turn:
    return toolText("Drag to turn what is selected by steps of 15°, or click and type the angle, "
                    "counter-clockwise. Alt: any angle. Esc puts it back.");
  default:
    break;
  }
  return toolText("Drag within the room, or click and type how far along and across it stands. "
                  "Alt: any place. Esc puts it back.");
}

std::vector<EntryField> pullFields(const Plan& plan, const Handle& handle) {
  std::vector<EntryField> fields;
  switch (handle.kind) {
  case HandleKind::Corner:
  case HandleKind::Leg:
    fields = placeFields(true);
    if (plan.runs.find(handle.object) != nullptr) fields.push_back(invertField());
    return fields;
  case HandleKind::RunEnd:
    fields = placeFields(true);
    fields.push_back(invertField());
    return fields;
  case HandleKind::Part:
    return {lengthField(EntryKey::Distance, toolText("From the start"),
                        toolText("In plan, along the line"))};
  case HandleKind::Baffle:
    return {lengthField(EntryKey::Distance, toolText("From the inlet end"),
                        toolText("Inside face of the wall to the baffle's near face"))};
  case HandleKind::Door:
    return {lengthField(EntryKey::Distance, toolText("From the wall's start"),
                        toolText("Walls start counter-clockwise round the room"))};
  case HandleKind::Turn:
    return {{EntryKey::Angle, EntryUnit::Angle, toolText("Turn by"),
             toolText("Degrees counter-clockwise; negative: clockwise")}};
  case HandleKind::Manway:
    return alongAcross(toolText("From the vault's middle, with the flow and to its left"));
  default:
    break;
  }
  return alongAcross(toolText("From the room's first corner"));
}

} // namespace sump
