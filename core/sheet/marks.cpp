#include "core/sheet/marks.h"

#include "core/sheet/mark_pen.h"

#include <algorithm>

namespace sump {

std::vector<Mark> planMarks(const Plan& plan, const Study& study) {
  std::vector<Mark> marks;
  markSite(plan, marks);
  markRooms(plan, marks);
  markVaults(plan, study, marks);
  markRuns(plan, study, marks);
  markNotes(plan, marks);
  std::stable_sort(marks.begin(), marks.end(),
                   [](const Mark& a, const Mark& b) { return a.layer < b.layer; });
  return marks;
}

} // namespace sump
