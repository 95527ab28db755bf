#pragma once
// A row of a list in the window, without the widget that shows it.

#include "core/plan/items.h"

#include <QString>
#include <QStringList>

#include <set>

namespace sump {

/// One row with the objects that it is about.
struct TableRow {
  QStringList cells;
  std::set<Id> objects;
  QString tip;
  bool operator==(const TableRow&) const = default;
};

} // namespace sump
