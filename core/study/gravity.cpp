#include "core/study/circular_flow.h"
#include "core/study/connections.h"
#include "core/study/duty.h"
#include "core/study/leg_sizes.h"

#include <algorithm>

namespace sump {

namespace {

/// The smallest bore of the run; nothing when a leg's pipe is not in the catalogue.
std::optional<Length> boreOfRun(const StudyContext& context, const Run& run,
                                const RunStudy& study) {
  std::optional<Length> least;
  for (std::size_t leg = 0; leg < study.legs.size(); ++leg) {
    const auto bore = smallestBore(context.catalog, run, leg);
    if (!bore) return std::nullopt;
    least = least ? std::min(*least, *bore) : *bore;
  }
  return least;
}

Decided<double> fallingSlope(const RunStudy& study) {
  const auto slope = given(study.leastSlope, "levels of the gravity run outside the vaults");
  if (slope && !(*slope > 0)) return undecided<double>({"a run that falls all the way"});
  return slope;
}

void fillPeak(double n, const Decided<Flow>& peak, GravityStudy& gravity) {
  const Length d = gravity.diameter;
  gravity.peak = peak;
  gravity.share =
      decide([](Flow most, Flow now) { return (now / most).value(); }, gravity.fullFlow, peak);
  gravity.depth = decide(
      [&](double slope, Flow most, Flow now) -> Decided<Length> {
        if (now > most) return undecided<Length>({"a larger pipe or more fall: it runs full"});
        return normalFill(now, d, slope, n).value_or(1) * d;
      },
      gravity.slope, gravity.fullFlow, peak);
  gravity.criticalDepth = decide([&](Flow now) { return criticalFill(now, d) * d; }, peak);
  gravity.velocity = decide(
      [&](double slope, Flow most, Flow now) {
        const double fill = now > most ? 1 : normalFill(now, d, slope, n).value_or(1);
        const CircularSection section = circularSection(d, fill);
        return section.area.value() > 0 ? Velocity(now / section.area) : metresPerSecond(0);
      },
      gravity.slope, gravity.fullFlow, peak);
}

GravityStudy gravityRun(const StudyContext& context, const Run& run, const RunStudy& study,
                        const Decided<Flow>& peak) {
  const double n = context.limits.number("gravity.roughness");
  GravityStudy gravity;
  gravity.run = run.id;
  const auto bore = boreOfRun(context, run, study);
  gravity.slope = bore ? fallingSlope(study)
                       : undecided<double>({"levels and catalogue pipe of the gravity run"});
  gravity.diameter = bore.value_or(metres(0));
  const auto full = [&](double fill) {
    return decide([&](double slope) { return manningFlow(gravity.diameter, fill, slope, n); },
                  gravity.slope);
  };
  gravity.fullFlow = full(1);
  gravity.largestFlow = full(kFullestFill);
  gravity.fullVelocity =
      decide([&](double slope) { return manningVelocity(gravity.diameter / 4.0, slope, n); },
             gravity.slope);
  fillPeak(n, bore ? peak : undecided<Flow>(gravity.slope.needs), gravity);
  return gravity;
}

} // namespace

std::vector<GravityStudy> gravityRuns(const StudyContext& context, const Study& study,
                                      const Decided<Flow>& peak) {
  std::vector<GravityStudy> list;
  for (std::size_t i = 0; i < study.runs.size(); ++i) {
    const Run& run = context.plan.runs[i];
    if (run.service != Service::Inlet && run.service != Service::Overflow) continue;
    Decided<Flow> carried = peak;
    for (const Id& flush : underflowsInto(context.plan, run)) {
      const PressureRun* underflow = study.hydraulics.run(flush);
      carried = decide([](Flow a, Flow b) { return a + b; }, carried, underflow->flow);
    }
    list.push_back(gravityRun(context, run, study.runs[i], carried));
  }
  return list;
}

} // namespace sump
