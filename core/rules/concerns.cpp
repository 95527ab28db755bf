#include "core/rules/concerns.h"

#include <algorithm>

namespace sump {

namespace {

void addService(std::vector<Service>& services, Service service) {
  if (std::ranges::find(services, service) == services.end()) services.push_back(service);
}

Trade tradeOf(Service service) {
  return isConduit(service) ? Trade::Electrical : Trade::Plumbing;
}

} // namespace

std::string_view name(Trade trade) {
  switch (trade) {
  case Trade::General:
    return "general";
  case Trade::SiteWork:
    return "site work";
  case Trade::Plumbing:
    return "plumbing";
  case Trade::Electrical:
    return "electrical";
  }
  return {};
}

void addConcerns(const Locator& locator, Trade ofRule, Finding& finding) {
  for (const Id& id : finding.objects) {
    if (const Run* run = locator.run(id)) addService(finding.services, run->service);
    if (const Port* port = locator.port(id)) addService(finding.services, port->service);
  }
  if (const auto service = serviceFromKey(finding.which)) addService(finding.services, *service);
  finding.trade = ofRule;
  if (ofRule != Trade::General || finding.services.empty()) return;
  const Trade first = tradeOf(finding.services.front());
  const bool alike =
      std::ranges::all_of(finding.services, [&](Service s) { return tradeOf(s) == first; });
  if (alike) finding.trade = first;
}

} // namespace sump
