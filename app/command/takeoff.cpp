// `takeoff`: what to buy.

#include "app/command/open_plan.h"
#include "core/exchange/bill_of_materials.h"
#include "core/exchange/review_json.h"
#include "core/units/print.h"

#include <cmath>
#include <ostream>

namespace sump {

namespace {

std::string quantity(const QuantityLine& line, UnitSystem units) {
  if (line.category == "pipe") return printRunLength(line.net, units);
  return fixed(line.quantity, line.quantity == std::floor(line.quantity) ? 0 : 2);
}

std::string table(const Review& review) {
  const UnitSystem units = review.plan.project.units;
  std::vector<std::vector<std::string>> rows;
  for (const QuantityLine& line : review.study.takeOff) {
    rows.push_back({line.trade, line.category, line.description, line.size, quantity(line, units),
                    line.category == "pipe" ? printRunLength(line.buy, units) : "",
                    joined(line.runs, " ")});
  }
  return columns({"trade", "category", "description", "size", ">quantity", ">to buy", "from"},
                 rows);
}

int run(const QCommandLineParser& parsed, Streams streams) {
  const OpenedPlan opened = openPlan(parsed);
  if (parsed.isSet("json")) {
    streams.out << takeOffJson(opened.review);
  } else if (parsed.isSet("csv")) {
    streams.out << billOfMaterialsCsv(opened.review);
  } else {
    streams.out << table(opened.review);
  }
  return opened.status();
}

} // namespace

Command takeoffCommand() {
  return {"takeoff",
          "List pipe, fittings, valves, vaults and manways to buy.",
          "PLAN [options]",
          "  sumpwright takeoff samples/transit-depot.sump\n"
          "  sumpwright takeoff --csv samples/transit-depot.sump > bill-of-materials.csv\n",
          [] {
            return QList<QCommandLineOption>{jsonOption(),
                                             {"csv", "Write the bill of materials as CSV."},
                                             catalogOption(),
                                             profileOption()};
          },
          run};
}

} // namespace sump
