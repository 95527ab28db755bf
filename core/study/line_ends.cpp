#include "core/study/line_ends.h"

#include "core/plan/service.h"
#include "core/study/access_risers.h"
#include "core/study/context.h"

namespace sump {

namespace {

/// Conduit enters a panel through an adapter with a bushing, and ends over the water of a vault in
/// a bell, so that no edge cuts the cable (NEC 352.46 and 300.5(H), from memory).
void addConduitEnd(const RunEnd& end, const std::string& size, std::vector<LineItem>& items) {
  if (end.kind == EndKind::Port || end.kind == EndKind::Wash) {
    items.push_back({"fitting", "terminal-adapter",
                     "Terminal adapter with locknut and insulating bushing", size, ""});
  } else if (end.kind == EndKind::Chamber) {
    items.push_back({"fitting", "end-bell", "End bell of conduit", size, ""});
  }
}

bool endsInVault(const Run& run) {
  return run.from.kind == EndKind::Chamber || run.to.kind == EndKind::Chamber;
}

} // namespace

bool isBySupplier(std::string_view key) {
  return key == "eductor" || key == "float-switch";
}

std::vector<LineItem> conduitEnds(const Run& run, const RunStudy& line) {
  std::vector<LineItem> items;
  if (!isConduit(run.service)) return items;
  addConduitEnd(run.from, run.size, items);
  addConduitEnd(run.to, sizeAt(run, line.legs.size(), 0), items);
  return items;
}

std::vector<LineItem> lineItems(const Plan& plan, const Study& study, const Run& run,
                                const RunStudy& line) {
  std::vector<LineItem> items = conduitEnds(run, line);
  for (std::size_t i = 0, ends = items.size(); i < ends; ++i) {
    if (items[i].key != "end-bell") continue;
    items.push_back(
        {"part", "conduit-seal", "Seal in conduit that comes from a vault", items[i].size, ""});
  }
  if (run.service == Service::FloatConduit && endsInVault(run)) {
    items.push_back({"part", "float-switch", "Low-level float switch with its cable", "",
                     std::string(kBySupplier)});
  }
  for (const AccessRiser& riser : accessRisers(plan, study, line)) {
    if (riser.kind != PartKind::BackwaterValve) continue;
    items.push_back({"part", "access-box", "Access box with cover to grade, over backwater valve",
                     riser.size, riser.traffic ? "Traffic rated" : "Light duty"});
  }
  return items;
}

} // namespace sump
