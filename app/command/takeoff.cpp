// `takeoff`: what to buy, and what to saw.

#include "app/command/open_plan.h"
#include "core/exchange/bill_of_materials.h"
#include "core/exchange/cost_words.h"
#include "core/exchange/cutting_lists.h"
#include "core/exchange/review_json.h"
#include "core/exchange/workbook.h"
#include "core/units/parse.h"
#include "core/units/print.h"

#include <ostream>
#include <stdexcept>

namespace sump {

namespace {

std::string fromText(const BillLine& line) {
  std::string text;
  for (const BillShare& share : line.shares)
    text += (text.empty() ? "" : " ") + share.from;
  return text;
}

std::string billText(const Review& review, const BuyList& buy) {
  const UnitSystem units = review.plan.project.units;
  std::vector<std::string> headings = {"trade",     "category", "description", "size",
                                       ">in place", ">to buy",  ">sticks"};
  if (buy.costs) headings.push_back(">cost");
  headings.push_back("from");
  std::vector<std::vector<std::string>> rows;
  for (std::size_t i = 0; i < buy.bill.lines.size(); ++i) {
    const BillLine& line = buy.bill.lines[i];
    std::vector<std::string> row = {line.trade,
                                    line.category,
                                    line.description,
                                    line.size,
                                    printAmount(line.net, line.unit, units),
                                    printOrder(line, units),
                                    line.sticks > 0 ? std::to_string(line.sticks) : ""};
    if (buy.costs) {
      const auto& cost = buy.costs->lines[i];
      row.push_back(cost ? grouped(cost->cost, 2) : line.bought ? "?" : "");
    }
    row.push_back(fromText(line));
    rows.push_back(std::move(row));
  }
  return columns(headings, rows);
}

std::string costText(const BuyList& buy) {
  const CostWords words = costWords(buy);
  std::string text = "\n";
  for (const std::string& trade : words.byTrade)
    text += trade + "\n";
  text += "Total of what has a price: " + words.total + "\n";
  if (words.missing.empty()) return text;
  text += "Without a price or an amount, " + std::to_string(words.missing.size()) + ":";
  for (std::size_t i = 0; i < words.missing.size(); ++i)
    text += (i == 0 ? " " : ", ") + words.missing[i];
  return text + "\n";
}

std::string cutsText(const Review& review, const CuttingList& cutting) {
  const UnitSystem units = review.plan.project.units;
  std::string text;
  for (const CuttingGroup& group : cutting.groups) {
    text += group.name + " " + group.size + "\": " + std::to_string(group.sticks.size()) + " x " +
            printLength(group.stick, units) + " (" + provenText(group) + ")\n";
    int number = 0;
    for (const CutStick& stick : group.sticks) {
      text += "  " + std::to_string(++number) + ":";
      for (std::size_t cut : stick.cuts) {
        text +=
            " " + cutMark(group.cuts[cut]) + " = " + printCut(group.cuts[cut].length, units) + ",";
      }
      text += " left " + printCut(stick.offcut, units) + "\n";
    }
  }
  return text;
}

std::optional<Length> kerfOf(const QCommandLineParser& parsed, UnitSystem units) {
  if (!parsed.isSet("kerf")) return std::nullopt;
  const std::string text = parsed.value("kerf").toStdString();
  const auto kerf = parseLength(text, units);
  if (!kerf || inMetres(*kerf.value) < 0 || inMetres(*kerf.value) > 0.05) {
    throw std::invalid_argument("--kerf '" + text +
                                "' is no width of a saw's cut; write it like 1/8 in or 3 mm.");
  }
  return *kerf.value;
}

void writeText(const QCommandLineParser& parsed, const OpenedPlan& opened, const BuyList& buy,
               std::ostream& out) {
  if (parsed.isSet("json")) {
    out << takeOffJson(buy);
  } else if (parsed.isSet("cuts")) {
    out << (parsed.isSet("csv") ? cuttingCsv(opened.review, buy.cutting)
                                : cutsText(opened.review, buy.cutting));
  } else if (parsed.isSet("csv")) {
    out << billOfMaterialsCsv(opened.review, buy);
  } else {
    out << billText(opened.review, buy);
    if (buy.costs) out << costText(buy);
    out << "\n";
    for (const std::string& note : buy.bill.notes)
      out << note << "\n";
  }
}

int run(const QCommandLineParser& parsed, Streams streams) {
  const OpenedPlan opened = openPlan(parsed);
  const Supplies supplies = suppliesOf(parsed);
  std::optional<PriceList> prices;
  if (parsed.isSet("prices")) prices = readPrices(parsed.value("prices").toStdString());
  const Project& project = opened.review.plan.project;
  const BuyList buy =
      buyList(opened.review, {&opened.catalog, &supplies, prices ? &*prices : nullptr,
                              kerfOf(parsed, project.units)});
  if (parsed.isSet("xlsx")) {
    writeWorkbook(buyTables(opened.review, buy), project.title, parsed.value("xlsx").toStdString());
    streams.out << parsed.value("xlsx").toStdString() << "\n";
  } else {
    writeText(parsed, opened, buy, streams.out);
  }
  return opened.status();
}

QList<QCommandLineOption> options() {
  return {jsonOption(),
          {"csv", "Write the bill of materials as CSV; with --cuts the cutting list."},
          {"xlsx", "Write all lists into this workbook.", "FILE"},
          {"prices", "Join a price list in CSV: item,size,unit,price,currency.", "FILE"},
          {"cuts", "List which cuts come out of which stick."},
          {"kerf", "Width of the saw's cut; default the plan's limit, 1/8 in.", "LENGTH"},
          catalogOption(),
          profileOption()};
}

} // namespace

Command takeoffCommand() {
  return {"takeoff",
          "List what to buy, what it costs and how pipe is cut.",
          "PLAN [options]",
          "  sumpwright takeoff samples/transit-depot.sump\n"
          "  sumpwright takeoff --csv samples/transit-depot.sump > bill-of-materials.csv\n"
          "  sumpwright takeoff --prices own.csv --xlsx bill.xlsx samples/transit-depot.sump\n"
          "  sumpwright takeoff --cuts --kerf '1/8 in' samples/transit-depot.sump\n",
          options,
          run};
}

} // namespace sump
