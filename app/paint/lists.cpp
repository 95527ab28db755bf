#include "app/paint/lists.h"

#include "app/paint/paint.h"

#include "core/exchange/bill_of_materials.h"
#include "core/exchange/cutting_lists.h"
#include "core/exchange/plan_file.h"
#include "core/exchange/stake_out.h"
#include "core/exchange/workbook.h"
#include "core/sheet/cutting_sheet.h"

namespace sump {

void writeCuttingPdf(const Review& review, const CuttingList& cutting,
                     const std::filesystem::path& file) {
  const Project& project = review.plan.project;
  writePdf(composeCuttingSheet(review, cutting, shopPaper(project.units)), file, project);
}

std::vector<std::filesystem::path> writeLists(const Review& review, const BuyList& buy,
                                              const std::filesystem::path& folder,
                                              const std::string& stem) {
  std::vector<std::filesystem::path> files;
  const auto next = [&](const char* name) {
    files.push_back(folder / (stem + name));
    return files.back();
  };
  writeFileAtomically(next("-bill-of-materials.csv"), billOfMaterialsCsv(review, buy));
  writeWorkbook(buyTables(review, buy), review.plan.project.title, next("-bill-of-materials.xlsx"));
  writeFileAtomically(next("-cutting-list.csv"), cuttingCsv(review, buy.cutting));
  writeCuttingPdf(review, buy.cutting, next("-cutting-list.pdf"));
  writeFileAtomically(next("-stake-out.csv"), stakeOutCsv(review.plan, review.study));
  return files;
}

} // namespace sump
