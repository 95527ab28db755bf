#pragma once
// What the drawing shows: kinds of object and services of lines, grouped by trade. Hidden things
// are neither painted nor picked. A way of looking, not part of the plan.

#include "core/plan/ends.h"

#include <QString>

#include <set>
#include <vector>

namespace sump {

class Shown {
public:
  /// `kind/vault`, `service/suction`, `findings`: stable, for settings.
  bool shows(const QString& key) const { return !hidden_.contains(key); }
  void set(const QString& key, bool shown);
  bool everything() const { return hidden_.empty(); }
  const std::set<QString>& hidden() const { return hidden_; }
  /// The object that can be selected under this id; parts count as what they belong to.
  bool shows(const Plan& plan, const Locator& locator, const Id& id) const;
  bool operator==(const Shown&) const = default;

private:
  std::set<QString> hidden_;
};

/// Key of an object; empty for an unknown id.
QString shownKey(const Plan& plan, const Locator& locator, const Id& id);

struct ShownEntry {
  QString key;
  QString title;
};
struct ShownTrade {
  QString title;
  std::vector<ShownEntry> entries;
};
/// Every key once, in the order of the panel.
std::vector<ShownTrade> shownTrades();

} // namespace sump
