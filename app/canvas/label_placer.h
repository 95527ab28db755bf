#pragma once
// Finds places for names: each keeps off other texts, marks and all lines of the drawing.

#include "app/canvas/drawn_lines.h"
#include "app/canvas/label_areas.h"
#include "app/canvas/labels.h"
#include "app/canvas/notes.h"

#include <QStringList>

#include <map>
#include <tuple>

namespace sump {

QFont labelFont(QFont font, const Label& label);
/// The label's box, turned with it.
QPolygonF boxOf(const Label& label, QSizeF textSize);

/// Sizes of texts, measured once.
class TextSizes {
public:
  explicit TextSizes(const QFont& font) : font_(font) {}
  QSizeF of(const Label& label);

private:
  QFont font_;
  std::map<std::tuple<double, bool, QString>, QSizeF> sizes_;
};

/// Takes names in order of weight and keeps those that fit.
class Placer {
public:
  Placer(const Scene& scene, const View& view, const QFont& font, const LabelRoom& room,
         const DrawnLines& lines);
  /// Dimension notes are never left out: one stands in its first place when all others are taken.
  void notes();
  /// Names that stand already, and whose others are looked for.
  void keepStanding(const LabelsBefore& before);
  /// Is the object's name looked for?
  bool wants(const Id& object) const { return !anew_ || anew_->contains(object); }
  /// The first of the texts that lies within the area, as near to `wish` as can be; `turns`: also
  /// along its longest edge. False when there is no room.
  bool within(Label label, const QStringList& texts, const Ring& ring, Point2 wish, bool turns);
  /// Beside a thing of this outline: on a side that is free, near rather than far.
  bool beside(Label label, const Ring& ring);
  /// On the line's longest straight stretch that nothing else needs, else close beside it, else a
  /// little off with a leader.
  bool along(Label label, const Polyline& line);
  std::vector<Label> take() { return std::move(kept_); }

  /// What stands so far, to go back to when another choice of names leaves fewer out.
  struct Standing {
    TakenBoxes taken;
    std::vector<Label> kept;
  };
  Standing standing() const { return {taken_, kept_}; }
  void goBack(Standing to) {
    taken_ = std::move(to.taken);
    kept_ = std::move(to.kept);
  }

private:
  /// Beside a leg or with a leader a name is looked for at no more lines than these: where so many
  /// have no room on themselves, the drawing is too small for more names.
  static constexpr int kMostSearched = 120;

  /// Of all notes in sight, with whose they are.
  using NoteLines = std::vector<std::pair<Id, QLineF>>;

  void note(const NoteDrawing& note, const NoteLines& lines);
  std::optional<Label> plainest(const NoteDrawing& note, const NoteLines& lines);
  bool bears(const NoteDrawing& note, Label& label, QPointF centre, const NoteLines& lines);
  std::vector<QPointF> placesOf(const NoteDrawing& note, const Label& label);
  double strayOf(const Label& label) const;
  bool shows(const Id& object) const { return wants(object) && scene_.shows(object); }
  QPolygonF shapeOf(Label label);
  bool sits(Label& label, QPointF centre, const QPolygonF& shape) const;
  bool isClear(const Label& label) const { return !lines_.cross(label.box); }
  bool keep(Label label);
  bool turnedWithin(Label& label, const Ring& ring, const QPolygonF& outline, QPointF wish);
  const LabelAreas& areas();
  bool onAnother(const Label& label, const Ring& own);

  std::vector<QLineF> legsInSight(const Polyline& line) const;
  bool onLeg(Label& label, const std::vector<QLineF>& legs, QSizeF size) const;
  bool besideLeg(Label& label, const std::vector<QLineF>& legs, QSizeF size) const;
  bool ledTo(Label& label, const std::vector<QLineF>& legs);

  const Scene& scene_;
  const View& view_;
  const DrawnLines& lines_;
  std::optional<LabelAreas> areas_; ///< once one asks for them
  QRectF window_;
  TextSizes sizes_;
  TakenBoxes taken_;
  std::vector<Label> kept_;
  std::optional<std::set<Id>> anew_; ///< nothing: all
  int searched_ = 0;
};

} // namespace sump
