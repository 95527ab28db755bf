// Where runs join other runs: a tee on the run that is joined, and what that tee takes out of the
// one that joins it.

#include "core/study/context.h"

namespace sump {

namespace {

std::vector<Point3> path(const RunStudy& run) {
  std::vector<Point3> points;
  points.reserve(run.points.size());
  for (const RunPoint& point : run.points)
    points.push_back(point.at);
  return points;
}

class JointFinder {
public:
  JointFinder(const StudyContext& context, const std::vector<RunStudy>& runs)
      : context_(context), runs_(runs), found_(runs.size()) {}

  void join(std::size_t run) {
    const Run& branching = context_.plan.runs[run];
    found_[run].start = tee(branching.from, branching.size);
    found_[run].end = tee(branching.to, sizeAt(branching, runs_[run].legs.size(), 0));
  }
  std::vector<Joints> take() { return std::move(found_); }

private:
  /// Adds the tee that this end needs.
  RunJoint tee(const RunEnd& end, const std::string& branchSize);

  const StudyContext& context_;
  const std::vector<RunStudy>& runs_;
  std::vector<Joints> found_;
};

RunJoint JointFinder::tee(const RunEnd& end, const std::string& branchSize) {
  if (end.kind != EndKind::Run) return {};
  const auto target = context_.locator.find(end.target);
  if (!target || target->kind != ObjectKind::Run) return {};
  const RunStudy& joined = runs_[target->index];
  const auto place = nearestPlace(path(joined), end.at);
  if (!place) return {};
  const Run& run = context_.plan.runs[target->index];
  const double station = std::lerp(joined.points[place->leg].station,
                                   joined.points[place->leg + 1].station, place->along);
  const std::string size = sizeAt(run, place->leg, place->along);
  found_[target->index].branches.push_back({station, size, branchSize});
  RunJoint joint;
  if (const FittingFamily* family = context_.catalog.fittingsFor(run.pipe)) {
    joint.takeOut = family->takeOut(FittingKind::Tee, size).value_or(metres(0));
  }
  if (const PipeSize* pipe = context_.catalog.pipeSize(run.pipe, size)) joint.bore = pipe->inside;
  return joint;
}

} // namespace

std::vector<Joints> joints(const StudyContext& context, const std::vector<RunStudy>& runs) {
  JointFinder finder(context, runs);
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (runs[i].resolved) finder.join(i);
  }
  return finder.take();
}

} // namespace sump
