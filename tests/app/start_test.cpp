// The first minutes: the start page and the guided plan.

#include "app/window/guided_dialog.h"
#include "app/window/start_page.h"
#include "core/exchange/plan_file.h"
#include "core/units/parse.h"
#include "tests/app/window_fixture.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTextBlock>
#include <QTextBrowser>

namespace sump {
namespace {

class StartTest : public testing::WindowTest {
protected:
  StartPage* page() { return window->findChild<StartPage*>(); }
  void press(const char* name) { page()->findChild<QAbstractButton*>(name)->click(); }
};

TEST_F(StartTest, EveryWayLeadsToADrawing) {
  EXPECT_FALSE(page()->isVisible()) << "only where it is asked for";
  window->showStart();
  ASSERT_TRUE(page()->isVisible());
  press("start-empty");
  EXPECT_FALSE(page()->isVisible());
  for (const char* sample : {"transit-depot.sump", "boatyard-pad.sump"}) {
    window->showStart();
    press(sample);
    EXPECT_FALSE(page()->isVisible());
    const Plan expected = readPlanFile(testing::samplePath(sample).toStdString());
    EXPECT_TRUE(plan() == expected) << sample;
    EXPECT_TRUE(document().filePath().isEmpty()) << "a copy";
  }
  window->showStart();
  talk.openFile = testing::samplePath("transit-depot.sump");
  press("start-open");
  EXPECT_EQ(document().filePath(), talk.openFile);
  window->files().startNew();
  window->showStart();
  press("start-recent");
  EXPECT_EQ(document().filePath(), talk.openFile);
}

TEST_F(StartTest, TheGuideOpensWithItsPictures) {
  window->action(ActionId::Guide)->trigger();
  auto* guide = window->findChild<QTextBrowser*>("guide");
  ASSERT_NE(guide, nullptr);
  const QString text = guide->toPlainText();
  for (const char* word : {"invert", "eductor", "interconnect", "underflow", "recovery"})
    EXPECT_TRUE(text.contains(word)) << word;
  int pictures = 0;
  for (QTextBlock block = guide->document()->begin(); block.isValid(); block = block.next()) {
    for (auto it = block.begin(); !it.atEnd(); ++it) {
      const QTextFormat format = it.fragment().charFormat();
      if (!format.isImageFormat()) continue;
      const QVariant image =
          guide->loadResource(QTextDocument::ImageResource, format.toImageFormat().name());
      EXPECT_TRUE(image.isValid()) << format.toImageFormat().name().toStdString();
      ++pictures;
    }
  }
  EXPECT_GT(pictures, 0);
}

TEST(GuidedPlan, HoldsWhatWasAnswered) {
  GuidedAnswers all;
  all.siteLength = feet(120);
  all.siteWidth = feet(80);
  all.ground = feet(100);
  all.washFlow = parseFlow("40 gpm", UnitSystem::UsCustomary).value;
  all.sewerInvert = feet(93);
  for (Side side : {Side::South, Side::East, Side::North, Side::West}) {
    all.equipmentSide = side;
    const Plan plan = guidedPlan(all);
    EXPECT_TRUE(inconsistencies(plan).empty());
    EXPECT_EQ(readPlanText(writePlanText(plan), "guided").rooms.size(), 1U);
    EXPECT_EQ(plan.site.groundDefault, feet(100));
    ASSERT_EQ(plan.site.boundary.size(), 4U);
    EXPECT_NEAR(plan.site.boundary[2].x, 120 * 0.3048, 1e-9);
    ASSERT_EQ(plan.basis.demand.devices.size(), 1U);
    EXPECT_EQ(plan.basis.demand.devices[0].wash, plan.washes[0].id);
    EXPECT_EQ(plan.basis.demand.devices[0].flow, *all.washFlow);
    EXPECT_EQ(plan.sewers[0].invert, feet(93));
    // The room stands inside, in the half of the site that was named.
    ASSERT_EQ(plan.rooms.size(), 1U);
    Point2 middle{};
    for (const Point2& p : outline(plan.rooms[0])) {
      EXPECT_TRUE(p.x > 0 && p.x < 120 * 0.3048 && p.y > 0 && p.y < 80 * 0.3048);
      middle = middle + p * 0.25;
    }
    const double x = middle.x / (120 * 0.3048), y = middle.y / (80 * 0.3048);
    EXPECT_EQ(y < 0.3, side == Side::South);
    EXPECT_EQ(y > 0.7, side == Side::North);
    EXPECT_EQ(x < 0.3, side == Side::West);
    EXPECT_EQ(x > 0.7, side == Side::East);
  }
}

TEST(GuidedPlan, EveryAnswerMayBeLeftOut) {
  EXPECT_TRUE(guidedPlan({}) == Plan{});
  for (int mask = 0; mask < 64; ++mask) {
    GuidedAnswers some;
    if (mask & 1) some.siteLength = metres(30);
    if (mask & 2) some.siteWidth = metres(20);
    if (mask & 4) some.ground = metres(5);
    if (mask & 8) some.washFlow = parseFlow("100 L/min", UnitSystem::Metric).value;
    if (mask & 16) some.sewerInvert = metres(2);
    if (mask & 32) some.equipmentSide = Side::North;
    const Plan plan = guidedPlan(some);
    EXPECT_TRUE(inconsistencies(plan).empty()) << mask;
    EXPECT_EQ(plan.washes.empty(), !some.washFlow);
    EXPECT_EQ(plan.site.boundary.empty(), (mask & 3) != 3);
  }
}

TEST_F(StartTest, TheGuidedDialogNamesWhatItCannotUse) {
  GuidedDialog dialog;
  dialog.show();
  const auto type = [&](const char* name, const char* text) {
    dialog.findChild<QLineEdit*>(name)->setText(text);
  };
  const auto complaint = [&] {
    for (QPushButton* button : dialog.findChildren<QPushButton*>()) {
      if (button->text() == "Make the plan") button->click();
    }
    QString all;
    for (QLabel* label : dialog.findChildren<QLabel*>("field-error")) {
      if (label->isVisible()) all += label->text();
      label->hide();
    }
    return all;
  };
  type("guided-length", "long");
  EXPECT_FALSE(complaint().isEmpty());
  type("guided-length", "0");
  EXPECT_TRUE(complaint().contains("longer"));
  type("guided-length", "120'");
  type("guided-width", "80");
  type("guided-ground", "100");
  type("guided-sewer", "101");
  EXPECT_TRUE(complaint().contains("above the ground"));
  type("guided-sewer", "93.5");
  type("guided-flow", "0 gpm");
  EXPECT_TRUE(complaint().contains("above zero"));
  type("guided-flow", "40");
  dialog.findChild<QComboBox*>("guided-side")->setCurrentIndex(1);
  EXPECT_TRUE(complaint().isEmpty());
  EXPECT_EQ(dialog.result(), QDialog::Accepted);
  ASSERT_TRUE(dialog.answers().siteLength && dialog.answers().sewerInvert);
  EXPECT_NEAR(inFeet(*dialog.answers().siteLength), 120, 1e-9);
  EXPECT_NEAR(inFeet(*dialog.answers().sewerInvert), 93.5, 1e-9);
  EXPECT_EQ(dialog.answers().equipmentSide, Side::South);
}

} // namespace
} // namespace sump
