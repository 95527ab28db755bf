// From bends, parts and ends to fittings, pipe between them, couplings and sticks.

#include "core/study/context.h"

#include "core/geometry/polygon.h"
#include "core/plan/keys.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace sump {

namespace {

/// A place on the run where pipe stops for something.
struct Node {
  double station = 0;
  Length before; ///< taken out of the pipe that arrives
  Length after;  ///< taken out of the pipe that leaves
  std::string sizeAfter;
};

/// Gathers one run's nodes and items.
class Assembly {
public:
  Assembly(const StudyContext& context, const Run& run, RunStudy& study)
      : context_(context), run_(run), study_(study), family_(context.catalog.fittingsFor(run.pipe)),
        size_(run.size) {}

  void addEnds();
  void addBends();
  void addParts();
  void addBranches(const std::vector<Branch>& branches);
  void cut();

private:
  Length fittingTakeOut(FittingKind kind, const std::string& size) const {
    const auto takeOut = family_ != nullptr ? family_->takeOut(kind, size) : std::nullopt;
    return takeOut.value_or(metres(0));
  }
  Length layingLength(std::string_view key, const std::string& size) const;
  Node endNode(const RunEnd& end, double station, const std::string& size, bool start);
  void item(std::string_view key, const std::string& size, std::string_view why, int count = 1,
            const Id& part = {});
  const std::string& sizeOfLeg(int leg) const {
    return study_.legs[static_cast<std::size_t>(leg)].size;
  }
  int legAt(double station) const;

  const StudyContext& context_;
  const Run& run_;
  RunStudy& study_;
  const FittingFamily* family_;
  std::string size_;
  std::vector<Node> nodes_;
};

Length Assembly::layingLength(std::string_view key, const std::string& size) const {
  const PartProduct* part = context_.catalog.part(key);
  if (part == nullptr) return metres(0);
  for (const auto& [nominal, length] : part->layingLength) {
    if (nominal == size) return length;
  }
  return metres(0);
}

void Assembly::item(std::string_view key, const std::string& size, std::string_view why, int count,
                    const Id& part) {
  for (RunItem& known : study_.items) {
    if (part.empty() && known.part.empty() && known.key == key && known.size == size &&
        known.why == why) {
      known.count += count;
      return;
    }
  }
  study_.items.push_back({std::string(key), size, count, std::string(why), part});
}

int Assembly::legAt(double station) const {
  for (std::size_t i = 1; i < study_.points.size(); ++i) {
    if (station <= study_.points[i].station) return static_cast<int>(i) - 1;
  }
  return static_cast<int>(study_.legs.size()) - 1;
}

/// A tee or elbow has its centre at the run's end; other end parts end there.
Node Assembly::endNode(const RunEnd& end, double station, const std::string& size, bool start) {
  Length takeOut = metres(0);
  switch (end.fitting) {
  case EndFitting::Plain:
    break;
  case EndFitting::Tee:
    item("tee", size, "end");
    takeOut = fittingTakeOut(FittingKind::Tee, size);
    break;
  case EndFitting::ElbowDown:
  case EndFitting::ElbowUp:
    item(key(FittingKind::Elbow90), size, "end");
    takeOut = fittingTakeOut(FittingKind::Elbow90, size);
    break;
  case EndFitting::Cap:
    item("cap", size, "end");
    break;
  case EndFitting::FootValve:
  case EndFitting::Strainer:
  case EndFitting::Eductor:
  case EndFitting::ScreenedVent:
    item(key(end.fitting), size, "end");
    takeOut = layingLength(key(end.fitting), size);
    break;
  }
  return start ? Node{station, metres(0), takeOut, size} : Node{station, takeOut, metres(0), ""};
}

void Assembly::addEnds() {
  nodes_.push_back(endNode(run_.from, 0, run_.size, true));
  const double length = study_.points.back().station;
  const std::string last = [&] {
    std::string size = study_.legs.back().size;
    for (const InlinePart& part : run_.parts) {
      if (part.kind == PartKind::Reducer && part.leg + 1 == static_cast<int>(study_.legs.size())) {
        size = part.toSize;
      }
    }
    return size;
  }();
  nodes_.push_back(endNode(run_.to, length, last, false));
}

void Assembly::addBends() {
  for (const Bend& bend : study_.bends) {
    if (bend.fittings.empty()) continue;
    const std::string& size = sizeOfLeg(bend.point);
    for (FittingKind kind : bend.fittings)
      item(key(kind), size, "bend");
    nodes_.push_back({study_.points[static_cast<std::size_t>(bend.point)].station,
                      fittingTakeOut(bend.fittings.front(), size),
                      fittingTakeOut(bend.fittings.back(), size), ""});
  }
}

void Assembly::addParts() {
  for (const InlinePart& part : run_.parts) {
    if (part.leg < 0 || part.leg >= static_cast<int>(study_.legs.size())) continue;
    const auto leg = static_cast<std::size_t>(part.leg);
    const double station =
        study_.points[leg].station + part.along * inMetres(study_.legs[leg].developed);
    const std::string& size = sizeOfLeg(part.leg);
    if (part.kind == PartKind::Reducer) {
      item("reducer", size + " x " + part.toSize, "inline", 1, part.id);
      nodes_.push_back({station, fittingTakeOut(FittingKind::Reducer, size),
                        fittingTakeOut(FittingKind::Reducer, part.toSize), part.toSize});
      continue;
    }
    item(key(part.kind), size, "inline", 1, part.id);
    const Length half = layingLength(key(part.kind), size) / 2.0;
    nodes_.push_back({station, half, half, ""});
  }
}

void Assembly::addBranches(const std::vector<Branch>& branches) {
  for (const Branch& branch : branches) {
    const std::string& size = sizeOfLeg(legAt(branch.station));
    const Length takeOut = fittingTakeOut(FittingKind::Tee, size);
    item("tee", size, "branch");
    nodes_.push_back({branch.station, takeOut, takeOut, ""});
  }
}

/// Couplings join cuts longer than a stick, unless the pipe has bells of its own.
int couplingsIn(Length cut, const PipeProduct* pipe) {
  if (pipe == nullptr || pipe->belledEnd) return 0;
  // A cut that is a stick to within a hair is one stick.
  const double sticks = std::ceil(inMetres(cut) / inMetres(pipe->stick) - 1e-6);
  return std::max(0, static_cast<int>(sticks) - 1);
}

void Assembly::cut() {
  std::ranges::stable_sort(nodes_, {}, &Node::station);
  const PipeProduct* pipe = context_.catalog.pipe(run_.pipe);
  std::map<std::string, std::vector<double>> cuts;
  for (std::size_t i = 1; i < nodes_.size(); ++i) {
    if (!nodes_[i - 1].sizeAfter.empty()) size_ = nodes_[i - 1].sizeAfter;
    PipePiece piece;
    piece.size = size_;
    piece.centreToCentre = metres(nodes_[i].station - nodes_[i - 1].station);
    piece.takeOut = nodes_[i - 1].after + nodes_[i].before;
    piece.cut = std::max(metres(0), piece.centreToCentre - piece.takeOut);
    piece.couplings = couplingsIn(piece.cut, pipe);
    if (piece.couplings > 0) item("coupling", size_, "stick", piece.couplings);
    if (inMetres(piece.cut) > 0) cuts[size_].push_back(inMetres(piece.cut));
    study_.pieces.push_back(std::move(piece));
  }
  if (pipe == nullptr) return;
  for (const auto& [size, lengths] : cuts) {
    study_.sticks += sticksFor(lengths, inMetres(pipe->stick));
  }
  study_.buy = static_cast<double>(study_.sticks) * pipe->stick;
}

} // namespace

