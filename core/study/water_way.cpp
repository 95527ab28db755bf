#include "core/study/water_way.h"

#include "core/plan/keys.h"
#include "core/study/leg_sizes.h"

namespace sump {

namespace {

/// Adds up loss coefficients and remembers what has none.
class Coefficients {
public:
  explicit Coefficients(const LossTable& table) : table_(table) {}

  double of(std::string_view key, const std::string& size) {
    const LossRow* row = table_.fitting(key);
    const auto k = row != nullptr ? table_.k(*row, size) : std::nullopt;
    if (!k) addNeeds(needs_, {"a loss coefficient of: " + std::string(key)});
    return k.value_or(0);
  }
  const Needs& needs() const { return needs_; }

private:
  const LossTable& table_;
  Needs needs_;
};

double endLoss(Coefficients& coefficients, EndFitting fitting, const std::string& size) {
  switch (fitting) {
  case EndFitting::Plain:
  case EndFitting::ScreenedVent:
    return 0;
  case EndFitting::Tee:
    return coefficients.of("tee-branch", size);
  case EndFitting::ElbowDown:
  case EndFitting::ElbowUp:
    return coefficients.of(key(FittingKind::Elbow90), size);
  case EndFitting::FootValve:
  case EndFitting::Strainer:
  case EndFitting::Eductor:
  case EndFitting::Cap:
    break;
  }
  return coefficients.of(key(fitting), size);
}

double entryLoss(Coefficients& coefficients, const Run& run) {
  if (run.from.kind == EndKind::Chamber) return coefficients.of("entry-inward", run.size);
  if (run.from.kind == EndKind::Run) return coefficients.of("tee-branch", run.size);
  return coefficients.of("entry-flush", run.size);
}

double partLosses(Coefficients& coefficients, const Run& run, int leg, const std::string& size) {
  double sum = 0;
  for (const InlinePart& part : run.parts) {
    // A reducer's own loss is small beside what its smaller bore costs; a pull box holds no water.
    const bool plain = part.kind == PartKind::Reducer || part.kind == PartKind::PullBox;
    if (part.leg == leg && !plain) sum += coefficients.of(key(part.kind), size);
  }
  return sum;
}

void addBends(Coefficients& coefficients, const RunStudy& study, WaterWay& way) {
  for (const Bend& bend : study.bends) {
    const auto point = static_cast<std::size_t>(bend.point);
    if (point >= study.legs.size()) continue;
    for (FittingKind kind : bend.fittings)
      way.losses[point] += coefficients.of(key(kind), study.legs[point].size);
  }
}

} // namespace

Decided<WaterWay> waterWay(const StudyContext& context, const Run& run, const RunStudy& study) {
  if (!study.resolved || study.legs.empty()) {
    return undecided<WaterWay>({"levels of every gravity run"});
  }
  Coefficients coefficients(context.catalog.losses);
  WaterWay way;
  for (const RunPoint& point : study.points)
    way.inverts.push_back(point.at.z);
  way.losses.assign(way.inverts.size(), 0);
  for (std::size_t i = 0; i < study.legs.size(); ++i) {
    const Leg& leg = study.legs[i];
    // Its smallest bore all along, on the safe side.
    const auto bore = smallestBore(context.catalog, run, i);
    if (!bore) return undecided<WaterWay>({"catalogue pipe of every gravity run"});
    way.legs.push_back({inMetres(leg.developed), inMetres(*bore),
                        partLosses(coefficients, run, static_cast<int>(i), leg.size)});
  }
  addBends(coefficients, study, way);
  way.losses.front() +=
      entryLoss(coefficients, run) + endLoss(coefficients, run.from.fitting, run.size);
  way.losses.back() += endLoss(coefficients, run.to.fitting, study.legs.back().size);
  if (run.to.kind == EndKind::Run) way.losses.back() += coefficients.of("tee-branch", run.size);
  if (!coefficients.needs().empty()) return undecided<WaterWay>(coefficients.needs());
  return way;
}

} // namespace sump
