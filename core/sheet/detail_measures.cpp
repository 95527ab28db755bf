#include "core/sheet/detail_measures.h"

#include "core/sheet/part_list.h"
#include "core/sheet/structure_cut.h"
#include "core/study/hole_gaps.h"
#include "core/units/print_levels.h"

#include <algorithm>

namespace sump {

namespace {

constexpr double kLeast = 0.03; // m; a shorter dimension says nothing that the parts do not

class MeasurePen {
public:
  MeasurePen(const SheetJob& job, const RunStudy& run, RunWindow window, Drawing& drawing)
      : job_(job), run_(run), given_(*job.plan().runs.find(run.id)), window_(window),
        stations_(planStations(run)), drawing_(drawing) {}

  void draw() {
    chain();
    drops();
    if (shows(0)) endHeights(given_.from, run_.startInvert, -kBeside);
    if (shows(stations_.back())) {
      endHeights(given_.to, run_.endInvert, stations_.back() + kBeside);
    }
    lowWater();
  }

private:
  static constexpr double kBeside = 0.45; ///< m from an end to the heights told beside it

  bool shows(double station) const {
    return station >= window_.from - 1e-6 && station <= window_.to + 1e-6;
  }
  void upright(double x, double low, double high) {
    if (high < low) std::swap(low, high);
    if (high - low < kLeast) return;
    const std::string height = printHeight(metres(low), metres(high), job_.units());
    drawing_.measures.push_back({{x, low}, {x, high}, 0, height});
  }

  /// Plan distances, over the run.
  void chain() {
    std::vector<double> stops{0, stations_.back()};
    for (double wall : wallStations(job_, run_))
      stops.push_back(wall);
    // Where it rises, which the details fix to the walls in words.
    for (std::size_t i = 0; i + 1 < run_.points.size(); ++i) {
      if (run_.legs[i].vertical && given_.to.kind == EndKind::Port) stops.push_back(stations_[i]);
    }
    for (const Bend& bend : run_.bends) {
      if (!bend.fittings.empty()) stops.push_back(stations_[static_cast<std::size_t>(bend.point)]);
    }
    for (const InlinePart& part : given_.parts) {
      if (const auto place = partPlace(run_, part)) stops.push_back(place->along);
    }
    std::erase_if(stops, [&](double at) { return !shows(at); });
    std::sort(stops.begin(), stops.end());
    double top = -1e9;
    for (std::size_t i = 0; i < run_.points.size(); ++i) {
      if (shows(stations_[i])) top = std::max(top, run_.points[i].at.z);
    }
    if (top < -1e8) return;
    top += 2 * inMetres(run_.outsideDiameter);
    for (std::size_t i = 0; i + 1 < stops.size(); ++i) {
      const double length = stops[i + 1] - stops[i];
      if (length < kLeast) continue;
      drawing_.measures.push_back(
          {{stops[i], top}, {stops[i + 1], top}, 5, printSize(metres(length), job_.units())});
    }
  }

  void drops() {
    for (std::size_t i = 0; i + 1 < run_.points.size(); ++i) {
      if (stations_[i + 1] - stations_[i] > 1e-6 || !shows(stations_[i])) continue;
      upright(stations_[i] + 2 * inMetres(run_.outsideDiameter) + 0.1, run_.points[i].at.z,
              run_.points[i + 1].at.z);
    }
  }

  /// From the floor, and to the water at rest.
  void endHeights(const RunEnd& end, Length invert, double x) {
    if (end.kind == EndKind::Port) {
      for (const EquipmentRoom& room : job_.plan().rooms) {
        const auto isEnd = [&](const Port& port) { return port.id == end.target; };
        if (std::any_of(room.ports.begin(), room.ports.end(), isEnd))
          upright(x, inMetres(room.floor), inMetres(invert));
      }
    }
    if (end.kind != EndKind::Chamber) return;
    arms(end.fitting, inMetres(invert + run_.insideDiameter / 2.0), x < 0);
    for (const VaultStudy& vault : job_.study().vaults) {
      if (vault.id != end.target) continue;
      const double z = inMetres(invert), water = vault.waterLevel ? inMetres(*vault.waterLevel) : z;
      upright(x, inMetres(vault.floor), std::min(z, water));
      upright(x, z, water);
    }
  }

  /// Of a tee or an elbow, from the pipe's axis to the open ends, on the side away from the pipe.
  void arms(EndFitting fitting, double axis, bool atStart) {
    const bool up = fitting == EndFitting::Tee || fitting == EndFitting::ElbowUp;
    const bool down = fitting == EndFitting::Tee || fitting == EndFitting::ElbowDown;
    if (!up && !down) return;
    const Leg& leg = atStart ? run_.legs.front() : run_.legs.back();
    const auto arm = armLength(job_.catalog, given_.pipe, leg.size, fitting);
    if (!arm) return;
    const double off = inMetres(run_.outsideDiameter) / 2 + 0.1;
    const double x = atStart ? -off : stations_.back() + off;
    const auto measure = [&](double low, double high) {
      drawing_.measures.push_back({{x, low}, {x, high}, 0, printSize(*arm, job_.units())});
    };
    if (down) measure(axis - inMetres(*arm), axis);
    if (up) measure(axis, axis + inMetres(*arm));
  }

  void lowWater() {
    for (const SuctionStudy& suction : job_.study().hydraulics.suctions) {
      if (suction.run != run_.id || !suction.lowWater || !shows(0)) continue;
      const double z = inMetres(*suction.lowWater);
      drawing_.levels.push_back(
          {z, 0, printElevation(metres(z), job_.units()), "low water, pump stops"});
    }
  }

  const SheetJob& job_;
  const RunStudy& run_;
  const Run& given_;
  RunWindow window_;
  std::vector<double> stations_;
  Drawing& drawing_;
};

} // namespace

void addDetailMeasures(const SheetJob& job, const RunStudy& run, RunWindow window,
                       Drawing& drawing) {
  MeasurePen(job, run, window, drawing).draw();
}

} // namespace sump
