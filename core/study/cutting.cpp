#include "core/study/cutting.h"

#include "core/catalog/supplies.h"
#include "core/study/packing.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>

namespace sump {

namespace {

/// Packing is done in whole tenths of a micrometre: 1/16 in and 1 mm are whole numbers of them.
constexpr double kUnit = 1e-7;

std::int64_t inUnits(Length v) {
  return std::llround(inMetres(v) / kUnit);
}

Length tapeStep(UnitSystem units) {
  return units == UnitSystem::Metric ? millimetres(1) : inches(1.0 / 16);
}

/// To the nearest mark of the tape, but never to nothing.
Length onTape(Length v, Length step) {
  return std::max(1.0, std::round(v / step)) * step;
}

/// Whole sticks that a piece starts with: as many as it has couplings, or bells.
int wholeSticksIn(Length cut, Length stick) {
  constexpr double kHair = 1e-6;
  return std::max(0, static_cast<int>(std::ceil(cut / stick - kHair)) - 1);
}

/// The last of the sticks that a piece is joined from fills two sockets at least: what it lacks for
/// that comes off the whole stick before it.
void addPiece(CuttingGroup& group, const Id& run, int number, Length cut, Length step) {
  const int whole = wholeSticksIn(cut, group.stick);
  const Length least = 2.0 * builtinSupplies().socketDepthOf(group.size).value_or(metres(0));
  Length rest = cut - static_cast<double>(whole) * group.stick;
  Length last = group.stick;
  if (whole > 0 && rest < least) last = onTape(group.stick - (least - rest), step);
  rest += group.stick - last;
  StickCut part{run, number, 1, whole + 1, group.stick};
  for (; part.part <= whole; ++part.part) {
    part.length = part.part < whole ? group.stick : last;
    group.cuts.push_back(part);
  }
  part.length = std::min(group.stick, onTape(rest, step));
  group.cuts.push_back(part);
}

/// Groups by the pipe's place in the catalogue and the nominal size.
using Groups = std::map<std::pair<std::ptrdiff_t, double>, CuttingGroup>;

void addRun(Groups& groups, const Run& run, const RunStudy& study, const Catalog& catalog,
            Length step) {
  const PipeProduct* pipe = catalog.pipe(run.pipe);
  if (pipe == nullptr || !study.resolved) return;
  int number = 0;
  for (const PipePiece& piece : study.pieces) {
    ++number;
    if (inMetres(piece.cut) <= 0) continue;
    const auto at = std::pair(pipe - catalog.pipes.data(), nominalInches(piece.size).value_or(0));
    CuttingGroup& group = groups[at];
    if (group.cuts.empty()) {
      group.pipe = pipe->key;
      group.name = pipe->name;
      group.size = piece.size;
      group.stick = pipe->stick;
    }
    addPiece(group, run.id, number, piece.cut, step);
  }
}

/// What is left of a stick: the saw takes its kerf at each cut that leaves something.
Length offcutOf(const CuttingGroup& group, const std::vector<std::size_t>& cuts, Length kerf) {
  Length left = group.stick;
  for (std::size_t cut : cuts)
    left -= group.cuts[cut].length + kerf;
  return std::max(metres(0), left);
}

void addStick(CuttingGroup& group, std::vector<std::size_t> cuts, Length kerf) {
  std::ranges::stable_sort(cuts, [&](std::size_t a, std::size_t b) {
    return group.cuts[a].length > group.cuts[b].length;
  });
  const Length offcut = offcutOf(group, cuts, kerf);
  group.offcut += offcut;
  group.sticks.push_back({std::move(cuts), offcut});
}

/// The saw between two cuts takes its kerf, and the trim holds those at the ends: with the kerf
/// added to stick and cuts alike, n cuts fit when their lengths, n - 1 kerfs and the trim do. A cut
/// that leaves less than the trim has a stick to itself, as nothing else could go into it.
void pack(CuttingGroup& group, Length kerf, Length trim) {
  const std::int64_t capacity = inUnits(group.stick) - inUnits(trim) + inUnits(kerf);
  std::vector<std::int64_t> sizes;
  std::vector<std::size_t> packed; // the cut of each size
  for (std::size_t i = 0; i < group.cuts.size(); ++i) {
    group.net += group.cuts[i].length;
    const std::int64_t size = inUnits(group.cuts[i].length) + inUnits(kerf);
    if (size > capacity) {
      addStick(group, {i}, kerf);
    } else {
      sizes.push_back(size);
      packed.push_back(i);
    }
  }
  Packing packing = packLeast(sizes, capacity);
  group.leastPossible = static_cast<int>(group.sticks.size()) + packing.lowerBound;
  for (auto& bin : packing.bins) {
    for (std::size_t& cut : bin)
      cut = packed[cut];
    addStick(group, std::move(bin), kerf);
  }
  std::ranges::stable_sort(group.sticks, {}, [](const CutStick& stick) {
    return std::pair(stick.offcut, stick.cuts.front());
  });
}

} // namespace

const CuttingGroup* CuttingList::group(std::string_view pipe, std::string_view size) const {
  const auto found = std::ranges::find_if(
      groups, [&](const CuttingGroup& g) { return g.pipe == pipe && g.size == size; });
  return found == groups.end() ? nullptr : &*found;
}

CuttingList cuttingList(const Plan& plan, const Study& study, const Catalog& catalog, Length kerf,
                        Length trim) {
  Groups groups;
  for (std::size_t i = 0; i < study.runs.size(); ++i) {
    addRun(groups, plan.runs[i], study.runs[i], catalog, tapeStep(plan.project.units));
  }
  CuttingList list{kerf, trim, {}};
  for (auto& [at, group] : groups) {
    pack(group, kerf, trim);
    list.groups.push_back(std::move(group));
  }
  return list;
}

std::vector<Length> spareEnds(const CuttingGroup& group, Length least) {
  std::vector<Length> ends;
  for (const CutStick& stick : group.sticks)
    if (stick.offcut >= least) ends.push_back(stick.offcut);
  std::ranges::sort(ends, std::greater<>());
  return ends;
}

std::string cutMark(const StickCut& cut) {
  std::string mark = cut.run + "." + std::to_string(cut.piece);
  if (cut.parts > 1) mark += "/" + std::to_string(cut.part);
  return mark;
}

std::string pieceMark(const Id& run, std::size_t piece) {
  return cutMark({run, static_cast<int>(piece) + 1, 1, 1, {}});
}

std::string provenText(const CuttingGroup& group) {
  if (group.proven()) return "least, proven";
  return "at least " + std::to_string(group.leastPossible) + " needed; fewer than " +
         std::to_string(group.sticks.size()) + " not ruled out";
}

} // namespace sump
