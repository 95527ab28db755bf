#include "app/canvas/tools/tool_factory.h"

#include "app/canvas/measure_tool.h"
#include "app/canvas/note_tool.h"
#include "app/canvas/tools/insert_tool.h"
#include "app/canvas/tools/move_tool.h"
#include "app/canvas/tools/outline_tool.h"
#include "app/canvas/tools/parallel_tool.h"
#include "app/canvas/tools/place_tool.h"
#include "app/canvas/tools/run_tool.h"
#include "app/canvas/tools/select_tool.h"
#include "app/canvas/tools/turn_tool.h"

namespace sump {

namespace {

std::unique_ptr<Tool> placing(ToolHost& host, Placeable what) {
  return std::make_unique<PlaceTool>(host, std::move(what));
}

std::unique_ptr<Tool> inserting(ToolHost& host, Insertable what) {
  return std::make_unique<InsertTool>(host, std::move(what));
}

std::unique_ptr<Tool> outlining(ToolHost& host, Outlined what) {
  return std::make_unique<OutlineTool>(host, std::move(what));
}

} // namespace

std::unique_ptr<Tool> makeTool(ActionId id, ToolHost& host) {
  switch (id) {
  case ActionId::ToolMove:
    return std::make_unique<MoveTool>(host);
  case ActionId::ToolTurn:
    return std::make_unique<TurnTool>(host);
  case ActionId::ToolBaffle:
    return inserting(host, insertableBaffle());
  case ActionId::ToolManway:
    return inserting(host, insertableManway());
  case ActionId::ToolPart:
    return inserting(host, insertablePart(host));
  case ActionId::ToolCut:
    return inserting(host, insertableCut());
  case ActionId::ToolParallel:
    return std::make_unique<ParallelTool>(host);
  case ActionId::ToolBoundary:
    return outlining(host, outlinedBoundary());
  case ActionId::ToolBuilding:
    return outlining(host, outlinedBuilding());
  case ActionId::ToolPaving:
    return outlining(host, outlinedPavement());
  case ActionId::ToolUtility:
    return outlining(host, outlinedUtility());
  case ActionId::ToolSpot:
    return placing(host, placeableSpot());
  case ActionId::ToolWell:
    return placing(host, placeableWell());
  case ActionId::ToolVault:
    return placing(host, placeableVault(host));
  case ActionId::ToolRoom:
    return placing(host, placeableRoom(host));
  case ActionId::ToolBasin:
    return placing(host, placeableBasin());
  case ActionId::ToolWash:
    return placing(host, placeableWash());
  case ActionId::ToolSewer:
    return placing(host, placeableSewer());
  case ActionId::ToolMeasure:
    return std::make_unique<MeasureTool>(host);
  case ActionId::ToolNote:
    return std::make_unique<NoteTool>(host);
  case ActionId::ToolRun:
    return std::make_unique<RunTool>(host);
  default:
    return std::make_unique<SelectTool>(host);
  }
}

} // namespace sump
