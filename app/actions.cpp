#include "app/actions.h"

#include "app/window/user_keys.h"

namespace sump {

namespace {

constexpr auto kNoKey = QKeySequence::UnknownKey;

#define SUMP_TR(text) QT_TRANSLATE_NOOP("Actions", text)

const std::vector<ActionRow> kTable = {
    {ActionId::New, "new", MenuId::File, SUMP_TR("&New plan"), "new", QKeySequence::New, "",
     SUMP_TR("Start an empty plan"), Strip::Top, false, false},
    {ActionId::Open, "open", MenuId::File, SUMP_TR("&Open..."), "open", QKeySequence::Open, "",
     SUMP_TR("Open a plan file"), Strip::Top, false, false},
    {ActionId::Save, "save", MenuId::File, SUMP_TR("&Save"), "save", QKeySequence::Save, "",
     SUMP_TR("Save the plan to its file"), Strip::Top, false, false},
    {ActionId::SaveAs, "save-as", MenuId::File, SUMP_TR("Save &as..."), "save",
     QKeySequence::SaveAs, "Ctrl+Shift+S", SUMP_TR("Save the plan to another file"), Strip::None,
     false, true},
    {ActionId::SheetSetPreview, "sheet-set", MenuId::File, SUMP_TR("S&heet set..."), "sheet",
     QKeySequence::Print, "Ctrl+P", SUMP_TR("Look at the sheets on any paper; print them"),
     Strip::None, false, false},
    {ActionId::ExportPdf, "export-pdf", MenuId::File, SUMP_TR("Sheet set to &PDF..."), "sheet",
     kNoKey, "Ctrl+Shift+P", SUMP_TR("Write all sheets as PDF, at true printed scales"), Strip::Top,
     false, false},
    {ActionId::ExportSvg, "export-svg", MenuId::File, SUMP_TR("Sheet set to S&VG..."), "sheet",
     kNoKey, "", SUMP_TR("Write all sheets as SVG, one file a page"), Strip::None, false, false},
    {ActionId::ExportBill, "export-bill", MenuId::File, SUMP_TR("&Bill of materials..."), "bill",
     kNoKey, "Ctrl+Shift+B", SUMP_TR("Write what to buy as a workbook or as CSV"), Strip::Top,
     false, false},
    {ActionId::ExportCuts, "export-cuts", MenuId::File, SUMP_TR("C&utting list..."), "", kNoKey, "",
     SUMP_TR("Write which cuts come out of which stick, for the saw"), Strip::None, false, false},
    {ActionId::ExportStakes, "export-stakes", MenuId::File, SUMP_TR("Sta&ke-out points..."), "",
     kNoKey, "", SUMP_TR("Write points with north, east and elevation"), Strip::None, false, false},
    {ActionId::ExportCalculations, "export-calculations", MenuId::File,
     SUMP_TR("Ca&lculation report to PDF..."), "", kNoKey, "",
     SUMP_TR("Write how each number came about, for a reviewer"), Strip::None, false, false},
    {ActionId::ComparePlan, "compare-plan", MenuId::File,
     SUMP_TR("Co&mpare with an earlier plan..."), "", kNoKey, "",
     SUMP_TR("List what changed since an earlier plan file, and cloud it on the sheets"),
     Strip::None, false, true},
    {ActionId::PictureIn, "picture-in", MenuId::File, SUMP_TR("Site p&icture into the plan..."), "",
     kNoKey, "", SUMP_TR("Draw over a picture that is kept in the plan file"), Strip::None, false,
     false},
    {ActionId::PictureBeside, "picture-beside", MenuId::File,
     SUMP_TR("Site picture &beside the plan..."), "", kNoKey, "",
     SUMP_TR("Draw over a picture that stays a file of its own"), Strip::None, false, false},
    {ActionId::PictureScale, "picture-scale", MenuId::File, SUMP_TR("S&cale the site picture"), "",
     kNoKey, "", SUMP_TR("Pick two places on the picture and type how far apart they are"),
     Strip::None, false, true},
    {ActionId::Quit, "quit", MenuId::File, SUMP_TR("&Quit"), "", QKeySequence::Quit, "Ctrl+Q",
     SUMP_TR("Close the window"), Strip::None, false, false},
    {ActionId::Undo, "undo", MenuId::Edit, SUMP_TR("&Undo"), "undo", QKeySequence::Undo, "",
     SUMP_TR("Take back the last step"), Strip::Top, false, false},
    {ActionId::Redo, "redo", MenuId::Edit, SUMP_TR("&Redo"), "redo", QKeySequence::Redo, "",
     SUMP_TR("Do again what was taken back"), Strip::Top, false, true},
    {ActionId::Cut, "cut", MenuId::Edit, SUMP_TR("Cu&t"), "", QKeySequence::Cut, "",
     SUMP_TR("Take what is selected out, to be pasted"), Strip::None, false, false},
    {ActionId::Copy, "copy", MenuId::Edit, SUMP_TR("&Copy"), "", QKeySequence::Copy, "",
     SUMP_TR("Keep what is selected to be pasted, here or in another window"), Strip::None, false,
     false},
    {ActionId::Paste, "paste", MenuId::Edit, SUMP_TR("&Paste"), "", QKeySequence::Paste, "",
     SUMP_TR("Put what was copied at the pointer"), Strip::None, false, false},
    {ActionId::PasteInPlace, "paste-in-place", MenuId::Edit, SUMP_TR("Paste in p&lace"), "", kNoKey,
     "Ctrl+Shift+V", SUMP_TR("Put what was copied where it came from"), Strip::None, false, false},
    {ActionId::Duplicate, "duplicate", MenuId::Edit, SUMP_TR("D&uplicate"), "duplicate", kNoKey,
     "Ctrl+D", SUMP_TR("Add a copy of what is selected beside it"), Strip::None, false, false},
    {ActionId::Delete, "delete", MenuId::Edit, SUMP_TR("&Delete"), "delete", QKeySequence::Delete,
     "", SUMP_TR("Remove what is selected; lines that hung on it keep their place"), Strip::Top,
     false, false},
    {ActionId::RemoveHere, "remove-here", MenuId::Edit, SUMP_TR("Delete the pa&rt here"), "",
     kNoKey, "Ctrl+Backspace",
     SUMP_TR(
         "Remove the corner, baffle, manway or fitting under the pointer from what is selected"),
     Strip::None, false, true},
    {ActionId::SelectAll, "select-all", MenuId::Edit, SUMP_TR("Select &all"), "",
     QKeySequence::SelectAll, "", SUMP_TR("Select every object of the plan"), Strip::None, false,
     false},
    {ActionId::Find, "find", MenuId::Edit, SUMP_TR("&Find..."), "", QKeySequence::Find, "",
     SUMP_TR("Find an object by id, name or kind"), Strip::None, false, false},
    {ActionId::SelectSame, "select-same", MenuId::Edit, SUMP_TR("Select sa&me kind"), "", kNoKey,
     "Ctrl+Shift+A", SUMP_TR("Select all of the same kind, or of lines all of the same service"),
     Strip::None, false, false},
    {ActionId::Settings, "settings", MenuId::Edit, SUMP_TR("Se&ttings..."), "", kNoKey, "Ctrl+,",
     SUMP_TR("Choose the keys of the commands and how the window looks"), Strip::None, false,
     false},
    {ActionId::TurnLeft, "turn-left", MenuId::Arrange, SUMP_TR("Quarter turn &left"), "", kNoKey,
     "Ctrl+T", SUMP_TR("Turn what is selected counter-clockwise about its middle"), Strip::None,
     false, false},
    {ActionId::TurnRight, "turn-right", MenuId::Arrange, SUMP_TR("Quarter turn &right"), "", kNoKey,
     "Ctrl+Shift+T", SUMP_TR("Turn what is selected clockwise about its middle"), Strip::None,
     false, false},
    {ActionId::MirrorEastWest, "mirror-east-west", MenuId::Arrange, SUMP_TR("Mirror &east to west"),
     "", kNoKey, "Alt+Shift+X",
     SUMP_TR("Swap east and west; vaults keep their flow along their length"), Strip::None, false,
     false},
    {ActionId::MirrorNorthSouth, "mirror-north-south", MenuId::Arrange,
     SUMP_TR("Mirror &north to south"), "", kNoKey, "Alt+Shift+Y",
     SUMP_TR("Swap north and south; vaults keep their flow along their length"), Strip::None, false,
     true},
    {ActionId::AlignLeft, "align-west", MenuId::Arrange, SUMP_TR("Align &west sides"), "", kNoKey,
     "Alt+Shift+W", SUMP_TR("Bring the west sides to one line"), Strip::None, false, false},
    {ActionId::AlignCentre, "align-centre", MenuId::Arrange, SUMP_TR("Align &centres"), "", kNoKey,
     "Alt+Shift+C", SUMP_TR("Bring the middles to one line northward"), Strip::None, false, false},
    {ActionId::AlignRight, "align-east", MenuId::Arrange, SUMP_TR("Align e&ast sides"), "", kNoKey,
     "Alt+Shift+E", SUMP_TR("Bring the east sides to one line"), Strip::None, false, false},
    {ActionId::AlignTop, "align-north", MenuId::Arrange, SUMP_TR("Align n&orth sides"), "", kNoKey,
     "Alt+Shift+N", SUMP_TR("Bring the north sides to one line"), Strip::None, false, false},
    {ActionId::AlignMiddle, "align-middle", MenuId::Arrange, SUMP_TR("Align &middles"), "", kNoKey,
     "Alt+Shift+M", SUMP_TR("Bring the middles to one line eastward"), Strip::None, false, false},
    {ActionId::AlignBottom, "align-south", MenuId::Arrange, SUMP_TR("Align &south sides"), "",
     kNoKey, "Alt+Shift+S", SUMP_TR("Bring the south sides to one line"), Strip::None, false,
     false},
    {ActionId::AlignInLine, "align-in-line", MenuId::Arrange, SUMP_TR("In l&ine with the vault"),
     "", kNoKey, "Alt+Shift+I",
     SUMP_TR("Bring the others onto the line of flow of the first selected vault"), Strip::None,
     false, false},
    {ActionId::AlignAbreast, "align-abreast", MenuId::Arrange, SUMP_TR("A&breast of the vault"), "",
     kNoKey, "Alt+Shift+B",
     SUMP_TR("Bring the others onto the line across the first selected vault"), Strip::None, false,
     false},
    {ActionId::SpreadEast, "spread-east", MenuId::Arrange, SUMP_TR("Sprea&d eastward"), "", kNoKey,
     "Alt+Shift+D", SUMP_TR("Make the gaps from west to east equal"), Strip::None, false, false},
    {ActionId::SpreadNorth, "spread-north", MenuId::Arrange, SUMP_TR("Spread nort&hward"), "",
     kNoKey, "Alt+Shift+U", SUMP_TR("Make the gaps from south to north equal"), Strip::None, false,
     true},
    {ActionId::Lock, "lock", MenuId::Arrange, SUMP_TR("Loc&k"), "", kNoKey, "Ctrl+Alt+L",
     SUMP_TR("Turning, aligning and cutting leave it alone"), Strip::None, false, false},
    {ActionId::Unlock, "unlock", MenuId::Arrange, SUMP_TR("&Unlock"), "", kNoKey, "Ctrl+Alt+U",
     SUMP_TR("Let it be changed again"), Strip::None, false, false},
    {ActionId::ToolSelect, "tool-select", MenuId::Draw, SUMP_TR("&Select"), "select", kNoKey,
     "Ctrl+1", SUMP_TR("Point at objects, move them"), Strip::Tools, true, false},
    {ActionId::ToolMove, "tool-move", MenuId::Draw, SUMP_TR("&Move"), "move", kNoKey, "Ctrl+2",
     SUMP_TR("Drag what is selected from anywhere"), Strip::Tools, true, false},
    {ActionId::ToolTurn, "tool-turn", MenuId::Draw, SUMP_TR("T&urn"), "turn", kNoKey, "Shift+R",
     SUMP_TR("Turn what is selected by a typed angle or by dragging"), Strip::Tools, true, true},
    {ActionId::ToolBoundary, "tool-boundary", MenuId::Draw, SUMP_TR("Property &line"), "boundary",
     kNoKey, "Shift+L", SUMP_TR("Draw the property line corner by corner"), Strip::Tools, true,
     false},
    {ActionId::ToolBuilding, "tool-building", MenuId::Draw, SUMP_TR("&Building"), "building",
     kNoKey, "Shift+B", SUMP_TR("Draw a building, corner by corner or as a rectangle"),
     Strip::Tools, true, false},
    {ActionId::ToolPaving, "tool-paving", MenuId::Draw, SUMP_TR("P&aving"), "paving", kNoKey,
     "Shift+P", SUMP_TR("Draw a yard or a path"), Strip::Tools, true, false},
    {ActionId::ToolUtility, "tool-utility", MenuId::Draw, SUMP_TR("E&xisting line"), "utility",
     kNoKey, "Shift+X", SUMP_TR("Draw a pipe or cable that is in the ground already"), Strip::Tools,
     true, false},
    {ActionId::ToolSpot, "tool-spot", MenuId::Draw, SUMP_TR("Spot &elevation"), "spot", kNoKey,
     "Ctrl+9", SUMP_TR("Place a shot ground level"), Strip::Tools, true, false},
    {ActionId::ToolWell, "tool-well", MenuId::Draw, SUMP_TR("Water we&ll"), "well", kNoKey,
     "Shift+W", SUMP_TR("Place a water well"), Strip::Tools, true, true},
    {ActionId::ToolBasin, "tool-basin", MenuId::Draw, SUMP_TR("&Drain"), "basin", kNoKey, "Ctrl+6",
     SUMP_TR("Place a catch basin or trench drain"), Strip::Tools, true, false},
    {ActionId::ToolSewer, "tool-sewer", MenuId::Draw, SUMP_TR("Sewer &connection"), "sewer", kNoKey,
     "Ctrl+8", SUMP_TR("Place where the overflow joins the sewer"), Strip::Tools, true, false},
    {ActionId::ToolWash, "tool-wash", MenuId::Draw, SUMP_TR("&Wash equipment"), "wash", kNoKey,
     "Ctrl+7", SUMP_TR("Place what uses the product water"), Strip::Tools, true, false},
    {ActionId::ToolRoom, "tool-room", MenuId::Draw, SUMP_TR("Equipment r&oom"), "room", kNoKey,
     "Ctrl+4", SUMP_TR("Place an equipment room with its skid and ports"), Strip::Tools, true,
     true},
    {ActionId::ToolVault, "tool-vault", MenuId::Draw, SUMP_TR("&Vault"), "vault", kNoKey, "Ctrl+3",
     SUMP_TR("Place a precast vault from the catalogue or with own sizes"), Strip::Tools, true,
     false},
    {ActionId::ToolBaffle, "tool-baffle", MenuId::Draw, SUMP_TR("Ba&ffle"), "baffle", kNoKey,
     "Shift+F", SUMP_TR("Place a full-height baffle across a vault, or drag one along"),
     Strip::Tools, true, false},
    {ActionId::ToolManway, "tool-manway", MenuId::Draw, SUMP_TR("Ma&nway"), "manway", kNoKey,
     "Shift+M", SUMP_TR("Place an opening in a vault's lid, or drag one"), Strip::Tools, true,
     true},
    {ActionId::BaffleHere, "baffle-here", MenuId::Draw, SUMP_TR("Baffle &here"), "", kNoKey, "",
     SUMP_TR("A full-height baffle across the vault under the pointer"), Strip::None, false, false},
    {ActionId::ManwayHere, "manway-here", MenuId::Draw, SUMP_TR("Manwa&y here"), "", kNoKey, "",
     SUMP_TR("An opening in the lid of the vault under the pointer"), Strip::None, false, true},
    {ActionId::ToolRun, "tool-run", MenuId::Draw, SUMP_TR("&Pipe or conduit"), "run", kNoKey,
     "Ctrl+5", SUMP_TR("Draw a line from a chamber, port or drain to another"), Strip::Tools, true,
     true},
    {ActionId::ToolMeasure, "tool-measure", MenuId::Draw, SUMP_TR("Measuring &tape"), "measure",
     kNoKey, "Ctrl+Shift+M", SUMP_TR("Measure between two places"), Strip::Tools, true, false},
    {ActionId::ToolNote, "tool-note", MenuId::Draw, SUMP_TR("Dimension &note"), "note", kNoKey,
     "Ctrl+Shift+N", SUMP_TR("Place a lasting dimension that follows its objects"), Strip::Tools,
     true, false},
    {ActionId::ToolPart, "tool-part", MenuId::Lines, SUMP_TR("&Valve or fitting"), "part", kNoKey,
     "Shift+V", SUMP_TR("Set a valve, union, cleanout, backflow device or the like on a line"),
     Strip::Tools, true, false},
    {ActionId::ToolCut, "tool-cut", MenuId::Lines, SUMP_TR("&Cut a line"), "split", kNoKey,
     "Shift+C", SUMP_TR("Make two lines of one"), Strip::Tools, true, false},
    {ActionId::ToolParallel, "tool-parallel", MenuId::Lines, SUMP_TR("Line be&side"), "parallel",
     kNoKey, "Shift+S", SUMP_TR("Lay a line beside another at a typed spacing"), Strip::Tools, true,
     true},
    {ActionId::JoinLines, "join-lines", MenuId::Lines, SUMP_TR("&Join two lines"), "join", kNoKey,
     "Ctrl+Shift+J", SUMP_TR("Make one of two selected lines whose free ends meet"), Strip::None,
     false, false},
    {ActionId::ReverseLines, "reverse-lines", MenuId::Lines, SUMP_TR("&Reverse the flow"),
     "reverse", kNoKey, "Ctrl+Shift+R", SUMP_TR("Swap start and end of the selected lines"),
     Strip::None, false, true},
    {ActionId::CornerHere, "corner-here", MenuId::Lines, SUMP_TR("&Add a corner here"), "", kNoKey,
     "Shift+K", SUMP_TR("Put a corner into the line or edge under the pointer"), Strip::None, false,
     false},
    {ActionId::CutHere, "cut-here", MenuId::Lines, SUMP_TR("Cut the line &here"), "", kNoKey, "",
     SUMP_TR("Make two lines of the one under the pointer"), Strip::None, false, false},
    {ActionId::FitAll, "fit-all", MenuId::View, SUMP_TR("Whole &site"), "fit", kNoKey, "Ctrl+0",
     SUMP_TR("Show the whole site"), Strip::Top, false, false},
    {ActionId::FitSelection, "fit-selection", MenuId::View, SUMP_TR("What is se&lected"),
     "fit-selection", kNoKey, "Ctrl+Shift+0", SUMP_TR("Show what is selected as large as it fits"),
     Strip::None, false, false},
    {ActionId::ZoomIn, "zoom-in", MenuId::View, SUMP_TR("&Closer"), "zoom-in", QKeySequence::ZoomIn,
     "", SUMP_TR("Enlarge the drawing"), Strip::Top, false, false},
    {ActionId::ZoomOut, "zoom-out", MenuId::View, SUMP_TR("&Farther"), "zoom-out",
     QKeySequence::ZoomOut, "", SUMP_TR("Shrink the drawing"), Strip::Top, false, true},
    {ActionId::LongSection, "long-section", MenuId::View, SUMP_TR("L&ong section"), "", kNoKey,
     "Ctrl+Shift+L",
     SUMP_TR("Look at the line or the vault train from the side; drag or type its levels"),
     Strip::None, false, true},
    {ActionId::Grid, "grid", MenuId::View, SUMP_TR("&Grid"), "", kNoKey, "Ctrl+G",
     SUMP_TR("Show grid lines in the project's units"), Strip::None, true, false},
    {ActionId::Labels, "labels", MenuId::View, SUMP_TR("&Names"), "", kNoKey, "Ctrl+L",
     SUMP_TR("Show names and sizes on the drawing"), Strip::None, true, true},
    {ActionId::Snap, "snap", MenuId::View, SUMP_TR("&Catch points and faces"), "", kNoKey, "Ctrl+K",
     SUMP_TR("The pointer catches ends, middles, faces, alignments and the grid; Alt holds it off"),
     Strip::None, true, false},
    {ActionId::Straight, "straight", MenuId::View, SUMP_TR("&Straight and 45°"), "", kNoKey,
     "Ctrl+J",
     SUMP_TR("Legs keep to the eight directions of standard bends, as while Shift is held"),
     Strip::None, true, true},
    {ActionId::DarkWindow, "dark-window", MenuId::View, SUMP_TR("Dark &window"), "", kNoKey, "",
     SUMP_TR("Dark menus and panels"), Strip::None, true, false},
    {ActionId::DarkDrawing, "dark-drawing", MenuId::View, SUMP_TR("&Dark drawing"), "", kNoKey, "",
     SUMP_TR("Dark ground for the drawing"), Strip::None, true, true},
    {ActionId::Guide, "guide", MenuId::Help, SUMP_TR("User &guide"), "", kNoKey, "Ctrl+F1",
     SUMP_TR("The program in a quarter of an hour"), Strip::None, false, false},
    {ActionId::Glossary, "glossary", MenuId::Help, SUMP_TR("&Words of the trade"), "", kNoKey, "",
     SUMP_TR("What the words in fields and findings mean"), Strip::None, false, false},
    {ActionId::Keys, "keys", MenuId::Help, SUMP_TR("&Keys and mouse"), "",
     QKeySequence::HelpContents, "", SUMP_TR("List every key and what the mouse does"), Strip::None,
     false, false},
    {ActionId::About, "about", MenuId::Help, SUMP_TR("&About Sumpwright"), "", kNoKey, "",
     SUMP_TR("Version, licence and the limits of this program"), Strip::None, false, false},
};

} // namespace

const std::vector<ActionRow>& actionTable() {
  return kTable;
}

const char* menuTitle(MenuId menu) {
  switch (menu) {
  case MenuId::File:
    return SUMP_TR("&File");
  case MenuId::Edit:
    return SUMP_TR("&Edit");
  case MenuId::Arrange:
    return SUMP_TR("&Arrange");
  case MenuId::Draw:
    return SUMP_TR("&Draw");
  case MenuId::Lines:
    return SUMP_TR("&Lines");
  case MenuId::View:
    return SUMP_TR("&View");
  case MenuId::Help:
    break;
  }
  return SUMP_TR("&Help");
}

#undef SUMP_TR

QList<QKeySequence> keysOf(const ActionRow& row) {
  return hasUserKeys(row.name) ? userKeys(row.name) : usualKeysOf(row);
}

QList<QKeySequence> usualKeysOf(const ActionRow& row) {
  QList<QKeySequence> keys;
  if (row.standardKey != kNoKey) keys = QKeySequence::keyBindings(row.standardKey);
  // Desktops without a standard key for it (Quit, Save as) get the one in the table.
  if (keys.isEmpty() && *row.key != '\0') keys << QKeySequence(QString::fromUtf8(row.key));
  return keys;
}

} // namespace sump
