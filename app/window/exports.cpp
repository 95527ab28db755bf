#include "app/window/exports.h"

#include "app/paint/paint.h"

#include "core/exchange/bill_of_materials.h"
#include "core/exchange/plan_file.h"
#include "core/sheet/calculation_report.h"
#include "core/sheet/compose.h"

namespace sump {

namespace {

std::filesystem::path pathOf(const QString& path) {
  return std::filesystem::path(path.toStdU16String());
}

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
  writeFileAtomically(pathOf(path), billOfMaterialsCsv(review));
}

void exportCalculations(const Review& review, const QString& path) {
  writePdf(composeCalculationReport(review.plan, calculations(review.plan, review.study)),
           pathOf(path), review.plan.project);
}

} // namespace sump
