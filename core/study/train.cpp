#include "core/study/context.h"

namespace sump {

void fillTrain(const StudyContext&, Study&) {}

std::vector<Calculation> trainCalculations(const Plan&, const Study&) {
  return {};
}

} // namespace sump
