#include "app/window/main_window.h"

#include "app/core_text.h"
#include "app/panels/cost_bar.h"
#include "app/panels/lists.h"
#include "app/panels/side_by_side.h"
#include "app/window/appearance.h"
#include "app/window/find_bar.h"
#include "app/window/quiet_label.h"
#include "app/window/start_page.h"
#include "app/window/visibility.h"

#include "core/catalog/catalog.h"

#include <QCloseEvent>
#include <QDockWidget>
#include <QLabel>
#include <QMenu>
#include <QSettings>
#include <QStackedWidget>
#include <QStatusBar>
#include <QVBoxLayout>

#include <algorithm>

namespace sump {

namespace {

// Raised when docks or bars change so much that an old layout no longer fits.
constexpr int kLayoutVersion = 1;
/// A review that takes longer than this is announced as being worked on.
constexpr int kStaleAfterMs = 200;
/// Beside each part of the status bar; a line stands between them.
constexpr int kStatusGap = 8;

} // namespace

MainWindow::MainWindow(Talk& talk, QWidget* parent)
    : QMainWindow(parent), talk_(talk), document_(builtinCatalog()) {
  setObjectName("main-window");
  resize(1440, 900);
  setDockOptions(AnimatedDocks | AllowTabbedDocks);
  actions_ = new ActionSet(this);
  files_ = new FileDesk(document_, talk, this);
  recovery_ = new Recovery(document_, this);
  makeCentre();
  makeDocks();
  makeStatus();
  joinFileActions();
  joinEditActions();
  joinViewActions();
  joinToolActions();
  joinPanels();
  joinStart();
  stale_.setSingleShot(true);
  stale_.setInterval(kStaleAfterMs);
  connect(&stale_, &QTimer::timeout, this, &MainWindow::showStale);
  connect(&document_, &Document::changed, this, &MainWindow::documentChanged);
  connect(&document_, &Document::reviewArrived, this, &MainWindow::reviewArrived);
  restoreLayout();
  useTool(ActionId::ToolSelect);
  documentChanged();
}

MainWindow::~MainWindow() {
  // The document goes with the window; nothing may hear of it while the children are taken down.
  document_.disconnect();
  // Nor of a dock that comes to the front while those before it go.
  for (QDockWidget* dock : findChildren<QDockWidget*>())
    disconnect(dock, &QDockWidget::visibilityChanged, nullptr, nullptr);
}

void MainWindow::makeCentre() {
  auto* centre = new QWidget(this);
  auto* column = new QVBoxLayout(centre);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  strip_ = new ToolStrip(centre);
  canvas_ = new Canvas(document_, centre);
  finder_ = new FindBar(document_, *canvas_, centre);
  column->addWidget(strip_);
  column->addWidget(finder_);
  column->addWidget(canvas_, 1);
  start_ = new StartPage;
  centre_ = new QStackedWidget(this);
  centre_->addWidget(centre);
  centre_->addWidget(start_);
  setCentralWidget(centre_);
}

QDockWidget* MainWindow::addDock(Qt::DockWidgetArea area, const QString& title, const char* name,
                                 QWidget* content) {
  auto* dock = new QDockWidget(title, this);
  dock->setObjectName(name);
  dock->setWidget(content);
  tellWhenInFront(*dock, content);
  addDockWidget(area, dock);
  actions_->menu(MenuId::View)->addAction(dock->toggleViewAction());
  return dock;
}

void MainWindow::makeDocks() {
  setCorner(Qt::BottomRightCorner, Qt::RightDockWidgetArea);
  properties_ = new PropertiesPanel(document_, this);
  propertiesDock_ =
      addDock(Qt::RightDockWidgetArea, tr("What is this"), "dock-properties", properties_);
  auto* shown = new VisibilityPanel(this);
  QDockWidget* shownDock = addDock(Qt::RightDockWidgetArea, tr("Shown"), "dock-shown", shown);
  tabifyDockWidget(propertiesDock_, shownDock);
  propertiesDock_->raise();
  connect(shown, &VisibilityPanel::shownChanged, this,
          [this, shown] { canvas_->setShown(shown->shown()); });
  shown->restore();
  findings_ = new FindingsPanel(this);
  findingsDock_ =
      addDock(Qt::BottomDockWidgetArea, tr("What is wrong"), "dock-findings", findings_);
  takeOff_ = new ReviewTable(document_, takeOffHeadings(), tr("What to buy"), takeOffRows, 1, this);
  takeOff_->setObjectName("take-off");
  takeOff_->foldWhereNarrow();
  takeOffDock_ = addDock(Qt::BottomDockWidgetArea, tr("What to buy"), "dock-take-off",
                         listWithCosts(takeOff_, document_, talk_, this));
  tellWhenInFront(*takeOffDock_, takeOff_);
  tellWhenInFront(*takeOffDock_, takeOffDock_->findChild<CostBar*>());
  makeLevels();
  tabifyDockWidget(findingsDock_, takeOffDock_);
  tabifyDockWidget(takeOffDock_, levelsDock_);
  engineering_ =
      new EngineeringDocks(this, document_, *canvas_, actions_->menu(MenuId::View), levelsDock_);
  setTabPosition(Qt::BottomDockWidgetArea, QTabWidget::North);
  findingsDock_->raise();
  resizeDocks({propertiesDock_}, {330}, Qt::Horizontal);
  resizeDocks({findingsDock_}, {210}, Qt::Vertical);
}

void MainWindow::makeLevels() {
  vaultLevels_ = new ReviewTable(document_, vaultLevelHeadings(), tr("Levels of vaults"),
                                 vaultLevelRows, 0, this);
  vaultLevels_->setObjectName("vault-levels");
  runLevels_ =
      new ReviewTable(document_, runLevelHeadings(), tr("Levels of lines"), runLevelRows, 1, this);
  runLevels_->setObjectName("run-levels");
  auto* both = new SideBySide(vaultLevels_, runLevels_, this);
  levelsDock_ = addDock(Qt::BottomDockWidgetArea, tr("How deep"), "dock-levels", both);
  tellWhenInFront(*levelsDock_, vaultLevels_);
  tellWhenInFront(*levelsDock_, runLevels_);
}

void MainWindow::makeStatus() {
  coordinates_ = new QuietLabel(this);
  coordinates_->setObjectName("coordinates");
  scale_ = new QLabel(this);
  scale_->setObjectName("scale");
  verdict_ = new QLabel(this);
  verdict_->setObjectName("verdict");
  statusBar()->addWidget(coordinates_);
  for (QLabel* part : {recoveryLabel(*recovery_, this), verdict_, scale_}) {
    part->setContentsMargins(kStatusGap, 0, kStatusGap, 0);
    statusBar()->addPermanentWidget(part);
  }
  connect(canvas_, &Canvas::pointerMoved, coordinates_, &QuietLabel::say);
  connect(canvas_, &Canvas::viewChanged, scale_, &QLabel::setText);
  connect(canvas_, &Canvas::refused, this,
          [this](const QString& reason) { statusBar()->showMessage(reason, 8000); });
  connect(files_, &FileDesk::told, this,
          [this](const QString& sentence) { statusBar()->showMessage(sentence, 5000); });
  connect(recovery_, &Recovery::troubled, this,
          [this](const QString& sentence) { statusBar()->showMessage(sentence); });
  connect(&document_, &Document::reviewFailed, this, [this](const QString& reason) {
    verdict_->setText(tr("The checks could not be done: %1").arg(reason));
  });
}

void MainWindow::documentChanged() {
  setWindowTitle(tr("%1[*] — Sumpwright").arg(document_.displayName()));
  setWindowModified(document_.isModified());
  QAction* undo = action(ActionId::Undo);
  undo->setEnabled(document_.canUndo());
  undo->setText(document_.canUndo() ? tr("&Undo: %1").arg(document_.undoStep().toLower())
                                    : tr("&Undo"));
  QAction* redo = action(ActionId::Redo);
  redo->setEnabled(document_.canRedo());
  redo->setText(document_.canRedo() ? tr("&Redo: %1").arg(document_.redoStep().toLower())
                                    : tr("&Redo"));
  if (document_.isReviewStale() && !stale_.isActive()) stale_.start();
}

void MainWindow::showStale() {
  if (document_.isReviewStale()) verdict_->setText(tr("Checking..."));
}

void MainWindow::reviewArrived() {
  const ReviewedPtr reviewed = document_.reviewed();
  findings_->show(reviewed);
  const std::size_t faults = static_cast<std::size_t>(
      std::count_if(reviewed->review.findings.begin(), reviewed->review.findings.end(),
                    [](const Finding& f) { return f.severity != Severity::Note && !f.accepted; }));
  findingsDock_->setWindowTitle(faults == 0 ? tr("What is wrong")
                                            : tr("What is wrong (%1)").arg(faults));
  if (document_.isReviewStale()) return;
  stale_.stop();
  verdict_->setText(FindingsPanel::summary(reviewed->review));
}

void MainWindow::selectionChanged() {
  const std::set<Id>& selection = canvas_->selection();
  properties_->show(selection);
  for (ActionId id : {ActionId::Delete, ActionId::Duplicate, ActionId::FitSelection})
    action(id)->setEnabled(!selection.empty());
}

void MainWindow::goTo(const std::set<Id>& objects, std::optional<Point2> place) {
  const std::set<Id> known = canvas_->knownObjects(objects);
  canvas_->select(known);
  canvas_->lookAt(known, place);
  canvas_->light(place);
}

void MainWindow::setDarkWindow(bool dark) {
  applyAppearance(dark);
  actions_->drawIcons();
  findings_->setDark(dark);
  action(ActionId::DarkWindow)->setChecked(dark);
}

void MainWindow::setDarkDrawing(bool dark) {
  canvas_->setDark(dark);
  engineering_->setDarkDrawing(dark);
  action(ActionId::DarkDrawing)->setChecked(dark);
}

void MainWindow::restoreLayout() {
  const QSettings settings;
  restoreGeometry(settings.value("window/geometry").toByteArray());
  restoreState(settings.value("window/state").toByteArray(), kLayoutVersion);
  const bool dark = settings.value("window/dark", desktopIsDark()).toBool();
  setDarkWindow(dark);
  setDarkDrawing(settings.value("drawing/dark", dark).toBool());
  action(ActionId::Grid)->setChecked(settings.value("drawing/grid", true).toBool());
  action(ActionId::Labels)->setChecked(settings.value("drawing/names", true).toBool());
  canvas_->setGridShown(action(ActionId::Grid)->isChecked());
  canvas_->setLabelsShown(action(ActionId::Labels)->isChecked());
}

void MainWindow::saveLayout() const {
  QSettings settings;
  settings.setValue("window/geometry", saveGeometry());
  settings.setValue("window/state", saveState(kLayoutVersion));
  settings.setValue("window/dark", action(ActionId::DarkWindow)->isChecked());
  settings.setValue("drawing/dark", action(ActionId::DarkDrawing)->isChecked());
  settings.setValue("drawing/grid", action(ActionId::Grid)->isChecked());
  settings.setValue("drawing/names", action(ActionId::Labels)->isChecked());
}

void MainWindow::closeEvent(QCloseEvent* event) {
  if (!files_->mayLeave()) {
    event->ignore();
    return;
  }
  saveLayout();
  recovery_->finish();
  event->accept();
}

bool MainWindow::resume(std::unique_ptr<RecoverySlot> slot) {
  try {
    recovery_->resume(std::move(slot));
  } catch (const std::exception& e) {
    talk_.tellProblem(this, tr("The plan cannot be got back"), errorWords(e));
    return false;
  }
  files_->resumed();
  return true;
}

} // namespace sump
