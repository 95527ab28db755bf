#pragma once
// Whether what stands on the drawing and on the long section can be read: no text on another, on a
// handle, a catch or a sign, none off the edge, and each close to what it is about.

#include "app/canvas/canvas.h"
#include "app/section/long_section.h"

#include <QStringList>

namespace sump::testing {

class DrawingCheck {
public:
  /// Of what is visible in this tree.
  static QStringList of(QWidget* top) {
    DrawingCheck check;
    check.visit(top);
    for (QWidget* widget : top->findChildren<QWidget*>()) {
      if (widget->isVisible()) check.visit(widget);
    }
    return check.problems_;
  }

private:
  struct Box {
    QString name;
    QPolygonF shape;
  };

  void visit(QWidget* widget) {
    auto* canvas = qobject_cast<Canvas*>(widget);
    auto* section = qobject_cast<LongSection*>(widget);
    // What was painted last may be of another size.
    if (canvas != nullptr || section != nullptr) widget->repaint();
    if (canvas != nullptr) drawing(*canvas);
    if (section != nullptr) this->section(*section);
  }
  void tell(const QString& what) { problems_ << what; }

  /// No two of `texts` share any place, nor one of them with one of `marks`.
  void apart(const std::vector<Box>& texts, const std::vector<Box>& marks, const QRectF& window) {
    for (std::size_t i = 0; i < texts.size(); ++i) {
      if (!window.contains(texts[i].shape.boundingRect())) tell(texts[i].name + " leaves the view");
      for (std::size_t k = 0; k < i; ++k) {
        if (convexOverlap(texts[i].shape, texts[k].shape))
          tell(texts[i].name + " lies over " + texts[k].name);
      }
      for (const Box& mark : marks) {
        if (convexOverlap(texts[i].shape, mark.shape))
          tell(texts[i].name + " lies over " + mark.name);
      }
    }
  }

  void drawing(const Canvas& canvas) {
    const Canvas::Drawn& drawn = canvas.drawn();
    std::vector<Box> texts, marks;
    for (const Label& label : drawn.names)
      texts.push_back({label.text, label.box});
    for (const QRectF& box : drawn.texts)
      texts.push_back({QString("the tool's text at %1, %2").arg(box.x()).arg(box.y()), box});
    for (const QRectF& box : drawn.marks)
      marks.push_back({QString("a mark at %1, %2").arg(box.x()).arg(box.y()), box});
    marks.push_back({"the scale bar", drawn.scaleBar});
    const auto* entry = canvas.findChild<EntryBox*>();
    if (entry != nullptr && entry->isVisible())
      marks.push_back({"the typed entry", QPolygonF(QRectF(entry->geometry()))});
    apart(texts, marks, QRectF(canvas.rect()));
    for (const Label& label : drawn.names)
      near(canvas, label);
  }

  /// A name stands at what it names, by a leader where it stands off.
  void near(const Canvas& canvas, const Label& label) {
    const auto bounds = canvas.scene()->bounds({label.object});
    if (!bounds || canvas.scene()->plan().notes.find(label.object) != nullptr) return;
    const View& view = canvas.view();
    const QRectF on = QRectF(view.toScreen(bounds->low), view.toScreen(bounds->high)).normalized();
    const double away = shortestBetween(label.box.boundingRect(), on).length();
    if (away > (label.leader ? kFarthestName : kLeaderFrom))
      tell(QString("%1 stands %2 pixels from what it names").arg(label.text).arg(away));
  }

  void section(const LongSection& section) {
    std::vector<Box> texts, marks;
    for (const PlacedNote& placed : section.texts().placed) {
      texts.push_back({placed.text, placed.box});
      const double away = shortestBetween(placed.box, {placed.anchor, QSizeF(0, 0)}).length();
      if (away > kFarthestNote)
        tell(QString("%1 stands %2 pixels from what it is about").arg(placed.text).arg(away));
    }
    for (const QRectF& box : section.marks())
      marks.push_back({QString("a handle at %1, %2").arg(box.x()).arg(box.y()), box});
    apart(texts, marks, QRectF(section.rect()));
    for (const PlacedNote& placed : section.texts().placed) {
      if (!placed.leader) continue;
      for (const PlacedNote& other : section.texts().placed) {
        const QPolygonF line({placed.leader->p1(), placed.leader->p2()});
        if (&other != &placed && convexOverlap(line, other.box))
          tell("the leader of " + placed.text + " runs through " + other.text);
      }
    }
  }

  QStringList problems_;
};

} // namespace sump::testing
