#pragma once
// The drawing: shows the newest review of a document and hands gestures to the tool in use. Pans by
// middle button, Space or two fingers, zooms at the pointer by wheel or pinch.

#include "app/canvas/entry_box.h"
#include "app/canvas/labels.h"
#include "app/canvas/overlay.h"
#include "app/canvas/scene.h"
#include "app/canvas/theme.h"
#include "app/canvas/tools/tool.h"
#include "app/canvas/underlay.h"
#include "app/canvas/view.h"
#include "app/window/document.h"

#include <QWidget>

#include <memory>
#include <set>

class QGestureEvent;
class QNativeGestureEvent;

namespace sump {

class Backdrop;
struct SceneChanges;
class DrawnLines;

class Canvas : public QWidget, public ToolHost {
  Q_OBJECT

public:
  explicit Canvas(Document& document, QWidget* parent = nullptr);
  ~Canvas() override;

  void setTool(std::unique_ptr<Tool> tool);
  Tool& tool() const { return *tool_; }

  const std::set<Id>& selection() const override { return selection_; }
  void select(std::set<Id> ids) override;
  const View& view() const override { return view_; }
  const Scene* scene() const override { return scene_.get(); }
  const SnapField& snapField() const override;
  const DrawingAids& aids() const override { return aids_; }
  EntryBox& entry() { return *entry_; }

  /// Of these ids those that can be selected; parts stand for their owners.
  std::set<Id> knownObjects(const std::set<Id>& ids) const;

  void setDark(bool dark);
  void setGridShown(bool shown);
  void setLabelsShown(bool shown);
  void setSnapping(bool on) { aids_.snap = on; }
  void setStraight(bool on) { aids_.straight = on; }
  void setShown(const Shown& shown);
  const Shown& shown() const { return shown_; }
  /// What stood over the plan when it was painted last, on the screen.
  struct Drawn {
    std::vector<Label> names;
    std::vector<QRectF> marks;       ///< handles, catches, signs of findings
    std::vector<QRectF> texts;       ///< of the tool
    std::vector<QLineF> leaders{};   ///< of these, and of the typed entry
    std::vector<Label> underEntry{}; ///< names that had to go for the typed entry
    QRectF scaleBar;
  };
  const Drawn& drawn() const { return drawn_; }
  /// Where the pointer is, or the middle of the view when it is elsewhere.
  Point2 pointerPlace() const;

  void zoomBy(double factor);
  void fitAll();
  void fitSelection();
  /// Brings the objects, or the place where there are none, to the middle at a telling scale.
  void lookAt(const std::set<Id>& ids, std::optional<Point2> place);
  /// A ring round what a chosen finding is about, until something else is selected.
  void light(std::optional<Point2> place);
  const std::optional<Point2>& lit() const { return lit_; }

  QSize sizeHint() const override { return {900, 640}; }

signals:
  void selectionChanged();
  void hintChanged(const QString& hint);
  void pointerMoved(const QString& coordinates);
  void viewChanged(const QString& scale);
  void refused(const QString& reason);
  /// Esc while the tool had nothing under way.
  void toolGivenUp();
  void contextMenuWanted(const QPoint& globalPosition);

protected:
  bool event(QEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void keyReleaseEvent(QKeyEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;

private:
  // ToolHost
  const Plan& plan() const override { return document_.plan(); }
  const Catalog& catalog() const override { return document_.catalog(); }
  bool commit(const QString& step, Plan plan) override;
  void preview(std::optional<Plan> plan) override { document_.preview(std::move(plan)); }
  void refresh() override;
  void refuse(const QString& reason) override { emit refused(reason); }

  bool openEntry(const QKeyEvent& event);
  EntryPlace entryPlace() const;
  /// What the tool draws or moves, on the screen.
  std::vector<QPolygonF> shapesUnderWay() const;
  std::vector<QLineF> linesUnderWay() const;
  void shutEntry();
  void enterTyped(Qt::KeyboardModifiers modifiers);
  void nudge(Point2 direction, Qt::KeyboardModifiers modifiers);
  bool arrow(const QKeyEvent& event);
  void takeReview();
  void documentReplaced();
  void dropLostSelection();
  void viewWasChanged();
  void panBy(QPointF pixels);
  void zoomAt(QPointF at, double factor);
  void pinch(QGestureEvent* event);
  bool nativeGesture(QNativeGestureEvent* event);
  void tellCoordinates(QPointF at);
  void paintBackdrop(QPainter& painter, const QRegion& region);
  /// All of it is to be painted anew: another view, another look.
  void repaintAll();
  /// Texts are to find their places anew.
  void forgetPlaces();
  void forgetPlaces(const SceneChanges& changes);
  LabelsBefore labelsBefore() const;
  void paintFindings(QPainter& painter);
  void paintLit(QPainter& painter);
  void placeNames(const Overlay& overlay);
  std::vector<QPolygonF> nameBoxes() const;
  void paintNames(QPainter& painter, const Overlay& overlay);
  std::vector<QRectF> keptClear() const;
  LabelRoom labelRoom(const Overlay& overlay) const;
  void paintEmptyHint(QPainter& painter) const;
  QRectF scaleBarPlace(const QFont& font);
  QString nameAt(QPointF at) const;
  void showCursor();
  Pointer pointerOf(const QMouseEvent& event) const;
  const CanvasTheme& theme() const { return canvasTheme(dark_); }

  Document& document_;
  View view_;
  std::unique_ptr<Scene> scene_;
  std::unique_ptr<Tool> tool_;
  EntryBox* entry_ = nullptr;
  DrawingAids aids_;
  mutable SnapField snapField_;
  mutable PlanPtr snapPlan_; ///< that snapField_ was made of
  QPointF pointer_;
  std::set<Id> selection_;
  std::optional<Point2> lit_;
  Shown shown_;
  UnderlayPainter pictures_;
  std::unique_ptr<Backdrop> backdrop_;
  std::unique_ptr<DrawnLines> lines_;        ///< of this scene in this view
  std::optional<std::vector<Label>> labels_; ///< of this scene in this view
  Qt::Corner barCorner_ = Qt::BottomLeftCorner;
  std::optional<LabelsBefore> standing_; ///< that they are placed by, in a drag
  std::set<Id> namesAtRest_;             ///< that were shown before the drag
  std::vector<QRectF> labelHandles_;     ///< that they make room for
  QRectF labelBar_;                      ///< likewise
  Drawn drawn_;
  bool fitPending_ = true;
  bool fitted_ = false; ///< the whole site is shown, and the view was not moved since
  bool dark_ = false;
  bool gridShown_ = true;
  bool labelsShown_ = true;
  bool spaceHeld_ = false;
  bool panning_ = false;
  bool toolPressed_ = false;
  QPointF panFrom_;
};

} // namespace sump
