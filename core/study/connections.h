#pragma once
// Where runs join what is there already: lines in the ground, sewers, and stubs left for them.

#include "core/study/study.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sump {

enum class ConnectionKind { Utility, Sewer, Stub };

struct Connection {
  ConnectionKind kind = ConnectionKind::Stub;
  Id run;
  Id other;                    ///< the utility or sewer connection; empty: a stub
  bool atStart = true;         ///< of the run
  Point2 at;                   ///< site
  Length invert;               ///< of the run there
  std::optional<Length> level; ///< centreline of the utility, where it is known
};

/// What is set there, with what is left open: the plan does not tell what the line that is there is
/// made of.
std::string_view joinedBy(const Study& study, const Connection& made);
/// Nominal size of the run at that end.
std::string sizeThere(const Run& run, const Connection& made, const Study& study);

/// In the plan's order. A free end joins a utility when it lies on its line and the utility carries
/// what the run does; vents and capped ends join nothing.
std::vector<Connection> connections(const Plan& plan, const Study& study);
/// Of one run; nothing for one that could not be worked out.
std::vector<Connection> connections(const Plan& plan, const Run& run, const RunStudy& studied);

/// Where a run goes through the wall of the basin or drain at one of its ends. The plan does not
/// say which of them stand already.
struct BasinEntry {
  Id run, basin;
  bool atStart = true; ///< of the run
  Point3 at;           ///< on the basin's outline; z is the run's invert
  std::string size;    ///< nominal, of the run there
};
/// One that comes in over the rim passes no wall.
std::vector<BasinEntry> basinEntries(const Plan& plan, const Run& run, const RunStudy& studied);

/// The underflow runs whose flush leaves by this inlet, too: those that end in the basin at its
/// start or on the inlet itself, and the same of the inlets that end on it.
std::vector<Id> underflowsInto(const Plan& plan, const Run& run);

} // namespace sump
