#include "core/study/context.h"

namespace sump {

void fillEarth(const StudyContext&, Study&) {}

std::vector<Calculation> earthCalculations(const Plan&, const Study&) {
  return {};
}

} // namespace sump
