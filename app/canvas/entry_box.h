#pragma once
// The small entry at the pointer in which lengths, bearings, coordinates and levels are typed while
// a tool draws.

#include "app/canvas/tools/entry.h"

#include <QFrame>
#include <QLineF>
#include <QPointF>
#include <QRectF>

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
  const DrawnLines* drawn = nullptr; ///< the drawing, of which it hides as little as can be
};

class EntryBox : public QFrame {
  Q_OBJECT

public:
  explicit EntryBox(QWidget* parent);

  /// Shows the fields near a place, with `text` already typed into field `first`.
  void open(std::vector<EntryField> fields, UnitSystem units, const QString& text,
            const EntryPlace& place, std::size_t first = 0);
  /// Stands elsewhere when it covers what is now being typed.
  void giveWay(const EntryPlace& place);
  void shut();
  /// Keys that reach the drawing while the entry is open belong to it.
  void take(QKeyEvent* event);
  /// Of the fields that can be read as they stand.
  Entry values() const;
  void complain(const QString& why);

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

  UnitSystem units_ = UnitSystem::UsCustomary;
  std::vector<EntryField> fields_;
  EntryPlace wanted_;
  std::vector<QLineEdit*> editors_;
  QWidget* body_ = nullptr;
  FieldNote* problem_ = nullptr;
  std::size_t current_ = 0;
};

} // namespace sump
