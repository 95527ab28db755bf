// `compare`: what changed between an earlier plan and a later one.

#include "app/command/open_plan.h"
#include "app/paint/paint.h"
#include "core/exchange/change_lists.h"
#include "core/exchange/compare_plans.h"
#include "core/exchange/plan_file.h"
#include "core/sheet/compose.h"

#include <ostream>
#include <stdexcept>

namespace sump {

namespace {

std::string changesText(const PlanComparison& comparison) {
  if (comparison.changes.empty()) return "The plans are alike.\n";
  std::vector<std::vector<std::string>> rows;
  for (const PlanChange& change : comparison.changes) {
    rows.push_back({std::string(name(change.kind)), subject(change), change.before, change.after,
                    change.difference});
  }
  return columns({"change", "what", "before", "after", "difference"}, rows);
}

std::string billText(const PlanComparison& comparison) {
  if (comparison.bill.empty()) return "Nothing to buy changed.\n";
  std::vector<std::vector<std::string>> rows;
  for (const BillChange& change : comparison.bill) {
    rows.push_back({change.trade, change.description, change.size,
                    amountText(change.before, change), amountText(change.after, change),
                    differenceText(change), change.unit});
  }
  return columns({"trade", "to buy", "size", ">before", ">after", ">difference", "unit"}, rows);
}

Review reviewOf(const QString& file, const Catalog& catalog, const Supplies& supplies) {
  return review(readPlanFile(file.toStdString()), catalog, supplies);
}

void writeClouded(const QCommandLineParser& parsed, const Review& after,
                  const PlanComparison& comparison, const Catalog& catalog) {
  const Project& project = after.plan.project;
  SheetOptions options;
  options.paper = project.units == UnitSystem::Metric ? "a1" : "arch-d";
  if (parsed.isSet("paper")) options.paper = parsed.value("paper").toLower().toStdString();
  options.catalog = &catalog;
  options.changes = &comparison;
  writePdf(composeSheets(after, options), parsed.value("pdf").toStdString(), project);
}

int run(const QCommandLineParser& parsed, Streams streams) {
  const QStringList files = parsed.positionalArguments();
  if (files.size() != 2) {
    throw std::invalid_argument("name two plan files, the earlier one first, for example "
                                "'sumpwright compare before.sump after.sump'.");
  }
  const Catalog catalog = parsed.isSet("catalog")
                              ? loadCatalog(parsed.value("catalog").toStdString())
                              : builtinCatalog();
  const Supplies supplies = suppliesOf(parsed);
  const Review before = reviewOf(files[0], catalog, supplies);
  const Review after = reviewOf(files[1], catalog, supplies);
  const PlanComparison comparison =
      comparePlans(before, after, {&catalog, &supplies, nullptr, std::nullopt},
                   std::filesystem::path(files[0].toStdString()).filename().string());
  if (parsed.isSet("csv")) {
    writeFileAtomically(parsed.value("csv").toStdString(), comparisonCsv(comparison));
  }
  if (parsed.isSet("pdf")) writeClouded(parsed, after, comparison, catalog);
  if (parsed.isSet("json")) {
    streams.out << comparisonJson(comparison);
  } else {
    streams.out << changesText(comparison) << "\n" << billText(comparison);
  }
  return comparison.empty() ? kClean : kFindings;
}

QList<QCommandLineOption> options() {
  return {jsonOption(),
          {"csv", "Write both lists into this file as CSV, too.", "FILE"},
          {"pdf", "Write the later plan's sheet set with clouds round what changed.", "FILE"},
          {"paper", "Paper size of the sheets; default arch-d, or a1 for metric plans.", "SIZE"},
          catalogOption()};
}

} // namespace

Command compareCommand() {
  return {"compare",
          "List what changed between two plans, and in the bill of materials.",
          "BEFORE AFTER [options]",
          "  sumpwright compare issued.sump now.sump\n"
          "  sumpwright compare --csv changes.csv --pdf clouded.pdf issued.sump now.sump\n",
          options,
          run,
          "Exit status: 0 the plans are alike, 1 they differ, 2 bad input.\n"};
}

} // namespace sump
