#pragma once
// Start-up and upkeep of one system: the table's texts with this plan's figures in them.
//
// A figure that cannot be decided leaves a blank to fill by hand and says what it needs.

#include "core/plan/plan.h"
#include "core/study/decided.h"
#include "core/study/study.h"
#include "core/study/upkeep_table.h"

#include <string>
#include <vector>

namespace sump {

struct UpkeepFigure {
  std::string key;           ///< of kUpkeepFigures
  std::string title;         ///< `Filling of suction and strainer`
  Decided<std::string> text; ///< in the project's units
};

/// A vault, room, run, inline part, supply or signal that a step is about.
struct UpkeepObject {
  Id id;
  Id run;           ///< on which the part or fitting is; empty for others
  std::string what; ///< `union`, `foot valve`; of other objects their name; empty for a run
};

struct UpkeepStep {
  std::string key;
  std::string title;
  std::string text;
  std::string caution;
  std::vector<UpkeepObject> objects; ///< in the plan's order
  bool noneDrawn = false;            ///< the table names kinds of objects and the plan has none
  Needs needs;                       ///< of all figures in it that are not decided
};

struct UpkeepTask {
  UpkeepStep step;
  UpkeepInterval every;
  std::string basis; ///< where the interval comes from, in words
};

struct UpkeepPlan {
  std::vector<UpkeepStep> startUp; ///< in the order of the work
  std::vector<UpkeepTask> tasks;
  std::vector<std::string> cautions;
  std::vector<UpkeepFigure> figures; ///< all, in the order of kUpkeepFigures
  std::string source;                ///< of texts and intervals
  const UpkeepFigure& figure(std::string_view key) const;
};

/// Pure. A computed interval is never longer than the table's; it is rounded down to whole months
/// (from three on), weeks or days. Undecided, it is the table's soonest.
UpkeepPlan upkeep(const Plan& plan, const Study& study, const UpkeepTable& table);

} // namespace sump
