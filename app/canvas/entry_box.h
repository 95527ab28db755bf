#pragma once
// The small entry at the pointer in which lengths, bearings, coordinates and levels are typed while
// a tool draws.

#include "app/canvas/tools/entry.h"

#include <QFrame>

class QGridLayout;
class QKeyEvent;
class QLineEdit;

namespace sump {

class FieldNote;

class EntryBox : public QFrame {
  Q_OBJECT

public:
  explicit EntryBox(QWidget* parent);

  /// Shows the fields near `at`, with `text` already typed into field `first`.
  void open(std::vector<EntryField> fields, UnitSystem units, const QString& text, QPoint at,
            std::size_t first = 0);
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
  void place(QPoint at);

  UnitSystem units_ = UnitSystem::UsCustomary;
  std::vector<EntryField> fields_;
  std::vector<QLineEdit*> editors_;
  QWidget* body_ = nullptr;
  FieldNote* problem_ = nullptr;
  std::size_t current_ = 0;
};

} // namespace sump
