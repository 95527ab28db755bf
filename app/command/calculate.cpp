// `calculate`: how each number came about.

#include "app/command/open_plan.h"
#include "core/exchange/calculation_json.h"
#include "core/study/calculation_print.h"

#include <ostream>

namespace sump {

namespace {

int run(const QCommandLineParser& parsed, Streams streams) {
  const OpenedPlan opened = openPlan(parsed);
  const Plan& plan = opened.review.plan;
  const std::vector<Calculation> all = calculations(plan, opened.review.study);
  if (parsed.isSet("json")) {
    streams.out << calculationJson(all);
  } else {
    streams.out << calculationText(all, plan.project.units)
                << "\nThese are screening calculations. The adopted local code, the authority "
                   "having jurisdiction and licensed designers govern.\n";
  }
  return opened.status();
}

} // namespace

Command calculateCommand() {
  return {"calculate",
          "Show how each number came about: formula, inputs, steps, result, source.",
          "PLAN [options]",
          "  sumpwright calculate samples/transit-depot.sump\n"
          "  sumpwright calculate --json samples/boatyard-pad.sump > calculations.json\n",
          [] {
            return QList<QCommandLineOption>{jsonOption(), catalogOption(), profileOption()};
          },
          run};
}

} // namespace sump
