// Start-up and upkeep out of the window.

#include "tests/app/window_fixture.h"

#include <QFile>

namespace sump {
namespace {

class UpkeepExport : public testing::WindowTest {};

TEST_F(UpkeepExport, WritesSheetsAndACalendarFromTheDayAsked) {
  open(testing::samplePath("transit-depot.sump"));
  talk.saveFile = folder.filePath("depot-upkeep.pdf");
  window->action(ActionId::ExportUpkeep)->trigger();
  EXPECT_GT(QFile(talk.saveFile).size(), 5000);
  talk.saveFile = folder.filePath("depot-upkeep");
  window->action(ActionId::ExportCalendar)->trigger();
  EXPECT_FALSE(QFile::exists(talk.saveFile + "-upkeep.ics")) << "no day was chosen";
  talk.day = QDate(2026, 12, 1);
  window->action(ActionId::ExportCalendar)->trigger();
  QFile calendar(talk.saveFile + "-upkeep.ics");
  ASSERT_TRUE(calendar.open(QIODevice::ReadOnly));
  EXPECT_TRUE(calendar.readAll().contains("DTSTART;VALUE=DATE:20261201\r\n"));
  EXPECT_TRUE(talk.told.isEmpty()) << talk.told.join(' ').toStdString();
}

} // namespace
} // namespace sump
