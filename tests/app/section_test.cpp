// The long section by real mouse and key events.

#include "tests/app/drawing_check.h"
#include "tests/app/window_fixture.h"

#include "app/section/level_steps.h"
#include "app/section/section_panel.h"
#include "core/plan/edits_group.h"
#include "core/plan/edits_levels.h"

#include <QComboBox>
#include <QDockWidget>
#include <QHelpEvent>
#include <QLineEdit>
#include <QMouseEvent>
#include <QToolButton>
#include <QToolTip>

#include <cmath>

namespace sump {

using testing::samplePath;

class SectionWindow : public testing::WindowTest {
protected:
  SectionPanel& panel() { return *window->findChild<SectionPanel*>("section-panel"); }
  LongSection& section() { return panel().section(); }
  void show(int height = 420) {
    window->action(ActionId::LongSection)->trigger();
    auto* dock = window->findChild<QDockWidget*>("dock-section");
    window->resizeDocks({dock}, {height}, Qt::Vertical);
    QCoreApplication::processEvents();
    ASSERT_TRUE(section().isVisible());
  }
  void openAndShow(const char* sample = "transit-depot.sump") {
    open(samplePath(sample));
    show();
  }
  void showLine(const Id& run) {
    canvas().select({run});
    QCoreApplication::processEvents();
    ASSERT_EQ(section().kind(), SectionKind::Line);
    ASSERT_EQ(section().run(), run);
    ASSERT_FALSE(section().drawing().empty()) << run;
  }
  SectionHandle handle(const Id& run, int vertex) {
    for (const SectionHandle& h : section().drawing().handles) {
      if (h.run == run && h.vertex == vertex) return h;
    }
    ADD_FAILURE() << "no handle " << vertex << " of " << run;
    return {};
  }
  QPoint pixelOf(const SectionHandle& h) { return section().place(h).toPoint(); }
  double pixelsPerMetre() {
    return section().place(0, metres(0)).y() - section().place(0, metres(1)).y();
  }
  /// Presses on a handle and moves it by so many pixels, without letting go.
  void drag(const SectionHandle& h, int down, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
    const QPoint from = pixelOf(h);
    QTest::mousePress(&section(), Qt::LeftButton, modifiers, from);
    QTest::mouseMove(&section(), from + QPoint(0, down / 2));
    QTest::mouseMove(&section(), from + QPoint(0, down));
  }
  void letGo(const QPoint& at) {
    QTest::mouseRelease(&section(), Qt::LeftButton, Qt::NoModifier, at);
  }
  /// Of the entry that is open; one opened before may still wait to be deleted.
  QLineEdit* field() { return section().entry().findChildren<QLineEdit*>().last(); }
  void type(const char* text) {
    ASSERT_TRUE(section().entry().isVisible());
    field()->selectAll();
    QTest::keyClick(field(), Qt::Key_Delete);
    QTest::keyClicks(field(), text);
    QTest::keyClick(field(), Qt::Key_Return);
  }
  std::optional<Length> stated(const Id& run, int vertex) {
    return statedInvert(*plan().runs.find(run), vertex);
  }
};

TEST_F(SectionWindow, FollowsTheSelection) {
  openAndShow();
  EXPECT_EQ(section().kind(), SectionKind::Train);
  ASSERT_TRUE(section().drawing().train);
  EXPECT_EQ(section().drawing().train->vaults.size(), 2u);
  showLine("WW-1");
  canvas().select({"TD-1"}); // neither line nor vault: nothing changes
  EXPECT_EQ(section().run(), "WW-1");
  canvas().select({"V1"});
  EXPECT_EQ(section().kind(), SectionKind::Train);
  showLine("OF-1");
  canvas().select({});
  EXPECT_EQ(section().kind(), SectionKind::Train);
}

TEST_F(SectionWindow, SwitchesByItsButtonsAndList) {
  openAndShow();
  auto* lines = panel().findChild<QComboBox*>("section-lines");
  ASSERT_EQ(lines->count(), static_cast<int>(plan().runs.size()));
  QTest::mouseClick(panel().findChild<QToolButton*>("section-line"), Qt::LeftButton);
  EXPECT_EQ(section().kind(), SectionKind::Line);
  EXPECT_EQ(section().run(), "WW-1");
  QTest::mouseClick(panel().findChild<QToolButton*>("section-train"), Qt::LeftButton);
  EXPECT_EQ(section().kind(), SectionKind::Train);
  lines->setCurrentIndex(lines->findData("SU-1"));
  emit lines->activated(lines->currentIndex());
  EXPECT_EQ(section().run(), "SU-1");
  EXPECT_EQ(canvas().selection(), (std::set<Id>{"SU-1"}));
}

TEST_F(SectionWindow, ClickingSelectsOnTheDrawing) {
  openAndShow();
  // The middle of vault 2's second chamber holds nothing but water.
  const ProfileVault& vault = section().drawing().train->vaults[1];
  const ProfileChamber& chamber = vault.chambers[0];
  const QPoint at = section().place(chamber.from + 0.15, vault.floor + metres(0.15)).toPoint();
  QTest::mouseClick(&section(), Qt::LeftButton, Qt::NoModifier, at);
  EXPECT_EQ(canvas().selection(), (std::set<Id>{"V2"}));
  EXPECT_EQ(section().kind(), SectionKind::Train);
}

TEST_F(SectionWindow, DragsAnInvertAsOneStep) {
  openAndShow();
  showLine("PC-1"); // a conduit far above the water: nothing to catch but its own corners
  const Plan before = plan();
  const SectionHandle corner = handle("PC-1", 1);
  const int down = 31;
  const double moved = down / pixelsPerMetre();
  drag(corner, down);
  EXPECT_TRUE(document().isPreviewing());
  EXPECT_EQ(plan(), before);
  for (const char* word : {"INV", "before: ", "after: ", "cover"})
    EXPECT_TRUE(section().readOut().contains(word)) << section().readOut().toStdString();
  letGo(pixelOf(corner) + QPoint(0, down));
  EXPECT_FALSE(document().isPreviewing());
  EXPECT_EQ(document().undoStep(), "Level of PC-1, corner 2");
  const double level = inMetres(*stated("PC-1", 1));
  const double step = inMetres(levelStep(pixelsPerMetre(), UnitSystem::UsCustomary));
  EXPECT_NEAR(level, inMetres(corner.invert) - moved, step / 2 + 1.0 / pixelsPerMetre());
  EXPECT_NEAR(std::remainder(level, step), 0, 1e-9) << "on a neat step";
  settle();
  EXPECT_NEAR(document().reviewed()->review.study.run("PC-1")->points[2].at.z, level, 1e-12);
  document().undo();
  EXPECT_EQ(plan(), before);
}

TEST_F(SectionWindow, DragsAWholeLineByItsPipe) {
  openAndShow();
  showLine("PC-1");
  const Plan before = plan();
  const SectionHandle a = handle("PC-1", 1), b = handle("PC-1", 2);
  const QPoint middle = ((section().place(a) + section().place(b)) / 2).toPoint();
  QTest::mousePress(&section(), Qt::LeftButton, Qt::NoModifier, middle);
  QTest::mouseMove(&section(), middle + QPoint(0, 10));
  QTest::mouseMove(&section(), middle + QPoint(0, 26));
  EXPECT_TRUE(document().isPreviewing());
  letGo(middle + QPoint(0, 26));
  EXPECT_EQ(document().undoStep(), "Height of PC-1");
  const Length by = *stated("PC-1", 1) - a.invert;
  EXPECT_LT(by, metres(0));
  EXPECT_NEAR(inMetres(*stated("PC-1", 2) - b.invert), inMetres(by), 1e-12);
  EXPECT_NEAR(inMetres(*stated("PC-1", -1) - *statedInvert(*before.runs.find("PC-1"), -1)),
              inMetres(by), 1e-12);
  EXPECT_FALSE(stated("PC-1", 4)) << "the port knows its level still";
  document().undo();
  EXPECT_EQ(plan(), before);
}

TEST_F(SectionWindow, UndoEndsADrag) {
  openAndShow();
  document().commit("Move", setInvert(plan(), "PC-1", 1, feet(99)));
  settle();
  showLine("PC-1");
  const SectionHandle corner = handle("PC-1", 1);
  const QPoint at = pixelOf(corner);
  drag(corner, 30);
  window->action(ActionId::Undo)->trigger();
  const Plan undone = plan();
  letGo(at + QPoint(0, 30));
  EXPECT_EQ(plan(), undone);
  EXPECT_FALSE(document().isPreviewing());
}

TEST_F(SectionWindow, HidingEndsADrag) {
  openAndShow();
  showLine("PC-1");
  drag(handle("PC-1", 1), 30);
  EXPECT_TRUE(document().isPreviewing());
  window->findChild<QDockWidget*>("dock-section")->hide();
  QCoreApplication::processEvents();
  EXPECT_FALSE(document().isPreviewing());
  EXPECT_FALSE(document().canUndo());
}

TEST_F(SectionWindow, AWindowMayGoDuringADrag) {
  openAndShow();
  showLine("PC-1");
  drag(handle("PC-1", 1), 30);
  EXPECT_TRUE(document().isPreviewing());
  window.reset(); // address sanitizer watches
}

TEST_F(SectionWindow, AltHoldsTheStepsOff) {
  openAndShow();
  showLine("PC-1");
  const SectionHandle corner = handle("PC-1", 1);
  // Events that QTest sends bring the modifiers of the press only.
  const QPoint from = pixelOf(corner), to = from + QPoint(0, 31);
  QTest::mousePress(&section(), Qt::LeftButton, Qt::AltModifier, from);
  QMouseEvent move(QEvent::MouseMove, to, section().mapToGlobal(to), Qt::NoButton, Qt::LeftButton,
                   Qt::AltModifier);
  QApplication::sendEvent(&section(), &move);
  letGo(to);
  EXPECT_NEAR(inMetres(*stated("PC-1", 1)), inMetres(corner.invert) - 31 / pixelsPerMetre(), 1e-9);
}

TEST(LevelSteps, AreNeatAndCatch) {
  // 200 pixels a metre: 0.05 ft = 15.24 mm are 3.05 pixels, 0.02 ft are not 3.
  EXPECT_EQ(levelStep(200, UnitSystem::UsCustomary), feet(0.05));
  EXPECT_EQ(levelStep(200, UnitSystem::Metric), millimetres(25));
  EXPECT_NEAR(inFeet(neatLevel(feet(97.237), 200, UnitSystem::UsCustomary, {})), 97.25, 1e-9);
  // 0.09 ft = 27 mm are 5.5 pixels: near enough to be caught; 0.1 ft are 6.1.
  EXPECT_EQ(neatLevel(feet(97.237), 200, UnitSystem::UsCustomary, {feet(97.327)}), feet(97.327));
  EXPECT_NEAR(inFeet(neatLevel(feet(97.237), 200, UnitSystem::UsCustomary, {feet(97.337)})), 97.25,
              1e-9);
}

TEST_F(SectionWindow, TheStudyFollowsWhileDragging) {
  openAndShow();
  showLine("OF-1");
  const SectionHandle start = handle("OF-1", -1);
  const QPoint at = pixelOf(start);
  drag(start, -12);
  const Length wanted = *statedInvert(*document().shown().runs.find("OF-1"), -1);
  EXPECT_GT(wanted, start.invert);
  settle();
  EXPECT_TRUE(document().isPreviewing());
  EXPECT_EQ(handle("OF-1", -1).invert, wanted);
  // The water stands at the overflow: it has risen in the section too.
  ASSERT_FALSE(section().drawing().line->vaults.empty());
  EXPECT_EQ(*section().drawing().line->vaults.back().chambers.front().rest, wanted);
  letGo(at + QPoint(0, -12));
}

TEST_F(SectionWindow, EscLeavesNoTraceOfADrag) {
  openAndShow();
  showLine("SU-1");
  const Plan before = plan();
  const SectionHandle corner = handle("SU-1", 0);
  const QPoint at = pixelOf(corner);
  drag(corner, 25);
  EXPECT_TRUE(document().isPreviewing());
  QTest::keyClick(&section(), Qt::Key_Escape);
  EXPECT_FALSE(document().isPreviewing());
  letGo(at + QPoint(0, 25));
  EXPECT_EQ(plan(), before);
  EXPECT_FALSE(document().canUndo());
}

TEST_F(SectionWindow, AClickAloneChangesNothing) {
  openAndShow();
  showLine("SU-1");
  QTest::mouseClick(&section(), Qt::LeftButton, Qt::NoModifier, pixelOf(handle("SU-1", 0)));
  EXPECT_FALSE(document().canUndo());
  ASSERT_NE(section().current(), nullptr);
  EXPECT_EQ(section().current()->vertex, 0);
}

TEST_F(SectionWindow, TypesALevelWithASum) {
  openAndShow();
  showLine("SU-1");
  const Length before = *stated("SU-1", 0);
  QTest::mouseDClick(&section(), Qt::LeftButton, Qt::NoModifier, pixelOf(handle("SU-1", 0)));
  EXPECT_EQ(field()->text(), QString::number(inFeet(before), 'f', 2));
  type("97 + 9\"");
  EXPECT_FALSE(section().entry().isVisible());
  EXPECT_NEAR(inFeet(*stated("SU-1", 0)), 97.75, 1e-9);
  EXPECT_EQ(document().undoStep(), "Level of SU-1, corner 1");
  document().undo();
  EXPECT_NEAR(inMetres(*stated("SU-1", 0)), inMetres(before), 1e-9);
}

TEST_F(SectionWindow, EmptyGivesTheLevelBack) {
  openAndShow();
  showLine("SU-1");
  section().setFocus();
  section().setCurrent(handle("SU-1", 0));
  QTest::keyClick(&section(), Qt::Key_Return);
  type("");
  EXPECT_FALSE(stated("SU-1", 0)) << "straight grade from here on";
  settle();
  // The foot valve end hangs in a chamber: nothing else knows its level.
  section().setCurrent(handle("SU-1", -1));
  QTest::keyClick(&section(), Qt::Key_Return);
  type("");
  EXPECT_TRUE(section().entry().isVisible()) << "it says why";
  EXPECT_TRUE(stated("SU-1", -1));
  QTest::keyClick(field(), Qt::Key_Escape);
  EXPECT_FALSE(section().entry().isVisible());
}

TEST_F(SectionWindow, AnEndThatItsTargetKnowsIsTypedNotDragged) {
  openAndShow();
  showLine("WW-1");
  const SectionHandle start = handle("WW-1", -1);
  EXPECT_TRUE(start.held);
  const QPoint at = pixelOf(start);
  drag(start, 20);
  letGo(at + QPoint(0, 20));
  EXPECT_FALSE(document().canUndo());
  section().setCurrent(start);
  QTest::keyClick(&section(), Qt::Key_F2);
  type("99");
  EXPECT_NEAR(inFeet(*stated("WW-1", -1)), 99, 1e-9);
}

TEST_F(SectionWindow, KeysWalkAndNudge) {
  openAndShow();
  showLine("SU-1");
  section().setFocus();
  EXPECT_EQ(section().current(), nullptr);
  QTest::keyClick(&section(), Qt::Key_Tab);
  ASSERT_NE(section().current(), nullptr);
  EXPECT_EQ(section().current()->vertex, section().drawing().handles.front().vertex);
  QTest::keyClick(&section(), Qt::Key_Tab);
  const SectionHandle second = *section().current();
  EXPECT_TRUE(second.same(section().drawing().handles[1]));
  EXPECT_TRUE(section().accessibleDescription().startsWith(handleName(plan(), second)))
      << section().accessibleDescription().toStdString();
  QTest::keyClick(&section(), Qt::Key_Up);
  EXPECT_NEAR(inFeet(*stated("SU-1", second.vertex)),
              std::round(inFeet(second.invert) * 100) / 100 + 0.01, 1e-9);
  QTest::keyClick(&section(), Qt::Key_Down, Qt::ControlModifier);
  EXPECT_NEAR(inFeet(*stated("SU-1", second.vertex)),
              std::round(inFeet(second.invert) * 100) / 100 - 0.09, 1e-9);
  // A digit begins a level.
  QTest::keyClick(&section(), Qt::Key_9);
  ASSERT_TRUE(section().entry().isVisible());
  EXPECT_EQ(field()->text(), "9");
  QTest::keyClick(field(), Qt::Key_Escape);
}

TEST_F(SectionWindow, TabLeavesAfterTheLastHandle) {
  openAndShow();
  showLine("SU-1");
  section().setFocus();
  section().setCurrent(section().drawing().handles.back());
  QTest::keyClick(&section(), Qt::Key_Tab);
  EXPECT_FALSE(section().hasFocus());
}

TEST_F(SectionWindow, LockedLinesStay) {
  openAndShow();
  document().commit("Lock", lockObjects(plan(), {"SU-1"}, true));
  settle();
  showLine("SU-1");
  const Plan before = plan();
  const SectionHandle corner = handle("SU-1", 0);
  const QPoint at = pixelOf(corner);
  drag(corner, 20);
  letGo(at + QPoint(0, 20));
  section().setCurrent(corner);
  QTest::keyClick(&section(), Qt::Key_Up);
  EXPECT_EQ(plan(), before);
}

TEST_F(SectionWindow, TrainHandlesEditTheirRuns) {
  openAndShow();
  const SectionHandle tee = handle("IC-1", -1);
  const QPoint at = pixelOf(tee);
  drag(tee, -20);
  letGo(at + QPoint(0, -20));
  EXPECT_GT(*stated("IC-1", -1), tee.invert);
  EXPECT_EQ(section().kind(), SectionKind::Train);
}

TEST_F(SectionWindow, ZoomAndFit) {
  openAndShow();
  const SectionExtent extent = section().drawing().extent;
  const auto inside = [&](double station, Length level) {
    return section().rect().contains(section().place(station, level).toPoint());
  };
  EXPECT_TRUE(inside(extent.from, extent.low) && inside(extent.to, extent.high));
  const double before = pixelsPerMetre();
  QTest::keyClick(&section(), Qt::Key_Plus);
  EXPECT_GT(pixelsPerMetre(), before);
  QTest::keyClick(&section(), Qt::Key_Home);
  EXPECT_NEAR(pixelsPerMetre(), before, 1e-9);
  auto* stretch = panel().findChild<QComboBox*>("section-stretch");
  stretch->setCurrentIndex(4);
  emit stretch->activated(4);
  EXPECT_EQ(section().stretch(), 10);
  EXPECT_TRUE(inside(extent.from, extent.low) && inside(extent.to, extent.high));
}

TEST_F(SectionWindow, TextsStandApartAndCloseToTheirThings) {
  for (const char* sample : {"transit-depot.sump", "boatyard-pad.sump", "ferry-quay.sump"}) {
    openAndShow(sample);
    std::vector<Id> shown{""};
    for (const sump::Run& run : plan().runs)
      shown.push_back(run.id);
    for (int height : {120, 160, 200, 280, 460}) {
      show(height);
      for (const Id& run : shown) {
        run.empty() ? canvas().select({}) : canvas().select({run});
        section().grab(); // paints
        EXPECT_FALSE(section().texts().placed.empty()) << run;
        for (const QString& problem : testing::DrawingCheck::of(&section()))
          ADD_FAILURE() << sample << ' ' << run << " at " << height << ": "
                        << problem.toStdString();
      }
    }
  }
}

/// Read from left to right, a line's inverts are those of its points from left to right.
TEST_F(SectionWindow, InvertsOfALineStandInTheOrderOfItsPoints) {
  openAndShow();
  int compared = 0;
  for (int height : {160, 280, 460}) {
    show(height);
    for (const Id run : {"", "WW-1", "SU-1", "RC-1", "OF-1"}) {
      run.empty() ? canvas().select({}) : canvas().select({run});
      section().grab(); // paints
      for (const PlacedNote& a : section().texts().placed) {
        for (const PlacedNote& b : section().texts().placed) {
          const bool pair = a.note.inOrder && b.note.inOrder && a.note.object == b.note.object;
          if (!pair || a.anchor.x() > b.anchor.x() - 1) continue;
          ++compared;
          EXPECT_LE(a.box.center().x(), b.box.center().x())
              << run << " at " << height << ": " << a.text.toStdString() << ", "
              << b.text.toStdString();
        }
      }
    }
  }
  EXPECT_GT(compared, 20);
}

// At the height that the dock has on a small screen some texts have no room: they are told in brief
// or where one points.
TEST_F(SectionWindow, WhatHasNoRoomIsToldWhereOnePoints) {
  openAndShow();
  show(150);
  section().grab();
  ASSERT_FALSE(section().texts().untold.empty());
  for (const auto& [note, anchor] : section().texts().untold) {
    EXPECT_TRUE(section().untoldAt(anchor).contains(QString::fromStdString(note.text)))
        << note.text;
    for (const PlacedNote& placed : section().texts().placed) {
      if (placed.note.text == note.text && placed.anchor == anchor) {
        EXPECT_EQ(placed.text.toStdString(), note.brief);
      }
    }
  }
  const auto& [note, anchor] = section().texts().untold.front();
  QHelpEvent hover(QEvent::ToolTip, anchor.toPoint(), section().mapToGlobal(anchor.toPoint()));
  QApplication::sendEvent(&section(), &hover);
  EXPECT_TRUE(QToolTip::text().contains(QString::fromStdString(note.text)));
  QToolTip::hideText();
}

// Where the chambers are high enough, and their numbers stand above it.
TEST_F(SectionWindow, TheFloorsLevelStandsOnTheFloor) {
  openAndShow();
  canvas().select({});
  section().grab();
  const std::vector<PlacedNote>& placed = section().texts().placed;
  int floors = 0, numbers = 0;
  for (const PlacedNote& level : placed) {
    if (!level.text.startsWith("FLOOR")) continue;
    ++floors;
    EXPECT_FALSE(level.leader);
    EXPECT_LE(level.box.bottom(), level.anchor.y());
    EXPECT_GE(level.box.bottom(), level.anchor.y() - 4);
    for (const PlacedNote& number : placed) {
      if (number.note.object != level.note.object || number.text.size() != 1) continue;
      ++numbers;
      EXPECT_LE(number.box.bottom(), level.box.top()) << number.text.toStdString();
    }
  }
  EXPECT_EQ(floors, 2);
  EXPECT_EQ(numbers, 4);
}

TEST_F(SectionWindow, TheTextsOfWhatIsSelectedGoFirst) {
  openAndShow();
  show(150);
  const auto whole = [this](const Id& object) {
    section().grab();
    return std::ranges::count_if(section().texts().placed, [&](const PlacedNote& placed) {
      return placed.note.object == object && placed.text.toStdString() == placed.note.text;
    });
  };
  const auto before = whole("V2");
  canvas().select({"V2"});
  EXPECT_GT(whole("V2"), before);
}

TEST_F(SectionWindow, Screenshots) {
  const QString into = qEnvironmentVariable("SUMPWRIGHT_SCREENSHOTS");
  if (into.isEmpty()) GTEST_SKIP() << "SUMPWRIGHT_SCREENSHOTS is not set";
  const auto shoot = [&](const QString& name, double ratio) {
    QCoreApplication::processEvents();
    QPixmap pixmap(panel().size() * ratio);
    pixmap.setDevicePixelRatio(ratio);
    panel().render(&pixmap);
    EXPECT_TRUE(pixmap.save(into + "/section-" + name + ".png"));
  };
  for (const char* sample : {"transit-depot", "boatyard-pad"}) {
    openAndShow((std::string(sample) + ".sump").c_str());
    const QString name = QString(sample).left(4);
    canvas().select({});
    shoot(name + "-train-light-1x", 1);
    for (const sump::Run& run : plan().runs) {
      canvas().select({run.id});
      shoot(name + "-" + QString::fromStdString(run.id) + "-light-1x", 1);
    }
    show(210);
    canvas().select({});
    shoot(name + "-train-low-1x", 1);
    window->setDarkWindow(true);
    window->setDarkDrawing(true);
    show(420);
    shoot(name + "-train-dark-2x", 2);
    canvas().select({plan().runs[0].id});
    shoot(name + "-first-dark-2x", 2);
    window->setDarkWindow(false);
    window->setDarkDrawing(false);
    showLine("OF-1");
    drag(handle("OF-1", -1), -14);
    settle();
    shoot(name + "-drag-light-2x", 2);
    QTest::keyClick(&section(), Qt::Key_Escape);
    QTest::mouseDClick(&section(), Qt::LeftButton, Qt::NoModifier, pixelOf(handle("OF-1", -1)));
    shoot(name + "-typing-light-2x", 2);
    QTest::keyClick(field(), Qt::Key_Escape);
  }
}

} // namespace sump
