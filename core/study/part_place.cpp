#include "core/study/part_place.h"

#include "core/study/cut_line.h"

namespace sump {

Polyline planLine(const RunStudy& run) {
  Polyline line;
  for (const RunPoint& point : run.points)
    line.push_back(flat(point.at));
  return line;
}

std::vector<double> planStations(const RunStudy& run) {
  std::vector<double> stations;
  for (std::size_t i = 0; i < run.points.size(); ++i) {
    stations.push_back(i == 0 ? 0
                              : stations.back() +
                                    distance(flat(run.points[i - 1].at), flat(run.points[i].at)));
  }
  return stations;
}

double stationOf(const RunStudy& run, Point2 p) {
  return CutLine(planLine(run), 0, 0).nearest(p).first;
}

std::optional<PartPlace> partPlace(const RunStudy& run, const InlinePart& part) {
  if (!run.resolved || part.leg < 0) return std::nullopt;
  // Leg i of the plan goes from the last point of vertex i-1 to the first of vertex i.
  std::size_t from = run.points.size(), to = run.points.size();
  for (std::size_t i = 0; i < run.points.size(); ++i) {
    if (run.points[i].vertex == part.leg - 1) from = i;
  }
  for (std::size_t i = from + 1; i < run.points.size(); ++i) {
    if (run.points[i].vertex != part.leg) continue;
    to = i;
    break;
  }
  if (from >= run.points.size() || to >= run.points.size()) return std::nullopt;
  const std::vector<double> stations = planStations(run);
  const double along = stations[from] + (stations[to] - stations[from]) * part.along;
  return PartPlace{lerp(run.points[from].at, run.points[to].at, part.along), along,
                   from < run.legs.size() ? run.legs[from].size : std::string()};
}

} // namespace sump
