// From bends, parts and ends to fittings, the pipe between them and its couplings.

#include "core/study/context.h"

#include "core/plan/keys.h"

#include <algorithm>
#include <optional>

namespace sump {

namespace {

/// A place on the run where pipe stops for something.
struct Node {
  double station = 0;
  Length before;         ///< taken out of the pipe that arrives
  Length after;          ///< taken out of the pipe that leaves
  std::string sizeAfter; ///< of a reducer
  /// Of the pipe's centre over the level told; only upright pipe feels it. Open until its ends are
  /// known for a part within a leg.
  std::optional<Length> lift;
};
/// Nodes closer than this in metres are at one place.
constexpr double kSameCorner = 1e-6;

/// Gathers one run's nodes and items.
class Assembly {
public:
  Assembly(const StudyContext& context, const Run& run, RunStudy& study)
      : context_(context), run_(run), study_(study),
        family_(context.catalog.fittingsFor(run.pipe)) {}

  void addStart(const RunJoint& joint);
  void addBends();
  void addParts();
  void addBranches(const std::vector<Branch>& branches);
  void addFinish(const RunJoint& joint);
  void cut();
  void addDownLegs();
  void buy();

private:
  Length fittingTakeOut(FittingKind kind, const std::string& size) const {
    const auto takeOut = family_ != nullptr ? family_->takeOut(kind, size) : std::nullopt;
    return takeOut.value_or(metres(0));
  }
  Length layingLength(std::string_view key, const std::string& size) const;
  Length endTakeOut(const RunEnd& end, const std::string& size);
  Length halfBore(const std::string& size) const;
  bool isUpright(std::size_t leg) const { return study_.legs[leg].vertical; }
  Length endLift(const RunEnd& end, const std::string& size, const RunJoint& joint,
                 bool upright) const;
  PipePiece pieceBetween(const Node& a, const Node& b) const;
  void joinCoincident();
  void liftParts();
  void item(std::string_view key, const std::string& size, std::string_view why, int count = 1,
            const Id& part = {});

