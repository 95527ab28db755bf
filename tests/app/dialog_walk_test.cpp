// Every dialog and message box, also after a wrong answer (tests/app/screen_walk.h).

#include "app/core_text.h"
#include "app/panels/acceptance.h"
#include "app/window/compare_dialog.h"
#include "app/window/day_dialog.h"
#include "app/window/glossary.h"
#include "app/window/guided_dialog.h"
#include "app/window/help_dialogs.h"
#include "app/window/picture_desk.h"
#include "app/window/recovery_dialog.h"
#include "app/window/settings_dialog.h"
#include "app/window/sheet_preview.h"
#include "app/window/upkeep_table_dialog.h"
#include "core/exchange/input_error.h"
#include "core/exchange/plan_file.h"
#include "core/plan/edits.h"
#include "core/plan/edits_objects.h"
#include "tests/app/screen_walk.h"

#include <QDialogButtonBox>
#include <QFileDialog>
#include <QInputDialog>
#include <QKeySequenceEdit>
#include <QLineEdit>
#include <QListWidget>
#include <QMessageBox>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>
#include <QTextBrowser>

namespace sump {
namespace {

using testing::ScreenWalk;

QPushButton* buttonThatAccepts(QDialog& dialog) {
  for (auto* box : dialog.findChildren<QDialogButtonBox*>()) {
    for (QAbstractButton* button : box->buttons()) {
      if (box->buttonRole(button) == QDialogButtonBox::AcceptRole)
        return qobject_cast<QPushButton*>(button);
    }
  }
  return nullptr;
}

TEST_P(ScreenWalk, DialogsThatTell) {
  lookAtDialog("keys", keysDialog(window.get()));
  lookAtDialog("glossary", glossaryDialog(window.get()));
  lookAtDialog("about", aboutDialog(window.get()));
  lookAtDialog("problem", problemBox(window.get(), QObject::tr("The plan cannot be opened"),
                                     errorWords(InputError("depot.sump", "/vaults/0/length", 12,
                                                           "is -2, must be more than 0",
                                                           "give the outside length"))));
  alsoKnow({"upkeep --write-table FILE", "--upkeep-table FILE"});
  QDialog* guide = guideDialog(window.get());
  lookAtDialog("guide", guide, [guide](int page) {
    auto* text = guide->findChild<QTextBrowser*>("guide");
    QScrollBar* bar = text->verticalScrollBar();
    bar->setValue(page * bar->pageStep());
    return page * bar->pageStep() <= bar->maximum();
  });
}

TEST_P(ScreenWalk, DialogsThatAsk) {
  open(testing::samplePath("transit-depot.sump"));
  lookAtDialog("ask-save", saveBox(window.get(), "transit-depot.sump"));
  lookAtDialog("ask-changed", changedBox(window.get(), "transit-depot.sump", true));
  lookAtDialog("ask-changed-clean", changedBox(window.get(), "transit-depot.sump", false));
  lookAtDialog("ask-held",
               heldBox(window.get(), "transit-depot.sump",
                       QCoreApplication::translate("FileHold", "another window of this program")));
  lookAtDialog("ask-day", new DayDialog(QObject::tr("Day of start-up"),
                                        QObject::tr("The upkeep calendar begins on:"),
                                        QDate(2026, 12, 1), window.get()));
  lookAtDialog("ask-distance", distanceDialog(window.get(), "65'-7\"", {}));
  lookAtDialog("ask-distance-again",
               distanceDialog(window.get(), "0", QObject::tr("The distance must be more than 0.")));
  lookAtDialog("upkeep-table", new UpkeepTableDialog(talk, window.get()));
  std::vector<Leftover> found(3);
  found[0].head = {"Bus wash water reclaim", "/home/anna/plans/transit-depot.sump",
                   QDateTime(QDate(2026, 11, 2), QTime(9, 30))};
  found[1].head = {Document::tr("New plan"), "", QDateTime(QDate(2026, 11, 1), QTime(17, 5))};
  found[2].problem = "cut off";
  lookAtDialog("recovery", new RecoveryDialog(found, window.get()));
}

/// What the window tells is kept; here it is wanted with its title, as a box.
class TitledTalk : public testing::CannedTalk {
public:
  void tellProblem(QWidget* parent, const QString& title, const QString& text) override {
    CannedTalk::tellProblem(parent, title, text);
    this->title = title;
  }
  QString title;
};

TEST_P(ScreenWalk, DialogsOfFilesThatCannotBeWritten) {
  TitledTalk told;
  Document plan(document().catalog());
  FileDesk desk(plan, told, window.get());
  const QString file = folder.filePath("transit-depot.sump");
  ASSERT_TRUE(QFile::copy(testing::samplePath("transit-depot.sump"), file));
  const auto wrong = [&](const char* name) {
    ASSERT_FALSE(told.told.empty()) << name;
    lookAtDialog(name, problemBox(window.get(), told.title, told.told.takeLast()));
  };
  ASSERT_TRUE(desk.open(file));
  QFile(file).setPermissions(QFile::ReadOwner);
  EXPECT_FALSE(desk.save());
  wrong("file-protected");
  QFile(file).setPermissions(QFile::ReadOwner | QFile::WriteOwner);
  told.saveFile = folder.filePath("none/there.sump");
  EXPECT_FALSE(desk.saveAs());
  wrong("file-no-folder");
  FileHold other; // as another window's
  told.saveFile = folder.filePath("held.sump");
  ASSERT_FALSE(other.take(told.saveFile));
  EXPECT_FALSE(desk.saveAs());
  wrong("file-held");
  QFile broken(folder.filePath("broken.sump"));
  ASSERT_TRUE(broken.open(QIODevice::WriteOnly));
  broken.write("{\"format\": \"sumpwright\", \"vaults\": 3}");
  broken.close();
  EXPECT_FALSE(desk.open(broken.fileName()));
  wrong("file-broken");
}

TEST_P(ScreenWalk, DialogsOfFilesAndPrinters) {
  const QString file = folder.filePath("transit-depot.sump");
  ASSERT_TRUE(QFile::copy(testing::samplePath("transit-depot.sump"), file));
  const auto plain = [](QFileDialog* box) {
    box->setOption(QFileDialog::DontUseNativeDialog); // a desktop's own is no work of ours
    return box;
  };
  const QString plans = QObject::tr("Sumpwright plans (*.sump)");
  lookAtDialog("file-open",
               plain(openBox(window.get(), QObject::tr("Open a plan"), folder.path(), plans)));
  lookAtDialog("file-save",
               plain(saveFileBox(window.get(), FileDesk::tr("Save the plan"), file, plans)));
  QPrinter printer(QPrinter::HighResolution);
  printer.setOutputFileName(folder.filePath("sheets.pdf"));
  lookAtDialog("print", new QPrintDialog(&printer, window.get()));
}

TEST_P(ScreenWalk, TheSixQuestions) {
  lookAtDialog("guided", new GuidedDialog(window.get()));
  for (const char* name : {"guided-length", "guided-flow", "guided-sewer"}) {
    auto* dialog = new GuidedDialog(window.get());
    dialog->findChild<QLineEdit*>(name)->setText("many");
    buttonThatAccepts(*dialog)->click();
    EXPECT_EQ(dialog->result(), 0) << name;
    lookAtDialog(QString("guided-wrong-") + name, dialog);
  }
}

TEST_P(ScreenWalk, AcceptingAFinding) {
  open(testing::samplePath("faulty/flow-order.sump"));
  const Finding& finding = document().reviewed()->review.findings.front();
  auto* dialog = new AcceptanceDialog(messageText(finding.what), "R. Okafor", window.get());
  lookAtDialog("accept", dialog);
  auto* without = new AcceptanceDialog(messageText(finding.what), "R. Okafor", window.get());
  buttonThatAccepts(*without)->click();
  lookAtDialog("accept-without-reason", without);
}

TEST_P(ScreenWalk, SettingsAndKeys) {
  const auto dialog = [this] {
    return new SettingsDialog(*window->findChild<ActionSet*>(), window->recovery().state(),
                              window.get());
  };
  lookAtDialog("settings", dialog());
  SettingsDialog* clash = dialog();
  clash->choose("tool-vault");
  clash->findChild<QKeySequenceEdit*>()->setKeySequence(QKeySequence("Ctrl+S"));
  for (QPushButton* button : clash->findChildren<QPushButton*>()) {
    if (button->text() == SettingsDialog::tr("Set key")) button->click();
  }
  lookAtDialog("settings-key-taken", clash);
}

TEST_P(ScreenWalk, ComparingTwoPlans) {
  open(testing::samplePath("faulty/storage-volume.sump"));
  talk.openFile = testing::samplePath("transit-depot.sump");
  CompareDialog* dialog = askComparison(document(), talk, window.get());
  ASSERT_NE(dialog, nullptr);
  alsoKnow({"Underground tankage and plumbing", "Harbour authority"});
  lookAtDialog("compare", dialog);
  // Words, limits, moves, corners and things of their own that came and went.
  Plan other = moveObjects(plan(), {"V1"}, {0.3, 0.4});
  other.limits["duty.pump-out-days"] = 10;
  other.limits["storage.minimum"] = 15;
  other.project.legalOwner = "Harbour authority";
  other.basis.water.altitude = metres(120);
  const QString file = folder.filePath("other.sump");
  savePlanFile(eraseObjects(other, {other.runs.back().id}), file.toStdString());
  talk.openFile = file;
  dialog = askComparison(document(), talk, window.get());
  ASSERT_NE(dialog, nullptr);
  lookAtDialog("compare-many", dialog);
}

TEST_P(ScreenWalk, TheSheetSet) {
  open(testing::samplePath("transit-depot.sump"));
  auto* dialog = new SheetPreview(document().freshReview(), window.get());
  auto* list = dialog->findChild<QListWidget*>();
  ASSERT_GT(list->count(), 3);
  lookAtDialog("sheets", dialog, [list](int page) {
    constexpr int kEnough = 3;
    list->setCurrentRow(page);
    return page < kEnough;
  });
}

} // namespace
} // namespace sump
