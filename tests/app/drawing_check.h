#pragma once
// Whether what stands on the drawing and on the long section can be read: no text on another, on a
// handle, a catch or a sign, none over a line of the drawing, none off the edge, and each close to
// what it is about. The typed entry stands beside what is typed.

#include "app/canvas/canvas.h"
#include "app/section/long_section.h"

#include <QPointer>
#include <QStringList>

#include <cmath>
#include <set>

namespace sump::testing {

class DrawingCheck {
public:
  /// Of what is visible in this tree.
  static QStringList of(QWidget* top) {
    DrawingCheck check;
    check.visit(top);
    // What is painted takes up the newest review, and panels may be made anew by that.
    const QList<QWidget*> found = top->findChildren<QWidget*>();
    for (const QPointer<QWidget>& widget : QList<QPointer<QWidget>>(found.begin(), found.end())) {
      if (!widget.isNull() && widget->isVisible()) check.visit(widget);
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
    for (const Label& label : drawn.underEntry)
      tell("the typed entry hides " + label.text);
    for (const QLineF& leader : drawn.leaders) {
      for (const Label& label : drawn.names) {
        if (convexOverlap(QPolygonF({leader.p1(), leader.p2()}), label.box))
          tell("a leader of the tool runs through " + label.text);
      }
    }
    if (canvas.scene() != nullptr) offLines(canvas);
    if (entry != nullptr && entry->isVisible()) besideWhatIsTyped(canvas, entry->geometry());
  }

  /// Each piece of the marks' outlines, on the widget.
  template <typename ToPixel, typename Visit>
  static void eachPiece(const std::vector<Mark>& marks, ToPixel toPixel, Visit visit) {
    for (const Mark& mark : marks) {
      const bool symbol = mark.layer == Layer::Symbol || mark.layer == Layer::Part;
      if (mark.points.size() < 2 || (!mark.line && !symbol)) continue;
      std::vector<QPointF> shape;
      for (const Point2& p : mark.points)
        shape.push_back(toPixel(p));
      if (mark.round) {
        const QPointF middle = shape[0];
        const double r = QLineF(shape[0], shape[1]).length();
        shape.clear();
        for (int i = 0; i <= 12; ++i)
          shape.push_back(middle + QPointF(std::cos(i * kPi / 6), std::sin(i * kPi / 6)) * r);
      } else if (mark.closed) {
        shape.push_back(shape.front());
      }
      for (std::size_t i = 1; i < shape.size(); ++i)
        visit(mark, QPolygonF({shape[i - 1], shape[i]}));
    }
  }

  /// A name may stand on the line that it names, never on another's, a wall or a symbol.
  void offLines(const Canvas& canvas) {
    const Scene& scene = *canvas.scene();
    std::vector<Mark> marks;
    for (std::size_t i : scene.visible(canvas.view().visible()))
      marks.push_back(scene.marks()[i]);
    std::set<QString> told;
    eachPiece(
        marks, [&](Point2 p) { return canvas.view().toScreen(p); },
        [&](const Mark& mark, const QPolygonF& piece) {
          const bool line = mark.layer == Layer::Run || mark.layer == Layer::Utility;
          for (const Label& label : canvas.drawn().names) {
            if (scene.plan().notes.find(label.object) != nullptr) continue; // never left out
            if ((line && mark.object == label.object) || !convexOverlap(label.box, piece)) continue;
            const QString problem =
                label.text + " lies over a line of " + QString::fromStdString(mark.object);
            if (told.insert(problem).second) tell(problem);
          }
        });
  }

  void besideWhatIsTyped(const Canvas& canvas, const QRectF& entry) {
    if (!QRectF(canvas.rect()).contains(entry)) tell("the typed entry leaves the view");
    for (const Polyline& line : canvas.tool().underWay()) {
      const QPolygonF shape = canvas.view().toScreen(line);
      if (!shape.isEmpty() && entry.contains(shape.last())) tell("the entry hides what is typed");
      for (qsizetype i = 1; i < shape.size(); ++i) {
        if (convexOverlap(QPolygonF(entry), QPolygonF({shape[i - 1], shape[i]})))
          tell("the typed entry lies over what is being drawn");
      }
    }
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
    offLines(section);
    typedIn(section);
    for (const PlacedNote& placed : section.texts().placed) {
      if (!placed.leader) continue;
      for (const PlacedNote& other : section.texts().placed) {
        const QPolygonF line({placed.leader->p1(), placed.leader->p2()});
        if (&other != &placed && convexOverlap(line, other.box))
          tell("the leader of " + placed.text + " runs through " + other.text);
      }
    }
  }

  /// In the drawing, never over the figures at its rim, and its leader through no text.
  void typedIn(const LongSection& section) {
    const auto* entry = section.findChild<EntryBox*>();
    if (entry == nullptr || !entry->isVisible()) return;
    if (!section.plot().contains(QRectF(entry->geometry())))
      tell("the typed entry covers the figures at the section's rim");
    const auto leader = section.entryLeader();
    if (!leader) return;
    for (const PlacedNote& placed : section.texts().placed) {
      if (convexOverlap(QPolygonF({leader->p1(), leader->p2()}), placed.box))
        tell("the leader of the typed entry runs through " + placed.text);
    }
  }

  void offLines(const LongSection& section) {
    const SectionPlane plane{section.stretch()};
    std::set<QString> told;
    eachPiece(
        section.drawing().marks(plane),
        [&](Point2 p) { return section.place(p.x, plane.level(p)); },
        [&](const Mark& mark, const QPolygonF& piece) {
          for (const PlacedNote& placed : section.texts().placed) {
            if (!convexOverlap(placed.box, piece)) continue;
            const QString problem =
                placed.text + " lies over a line of " + QString::fromStdString(mark.object);
            if (told.insert(problem).second) tell(problem);
          }
        });
  }

  QStringList problems_;
};

} // namespace sump::testing