  const StudyContext& context_;
  const Run& run_;
  RunStudy& study_;
  const FittingFamily* family_;
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

/// Adds the end's item. A tee or elbow has its centre at the run's end; other end parts end there.
Length Assembly::endTakeOut(const RunEnd& end, const std::string& size) {
  switch (end.fitting) {
  case EndFitting::Plain:
    break;
  case EndFitting::Tee:
    item(key(FittingKind::Tee), size, "end");
    return fittingTakeOut(FittingKind::Tee, size);
  case EndFitting::ElbowDown:
  case EndFitting::ElbowUp:
    item(key(FittingKind::Elbow90), size, "end");
    return fittingTakeOut(FittingKind::Elbow90, size);
  case EndFitting::Cap:
    item(key(FittingKind::Cap), size, "end");
    return fittingTakeOut(FittingKind::Cap, size);
  case EndFitting::FootValve:
  case EndFitting::Strainer:
  case EndFitting::Eductor:
  case EndFitting::ScreenedVent:
    item(key(end.fitting), size, "end");
    return layingLength(key(end.fitting), size);
  }
  return metres(0);
}

Length Assembly::halfBore(const std::string& size) const {
  const PipeSize* pipe = context_.catalog.pipeSize(run_.pipe, size);
  return pipe == nullptr ? metres(0) : pipe->inside / 2.0;
}

/// Levels are inverts, so a pipe's centre lies half its bore higher; the level of upright pipe's
/// open end is that of its opening, at the equipment's ports too.
Length Assembly::endLift(const RunEnd& end, const std::string& size, const RunJoint& joint,
                         bool upright) const {
  switch (end.kind) {
  case EndKind::Free:
  case EndKind::Chamber:
    return metres(0);
  case EndKind::Run:
    return joint.bore / 2.0;
  case EndKind::Port:
  case EndKind::Wash:
    return upright ? metres(0) : halfBore(size);
  case EndKind::Basin:
  case EndKind::Sewer:
    break;
  }
  return halfBore(size);
}

void Assembly::addStart(const RunJoint& joint) {
  nodes_.push_back({0, metres(0), joint.takeOut + endTakeOut(run_.from, run_.size), "",
                    endLift(run_.from, run_.size, joint, isUpright(0))});
}

void Assembly::addFinish(const RunJoint& joint) {
  const std::string size = sizeAt(run_, study_.legs.size(), 0);
  nodes_.push_back({study_.points.back().station, joint.takeOut + endTakeOut(run_.to, size),
                    metres(0), "",
                    endLift(run_.to, size, joint, isUpright(study_.legs.size() - 1))});
}

void Assembly::addBends() {
  for (const Bend& bend : study_.bends) {
    if (bend.fittings.empty()) continue;
    const std::string size = sizeAt(run_, static_cast<std::size_t>(bend.point), 0);
    for (FittingKind kind : bend.fittings)
      item(key(kind), size, "bend");
    nodes_.push_back({study_.points[static_cast<std::size_t>(bend.point)].station,
                      fittingTakeOut(bend.fittings.front(), size),
                      fittingTakeOut(bend.fittings.back(), size), "", halfBore(size)});
  }
}

void Assembly::addParts() {
  for (const InlinePart& part : run_.parts) {
    if (part.leg < 0 || part.leg >= static_cast<int>(study_.legs.size())) continue;
    const auto leg = static_cast<std::size_t>(part.leg);
    const double station =
        study_.points[leg].station + part.along * inMetres(study_.legs[leg].developed);
    const std::string size = sizeAt(run_, leg, part.along);
    if (part.kind == PartKind::Reducer) {
      item("reducer", size + " x " + part.toSize, "inline", 1, part.id);
      nodes_.push_back({station,
                        fittingTakeOut(FittingKind::Reducer, size),
                        fittingTakeOut(FittingKind::Reducer, part.toSize),
                        part.toSize,
                        {}});
      continue;
    }
    item(key(part.kind), size, "inline", 1, part.id);
    const Length half = layingLength(key(part.kind), size) / 2.0;
    nodes_.push_back({station, half, half, "", {}});
  }
}

void Assembly::addBranches(const std::vector<Branch>& branches) {
  for (const Branch& branch : branches) {
    const Length takeOut = fittingTakeOut(FittingKind::Tee, branch.size);
    const bool same = branch.size == branch.from;
    item("tee", same ? branch.size : branch.size + " x " + branch.from, "branch");
    nodes_.push_back({branch.station, takeOut, takeOut, "", {}});
  }
}

/// Two things at one place meet without pipe between them: the larger allowance on each side is
/// what the pipe stops short by.
void Assembly::joinCoincident() {
  std::ranges::stable_sort(nodes_, {}, &Node::station);
  std::vector<Node> joined;
  for (Node& node : nodes_) {
    if (joined.empty() || node.station - joined.back().station > kSameCorner) {
      joined.push_back(std::move(node));
      continue;
    }
    Node& same = joined.back();
    same.before = std::max(same.before, node.before);
    same.after = std::max(same.after, node.after);
    if (node.lift) same.lift = same.lift ? std::max(*same.lift, *node.lift) : node.lift;
    if (!node.sizeAfter.empty()) same.sizeAfter = std::move(node.sizeAfter);
  }
  nodes_ = std::move(joined);
}

/// A part within upright pipe stands as high over its level as what it is measured from: the leg's
/// opening where it has one, else the inverts at its ends.
void Assembly::liftParts() {
  for (std::size_t i = 1; i + 1 < nodes_.size(); ++i) {
    if (nodes_[i].lift) continue;
    std::size_t next = i + 1; // the finish has one
    while (!nodes_[next].lift)
      ++next;
    const Length lift = std::min(*nodes_[i - 1].lift, *nodes_[next].lift);
    for (; i < next; ++i)
      nodes_[i].lift = lift;
  }
}

/// Between fittings' centres. Pipe that is not upright has both its centres equally far over their
/// levels; upright pipe may end at an opening.
PipePiece Assembly::pieceBetween(const Node& a, const Node& b) const {
  PipePiece piece;
  piece.centreToCentre = metres(b.station - a.station);
  for (std::size_t leg = 0; leg < study_.legs.size(); ++leg) {
    const RunPoint& from = study_.points[leg];
    const RunPoint& to = study_.points[leg + 1];
    const double middle = (a.station + b.station) / 2;
    if (!study_.legs[leg].vertical || middle < from.station || middle > to.station) continue;
    const Length longer = *b.lift - *a.lift; // of pipe that rises
    piece.centreToCentre += to.at.z > from.at.z ? longer : -longer;
  }
  piece.takeOut = a.after + b.before;
  piece.cut = std::max(metres(0), piece.centreToCentre - piece.takeOut);
  return piece;
}

void Assembly::cut() {
  joinCoincident();
  liftParts();
  const PipeProduct* pipe = context_.catalog.pipe(run_.pipe);
  std::string size = run_.size;
  for (std::size_t i = 1; i < nodes_.size(); ++i) {
    if (!nodes_[i - 1].sizeAfter.empty()) size = nodes_[i - 1].sizeAfter;
    PipePiece piece = pieceBetween(nodes_[i - 1], nodes_[i]);
    piece.size = size;
    if (pipe != nullptr) piece.couplings = couplingsIn(piece.cut, *pipe);
    if (piece.couplings > 0) item("coupling", size, "stick", piece.couplings);
    study_.pieces.push_back(std::move(piece));
  }
}

/// One socket holds it; its other end is open. A stated end is cut to even where the arm reaches
/// deeper: the rule of short pipe tells.
void Assembly::addDownLegs() {
  for (DownLeg& leg : study_.downLegs) {
    if (!leg.stated && leg.end >= leg.mouth) continue;
    const EndFitting fitting = (leg.atStart ? run_.from : run_.to).fitting;
    PipePiece piece;
    piece.size = leg.size;
    piece.centreToCentre = leg.axis - leg.end;
    piece.takeOut = fittingTakeOut(
        fitting == EndFitting::Tee ? FittingKind::Tee : FittingKind::Elbow90, leg.size);
    piece.cut = std::max(metres(0), piece.centreToCentre - piece.takeOut);
    piece.downLeg = true;
    leg.piece = study_.pieces.size();
    study_.pieces.push_back(std::move(piece));
  }
}

void Assembly::buy() {
  const PipeProduct* pipe = context_.catalog.pipe(run_.pipe);
  if (pipe == nullptr) return;
  for (const auto& [nominal, cuts] : cutsBySize(study_.pieces)) {
    study_.sticks += sticksFor(cuts, inMetres(pipe->stick));
  }
  study_.buy = static_cast<double>(study_.sticks) * pipe->stick;
}

} // namespace

void fillPieces(const StudyContext& context, const Run& run, const Joints& joints,
                RunStudy& study) {
  if (!study.resolved || study.legs.empty()) return;
  Assembly assembly(context, run, study);
  assembly.addStart(joints.start);
  assembly.addBends();
  assembly.addParts();
  assembly.addBranches(joints.branches);
  assembly.addFinish(joints.end);
  assembly.cut();
  assembly.addDownLegs();
  assembly.buy();
}

} // namespace sump
