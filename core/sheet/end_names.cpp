#include "core/sheet/end_names.h"

#include "core/sheet/tags.h"
#include "core/study/connections.h"

namespace sump {

std::string runEndText(const Plan& plan, const Study& study, const Run& run, bool atStart) {
  if (const RunStudy* studied = study.run(run.id)) {
    for (const Connection& joint : connections(plan, run, *studied)) {
      if (joint.kind == ConnectionKind::Utility && joint.atStart == atStart)
        return objectName(joint.other, plan) + " (existing)";
    }
  }
  return endText(atStart ? run.from : run.to, plan);
}

} // namespace sump