int sticksFor(std::vector<double> cuts, double stick) {
  int sticks = 0;
  for (double& cut : cuts) {
    while (cut > stick * (1 + 1e-9)) {
      cut -= stick;
      ++sticks;
    }
  }
  std::ranges::sort(cuts, std::greater<>());
  std::vector<double> left; // what remains of each opened stick
  for (double cut : cuts) {
    const auto fits =
        std::ranges::find_if(left, [&](double rest) { return cut <= rest + stick * 1e-9; });
    if (fits != left.end()) {
      *fits -= cut;
    } else if (cut > 0) {
      left.push_back(stick - cut);
    }
  }
  return sticks + static_cast<int>(left.size());
}

std::vector<std::vector<Branch>> branches(const StudyContext& context,
                                          const std::vector<RunStudy>& runs) {
  std::vector<std::vector<Branch>> found(runs.size());
  for (const Run& run : context.plan.runs) {
    for (const RunEnd* end : {&run.from, &run.to}) {
      if (end->kind != EndKind::Run) continue;
      const auto place = context.locator.find(end->target);
      if (!place || place->kind != ObjectKind::Run) continue;
      const RunStudy& joined = runs[place->index];
      double best = -1, station = 0;
      for (std::size_t i = 1; i < joined.points.size(); ++i) {
        const Foot foot =
            nearestOnSegment(end->at, flat(joined.points[i - 1].at), flat(joined.points[i].at));
        if (best >= 0 && foot.distance >= best) continue;
        best = foot.distance;
        station = std::lerp(joined.points[i - 1].station, joined.points[i].station, foot.along);
      }
      if (best >= 0) found[place->index].push_back({station});
    }
  }
  return found;
}

void fillPieces(const StudyContext& context, const Run& run, const std::vector<Branch>& branches,
                RunStudy& study) {
  if (!study.resolved || study.legs.empty()) return;
  Assembly assembly(context, run, study);
  assembly.addEnds();
  assembly.addBends();
  assembly.addParts();
  assembly.addBranches(branches);
  assembly.cut();
}

} // namespace sump
