#include "app/window/exports.h"

#include "core/exchange/bill_of_materials.h"
#include "core/exchange/plan_file.h"

#include <stdexcept>

namespace sump {

void exportPdf(const Review&, const QString&) {
  throw std::runtime_error("TEMP");
}

void exportSvg(const Review&, const QString&) {
  throw std::runtime_error("TEMP");
}

void exportBill(const Review& review, const QString& path) {
  writeFileAtomically(std::filesystem::path(path.toStdU16String()), billOfMaterialsCsv(review));
}

} // namespace sump
