#include "core/study/water_levels.h"

#include "core/study/circular_flow.h"
#include "core/study/solve.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

/// One flow in one bore.
class FlowInBore {
public:
  FlowInBore(double flow, double diameter, double n)
      : flow_(flow), diameter_(diameter), n_(n), fullVelocityHead_(velocityHead(1)),
        fullFriction_(freeFriction(circularSection(metres(diameter), 1))) {
    critical_ = criticalFill(Flow::from_value(flow), metres(diameter)) * diameter;
    criticalHead_ = flow > 0 ? velocityHead(critical_ / diameter) : 0;
  }

  double criticalEnergy() const { return critical_ + criticalHead_; }
  double criticalVelocityHead() const { return criticalHead_; }

  /// Depth above the invert with this specific energy, not below critical; above the diameter in a
  /// full pipe.
  double depthOf(double energy) const { return solve(energy, 0); }
  /// Depth `step` metres upstream of a place with this energy above the upstream invert.
  double depthUpstream(double energy, double step) const { return solve(energy, step); }

  double velocityHeadAt(double depth) const {
    if (flow_ <= 0) return 0;
    return depth >= diameter_ ? fullVelocityHead_ : velocityHead(depth / diameter_);
  }
  bool full(double depth) const { return depth >= diameter_; }

private:
  double velocityHead(double fill) const {
    return headOf(circularSection(metres(diameter_), fill));
  }
  double headOf(const CircularSection& section) const {
    const double v = flow_ / section.area.value();
    return v * v / (2 * kGravity);
  }
  /// Slope of the energy line: (V n / R^(2/3))^2.
  double freeFriction(const CircularSection& section) const {
    const double v = flow_ / section.area.value();
    const double root = std::cbrt(inMetres(section.hydraulicRadius)), square = root * root;
    return v * n_ * v * n_ / (square * square);
  }

  double solve(double energy, double step) const {
    if (flow_ <= 0) return std::max(energy, 0.0);
    const double whenFull = energy - fullVelocityHead_ + step * fullFriction_;
    if (whenFull >= diameter_) return whenFull;
    const auto excess = [&](double fill) {
      const CircularSection section = circularSection(metres(diameter_), fill);
      const double lost = step > 0 ? step * std::max(freeFriction(section), fullFriction_) : 0;
      return fill * diameter_ + headOf(section) - lost - energy;
    };
    return diameter_ * risingRoot(excess, critical_ / diameter_, 1);
  }

  double flow_, diameter_, n_;
  double fullVelocityHead_, fullFriction_;
  double critical_ = 0, criticalHead_ = 0;
};

/// Energy upstream of a loss. Water that stands above critical depth is never lower for it than if
/// it passed at critical depth.
double beforeLoss(const FlowInBore& bore, double invert, double energy, double k) {
  if (k <= 0) return energy;
  const double depth = bore.depthOf(energy - invert);
  return std::max(energy + k * bore.velocityHeadAt(depth),
                  invert + bore.criticalEnergy() + k * bore.criticalVelocityHead());
}

WayLevel levelOf(const FlowInBore& bore, double invert, double energy) {
  const double depth = bore.depthOf(energy - invert);
  return {invert + depth, energy, bore.full(depth)};
}

constexpr int kFewestSteps = 8, kMostSteps = 64;
constexpr double kSameDepth = 1e-9; ///< metres

/// Energy at the upstream end of a leg from that at its downstream end.
double alongLeg(const FlowInBore& bore, const WayLeg& leg, double low, double high, double energy) {
  const double wanted = std::ceil(leg.length / leg.diameter);
  const int steps = static_cast<int>(std::clamp(wanted, double{kFewestSteps}, double{kMostSteps}));
  const double step = leg.length / steps;
  double last = -1;
  for (int i = 1; i <= steps; ++i) {
    const double invert = low + (high - low) * i / steps;
    const double depth = bore.depthUpstream(energy - invert, step);
    // Uniform from here on.
    if (std::abs(depth - last) < kSameDepth) return high + depth + bore.velocityHeadAt(depth);
    last = depth;
    energy = std::max(energy, invert + depth + bore.velocityHeadAt(depth));
  }
  return energy;
}

} // namespace

WayLevels levelsAlong(const WaterWay& way, double flow, double tail, double n) {
  const std::size_t last = way.legs.size();
  WayLevels levels;
  levels.points.resize(last + 1);
  FlowInBore bore(flow, way.legs.back().diameter, n);
  const double endDepth =
      std::max(tail - way.inverts[last], bore.criticalEnergy() - bore.criticalVelocityHead());
  double energy = way.inverts[last] + endDepth + bore.velocityHeadAt(endDepth);
  levels.points[last] = levelOf(bore, way.inverts[last], energy);
  energy = beforeLoss(bore, way.inverts[last], energy, way.losses[last]);
  for (std::size_t i = last; i-- > 0;) {
    const WayLeg& leg = way.legs[i];
    if (i + 1 < last && leg.diameter != way.legs[i + 1].diameter) {
      bore = FlowInBore(flow, leg.diameter, n);
    }
    energy = std::max(energy, way.inverts[i + 1] + bore.criticalEnergy());
    energy = alongLeg(bore, leg, way.inverts[i + 1], way.inverts[i], energy);
    energy = beforeLoss(bore, way.inverts[i], energy, leg.losses);
    levels.points[i] = levelOf(bore, way.inverts[i], energy);
    energy = beforeLoss(bore, way.inverts[i], energy, way.losses[i]);
  }
  levels.upstream = std::max(energy, tail);
  return levels;
}

} // namespace sump
