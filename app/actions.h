#pragma once
// Every command of the window, once: menus, tool bars and the list of keys are made from this
// table.

#include <QKeySequence>
#include <QList>

#include <vector>

namespace sump {

enum class ActionId {
  New,
  Open,
  Save,
  SaveAs,
  SheetSetPreview,
  ExportPdf,
  ExportSvg,
  ExportBill,
  ExportCalculations,
  ExportCuts,
  ExportStakes,
  ExportUpkeep,
  ExportCalendar,
  UpkeepTable,
  ComparePlan,
  PictureIn,
  PictureBeside,
  PictureScale,
  Quit,
  Undo,
  Redo,
  Delete,
  RemoveHere,
  Duplicate,
  Cut,
  Copy,
  Paste,
  PasteInPlace,
  SelectAll,
  SelectSame,
  Find,
  TurnLeft,
  TurnRight,
  MirrorEastWest,
  MirrorNorthSouth,
  AlignLeft,
  AlignCentre,
  AlignRight,
  AlignTop,
  AlignMiddle,
  AlignBottom,
  AlignInLine,
  AlignAbreast,
  SpreadEast,
  SpreadNorth,
  Lock,
  Unlock,
  ToolMeasure,
  ToolNote,
  ToolSelect,
  ToolMove,
  ToolTurn,
  ToolBoundary,
  ToolBuilding,
  ToolPaving,
  ToolUtility,
  ToolWell,
  ToolVault,
  ToolBaffle,
  ToolManway,
  BaffleHere,
  ManwayHere,
  PortHere,
  DoorHere,
  ToolRoom,
  ToolRun,
  ToolPart,
  ToolCut,
  ToolParallel,
  CornerHere,
  CutHere,
  JoinLines,
  ReverseLines,
  ToolBasin,
  ToolWash,
  ToolSewer,
  ToolSpot,
  FitAll,
  FitSelection,
  ZoomIn,
  ZoomOut,
  LongSection,
  Grid,
  Labels,
  Snap,
  Straight,
  DarkWindow,
  DarkDrawing,
  Settings,
  Guide,
  Glossary,
  Keys,
  About,
};

enum class MenuId { File, Edit, Arrange, Draw, Lines, View, Help };

/// Where an action stands besides its menu.
enum class Strip { None, Top, Tools };

struct ActionRow {
  ActionId id;
  const char* name; ///< stable, for tests and settings
  MenuId menu;
  const char* text; ///< with `&`
  const char* icon; ///< file name under :/icons, without suffix
  QKeySequence::StandardKey standardKey;
  const char* key; ///< where there is no standard key; may be empty
  const char* tip;
  Strip strip;
  bool checkable;
  bool separatorAfter;
};

const std::vector<ActionRow>& actionTable();
const char* menuTitle(MenuId menu);
/// The user's own keys, or else the usual ones.
QList<QKeySequence> keysOf(const ActionRow& row);
QList<QKeySequence> usualKeysOf(const ActionRow& row);

} // namespace sump
