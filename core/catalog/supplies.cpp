#include "core/catalog/supplies.h"

#include "core/catalog/table_reader.h"
#include "core/units/parse.h"
#include "core/units/temperature.h"

namespace sump {

namespace {

/// Rows by rising size, each with what `read` makes of it.
template <class T, class Read>
std::vector<BySize<T>> bySize(const TableNode& node, std::string_view key, Read read) {
  std::vector<BySize<T>> rows;
  double last = 0;
  for (const TableNode& row : node.list(key)) {
    const std::string nominal = row.text("nominal");
    const auto size = nominalInches(nominal);
    if (!size) row.child("nominal").fail("is no size", "write it like 1-1/2");
    if (*size <= last)
      row.child("nominal").fail("is out of order", "list sizes from small to large");
    last = *size;
    rows.push_back({nominal, read(row)});
  }
  if (rows.empty()) node.child(key).fail("is empty", "give one row at least");
  return rows;
}

/// The row of this size or the next larger one.
template <class T> const T* upTo(const std::vector<BySize<T>>& rows, std::string_view nominal) {
  const auto size = nominalInches(nominal);
  for (const BySize<T>& row : rows) {
    if (size && *size <= nominalInches(row.nominal).value_or(0)) return &row.figure;
  }
  return nullptr;
}

template <class T> std::optional<T> valueOf(const T* found) {
  return found == nullptr ? std::nullopt : std::optional<T>(*found);
}

double positive(const TableNode& node, std::string_view key) {
  const double value = node.number(key);
  if (value <= 0) node.child(key).fail("is not more than 0", "give a number above 0");
  return value;
}

std::vector<BySize<Length>> spacings(const TableNode& node, std::string_view key) {
  return bySize<Length>(node, key, [](const TableNode& row) {
    row.onlyKeys({"nominal", "spacing"});
    return row.positiveLength("spacing");
  });
}

/// One of the sizes that cans come in.
Volume canOf(const TableNode& node, std::string_view key,
             std::initializer_list<std::pair<std::string_view, Volume>> sizes) {
  const std::string can = node.text(key);
  std::string known;
  for (const auto& [name, volume] : sizes) {
    if (can == name) return volume;
    known += (known.empty() ? "" : ", ") + std::string(name);
  }
  node.child(key).fail("is '" + can + "'", "use " + known);
}

void readSockets(const TableNode& node, Supplies& supplies) {
  node.onlyKeys({"source", "sizes"});
  supplies.socketDepthSource = node.source();
  supplies.socketDepth = bySize<Length>(node, "sizes", [](const TableNode& row) {
    row.onlyKeys({"nominal", "depth"});
    return row.positiveLength("depth");
  });
}

void readSolvent(const TableNode& node, Supplies& supplies) {
  node.onlyKeys({"source", "primerShare", "can", "metricCan", "sockets", "jointsPerQuart"});
  supplies.solventSource = node.source();
  supplies.primerShare = node.number("primerShare");
  supplies.can = canOf(node, "can", {{"1 pt", gallons(1.0 / 8)}, {"1 qt", gallons(1.0 / 4)}});
  supplies.metricCan = canOf(node, "metricCan",
                             {{"250 mL", cubicMetres(0.25e-3)},
                              {"500 mL", cubicMetres(0.5e-3)},
                              {"1 L", cubicMetres(1e-3)}});
  for (const TableNode& row : node.list("sockets")) {
    row.onlyKeys({"item", "count"});
    supplies.sockets[row.text("item")] = static_cast<int>(row.number("count"));
  }
  supplies.jointsPerQuart = bySize<double>(node, "jointsPerQuart", [](const TableNode& row) {
    row.onlyKeys({"nominal", "joints"});
    return positive(row, "joints");
  });
}

void readSupports(const TableNode& node, Supplies& supplies) {
  node.onlyKeys({"source", "temperatures", "sizes"});
  supplies.supportSource = node.source();
  for (const TableNode& entry : node.list("temperatures")) {
    const auto value = parseTemperature(entry.text(), UnitSystem::UsCustomary);
    if (!value) entry.fail(value.error, "give a temperature with its unit");
    supplies.supportTemperatures.push_back(*value.value);
  }
  const std::size_t columns = supplies.supportTemperatures.size();
  supplies.supports = bySize<std::vector<Length>>(node, "sizes", [columns](const TableNode& row) {
    row.onlyKeys({"nominal", "spacing"});
    std::vector<Length> spacing;
    for (const TableNode& entry : row.list("spacing")) {
      const auto value = parseLength(entry.text(), UnitSystem::UsCustomary);
      if (!value || inMetres(*value.value) <= 0)
        entry.fail("is no spacing", "give a length above 0 with its unit");
      spacing.push_back(*value.value);
    }
    if (spacing.size() != columns)
      row.child("spacing").fail("has not one figure a temperature", "give one for each");
    return spacing;
  });
}

void readWaste(const TableNode& node, Supplies& supplies) {
  node.onlyKeys({"source", "shares"});
  supplies.wasteSource = node.source();
  for (const TableNode& row : node.list("shares")) {
    row.onlyKeys({"category", "share"});
    const double share = row.number("share");
    if (share > 1) row.child("share").fail("is more than 1", "write 5 % as 0.05");
    supplies.waste[row.text("category")] = share;
  }
}

Supplies readSupplies(const TableNode& root) {
  root.onlyKeys({"solvent", "socketDepth", "supports", "codeSupports", "conduitSupports", "marking",
                 "waste"});
  Supplies supplies;
  readSolvent(root.child("solvent"), supplies);
  readSockets(root.child("socketDepth"), supplies);
  readSupports(root.child("supports"), supplies);
  const TableNode code = root.child("codeSupports");
  code.onlyKeys({"source", "vertical", "horizontal"});
  supplies.codeSupportSource = code.source();
  supplies.codeVertical = code.positiveLength("vertical");
  supplies.codeSupports = spacings(code, "horizontal");
  const TableNode conduit = root.child("conduitSupports");
  conduit.onlyKeys({"source", "spacing"});
  supplies.conduitSupportSource = conduit.source();
  supplies.conduitSupports = spacings(conduit, "spacing");
  const TableNode marking = root.child("marking");
  marking.onlyKeys({"source", "labelSpacing"});
  supplies.markingSource = marking.source();
  supplies.labelSpacing = marking.positiveLength("labelSpacing");
  readWaste(root.child("waste"), supplies);
  return supplies;
}

} // namespace

int Supplies::socketsOf(std::string_view item) const {
  const auto found = sockets.find(item);
  return found == sockets.end() ? 2 : found->second;
}

std::optional<Length> Supplies::socketDepthOf(std::string_view nominal) const {
  return valueOf(upTo(socketDepth, nominal));
}

std::optional<double> Supplies::jointsPerQuartOf(std::string_view nominal) const {
  return valueOf(upTo(jointsPerQuart, nominal));
}

std::optional<Length> Supplies::supportSpacing(std::string_view nominal, Temperature water) const {
  const std::vector<Length>* row = upTo(supports, nominal);
  const Length* code = upTo(codeSupports, nominal);
  if (row == nullptr || code == nullptr) return std::nullopt;
  for (std::size_t i = 0; i < supportTemperatures.size(); ++i) {
    if (water.value() <= supportTemperatures[i].value() + 1e-9) return std::min((*row)[i], *code);
  }
  return std::nullopt;
}

std::optional<Length> Supplies::conduitSpacing(std::string_view nominal) const {
  return valueOf(upTo(conduitSupports, nominal));
}

double Supplies::wasteOf(std::string_view category) const {
  const auto found = waste.find(category);
  return found == waste.end() ? 0 : found->second;
}

const Supplies& builtinSupplies() {
  static const Supplies supplies = loadSupplies({});
  return supplies;
}

Supplies loadSupplies(const std::filesystem::path& folder) {
  const TableDocument table = openTable(folder, "catalog/supplies.json");
  return readSupplies(TableNode(table.json, table.file, ""));
}

} // namespace sump
