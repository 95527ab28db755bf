// What OutlineTool can draw.

#include "app/canvas/tools/new_objects.h"
#include "app/canvas/tools/outline_tool.h"

#include "core/plan/edits_objects.h"
#include "core/plan/keys.h"

namespace sump {

namespace {

std::string numbered(const char* word, std::size_t count) {
  return std::string(word) + " " + std::to_string(count + 1);
}

} // namespace

Outlined outlinedBoundary() {
  Outlined what;
  what.step = toolText("Draw property line");
  what.name = toolText("the property line");
  what.make = [](const ToolHost& h, int, const std::vector<Point2>& corners, Id&) {
    Plan next = h.plan();
    next.site.boundary = corners;
    return next;
  };
  return what;
}

Outlined outlinedBuilding() {
  Outlined what;
  what.step = toolText("Draw building");
  what.name = toolText("the building");
  what.make = [](const ToolHost& h, int, const std::vector<Point2>& corners, Id& made) {
    Building building;
    building.id = freshId(h.plan(), "B");
    building.name = numbered("Building", h.plan().buildings.size());
    building.outline = corners;
    return withAdded(h.plan(), &Plan::buildings, std::move(building), made);
  };
  return what;
}

Outlined outlinedPavement() {
  Outlined what;
  what.step = toolText("Draw paving");
  what.name = toolText("the paving");
  what.kindLabel = toolText("Carries");
  what.kinds = {toolText("Vehicles"), toolText("People only")};
  what.make = [](const ToolHost& h, int kind, const std::vector<Point2>& corners, Id& made) {
    Pavement pavement;
    pavement.id = freshId(h.plan(), "PV");
    pavement.name = numbered("Paving", h.plan().pavements.size());
    pavement.outline = corners;
    pavement.traffic = kind == 0;
    return withAdded(h.plan(), &Plan::pavements, std::move(pavement), made);
  };
  return what;
}

Outlined outlinedUtility() {
  Outlined what;
  what.step = toolText("Draw existing line");
  what.name = toolText("the existing line");
  what.closed = false;
  what.kindLabel = toolText("Kind");
  what.kinds = {toolText("Potable water"), toolText("Sewer"),    toolText("Storm drain"),
                toolText("Gas"),           toolText("Electric"), toolText("Communication"),
                toolText("Other")};
  what.make = [](const ToolHost& h, int kind, const std::vector<Point2>& corners, Id& made) {
    Utility utility;
    utility.id = freshId(h.plan(), "U");
    utility.name = numbered("Existing line", h.plan().utilities.size());
    utility.kind = kUtilityKeys[static_cast<std::size_t>(kind)].first;
    utility.path = corners;
    return withAdded(h.plan(), &Plan::utilities, std::move(utility), made);
  };
  return what;
}

} // namespace sump
