// Losses of one run at one flow: Darcy-Weisbach in its pipe, K of its fittings (Crane TP-410).

#include "core/study/hydraulics_parts.h"

#include "core/study/friction.h"
#include "core/study/leg_sizes.h"

#include <algorithm>

namespace sump {

namespace {

class LossSum {
public:
  LossSum(const StudyContext& context, const WaterStudy& water, const Run& run,
          const RunStudy& study, Flow flow, const LossTrial& trial)
      : context_(context), water_(water), run_(run), study_(study), flow_(flow), trial_(trial),
        table_(context.catalog.losses) {}

  Decided<RunLoss> take();

private:
  void pipe();
  void friction(const std::string& drawn, Length length);
  void items();
  void end(const RunEnd& end, const std::string& size, bool start);
  void fitting(std::string_view key, const std::string& drawn, int count);
  void add(FittingLoss loss);
  void reducer(const std::string& key, int count);
  void strainer();
  void need(const std::string& what) { addNeeds(needs_, {what}); }
  const PipeSize* bore(const std::string& drawn);
  Length straightLength() const {
    return metres(distance(study_.points.front().at, study_.points.back().at));
  }
  std::string lastSize() const { return sizeAt(run_, study_.legs.size(), 0); }

  const StudyContext& context_;
  const WaterStudy& water_;
  const Run& run_;
  const RunStudy& study_;
  Flow flow_;
  const LossTrial& trial_;
  const LossTable& table_;
  RunLoss loss_;
  Needs needs_;
};

/// The drawn size, or as many above it as are tried.
const PipeSize* LossSum::bore(const std::string& drawn) {
  const PipeProduct* product = context_.catalog.pipe(run_.pipe);
  if (product == nullptr) return nullptr;
  const auto found = std::ranges::find(product->sizes, drawn, &PipeSize::nominal);
  if (product->sizes.end() - found <= trial_.stepsUp) return nullptr;
  return &found[trial_.stepsUp];
}

void LossSum::friction(const std::string& drawn, Length length) {
  const PipeSize* size = bore(drawn);
  const PipeSurface* surface = table_.surface(run_.pipe);
  if (size == nullptr) return need("bore of the pipe " + run_.pipe + " " + drawn);
  if (surface == nullptr) return need("roughness of the pipe " + run_.pipe);
  if (!water_.density) return addNeeds(needs_, water_.density.needs);
  if (!water_.viscosity) return addNeeds(needs_, water_.viscosity.needs);
  PipeLoss row;
  if (!trial_.sumsOnly) row.size = size->nominal;
  row.inside = size->inside;
  row.length = length;
  row.velocity = velocityIn(flow_, size->inside);
  row.reynolds = reynoldsNumber(row.velocity, size->inside, *water_.density, *water_.viscosity);
  row.relativeRoughness = (surface->roughness / size->inside).value();
  row.factor = frictionFactor(row.reynolds, row.relativeRoughness);
  row.loss = darcyLoss(row.factor, length, size->inside, row.velocity);
  row.hazenWilliams = hazenWilliamsLoss(flow_, size->inside, surface->hazenWilliams, length);
  loss_.pipeSum += row.loss;
  loss_.hazenWilliamsSum += row.hazenWilliams;
  loss_.fastest = std::max(loss_.fastest, row.velocity);
  loss_.velocityHead = velocityHead(row.velocity);
  if (!trial_.sumsOnly) loss_.pipe.push_back(std::move(row));
}

void LossSum::pipe() {
  if (trial_.straight) {
    return friction(run_.size, straightLength() + trial_.moreLength);
  }
  std::vector<std::pair<std::string, Length>> lengths;
  for (std::size_t leg = 0; leg < study_.legs.size(); ++leg) {
    for (const SizedStretch& stretch : legSizes(run_, leg)) {
      if (lengths.empty() || lengths.back().first != stretch.size)
        lengths.emplace_back(stretch.size, metres(0));
      lengths.back().second += stretch.share * study_.legs[leg].developed;
    }
  }
  if (!lengths.empty()) lengths.back().second += trial_.moreLength;
  for (const auto& [size, length] : lengths)
    friction(size, length);
}

void LossSum::add(FittingLoss loss) {
  loss_.fittingSum += loss.loss;
  if (!trial_.sumsOnly) loss_.fittings.push_back(std::move(loss));
}

void LossSum::fitting(std::string_view key, const std::string& drawn, int count) {
  const LossRow* row = table_.fitting(key);
  const PipeSize* size = bore(drawn);
  if (row == nullptr) return need("loss of " + std::string(key));
  if (size == nullptr) return need("bore of the pipe " + run_.pipe + " " + drawn);
  FittingLoss loss;
  if (!trial_.sumsOnly) {
    loss = {row->key, row->name, size->nominal, count, 0, {}, {}, row->source.citation};
  }
  loss.velocity = velocityIn(flow_, size->inside);
  if (row->head) {
    loss.loss = static_cast<double>(count) * *row->head;
  } else {
    const auto k = table_.k(*row, size->nominal);
    if (!k) return need("loss coefficient of " + row->key + " " + size->nominal);
    loss.k = *k;
    loss.loss = count * *k * velocityHead(loss.velocity);
  }
  add(std::move(loss));
}

/// Sudden change, on the safe side: (1 - b^2)^2 into the larger bore (Borda-Carnot), 0.5 (1 - b^2)
/// into the smaller (Crane TP-410, from memory), b the ratio of the bores, K with the smaller one.
void LossSum::reducer(const std::string& key, int count) {
  const auto cross = key.find(" x ");
  const PipeSize* before = bore(key.substr(0, cross));
  const PipeSize* after = cross == std::string::npos ? nullptr : bore(key.substr(cross + 3));
  if (before == nullptr || after == nullptr) return need("bores of the reducer " + key);
  const double ratio =
      (std::min(before->inside, after->inside) / std::max(before->inside, after->inside)).value();
  const double rest = 1 - ratio * ratio;
  FittingLoss loss{
      "reducer", "Reducer",
      key,       count,
      0,         {},
      {},        "sudden enlargement (Borda-Carnot) or contraction (Crane TP-410), from memory"};
  loss.k = after->inside > before->inside ? rest * rest : 0.5 * rest;
  loss.velocity = velocityIn(flow_, std::min(before->inside, after->inside));
  loss.loss = count * loss.k * velocityHead(loss.velocity);
  add(std::move(loss));
}

void LossSum::items() {
  const bool suction = facts(run_.service).drive == Drive::Suction;
  for (const RunItem& item : study_.items) {
    const std::string size = item.size.substr(0, item.size.find(" x "));
    if (trial_.straight && (item.why == "bend" || item.why == "stick")) continue;
    if (item.key == "reducer") {
      reducer(item.size, item.count);
    } else if (item.key == "tee" && item.why == "end") {
      fitting("tee-branch", size, item.count);
    } else if (item.key == "strainer" && !suction) {
      need("loss of the strainer in " + run_.id);
    } else if (item.key == "air-gap") {
      need("the two sides of the air gap in " + run_.id + " worked out apart");
    } else if (item.key != "strainer" && item.key != "eductor") {
      fitting(item.key, size, item.count);
    }
  }
  if (trial_.moreElbows > 0) fitting("elbow-90", lastSize(), trial_.moreElbows);
  const PipeProduct* pipe = context_.catalog.pipe(run_.pipe);
  if (!trial_.straight || pipe == nullptr) return;
  // As many as pipe of that length is joined by.
  const int couplings = couplingsIn(straightLength(), *pipe);
  if (couplings > 0) fitting("coupling", run_.size, couplings);
}

/// A foot valve's K holds its entry; a port, a supply and a wash inlet are reckoned by pressure.
void LossSum::end(const RunEnd& end, const std::string& size, bool start) {
  const bool open = end.kind == EndKind::Chamber || end.kind == EndKind::Basin;
  if (end.kind == EndKind::Run) return fitting("tee-branch", size, 1);
  if (!open || end.fitting == EndFitting::FootValve || end.fitting == EndFitting::Eductor) return;
  fitting(start ? "entry-inward" : "exit", size, 1);
}

/// The pump's strainer stands at the suction port, drawn or not.
void LossSum::strainer() {
  if (facts(run_.service).drive != Drive::Suction) return;
  const auto& clean = context_.plan.basis.pump.strainerLoss;
  if (!clean) return need("loss of the clean strainer");
  loss_.strainer = *clean;
}

Decided<RunLoss> LossSum::take() {
  if (!study_.resolved || study_.legs.empty()) need("levels of the run " + run_.id);
  if (!needs_.empty()) return undecided<RunLoss>(needs_);
  pipe();
  items();
  end(run_.from, run_.size, true);
  end(run_.to, lastSize(), false);
  strainer();
  if (!needs_.empty()) return undecided<RunLoss>(needs_);
  loss_.total = loss_.pipeSum + loss_.fittingSum + loss_.strainer;
  loss_.dirty =
      loss_.total + loss_.strainer * (context_.limits.number("suction.strainer-dirt") - 1);
  return loss_;
}

} // namespace

Decided<RunLoss> runLoss(const StudyContext& context, const WaterStudy& water, const Run& run,
                         const RunStudy& study, Flow flow, const LossTrial& trial) {
  return LossSum(context, water, run, study, flow, trial).take();
}

} // namespace sump
