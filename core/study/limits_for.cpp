#include "core/study/limits_for.h"

namespace sump {

Limits limitsFor(const Plan& plan, const Catalog& catalog) {
  return catalog.limitsOf(plan.project.profile).with(plan.limits);
}

} // namespace sump
