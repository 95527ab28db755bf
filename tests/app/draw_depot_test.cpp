// The transit-depot plan drawn from an empty one by real mouse and key events, saved, reopened and
// compared with the sample by its study. The window's own ids stand in place of the sample's. What
// no panel can type yet is taken out of the sample before it is studied: the basis of calculation,
// footings, licensed design of the vaults, conductors and the revision list.

#include "tests/app/window_fixture.h"

#include "core/exchange/plan_file.h"
#include "core/exchange/review_json.h"

#include <nlohmann/json.hpp>

#include <QAbstractItemView>
#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>

#include <cmath>

namespace sump {

namespace {

using Json = nlohmann::json;

/// Numbers to a micrometre, everything else exactly; says where the first difference is.
void expectSame(const Json& is, const Json& should, const std::string& where) {
  if (is.is_number() && should.is_number()) {
    EXPECT_NEAR(is.get<double>(), should.get<double>(), 1e-6) << where;
    return;
  }
  ASSERT_EQ(is.type(), should.type()) << where;
  if (is.is_object() || is.is_array()) {
    ASSERT_EQ(is.size(), should.size()) << where << "\n" << is.dump() << "\n" << should.dump();
  }
  if (is.is_array()) {
    for (std::size_t i = 0; i < is.size(); ++i)
      expectSame(is[i], should[i], where + "/" + std::to_string(i));
  } else if (is.is_object()) {
    for (const auto& [key, value] : should.items()) {
      ASSERT_TRUE(is.contains(key)) << where << "/" << key;
      expectSame(is[key], value, where + "/" + key);
    }
  } else {
    EXPECT_EQ(is, should) << where;
  }
}

void rename(std::string& text, const std::string& from, const std::string& to) {
  const std::string old = "\"" + from + "\"", fresh = "\"" + to + "\"";
  for (std::size_t at = 0; (at = text.find(old, at)) != std::string::npos; at += fresh.size())
    text.replace(at, old.size(), fresh);
}

/// The sample with the ids that drawing gives, without what cannot be typed yet.
Plan expectedPlan() {
  Json json = Json::parse(
      writePlanText(readPlanFile(testing::samplePath("transit-depot.sump").toStdString())));
  json.erase("basis");
  json.erase("revisions");
  for (Json& building : json["buildings"])
    building.erase("footing");
  for (Json& vault : json["vaults"])
    vault.erase("engineered");
  for (Json& run : json["runs"])
    run.erase("conductors");
  std::string text = json.dump();
  const std::pair<const char*, const char*> names[] = {
      {"B-BAY", "B-1"},   {"B-MAINT", "B-2"}, {"PV-YARD", "PV-1"}, {"PV-PATH", "PV-2"},
      {"U-WATER", "U-1"}, {"U-ELEC", "U-2"},  {"U-SEWER", "U-3"}};
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

class DrawDepot : public testing::WindowTest {
protected:
  /// Where keys go: the entry or property in use, else the drawing.
  QWidget* keyTarget() {
    QWidget* focus = window->focusWidget();
    return focus == nullptr ? &canvas() : focus;
  }
  /// `\t` is Tab, `\n` Enter, `^` Ctrl+Enter.
  void type(const QString& text) {
    for (const QChar c : text) {
      if (c == '\t') {
        QTest::keyClick(keyTarget(), Qt::Key_Tab);
      } else if (c == '\n') {
        QTest::keyClick(keyTarget(), Qt::Key_Return);
      } else if (c == '^') {
        QTest::keyClick(keyTarget(), Qt::Key_Return, Qt::ControlModifier);
      } else {
        QTest::keyClicks(keyTarget(), QString(c));
      }
    }
    QCoreApplication::processEvents();
  }
  void useTool(ActionId id) {
    window->action(id)->trigger();
    // Somewhere on the drawing, where nothing is.
    QTest::mouseMove(&canvas(), QPoint(5, 5));
    QCoreApplication::processEvents();
  }
  /// Opens the list with F4 and walks down to the item.
  void pick(QComboBox* combo, int item) {
    ASSERT_NE(combo, nullptr);
    ASSERT_GT(combo->count(), item);
    if (combo->currentIndex() == item) return;
    combo->setFocus();
    QTest::keyClick(combo, Qt::Key_F4);
    QAbstractItemView* list = combo->view();
    QTest::keyClick(list, Qt::Key_Home);
    for (int i = 0; i < item; ++i)
      QTest::keyClick(list, Qt::Key_Down);
    QTest::keyClick(list, Qt::Key_Return);
    QCoreApplication::processEvents();
    QTest::qWait(1); // the strip and the panel rebuild themselves afterwards
  }
  void choose(const char* label, int item) {
    QComboBox* found = nullptr;
    for (QComboBox* combo : window->findChild<QWidget*>("tool-strip")->findChildren<QComboBox*>()) {
      if (combo->accessibleName() == label && combo->isVisibleTo(window.get())) found = combo;
    }
    pick(found, item);
    canvas().setFocus();
  }
  template <class T> T* nth(const char* label, int index) {
    for (T* editor : window->properties().widget()->findChildren<T*>()) {
      if (editor->accessibleName() == label && index-- == 0) return editor;
    }
    return nullptr;
  }
  void set(const char* label, const QString& text, int index = 0) {
    auto* editor = nth<QLineEdit>(label, index);
    ASSERT_NE(editor, nullptr) << label;
    editor->setFocus();
    editor->selectAll();
    QTest::keyClicks(editor, text);
    QTest::keyClick(editor, Qt::Key_Return);
    QTest::qWait(1);
    canvas().setFocus();
  }
  void press(const char* label, int index = 0) {
    auto* button = nth<QPushButton>(label, index);
    ASSERT_NE(button, nullptr) << label;
    QTest::mouseClick(button, Qt::LeftButton);
    QTest::qWait(1);
    canvas().setFocus();
  }

  void drawSite();
  void drawEquipment();
  void drawVaults();
  void drawRun(Service service, const char* name, const char* typed);
  void addPart(PartKind kind, int leg, const char* along);
  void drawWater();
  void drawEquipmentLines();
  void drawConduits();
};

void DrawDepot::drawSite() {
  set("Groundwater", "92");
  set("Frost depth", "1'");
  set("Usual grade", "101.6");
  useTool(ActionId::ToolBoundary);
  type("0\t0\ne200\t0\ne200\t128\ne188\t140\ne0\t140\n\n");
  useTool(ActionId::ToolBuilding);
  type("R30\t80\n70\t25\n");
  set("Name", "Bus wash bay");
  set("Finished floor", "102");
  type("110\t75\n80\t55\n");
  set("Name", "Maintenance building");
  set("Finished floor", "102.3");
  useTool(ActionId::ToolPaving);
  type("R20\t18\n172\t50\n");
  set("Name", "Bus yard");
  choose("Carries", 1);
  type("20\t108\n80\t5\n");
  set("Name", "Footpath");
  useTool(ActionId::ToolUtility);
  type("197\t0\n126\tN\n\n");
  set("Name", "City water main");
  set("Centreline elevation", "97");
  set("Diameter", "8 in");
  QTest::mouseClick(nth<QAbstractButton>("Public main", 0), Qt::LeftButton);
  choose("Kind", 4);
  type("0\t134\n150\t90\n4\tS\n\n");
  set("Name", "Underground electric");
  set("Centreline elevation", "99.6");
  choose("Kind", 1);
  type("2\t0\n140\tN\n\n");
  set("Name", "City sewer");
  set("Centreline elevation", "94.6");
  set("Diameter", "10 in");
  QTest::mouseClick(nth<QAbstractButton>("Public main", 0), Qt::LeftButton);
  useTool(ActionId::ToolSpot);
  for (const char* spot :
       {"101.2\t0\t0\n", "101.05\t100\t0\n", "100.8\t200\t0\n", "101.95\t0\t70\n",
        "101.45\t60\t40\n", "101.7\t100\t66\n", "101.5\t200\t70\n", "101.7\t68\t62\n",
        "101.5\t80\t48\n", "102.6\t0\t140\n", "102.45\t100\t140\n", "102.1\t200\t128\n",
        "101.95\t30\t80\n", "101.85\t110\t75\n", "101.3\t140\t40\n"})
    type(spot);
  useTool(ActionId::ToolWell);
  type("186\t12\n");
  set("Name", "Old irrigation well");
}

void DrawDepot::drawEquipment() {
  useTool(ActionId::ToolBasin);
  choose("Kind", 1);
  type("65\t92.5\t0\t102\n");
  set("Name", "Bay trench drain");
  set("Outlet invert", "99");
  useTool(ActionId::ToolSewer);
  type("4\t30\t95.78\n");
  set("Upstream manhole rim", "101.6");
  useTool(ActionId::ToolWash);
  type("65\t98\t0\t110\n");
  set("Name", "Wash arch");
  useTool(ActionId::ToolRoom);
  choose("Clear size", 1);
  type("62\t68\t0\t102\n");
  set("From the wall's start", "6'");
  // Ports follow in the order of their list; the boxes have the label three times before them.
  for (const int port : {6, 7, 8})
    set("Across the room", "0.4'", 3 + port);
  set("Invert over floor", "2.2'", 7);
}

void DrawDepot::drawVaults() {
  useTool(ActionId::ToolVault);
  choose("Model", 2);
  type("68\t50\t0\t93.25\n");
  set("Name", "Vault 1, settling");
  type("68\t58\t180\t93.25\n");
  set("Name", "Vault 2, suction");
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
  pick(nth<QComboBox>("Kind", index), static_cast<int>(row - kPartKeys.begin()));
}

void DrawDepot::drawWater() {
  drawRun(Service::Inlet, "Wash-water inlet",
          "74.5\t92.5\ne76\t92.5\ne80\t88.5\n40.5\tS\ne76\t44\n9\tW\ne65\t46\ne65\t49\t97.6\n");
  addPart(PartKind::Cleanout, 2, "30 %");
  drawRun(Service::Interconnect, "Interconnect, vault 1", "67\t50\t95.25\ne69\t50\t95.25\n");
  drawRun(Service::Link, "Link, vault 1 to 2", "72.5\t51\t95.25\ne72.5\t51\t97\ne72.5\t57\t96.9\n");
  drawRun(Service::Interconnect, "Interconnect, vault 2", "69\t58\t95.25\ne67\t58\t95.25\n");
  drawRun(Service::Suction, "Suction",
          "65.2\t58.5\t94.5\ne65.2\t58.5\t97.8\ne65.2\t69\t98^e65.2\t69\n");
  addPart(PartKind::BallValve, 2, "80");
  addPart(PartKind::Union, 2, "92");
  drawRun(Service::SpareSuction, "Spare suction",
          "64.4\t58.5\t94.5\ne64.4\t58.5\t97.8\ne64.4\t69\t98^e64.4\t69\n");
  addPart(PartKind::BallValve, 2, "80");
  addPart(PartKind::Union, 2, "92");
}

void DrawDepot::drawEquipmentLines() {
  drawRun(Service::Recirculation, "Recirculation",
          "65.7\t68.5\ne65.7\t68.5\t99.4\n4\tS\ne76\t64.5\ne76\t50\ne70.9\t50\t99.05^"
          "e70.9\t50\t98.25\n");
  addPart(PartKind::BallValve, 0, "20");
  addPart(PartKind::Union, 4, "75");
  press("Add an eductor");
  pick(nth<QComboBox>("Hangs in manway", 0), 1);
  set("Bracket foot", "98.75");
  drawRun(Service::Underflow, "Underflow", "65.7\t69.5\ne65.7\t69.5\t101\ne65.7\t91.6\t100.85\n");
  addPart(PartKind::BallValve, 0, "30");
  addPart(PartKind::Union, 0, "60");
  drawRun(Service::FloatConduit, "Float conduit",
          "66.8\t59.5\t97.85\ne66.8\t63\ne71.5\t63\ne71.5\t68.4\t98.35^e71.5\t68.4\n");
  drawRun(Service::Overflow, "Overflow to sewer", "63.5\t57\t97.25\ne31\t57\ne4\t30\n");
  addPart(PartKind::BackwaterValve, 0, "20");
  addPart(PartKind::Cleanout, 0, "30");
  drawRun(Service::MakeUp, "Fresh-water make-up",
          "58\t84\t105\ne64.4\t84\t105\ne64.4\t69.7\t105^e64.4\t69.7\n");
  addPart(PartKind::BallValve, 1, "20");
  addPart(PartKind::ReducedPressureAssembly, 1, "60");
  addPart(PartKind::SolenoidValve, 1, "85");
  drawRun(Service::Product, "Product water", "65.2\t69.7\ne65.2\t69.7\t110\ne65.2\t96.7\n");
  addPart(PartKind::Union, 0, "20");
  addPart(PartKind::BallValve, 0, "40");
}

void DrawDepot::drawConduits() {
  drawRun(Service::Vent, "Vent, vault 1",
          "73\t51.8\t97.9\ne75\t51.8\ne75\t79.4\t98.4\ne75\t79.4\t113\n\n");
  drawRun(Service::Vent, "Vent, vault 2",
          "63\t59.8\t97.9\ne60\t59.8\ne60\t79.4\t98.3\ne60\t79.4\t113\n\n");
  drawRun(Service::Power, "Power supply",
          "112\t84\t104.3\ne112\t84\t99.45\ne112\t66\t99.45\ne72.5\t66\t99.45\n"
          "e72.5\t68.4\t99.45^e72.5\t68.4\n");
  addPart(PartKind::PullBox, 2, "50");
  drawRun(Service::Signal, "Wash-demand signal",
          "69\t97\t109\ne72\t97\t109\ne72\t68.4\t109^e72\t68.4\n");
}

TEST_F(DrawDepot, ByMouseAndKeysGivesTheSamplesStudy) {
  settle();
  drawSite();
  EXPECT_EQ(plan().site.boundary.size(), 5u);
  EXPECT_EQ(plan().spots.size(), 15u);
  drawEquipment();
  drawVaults();
  drawWater();
  drawEquipmentLines();
  drawConduits();
  if (HasFatalFailure()) return;
  EXPECT_TRUE(talk.told.isEmpty()) << talk.told.join("\n").toStdString();
  talk.saveFile = folder.filePath("drawn.sump");
  window->action(ActionId::SaveAs)->trigger();
  const Plan drawn = readPlanFile(folder.filePath("drawn.sump").toStdString());
  const Plan expected = expectedPlan();
  ASSERT_EQ(drawn.runs.size(), expected.runs.size());
  const Review is = review(drawn, document().catalog());
  const Review should = review(expected, document().catalog());
  expectSame(Json::parse(levelsJson(is)), Json::parse(levelsJson(should)), "levels");
  expectSame(Json::parse(takeOffJson(is)), Json::parse(takeOffJson(should)), "take-off");
  expectSame(Json::parse(findingsJson(is)), Json::parse(findingsJson(should)), "findings");
}

} // namespace sump
