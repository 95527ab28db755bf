// Pipe that hangs in the lower arms of tees and elbows in vaults, and how deep it reaches.

#include "core/study/down_legs.h"

#include "core/study/context.h"
#include "core/study/hole_gaps.h"

#include <algorithm>

namespace sump {

std::optional<DipRange> dipAsked(const Limits& limits, Service service, Length depth) {
  const auto share = [&](std::string_view limit) { return limits.number(limit) * depth; };
  if (service == Service::Overflow)
    return DipRange{share("outlet.dip.low"), share("outlet.dip.high")};
  if (service != Service::Inlet) return std::nullopt;
  const Length least = std::max(limits.length("inlet.dip.least"), share("inlet.dip.low"));
  return DipRange{least, std::max(least, share("inlet.dip.high"))};
}

const DownLeg* downLeg(const RunStudy& run, bool atStart) {
  const auto found = std::ranges::find(run.downLegs, atStart, &DownLeg::atStart);
  return found == run.downLegs.end() ? nullptr : &*found;
}

std::optional<Length> legEnd(const RunStudy& run, bool atStart) {
  const DownLeg* leg = downLeg(run, atStart);
  return leg == nullptr || !leg->piece ? std::nullopt : std::optional(leg->end);
}

namespace {

/// Where the plan leaves its level out: in the middle of what the check asks of an inlet's end or
/// an overflow's start. The arm itself may reach deeper.
std::optional<Length> middleOfAsked(const Limits& limits, Service service, bool atStart,
                                    const VaultStudy& vault) {
  if (atStart != (service == Service::Overflow)) return std::nullopt;
  if (!vault.waterLevel || *vault.waterLevel <= vault.floor) return std::nullopt;
  const auto asked = dipAsked(limits, service, *vault.waterLevel - vault.floor);
  if (!asked) return std::nullopt;
  return *vault.waterLevel - (asked->least + asked->most) / 2.0;
}

/// Nothing for a pipe that comes down to its end: the arms of a fitting there lie level.
std::optional<DownLeg> legAt(const StudyContext& context, const Run& run, const RunStudy& study,
                             const std::vector<VaultStudy>& vaults, bool atStart) {
  const RunEnd& end = atStart ? run.from : run.to;
  const Leg& last = atStart ? study.legs.front() : study.legs.back();
  if (end.kind != EndKind::Chamber || !turnsDown(end.fitting) || last.vertical) return std::nullopt;
  const auto vault = std::ranges::find(vaults, end.target, &VaultStudy::id);
  DownLeg leg;
  leg.atStart = atStart;
  leg.vault = end.target;
  leg.size = sizeAt(run, atStart ? 0 : study.legs.size(), 0);
  const PipeSize* pipe = context.catalog.pipeSize(run.pipe, leg.size);
  if (vault == vaults.end() || pipe == nullptr) return std::nullopt;
  leg.axis = (atStart ? study.startInvert : study.endInvert) + pipe->inside / 2.0;
  leg.mouth =
      leg.axis - armLength(context.catalog, run.pipe, leg.size, end.fitting).value_or(metres(0));
  const auto level =
      end.legEnd ? end.legEnd : middleOfAsked(context.limits, run.service, atStart, *vault);
  if (!level) return std::nullopt;
  leg.stated = end.legEnd.has_value();
  leg.end = leg.stated ? *level : std::min(*level, leg.mouth);
  return leg;
}

} // namespace

std::vector<DownLeg> downLegs(const StudyContext& context, const Run& run, const RunStudy& study,
                              const std::vector<VaultStudy>& vaults) {
  std::vector<DownLeg> legs;
  if (!study.resolved || study.legs.empty()) return legs;
  for (const bool atStart : {true, false}) {
    if (auto leg = legAt(context, run, study, vaults, atStart)) legs.push_back(std::move(*leg));
  }
  return legs;
}

Length underOil(const Plan& plan, Length water) {
  return water - plan.basis.water.oilDepth.value_or(Length{});
}

std::optional<Length> lowestOil(const Plan& plan, const Study& study, const Id& vault,
                                int chamber) {
  if (!study.train.lowWater) return std::nullopt;
  for (const ChamberLow& low : *study.train.lowWater) {
    if (low.vault == vault && low.chamber == chamber) return underOil(plan, low.level);
  }
  return std::nullopt;
}

} // namespace sump
