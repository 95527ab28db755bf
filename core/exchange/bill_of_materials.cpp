#include "core/exchange/bill_of_materials.h"

#include "core/exchange/csv.h"
#include "core/units/print.h"

#include <cmath>

namespace sump {

namespace {

std::string lengthNumber(Length v, UnitSystem units) {
  return units == UnitSystem::Metric ? fixed(inMetres(v), 2) : fixed(inFeet(v), 1);
}

std::string unitOf(UnitSystem units) {
  return units == UnitSystem::Metric ? "m" : "ft";
}

bool isLength(const QuantityLine& line) {
  return line.category == "pipe" || line.category == "riser";
}

std::string serviceName(const QuantityLine& line) {
  const auto service = serviceFromKey(line.service);
  return service ? std::string(facts(*service).name) : std::string();
}

Cell quantityCell(const QuantityLine& line, UnitSystem units) {
  if (isLength(line)) return numberCell(lengthNumber(line.net, units));
  return numberCell(fixed(line.quantity, line.quantity == std::floor(line.quantity) ? 0 : 2));
}

std::string fromList(const QuantityLine& line) {
  std::string text;
  for (const Id& id : line.runs)
    text += (text.empty() ? "" : " ") + id;
  return text;
}

std::string row(int number, const QuantityLine& line, UnitSystem units) {
  const bool pipe = line.category == "pipe";
  return csvLine({numberCell(std::to_string(number)), textCell(line.trade), textCell(line.category),
                  textCell(serviceName(line)), textCell(line.description), textCell(line.size),
                  textCell(line.material), quantityCell(line, units),
                  textCell(isLength(line) ? unitOf(units) : "each"),
                  numberCell(pipe ? lengthNumber(line.buy, units) : ""), textCell(fromList(line))});
}

} // namespace

std::string billOfMaterialsCsv(const Review& review) {
  const UnitSystem units = review.plan.project.units;
  std::string text =
      csvLine({textCell("Item"), textCell("Trade"), textCell("Category"), textCell("Service"),
               textCell("Description"), textCell("Nominal size (in)"), textCell("Material"),
               textCell("Quantity"), textCell("Unit"),
               textCell("Length to buy, whole sticks (" + unitOf(units) + ")"), textCell("From")});
  int number = 0;
  for (const QuantityLine& line : review.study.takeOff)
    text += row(++number, line, units);
  return text;
}

} // namespace sump
