#include "core/study/passages.h"

#include "core/geometry/polygon.h"
#include "core/study/solve.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kOrifice = 0.6, kBroadCrest = 1.705; // m^0.5/s

double beforeOrifice(const BaffleOpening& opening, double flow, double down) {
  const double v = flow / (kOrifice * opening.width * opening.height);
  return std::max(down, opening.sill + opening.height) + v * v / (2 * kGravity);
}

double beforeWeir(const BaffleOpening& opening, double flow, double down) {
  const double drowning = std::max(0.0, down - opening.sill);
  const auto passes = [&](double head) {
    const double free = kBroadCrest * opening.width * std::pow(head, 1.5);
    const double left = 1 - std::pow(head > 0 ? std::min(1.0, drowning / head) : 1.0, 1.5);
    return free * std::pow(left, 0.385);
  };
  const double most = drowning + 1 + std::pow(flow / (kBroadCrest * opening.width), 2.0 / 3);
  return opening.sill +
         risingRoot([&](double head) { return passes(head) - flow; }, drowning, 2 * most);
}

/// Levels and flows while one load passes.
class Walk {
public:
  Walk(const TrainMap& map, const TrainLoad& load, double n)
      : map_(map), n_(n), flows_(throughflows(map, load)), levels_(map.chambers.size()) {
    result_.inflow = load.inflow;
    result_.drawn = load.drawn;
    result_.recirculated = load.recirculated;
  }
  TrainLevels go();

private:
  void chamber(std::size_t index);
  double share(const std::vector<std::size_t>& ways, double flow, double down,
               std::vector<double>& shares) const;
  double passed(const Passage& passage, double flow, double level, double down) const;
  void inlet(const InletWay& inlet);
  PassageLevels levelsOf(const Passage& passage, double flow, double down) const;
  void addPoints(const WayLevels& levels, const RunStudy& run, PassageLevels& into) const;
  double tailOf(const InletWay& inlet) const;

  const TrainMap& map_;
  double n_;
  std::vector<double> flows_;
  std::vector<double> levels_;
  TrainLevels result_;
};

/// What a passage lets through between these levels, `flow` at most.
double Walk::passed(const Passage& passage, double flow, double level, double down) const {
  return risingRoot([&](double q) { return levelBefore(passage, q, down, n_) - level; }, 0, flow);
}

/// The level before passages side by side, and what each of them carries.
double Walk::share(const std::vector<std::size_t>& ways, double flow, double down,
                   std::vector<double>& shares) const {
  double low = 1e300, high = 1e300;
  for (std::size_t way : ways) {
    low = std::min(low, levelBefore(map_.passages[way], 0, down, n_));
    high = std::min(high, levelBefore(map_.passages[way], flow, down, n_));
  }
  const auto all = [&](double level) {
    double sum = 0;
    for (std::size_t way : ways)
      sum += passed(map_.passages[way], flow, level, down);
    return sum - flow;
  };
  const double level = risingRoot(all, low, high);
  const double sum = flow + all(level);
  for (std::size_t way : ways) {
    const double q = passed(map_.passages[way], flow, level, down);
    shares.push_back(sum > 0 ? q * flow / sum : 0);
  }
  return level;
}

void Walk::addPoints(const WayLevels& levels, const RunStudy& run, PassageLevels& into) const {
  for (std::size_t i = 0; i < levels.points.size(); ++i) {
    const WayLevel& point = levels.points[i];
    into.points.push_back({run.points[i].station, metres(run.points[i].at.z), metres(point.water),
                           metres(point.energy), point.full});
  }
}

PassageLevels Walk::levelsOf(const Passage& passage, double flow, double down) const {
  PassageLevels levels;
  levels.baffle = passage.baffle;
  levels.flow = cubicMetresPerSecond(flow);
  levels.downstream = metres(down);
  if (passage.run == nullptr) {
    levels.upstream = metres(levelBefore(passage, flow, down, n_));
    return levels;
  }
  levels.run = passage.run->id;
  const WayLevels way = levelsAlong(passage.way, flow, down, n_);
  levels.upstream = metres(way.upstream);
  addPoints(way, *passage.run, levels);
  return levels;
}

void Walk::chamber(std::size_t index) {
  const MapChamber& chamber = map_.chambers[index];
  const double down = chamber.next ? levels_[*chamber.next] : map_.passages[chamber.ways[0]].tail;
  if (chamber.ways.size() == 1) {
    result_.passages.push_back(levelsOf(map_.passages[chamber.ways[0]], flows_[index], down));
    levels_[index] = inMetres(result_.passages.back().upstream);
  } else {
    std::vector<double> shares;
    levels_[index] = share(chamber.ways, flows_[index], down, shares);
    for (std::size_t i = 0; i < chamber.ways.size(); ++i) {
      result_.passages.push_back(levelsOf(map_.passages[chamber.ways[i]], shares[i], down));
    }
  }
  const Length level = metres(levels_[index]);
  result_.chambers.push_back({chamber.vault->id, chamber.chamber->number,
                              *chamber.vault->waterLevel, level,
                              chamber.vault->lidUnderside - level});
}

