#pragma once
// The window: puts canvas, panels and actions round one document and joins them.

#include "app/canvas/canvas.h"
#include "app/panels/findings_panel.h"
#include "app/panels/properties_panel.h"
#include "app/panels/review_table.h"
#include "app/window/action_set.h"
#include "app/window/document.h"
#include "app/window/engineering_docks.h"
#include "app/window/file_desk.h"
#include "app/window/recovery.h"
#include "app/window/tool_strip.h"

#include <QMainWindow>
#include <QTimer>

class QDockWidget;
class QLabel;
class QStackedWidget;

namespace sump {

class FindBar;
class PictureDesk;
class PlaceEditing;
class QuietLabel;
class StartPage;

class MainWindow : public QMainWindow {
  Q_OBJECT

public:
  /// `talk` must outlive the window.
  explicit MainWindow(Talk& talk, QWidget* parent = nullptr);
  ~MainWindow() override;

  Document& document() { return document_; }
  Canvas& canvas() { return *canvas_; }
  FileDesk& files() { return *files_; }
  Recovery& recovery() { return *recovery_; }
  /// The start page in place of the drawing, until there is a plan to draw.
  void showStart();
  /// Goes on with a plan that a crash cut off; false when its file cannot be used.
  bool resume(std::unique_ptr<RecoverySlot> slot);
  FindingsPanel& findings() { return *findings_; }
  PropertiesPanel& properties() { return *properties_; }
  PictureDesk& pictures() { return *pictures_; }
  QAction* action(ActionId id) const { return actions_->at(id); }
  void setDarkWindow(bool dark);
  void setDarkDrawing(bool dark);

protected:
  void closeEvent(QCloseEvent* event) override;

private:
  void makeCentre();
  void joinStart();
  void makeDocks();
  void makeLevels();
  QDockWidget* addDock(Qt::DockWidgetArea area, const QString& title, const char* name,
                       QWidget* content);
  void makeStatus();
  void joinFileActions();
  void joinEditActions();
  void joinViewActions();
  void joinToolActions();
  void joinPanels();
  void useTool(ActionId id);
  void giveTool(std::unique_ptr<Tool> tool);
  void documentChanged();
  void reviewArrived();
  void selectionChanged();
  void acceptFinding(const Finding& finding);
  void showStale();
  void fillRecent();
  void eraseSelection();
  void duplicateSelection();
  void selectAll();
  void goTo(const std::set<Id>& objects, std::optional<Point2> place);
  void showContextMenu(const QPoint& at);
  void restoreLayout();
  void saveLayout() const;

  Talk& talk_;
  Document document_;
  ActionSet* actions_ = nullptr;
  FileDesk* files_ = nullptr;
  Recovery* recovery_ = nullptr;
  Canvas* canvas_ = nullptr;
  QStackedWidget* centre_ = nullptr;
  StartPage* start_ = nullptr;
  ToolStrip* strip_ = nullptr;
  FindBar* finder_ = nullptr;
  PictureDesk* pictures_ = nullptr;
  PlaceEditing* places_ = nullptr;
  PropertiesPanel* properties_ = nullptr;
  FindingsPanel* findings_ = nullptr;
  ReviewTable* takeOff_ = nullptr;
  ReviewTable* vaultLevels_ = nullptr;
  ReviewTable* runLevels_ = nullptr;
  QDockWidget* propertiesDock_ = nullptr;
  QDockWidget* findingsDock_ = nullptr;
  QDockWidget* takeOffDock_ = nullptr;
  QDockWidget* levelsDock_ = nullptr;
  EngineeringDocks* engineering_ = nullptr;
  QMenu* recentMenu_ = nullptr;
  QuietLabel* coordinates_ = nullptr;
  QLabel* scale_ = nullptr;
  QLabel* verdict_ = nullptr;
  QTimer stale_;
  ActionId tool_ = ActionId::ToolSelect;
};

} // namespace sump
