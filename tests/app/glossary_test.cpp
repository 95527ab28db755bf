// The words of the trade: as data, in tooltips, in Help.

#include "app/panels/basis_panel.h"
#include "app/window/glossary.h"
#include "tests/app/window_fixture.h"

#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QScrollArea>
#include <QTextBrowser>

namespace sump {
namespace {

class Glossary : public testing::WindowTest {
protected:
  /// Every label, heading and editor whose text uses a term must explain it.
  int expectTips(QWidget* panel, const QString& where) {
    int used = 0;
    for (QWidget* widget : panel->findChildren<QWidget*>()) {
      const auto* label = qobject_cast<QLabel*>(widget);
      const QString said = label != nullptr ? label->text() : widget->accessibleName();
      // Sentences explain themselves, and figures that were worked out are no labels.
      if (label != nullptr &&
          (label->objectName().startsWith("field-") || said.contains('.') ||
           !label->accessibleName().isEmpty() || label->property("said-by-user").toBool()))
        continue;
      for (const GlossaryTerm* term : termsIn(said)) {
        ++used;
        EXPECT_TRUE(widget->toolTip().contains(term->meaning.toHtmlEscaped()))
            << where.toStdString() << ": " << said.toStdString() << " does not explain "
            << term->term.toStdString() << " but says " << widget->toolTip().toStdString();
      }
    }
    return used;
  }
};

TEST_F(Glossary, TermsAreFoundByWholeWordsLongestFirst) {
  const auto found = [](const char* label) {
    QStringList names;
    for (const GlossaryTerm* term : termsIn(label))
      names << term->term;
    return names.join("|");
  };
  EXPECT_EQ(found("Start invert"), "invert");
  EXPECT_EQ(found("Spare suction"), "spare suction");
  EXPECT_EQ(found("NPSH required"), "NPSH");
  EXPECT_EQ(found("Trimmed"), "") << "no rim in it";
  EXPECT_EQ(found("Invert over floor of the port"), "invert|port");
  EXPECT_EQ(found("Make-up flow"), "make-up");
}

TEST_F(Glossary, EveryTermIsExplainedOnce) {
  QStringList names;
  for (const GlossaryTerm& term : glossary()) {
    EXPECT_FALSE(term.meaning.isEmpty()) << term.term.toStdString();
    EXPECT_FALSE(term.meaning.endsWith('.')) << term.term.toStdString();
    names << term.term.toLower() << term.also;
  }
  EXPECT_GE(glossary().size(), 50u);
  EXPECT_EQ(names.removeDuplicates(), 0);
  for (const char* word : {"invert", "crown", "rim", "sparger", "eductor", "interconnect",
                           "backflow", "air gap", "NPSH", "priming", "freeboard", "cleanout"})
    EXPECT_EQ(termsIn(word).size(), 1u) << word;
}

TEST_F(Glossary, LabelsOfAllPanelsExplainTheirTerms) {
  open(testing::samplePath("transit-depot.sump"));
  int used = 0;
  for (const char* id : {"", "B-BAY", "PV-YARD", "U-WATER", "E-1", "W-1", "TD-1", "SW-1", "WA-1",
                         "ER-1", "V1", "RC-1", "SU-1", "PC-1"}) {
    canvas().select(*id == '\0' ? std::set<Id>() : std::set<Id>{id});
    QCoreApplication::processEvents();
    used += expectTips(window->properties().widget(), id);
  }
  auto* basis = window->findChild<BasisPanel*>();
  auto* groups = basis->findChild<QListWidget*>("basis-groups");
  for (int i = 0; i < groups->count(); ++i) {
    groups->setCurrentRow(i);
    QCoreApplication::processEvents();
    used += expectTips(basis->findChild<QScrollArea*>()->widget(), groups->item(i)->text());
  }
  EXPECT_GT(used, 100);
}

TEST_F(Glossary, HelpListsAndSearchesIt) {
  window->action(ActionId::Glossary)->trigger();
  auto* browser = window->findChild<QTextBrowser*>("glossary");
  ASSERT_NE(browser, nullptr);
  for (const GlossaryTerm& term : glossary())
    EXPECT_TRUE(browser->toPlainText().contains(term.term)) << term.term.toStdString();
  QTest::keyClicks(window->findChild<QLineEdit*>("glossary-search"), "air gap");
  EXPECT_TRUE(browser->toPlainText().contains("air gap"));
  EXPECT_FALSE(browser->toPlainText().contains("footing"));
}

} // namespace
} // namespace sump