/// The chamber's level, or that of the run that this one ends on, which the plan may name later:
/// then what is known is the end's own invert.
double Walk::tailOf(const InletWay& inlet) const {
  if (inlet.chamber) return levels_[*inlet.chamber];
  const double invert = inlet.way.inverts.back();
  const auto main = std::ranges::find(result_.passages, inlet.run->to.target, &PassageLevels::run);
  if (main == result_.passages.end()) return invert;
  const auto other = std::ranges::find_if(
      map_.inlets, [&](const InletWay& i) { return i.study->id == main->run; });
  if (other == map_.inlets.end()) return invert;
  std::vector<Point3> path;
  for (const RunPoint& point : other->study->points)
    path.push_back(point.at);
  const auto place = nearestPlace(path, flat(inlet.study->points.back().at));
  if (!place) return invert;
  const double a = inMetres(main->points[place->leg].water);
  const double b = inMetres(main->points[place->leg + 1].water);
  return std::max(invert, a + place->along * (b - a));
}

void Walk::inlet(const InletWay& inlet) {
  const double tail = tailOf(inlet), flow = result_.inflow.value();
  const WayLevels way = levelsAlong(inlet.way, flow, tail, n_);
  PassageLevels levels;
  levels.run = inlet.study->id;
  levels.flow = result_.inflow;
  levels.upstream = metres(way.upstream);
  levels.downstream = metres(tail);
  addPoints(way, *inlet.study, levels);
  result_.passages.push_back(std::move(levels));
}

/// Runs that others end on come before those.
std::vector<const InletWay*> mainsFirst(const std::vector<InletWay>& inlets) {
  std::vector<const InletWay*> order;
  for (bool branches : {false, true}) {
    for (const InletWay& inlet : inlets) {
      if ((inlet.run->to.kind == EndKind::Run) == branches) order.push_back(&inlet);
    }
  }
  return order;
}

TrainLevels Walk::go() {
  for (std::size_t i = map_.chambers.size(); i-- > 0;)
    chamber(i);
  std::ranges::reverse(result_.chambers);
  double leaving = 0;
  for (std::size_t i = 0; i < map_.chambers.size(); ++i) {
    if (!map_.chambers[i].next) leaving += flows_[i];
  }
  result_.overflow = cubicMetresPerSecond(leaving);
  const Flow more = result_.drawn + result_.overflow - result_.inflow;
  // Equal flows differ by what adding them up rounds away.
  const Flow hair = 1e-9 * std::max(result_.drawn + result_.overflow, result_.inflow);
  result_.fromStorage = more > hair ? more : cubicMetresPerSecond(0);
  for (const InletWay* way : mainsFirst(map_.inlets))
    inlet(*way);
  std::ranges::reverse(result_.passages);
  return std::move(result_);
}

} // namespace

double levelBefore(const Passage& passage, double flow, double down, double n) {
  if (passage.run != nullptr) return levelsAlong(passage.way, flow, down, n).upstream;
  return passage.opening.under ? beforeOrifice(passage.opening, flow, down)
                               : beforeWeir(passage.opening, flow, down);
}

std::vector<double> throughflows(const TrainMap& map, const TrainLoad& load, bool drawing) {
  enum Source { kInlet, kReturn, kDraw, kSources };
  std::vector<std::array<bool, kSources>> above(map.chambers.size());
  for (const InletWay& inlet : map.inlets) {
    if (inlet.chamber) above[*inlet.chamber][kInlet] = true;
  }
  if (map.returned) above[*map.returned][kReturn] = true;
  if (drawing && map.suction) above[*map.suction][kDraw] = true;
  std::vector<double> flows;
  for (std::size_t i = 0; i < above.size(); ++i) {
    const Flow flow = (above[i][kInlet] ? 1.0 : 0.0) * load.inflow +
                      (above[i][kReturn] ? 1.0 : 0.0) * load.recirculated -
                      (above[i][kDraw] ? 1.0 : 0.0) * (load.drawn + load.recirculated);
    flows.push_back(std::max(0.0, flow.value()));
    if (const auto next = map.chambers[i].next) {
      for (int s = 0; s < kSources; ++s)
        above[*next][s] = above[*next][s] || above[i][s];
    }
  }
  return flows;
}

Decided<TrainLevels> trainLevels(const TrainMap& map, const TrainLoad& load, double n) {
  Needs needs;
  const bool enters = std::ranges::any_of(
      map.inlets, [](const InletWay& inlet) { return inlet.chamber.has_value(); });
  if (!enters) addNeeds(needs, {"an inlet into a chamber"});
  const Flow none = cubicMetresPerSecond(0);
  if (load.drawn + load.recirculated > none && !map.suction) addNeeds(needs, {"a suction"});
  if (load.recirculated > none && !map.returned) {
    addNeeds(needs, {"a chamber that the recirculation comes back to"});
  }
  if (!needs.empty()) return undecided<TrainLevels>(std::move(needs));
  return Walk(map, load, n).go();
}

} // namespace sump
