#pragma once
// Pipe and conduit that stand in the open in the equipment rooms, and how far apart their supports
// may be.

#include "core/catalog/supplies.h"
#include "core/study/study.h"

#include <string>
#include <vector>

namespace sump {

/// How much of a leg stands in the open in an equipment room.
struct ExposedLeg {
  Length length;
  bool vertical = false;
  std::string size;
};
std::vector<ExposedLeg> exposedLegs(const Plan& plan, const RunStudy& run);

/// The most between two supports of such a leg of the run: of pipe the lesser of code and trade
/// table, of conduit the electrical code's.
Decided<Length> supportSpacing(const Plan& plan, const Supplies& supplies, const Run& run,
                               const ExposedLeg& leg);

/// All of one run that is of one size and way.
struct ExposedPipe {
  Id run;
  ExposedLeg all;
  Decided<Length> spacing;
};
/// In the plan's order; of runs that could be worked out.
std::vector<ExposedPipe> exposedPipes(const Plan& plan, const Study& study,
                                      const Supplies& supplies);

} // namespace sump
