#pragma once
// Pipe and conduit that stand in the open, and their supports: in equipment rooms, over the floors
// of buildings, above the ground, and inside vaults.

#include "core/catalog/supplies.h"
#include "core/study/study.h"

#include <string>
#include <string_view>
#include <vector>

namespace sump {

enum class ExposedIn { Room, Building, Air, Vault };
/// `room`, `building`, `above ground`, `vault`
std::string_view name(ExposedIn where);

/// How much of a leg stands in the open in places of one kind.
struct ExposedLeg {
  Length length;
  bool vertical = false;
  std::string size;
  ExposedIn where = ExposedIn::Room;
  /// In vaults: by the connectors in walls (1 each) and baffles (2, both ways) and an eductor's
  /// bracket (2). Each carries the pipe for half the way between two supports.
  int held = 0;
  bool bracket = false; ///< an eductor's is among them
};
/// Of a run that could be worked out. What a building without a floor level holds, and what lies
/// where the ground is not known, is left out.
std::vector<ExposedLeg> exposedLegs(const Plan& plan, const Study& study, const RunStudy& run);

/// Is the run marked along its pipe as water nobody may drink? Not what lies wholly in vaults:
/// nobody digs it up or taps it there. One whose way is not known is.
bool isTaped(const Run& run, const RunStudy& studied);

/// The most between two supports of such a leg of the run: of pipe the lesser of code and trade
/// table, of conduit the electrical code's.
Decided<Length> supportSpacing(const Plan& plan, const Supplies& supplies, const Run& run,
                               const ExposedLeg& leg);
/// By the spacing; one at least for a leg that nothing else holds.
int supportsOf(const ExposedLeg& leg, Length spacing);

/// All of one run that is of one size and way in places of one kind.
struct ExposedPipe {
  Id run;
  ExposedLeg all;
  Decided<Length> spacing;
  Decided<int> supports;
};
/// In the plan's order; of runs that could be worked out.
std::vector<ExposedPipe> exposedPipes(const Plan& plan, const Study& study,
                                      const Supplies& supplies);

} // namespace sump
