// The on-screen sheet set: what it lists, and printing.

#include "app/window/sheet_preview.h"
#include "tests/app/window_fixture.h"

#include <QFile>
#include <QListWidget>
#include <QPrinter>

namespace sump {
namespace {

using SheetPreviewWindow = testing::WindowTest;

TEST_F(SheetPreviewWindow, ListsThePagesAndPrintsWhatIsTicked) {
  open(testing::samplePath("transit-depot.sump"));
  SheetPreview preview(document().freshReview(), window.get());
  preview.show();
  auto* list = preview.findChild<QListWidget*>();
  ASSERT_NE(list, nullptr);
  ASSERT_EQ(list->count(), static_cast<int>(preview.pages().size()));
  EXPECT_TRUE(list->item(0)->text().startsWith("G-001"));
  for (int i = 1; i < list->count(); ++i)
    list->item(i)->setCheckState(i == 2 ? Qt::Checked : Qt::Unchecked);
  QPrinter printer;
  printer.setOutputFormat(QPrinter::PdfFormat);
  printer.setOutputFileName(folder.filePath("printed.pdf"));
  ASSERT_TRUE(preview.printTo(printer));
  QFile file(folder.filePath("printed.pdf"));
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  EXPECT_EQ(file.readAll().count("/Type /Page\n"), 2) << "the first and the third";
}

TEST_F(SheetPreviewWindow, ComposesAgainForOtherPaper) {
  open(testing::samplePath("boatyard-pad.sump"));
  SheetPreview preview(document().freshReview(), window.get());
  ASSERT_FALSE(preview.pages().empty());
  EXPECT_EQ(preview.pages().front().width, 841) << "a metric plan begins with A1";
  preview.setPaper("arch-c");
  ASSERT_FALSE(preview.pages().empty());
  EXPECT_EQ(preview.pages().front().width, 609.6);
}

} // namespace
} // namespace sump
