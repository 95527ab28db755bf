#include "core/sheet/structure_cut.h"

#include "core/geometry/polygon.h"
#include "core/geometry/unit.h"
#include "core/sheet/part_list.h"
#include "core/sheet/tags.h"

#include <algorithm>
#include <ranges>

namespace sump {

namespace {

constexpr double kBeyond = 0.9; // m that a chamber goes on beyond an end in it
const LineStyle kCut{Ink::Black, 0.35, {}};
const FillStyle kConcrete{Ink::Concrete};

Ring box(double left, double low, double right, double high) {
  return {{left, low}, {right, low}, {right, high}, {left, high}};
}

/// Plan distance along the line of its point nearest to p, and how far off p is.
std::pair<double, double> projected(Point2 p, const Polyline& line) {
  double sum = 0, station = 0, least = 1e30;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const double length = distance(line[i], line[i + 1]);
    const Foot foot = nearestOnSegment(p, line[i], line[i + 1]);
    if (foot.distance < least) {
      least = foot.distance;
      station = sum + foot.along * length;
    }
    sum += length;
  }
  return {station, least};
}

/// A stretch of the run inside an outline, and whether the run crosses a wall at its ends.
struct Inside {
  double from = 0, to = 0;
  bool wallFrom = false, wallTo = false;
};

std::vector<Inside> insideStretches(const Polyline& line, const Ring& ring) {
  std::vector<double> cuts;
  double sum = 0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    for (std::size_t k = 0; k < ring.size(); ++k) {
      const auto cross = crossSegments(line[i], line[i + 1], ring[k], ring[(k + 1) % ring.size()]);
      if (cross) cuts.push_back(sum + cross->alongFirst * distance(line[i], line[i + 1]));
    }
    sum += distance(line[i], line[i + 1]);
  }
  std::sort(cuts.begin(), cuts.end());
  cuts.erase(std::unique(cuts.begin(), cuts.end(), [](double a, double b) { return b - a < 1e-6; }),
             cuts.end());
  std::vector<Inside> found;
  std::optional<Inside> open;
  if (contains(ring, line.front())) open = Inside{0, 0, false, false};
  for (double cut : cuts) {
    if (open) {
      open->to = cut;
      open->wallTo = true;
      found.push_back(*open);
      open.reset();
    } else {
      open = Inside{cut, 0, true, false};
    }
  }
  if (open) {
    open->to = sum;
    found.push_back(*open);
  }
  return found;
}

/// The line goes on straight at both ends, as the section does.
Polyline lengthened(Polyline line, double by) {
  const auto on = [by](const auto& way) { // from the end inward, past an upright leg's one place
    constexpr double kOnePlace = 1e-6;    // m
    const Point2 end = *way.begin();
    const auto next =
        std::ranges::find_if(way, [&](Point2 p) { return distance(p, end) > kOnePlace; });
    return next == way.end() ? end : end + unitWay(*next, end) * by;
  };
  const Point2 before = on(line), after = on(line | std::views::reverse);
  line.insert(line.begin(), before);
  line.push_back(after);
  return line;
}

/// That the line cuts. An eductor or a foot valve hangs off the middle of its manway, where the
/// line has ended.
std::optional<CutOpening> openingOn(const Polyline& line, const ManwayStudy& at,
                                    const Manway& manway) {
  const double r = inMetres(manway.diameter) / 2;
  if (projected(at.at, line).second > r) return std::nullopt;
  const Polyline longer = lengthened(line, r);
  const double station = projected(at.at, longer).first - distance(longer[0], longer[1]);
  return CutOpening{manway.id, station - r, station + r};
}

void cutManways(const VaultStudy& vault, const Vault& given, const Polyline& line, const Inside& in,
                StructureCut& cut) {
  for (std::size_t i = 0; i < vault.manways.size(); ++i) {
    const auto opening = openingOn(line, vault.manways[i], given.manways[i]);
    if (!opening) continue;
    const auto [manway, from, to] = *opening;
    const double station = (from + to) / 2;
    if (station < in.from - kBeyond || station > in.to + kBeyond) continue;
    const double low = inMetres(vault.lidUnderside), top = inMetres(vault.lidTop);
    cut.shapes.push_back({box(from, low, to, top), kCut, FillStyle{Ink::White}});
    if (!vault.manways[i].rim || inMetres(*vault.manways[i].rim) <= top) continue;
    const double rim = inMetres(*vault.manways[i].rim);
    constexpr double kRing = 0.1;
    cut.shapes.push_back({box(from - kRing, top, from, rim), kCut, kConcrete});
    cut.shapes.push_back({box(to, top, to + kRing, rim), kCut, kConcrete});
    cut.shapes.push_back({box(from, rim - 0.05, to, rim), kCut, FillStyle{Ink::Black}});
  }
}

void cutBaffles(const RunStudy& run, const VaultStudy& vault, const Vault& given,
                const Polyline& line, StructureCut& cut) {
  for (const Penetration& hole : run.penetrations) {
    if (hole.vault != vault.id || hole.baffle.empty()) continue;
    for (const Baffle& baffle : given.baffles) {
      if (baffle.id != hole.baffle) continue;
      const double s = projected(flat(hole.at), line).first, t = inMetres(baffle.thickness) / 2;
      cut.shapes.push_back({box(s - t, inMetres(vault.floor + baffle.bottomGap), s + t,
                                inMetres(vault.lidUnderside - baffle.topGap)),
                            kCut, FillStyle{Ink::PaleGrey}});
    }
  }
}

