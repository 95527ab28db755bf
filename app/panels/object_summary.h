#pragma once
// The figures of one object in a line, live beside the drawing: velocity, fall, share of the
// capacity, NPSH margin of a run; levels and flotation of a vault. Knows no widget.

#include "core/rules/review.h"

#include <QString>

#include <vector>

namespace sump {

struct SummaryFigure {
  QString name;
  QString value; ///< empty: it cannot be decided
  QString needs; ///< then what it needs
};

struct ObjectSummary {
  QString title; ///< `SU-1, suction, 2 in`
  std::vector<SummaryFigure> figures;
};

/// Of a run or vault; no figures for other objects. An empty id: of the whole plan.
ObjectSummary objectSummary(const Review& review, const Id& object);

} // namespace sump
