#pragma once
// Two tables beside each other where both find room for their columns, else one above the other, so
// that neither has to be scrolled sideways.

#include "app/panels/tables.h"

#include <QSplitter>

namespace sump {

class SideBySide : public QSplitter {
  Q_OBJECT

public:
  /// Takes the tables as its own.
  SideBySide(ObjectTable* left, ObjectTable* right, QWidget* parent = nullptr);

protected:
  void resizeEvent(QResizeEvent* event) override;

private:
  void arrange();

  ObjectTable* left_;
  ObjectTable* right_;
};

} // namespace sump
