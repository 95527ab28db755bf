#include "core/catalog/wire_areas.h"

#include "core/catalog/table_reader.h"

#include <algorithm>

namespace sump {

namespace {

Area areaOf(const TableNode& node) {
  const double value = node.number("squareInches");
  if (!(value > 0)) node.child("squareInches").fail("is not more than 0", "give the table's area");
  return squareMetres(value * kMetresPerInch * kMetresPerInch);
}

ConductorArea readConductor(const TableNode& node) {
  node.onlyKeys({"size", "squareInches", "source"});
  return {node.text("size"), areaOf(node), node.source()};
}

ConduitArea readSize(const TableNode& node) {
  node.onlyKeys({"nominal", "squareInches"});
  const std::string nominal = node.text("nominal");
  if (!nominalInches(nominal)) node.child("nominal").fail("is no size", "write it like 1-1/2");
  return {nominal, areaOf(node)};
}

ConduitAreas readConduit(const TableNode& node) {
  node.onlyKeys({"pipe", "sizes", "source"});
  return {node.text("pipe"), readList(node, "sizes", "nominal", readSize), node.source()};
}

} // namespace

const ConductorArea* WireAreas::conductor(std::string_view size) const {
  const auto found = std::ranges::find(conductors, size, &ConductorArea::size);
  return found == conductors.end() ? nullptr : &*found;
}

const ConduitAreas* WireAreas::conduit(std::string_view pipe) const {
  const auto found = std::ranges::find(conduits, pipe, &ConduitAreas::pipe);
  return found == conduits.end() ? nullptr : &*found;
}

std::optional<Area> WireAreas::conductorArea(std::string_view size) const {
  const ConductorArea* row = conductor(size);
  if (row == nullptr) return std::nullopt;
  return row->area;
}

std::optional<Area> WireAreas::conduitArea(std::string_view pipe, std::string_view nominal) const {
  const ConduitAreas* rows = conduit(pipe);
  if (rows == nullptr) return std::nullopt;
  const auto found = std::ranges::find(rows->sizes, nominal, &ConduitArea::nominal);
  if (found == rows->sizes.end()) return std::nullopt;
  return found->area;
}

WireAreas readWireAreas(const TableNode& root) {
  root.onlyKeys({"conductors", "conduits"});
  return {readList(root, "conductors", "size", readConductor),
          readList(root, "conduits", "pipe", readConduit)};
}

} // namespace sump
