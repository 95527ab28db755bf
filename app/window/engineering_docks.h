#pragma once
// The docks of the calculations: what we know, how it works out, the long section. They stand
// behind 'What is wrong' and are reached by its tabs and from the View menu.

#include "app/canvas/canvas.h"
#include "app/window/document.h"

#include <QMainWindow>

class QDockWidget;
class QMenu;

namespace sump {

class BasisPanel;
class CalculationsPanel;
class SectionPanel;

class EngineeringDocks : public QObject {
  Q_OBJECT

public:
  /// All must outlive the docks, which belong to the window.
  EngineeringDocks(QMainWindow* window, Document& document, Canvas& canvas, QMenu* menu,
                   QDockWidget* behind);
  /// Opens the form at a figure (BasisItem::key).
  void showBasis(const std::string& key);
  /// Opens the long section and gives it the keyboard.
  void showSection();
  void setDarkDrawing(bool dark);

private:
  /// A drawing needs more height than lists do: it is given while the section shows.
  void giveRoom(bool shown);
  void addCalculations(QMainWindow* window, Document& document, Canvas& canvas, QMenu* menu);
  QDockWidget* add(QMainWindow* window, const QString& title, const char* name, QWidget* content,
                   QMenu* menu);

  QDockWidget* last_ = nullptr; ///< the next one is put behind it
  BasisPanel* basis_ = nullptr;
  QDockWidget* basisDock_ = nullptr;
  SectionPanel* section_ = nullptr;
  QDockWidget* sectionDock_ = nullptr;
  /// The docks' height before the long section was given more; 0 while it has not been.
  int heightBefore_ = 0;
};

} // namespace sump
