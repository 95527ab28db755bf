// Which fittings a run's turns need. An elbow can be rolled about the pipe's axis, so what counts
// is the deflection in space between the two legs, however it lies in plan and elevation.

#include "core/study/context.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace sump {

namespace {

struct Stock {
  FittingKind kind;
  double degrees;
};
constexpr std::array<Stock, 4> kElbows = {{{FittingKind::Elbow90, 90},
                                           {FittingKind::Elbow45, 45},
                                           {FittingKind::Elbow22, 22.5},
                                           {FittingKind::Elbow11, 11.25}}};

std::vector<Stock> stocked(const FittingFamily* family, const std::string& size) {
  std::vector<Stock> list;
  for (const Stock& elbow : kElbows) {
    if (family != nullptr && family->stocks(elbow.kind, size)) list.push_back(elbow);
  }
  return list;
}

double deflectionDegrees(Point3 in, Point3 out) {
  const Point3 c{in.y * out.z - in.z * out.y, in.z * out.x - in.x * out.z,
                 in.x * out.y - in.y * out.x};
  return std::atan2(norm(c), dot(in, out)) * 180 / kPi;
}

/// Turns mainly up or down: the change of inclination outweighs the change of bearing.
bool turnsVertically(Point3 in, Point3 out) {
  const double flatIn = norm(flat(in)), flatOut = norm(flat(out));
  if (flatIn < 1e-9 || flatOut < 1e-9) return true;
  const double rise = std::abs(std::atan2(in.z, flatIn) - std::atan2(out.z, flatOut));
  const double turn = std::abs(std::atan2(cross(flat(in), flat(out)), dot(flat(in), flat(out))));
  return rise > turn;
}

struct Combination {
  std::vector<FittingKind> kinds;
  double degrees = 0;
};

/// The combination of one to three stock elbows nearest to the turn; fewest among equals.
Combination nearest(const std::vector<Stock>& stock, double degrees) {
  Combination best;
  const auto consider = [&](Combination c) {
    const double gap = std::abs(c.degrees - degrees), gapBest = std::abs(best.degrees - degrees);
    if (best.kinds.empty() || gap < gapBest - 1e-9 ||
        (gap < gapBest + 1e-9 && c.kinds.size() < best.kinds.size())) {
      best = std::move(c);
    }
  };
  for (std::size_t i = 0; i < stock.size(); ++i) {
    consider({{stock[i].kind}, stock[i].degrees});
    for (std::size_t j = i; j < stock.size(); ++j) {
      const double two = stock[i].degrees + stock[j].degrees;
      consider({{stock[i].kind, stock[j].kind}, two});
      for (std::size_t k = j; k < stock.size(); ++k) {
        consider({{stock[i].kind, stock[j].kind, stock[k].kind}, two + stock[k].degrees});
      }
    }
  }
  return best;
}

Bend bendAt(const std::vector<Stock>& stock, Point3 in, Point3 out, int point, double tolerance) {
  Bend bend;
  bend.point = point;
  bend.degrees = deflectionDegrees(in, out);
  bend.vertical = turnsVertically(in, out);
  const auto gap = [&](const Stock& elbow) { return std::abs(elbow.degrees - bend.degrees); };
  const auto closest = std::ranges::min_element(stock, {}, gap);
  if (closest != stock.end() && gap(*closest) <= tolerance) {
    bend.fittings = {closest->kind};
    bend.madeDegrees = closest->degrees;
    return bend;
  }
  bend.stock = false;
  Combination made = nearest(stock, bend.degrees);
  bend.fittings = std::move(made.kinds);
  bend.madeDegrees = made.degrees;
  return bend;
}

} // namespace

std::vector<Bend> bends(const StudyContext& context, const Run& run, const RunStudy& study) {
  std::vector<Bend> found;
  const double ignore = inDegrees(context.limits.angle("bend.ignore"));
  const double tolerance = inDegrees(context.limits.angle("bend.tolerance"));
  const FittingFamily* family = context.catalog.fittingsFor(run.pipe);
  std::optional<Point3> in; // direction of the last leg that has a length
  for (std::size_t leg = 0; leg < study.legs.size(); ++leg) {
    const Point3 out = study.points[leg + 1].at - study.points[leg].at;
    if (norm(out) < 1e-9) continue;
    if (in && deflectionDegrees(*in, out) > ignore) {
      found.push_back(bendAt(stocked(family, study.legs[leg].size), *in, out, static_cast<int>(leg),
                             tolerance));
    }
    in = out;
  }
  return found;
}

} // namespace sump
