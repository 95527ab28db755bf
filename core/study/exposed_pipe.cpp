#include "core/study/exposed_pipe.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace sump {

namespace {

/// The part of the way from a to b that lies in the box, as a share (Liang and Barsky).
double shareInside(const std::array<double, 3>& a, const std::array<double, 3>& b,
                   const std::array<double, 3>& low, const std::array<double, 3>& high) {
  double from = 0, to = 1;
  for (std::size_t i = 0; i < 3; ++i) {
    const double d = b[i] - a[i];
    if (std::abs(d) < 1e-9) {
      if (a[i] < low[i] - 1e-9 || a[i] > high[i] + 1e-9) return 0;
      continue;
    }
    const double t = (low[i] - a[i]) / d, u = (high[i] - a[i]) / d;
    from = std::max(from, std::min(t, u));
    to = std::min(to, std::max(t, u));
  }
  return std::max(0.0, to - from);
}

double shareInRoom(const EquipmentRoom& room, Point3 a, Point3 b) {
  const Frame frame = room.frame();
  const Point2 p = frame.toLocal(flat(a)), q = frame.toLocal(flat(b));
  constexpr double kSky = 1e6;
  return shareInside({p.x, p.y, a.z}, {q.x, q.y, b.z}, {0, 0, inMetres(room.floor)},
                     {inMetres(room.length), inMetres(room.width), kSky});
}

} // namespace

std::vector<ExposedLeg> exposedLegs(const Plan& plan, const RunStudy& run) {
  std::vector<ExposedLeg> exposed;
  for (std::size_t i = 0; i < run.legs.size(); ++i) {
    double share = 0;
    for (const EquipmentRoom& room : plan.rooms)
      share += shareInRoom(room, run.points[i].at, run.points[i + 1].at);
    const Leg& leg = run.legs[i];
    const Length length = std::min(1.0, share) * leg.developed;
    if (inMetres(length) > 1e-6) exposed.push_back({length, leg.vertical, leg.size});
  }
  return exposed;
}

Decided<Length> supportSpacing(const Plan& plan, const Supplies& supplies, const Run& run,
                               const ExposedLeg& leg) {
  if (isConduit(run.service)) {
    return given(supplies.conduitSpacing(leg.size),
                 "support spacing of conduit of size " + leg.size);
  }
  if (leg.vertical) return supplies.codeVertical;
  return decide(
      [&](Temperature water) {
        return given(supplies.supportSpacing(leg.size, water),
                     "support spacing of size " + leg.size + " for water this warm");
      },
      given(plan.basis.water.temperature, "water temperature"));
}

std::vector<ExposedPipe> exposedPipes(const Plan& plan, const Study& study,
                                      const Supplies& supplies) {
  std::vector<ExposedPipe> all;
  for (std::size_t i = 0; i < study.runs.size(); ++i) {
    if (!study.runs[i].resolved) continue;
    const Run& run = plan.runs[i];
    for (const ExposedLeg& leg : exposedLegs(plan, study.runs[i])) {
      const auto alike = std::ranges::find_if(all, [&](const ExposedPipe& known) {
        return known.run == run.id && known.all.size == leg.size &&
               known.all.vertical == leg.vertical;
      });
      if (alike == all.end()) {
        all.push_back({run.id, leg, supportSpacing(plan, supplies, run, leg)});
      } else {
        alike->all.length += leg.length;
      }
    }
  }
  return all;
}

} // namespace sump
