// 'How it works out', by real mouse and key events in a real window.

#include "tests/app/window_fixture.h"

#include "app/panels/basis_panel.h"
#include "app/panels/calculations_panel.h"
#include "app/window/pseudo_language.h"
#include "core/study/calculation_print.h"

#include <QCheckBox>
#include <QDockWidget>
#include <QLabel>
#include <QLineEdit>
#include <QScrollBar>
#include <QTextBlock>
#include <QTextBrowser>
#include <QTextDocumentFragment>
#include <QTextLayout>
#include <QTreeWidget>
#include <QWheelEvent>

#include <algorithm>

namespace sump {

using testing::samplePath;

class Calculations : public testing::WindowTest {
protected:
  CalculationsPanel& panel() {
    auto* found = window->findChild<CalculationsPanel*>("calculations");
    auto* dock = window->findChild<QDockWidget*>("dock-calculations");
    dock->show();
    dock->raise();
    QCoreApplication::processEvents();
    return *found;
  }
  QString page() { return panel().findChild<QTextBrowser*>("calculation-page")->toPlainText(); }
  QString summary() {
    const auto* label = panel().findChild<QLabel*>("calculation-summary");
    return QTextDocumentFragment::fromHtml(label->text()).toPlainText();
  }
  CalculationOutline outline() {
    const Review& review = document().reviewed()->review;
    return CalculationOutline(sump::calculations(review.plan, review.study));
  }
  /// The number of a calculation; empty when there is none.
  std::string numberOf(const std::string& id, const Id& object) {
    const CalculationOutline all = outline();
    for (const CalculationSection& section : all.sections()) {
      for (const NumberedCalculation& entry : section.entries) {
        if (entry.calculation.id == id && entry.calculation.object == object) return entry.number;
      }
    }
    return {};
  }
  QString printed(double si, QuantityKind kind, int figures = 5) {
    return QString::fromStdString(printQuantity(si, kind, plan().project.units, figures));
  }
  /// As summaries and small tables write it.
  QString brief(double si, QuantityKind kind) { return printed(si, kind, 3); }
  void type(const char* text) {
    auto* line = panel().findChild<QLineEdit*>("calculation-words");
    line->setFocus();
    line->selectAll();
    QTest::keyClick(line, Qt::Key_Delete);
    QTest::keyClicks(line, text);
    QCoreApplication::processEvents();
  }
  /// A click on the link with these words on the page.
  void clickLink(const QString& words) {
    auto* browser = panel().findChild<QTextBrowser*>("calculation-page");
    QTextCursor at = browser->document()->find(words);
    ASSERT_FALSE(at.isNull()) << words.toStdString();
    at.setPosition(at.selectionStart() + 1);
    browser->setTextCursor(at);
    browser->ensureCursorVisible();
    const QPoint place = browser->cursorRect(at).center();
    ASSERT_FALSE(browser->anchorAt(place).isEmpty()) << words.toStdString();
    QTest::mouseClick(browser->viewport(), Qt::LeftButton, Qt::NoModifier, place);
    QCoreApplication::processEvents();
  }
  void forgetTemperature() {
    Plan next = plan();
    next.basis.water.temperature.reset();
    ASSERT_FALSE(document().commit("Forget", next));
    settle();
  }
};

TEST_F(Calculations, ListsAllAndShowsOneWithFormulaInputsStepsResultAndSource) {
  open(samplePath("transit-depot.sump"));
  EXPECT_EQ(panel().listed().size(), outline().size());
  EXPECT_GT(outline().size(), 60u);
  ASSERT_TRUE(panel().open(numberOf("suction.npsh-available", "SU-1")));
  const SuctionStudy& suction = *document().reviewed()->review.study.hydraulics.suction("SU-1");
  for (const QString& words :
       {QString("NPSH available at low water"), QString("h_a - z - h_v - h_f"), QString("air head"),
        QString("as drawn"), QString("TP-410"),
        printed(suction.npshAvailable->value(), QuantityKind::HeadOfWater)})
    EXPECT_TRUE(page().contains(words)) << words.toStdString() << "\n" << page().toStdString();
}

TEST_F(Calculations, TheTreeLeadsToThePage) {
  open(samplePath("transit-depot.sump"));
  auto* tree = panel().findChild<QTreeWidget*>("calculation-tree");
  ASSERT_GT(tree->topLevelItemCount(), 4);
  QTreeWidgetItem* section = tree->topLevelItem(0);
  section->setExpanded(true);
  QCoreApplication::processEvents();
  const QTreeWidgetItem* first = section->child(0);
  QTest::mouseClick(tree->viewport(), Qt::LeftButton, Qt::NoModifier,
                    tree->visualItemRect(first).center());
  EXPECT_EQ(panel().current(), "1.1");
  EXPECT_TRUE(page().contains(first->text(0)));
  QTest::keyClick(tree, Qt::Key_Down);
  EXPECT_EQ(panel().current(), "1.2");
}

TEST_F(Calculations, TheRowOfThePageStaysInSightUntilSomebodyScrolls) {
  open(samplePath("transit-depot.sump"));
  auto* tree = panel().findChild<QTreeWidget*>("calculation-tree");
  for (int s = 0; s < tree->topLevelItemCount(); ++s)
    tree->topLevelItem(s)->setExpanded(true);
  const auto inSight = [tree] {
    QTest::qWait(20); // texts wrap anew after the change
    return tree->viewport()->rect().contains(tree->visualItemRect(tree->currentItem()));
  };
  ASSERT_TRUE(panel().open(numberOf("suction.npsh-ratio", "SU-1")));
  EXPECT_TRUE(inSight());
  window->resize(900, 700);
  EXPECT_TRUE(inSight());
  QWheelEvent turned({5, 5}, tree->viewport()->mapToGlobal(QPointF(5, 5)), {}, {0, 120 * 200},
                     Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase, false);
  QApplication::sendEvent(tree->viewport(), &turned);
  window->resize(900, 720);
  EXPECT_FALSE(inSight()) << "what was scrolled to is not taken away";
}

TEST_F(Calculations, ARowThatIsChosenInAFoldedSectionIsInSight) {
  open(samplePath("transit-depot.sump"));
  auto* tree = panel().findChild<QTreeWidget*>("calculation-tree");
  for (int s = 0; s < tree->topLevelItemCount(); ++s) {
    tree->setCurrentItem(tree->topLevelItem(s)->child(0));
    QTest::qWait(20); // texts wrap anew after the change
    EXPECT_TRUE(tree->viewport()->rect().contains(tree->visualItemRect(tree->currentItem())))
        << tree->topLevelItem(s)->text(0).toStdString();
  }
}

TEST_F(Calculations, WordsNarrowTheList) {
  open(samplePath("transit-depot.sump"));
  type("npsh su-1");
  const auto listed = panel().listed();
  EXPECT_GE(listed.size(), 2u) << "NPSH available and its ratio";
  EXPECT_LT(listed.size(), 8u);
  for (const char* id : {"suction.npsh-available", "suction.npsh-ratio"})
    EXPECT_NE(std::ranges::find(listed, numberOf(id, "SU-1")), listed.end()) << id;
  EXPECT_EQ(std::ranges::find(listed, numberOf("suction.npsh-ratio", "SS-1")), listed.end());
  type("no such thing");
  EXPECT_TRUE(panel().listed().empty());
  EXPECT_TRUE(page().contains("Nothing is worked out"));
  type("");
  EXPECT_EQ(panel().listed().size(), outline().size());
}

TEST_F(Calculations, FollowTheSelection) {
  open(samplePath("transit-depot.sump"));
  panel();
  canvas().select({"SU-1"});
  QCoreApplication::processEvents();
  const CalculationOutline all = outline();
  std::vector<std::string> own;
  for (const CalculationSection& section : all.sections()) {
    for (const NumberedCalculation& entry : section.entries) {
      if (entry.calculation.object == "SU-1") own.push_back(entry.number);
    }
  }
  EXPECT_GT(own.size(), 5u);
  EXPECT_EQ(panel().listed(), own);
  QTest::mouseClick(panel().findChild<QCheckBox*>("calculation-only"), Qt::LeftButton,
                    Qt::NoModifier, QPoint(8, 8));
  EXPECT_EQ(panel().listed().size(), all.size());
  canvas().select({});
  EXPECT_EQ(panel().listed().size(), all.size());
}

TEST_F(Calculations, ASuctionShowsItsChoicesAndAPressureRunItsSizes) {
  open(samplePath("transit-depot.sump"));
  const Study& study = document().reviewed()->review.study;
  panel();
  canvas().select({"SU-1"});
  ASSERT_TRUE(panel().open(numberOf("suction.npsh-available", "SU-1")));
  const SuctionStudy& suction = *study.hydraulics.suction("SU-1");
  ASSERT_EQ(suction.variants.size(), 5u);
  for (const char* words :
       {"As drawn", "Straight, without bends", "One size up", "One more elbow", "One more foot"})
    EXPECT_TRUE(page().contains(words)) << words;
  for (const SuctionVariant& v : suction.variants) {
    ASSERT_TRUE(v.npshAvailable);
    EXPECT_TRUE(page().contains(brief(v.npshAvailable->value(), QuantityKind::HeadOfWater)));
  }
  canvas().select({"PW-1"});
  ASSERT_TRUE(panel().open(numberOf("run.loss", "PW-1")));
  const PressureRun& product = *study.hydraulics.run("PW-1");
  ASSERT_TRUE(product.sizes);
  ASSERT_GE(product.sizes->size(), 2u);
  for (const SizeChoice& choice : *product.sizes)
    EXPECT_TRUE(page().contains(brief(choice.loss.value(), QuantityKind::HeadOfWater)));
}

TEST_F(Calculations, AVaultShowsWhatItsChambersKeepBack) {
  open(samplePath("transit-depot.sump"));
  panel();
  canvas().select({"V1"});
  QCoreApplication::processEvents();
  ASSERT_TRUE(panel().open(numberOf("duty.particle.1", "V1")));
  EXPECT_TRUE(page().contains("Smallest oil droplet"));
  for (const ChamberDuty& duty : document().reviewed()->review.study.train.chambers) {
    if (duty.vault != "V1") continue;
    ASSERT_TRUE(duty.particle);
    EXPECT_TRUE(page().contains(brief(duty.particle->value(), QuantityKind::SmallLength)));
  }
}

TEST_F(Calculations, AVaultShowsItsWaterLevels) {
  open(samplePath("transit-depot.sump"));
  panel();
  canvas().select({"V2"});
  QCoreApplication::processEvents();
  ASSERT_TRUE(panel().open(numberOf("duty.particle.1", "V2")));
  const Study& study = document().reviewed()->review.study;
  ASSERT_TRUE(study.train.pumpStopped && study.train.pumpRunning);
  const auto elevation = [&](Length level) {
    return QString::fromStdString(printElevation(level, plan().project.units));
  };
  EXPECT_TRUE(page().contains(elevation(*study.vault("V2")->waterLevel)));
  for (const int chamber : {1, 2}) {
    EXPECT_TRUE(page().contains(elevation(study.train.pumpStopped->chamber("V2", chamber)->level)));
    EXPECT_TRUE(page().contains(elevation(study.train.pumpRunning->chamber("V2", chamber)->level)));
  }
}

TEST_F(Calculations, AnInputLeadsToTheCalculationThatItComesFrom) {
  open(samplePath("transit-depot.sump"));
  ASSERT_TRUE(panel().open(numberOf("suction.npsh-available", "SU-1")));
  clickLink("Air pressure");
  EXPECT_EQ(panel().current(), numberOf("air.head", ""));
  clickLink(QString::fromStdString(numberOf("air.pressure", "")) + " Air pressure");
  EXPECT_EQ(panel().current(), numberOf("air.pressure", ""));
  EXPECT_TRUE(page().contains("US Standard Atmosphere"));
}

TEST_F(Calculations, WhatIsMissingLeadsToTheForm) {
  open(samplePath("transit-depot.sump"));
  forgetTemperature();
  ASSERT_TRUE(panel().open(numberOf("water.density", "")));
  EXPECT_TRUE(page().contains("Cannot be decided: needs water temperature"));
  clickLink("water temperature");
  auto* form = window->findChild<BasisPanel*>("basis");
  EXPECT_TRUE(form->isVisible());
  ASSERT_NE(form->editor("water.temperature"), nullptr);
  EXPECT_EQ(window->focusWidget(), form->editor("water.temperature"));
}

TEST_F(Calculations, WhatTheFormHoldsIsALinkToIt) {
  open(samplePath("transit-depot.sump"));
  Plan next = plan();
  next.basis = Basis{};
  next.site.groundwater.reset();
  ASSERT_FALSE(document().commit("Forget", next));
  settle();
  const auto groups = basisGroups({plan(), document().catalog(), nullptr});
  int linked = 0;
  const CalculationOutline all = outline();
  for (const CalculationSection& section : all.sections()) {
    for (const NumberedCalculation& entry : section.entries) {
      const Calculation& c = entry.calculation;
      linked += !c.decided && needsHtml(c.needs, groups, KeptWords()).contains("know:") ? 1 : 0;
    }
  }
  EXPECT_GT(linked, 30);
  for (const auto& [need, key] : std::initializer_list<std::pair<const char*, const char*>>{
           {"flow of the recirculation", "pump.recirculation"},
           {"flow of the underflow", "pump.underflow"},
           {"flow of the make-up", "makeUp.flow"},
           {"height of the low-level float", "water.lowLevel"},
           {"simultaneity of the wash devices", "demand.simultaneity"},
           {"share of wash water lost", "demand.lostFraction"},
           {"other inflow to the drains", "demand.otherInflow"},
           {"altitude of the site", "water.altitude"},
           {"pump curve at the peak flow", "pump.curve"},
           {"highest expected groundwater", "site.groundwater"},
           {"which soil counts against flotation", "earth.soilHold"},
           {"volume of the strainer", "pump.strainerVolume"},
           {"pump head while the underflow is flushed", ""},
           {"levels of the run SU-1", ""}})
    EXPECT_EQ(keyOfNeed(need, groups), key) << need;
}

TEST_F(Calculations, ObjectsLeadToTheDrawing) {
  open(samplePath("transit-depot.sump"));
  ASSERT_TRUE(panel().open(numberOf("run.loss", "PW-1")));
  clickLink("PW-1");
  EXPECT_EQ(canvas().selection(), std::set<Id>{"PW-1"});
}

TEST_F(Calculations, TheHeadSumsUpTheSelectedRun) {
  open(samplePath("transit-depot.sump"));
  panel();
  const Study& study = document().reviewed()->review.study;
  EXPECT_TRUE(summary().startsWith("The whole plan")) << summary().toStdString();
  canvas().select({"SU-1"});
  QCoreApplication::processEvents();
  const SuctionStudy& suction = *study.hydraulics.suction("SU-1");
  const double margin = suction.npshAvailable->value() - suction.npshRequired->value();
  const PressureRun& run = *study.hydraulics.run("SU-1");
  for (const QString& words :
       {"NPSH margin " + brief(margin, QuantityKind::HeadOfWater),
        "Velocity " + brief(run.loss->fastest.value(), QuantityKind::Velocity)})
    EXPECT_TRUE(summary().contains(words)) << summary().toStdString();
  canvas().select({"OF-1"});
  QCoreApplication::processEvents();
  const GravityStudy& overflow = *study.train.gravityOf("OF-1");
  for (const QString& words :
       {"Least fall " + brief(*overflow.slope, QuantityKind::Slope),
        "Share of capacity " + brief(*overflow.share, QuantityKind::Share),
        "Velocity at the peak " + brief(overflow.velocity->value(), QuantityKind::Velocity)})
    EXPECT_TRUE(summary().contains(words)) << summary().toStdString();
  canvas().select({"V1"});
  QCoreApplication::processEvents();
  EXPECT_TRUE(summary().contains("Water at rest")) << summary().toStdString();
  forgetTemperature();
  canvas().select({"SU-1"});
  QCoreApplication::processEvents();
  EXPECT_TRUE(summary().contains("not known: needs water temperature")) << summary().toStdString();
}

TEST_F(Calculations, FollowTheLiveStudyAndKeepThePage) {
  open(samplePath("transit-depot.sump"));
  ASSERT_TRUE(panel().open(numberOf("water.density", "")));
  const QString before = page();
  Plan next = plan();
  next.basis.water.temperature = kelvin(next.basis.water.temperature->value() + 15);
  const auto* text = panel().findChild<QTextBrowser*>("calculation-page");
  ASSERT_FALSE(document().commit("Warm", next));
  EXPECT_EQ(text->toPlainText(), before) << "until the new study has arrived";
  settle();
  EXPECT_NE(page(), before);
  EXPECT_TRUE(page().contains("Density of the water"));
  EXPECT_TRUE(panel().findChild<QLabel*>("calculation-stale")->isHidden());
}

/// Paragraphs and cells in which a word goes on in another line.
QStringList brokenWords(const QTextDocument& document) {
  QStringList broken;
  for (QTextBlock block = document.begin(); block.isValid(); block = block.next()) {
    const QString text = block.text();
    for (int i = 0; i + 1 < block.layout()->lineCount(); ++i) {
      const QTextLine line = block.layout()->lineAt(i);
      const int end = line.textStart() + line.textLength();
      if (text[end - 1].isLetterOrNumber() && text[end].isLetterOrNumber()) broken << text;
    }
  }
  return broken;
}

// At widths to the pixel, in a language two fifths longer.
TEST_F(Calculations, NoPageScrollsSidewaysOrBreaksAWord) {
  PseudoTranslator longer;
  QCoreApplication::installTranslator(&longer);
  open(samplePath("transit-depot.sump"));
  auto* text = panel().findChild<QTextBrowser*>("calculation-page");
  const CalculationOutline all = outline();
  std::size_t seen = 0;
  for (const CalculationSection& section : all.sections()) {
    for (const std::string& number : {section.number, section.entries.front().number}) {
      ASSERT_TRUE(panel().open(number));
      for (const int width : {360, 496, 497, 498, 499, 500, 501, 502}) {
        text->setFixedWidth(width);
        QCoreApplication::processEvents();
        EXPECT_EQ(text->horizontalScrollBar()->maximum(), 0) << number << " at " << width;
        EXPECT_EQ(brokenWords(*text->document()).join(" | ").toStdString(), "")
            << number << " at " << width;
        ++seen;
      }
    }
  }
  QCoreApplication::removeTranslator(&longer);
  EXPECT_GT(seen, 100u);
}

TEST_F(Calculations, SayThatTheyAreBeingWorkedOutAnew) {
  open(samplePath("transit-depot.sump"));
  CalculationsPanel& shown = panel(); // which lets events pass
  auto* note = shown.findChild<QLabel*>("calculation-stale");
  EXPECT_TRUE(note->isHidden());
  // The study of the change cannot arrive while this thread does not take it up.
  Plan next = plan();
  next.basis.water.temperature.reset();
  ASSERT_FALSE(document().commit("Forget", next));
  ASSERT_TRUE(document().isReviewStale());
  shown.tellIfStale();
  EXPECT_FALSE(note->isHidden());
  settle();
  EXPECT_TRUE(note->isHidden());
}

TEST_F(Calculations, Screenshots) {
  const QString into = qEnvironmentVariable("SUMPWRIGHT_SCREENSHOTS");
  if (into.isEmpty()) GTEST_SKIP() << "SUMPWRIGHT_SCREENSHOTS is not set";
  window->resize(1600, 1000);
  open(samplePath("transit-depot.sump"));
  canvas().fitAll();
  panel();
  auto* dock = window->findChild<QDockWidget*>("dock-calculations");
  window->resizeDocks({dock}, {460}, Qt::Vertical);
  const auto shoot = [&](const QString& name, double ratio) {
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
    canvas().select({});
    shoot("calculations-all-" + theme + "-1x", 1);
    canvas().select({"SU-1"});
    ASSERT_TRUE(panel().open(numberOf("suction.npsh-available", "SU-1")));
    shoot("calculations-suction-" + theme + "-1x", 1);
    shoot("calculations-suction-" + theme + "-2x", 2);
    canvas().select({"V1"});
    shoot("calculations-vault-" + theme + "-1x", 1);
  }
  forgetTemperature();
  canvas().select({"SU-1"});
  shoot("calculations-undecided-dark-1x", 1);
  window->setDarkWindow(false);
  window->setDarkDrawing(false);
}

// A plan of 200 vaults names thousands of things.
TEST(KeptWords, HoldTheNamesOfALargePlan) {
  QStringList names{"North vault"};
  for (int i = 0; i < 9000; ++i)
    names << QString("RC%1-U").arg(i) << QString("RC%1-U").arg(i);
  const QRegularExpression pattern = KeptWords(names).pattern();
  ASSERT_TRUE(pattern.isValid()) << pattern.errorString().toStdString();
  EXPECT_EQ(pattern.match("the union RC7777-U of it").captured(), "RC7777-U");
  EXPECT_EQ(pattern.match("in the North vault alone").captured(), "North vault");
}

} // namespace sump
