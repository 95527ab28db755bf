// `calculate`: how each number came about.

#include "app/command/open_plan.h"
#include "app/paint/paint.h"
#include "core/exchange/calculation_json.h"
#include "core/sheet/calculation_report.h"
#include "core/study/calculation_print.h"

#include <ostream>

namespace sump {

namespace {

/// The pages as files; each is told by its name.
void writePages(const QCommandLineParser& parsed, const Plan& plan, const std::string& stem,
                const std::vector<Page>& pages, std::ostream& out) {
  if (parsed.isSet("pdf")) {
    const std::filesystem::path file = parsed.value("pdf").toStdString();
    writePdf(pages, file, plan.project);
    out << file.string() << "\n";
  }
  if (!parsed.isSet("svg")) return;
  const std::filesystem::path folder = usableFolder(parsed.value("svg").toStdString());
  for (const Page& page : pages) {
    const std::filesystem::path file = folder / (stem + "-calculations-" + page.number + ".svg");
    writeSvg(page, file);
    out << file.string() << "\n";
  }
}

int run(const QCommandLineParser& parsed, Streams streams) {
  const OpenedPlan opened = openPlan(parsed);
  const Plan& plan = opened.review.plan;
  const std::vector<Calculation> all = calculations(plan, opened.review.study);
  if (parsed.isSet("pdf") || parsed.isSet("svg")) {
    const std::string paper = parsed.value("paper").toLower().toStdString();
    writePages(parsed, plan, opened.file.stem().string(),
               composeCalculationReport(plan, all, paper), streams.out);
  } else if (parsed.isSet("json")) {
    streams.out << calculationJson(all);
  } else {
    streams.out << calculationText(all, plan.project.units)
                << "\nThese are screening calculations. The adopted local code, the authority "
                   "having jurisdiction and licensed designers govern.\n";
  }
  return opened.status();
}

QList<QCommandLineOption> options() {
  return {{"pdf", "Write the report as PDF to this file.", "FILE"},
          {"svg", "Write the report's pages as SVG into this folder.", "FOLDER"},
          {"paper", "Paper of these pages, letter or a4; default by the plan's units.", "SIZE"},
          jsonOption(),
          catalogOption(),
          profileOption()};
}

} // namespace

Command calculateCommand() {
  return {"calculate",
          "Show how each number came about: formula, inputs, steps, result, source.",
          "PLAN [options]",
          "  sumpwright calculate samples/transit-depot.sump\n"
          "  sumpwright calculate --json samples/boatyard-pad.sump > calculations.json\n"
          "  sumpwright calculate --pdf calculations.pdf samples/transit-depot.sump\n",
          options,
          run};
}

} // namespace sump
