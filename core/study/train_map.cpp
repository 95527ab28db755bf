#include "core/study/train_map.h"

#include "core/study/water_way.h"

#include <algorithm>

namespace sump {

namespace {

class Mapper {
public:
  Mapper(const StudyContext& context, const Study& study) : context_(context), study_(study) {}
  Decided<TrainMap> make();

private:
  void addChambers();
  void addRun(const Run& run, const RunStudy& study);
  void addPassage(const Run& run, const RunStudy& study);
  void addInlet(const Run& run, const RunStudy& study);
  void addOpenings();
  void addOpening(const Vault& vault, std::size_t before, const Baffle& baffle, bool under);
  void lead();
  std::optional<std::size_t> chamberOf(const RunEnd& end) const;
  /// The way's value; its needs are kept when it has none.
  std::optional<WaterWay> way(const Run& run, const RunStudy& study);

  const StudyContext& context_;
  const Study& study_;
  TrainMap map_;
  std::vector<std::size_t> first_; ///< index of each vault's first chamber
  Needs needs_;
};

void Mapper::addChambers() {
  for (const VaultStudy& vault : study_.vaults) {
    first_.push_back(map_.chambers.size());
    for (const ChamberStudy& chamber : vault.chambers)
      map_.chambers.push_back({&vault, &chamber, std::nullopt, {}});
    if (!vault.waterLevel) addNeeds(needs_, {"an overflow that every vault's water gets to"});
  }
  if (map_.chambers.empty()) addNeeds(needs_, {"a vault"});
}

std::optional<std::size_t> Mapper::chamberOf(const RunEnd& end) const {
  if (end.kind != EndKind::Chamber) return std::nullopt;
  const auto vault = study_.vaultIndex.find(end.target);
  if (vault == study_.vaultIndex.end()) return std::nullopt;
  const auto count = static_cast<int>(study_.vaults[vault->second].chambers.size());
  if (end.chamber < 1 || end.chamber > count) return std::nullopt;
  return first_[vault->second] + static_cast<std::size_t>(end.chamber - 1);
}

std::optional<WaterWay> Mapper::way(const Run& run, const RunStudy& study) {
  Decided<WaterWay> found = waterWay(context_, run, study);
  addNeeds(needs_, found.needs);
  return std::move(found.value);
}

/// A run that leads back against the flow carries none of it.
void Mapper::addPassage(const Run& run, const RunStudy& study) {
  const auto from = chamberOf(run.from), to = chamberOf(run.to);
  const bool leaves = run.service == Service::Overflow;
  if (!from || (!leaves && (!to || *to <= *from))) return;
  auto found = way(run, study);
  if (!found) return;
  Passage passage;
  passage.from = *from;
  if (!leaves) passage.to = to;
  passage.run = &study;
  passage.tail = found->inverts.back();
  passage.way = std::move(*found);
  map_.passages.push_back(std::move(passage));
}

void Mapper::addInlet(const Run& run, const RunStudy& study) {
  auto found = way(run, study);
  if (found) map_.inlets.push_back({&run, &study, std::move(*found), chamberOf(run.to)});
}

void Mapper::addRun(const Run& run, const RunStudy& study) {
  switch (run.service) {
  case Service::Inlet:
    addInlet(run, study);
    break;
  case Service::Interconnect:
  case Service::Link:
  case Service::Overflow:
    addPassage(run, study);
    break;
  case Service::Suction:
    if (const auto from = chamberOf(run.from)) map_.suction = from;
    break;
  case Service::Recirculation:
    map_.hasRecirculation = true;
    if (const auto to = chamberOf(run.to)) map_.returned = to;
    break;
  default:
    break;
  }
}

void Mapper::addOpening(const Vault& vault, std::size_t before, const Baffle& baffle, bool under) {
  const Length gap = under ? baffle.bottomGap : baffle.topGap;
  if (gap <= context_.limits.length("baffle.gap")) return;
  Passage passage;
  passage.from = before;
  passage.to = before + 1;
  passage.baffle = baffle.id;
  const Length sill = under ? vault.floor : vault.floor + vault.insideHeight - gap;
  passage.opening = {under, inMetres(sill), inMetres(vault.width - 2.0 * vault.wall),
                     inMetres(gap)};
  map_.passages.push_back(std::move(passage));
}

void Mapper::addOpenings() {
  for (std::size_t i = 0; i < study_.vaults.size(); ++i) {
    const Vault& vault = context_.plan.vaults[i];
    for (std::size_t k = 0; k < vault.baffles.size(); ++k) {
      for (bool under : {true, false})
        addOpening(vault, first_[i] + k, vault.baffles[k], under);
    }
  }
}

/// One way on from each chamber, or several to the same place.
void Mapper::lead() {
  for (std::size_t i = 0; i < map_.passages.size(); ++i) {
    const Passage& passage = map_.passages[i];
    MapChamber& chamber = map_.chambers[passage.from];
    if (chamber.ways.empty()) {
      chamber.next = passage.to;
    } else if (chamber.next != passage.to) {
      addNeeds(needs_, {"a train that does not branch"});
    }
    chamber.ways.push_back(i);
  }
  for (const MapChamber& chamber : map_.chambers) {
    if (chamber.ways.empty()) addNeeds(needs_, {"a way on from every chamber"});
  }
}

Decided<TrainMap> Mapper::make() {
  addChambers();
  if (!needs_.empty()) return undecided<TrainMap>(needs_);
  for (std::size_t i = 0; i < study_.runs.size(); ++i)
    addRun(context_.plan.runs[i], study_.runs[i]);
  addOpenings();
  lead();
  if (!needs_.empty()) return undecided<TrainMap>(needs_);
  return std::move(map_);
}

} // namespace

Decided<TrainMap> trainMap(const StudyContext& context, const Study& study) {
  return Mapper(context, study).make();
}

} // namespace sump
