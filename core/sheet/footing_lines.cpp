#include "core/sheet/footing_lines.h"

#include "core/geometry/polygon.h"
#include "core/geometry/unit.h"
#include "core/sheet/clip.h"

#include <algorithm>

namespace sump {

namespace {

/// The outline with each side so far out, closed.
Polyline movedOut(const Ring& ring, double by) {
  double twice = 0;
  for (std::size_t i = 0; i < ring.size(); ++i)
    twice += cross(ring[i], ring[(i + 1) % ring.size()]);
  const double side = twice > 0 ? by : -by; // to the right of one who walks round to the left
  Polyline line;
  for (std::size_t i = 0; i <= ring.size(); ++i) {
    const std::size_t n = ring.size(), k = i % n;
    const Point2 in = unitWay(ring[(k + n - 1) % n], ring[k]),
                 out = unitWay(ring[k], ring[(k + 1) % n]);
    const Point2 a = Point2{in.y, -in.x} * side, b = Point2{out.y, -out.x} * side;
    constexpr double kLeast = 0.1; // of a corner that is hardly one's angle
    line.push_back(ring[k] + (a + b) * (1 / std::max(kLeast, 1 + dot(in, out))));
  }
  return line;
}

class FootingLines {
public:
  explicit FootingLines(const SheetJob& job) : job_(job) {}

  std::vector<FootingLine> take() {
    const EarthStudy& earth = job_.study().earth;
    for (const PitStudy& pit : earth.pits) {
      std::vector<Point2> about;
      for (const Ring& bottom : pit.bottoms)
        about.insert(about.end(), bottom.begin(), bottom.end());
      for (const FootingCheck& check : pit.footings)
        add(check, about);
    }
    for (const TrenchStudy& trench : earth.trenches) {
      std::vector<Point2> about;
      for (const TrenchStretch& stretch : trench.stretches) {
        for (const TrenchPoint& p : stretch)
          about.push_back(p.at);
      }
      for (const FootingCheck& check : trench.footings) {
        if (check.below && *check.below > metres(0)) add(check, about);
      }
    }
    return std::move(made_);
  }

private:
  void add(const FootingCheck& check, const std::vector<Point2>& about) {
    const Building* building = job_.plan().buildings.find(check.building);
    if (building == nullptr || !building->footing || about.empty()) return;
    const double out = inMetres(*building->footing - check.toe);
    if (out <= 0) return;
    constexpr double kAbout = 1.5; // m
    const PaperBox near = around(about).grown(out + kAbout);
    for (Polyline& part : clipLine(movedOut(building->outline, out), near))
      made_.push_back({check.building, *building->footing, check.toe, std::move(part)});
  }

  const SheetJob& job_;
  std::vector<FootingLine> made_;
};

} // namespace

std::vector<FootingLine> footingLines(const SheetJob& job) {
  return FootingLines(job).take();
}

} // namespace sump
