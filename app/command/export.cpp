// `export`: the sheet set as PDF and SVG, all lists and the calculation report.

#include "app/command/open_plan.h"
#include "app/paint/lists.h"
#include "app/paint/paint.h"
#include "app/paint/upkeep_files.h"
#include "core/sheet/calculation_report.h"
#include "core/sheet/compose.h"

#include <ostream>
#include <stdexcept>

namespace sump {

namespace {

QStringList papers(const QCommandLineParser& parsed, UnitSystem units) {
  QStringList found;
  for (const QString& value : parsed.values("paper"))
    found += value.split(',', Qt::SkipEmptyParts);
  if (found.isEmpty()) found << (units == UnitSystem::Metric ? "a1" : "arch-d");
  found.removeDuplicates();
  return found;
}

double scale(const QCommandLineParser& parsed) {
  if (!parsed.isSet("scale")) return 0;
  bool ok = false;
  const double value = parsed.value("scale").toDouble(&ok);
  if (!ok || !(value >= 1) || value > 1e5) {
    throw std::invalid_argument("--scale '" + parsed.value("scale").toStdString() +
                                "' is no scale; give the denominator, 120 for 1:120.");
  }
  return value;
}

std::vector<std::string> sheets(const QCommandLineParser& parsed) {
  std::vector<std::string> words;
  for (const QString& value : parsed.values("sheets")) {
    for (const QString& word : value.split(',', Qt::SkipEmptyParts))
      words.push_back(word.trimmed().toStdString());
  }
  return words;
}

/// Sheets, and the calendar where the day of start-up is given.
std::vector<std::filesystem::path> writeUpkeep(const QCommandLineParser& parsed,
                                               const Review& review,
                                               const std::filesystem::path& stem) {
  const UpkeepTable table = upkeepOf(parsed);
  std::vector<std::filesystem::path> files = {stem.string() + "-upkeep.pdf"};
  writeUpkeepPdf(review, table, files.back());
  if (parsed.isSet("start")) {
    files.emplace_back(stem.string() + "-upkeep.ics");
    writeUpkeepCalendar(review, table, startDate(parsed), files.back());
  }
  return files;
}

int run(const QCommandLineParser& parsed, Streams streams) {
  if (parsed.isSet("start")) startDate(parsed); // complains before anything is written
  const OpenedPlan opened = openPlan(parsed);
  const Project& project = opened.review.plan.project;
  const std::string stem = opened.file.stem().string();
  const double denominator = scale(parsed);
  // All pages first: a wrong paper size then leaves nothing half written.
  std::vector<std::pair<std::string, std::vector<Page>>> sets;
  for (const QString& paper : papers(parsed, project.units)) {
    const std::string key = paper.trimmed().toLower().toStdString();
    sets.emplace_back(
        key, composeSheets(opened.review, {key, denominator, &opened.catalog, sheets(parsed)}));
    if (sets.back().second.empty()) {
      throw std::invalid_argument("This plan has nothing for the sheets chosen with --sheets.");
    }
  }
  const std::filesystem::path out =
      usableFolder(parsed.isSet("out") ? parsed.value("out").toStdString() : stem + "-sheets");
  const auto told = [&](const std::filesystem::path& file) {
    streams.out << file.string() << "\n";
  };
  for (const auto& [paper, pages] : sets) {
    const std::filesystem::path pdf = out / (stem + "-" + paper + ".pdf");
    writePdf(pages, pdf, project);
    told(pdf);
    for (const Page& page : pages) {
      const std::filesystem::path svg = out / (stem + "-" + paper + "-" + page.number + ".svg");
      writeSvg(page, svg);
      told(svg);
    }
  }
  const Supplies supplies = suppliesOf(parsed);
  const BuyList buy = buyList(opened.review, {&opened.catalog, &supplies, nullptr, std::nullopt});
  for (const std::filesystem::path& list : writeLists(opened.review, buy, out, stem))
    told(list);
  const std::filesystem::path report = out / (stem + "-calculations.pdf");
  writePdf(composeCalculationReport(opened.review.plan,
                                    calculations(opened.review.plan, opened.review.study)),
           report, project);
  told(report);
  for (const std::filesystem::path& file : writeUpkeep(parsed, opened.review, out / stem))
    told(file);
  return opened.status();
}

QString sheetKeys() {
  QStringList keys;
  for (const SheetKind& kind : sheetKinds())
    keys << QString::fromUtf8(kind.key.data(), static_cast<qsizetype>(kind.key.size()));
  return keys.join(", ");
}

QList<QCommandLineOption> options() {
  return {{"out", "Write into this folder; default <plan>-sheets here.", "FOLDER"},
          {"paper",
           "Paper size, several with commas: arch-b to arch-e, ansi-b to ansi-d, a4 to a1. Default "
           "arch-d, or a1 for metric plans.",
           "SIZE"},
          {"scale", "Scale of the plan, 120 for 1:120; default the largest standard one that fits.",
           "N"},
          {"sheets",
           "Only these sheets, with commas: " + sheetKeys() +
               "; a discipline G, C, P or E; or a sheet's number. Default all.",
           "SHEETS"},
          startOption(),
          upkeepTableOption(),
          catalogOption(),
          profileOption()};
}

} // namespace

Command exportCommand() {
  return {"export",
          "Write the sheet set as PDF and SVG, bill, cutting list and stake-out points, and the "
          "calculation report and upkeep sheets as PDF.",
          "PLAN [options]",
          "  sumpwright export samples/transit-depot.sump\n"
          "  sumpwright export --paper arch-d,a1 --out sheets samples/transit-depot.sump\n"
          "  sumpwright export --sheets plan,C samples/transit-depot.sump\n",
          options,
          run};
}

} // namespace sump
