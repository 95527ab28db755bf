#pragma once
// Small tables beside the calculations: what another suction, another size or another chamber
// would mean. All figures are the study's own. Knows no widget.

#include "core/rules/review.h"

#include <QString>
#include <QStringList>

#include <vector>

namespace sump {

/// Columns whose heading starts with `>` hold figures.
struct ChoiceTable {
  QString title;
  QStringList headings;
  std::vector<QStringList> rows;
};

/// As drawn, straight, one size up, one more elbow, one more foot.
ChoiceTable suctionChoices(const SuctionStudy& suction, UnitSystem units);
/// As drawn and the next sizes up, each with its velocity, head lost and verdict.
ChoiceTable sizeChoices(const PressureRun& run, UnitSystem units);
/// The water in the chambers of a vault: at rest, at the peak with the pump stopped and running.
ChoiceTable chamberLevels(const Review& review, const Id& vault);
/// The chambers of a vault with what they keep back.
ChoiceTable chamberDuties(const Review& review, const Id& vault);
/// The tables that go with an object: of a suction, another pressure run or a vault; none of
/// others.
std::vector<ChoiceTable> choiceTables(const Review& review, const Id& object);

} // namespace sump
