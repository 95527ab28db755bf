#pragma once
// The small entry at the pointer in which lengths, bearings, coordinates and levels are typed while
// a tool draws.

#include "app/canvas/tools/entry.h"

#include <QFrame>
#include <QLineF>
#include <QPointF>
#include <QPolygonF>
#include <QRectF>

#include <functional>
#include <optional>

class QKeyEvent;
class QLineEdit;

namespace sump {

class DrawnLines;
class FieldNote;

/// Where the entry is wanted and what it must leave in sight, on its parent.
struct EntryPlace {
  QPointF at;                        ///< what is being typed
  std::vector<QLineF> lines{};       ///< that are being drawn
  std::vector<QRectF> boxes{};       ///< the pointer and the like
  std::vector<QPolygonF> names{};    ///< texts and signs that stand on the drawing
  const DrawnLines* drawn = nullptr; ///< the drawing, of which it hides as little as can be
};
/// Asked anew whenever the entry finds its place.
using EntryPlaceNow = std::function<EntryPlace()>;

class EntryBox : public QFrame {
  Q_OBJECT

public:
  explicit EntryBox(QWidget* parent);

  /// Shows the fields near a place, with `text` already typed into field `first`.
  void open(std::vector<EntryField> fields, UnitSystem units, const QString& text,
            EntryPlaceNow place, std::size_t first = 0);
  /// Stands elsewhere when it covers what is now being typed.
  void giveWay();
  void shut();
  /// Keys that reach the drawing while the entry is open belong to it.
  void take(QKeyEvent* event);
  /// Of the fields that can be read as they stand.
  Entry values() const;
  void complain(const QString& why);
  /// To what is being typed, where the entry stands off.
  std::optional<QLineF> leader() const;

signals:
  void edited();
  void entered(Qt::KeyboardModifiers modifiers);
  void givenUp();

protected:
  bool eventFilter(QObject* watched, QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

private:
  bool key(QKeyEvent* event);
  void step(int by);
  bool allReadable();
  void arrange(QWidget* body);
  void place();
  double covered(const QRectF& box) const;
  double hidden(const QRectF& box) const;

  UnitSystem units_ = UnitSystem::UsCustomary;
  std::vector<EntryField> fields_;
  EntryPlaceNow placeNow_;
  EntryPlace wanted_;
  std::vector<QLineEdit*> editors_;
  QWidget* body_ = nullptr;
  FieldNote* problem_ = nullptr;
  std::size_t current_ = 0;
};

} // namespace sump
