#include "core/exchange/change_lists.h"

#include "core/units/print.h"

#include <nlohmann/json.hpp>

#include <cmath>

namespace sump {

namespace {

using Json = nlohmann::ordered_json;

/// Nanometre rounding, so that 3.6576000000000004 is not printed.
double filedNumber(double v) {
  return std::round(v * 1e9) / 1e9;
}

Json amountJson(const std::optional<double>& amount) {
  return amount ? Json(filedNumber(*amount)) : Json(nullptr);
}

Json extentJson(const std::optional<Box>& box) {
  if (!box) return nullptr;
  const auto point = [](Point2 p) { return Json::array({filedNumber(p.x), filedNumber(p.y)}); };
  return {{"low", point(box->low)}, {"high", point(box->high)}};
}

Json changeJson(const PlanChange& change) {
  return {{"kind", name(change.kind)},
          {"object", change.object},
          {"part", change.part},
          {"noun", change.noun},
          {"called", change.called},
          {"what", change.what},
          {"before", change.before},
          {"after", change.after},
          {"difference", change.difference},
          {"extent", extentJson(change.extent)}};
}

Json billJson(const BillChange& change) {
  return {{"trade", change.trade},
          {"key", change.key},
          {"description", change.description},
          {"size", change.size},
          {"before", amountJson(change.before)},
          {"after", amountJson(change.after)},
          {"difference", amountJson(change.difference())},
          {"unit", change.unit}};
}

ListCell amountCell(const std::optional<double>& amount, const BillChange& change) {
  return amount ? listNumber(*amount, change.decimals) : listText("?");
}

} // namespace

std::string amountText(const std::optional<double>& amount, const BillChange& change) {
  return amount ? fixed(*amount, change.decimals) : "?";
}

std::string differenceText(const BillChange& change) {
  const auto by = change.difference();
  return by && *by > 0 ? "+" + fixed(*by, change.decimals) : amountText(by, change);
}

ListTable changeTable(const PlanComparison& comparison) {
  ListTable table{
      "Changes", {"Kind", "Object", "Id", "Part", "What", "Before", "After", "Difference"}, {}};
  for (const PlanChange& change : comparison.changes) {
    table.rows.push_back(
        {listText(std::string(name(change.kind))),
         listText(objectWords(change)),
         listText(change.object), listText(change.part), listText(change.what),
         listText(change.before), listText(change.after), listText(change.difference)});
  }
  return table;
}

ListTable billChangeTable(const PlanComparison& comparison) {
  ListTable table{"Bill changes",
                  {"Trade", "Key", "Description", "Size", "Before", "After", "Difference", "Unit"},
                  {}};
  for (const BillChange& change : comparison.bill) {
    table.rows.push_back({listText(change.trade), listText(change.key),
                          listText(change.description), listText(change.size),
                          amountCell(change.before, change), amountCell(change.after, change),
                          amountCell(change.difference(), change), listText(change.unit)});
  }
  return table;
}

std::string comparisonCsv(const PlanComparison& comparison) {
  return csvOf(changeTable(comparison)) + "\r\n" + csvOf(billChangeTable(comparison));
}

std::string comparisonJson(const PlanComparison& comparison) {
  Json root = {
      {"earlier", comparison.earlier}, {"changes", Json::array()}, {"bill", Json::array()}};
  for (const PlanChange& change : comparison.changes)
    root["changes"].push_back(changeJson(change));
  for (const BillChange& change : comparison.bill)
    root["bill"].push_back(billJson(change));
  return root.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace sump
