// 'What is wrong': filters, and acceptance with a reason.

#include "app/panels/acceptance.h"
#include "core/sheet/schedules.h"
#include "tests/app/window_fixture.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTimer>

#include <algorithm>
#include <set>

namespace sump {
namespace {

class FindingsTest : public testing::WindowTest {
protected:
  void SetUp() override {
    WindowTest::SetUp();
    open(testing::samplePath("transit-depot.sump"));
    Plan changed = plan();
    sump::Run overflow = *changed.runs.find("OF-1");
    overflow.parts.clear(); // without its backwater valve: a fault on OF-1
    changed.runs.put(overflow);
    ASSERT_FALSE(document().commit("Take valves out", changed));
    settle();
  }
  ObjectTable& table() { return window->findings().table(); }
  const std::vector<Finding>& all() { return document().reviewed()->review.findings; }
  int rowOf(const std::string& key) {
    for (int r = 0; r < table().rowCount(); ++r) {
      if (window->findings().findingAt(r)->key() == key) return r;
    }
    return -1;
  }
  std::string overflowFault() {
    for (const Finding& f : all()) {
      if (f.severity >= Severity::Warning && !f.objects.empty() && f.objects[0] == "OF-1")
        return f.key();
    }
    return "";
  }
  void choose(const char* box, int index) {
    window->findChild<QComboBox*>(box)->setCurrentIndex(index);
  }
  QPushButton* button(const char* name) { return window->findChild<QPushButton*>(name); }
};

TEST_F(FindingsTest, AreFilteredByWeightAndWords) {
  ASSERT_EQ(table().rowCount(), static_cast<int>(all().size()));
  const auto count = [this](Severity least) {
    return static_cast<int>(std::count_if(all().begin(), all().end(),
                                          [&](const Finding& f) { return f.severity >= least; }));
  };
  choose("finding-weight", 1);
  EXPECT_EQ(table().rowCount(), count(Severity::Warning));
  ASSERT_GT(table().rowCount(), 0);
  choose("finding-weight", 2);
  EXPECT_EQ(table().rowCount(), count(Severity::Error));
  EXPECT_LT(table().rowCount(), static_cast<int>(all().size()));
  choose("finding-weight", 0);
  auto* words = window->findChild<QLineEdit*>("finding-text");
  words->setText("of-1");
  ASSERT_GT(table().rowCount(), 0);
  for (int r = 0; r < table().rowCount(); ++r) {
    const Finding* finding = window->findings().findingAt(r);
    const QString text = QString::fromStdString(render(finding->what) + finding->which);
    EXPECT_TRUE(text.contains("OF-1") ||
                std::count(finding->objects.begin(), finding->objects.end(), Id("OF-1")) > 0);
  }
  // A row of the filtered list still leads to its own objects.
  emit table().chosen(rowOf(overflowFault()));
  EXPECT_TRUE(canvas().selection().contains("OF-1"));
  words->setText("no such words");
  EXPECT_EQ(table().rowCount(), 0);
}

TEST_F(FindingsTest, AChosenOneIsLitOnTheDrawing) {
  talk.saveAnswer = SaveAnswer::Discard;
  open(testing::samplePath("faulty/conduit-bends.sump"));
  int row = 0;
  while (row < table().rowCount() && !window->findings().findingAt(row)->place)
    ++row;
  ASSERT_LT(row, table().rowCount());
  table().scrollToItem(table().item(row, 1));
  QTest::mouseClick(table().viewport(), Qt::LeftButton, Qt::NoModifier,
                    table().visualItemRect(table().item(row, 1)).center());
  EXPECT_TRUE(canvas().selection().contains(window->findings().findingAt(row)->objects[0]));
  ASSERT_TRUE(canvas().lit());
  EXPECT_EQ(*canvas().lit(), *window->findings().findingAt(row)->place);
  QCoreApplication::processEvents();
  const QImage lit = canvas().grab().toImage();
  canvas().light(std::nullopt);
  EXPECT_NE(lit, canvas().grab().toImage()) << "a ring is drawn";
}

TEST_F(FindingsTest, ArrowKeysLightTheNextOne) {
  talk.saveAnswer = SaveAnswer::Discard;
  open(testing::samplePath("faulty/conduit-bends.sump"));
  table().setFocus();
  table().setCurrentCell(0, 0);
  EXPECT_TRUE(canvas().selection().empty()) << "nobody has chosen yet";
  int lit = 0;
  for (int row = 1; row < table().rowCount(); ++row) {
    QTest::keyClick(&table(), Qt::Key_Down);
    ASSERT_EQ(table().currentRow(), row);
    const Finding* finding = window->findings().findingAt(row);
    const std::set<Id> objects(finding->objects.begin(), finding->objects.end());
    EXPECT_EQ(canvas().selection(), canvas().knownObjects(objects)) << finding->key();
    EXPECT_EQ(canvas().lit(), finding->place) << finding->key();
    lit += canvas().lit() ? 1 : 0;
  }
  EXPECT_GT(lit, 0);
  canvas().select({"V1"});
  EXPECT_FALSE(canvas().lit()) << "something else was selected";
}

TEST_F(FindingsTest, AreFilteredByTradeAndService) {
  Plan changed = plan();
  sump::Run power = *changed.runs.find("PC-1");
  power.conductors.push_back({"14", 2, CircuitKind::Class2}); // with power: not allowed
  changed.runs.put(power);
  changed.basis.earth.protection = ProtectiveSystem::None;
  ASSERT_FALSE(document().commit("Mix wires, dig unprotected", changed));
  settle();
  auto* about = window->findChild<QComboBox*>("finding-about");
  ASSERT_NE(about, nullptr);
  std::set<std::string> shown;
  for (const auto& [text, trade] :
       std::vector<std::pair<const char*, Trade>>{{"Site work", Trade::SiteWork},
                                                  {"Plumbing", Trade::Plumbing},
                                                  {"Electrical", Trade::Electrical}}) {
    about->setCurrentText(text);
    ASSERT_GT(table().rowCount(), 0) << text;
    for (int r = 0; r < table().rowCount(); ++r) {
      EXPECT_EQ(window->findings().findingAt(r)->trade, trade);
      shown.insert(window->findings().findingAt(r)->key());
    }
  }
  EXPECT_TRUE(shown.contains("mixed-raceway/mixed-raceway.mixed/PC-1"));
  about->setCurrentText("Overflow to sewer");
  ASSERT_GE(rowOf(overflowFault()), 0);
  EXPECT_EQ(rowOf("mixed-raceway/mixed-raceway.mixed/PC-1"), -1);
  for (int r = 0; r < table().rowCount(); ++r) {
    const auto& services = window->findings().findingAt(r)->services;
    EXPECT_EQ(std::count(services.begin(), services.end(), Service::Overflow), 1);
  }
  about->setCurrentIndex(0);
  EXPECT_EQ(table().rowCount(), static_cast<int>(all().size()));
}

TEST_F(FindingsTest, AcceptanceIsWrittenIntoThePlanAndCanBeTakenBack) {
  const std::string key = overflowFault();
  ASSERT_FALSE(key.empty());
  table().setCurrentCell(rowOf(key), 0);
  ASSERT_TRUE(button("finding-accept")->isEnabled());
  EXPECT_FALSE(button("finding-take-back")->isEnabled());
  const auto& findings = document().reviewed()->review.findings;
  const auto faultsBefore = std::ranges::count_if(
      findings, [](const Finding& f) { return f.severity != Severity::Note; });
  QTimer::singleShot(0, [] {
    auto* dialog = qobject_cast<AcceptanceDialog*>(QApplication::activeModalWidget());
    ASSERT_NE(dialog, nullptr);
    QPushButton* accept = dialog->findChild<QDialogButtonBox*>()->findChildren<QPushButton*>()[1];
    if (accept->text() != "Accept it") {
      accept = dialog->findChild<QDialogButtonBox*>()->findChildren<QPushButton*>()[0];
    }
    accept->click();
    EXPECT_TRUE(dialog->isVisible()) << "a reason is asked for";
    dialog->findChild<QPlainTextEdit*>()->setPlainText("Valve stands in the\nsewer manhole");
    dialog->findChild<QLineEdit*>()->setText("Ana Ortiz");
    accept->click();
  });
  button("finding-accept")->click();
  settle();
  ASSERT_EQ(plan().acceptances.size(), 1U);
  const Acceptance accepted = plan().acceptances[0];
  EXPECT_EQ(accepted.finding, key);
  EXPECT_EQ(accepted.reason, "Valve stands in the sewer manhole");
  EXPECT_EQ(accepted.by, "Ana Ortiz");
  EXPECT_EQ(accepted.date, QDate::currentDate().toString(Qt::ISODate).toStdString());
  const QString dock = window->findings().parentWidget()->windowTitle();
  EXPECT_EQ(dock, faultsBefore == 1 ? QString("What is wrong")
                                    : QString("What is wrong (%1)").arg(faultsBefore - 1));
  EXPECT_TRUE(FindingsPanel::summary(document().reviewed()->review).endsWith(", 1 accepted"));
  choose("finding-state", 2);
  ASSERT_EQ(table().rowCount(), 1);
  EXPECT_EQ(window->findings().findingAt(0)->key(), key);
  EXPECT_EQ(table().item(0, 0)->text(), "Accepted");
  table().setCurrentCell(0, 0);
  EXPECT_TRUE(window->findChild<QLabel*>("finding-detail")->text().contains("Ana Ortiz"));
  choose("finding-state", 1);
  EXPECT_EQ(rowOf(key), -1);
  choose("finding-state", 2);
  table().setCurrentCell(0, 0);
  button("finding-take-back")->click();
  EXPECT_TRUE(plan().acceptances.empty());
  document().undo();
  EXPECT_EQ(plan().acceptances.size(), 1U);
}

TEST_F(FindingsTest, TheChosenRowStaysInSightWhenItsDetailTakesRoom) {
  const int last = table().rowCount() - 1;
  ASSERT_GT(last, 2);
  table().scrollToBottom();
  table().setCurrentCell(last, 0);
  QTest::qWait(20);
  ASSERT_TRUE(window->findChild<QLabel*>("finding-detail")->isVisible());
  EXPECT_TRUE(table().viewport()->rect().contains(0, table().rowViewportPosition(last) +
                                                         table().rowHeight(last) / 2));
}

TEST_F(FindingsTest, AcceptancePrintsOnTheSheetWithItsReason) {
  const auto printed = [](const Review& review) {
    std::string all;
    const Block list = findingList(review, 2000);
    for (const std::vector<PaperStrip>* strips : {&list.head, &list.body}) {
      for (const PaperStrip& strip : *strips) {
        for (const PageItem& item : strip.items) {
          if (const auto* text = std::get_if<PageText>(&item)) all += text->text + "\n";
        }
      }
    }
    return all;
  };
  Review review = document().reviewed()->review;
  EXPECT_EQ(printed(review).find("ACCEPTED"), std::string::npos);
  review.plan =
      withAcceptance(review.plan, {overflowFault(), "Valve in the manhole", "A. O.", "2024-05-06"});
  EXPECT_NE(printed(review).find("ACCEPTED by A. O., 2024-05-06: Valve in the manhole"),
            std::string::npos);
  const auto fault = std::ranges::find_if(
      review.findings, [&](const Finding& f) { return f.key() == overflowFault(); });
  ASSERT_NE(fault, review.findings.end());
  EXPECT_NE(printed(review).find(render(fault->what) + " ACCEPTED"), std::string::npos)
      << "an accepted finding is still told";
}

TEST(Acceptances, ASecondOneOfTheSameFindingReplacesTheFirst) {
  Plan plan = withAcceptance({}, {"k", "old", "A", "2024-01-01"});
  plan = withAcceptance(plan, {"other", "x", "B", "2024-01-02"});
  plan = withAcceptance(plan, {"k", "new", "C", "2024-01-03"});
  ASSERT_EQ(plan.acceptances.size(), 2U);
  EXPECT_EQ(acceptanceOf(plan, "k")->reason, "new");
  EXPECT_EQ(acceptanceOf(plan, "none"), nullptr);
  EXPECT_EQ(withoutAcceptance(plan, "k").acceptances.size(), 1U);
}

} // namespace
} // namespace sump
