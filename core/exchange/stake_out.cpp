#include "core/exchange/stake_out.h"

namespace sump {

ListTable stakeOutTable(const Plan& plan, const Study& study) {
  const bool metric = plan.project.units == UnitSystem::Metric;
  const std::string unit = metric ? "m" : "ft";
  ListTable table{"Stake-out",
                  {"P (point)", "N (north, " + unit + ")", "E (east, " + unit + ")",
                   "Z (elevation, " + unit + ")", "D (description)"},
                  {}};
  const auto number = [&](double v) { return listNumber(metric ? v : v / kMetresPerFoot, 3); };
  for (const StakePoint& point : stakePoints(plan, study)) {
    table.rows.push_back({listNumber(static_cast<double>(table.rows.size()) + 1, 0),
                          number(point.at.y), number(point.at.x),
                          point.elevation ? number(inMetres(*point.elevation)) : listText(""),
                          listText(point.what)});
  }
  return table;
}

std::string stakeOutCsv(const Plan& plan, const Study& study) {
  return csvOf(stakeOutTable(plan, study));
}

} // namespace sump
