#include "app/window/context_menu.h"

namespace sump {

namespace {

using Entries = std::vector<std::optional<ActionId>>;

constexpr std::nullopt_t kLine = std::nullopt;

Entries with(Entries first, const Entries& rest) {
  first.emplace_back(kLine);
  first.insert(first.end(), rest.begin(), rest.end());
  return first;
}

const Entries& wholeObject() {
  using enum ActionId;
  static const Entries entries = {Cut,   Copy,     Duplicate, ActionId::Delete,
                                  kLine, TurnLeft, TurnRight, ToolTurn,
                                  kLine, Lock,     Unlock,    FitSelection};
  return entries;
}

const Entries& wholeLine() {
  using enum ActionId;
  static const Entries entries = {Cut,        Copy, Duplicate, ActionId::Delete, kLine,
                                  SelectSame, Lock, Unlock,    FitSelection};
  return entries;
}

} // namespace

Pointed pointedAt(const Plan& plan, const std::set<Id>& selection, const Id& object,
                  const std::optional<Handle>& part) {
  if (part && selection.size() < 2) {
    const bool line = plan.runs.find(part->object) != nullptr;
    if (part->kind == HandleKind::Corner)
      return line ? Pointed::LineCorner : Pointed::OutlineCorner;
    if (part->kind == HandleKind::Part) return Pointed::LinePart;
    if (part->kind == HandleKind::Baffle || part->kind == HandleKind::Manway)
      return Pointed::BaffleOrManway;
    if (part->kind == HandleKind::Port || part->kind == HandleKind::Door)
      return Pointed::PortOrDoor;
  }
  if (selection.size() > 1 && selection.contains(object)) return Pointed::Several;
  if (object.empty()) return Pointed::Ground;
  if (plan.runs.find(object) != nullptr) return Pointed::Line;
  if (plan.vaults.find(object) != nullptr) return Pointed::Vault;
  if (plan.rooms.find(object) != nullptr) return Pointed::Room;
  const bool outline = plan.buildings.find(object) != nullptr ||
                       plan.pavements.find(object) != nullptr ||
                       plan.utilities.find(object) != nullptr;
  return outline ? Pointed::Outline : Pointed::Other;
}

std::vector<std::optional<ActionId>> menuFor(Pointed what) {
  using enum ActionId;
  switch (what) {
  case Pointed::Ground:
    return {Paste,       PasteInPlace, kLine, ToolVault, ToolRun, ToolRoom,  ToolBasin, ToolNote,
            ToolMeasure, kLine,        Undo,  Redo,      kLine,   SelectAll, Find,      FitAll};
  case Pointed::Line:
    return with({CornerHere, CutHere, ToolPart, kLine, ReverseLines, ToolParallel}, wholeLine());
  case Pointed::LineCorner:
    return with({RemoveHere, CutHere}, wholeLine());
  case Pointed::LinePart:
    return with({RemoveHere, ToolPart}, wholeLine());
  case Pointed::Vault:
    return with({BaffleHere, ManwayHere, ToolRun}, wholeObject());
  case Pointed::BaffleOrManway:
    return with({RemoveHere, BaffleHere, ManwayHere}, wholeObject());
  case Pointed::Room:
    return with({PortHere, DoorHere, ToolRun, ToolNote}, wholeObject());
  case Pointed::PortOrDoor:
    return with({RemoveHere, PortHere, DoorHere, ToolRun}, wholeObject());
  case Pointed::Outline:
    return with({CornerHere}, wholeObject());
  case Pointed::OutlineCorner:
    return with({RemoveHere}, wholeObject());
  case Pointed::Several:
    return with({JoinLines, ReverseLines, kLine, AlignLeft, AlignTop, AlignInLine, AlignAbreast,
                 SpreadEast, SpreadNorth, MirrorEastWest, MirrorNorthSouth},
                wholeObject());
  case Pointed::Other:
    break;
  }
  return wholeObject();
}

} // namespace sump
