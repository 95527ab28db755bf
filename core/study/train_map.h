#pragma once
// Which chamber leads to which, and by what. Private to core/study.
//
// Water goes from each chamber to one other, or off the train. Where several pipes lead there they
// share the flow. Branching (a chamber with ways to two others, or an overflow before the last
// vault) is not worked out.

#include "core/study/context.h"
#include "core/study/water_levels.h"

#include <optional>

namespace sump {

/// What is left open of a baffle: under it, or over it.
struct BaffleOpening {
  bool under = true;
  double sill = 0;  ///< m, elevation of its lower edge
  double width = 0; ///< m
  double height = 0;
};

struct Passage {
  std::size_t from = 0;
  std::optional<std::size_t> to; ///< none: off the train
  const RunStudy* run = nullptr; ///< none: an opening
  Id baffle;
  WaterWay way;
  BaffleOpening opening;
  double tail = 0; ///< m, where water leaves the train: it falls to the end's invert
};

struct InletWay {
  const Run* run = nullptr;
  const RunStudy* study = nullptr;
  WaterWay way;
  std::optional<std::size_t> chamber; ///< none: ends on another run
};

struct MapChamber {
  const VaultStudy* vault = nullptr;
  const ChamberStudy* chamber = nullptr;
  std::optional<std::size_t> next; ///< chamber that its water goes to; none: off the train
  std::vector<std::size_t> ways;   ///< indices into passages
};

struct TrainMap {
  std::vector<MapChamber> chambers; ///< in flow order
  std::vector<Passage> passages;
  std::vector<InletWay> inlets;        ///< in the plan's order
  std::optional<std::size_t> suction;  ///< chamber that the pump draws from
  std::optional<std::size_t> returned; ///< chamber that recirculation comes back to
  bool hasRecirculation = false;
};

/// Needs levels and pipes of all gravity runs, the water level of all vaults, and a way on from
/// every chamber. Refers to `study`.
Decided<TrainMap> trainMap(const StudyContext& context, const Study& study);

} // namespace sump
