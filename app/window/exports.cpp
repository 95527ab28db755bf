#include "app/window/exports.h"

#include "app/paint/lists.h"
#include "app/paint/paint.h"
#include "app/paint/upkeep_files.h"
#include "app/plain_text.h"
#include "app/window/upkeep_table_dialog.h"

#include "core/exchange/bill_of_materials.h"
#include "core/exchange/cutting_lists.h"
#include "core/exchange/plan_file.h"
#include "core/exchange/stake_out.h"
#include "core/exchange/workbook.h"
#include "core/sheet/calculation_report.h"
#include "core/sheet/compose.h"

namespace sump {

namespace {

std::vector<Page> sheets(const Review& review) {
  const bool metric = review.plan.project.units == UnitSystem::Metric;
  return composeSheets(review, {metric ? "a1" : "arch-d", 0, &builtinCatalog()});
}

} // namespace

void exportPdf(const Review& review, const QString& path) {
  writePdf(sheets(review), pathOf(path), review.plan.project);
}

void exportSvg(const Review& review, const QString& path) {
  const std::vector<Page> pages = sheets(review);
  const std::filesystem::path first = pathOf(path);
  // One file a page: the first under the name given, the others with their sheet number.
  for (std::size_t i = 0; i < pages.size(); ++i) {
    std::filesystem::path file = first;
    if (i > 0) {
      file.replace_filename(first.stem().string() + "-" + pages[i].number +
                            first.extension().string());
    }
    writeSvg(pages[i], file);
  }
}

void exportBill(const Review& review, const QString& path) {
  const BuyList buy = buyList(review);
  if (path.endsWith(".xlsx", Qt::CaseInsensitive)) {
    writeWorkbook(buyTables(review, buy), review.plan.project.title, pathOf(path));
  } else {
    writeFileAtomically(pathOf(path), billOfMaterialsCsv(review, buy));
  }
}

void exportCuts(const Review& review, const QString& path) {
  const CuttingList cutting = buyList(review).cutting;
  if (path.endsWith(".pdf", Qt::CaseInsensitive)) {
    writeCuttingPdf(review, cutting, pathOf(path));
  } else {
    writeFileAtomically(pathOf(path), cuttingCsv(review, cutting));
  }
}

void exportStakes(const Review& review, const QString& path) {
  writeFileAtomically(pathOf(path), stakeOutCsv(review.plan, review.study));
}

void exportUpkeep(const Review& review, const QString& path) {
  writeUpkeepPdf(review, chosenUpkeep(), pathOf(path));
}

void exportCalendar(const Review& review, QDate start, const QString& path) {
  const Date day{std::chrono::year(start.year()),
                 std::chrono::month(static_cast<unsigned>(start.month())),
                 std::chrono::day(static_cast<unsigned>(start.day()))};
  writeUpkeepCalendar(review, chosenUpkeep(), day, pathOf(path));
}

void exportCalculations(const Review& review, const QString& path) {
  writePdf(composeCalculationReport(review.plan, calculations(review.plan, review.study)),
           pathOf(path), review.plan.project);
}

} // namespace sump
