#include "core/catalog/losses.h"

#include "core/catalog/catalog.h"
#include "core/catalog/table_reader.h"

#include <algorithm>

namespace sump {

namespace {

LossRow readRow(const TableNode& node) {
  node.onlyKeys({"key", "name", "ratio", "k", "head", "source"});
  LossRow row;
  row.key = node.text("key");
  row.name = node.text("name");
  if (node.has("ratio")) row.ratio = node.number("ratio");
  if (node.has("k")) row.k = node.number("k");
  if (node.has("head")) row.head = node.length("head");
  if (int{row.ratio.has_value()} + int{row.k.has_value()} + int{row.head.has_value()} != 1) {
    node.fail("does not say in one way what it loses", "give one of ratio, k and head");
  }
  row.source = node.source();
  return row;
}

TurbulentFactor readFactor(const TableNode& node) {
  node.onlyKeys({"nominal", "factor"});
  TurbulentFactor factor{node.text("nominal"), node.number("factor")};
  if (!nominalInches(factor.nominal)) {
    node.child("nominal").fail("is no size", "write it like 1-1/2");
  }
  return factor;
}

PipeSurface readSurface(const TableNode& node) {
  node.onlyKeys({"pipe", "roughness", "hazenWilliams", "source"});
  PipeSurface surface;
  surface.pipe = node.text("pipe");
  surface.roughness = node.length("roughness");
  surface.hazenWilliams = node.number("hazenWilliams");
  if (surface.hazenWilliams <= 0) {
    node.child("hazenWilliams").fail("is not more than 0", "give a coefficient such as 150");
  }
  surface.source = node.source();
  return surface;
}

} // namespace

const LossRow* LossTable::fitting(std::string_view key) const {
  const auto found = std::ranges::find(fittings, key, &LossRow::key);
  return found == fittings.end() ? nullptr : &*found;
}

const PipeSurface* LossTable::surface(std::string_view pipe) const {
  const auto found = std::ranges::find(surfaces, pipe, &PipeSurface::pipe);
  return found == surfaces.end() ? nullptr : &*found;
}

std::optional<double> LossTable::k(const LossRow& row, std::string_view nominal) const {
  if (row.k) return row.k;
  if (!row.ratio) return std::nullopt;
  const auto found = std::ranges::find(factors, nominal, &TurbulentFactor::nominal);
  if (found == factors.end()) return std::nullopt;
  return *row.ratio * found->factor;
}

LossTable readLosses(const TableNode& root) {
  root.onlyKeys({"turbulentFactors", "fittings", "surfaces"});
  LossTable table;
  const TableNode factors = root.child("turbulentFactors");
  factors.onlyKeys({"source", "sizes"});
  table.factorSource = factors.source();
  table.factors = readList(factors, "sizes", "nominal", readFactor);
  table.fittings = readList(root, "fittings", "key", readRow);
  table.surfaces = readList(root, "surfaces", "pipe", readSurface);
  return table;
}

} // namespace sump
