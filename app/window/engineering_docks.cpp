#include "app/window/engineering_docks.h"

#include "app/panels/basis_panel.h"
#include "app/panels/calculations_panel.h"
#include "app/panels/in_front.h"
#include "app/section/section_panel.h"

#include <QDockWidget>
#include <QMenu>
#include <QTimer>

#include <algorithm>

namespace sump {

EngineeringDocks::EngineeringDocks(QMainWindow* window, Document& document, Canvas& canvas,
                                   QMenu* menu, QDockWidget* behind)
    : QObject(window), last_(behind) {
  basis_ = new BasisPanel(document, window);
  basisDock_ = add(window, tr("What we know"), "dock-basis", basis_, menu);
  addCalculations(window, document, canvas, menu);
  section_ = new SectionPanel(document, canvas, window);
  // The action that opens it stands in the menu already.
  sectionDock_ = add(window, tr("Long section"), "dock-section", section_, nullptr);
  connect(section_, &SectionPanel::refused, &canvas, &Canvas::refused);
  // After the tabs have settled.
  connect(sectionDock_, &QDockWidget::visibilityChanged, this,
          [this](bool shown) { QTimer::singleShot(0, this, [this, shown] { giveRoom(shown); }); });
}

void EngineeringDocks::addCalculations(QMainWindow* window, Document& document, Canvas& canvas,
                                       QMenu* menu) {
  auto* panel = new CalculationsPanel(document, window);
  add(window, tr("How it works out"), "dock-calculations", panel, menu);
  connect(&canvas, &Canvas::selectionChanged, panel,
          [panel, &canvas] { panel->setSelection(canvas.selection()); });
  connect(panel, &CalculationsPanel::knowWanted, this, &EngineeringDocks::showBasis);
  connect(panel, &CalculationsPanel::objectWanted, &canvas, [&canvas](const std::set<Id>& objects) {
    const std::set<Id> known = canvas.knownObjects(objects);
    canvas.select(known);
    canvas.lookAt(known, std::nullopt);
  });
}

QDockWidget* EngineeringDocks::add(QMainWindow* window, const QString& title, const char* name,
                                   QWidget* content, QMenu* menu) {
  auto* dock = new QDockWidget(title, window);
  dock->setObjectName(name);
  dock->setWidget(content);
  tellWhenInFront(*dock, content);
  window->addDockWidget(Qt::BottomDockWidgetArea, dock);
  window->tabifyDockWidget(last_, dock);
  if (menu != nullptr) menu->addAction(dock->toggleViewAction());
  last_ = dock;
  return dock;
}

void EngineeringDocks::showBasis(const std::string& key) {
  basisDock_->show();
  basisDock_->raise();
  basis_->goTo(key);
}

void EngineeringDocks::showSection() {
  sectionDock_->show();
  sectionDock_->raise();
  section_->section().setFocus();
}

void EngineeringDocks::giveRoom(bool shown) {
  auto* window = qobject_cast<QMainWindow*>(parent());
  const int least = std::min(380, window->height() * 2 / 5); // most stays for the drawing
  if (!window->isVisible() || sectionDock_->isFloating()) return;
  if (shown && section_->height() < least) {
    heightBefore_ = sectionDock_->height();
    window->resizeDocks({sectionDock_}, {least}, Qt::Vertical);
  } else if (!shown && heightBefore_ > 0) {
    // Another tab is in front now; the group gets back what it had.
    window->resizeDocks({sectionDock_}, {heightBefore_}, Qt::Vertical);
    heightBefore_ = 0;
  }
}

void EngineeringDocks::setDarkDrawing(bool dark) {
  section_->setDark(dark);
}

} // namespace sump
