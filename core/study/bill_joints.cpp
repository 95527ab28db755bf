// Solvent joints, and the cement and primer that they take.

#include "core/study/bill_parts.h"
#include "core/study/connections.h"
#include "core/study/context.h"
#include "core/study/line_ends.h"
#include "core/units/print.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

/// Nothing is cemented to it: no fitting, and nothing there already that it joins.
bool isBare(const BillContext& context, const Run& run, const RunStudy& study, bool atStart) {
  const RunEnd& end = atStart ? run.from : run.to;
  if (end.fitting != EndFitting::Plain) return false;
  if (end.kind != EndKind::Free && end.kind != EndKind::Chamber) return false;
  return std::ranges::none_of(connections(context.plan, run, study),
                              [&](const Connection& c) { return c.atStart == atStart; });
}

/// Does another run's end sit on this one at such a place?
bool branchesAt(const Plan& plan, const Id& run, const std::vector<Point3>& path, Point2 place) {
  constexpr double kAtEnd = 1e-3; // m
  for (const Run& other : plan.runs) {
    for (const RunEnd* end : {&other.from, &other.to}) {
      if (end->kind != EndKind::Run || end->target != run) continue;
      const auto near = nearestPlace(path, end->at);
      if (near && distance(flat(near->at), place) < kAtEnd) return true;
    }
  }
  return false;
}

/// Sizes of the tees that branches have at bare ends of this run: their far arm stays open.
std::vector<std::string> openTees(const BillContext& context, const Run& run,
                                  const RunStudy& study) {
  std::vector<Point3> path;
  for (const RunPoint& point : study.points)
    path.push_back(point.at);
  std::vector<std::string> open;
  for (const bool atStart : {true, false}) {
    const Point2 place = flat(atStart ? path.front() : path.back());
    if (isBare(context, run, study, atStart) && branchesAt(context.plan, run.id, path, place))
      open.push_back(atStart ? run.size : sizeAt(run, study.legs.size(), 0));
  }
  return open;
}

/// Sockets of an item that pipe is cemented into, by nominal size: `6 x 4` has one of the second
/// size. What a run ends with is cemented to that run alone: the other arms of a tee or an elbow in
/// a vault stay open.
std::vector<std::pair<std::string, int>>
socketsBySize(const RunItem& item, const Supplies& supplies, std::vector<std::string>& open) {
  const int each = item.why == "end" ? 1 : supplies.socketsOf(item.key);
  int sockets = each * item.count;
  const std::size_t by = item.size.find(" x ");
  const std::string size = item.size.substr(0, by);
  if (item.why == "branch") {
    const auto here = std::ranges::stable_partition(
        open, [&size](const std::string& tee) { return tee != size; });
    const int arms = std::min(item.count, static_cast<int>(here.size()));
    sockets -= arms;
    open.erase(here.begin(), here.begin() + arms);
  }
  if (by == std::string::npos) return {{item.size, sockets}};
  return {{size, sockets - item.count}, {item.size.substr(by + 3), item.count}};
}

/// Joints between the sticks of one piece: by a coupling, which is an item, or by the bell.
int bellsIn(const PipePiece& piece, const PipeProduct& pipe) {
  if (!pipe.belledEnd || inMetres(piece.cut) <= 0) return 0;
  return std::max(0, static_cast<int>(std::ceil(piece.cut / pipe.stick - 1e-6)) - 1);
}

/// `whole cans of 500 mL`, `whole cans of 1 pint`.
std::string canText(const Supplies& supplies, UnitSystem units) {
  const double can = supplies.canOf(units).value();
  if (units == UnitSystem::Metric) return "whole cans of " + fixed(can * 1e6, 0) + " mL";
  return can < gallons(0.25).value() ? "whole cans of 1 pint" : "whole cans of 1 quart";
}

class JointCounter {
public:
  JointCounter(BillMaker& maker, const Run& run, const PipeProduct& pipe)
      : maker_(maker), run_(run), trade_(facts(run.service).trade),
        conduit_(pipe.joining == Joining::Bell) {}

  void count(const std::string& size, int joints) {
    if (joints == 0) return;
    BillLine like = billLine(trade_, "joint", conduit_ ? "conduit-joint" : "solvent-joint",
                             conduit_ ? "Solvent joint of conduit" : "Solvent joint", size);
    like.bought = false;
    like.note = "sockets that pipe is cemented into; open arms in vaults are none";
    BillMaker::add(maker_.line(like), run_.id, joints);
    pour(size, joints);
  }

private:
  void pour(const std::string& size, int joints);
  BillLine& can(const char* key, const char* name) {
    const BillContext& context = maker_.context();
    BillLine like = billLine(trade_, "cement", key, name, "", BillUnit::Liquid);
    like.note = canText(context.supplies, context.plan.project.units);
    return maker_.line(like);
  }

  BillMaker& maker_;
  const Run& run_;
  std::string trade_;
  bool conduit_;
};

void JointCounter::pour(const std::string& size, int joints) {
  const Supplies& supplies = maker_.context().supplies;
  const auto perQuart = supplies.jointsPerQuartOf(size);
  BillLine& cement = conduit_
                         ? can("conduit-cement", "Cement for PVC conduit")
                         : can("pvc-cement", "Solvent cement for PVC, heavy bodied (ASTM D2564)");
  if (!perQuart) {
    cement.net = undecided<double>({"joints a quart in size " + size});
    return;
  }
  const double cubicMetres = joints / *perQuart * gallons(0.25).value();
  BillMaker::add(cement, run_.id, cubicMetres);
  if (conduit_) return;
  BillMaker::add(can("pvc-primer", "Primer for PVC (ASTM F656)"), run_.id,
                 cubicMetres * supplies.primerShare);
}

} // namespace

void addJoints(BillMaker& maker) {
  const BillContext& context = maker.context();
  for (std::size_t i = 0; i < context.study.runs.size(); ++i) {
    const Run& run = context.plan.runs[i];
    const RunStudy& study = context.study.runs[i];
    const PipeProduct* pipe = context.catalog.pipe(run.pipe);
    if (pipe == nullptr || !study.resolved) continue;
    const bool welded = pipe->joining == Joining::SolventSocket || pipe->joining == Joining::Bell;
    if (!welded) continue;
    JointCounter counter(maker, run, *pipe);
    std::vector<std::string> open = openTees(context, run, study);
    for (const RunItem& item : study.items) {
      for (const auto& [size, sockets] : socketsBySize(item, context.supplies, open))
        counter.count(size, sockets);
    }
    for (const LineItem& end : conduitEnds(run, study))
      counter.count(end.size, context.supplies.socketsOf(end.key));
    for (const PipePiece& piece : study.pieces) {
      counter.count(piece.size, bellsIn(piece, *pipe));
      if (piece.downLeg && inMetres(piece.cut) > 0) counter.count(piece.size, 1);
    }
  }
}

} // namespace sump
