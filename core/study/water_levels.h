#pragma once
// Levels along a gravity run in steady flow, from its downstream end backward.
//
// The standard-step method (Chow, Open-Channel Hydraulics, 1959, chapter 10, from memory) on the
// energy line: going upstream, energy rises by friction over each step (Manning, constant n, slope
// of the step's upstream end) and by K v^2/2g at each fitting and entry. A pipe without air is the
// same pipe with its full bore. Where a steep stretch, a brink or an entry does not feel what lies
// downstream, the energy is that of critical depth there: never less anywhere. Friction is never
// reckoned smaller than in the full pipe, so the gain of a nearly full pipe is not counted on.
// Velocity head of water standing in chambers and basins is none; all of it is lost on leaving the
// pipe under water. Air is taken to come and go freely; supercritical depths between controls are
// not worked out, since levels upstream do not depend on them.
//
// So levels never fall with more flow or with more water downstream, and the energy never rises
// in the direction of flow.

#include "core/units/quantity.h"

#include <vector>

namespace sump {

/// Pipe between two points of a run, going with the flow.
struct WayLeg {
  double length = 0;   ///< m, along the slope
  double diameter = 0; ///< m, inside
  double losses = 0;   ///< K of valves and fittings within it, reckoned at its upstream end
};

/// A run as the water in it sees it: legs between points, one point more than legs.
struct WaterWay {
  std::vector<double> inverts; ///< m, of the points
  std::vector<WayLeg> legs;
  /// K at each point, with the velocity of the leg that follows (of the last leg at the last
  /// point). At the first: entry and what is fitted there; at the last: without the exit loss.
  std::vector<double> losses;
};

struct WayLevel {
  double water = 0;  ///< m, surface or standpipe level
  double energy = 0; ///< m, water plus velocity head
  bool full = false;
};

struct WayLevels {
  double upstream = 0;          ///< m, of the still water that it leaves
  std::vector<WayLevel> points; ///< just downstream of each point's own loss
};

/// `flow` in m3/s, not negative; `tail` is the water that the end stands in or falls to, m; `n` the
/// Manning roughness, above 0. The way has a leg at least, and all its diameters are above 0.
WayLevels levelsAlong(const WaterWay& way, double flow, double tail, double n);

} // namespace sump
