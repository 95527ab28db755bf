// What each action of the window does.

#include "app/window/main_window.h"
#include "app/window/upkeep_table_dialog.h"

#include "app/core_text.h"

#include "app/canvas/tools/tool_factory.h"
#include "app/panels/acceptance.h"
#include "app/window/compare_dialog.h"
#include "app/window/editing.h"
#include "app/window/find_bar.h"
#include "app/window/glossary.h"
#include "app/window/help_dialogs.h"
#include "app/window/picture_desk.h"
#include "app/window/place_editing.h"
#include "app/window/settings_dialog.h"
#include "app/window/sheet_preview.h"

#include "core/plan/edits_objects.h"

#include <QDate>
#include <QDialog>
#include <QDir>
#include <QMenu>
#include <QSettings>
#include <QStackedWidget>

namespace sump {

namespace {

constexpr double kZoomStep = 1.4;

} // namespace

void MainWindow::joinFileActions() {
  actions_->on(ActionId::New, [this] { files_->startNew(); });
  actions_->on(ActionId::Open, [this] { files_->askOpen(); });
  actions_->on(ActionId::Save, [this] { files_->save(); });
  actions_->on(ActionId::SaveAs, [this] { files_->saveAs(); });
  actions_->on(ActionId::SheetSetPreview, [this] {
    auto* preview = new SheetPreview(document_.freshReview(), this);
    preview->setAttribute(Qt::WA_DeleteOnClose);
    preview->open();
  });
  actions_->on(ActionId::ExportPdf, [this] { files_->exportAs(ExportKind::Pdf); });
  actions_->on(ActionId::ExportSvg, [this] { files_->exportAs(ExportKind::Svg); });
  actions_->on(ActionId::ExportBill, [this] { files_->exportAs(ExportKind::Bill); });
  actions_->on(ActionId::ExportCalculations,
               [this] { files_->exportAs(ExportKind::Calculations); });
  actions_->on(ActionId::ExportCuts, [this] { files_->exportAs(ExportKind::Cuts); });
  actions_->on(ActionId::ExportUpkeep, [this] { files_->exportAs(ExportKind::Upkeep); });
  actions_->on(ActionId::ExportCalendar, [this] { files_->exportAs(ExportKind::Calendar); });
  actions_->on(ActionId::UpkeepTable, [this] { UpkeepTableDialog(talk_, this).exec(); });
  actions_->on(ActionId::ExportStakes, [this] { files_->exportAs(ExportKind::Stakes); });
  actions_->on(ActionId::ComparePlan, [this] {
    auto* dialog = askComparison(document_, talk_, this);
    if (dialog == nullptr) return;
    connect(dialog, &CompareDialog::chosen, this,
            [this](const std::set<Id>& objects) { goTo(objects, std::nullopt); });
    dialog->show();
  });
  pictures_ = new PictureDesk(document_, *canvas_);
  actions_->on(ActionId::PictureIn, [this] { pictures_->place(KeepPicture::InPlan); });
  actions_->on(ActionId::PictureBeside, [this] { pictures_->place(KeepPicture::BesidePlan); });
  actions_->on(ActionId::PictureScale, [this] { pictures_->scale(); });
  pictures_->useTool = [this](std::unique_ptr<Tool> tool) { giveTool(std::move(tool)); };
  connect(pictures_, &PictureDesk::told, canvas_, &Canvas::refused);
  actions_->on(ActionId::Quit, [this] { close(); });
  recentMenu_ = new QMenu(tr("Open &recent"), this);
  actions_->menu(MenuId::File)->insertMenu(action(ActionId::Save), recentMenu_);
  connect(files_, &FileDesk::recentChanged, this, &MainWindow::fillRecent);
  fillRecent();
}

void MainWindow::fillRecent() {
  recentMenu_->clear();
  const QStringList recent = files_->recentFiles();
  recentMenu_->setEnabled(!recent.isEmpty());
  int number = 0;
  for (const QString& path : recent) {
    // A file name may hold `&`, which menus would swallow.
    QString shown = QDir::toNativeSeparators(path);
    QAction* open =
        recentMenu_->addAction(QString("&%1  %2").arg(++number).arg(shown.replace('&', "&&")));
    connect(open, &QAction::triggered, this, [this, path] { files_->open(path); });
  }
}

void MainWindow::joinEditActions() {
  actions_->on(ActionId::Undo, [this] {
    canvas_->tool().cancel();
    document_.undo();
  });
  actions_->on(ActionId::Redo, [this] {
    canvas_->tool().cancel();
    document_.redo();
  });
  actions_->on(ActionId::Delete, [this] { eraseSelection(); });
  actions_->on(ActionId::Duplicate, [this] { duplicateSelection(); });
  actions_->on(ActionId::SelectAll, [this] { selectAll(); });
  auto* editing = new Editing(document_, *canvas_, *actions_);
  connect(editing, &Editing::told, canvas_, &Canvas::refused);
  places_ = new PlaceEditing(document_, *canvas_, *actions_);
  connect(places_, &PlaceEditing::told, canvas_, &Canvas::refused);
  connect(places_, &PlaceEditing::toolWanted, this, &MainWindow::useTool);
  actions_->on(ActionId::Find, [this] { finder_->open(); });
  actions_->on(ActionId::Settings, [this] {
    auto* settings = new SettingsDialog(*actions_, recovery_->state(), this);
    settings->setAttribute(Qt::WA_DeleteOnClose);
    settings->show();
  });
  actions_->on(ActionId::Guide, [this] { guideDialog(this)->show(); });
  actions_->on(ActionId::Glossary, [this] { glossaryDialog(this)->show(); });
  actions_->on(ActionId::Keys, [this] { keysDialog(this)->show(); });
  actions_->on(ActionId::About, [this] { aboutDialog(this)->show(); });
}

void MainWindow::joinViewActions() {
  actions_->on(ActionId::FitAll, [this] { canvas_->fitAll(); });
  actions_->on(ActionId::FitSelection, [this] { canvas_->fitSelection(); });
  actions_->on(ActionId::ZoomIn, [this] { canvas_->zoomBy(kZoomStep); });
  actions_->on(ActionId::ZoomOut, [this] { canvas_->zoomBy(1 / kZoomStep); });
  actions_->on(ActionId::LongSection, [this] { engineering_->showSection(); });
  connect(action(ActionId::Grid), &QAction::toggled, canvas_, &Canvas::setGridShown);
  connect(action(ActionId::Labels), &QAction::toggled, canvas_, &Canvas::setLabelsShown);
  connect(action(ActionId::Snap), &QAction::toggled, canvas_, &Canvas::setSnapping);
  connect(action(ActionId::Straight), &QAction::toggled, canvas_, &Canvas::setStraight);
  action(ActionId::Snap)->setChecked(true);
  connect(action(ActionId::DarkWindow), &QAction::triggered, this, &MainWindow::setDarkWindow);
  connect(action(ActionId::DarkDrawing), &QAction::triggered, this, &MainWindow::setDarkDrawing);
}

void MainWindow::joinToolActions() {
  for (const ActionRow& row : actionTable()) {
    if (row.strip == Strip::Tools) actions_->on(row.id, [this, id = row.id] { useTool(id); });
  }
  connect(canvas_, &Canvas::hintChanged, strip_, &ToolStrip::setHint);
  connect(canvas_, &Canvas::toolGivenUp, this, [this] { useTool(ActionId::ToolSelect); });
}

void MainWindow::useTool(ActionId id) {
  giveTool(makeTool(id, *canvas_));
  action(id)->setChecked(true);
}

void MainWindow::giveTool(std::unique_ptr<Tool> tool) {
  centre_->setCurrentIndex(0); // a tool is used on the drawing
  strip_->release();           // setTool ends the old tool
  canvas_->setTool(std::move(tool));
  strip_->show(canvas_->tool());
  canvas_->setFocus();
}

void MainWindow::joinPanels() {
  connect(canvas_, &Canvas::selectionChanged, this, &MainWindow::selectionChanged);
  connect(canvas_, &Canvas::contextMenuWanted, this, &MainWindow::showContextMenu);
  connect(findings_, &FindingsPanel::chosen, this, &MainWindow::goTo);
  connect(findings_, &FindingsPanel::acceptWanted, this, &MainWindow::acceptFinding);
  connect(findings_, &FindingsPanel::takeBackWanted, this, [this](const Finding& finding) {
    document_.commit(tr("Take acceptance back"),
                     withoutAcceptance(document_.plan(), finding.key()));
  });
  for (ObjectTable* table : {takeOff_, vaultLevels_, runLevels_}) {
    connect(table, &ObjectTable::chosen, this, [this, table](int row) {
      goTo(table->rows()[static_cast<std::size_t>(row)].objects, std::nullopt);
    });
  }
  selectionChanged();
}

void MainWindow::acceptFinding(const Finding& finding) {
  // The review may be gone when the dialog ends.
  const std::string key = finding.key();
  AcceptanceDialog dialog(messageText(finding.what), QSettings().value("findings/name").toString(),
                          this);
  if (dialog.exec() != QDialog::Accepted) return;
  QSettings().setValue("findings/name", dialog.name());
  document_.commit(tr("Accept finding"),
                   withAcceptance(document_.plan(),
                                  {key, dialog.reason().toStdString(), dialog.name().toStdString(),
                                   QDate::currentDate().toString(Qt::ISODate).toStdString()}));
}

void MainWindow::showContextMenu(const QPoint& at) {
  places_->openMenu(at);
}

void MainWindow::eraseSelection() {
  if (canvas_->selection().empty()) return;
  const std::set<Id> ids = unlocked(document_.plan(), canvas_->selection());
  if (!ids.empty()) document_.commit(tr("Delete"), eraseObjects(document_.plan(), ids));
}

void MainWindow::duplicateSelection() {
  // Far enough to be seen beside the original, near enough to stay in sight.
  constexpr Point2 kBeside{2, -2};
  const std::set<Id> selection = canvas_->selection();
  Copied copied = copyObjects(document_.plan(), selection, kBeside);
  std::set<Id> copies;
  for (const Id& id : selection) {
    if (copied.copies.contains(id)) copies.insert(copied.copies.at(id));
  }
  if (!document_.commit(tr("Duplicate"), std::move(copied.plan))) canvas_->select(copies);
}

void MainWindow::selectAll() {
  const std::vector<Id> all = allObjects(document_.plan());
  canvas_->select(std::set<Id>(all.begin(), all.end()));
}

} // namespace sump