StructureCut cutVault(const SheetJob& job, const RunStudy& run, const VaultStudy& vault,
                      const Inside& in, const Polyline& line) {
  const Vault& given = *job.plan().vaults.find(vault.id);
  const double wall = inMetres(given.wall);
  StructureCut cut;
  cut.object = vault.id;
  cut.left = in.wallFrom ? in.from : in.from - kBeyond;
  cut.right = in.wallTo ? in.to : in.to + kBeyond;
  const double low = inMetres(vault.floor), under = inMetres(vault.lidUnderside);
  const double inLeft = in.wallFrom ? in.from + wall : cut.left;
  const double inRight = in.wallTo ? in.to - wall : cut.right;
  cut.shapes.push_back({box(inLeft, low, inRight, under), std::nullopt, FillStyle{Ink::White}});
  if (vault.waterLevel) {
    cut.shapes.push_back({box(inLeft, low, inRight, inMetres(*vault.waterLevel)),
                          LineStyle{Ink::Black, 0.25, {}}, FillStyle{Ink::Water}});
    cut.levels.emplace_back(inMetres(*vault.waterLevel), "water at rest, " + called(given));
  }
  cut.shapes.push_back({box(cut.left, inMetres(vault.underside), cut.right, low), kCut, kConcrete});
  cut.shapes.push_back({box(cut.left, under, cut.right, inMetres(vault.lidTop)), kCut, kConcrete});
  if (in.wallFrom) cut.shapes.push_back({box(in.from, low, inLeft, under), kCut, kConcrete});
  if (in.wallTo) cut.shapes.push_back({box(inRight, low, in.to, under), kCut, kConcrete});
  cutBaffles(run, vault, given, line, cut);
  cutManways(vault, given, line, in, cut);
  cut.levels.emplace_back(low, "inside floor, " + called(given));
  cut.levels.emplace_back(inMetres(vault.lidTop), "top of lid, " + called(given));
  return cut;
}

StructureCut cutRoom(const EquipmentRoom& room, const Inside& in) {
  constexpr double kSlab = 0.1, kWall = 1.5; // m; drawn only
  const double floor = inMetres(room.floor);
  StructureCut cut;
  cut.object = room.id;
  cut.left = in.wallFrom ? in.from : in.from - kBeyond / 2;
  cut.right = in.wallTo ? in.to : in.to + kBeyond / 2;
  cut.shapes.push_back({box(cut.left, floor - kSlab, cut.right, floor), kCut, kConcrete});
  if (in.wallFrom) {
    cut.shapes.push_back({box(in.from - kSlab, floor, in.from, floor + kWall), kCut, kConcrete});
  }
  if (in.wallTo) {
    cut.shapes.push_back({box(in.to, floor, in.to + kSlab, floor + kWall), kCut, kConcrete});
  }
  cut.levels.emplace_back(floor, "floor, " + called(room));
  return cut;
}

} // namespace

std::vector<CutOpening> cutOpenings(const SheetJob& job, const RunStudy& run) {
  std::vector<CutOpening> found;
  const Polyline line = planLine(run);
  if (line.size() < 2) return found;
  for (const VaultStudy& vault : job.study().vaults) {
    const Vault& given = *job.plan().vaults.find(vault.id);
    for (std::size_t i = 0; i < vault.manways.size(); ++i) {
      if (const auto opening = openingOn(line, vault.manways[i], given.manways[i]))
        found.push_back(*opening);
    }
  }
  return found;
}

std::vector<double> wallStations(const SheetJob& job, const RunStudy& run) {
  std::vector<double> walls;
  const Polyline line = planLine(run);
  if (line.size() < 2) return walls;
  const auto add = [&](const Ring& ring) {
    for (const Inside& in : insideStretches(line, ring)) {
      if (in.wallFrom) walls.push_back(in.from);
      if (in.wallTo) walls.push_back(in.to);
    }
  };
  for (const VaultStudy& vault : job.study().vaults)
    add(vault.outline);
  for (const EquipmentRoom& room : job.plan().rooms)
    add(outline(room));
  std::sort(walls.begin(), walls.end());
  return walls;
}

std::vector<StructureCut> structureCuts(const SheetJob& job, const RunStudy& run, double from,
                                        double to) {
  std::vector<StructureCut> cuts;
  const Polyline line = planLine(run);
  if (line.size() < 2) return cuts;
  for (const EquipmentRoom& room : job.plan().rooms) {
    for (const Inside& in : insideStretches(line, outline(room))) {
      if (in.to >= from && in.from <= to) cuts.push_back(cutRoom(room, in));
    }
  }
  for (const VaultStudy& vault : job.study().vaults) {
    for (const Inside& in : insideStretches(line, vault.outline)) {
      if (in.to >= from && in.from <= to) cuts.push_back(cutVault(job, run, vault, in, line));
    }
  }
  return cuts;
}

} // namespace sump
