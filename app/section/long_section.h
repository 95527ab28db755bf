#pragma once
// The long section itself: paints the vault train or one line to a stretched vertical scale, and
// turns drags and typed levels into edits. Wheel zooms at the pointer, dragging the ground or the
// middle button moves the view, dragging the line's own pipe moves all of its levels.

#include "app/canvas/entry_box.h"
#include "app/canvas/theme.h"
#include "app/canvas/view.h"
#include "app/section/section_drawing.h"
#include "app/section/section_labels.h"
#include "app/window/document.h"

#include <QPointer>
#include <QWidget>

#include <optional>
#include <set>

namespace sump {

class LongSection : public QWidget {
  Q_OBJECT

public:
  explicit LongSection(Document& document, QWidget* parent = nullptr);

  void present(SectionKind kind, const Id& run);
  SectionKind kind() const { return kind_; }
  const Id& run() const { return run_; }
  /// Draws the newest review.
  void refresh();
  /// The same, but not before it can be seen: a drag brings a review each frame.
  void markStale();
  void select(std::set<Id> ids);
  void setDark(bool dark);
  /// Nothing: the neat factor that fills the height.
  void setStretch(std::optional<double> stretch);
  double stretch() const { return plane_.stretch; }
  void fit();
  void zoomBy(double factor);

  const SectionDrawing& drawing() const { return drawing_; }
  /// On this widget.
  QPointF place(double station, Length level) const;
  QPointF place(const SectionHandle& handle) const { return place(handle.station, handle.invert); }
  /// The handle that the keyboard works on.
  const SectionHandle* current() const;
  void setCurrent(const SectionHandle& handle);
  const SectionTexts& texts() const { return texts_; }
  /// Handles and flags that no text may cover, on this widget.
  const std::vector<QRectF>& marks() const { return keptOff_; }
  /// What has no room in the drawing about the thing at this place; empty: nothing.
  QString untoldAt(QPointF pixel) const;
  QRectF plot() const; ///< without the gutters
  EntryBox& entry() { return *entry_; }
  /// From the typed entry to its handle, where it stands off.
  std::optional<QLineF> entryLeader() const;
  QString readOut() const { return readOut_; }

  QSize sizeHint() const override { return {900, 240}; }
  QSize minimumSizeHint() const override { return {260, 120}; }

signals:
  void picked(const sump::Id& object);
  void refused(const QString& reason);
  void viewChanged();

protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void hideEvent(QHideEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  bool focusNextPrevChild(bool next) override;
  bool event(QEvent* event) override;

private:
  /// What a pressed button is doing.
  enum class Gesture { None, Pan, Level, Line, Pick };

  Point2 planePoint(QPointF pixel) const;
  double pixelsPerMetreUp() const { return view_.scale() * plane_.stretch; }
  const CanvasTheme& theme() const { return canvasTheme(dark_); }
  const SectionHandle* handleAt(QPointF pixel) const;
  Id objectAt(QPointF pixel) const;
  bool isOwn(const Id& object) const;
  void takeMarks();
  void viewWasChanged();
  bool dragging() const { return gesture_ == Gesture::Level || gesture_ == Gesture::Line; }
  bool mayChange(const Id& run);
  void beginLevel(const SectionHandle& handle);
  void dragLevel(QPointF at, bool loose);
  void endLevel();
  void dragLine(QPointF at, bool loose);
  void endLine();
  void planChanged();
  void giveUp();
  void commitLevel(SectionHandle handle, std::optional<Length> level);
  void openEntry(const QString& text);
  EntryPlace entryPlace() const;
  void enterTyped();
  void shutEntry();
  void nudge(int steps);
  bool handleKey(QKeyEvent* event);
  void hover(QPointF at);
  void tell(const QString& text);
  void announceCurrent();
  std::optional<RunProfile> profileOf(const Id& run) const;

  void paintGrid(QPainter& painter) const;
  void paintMarks(QPainter& painter, bool ground) const;
  void paintSelection(QPainter& painter) const;
  void paintHandles(QPainter& painter) const;
  std::optional<QRectF> dragFlag() const;
  QString dragText() const;
  void paintDrag(QPainter& painter) const;
  void paintEntryLeader(QPainter& painter, const QLineF& leader) const;
  void paintGutters(QPainter& painter) const;
  void paintFoot(QPainter& painter) const;
  void paintNothing(QPainter& painter) const;
  std::vector<QRectF> handleBoxes() const;
  std::vector<QPolygonF> drawnShapes() const;

  Document& document_;
  QPointer<Document> alive_; ///< null once the document is gone
  SectionKind kind_ = SectionKind::Train;
  Id run_;
  SectionDrawing drawing_;
  std::vector<Mark> marks_;
  SectionPlane plane_;
  View view_;
  std::optional<double> wishedStretch_;
  std::set<Id> selection_;
  SectionTexts texts_;
  std::vector<QRectF> keptOff_;
  EntryBox* entry_ = nullptr;
  QString readOut_;
  std::optional<SectionHandle> current_;
  Gesture gesture_ = Gesture::None;
  QPointF pressedAt_, panFrom_;
  bool moved_ = false;
  std::optional<Length> dragged_; ///< level under the pointer
  Length shift_;                  ///< of a whole line
  std::optional<RunProfile> draggedRun_;
  std::vector<Length> catches_;
  bool dark_ = false;
  bool stale_ = false; ///< there is a newer review than the one drawn
  bool fitted_ = true; ///< the view follows the size until it is moved
};

} // namespace sump
