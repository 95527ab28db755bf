// `stakeout`: points for whoever stakes the job out.

#include "app/command/open_plan.h"
#include "core/exchange/plan_file.h"
#include "core/exchange/stake_out.h"

#include <ostream>

namespace sump {

namespace {

int run(const QCommandLineParser& parsed, Streams streams) {
  const OpenedPlan opened = openPlan(parsed);
  const std::string csv = stakeOutCsv(opened.review.plan, opened.review.study);
  if (parsed.isSet("out")) {
    writeFileAtomically(parsed.value("out").toStdString(), csv);
    streams.out << parsed.value("out").toStdString() << "\n";
  } else {
    streams.out << csv;
  }
  return opened.status();
}

} // namespace

Command stakeoutCommand() {
  return {"stakeout",
          "List points to stake out as CSV: point, north, east, elevation, description.",
          "PLAN [options]",
          "  sumpwright stakeout samples/transit-depot.sump > stake-out.csv\n",
          [] {
            return QList<QCommandLineOption>{
                {"out", "Write into this file instead.", "FILE"}, catalogOption(), profileOption()};
          },
          run};
}

} // namespace sump
