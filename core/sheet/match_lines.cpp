#include "core/sheet/match_lines.h"

#include "core/plan/ends.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace sump {

namespace {

/// What had better not be cut, and how bad a cut through it is.
struct Whole {
  PaperBox box; ///< site
  double cost;
};

std::vector<Whole> wholes(const SheetJob& job) {
  constexpr double kVault = 10, kRoom = 10, kDig = 4, kBuilding = 1;
  std::vector<Whole> found;
  for (const Vault& vault : job.plan().vaults)
    found.push_back({around(outline(vault)), kVault});
  for (const EquipmentRoom& room : job.plan().rooms)
    found.push_back({around(outline(room)), kRoom});
  for (const PitStudy& pit : job.study().earth.pits) {
    if (pit.top) found.push_back({around(*pit.top), kDig});
  }
  for (const Building& building : job.plan().buildings)
    found.push_back({around(building.outline), kBuilding});
  return found;
}

/// Of a cut through these stretches of an axis; close by an edge it is nearly as bad.
double cutCost(double at, const std::vector<Whole>& all, double near, bool across) {
  double cost = 0;
  for (const Whole& whole : all) {
    const double low = across ? whole.box.low.x : whole.box.low.y;
    const double high = across ? whole.box.high.x : whole.box.high.y;
    if (at > low - near && at < high + near)
      cost += at > low && at < high ? whole.cost : whole.cost / 2;
  }
  return cost;
}

/// Lines that run along a cut would be shown on neither side or on both.
double runCost(double at, const std::vector<RunStudy>& runs, double near, bool across) {
  double cost = 0;
  for (const RunStudy& run : runs) {
    for (std::size_t i = 1; i < run.points.size(); ++i) {
      const Point2 a = flat(run.points[i - 1].at), b = flat(run.points[i].at);
      const double from = across ? a.x : a.y, to = across ? b.x : b.y;
      const double along = across ? std::abs(b.y - a.y) : std::abs(b.x - a.x);
      const bool beside = std::min(from, to) < at + near && std::max(from, to) > at - near;
      if (beside && along > std::abs(to - from)) cost += 0.05 * along;
    }
  }
  return cost;
}

} // namespace

std::vector<double> cheapestCuts(double low, double high, double most, int count,
                                 const std::function<double(double)>& cost) {
  constexpr int kSteps = 240; // places that are looked at
  constexpr double kNever = std::numeric_limits<double>::infinity(), kUneven = 0.5;
  const double step = (high - low) / kSteps, hair = 1e-9 * (high - low);
  std::vector<double> best(kSteps + 1, kNever);
  std::vector<std::vector<int>> before(static_cast<std::size_t>(count));
  best[0] = 0;
  std::vector<double> costs;
  for (int i = 0; i <= kSteps; ++i)
    costs.push_back(i == 0 || i == kSteps ? 0 : cost(low + step * i));
  for (int part = 0; part < count; ++part) {
    std::vector<double> next(kSteps + 1, kNever);
    before[static_cast<std::size_t>(part)].assign(kSteps + 1, 0);
    for (int i = 0; i <= kSteps; ++i) {
      for (int k = i + 1; k <= kSteps && step * (k - i) <= most + hair; ++k) {
        // Parts of about one size where nothing else matters.
        const double uneven = std::abs(static_cast<double>(k - i) / kSteps * count - 1);
        const double sum = best[static_cast<std::size_t>(i)] + costs[static_cast<std::size_t>(k)] +
                           kUneven * uneven;
        if (sum >= next[static_cast<std::size_t>(k)]) continue;
        next[static_cast<std::size_t>(k)] = sum;
        before[static_cast<std::size_t>(part)][static_cast<std::size_t>(k)] = i;
      }
    }
    best = std::move(next);
  }
  std::vector<double> cuts;
  int at = kSteps;
  for (int part = count - 1; part > 0; --part) {
    at = before[static_cast<std::size_t>(part)][static_cast<std::size_t>(at)];
    cuts.insert(cuts.begin(), low + step * at);
  }
  return cuts;
}

Tiling gentleTiling(const PaperBox& site, const PaperBox& frame, double scale,
                    const SheetJob& job) {
  constexpr double kLeastShare = 0.6; // of the frame
  constexpr double kNear = 6;         // mm on the paper between a match line and what it spares
  const Tiling even = tiling(site, frame, scale);
  const std::vector<Whole> all = wholes(job);
  const auto edges = [&](double low, double high, double paper, int count, bool across) {
    const double near = kNear * scale / 1000;
    std::vector<double> found =
        cheapestCuts(low, high, paper * scale / 1000, count, [&](double at) {
          return cutCost(at, all, near, across) + runCost(at, job.study().runs, near / 2, across);
        });
    found.insert(found.begin(), low);
    found.push_back(high);
    if (count == 1) return found;
    // The outer parts show a little more than they must, so that no sheet stands empty.
    const double least = kLeastShare * paper * scale / 1000;
    found.front() = std::min(found.front(), found[1] - least);
    found.back() = std::max(found.back(), found[found.size() - 2] + least);
    return found;
  };
  const auto xs = edges(site.low.x, site.high.x, frame.width(), even.columns, true);
  const auto ys = edges(site.low.y, site.high.y, frame.height(), even.rows, false);
  Tiling result{{}, even.columns, even.rows};
  for (std::size_t row = 0; row + 1 < ys.size(); ++row) {
    const std::size_t top = ys.size() - 1 - row; // the first row is the upper one
    for (std::size_t column = 0; column + 1 < xs.size(); ++column) {
      result.tiles.push_back({{{xs[column], ys[top - 1]}, {xs[column + 1], ys[top]}},
                              static_cast<int>(column),
                              static_cast<int>(row)});
    }
  }
  return result;
}

} // namespace sump
