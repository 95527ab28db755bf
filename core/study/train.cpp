#include "core/study/context.h"

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

void fillTrain(const StudyContext&, Study&) {}

std::vector<Calculation> trainCalculations(const Plan&, const Study&) {
  return {};
}

} // namespace sump
