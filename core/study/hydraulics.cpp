#include "core/study/context.h"

#include <algorithm>

namespace sump {

namespace {

template <class Row> const Row* ofRun(const std::vector<Row>& rows, const Id& id) {
  const auto found = std::ranges::find(rows, id, &Row::run);
  return found == rows.end() ? nullptr : &*found;
}

} // namespace

const PressureRun* HydraulicsStudy::run(const Id& id) const {
  return ofRun(runs, id);
}
const SuctionStudy* HydraulicsStudy::suction(const Id& id) const {
  return ofRun(suctions, id);
}

void fillHydraulics(const StudyContext&, Study&) {}

std::vector<Calculation> hydraulicsCalculations(const Plan&, const Study&) {
  return {};
}

} // namespace sump
