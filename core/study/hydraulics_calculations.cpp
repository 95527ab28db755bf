#include "core/study/hydraulics_parts.h"

namespace sump {

std::vector<Calculation> hydraulicsCalculations(const Plan&, const Study&) {
  return {};
}

} // namespace sump
