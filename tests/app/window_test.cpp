// The window by real mouse and key events, on the transit depot sample.

#include "tests/app/window_fixture.h"

#include "app/canvas/finding_place.h"
#include "core/exchange/plan_file.h"

#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTimer>

namespace sump {

using testing::samplePath;

class Window : public testing::WindowTest {};

TEST_F(Window, ShowsTheSampleWithItsFindings) {
  open(samplePath("transit-depot.sump"));
  EXPECT_TRUE(window->windowTitle().contains("transit-depot.sump"));
  EXPECT_FALSE(window->isWindowModified());
  const ReviewedPtr reviewed = document().reviewed();
  ASSERT_FALSE(reviewed->marks.empty());
  EXPECT_EQ(window->findings().table().rowCount(),
            static_cast<int>(reviewed->review.findings.size()));
  // All of the site is in sight.
  const Box all = *canvas().scene()->bounds({});
  const Box seen = canvas().view().visible();
  EXPECT_LE(seen.low.x, all.low.x);
  EXPECT_GE(seen.high.y, all.high.y);
  EXPECT_TRUE(talk.told.isEmpty());
}

TEST_F(Window, ClickSelectsAndShiftClickAdds) {
  open(samplePath("transit-depot.sump"));
  click(surePlaceOn("V1"));
  EXPECT_EQ(canvas().selection(), std::set<Id>{"V1"});
  ASSERT_NE(field<QLineEdit>("Inside floor"), nullptr);
  settle();
  QTest::qWait(100); // the panel of the vault gives the drawing another width
  click(surePlaceOn("V2"), Qt::ShiftModifier);
  EXPECT_EQ(canvas().selection(), (std::set<Id>{"V1", "V2"}));
  settle();
  QTest::qWait(100);
  click(surePlaceOn("V1"), Qt::ShiftModifier);
  EXPECT_EQ(canvas().selection(), std::set<Id>{"V2"});
  QTest::keyClick(&canvas(), Qt::Key_Escape);
  EXPECT_TRUE(canvas().selection().empty());
}

TEST_F(Window, BoxSelectsWhatIsInside) {
  open(samplePath("transit-depot.sump"));
  // Both vaults stand in this part of the yard; the paving under it reaches out of the box.
  const Point2 low{18.2, 13.9}, high{23.6, 19.0};
  dragFrom(low, high);
  release(high);
  EXPECT_TRUE(canvas().selection().contains("V1"));
  EXPECT_TRUE(canvas().selection().contains("V2"));
  EXPECT_TRUE(canvas().selection().contains("IC-1"));
  EXPECT_FALSE(canvas().selection().contains("PV-YARD"));
  EXPECT_FALSE(canvas().selection().contains("WW-1"));
}

TEST_F(Window, DragMovesAVaultAndUndoPutsItBack) {
  open(samplePath("transit-depot.sump"));
  const Plan before = plan();
  const Point2 from = placeOn("V1");
  dragFrom(from, from + Point2{0, -3});
  EXPECT_EQ(plan(), before) << "a drag is only shown until it is released";
  EXPECT_FALSE(document().shown() == before);
  release(from + Point2{0, -3});
  const Point2 moved = plan().vaults.find("V1")->centre - before.vaults.find("V1")->centre;
  EXPECT_NEAR(moved.x, 0, 0.5); // it may catch on what is near
  EXPECT_NEAR(moved.y, -3, 0.5);
  EXPECT_TRUE(window->isWindowModified());
  EXPECT_EQ(document().undoStep(), "Move");
  // What hangs in the vault went along: the drop of the link stands inside it.
  EXPECT_NEAR(plan().runs.find("LK-1")->vertices[0].at.y,
              before.runs.find("LK-1")->vertices[0].at.y + moved.y, 1e-9);
  window->action(ActionId::Undo)->trigger();
  EXPECT_EQ(plan(), before);
  EXPECT_FALSE(window->isWindowModified());
  window->action(ActionId::Redo)->trigger();
  EXPECT_FALSE(plan() == before);
}

TEST_F(Window, AltForAMomentDoesNoHarm) {
  open(samplePath("transit-depot.sump"));
  for (int i = 0; i < 3; ++i) {
    QTest::keyPress(&canvas(), Qt::Key_Alt, Qt::AltModifier);
    QTest::keyRelease(&canvas(), Qt::Key_Alt);
    QTest::keyClick(&canvas(), Qt::Key_Escape);
  }
  settle();
  EXPECT_FALSE(window->isWindowModified());
}

TEST_F(Window, EscapeRollsADragBack) {
  open(samplePath("transit-depot.sump"));
  const Plan before = plan();
  const Point2 from = surePlaceOn("V2");
  dragFrom(from, from + Point2{4, 0});
  QTest::keyClick(&canvas(), Qt::Key_Escape);
  release(from + Point2{4, 0});
  EXPECT_EQ(document().shown(), before);
  EXPECT_FALSE(document().canUndo());
}

TEST_F(Window, DrawsARunByClicks) {
  open(samplePath("transit-depot.sump"));
  const std::size_t runs = plan().runs.size();
  window->action(ActionId::ToolRun)->trigger();
  canvas().tool().choose(0, static_cast<int>(Service::Vent));
  const Point2 chamber = plan().vaults.find("V1")->frame().toSite({-1.2, 0.5});
  const Point2 corner{15, 15}, last{15, 12};
  click(chamber);
  click(corner);
  QTest::keyClick(&canvas(), Qt::Key_Backspace); // the corner goes
  click(corner);
  click(last);
  QTest::keyClick(&canvas(), Qt::Key_Return);
  ASSERT_EQ(plan().runs.size(), runs + 1);
  const sump::Run& run = plan().runs.back();
  EXPECT_EQ(run.service, Service::Vent);
  EXPECT_EQ(run.pipe, "pvc-sch80");
  EXPECT_EQ(run.from.kind, EndKind::Chamber);
  EXPECT_EQ(run.from.target, "V1");
  EXPECT_EQ(run.from.chamber, 1);
  EXPECT_EQ(run.to.kind, EndKind::Free);
  ASSERT_EQ(run.vertices.size(), 1u);
  EXPECT_NEAR(run.vertices[0].at.x, 15, 0.35);
  EXPECT_EQ(document().undoStep(), "Draw run");
  settle();
  const RunStudy* studied = document().reviewed()->review.study.run(run.id);
  ASSERT_NE(studied, nullptr);
  EXPECT_TRUE(studied->resolved) << studied->problem;
  EXPECT_EQ(canvas().selection(), std::set<Id>{run.id});
}

TEST_F(Window, DoubleClickEndsARunAndAChamberCatchesIt) {
  open(samplePath("transit-depot.sump"));
  window->action(ActionId::ToolRun)->trigger();
  canvas().tool().choose(0, static_cast<int>(Service::Signal));
  click({26, 12});
  click({28, 12});
  QTest::mouseDClick(&canvas(), Qt::LeftButton, Qt::NoModifier, pixel({30, 14}));
  // Qt sends the press of the first click before the double click; QTest does not.
  ASSERT_EQ(plan().runs.back().service, Service::Signal);
  EXPECT_EQ(plan().runs.back().to.kind, EndKind::Free);

  click({26, 10});
  const Point2 port = plan().rooms[0].frame().toSite(plan().rooms[0].ports[7].at);
  ASSERT_EQ(plan().rooms[0].ports[7].service, Service::Signal);
  click(port);
  EXPECT_EQ(plan().runs.back().to.kind, EndKind::Port);
  EXPECT_EQ(plan().runs.back().to.target, plan().rooms[0].ports[7].id);
}

TEST_F(Window, PlacesAVaultOnAnEmptySite) {
  settle();
  window->action(ActionId::ToolVault)->trigger();
  QTest::keyClick(&canvas(), Qt::Key_T);
  click({5, 5});
  ASSERT_EQ(plan().vaults.size(), 1u);
  const Vault& vault = plan().vaults[0];
  EXPECT_NEAR(inDegrees(vault.angle), 90, 1e-9);
  EXPECT_FALSE(vault.baffles.empty());
  EXPECT_EQ(vault.manways.size(), vault.baffles.size() + 1);
  EXPECT_TRUE(talk.told.isEmpty());
  window->action(ActionId::ToolRoom)->trigger();
  click({15, 5});
  ASSERT_EQ(plan().rooms.size(), 1u);
  EXPECT_EQ(plan().rooms[0].ports.size(), 9u);
  for (ActionId id :
       {ActionId::ToolBasin, ActionId::ToolWash, ActionId::ToolSewer, ActionId::ToolSpot}) {
    window->action(id)->trigger();
    click({10.0 + 2 * static_cast<int>(id), 9});
  }
  EXPECT_EQ(plan().basins.size(), 1u);
  EXPECT_EQ(plan().washes.size(), 1u);
  EXPECT_EQ(plan().sewers.size(), 1u);
  EXPECT_EQ(plan().spots.size(), 1u);
  settle();
  EXPECT_TRUE(inconsistencies(plan()).empty());
}

TEST_F(Window, PropertyTakesTypedLengthsAndKeepsTheOldOnNonsense) {
  open(samplePath("transit-depot.sump"));
  click(placeOn("V1"));
  auto* floor = field<QLineEdit>("Inside floor");
  ASSERT_NE(floor, nullptr);
  const Length before = plan().vaults.find("V1")->floor;
  floor->setFocus();
  floor->selectAll();
  QTest::keyClicks(floor, "93'-3 1/2\"");
  QTest::keyClick(floor, Qt::Key_Return);
  EXPECT_NEAR(inFeet(plan().vaults.find("V1")->floor), 93.0 + 3.5 / 12, 1e-9);
  EXPECT_EQ(document().undoStep(), "Change inside floor");

  auto* wall = field<QLineEdit>("Wall");
  ASSERT_NE(wall, nullptr);
  const Plan kept = plan();
  wall->setFocus();
  wall->selectAll();
  QTest::keyClicks(wall, "six inches");
  QTest::keyClick(wall, Qt::Key_Return);
  EXPECT_EQ(plan(), kept);
  bool told = false;
  for (QLabel* label : window->properties().findChildren<QLabel*>("field-error"))
    told = told || (label->isVisible() && label->text().startsWith("Not changed"));
  EXPECT_TRUE(told);
  // A plan that would be none is refused with its reason, too.
  wall->selectAll();
  QTest::keyClicks(wall, "-1 in");
  QTest::keyClick(wall, Qt::Key_Return);
  EXPECT_EQ(plan(), kept);
  document().undo();
  EXPECT_EQ(plan().vaults.find("V1")->floor, before);
}

TEST_F(Window, FindingsFollowTheEditAndAClickGoesThere) {
  open(samplePath("transit-depot.sump"));
  const std::size_t before = document().reviewed()->review.findings.size();
  // Without its backwater valve the overflow fails the rule of backflow protection.
  Plan changed = plan();
  sump::Run overflow = *changed.runs.find("OF-1");
  overflow.parts.clear();
  changed.runs.put(overflow);
  ASSERT_FALSE(document().commit("Take valves out", changed));
  settle();
  const std::vector<Finding>& findings = document().reviewed()->review.findings;
  EXPECT_GT(findings.size(), before);
  const auto it = std::find_if(findings.begin(), findings.end(), [](const Finding& f) {
    return f.severity >= Severity::Warning && !f.objects.empty() && f.objects[0] == "OF-1";
  });
  ASSERT_NE(it, findings.end());
  ObjectTable& table = window->findings().table();
  const int row = static_cast<int>(it - findings.begin());
  table.scrollToItem(table.item(row, 1));
  const double scale = canvas().view().scale();
  QTest::mouseClick(table.viewport(), Qt::LeftButton, Qt::NoModifier,
                    table.visualItemRect(table.item(row, 1)).center());
  EXPECT_TRUE(canvas().selection().contains("OF-1"));
  EXPECT_GT(canvas().view().scale(), scale);
  QTest::keyClick(&table, Qt::Key_Return);
  EXPECT_TRUE(canvas().selection().contains("OF-1"));
}

TEST_F(Window, SavesAndReopensTheSamePlan) {
  open(samplePath("transit-depot.sump"));
  click(surePlaceOn("V2"));
  window->action(ActionId::Duplicate)->trigger();
  EXPECT_EQ(plan().vaults.size(), 3u);
  const Plan edited = plan();
  talk.saveFile = folder.filePath("copy");
  window->action(ActionId::SaveAs)->trigger();
  EXPECT_FALSE(document().isModified());
  EXPECT_TRUE(document().filePath().endsWith("copy.sump"));
  window->action(ActionId::New)->trigger();
  EXPECT_TRUE(plan().vaults.empty());
  open(folder.filePath("copy.sump"));
  EXPECT_EQ(writePlanText(plan()), writePlanText(edited));
  EXPECT_EQ(window->files().recentFiles().first(), folder.filePath("copy.sump"));
}

TEST_F(Window, ABadFileIsToldAndWhatWasOpenStays) {
  open(samplePath("transit-depot.sump"));
  const Plan before = plan();
  QFile bad(folder.filePath("bad.sump"));
  ASSERT_TRUE(bad.open(QIODevice::WriteOnly));
  bad.write("{\"format\": \"sumpwright-plan\", ");
  bad.close();
  talk.openFile = bad.fileName();
  window->action(ActionId::Open)->trigger();
  ASSERT_EQ(talk.told.size(), 1);
  EXPECT_TRUE(talk.told[0].contains("bad.sump"));
  EXPECT_EQ(plan(), before);
  EXPECT_TRUE(document().filePath().endsWith("transit-depot.sump"));
}

TEST_F(Window, AFailedSaveKeepsThePlanModified) {
  open(samplePath("transit-depot.sump"));
  click(placeOn("V1"));
  window->action(ActionId::Delete)->trigger();
  EXPECT_EQ(plan().vaults.find("V1"), nullptr);
  EXPECT_EQ(plan().runs.find("IC-1"), nullptr) << "hung on the vault by both ends";
  ASSERT_NE(plan().runs.find("WW-1"), nullptr);
  EXPECT_EQ(plan().runs.find("WW-1")->to.kind, EndKind::Free);
  talk.saveFile = folder.filePath("no/such/folder/plan.sump");
  window->action(ActionId::SaveAs)->trigger();
  EXPECT_EQ(talk.told.size(), 1);
  EXPECT_TRUE(document().isModified());
}

TEST_F(Window, ClosingAsksAboutUnsavedChanges) {
  open(samplePath("transit-depot.sump"));
  click(placeOn("V1"));
  window->action(ActionId::Delete)->trigger();
  EXPECT_FALSE(window->close());
  EXPECT_EQ(talk.saveAsked, 1);
  talk.saveAnswer = SaveAnswer::Discard;
  EXPECT_TRUE(window->close());
}

TEST_F(Window, WritesSheetAndBill) {
  open(samplePath("transit-depot.sump"));
  const auto written = [this](ActionId id, const char* name) {
    talk.saveFile = folder.filePath(name);
    window->action(id)->trigger();
    QFile file(talk.saveFile);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
  };
  EXPECT_TRUE(written(ActionId::ExportPdf, "sheet.pdf").startsWith("%PDF"));
  EXPECT_TRUE(written(ActionId::ExportSvg, "sheet.svg").contains("<svg"));
  EXPECT_TRUE(written(ActionId::ExportBill, "bill.csv").contains("\r\n"));
  EXPECT_TRUE(written(ActionId::ExportCalculations, "how.pdf").startsWith("%PDF"));
  EXPECT_TRUE(talk.told.isEmpty()) << talk.told.join("\n").toStdString();
}

TEST_F(Window, RemembersItsLayout) {
  window->setDarkWindow(true);
  window->action(ActionId::Grid)->setChecked(false);
  EXPECT_TRUE(window->close());
  MainWindow again(talk);
  EXPECT_TRUE(again.action(ActionId::DarkWindow)->isChecked());
  EXPECT_FALSE(again.action(ActionId::Grid)->isChecked());
  again.setDarkWindow(false);
}

// Every property of every object must take back what it shows: the plan may differ by the rounding
// of the text and no more, and must still be a plan.
TEST_F(Window, EveryPropertyAcceptsItsOwnText) {
  open(samplePath("transit-depot.sump"));
  const ReviewedPtr reviewed = document().reviewed();
  const FieldContext context{plan(), document().catalog(), &reviewed->review};
  std::vector<Field> fields = projectFields(context);
  for (const char* id :
       {"V1", "ER-1", "WW-1", "RC-1", "TD-1", "WA-1", "SW-1", "B-BAY", "PV-YARD"}) {
    const std::vector<Field> more = fieldsOf(context, id);
    EXPECT_GT(more.size(), 3u) << id;
    fields.insert(fields.end(), more.begin(), more.end());
  }
  int written = 0;
  for (const Field& f : fields) {
    if (f.kind == FieldKind::Heading || f.kind == FieldKind::Fact || f.kind == FieldKind::Button)
      continue;
    QString text = f.text;
    if (f.kind == FieldKind::Choice) {
      ASSERT_GE(f.current, 0) << f.label.toStdString();
      text = QString::number(f.current);
    }
    const FieldResult result = f.write(plan(), text);
    ASSERT_TRUE(result.plan) << f.label.toStdString() << ": " << result.error.toStdString();
    EXPECT_TRUE(inconsistencies(*result.plan).empty()) << f.label.toStdString();
    ++written;
  }
  EXPECT_GT(written, 150);
}

TEST_F(Window, ButtonsOfPropertiesGivePlans) {
  open(samplePath("transit-depot.sump"));
  const FieldContext context{plan(), document().catalog(), nullptr};
  int pressed = 0;
  for (const char* id : {"V2", "ER-1", "WW-1", "RC-1", "B-BAY"}) {
    for (const Field& f : fieldsOf(context, id)) {
      if (f.kind != FieldKind::Button) continue;
      const FieldResult result = f.write(plan(), {});
      ASSERT_TRUE(result.plan) << f.label.toStdString();
      EXPECT_FALSE(*result.plan == plan()) << id << " " << f.label.toStdString();
      ++pressed;
    }
  }
  EXPECT_GT(pressed, 20);
}

// Pictures for people to look at: set SUMPWRIGHT_SCREENSHOTS to a folder.
// It would say a warning where the window's foot says that there is none.
TEST_F(Window, WhatIsAcceptedHasNoSignOnTheDrawing) {
  open(samplePath("boatyard-pad.sump"));
  canvas().fitAll();
  canvas().repaint();
  int accepted = 0;
  for (const Finding& finding : document().reviewed()->review.findings) {
    const auto place = signPlace(plan(), finding);
    if (!finding.accepted || finding.severity == Severity::Note || !place) continue;
    ++accepted;
    for (const QRectF& mark : canvas().drawn().marks)
      EXPECT_FALSE(mark.contains(canvas().view().toScreen(*place))) << finding.key();
  }
  EXPECT_GT(accepted, 0);
}

TEST_F(Window, Screenshots) {
  const QString into = qEnvironmentVariable("SUMPWRIGHT_SCREENSHOTS");
  if (into.isEmpty()) GTEST_SKIP() << "SUMPWRIGHT_SCREENSHOTS is not set";
  window->resize(1600, 1000);
  open(samplePath("transit-depot.sump"));
  canvas().fitAll();
  for (const auto* rest : window->findChildren<QTimer*>("columnsRest"))
    QTRY_VERIFY(!rest->isActive()); // lists share their columns out when a change is over
  const auto shoot = [this, &into](const QString& name, double ratio) {
    QCoreApplication::processEvents();
    QPixmap pixmap(window->size() * ratio);
    pixmap.setDevicePixelRatio(ratio);
    window->render(&pixmap);
    EXPECT_TRUE(pixmap.save(into + "/" + name + ".png"));
  };
  for (bool dark : {false, true}) {
    window->setDarkWindow(dark);
    window->setDarkDrawing(dark);
    const QString theme = dark ? "dark" : "light";
    shoot("window-" + theme + "-1x", 1);
    shoot("window-" + theme + "-2x", 2);
  }
  window->setDarkWindow(false);
  window->setDarkDrawing(false);
  window->canvas().lookAt({"V1", "V2"}, std::nullopt);
  shoot("close-light-2x", 2);
}

} // namespace sump
