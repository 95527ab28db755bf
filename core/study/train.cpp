#include "core/study/duty.h"

#include <algorithm>

namespace sump {

const ChamberLevel* TrainLevels::chamber(const Id& vault, int number) const {
  const auto found = std::ranges::find_if(chambers, [&](const ChamberLevel& level) {
    return level.vault == vault && level.chamber == number;
  });
  return found == chambers.end() ? nullptr : &*found;
}

const GravityStudy* TrainStudy::gravityOf(const Id& run) const {
  const auto found = std::ranges::find(gravity, run, &GravityStudy::run);
  return found == gravity.end() ? nullptr : &*found;
}

const ChamberDuty* TrainStudy::duty(const Id& vault, int chamber) const {
  const auto found = std::ranges::find_if(chambers, [&](const ChamberDuty& duty) {
    return duty.vault == vault && duty.chamber == chamber;
  });
  return found == chambers.end() ? nullptr : &*found;
}

Decided<Length> TrainStudy::highest(const Id& vault, int chamber) const {
  return decide(
      [&](const TrainLevels& stopped, const TrainLevels& running) -> Decided<Length> {
        std::optional<Length> most;
        for (const TrainLevels* levels : {&stopped, &running}) {
          for (const ChamberLevel& level : levels->chambers) {
            if (level.vault != vault || (chamber != 0 && level.chamber != chamber)) continue;
            most = most ? std::max(*most, level.level) : level.level;
          }
        }
        return given(most, "a vault of the train");
      },
      pumpStopped, pumpRunning);
}

namespace {

/// Nothing of this flow: never, which is no duration.
Decided<Duration> timeFor(const Decided<Volume>& volume, const Decided<Flow>& flow,
                          const std::string& need) {
  return decide(
      [&](Volume v, Flow q) -> Decided<Duration> {
        if (!(q.value() > 0)) return undecided<Duration>({need});
        return v / q;
      },
      volume, flow);
}

void fillTimes(const StudyContext& context, const Study& study, const Decided<TrainMap>& map,
               TrainStudy& train) {
  train.usable = usableVolume(context, study, map);
  train.lowWater = lowWaterLevels(context, map);
  train.fill = timeFor(train.usable, train.peakInflow, "an inflow at the peak");
  train.drawDown = timeFor(train.usable, train.peakDraw, "a draw at the peak");
  const auto net =
      decide([](Flow draw, Flow in) { return draw - in; }, train.peakDraw, train.peakInflow);
  train.drawDownNet =
      timeFor(train.usable, net, "a draw above the inflow: the level does not fall");
  const auto working = decide([&](const TrainMap&) { return study.workingVolume; }, map);
  train.turnover = timeFor(working, train.recirculation, "a recirculation");
}

void fillSludge(const StudyContext& context, const Study& study, const Decided<TrainMap>& map,
                TrainStudy& train) {
  train.sludgePerDay = sludgePerDay(context, study);
  const auto over = [&](bool all) {
    return decide(
        [&](const TrainMap& m) {
          Area area;
          Volume water;
          for (const MapChamber& chamber : m.chambers) {
            area += chamber.chamber->area;
            water += chamber.chamber->volume;
            if (!all) break;
          }
          return pumpOut(context, train.sludgePerDay, area, water / area);
        },
        map);
  };
  train.pumpOutFirst = over(false);
  train.pumpOutTrain = over(true);
}

/// The basins' levels: those upstream of the inlets that start there.
void fillBasins(const StudyContext& context, const Study& study, TrainLevels& levels) {
  for (const PassageLevels& passage : levels.passages) {
    const Run* run = context.locator.run(passage.run);
    if (run == nullptr || run->service != Service::Inlet) continue;
    const Basin* basin = context.locator.basin(run->from.target);
    if (run->from.kind != EndKind::Basin || basin == nullptr) continue;
    const Length crown = passage.points.front().invert + study.run(run->id)->insideDiameter;
    levels.basins.push_back({basin->id, run->id, passage.upstream, basin->rim - passage.upstream,
                             passage.upstream - crown});
  }
}

Decided<TrainLevels> levelsAt(const StudyContext& context, const Study& study,
                              const Decided<TrainMap>& map, const Decided<Flow>& in,
                              const Decided<Flow>& drawn, const Decided<Flow>& back) {
  const double n = context.limits.number("gravity.roughness");
  Decided<TrainLevels> levels = decide(
      [&](const TrainMap& m, Flow inflow, Flow draw, Flow again) {
        return trainLevels(m, {inflow, draw, again}, n);
      },
      map, in, drawn, back);
  if (levels) fillBasins(context, study, *levels.value);
  return levels;
}

} // namespace

void fillTrain(const StudyContext& context, Study& study) {
  TrainStudy& train = study.train;
  const PeakFlows peak = peakFlows(context, study);
  train.peakInflow = peak.inflow;
  train.peakDraw = peak.drawn;
  train.recirculation = peak.recirculated;
  const Decided<TrainMap> map = trainMap(context, study);
  const Decided<Flow> none = cubicMetresPerSecond(0);
  train.pumpStopped = levelsAt(context, study, map, peak.inflow, none, none);
  train.pumpRunning = levelsAt(context, study, map, peak.inflow, peak.drawn, peak.recirculated);
  train.gravity = gravityRuns(context, study, peak.inflow);
  train.chambers = chamberDuties(context, study, map, peak);
  fillTimes(context, study, map, train);
  fillSludge(context, study, map, train);
}

} // namespace sump
