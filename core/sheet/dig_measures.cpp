#include "core/sheet/dig_measures.h"

#include "core/geometry/outline_union.h"
#include "core/geometry/polygon.h"
#include "core/sheet/clip.h"
#include "core/sheet/plan_measures.h"
#include "core/units/print.h"

#include <algorithm>
#include <optional>

namespace sump {

namespace {

constexpr double kLeastDug = 0.05; // m; less is not dug to

class DigMeasures {
public:
  DigMeasures(const SheetJob& job, const PitStudy& pit)
      : job_(job), pit_(pit), vault_(*job.plan().vaults.find(pit.vaults.front())),
        bottoms_(unionOutlines(pit.bottoms)) {}

  /// The lines of the overall sizes `off` metres outside the dig's bottom.
  std::vector<PlanMeasure> take(double off) {
    addOverall(off);
    const double length = inMetres(vault_.length) / 2, width = inMetres(vault_.width) / 2;
    constexpr double kAside = 0.6; // of half a side, off its middle, where pipes leave
    addClearance({length, -kAside * width}, {1, 0});
    addClearance({-kAside * length, width}, {0, 1});
    addBuilding();
    return std::move(found_);
  }

private:
  std::string text(Point2 a, Point2 b) const {
    return printLength(metres(distance(a, b)), job_.units());
  }
  void add(Point2 a, Point2 b) {
    if (distance(a, b) > kLeastDug) found_.push_back({a, b, 0, text(a, b)});
  }

  /// Overall length and width of the bottom, on which several vaults may stand, square to the first
  /// of them.
  void addOverall(double off) {
    const Frame frame = vault_.frame();
    std::vector<Point2> local;
    for (const Ring& bottom : pit_.bottoms) {
      for (Point2 p : bottom)
        local.push_back(frame.toLocal(p));
    }
    const PaperBox box = around(local);
    const char* overall = pit_.bottoms.size() > 1 ? " overall" : "";
    const auto side = [&](Point2 a, Point2 b) {
      const Point2 from = frame.toSite(a), to = frame.toSite(b);
      found_.push_back({from, to, off, text(from, to) + overall});
    };
    side(box.low, {box.high.x, box.low.y});
    side({box.low.x, box.high.y}, box.low);
  }

  /// Where the way out of the vault's face first meets one of the rings.
  static std::optional<Point2> firstMet(const Polyline& way, const std::vector<Ring>& rings) {
    std::optional<Point2> nearest;
    for (const Ring& ring : rings) {
      for (Point2 p : crossings(way, ring)) {
        if (!nearest || distance(way.front(), p) < distance(way.front(), *nearest)) nearest = p;
      }
    }
    return nearest;
  }

  /// From the first vault's face to the edge of the bottom and on to the edge at the ground; at the
  /// opposite face where another vault of the dig stands in the way.
  void addClearance(Point2 face, Point2 out) {
    constexpr double kFar = 30; // m
    for (double side : {-1.0, 1.0}) {
      const Point2 from = vault_.frame().toSite(face * side);
      const Polyline way{from, vault_.frame().toSite((face + out * kFar) * side)};
      const auto toe = firstMet(way, bottoms_);
      if (!toe || meetsVault({from, *toe})) continue;
      add(from, *toe);
      const auto edge =
          pit_.top ? firstMet({*toe, way.back()}, {*pit_.top}) : std::optional<Point2>();
      if (edge) add(*toe, *edge);
      return;
    }
  }
  bool meetsVault(const Polyline& way) const {
    return std::ranges::any_of(job_.study().vaults, [&](const VaultStudy& other) {
      return other.id != vault_.id && !crossings(way, other.outline).empty();
    });
  }

  /// From the nearest building's wall to the bottom.
  void addBuilding() {
    constexpr double kFar = 25; // m; a longer tape is no use
    std::optional<PlanMeasure> best;
    double least = kFar;
    for (const Building& building : job_.plan().buildings) {
      for (const Ring& bottom : bottoms_) {
        const double apart = distance(building.outline, bottom);
        if (apart < kLeastDug || apart >= least) continue;
        least = apart;
        best = nearestPair(building.outline, bottom);
      }
    }
    if (best) add(best->from, best->to);
  }

  const SheetJob& job_;
  const PitStudy& pit_;
  const Vault& vault_;
  std::vector<Ring> bottoms_;
  std::vector<PlanMeasure> found_;
};

} // namespace

void measureDigs(const SheetJob& job, const SheetView& view, LabelBoard& board) {
  constexpr double kOff = 6; // mm on the paper
  std::vector<PlanMeasure> all;
  for (const PitStudy& pit : job.study().earth.pits) {
    if (pit.vaults.empty() || pit.bottoms.empty()) continue;
    const auto more = DigMeasures(job, pit).take(kOff * view.scale / 1000);
    all.insert(all.end(), more.begin(), more.end());
  }
  drawPlanMeasures(all, LineStyle{Ink::Black, 0.25, {}}, view, board);
}

void keepOffTrenches(const EarthStudy& earth, const SheetView& view, LabelBoard& board) {
  constexpr double kAcross = 30; // mm that a label on a trench's middle is disliked
  for (const TrenchStudy& trench : earth.trenches) {
    for (const TrenchStretch& stretch : trench.stretches) {
      for (std::size_t i = 1; i < stretch.size(); ++i)
        board.keepOff(view.toPaper(stretch[i - 1].at), view.toPaper(stretch[i].at), kAcross, 0);
    }
  }
}

} // namespace sump
