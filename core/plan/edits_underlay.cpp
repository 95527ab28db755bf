#include "core/plan/edits_underlay.h"

namespace sump {

Plan scaleUnderlay(const Plan& plan, std::string_view id, Point2 first, Point2 second,
                   Length apart) {
  const Underlay* found = plan.underlays.find(id);
  const double now = distance(first, second);
  if (found == nullptr || !(now > 0) || !(inMetres(apart) > 0)) return plan;
  const double factor = inMetres(apart) / now;
  Underlay picture = *found;
  picture.at = first + (picture.at - first) * factor;
  picture.width = picture.width * factor;
  picture.height = picture.height * factor;
  Plan next = plan;
  next.underlays.put(std::move(picture));
  return next;
}

} // namespace sump
