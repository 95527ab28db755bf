#include "core/study/context.h"

namespace sump {

void fillHydraulics(const StudyContext&, Study&) {}

std::vector<Calculation> hydraulicsCalculations(const Plan&, const Study&) {
  return {};
}

} // namespace sump
