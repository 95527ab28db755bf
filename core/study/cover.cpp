// Earth over the crown of a run, where it lies in the ground.

#include "core/study/context.h"

#include "core/geometry/polygon.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

/// Cover is looked at this often at least, in metres.
constexpr double kStep = 1.0;
/// Between two looks the cover is straight unless the ground breaks there (at an edge of its
/// triangles). A break of more than kFlat is followed down to stretches of kShort.
constexpr double kFlat = 0.0005;
constexpr double kShort = 0.01;

void keepLeast(std::optional<CoverCheck>& least, const CoverCheck& check) {
  if (!least || check.cover < least->cover) least = check;
}

bool inAny(const OutlineSet& set, const std::vector<std::size_t>& candidates, Point2 p) {
  return std::ranges::any_of(candidates,
                             [&](std::size_t i) { return contains(set.rings()[i], p); });
}

/// The least cover on one leg.
class CoverFinder {
public:
  CoverFinder(const StudyContext& context, Point3 a, Point3 b, double crown)
      : context_(context), a_(a), b_(b), crown_(crown), box_(boxOf({flat(a), flat(b)})),
        structures_(context.structures.touching(box_)), traffic_(context.traffic.touching(box_)),
        length_(distance(flat(a), flat(b))) {}

  void fill(RunStudy& run) const {
    const std::vector<double> cuts = breaks();
    for (std::size_t i = 1; i < cuts.size(); ++i) {
      const Point2 middle = flat(lerp(a_, b_, (cuts[i - 1] + cuts[i]) / 2));
      if (inAny(context_.structures, structures_, middle)) continue;
      const auto least = leastBetween(cuts[i - 1], cuts[i]);
      if (!least) return; // no ground is known
      keepLeast(run.leastCover, *least);
      if (inAny(context_.traffic, traffic_, middle)) keepLeast(run.leastTrafficCover, *least);
    }
  }

private:
  std::vector<double> breaks() const;
  void addBreaks(const OutlineSet& set, const std::vector<std::size_t>& candidates,
                 std::vector<double>& cuts) const;
  std::optional<CoverCheck> at(double t) const;
  std::optional<CoverCheck> leastBetween(double from, double to) const;
  void follow(double from, double to, Length coverFrom, Length coverTo,
              std::optional<CoverCheck>& least) const;

  const StudyContext& context_;
  Point3 a_, b_;
  double crown_;
  Box box_;
  std::vector<std::size_t> structures_, traffic_;
  double length_;
};

void CoverFinder::addBreaks(const OutlineSet& set, const std::vector<std::size_t>& candidates,
                            std::vector<double>& cuts) const {
  for (std::size_t i : candidates) {
    const Ring& ring = set.rings()[i];
    for (std::size_t k = 0; k < ring.size(); ++k) {
      const auto hit = crossSegments(flat(a_), flat(b_), ring[k], ring[(k + 1) % ring.size()]);
      if (hit) cuts.push_back(hit->alongFirst);
    }
  }
}

/// Fractions of the leg between which it is in or out of each outline as a whole.
std::vector<double> CoverFinder::breaks() const {
  std::vector<double> cuts = {0, 1};
  addBreaks(context_.structures, structures_, cuts);
  addBreaks(context_.traffic, traffic_, cuts);
  std::ranges::sort(cuts);
  const auto same = std::ranges::unique(cuts);
  cuts.erase(same.begin(), same.end());
  return cuts;
}

std::optional<CoverCheck> CoverFinder::at(double t) const {
  const Point3 p = lerp(a_, b_, t);
  const auto grade = context_.ground.elevation(flat(p));
  if (!grade) return std::nullopt;
  return CoverCheck{metres(*grade - p.z - crown_), flat(p)};
}

std::optional<CoverCheck> CoverFinder::leastBetween(double from, double to) const {
  std::optional<CoverCheck> least = at(from);
  if (!least) return std::nullopt;
  const int steps = std::max(1, static_cast<int>(std::ceil((to - from) * length_ / kStep)));
  CoverCheck last = *least;
  double start = from;
  for (int step = 1; step <= steps; ++step) {
    const double end = from + (to - from) * step / steps;
    const CoverCheck here = *at(end);
    keepLeast(least, here);
    follow(start, end, last.cover, here.cover, least);
    last = here;
    start = end;
  }
  return least;
}

void CoverFinder::follow(double from, double to, Length coverFrom, Length coverTo,
                         std::optional<CoverCheck>& least) const {
  const double middle = (from + to) / 2;
  const CoverCheck here = *at(middle);
  keepLeast(least, here);
  const double bow = inMetres(here.cover - (coverFrom + coverTo) / 2.0);
  if (std::abs(bow) < kFlat || (to - from) * length_ < kShort) return;
  follow(from, middle, coverFrom, here.cover, least);
  follow(middle, to, here.cover, coverTo, least);
}

} // namespace

void fillCover(const StudyContext& context, RunStudy& run) {
  // Outside top of pipe over the invert: bore and one wall.
  const double crown = inMetres(run.insideDiameter + run.outsideDiameter) / 2;
  for (std::size_t i = 0; i < run.legs.size(); ++i) {
    if (run.legs[i].vertical || !run.legs[i].outsideVault) continue;
    CoverFinder(context, run.points[i].at, run.points[i + 1].at, crown).fill(run);
  }
}

} // namespace sump
