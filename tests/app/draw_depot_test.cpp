// The transit-depot plan made from an empty one by mouse and key events alone, saved, reopened and
// compared with the sample.
//
// Equal means: with the ids that the window gives put in place of the sample's own, the saved plan
// says the same in every field, and levels, quantities, findings and calculations of the two
// studies are the same, in the same order and words; numbers agree to a hundred-thousandth.

#include "tests/app/by_hand.h"
#include "tests/app/same_json.h"

#include "core/exchange/buy_list.h"
#include "core/exchange/calculation_json.h"
#include "core/exchange/plan_file.h"
#include "core/exchange/review_json.h"

namespace sump {

namespace {

using Json = nlohmann::json;
using testing::expectSame;

void rename(std::string& text, const std::string& from, const std::string& to) {
  const std::string old = "\"" + from + "\"", fresh = "\"" + to + "\"";
  for (std::size_t at = 0; (at = text.find(old, at)) != std::string::npos; at += fresh.size())
    text.replace(at, old.size(), fresh);
}

/// The sample with the ids that drawing gives.
Plan expectedPlan() {
  std::string text =
      writePlanText(readPlanFile(testing::samplePath("transit-depot.sump").toStdString()));
  const std::pair<const char*, const char*> names[] = {
      {"B-BAY", "B-1"},    {"B-MAINT", "B-2"},   {"B-EQ", "B-3"},    {"PV-YARD", "PV-1"},
      {"PV-PATH", "PV-2"}, {"PV-APRON", "PV-3"}, {"U-WATER", "U-1"}, {"U-ELEC", "U-2"},
      {"U-SEWER", "U-3"},  {"D-SIDE", "WD-1"},   {"D-TOP", "WD-2"},  {"D-RINSE", "WD-3"},
      {"SP-M", "PS-1"},    {"SP-C", "PS-2"},     {"SC-W", "SC-1"},   {"SC-F", "SC-2"},
      {"N-PW", "DN-1"}};
  for (const auto& [from, to] : names)
    rename(text, from, to);
  for (int i = 1; i <= 15; ++i)
    rename(text, "E-" + std::to_string(i), "SP-" + std::to_string(i));
  for (const char* port : {"SU", "SS", "RC", "UF", "PW", "MU", "FC", "SG", "PC"})
    rename(text, std::string("P-") + port, std::string("ER-1-") + port);
  for (const char* vault : {"1", "2"}) {
    const std::string v(vault);
    rename(text, "V" + v, "V-" + v);
    for (const char* part : {"-B1", "-M1", "-M2"})
      rename(text, "V" + v + part, "V-" + v + part);
  }
  return readPlanText(text, "expected");
}

} // namespace

class DrawDepot : public testing::ByHand {
protected:
  void writeTitleBlock();
  void drawSite();
  void drawEquipment();
  void drawVaults();
  void drawRun(Service service, const char* name, const char* typed);
  void addPart(PartKind kind, int leg, const char* along);
  void addConductors(const char* size, const char* count, CircuitKind kind);
  void drawWater();
  void drawEquipmentLines();
  void letterProductLine();
  void drawConduits();
  void tellWater();
  void tellDemand();
  void tellPump();
  void tellGround();
  void tellWiring();
};

void DrawDepot::writeTitleBlock() {
  const std::pair<const char*, const char*> lines[] = {
      {"Title", "Bus wash water reclaim"},
      {"Second title", "Underground tankage and plumbing"},
      {"Owner", "Larkmoor Transit Authority"},
      {"Site address", "Harrow Street Depot, Larkmoor"},
      {"Drawing number", "LTA-HSD-0417"},
      {"Revision", "A"},
      {"Date of issue", "2026-11-02"},
      {"Drawn by", "R. Okafor"},
      {"Approved by", "M. Lindqvist"},
      {"Status", "For coordination"},
      {"Datum", "Depot benchmark, brass disc in north kerb = 102.50 ft"},
      {"True north", "8"}};
  for (const auto& [label, text] : lines)
    set(label, text);
  press("Add a revision");
  set("Index", "A");
  set("Date", "2026-11-02");
  set("What changed", "Issued for coordination");
  set("By", "R. Okafor");
}

void DrawDepot::drawSite() {
  set("Groundwater", "92");
  set("Frost depth", "1'");
  set("Usual grade", "101.6");
  useTool(ActionId::ToolBoundary);
  type("0\t0\ne200\t0\ne200\t128\ne188\t140\ne0\t140\n\n");
  useTool(ActionId::ToolBuilding);
  type("R30\t80\n70\t25\n");
  set("Name", "Existing bus wash bay");
  set("Finished floor", "102");
  set("Underside of footing", "29.6 m");
  set("Top of roof", "120");
  type("110\t75\n80\t55\n");
  set("Name", "Existing maintenance building");
  set("Finished floor", "102.3");
  set("Underside of footing", "29.9 m");
  set("Top of roof", "123");
  type("61.5\t67.5\n13\t12.5\n");
  set("Name", "Existing equipment building");
  set("Finished floor", "102");
  set("Underside of footing", "29.4 m");
  set("Top of roof", "112");
  useTool(ActionId::ToolPaving);
  type("R20\t18\n172\t49.5\n");
  set("Name", "Bus yard");
  choose("Carries", 1);
  type("20\t108\n80\t5\n");
  set("Name", "Footpath");
  choose("Carries", 0);
  type("6\t67.5\n24\t37.5\n");
  set("Name", "Bus apron");
  useTool(ActionId::ToolUtility);
  // Bearings are typed from true north, which is 8 degrees to the left of the plan's top.
  type("197\t0\n126\tN8E\n\n");
  set("Name", "City water main");
  set("Centreline elevation", "97");
  set("Diameter", "8 in");
  tick("Public main");
  choose("Kind", 4);
  type("0\t134\n150\t98\n4\tS8W\n\n");
  set("Name", "Underground electric");
  set("Centreline elevation", "99.6");
  choose("Kind", 1);
  type("4\t0\n140\tN8E\n\n");
  set("Name", "City sewer");
  set("Centreline elevation", "95.84");
  set("Diameter", "10 in");
  tick("Public main");
  useTool(ActionId::ToolSpot);
  for (const char* spot :
       {"101.2\t0\t0\n", "101.05\t100\t0\n", "100.8\t200\t0\n", "101.95\t0\t70\n",
        "101.45\t60\t40\n", "101.7\t100\t66\n", "101.5\t200\t70\n", "101.7\t68\t62\n",
        "101.5\t80\t48\n", "102.6\t0\t140\n", "102.45\t100\t140\n", "102.1\t200\t128\n",
        "101.95\t30\t80\n", "101.85\t110\t75\n", "101.3\t140\t40\n"})
    type(spot);
  useTool(ActionId::ToolWell);
  type("186\t12\n");
  set("Name", "Old irrigation well, capped");
}

void DrawDepot::drawEquipment() {
  useTool(ActionId::ToolBasin);
  choose("Kind", 1);
  type("65\t92.5\t0\t102\n");
  set("Name", "Existing bay trench drain");
  set("Outlet invert", "99");
  useTool(ActionId::ToolSewer);
  type("4\t30\t95.78\n");
  set("Upstream manhole rim", "102.3");
  useTool(ActionId::ToolWash);
  type("65.2\t92.5\t90\t118\n");
  set("Name", "Existing wash arch");
  useTool(ActionId::ToolRoom);
  choose("Clear size", 1);
  type("62\t68\t0\t102\n");
  set("From the wall's start", "6'");
  set("Depth", "18 in", 2); // of the panel, after skid and plumbing area
  // Ports follow in the order of their list; the boxes have the label three times before them.
  for (const int port : {6, 7, 8})
    set("Across the room", "9 in", 3 + port);
  set("Height over floor", "1.5'", 3);
  set("Height over floor", "6 in", 6);
  set("Height over floor", "6.5'", 7);
  set("Height over floor", "6 in", 8);
  press("Add"); // the floor drain, which follows the three boxes
  set("Along the room", "2'", 3);
  set("Across the room", "7'", 3);
}

void DrawDepot::drawVaults() {
  useTool(ActionId::ToolVault);
  choose("Model", 2);
  const std::pair<const char*, const char*> vaults[] = {
      {"68\t50\t0\t93.25\n", "Vault 1, settling"}, {"68\t58\t180\t93.25\n", "Vault 2, suction"}};
  for (const auto& [place, name] : vaults) {
    type(place);
    set("Name", name);
    tick("Engineered");
    set("Gap above", "1 in");
    set("Along the vault", "-2.9'", 0);
    set("Along the vault", "2.9'", 1);
    // The inlet's tee stands in one, two foot valves in the other.
    set("Opening", "30 in", name == vaults[0].second ? 0 : 1);
  }
}

void DrawDepot::drawRun(Service service, const char* name, const char* typed) {
  useTool(ActionId::ToolRun);
  choose("Line", static_cast<int>(service));
  const std::size_t before = plan().runs.size();
  type(typed);
  ASSERT_EQ(plan().runs.size(), before + 1) << name << ": " << talk.told.join("; ").toStdString();
  set("Name", name);
}

void DrawDepot::addPart(PartKind kind, int leg, const char* along) {
  const int index = static_cast<int>(plan().runs.back().parts.size());
  press("Add a part");
  set("On leg", QString::number(leg + 1), index);
  set("Along the leg", along, index);
  const auto row = std::ranges::find(kPartKeys, kind, [](const auto& r) { return r.first; });
  setChoice("Kind", static_cast<int>(row - kPartKeys.begin()), index);
}

void DrawDepot::addConductors(const char* size, const char* count, CircuitKind kind) {
  const int index = static_cast<int>(plan().runs.back().conductors.size());
  press("Add conductors");
  set("Wire size", size, index);
  set("How many", count, index);
  const auto row = std::ranges::find(kCircuitKeys, kind, [](const auto& r) { return r.first; });
  setChoice("Circuit", static_cast<int>(row - kCircuitKeys.begin()), index);
}

void DrawDepot::drawWater() {
  drawRun(
      Service::Inlet, "Wash-water inlet",
      "75\t92.5\ne77\t92.5\ne80\t89.5\n45.5\tS8W\ne78\t42\n9\t278\ne65\t46\ne65\t49.2\t97.43\n");
  set("End of down leg", "96");
  addPart(PartKind::Cleanout, 2, "30 %");
  drawRun(Service::Interconnect, "Interconnect, vault 1", "67\t50\t95.25\ne69\t50\t95.25\n");
  drawRun(Service::Link, "Link, vault 1 to 2", "72.5\t51\t95.25\ne72.5\t51\t97\ne72.5\t57\t96.9\n");
  drawRun(Service::Interconnect, "Interconnect, vault 2", "69\t58\t94.8\ne67\t58\t94.8\n");
  drawRun(Service::Suction, "Suction",
          "65.2\t58.5\t94.5\ne65.2\t58.5\t97.76\ne65.2\t69\t98^e65.2\t69\n");
  addPart(PartKind::BallValve, 2, "80");
  addPart(PartKind::Union, 2, "92");
  addPart(PartKind::Union, 0, "85");
  drawRun(Service::SpareSuction, "Spare suction",
          "64.4\t58.5\t94.5\ne64.4\t58.5\t97.76\ne64.4\t69\t98^e64.4\t69\n");
  addPart(PartKind::BallValve, 2, "80");
  addPart(PartKind::Union, 2, "92");
  addPart(PartKind::Union, 0, "85");
}

void DrawDepot::drawEquipmentLines() {
  drawRun(Service::Recirculation, "Recirculation",
          "65.7\t68.5\ne65.7\t68.5\t99.4\n6.5\t188\ne75\t62\ne75\t50\ne71.35\t50\t99.2^"
          "e71.35\t50\t98.25\n");
  addPart(PartKind::BallValve, 0, "16");
  addPart(PartKind::Union, 5, "30");
  addPart(PartKind::Union, 0, "5");
  press("Add an eductor");
  setChoice("Hangs in manway", 1);
  set("Bracket foot", "98.75");
  drawRun(Service::Underflow, "Underflow",
          "65.7\t69.5\ne65.7\t69.5\t101\ne65.7\t81\ne68.5\t83.8\ne68.5\t91.5\t100.85\n");
  addPart(PartKind::Union, 0, "15");
  addPart(PartKind::BallValve, 0, "42");
  drawRun(Service::FloatConduit, "Float conduit",
          "66.2\t58.9\t97.83\ne66.2\t66\ne71.5\t66\ne71.5\t68.75\t98.35^e71.5\t68.75\n");
  addConductors("14", "2", CircuitKind::Class2);
  drawRun(Service::Overflow, "Overflow to sewer", "63.5\t57\t97.25\ne31\t57\ne4\t30\n");
  set("End of down leg", "95.75");
  addPart(PartKind::BackwaterValve, 0, "20");
  addPart(PartKind::Cleanout, 0, "30");
  drawRun(Service::MakeUp, "Fresh-water make-up, from 1 in stub",
          "58\t81.25\t105\ne62.5\t81.25\t105\ne62.5\t69.7\t105\ne64.4\t69.7\n");
  addPart(PartKind::BallValve, 0, "70");
  addPart(PartKind::ReducedPressureAssembly, 1, "50");
  addPart(PartKind::SolenoidValve, 1, "80");
  addPart(PartKind::Union, 2, "40");
  drawRun(Service::Product, "Product water",
          "65.2\t69.7\ne65.2\t69.7\t110\ne65.2\t81.25\t110\ne65.2\t81.25\t118\ne65.2\t92.5\n");
  addPart(PartKind::Union, 0, "20");
  addPart(PartKind::BallValve, 0, "40");
}

/// Placed by eye on the line, then told its place and words.
void DrawDepot::letterProductLine() {
  useTool(ActionId::ToolNote);
  const Point2 place{65.2 * 0.3048, 27};
  for (int i = 0; i < 3; ++i)
    click(place);
  rest();
  for (int end = 0; end < 2; ++end) {
    setChoice("Follows", nth<QComboBox>("Follows", end)->findText("PW-1", Qt::MatchContains), end);
    set("Along", "19.87296 m", end);
    set("Across", "27 m", end);
  }
  set("Set off by", "9.4 m");
  set("Text", "PURPLE TAPE AND LABELS: NONPOTABLE WATER - DO NOT DRINK");
}

void DrawDepot::drawConduits() {
  drawRun(Service::Vent, "Vent, vault 1",
          "73\t51.8\t97.7\ne79\t51.8\ne79\t79.4\t98.4\ne79\t79.4\t120.5\n\n");
  drawRun(Service::Vent, "Vent, vault 2",
          "63\t59.8\t97.7\ne57\t59.8\ne57\t79.4\t98.3\ne57\t79.4\t120.5\n\n");
  drawRun(Service::Power, "Power supply",
          "112\t84\t104.3\ne112\t84\t99.45\ne112\t66\t99.45\ne72.5\t66\t99.45\n"
          "e72.5\t68.75\t99.45^e72.5\t68.75\n");
  addPart(PartKind::PullBox, 1, "70");
  addConductors("8", "4", CircuitKind::Power);
  addConductors("12", "3", CircuitKind::Control);
  drawRun(Service::Signal, "Wash-demand signal",
          "66\t84.9\t110\ne66\t81.25\t110\ne72\t81.25\t110\ne72\t68.75\t110^e72\t68.75\n");
  addConductors("14", "3", CircuitKind::Control);
}

void DrawDepot::tellWater() {
  openGroup(0);
  know("water.temperature", "86");
  know("water.altitude", "312 m");
  know("water.sludgeDepth", "8 in");
  know("water.oilDepth", "2 in");
  know("water.suspendedSolids", "800");
  know("water.lowLevel", "33 in");
}

void DrawDepot::tellDemand() {
  openGroup(1);
  know("demand.simultaneity", "100");
  know("demand.lostFraction", "15 %");
  know("demand.otherInflow", "5 gpm");
  addRow("demand.devices",
         {"Side spray bars", "Existing wash arch", "12 gpm", "30 psi", "2", "80"});
  addRow("demand.devices", {"Top spray bar", "Existing wash arch", "10", "30", "", "60"});
  addRow("demand.devices",
         {"Final rinse, fresh water", "Existing wash arch", "6", "35", "", "20", "tick"});
  addRow("demand.vehicles", {"Standard bus", "8", "56", "110 gal", "0.05 ft3"});
  addRow("demand.vehicles", {"Articulated bus", "2", "12", "150", "0.08 ft3"});
}

void DrawDepot::tellPump() {
  openGroup(2);
  know("pump.name", "Close-coupled centrifugal, 3 hp");
  know("pump.equipmentLoss", "14");
  know("pump.recirculation", "8");
  know("pump.underflow", "20");
  know("pump.strainerLoss", "1");
  know("pump.primingHose", "5");
  know("pump.strainerVolume", "1.5");
  know("pump.eductorPressure", "20");
  addRow("pump.curve", {"0", "152", "4"});
  addRow("pump.curve", {"20", "148", "4.5"});
  addRow("pump.curve", {"40", "136", "5.5"});
  addRow("pump.curve", {"60", "114", "7.5"});
  addRow("pump.curve", {"80", "82", "10.5"});
  openGroup(3);
  know("makeUp.pressure", "60");
  know("makeUp.flow", "8");
}

void DrawDepot::tellGround() {
  openGroup(4);
  knowChoice("earth.soil", 3);
  knowTick("earth.previouslyDisturbed");
  knowChoice("earth.protection", 3);
  knowChoice("earth.soilHold", 2);
  know("earth.ladders",
       "18.5 m, 16.4 m; 22.9 m, 16.4 m; 15 m, 17.3736 m; 5 m, 12.9 m; "
       "24.384 m, 15.5 m; 19.75 m, 19.75 m; 21 m, 20.1168 m; 17.3736 m, 19.5 m; 24.0792 m, 19 m");
  know("earth.spoil", "27 m, 6.5 m; 45 m, 6.5 m; 45 m, 14 m; 27 m, 14 m");
}

void DrawDepot::tellWiring() {
  openGroup(5);
  knowChoice("wiring.facingPanel", 2);
  addRow("wiring.supplies",
         {"Pump and compressor", "Motor, three phases", "460", "277", "PC-1", "73.6 ft, 70.8 ft"});
  addRow("wiring.supplies",
         {"Controls", "Control, one phase", "110", "120", "PC-1", "73.6 ft, 72 ft"});
  addRow("wiring.signalCircuits", {"Wash demand", "110 V AC", "SG-1"});
  addRow("wiring.signalCircuits", {"Low-level float", "24 V AC", "FC-1"});
}

TEST_F(DrawDepot, ByMouseAndKeysGivesTheSamplesStudy) {
  settle();
  writeTitleBlock();
  drawSite();
  drawEquipment();
  drawVaults();
  drawWater();
  drawEquipmentLines();
  drawConduits();
  letterProductLine();
  tellWater();
  tellDemand();
  tellPump();
  tellGround();
  tellWiring();
  if (HasFatalFailure()) return;
  EXPECT_TRUE(talk.told.isEmpty()) << talk.told.join("\n").toStdString();
  talk.saveFile = folder.filePath("drawn.sump");
  command(ActionId::Save);
  const Plan drawn = readPlanFile(talk.saveFile.toStdString());
  const Plan expected = expectedPlan();
  expectSame(Json::parse(writePlanText(drawn)), Json::parse(writePlanText(expected)), "plan");
  const Review is = review(drawn, document().catalog());
  const Review should = review(expected, document().catalog());
  expectSame(Json::parse(levelsJson(is)), Json::parse(levelsJson(should)), "levels");
  expectSame(Json::parse(takeOffJson(buyList(is))), Json::parse(takeOffJson(buyList(should))),
             "quantities");
  expectSame(Json::parse(findingsJson(is)), Json::parse(findingsJson(should)), "findings");
  expectSame(Json::parse(calculationJson(calculations(drawn, is.study))),
             Json::parse(calculationJson(calculations(expected, should.study))), "calculations");
  // The window that reopens it shows the same plan.
  open(talk.saveFile);
  EXPECT_EQ(plan(), drawn);
  EXPECT_FALSE(document().isModified());
}

} // namespace sump
