// The cost of what is to buy, in the window: by trade, in all, and what has no price.

#include "app/panels/cost_bar.h"
#include "app/window/upkeep_table_dialog.h"
#include "tests/app/window_fixture.h"

#include "core/exchange/cost_words.h"

#include <QFile>
#include <QLabel>

namespace sump {
namespace {

class CostBarTest : public testing::WindowTest {
protected:
  CostBar& bar() {
    auto* found = window->findChild<CostBar*>();
    EXPECT_NE(found, nullptr);
    return *found;
  }
  QString sum() { return bar().findChild<QLabel*>("cost-sum")->text(); }
  QString missing() { return bar().findChild<QLabel*>("cost-sum")->toolTip(); }
  QString write(const char* name, const QByteArray& text) {
    QFile file(folder.filePath(name));
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(text);
    return file.fileName();
  }
  void showList() {
    window->findChild<QDockWidget*>("dock-take-off")->raise();
    QTRY_VERIFY(bar().isVisible());
  }
};

TEST_F(CostBarTest, SumsByTradeAndTellsWhatHasNoPrice) {
  open(testing::samplePath("transit-depot.sump"));
  showList();
  EXPECT_TRUE(sum().contains("No price list"));
  talk.table = write("own.csv", "item,size,unit,price,currency\n"
                                "box-12x6-2-traffic,,each,9000,USD\n"
                                "pvc-sch80,6,stick,310.50,USD\n");
  bar().askPrices();
  QTRY_VERIFY2(sum().contains("Total: USD 19,242.00"), sum().toUtf8()); // 2 x 9000 + 4 x 310.50
  EXPECT_TRUE(sum().contains("Plumbing: USD 1,242.00")) << sum().toStdString();
  EXPECT_TRUE(sum().contains("Site work: USD 18,000.00")) << sum().toStdString();
  const auto lacking = missing().count('\n'); // a heading, then a line each
  EXPECT_TRUE(sum().contains(QString("Without a price or an amount: %1").arg(lacking)))
      << sum().toStdString();
  EXPECT_TRUE(missing().contains("sch80-socket:tee (6)")) << missing().toStdString();
  EXPECT_FALSE(missing().contains("pvc-sch80 (6)")) << missing().toStdString();
  bar().usePrices(QString());
  EXPECT_TRUE(sum().contains("No price list"));
}

TEST_F(CostBarTest, AListThatCannotBeUsedIsToldAndChangesNothing) {
  open(testing::samplePath("transit-depot.sump"));
  showList();
  talk.table = write("bad.csv", "item,size,unit,price,currency\npvc-sch80,6,stick,nine,USD\n");
  bar().askPrices();
  ASSERT_EQ(talk.told.size(), 1);
  EXPECT_TRUE(talk.told[0].contains("'nine' is no amount")) << talk.told[0].toStdString();
  EXPECT_TRUE(sum().contains("No price list"));
}

class UpkeepTableTest : public CostBarTest {
protected:
  void TearDown() override {
    UpkeepTableDialog(talk, window.get()).useBuiltin();
    CostBarTest::TearDown();
  }
};

TEST_F(UpkeepTableTest, TheWindowTakesATableOfTheUsersOwn) {
  open(testing::samplePath("transit-depot.sump"));
  UpkeepTableDialog dialog(talk, window.get());
  talk.saveFile = folder.filePath("upkeep.json");
  dialog.writeStart();
  QFile start(talk.saveFile);
  ASSERT_TRUE(start.open(QIODevice::ReadOnly));
  QByteArray text = start.readAll();
  ASSERT_TRUE(text.contains("\"title\": \"")) << text.left(300).toStdString();
  const qsizetype at = text.indexOf("\"tasks\"");
  const qsizetype title = text.indexOf("\"title\": \"", at) + 10;
  text.replace(title, text.indexOf('"', title) - title, "Walk round with the dog");
  talk.table = write("own-upkeep.json", text);
  dialog.choose();
  EXPECT_TRUE(talk.told.isEmpty()) << talk.told.join(' ').toStdString();
  talk.saveFile = folder.filePath("own.ics");
  talk.day = QDate(2026, 12, 1);
  window->action(ActionId::ExportCalendar)->trigger();
  QFile calendar(talk.saveFile);
  ASSERT_TRUE(calendar.open(QIODevice::ReadOnly));
  EXPECT_TRUE(calendar.readAll().contains("Walk round with the dog"));
}

TEST_F(UpkeepTableTest, ATableThatCannotBeUsedIsRefused) {
  UpkeepTableDialog dialog(talk, window.get());
  talk.table = write("bad.json", "{\"tasks\": 3}");
  dialog.choose();
  ASSERT_EQ(talk.told.size(), 1);
  EXPECT_TRUE(talk.told[0].contains("bad.json")) << talk.told[0].toStdString();
  EXPECT_EQ(chosenUpkeep().tasks.size(), builtinUpkeep().tasks.size());
}

} // namespace
} // namespace sump
