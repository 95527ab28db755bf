#include "core/study/context.h"
namespace sump {
std::vector<Calculation> earthCalculations(const Plan&, const Study&) {
  return {};
}
} // namespace sump
