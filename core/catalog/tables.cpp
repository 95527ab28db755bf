// One reader for each table file, with the checks that make a table usable.

#include "core/catalog/table_reader.h"
#include "core/units/parse.h"

#include <array>
#include <cmath>
#include <set>

namespace sump {

namespace {

/// Keys must differ within a table.
class Unique {
public:
  void add(const TableNode& node, std::string_view key, const std::string& value) {
    if (!seen_.insert(value).second) {
      node.child(key).fail("repeats '" + value + "'", "give each row its own");
    }
  }

private:
  std::set<std::string> seen_;
};

std::string nominalOf(const TableNode& node, Unique& sizes, double& last) {
  const std::string nominal = node.text("nominal");
  sizes.add(node, "nominal", nominal);
  const auto value = nominalInches(nominal);
  if (!value) node.child("nominal").fail("is no size", "write it like 1-1/2");
  if (*value <= last)
    node.child("nominal").fail("is out of order", "list sizes from small to large");
  last = *value;
  return nominal;
}

PipeSize readPipeSize(const TableNode& node, Unique& sizes, double& last) {
  node.onlyKeys({"nominal", "outside", "inside", "wall", "rating"});
  PipeSize size;
  size.nominal = nominalOf(node, sizes, last);
  size.outside = node.positiveLength("outside");
  size.inside = node.positiveLength("inside");
  size.wall = node.positiveLength("wall");
  const double bore = inMetres(size.outside - 2.0 * size.wall);
  // Average inside diameters lie up to 6 % of two walls below outside less two minimum walls.
  if (size.inside >= size.outside || std::abs(bore - inMetres(size.inside)) > 0.05 * bore) {
    node.fail("has an inside that does not fit outside less two walls", "check the three figures");
  }
  if (node.has("rating")) {
    const auto rating = parsePressure(node.text("rating"), UnitSystem::UsCustomary);
    if (!rating) node.child("rating").fail(rating.error, "give a pressure with its unit");
    size.rating = *rating.value;
  }
  return size;
}

PipeProduct readPipe(const TableNode& node) {
  node.onlyKeys(
      {"key", "name", "standard", "joining", "belledEnd", "stick", "fittings", "source", "sizes"});
  PipeProduct pipe;
  pipe.key = node.text("key");
  pipe.name = node.text("name");
  pipe.standard = node.text("standard");
  pipe.joining = choice<Joining>(node, "joining",
                                 {{"solvent-socket", Joining::SolventSocket},
                                  {"bell", Joining::Bell},
                                  {"gasket", Joining::Gasket},
                                  {"threaded", Joining::Threaded}});
  pipe.belledEnd = node.flag("belledEnd");
  pipe.stick = node.positiveLength("stick");
  pipe.fittings = node.text("fittings");
  pipe.source = node.source();
  Unique sizes;
  double last = 0;
  for (const TableNode& row : node.list("sizes")) {
    pipe.sizes.push_back(readPipeSize(row, sizes, last));
  }
  if (pipe.sizes.empty()) node.child("sizes").fail("is empty", "add at least one size");
  return pipe;
}

constexpr std::array<std::pair<std::string_view, FittingKind>, 8> kFittingKeys = {
    {{"elbow-90", FittingKind::Elbow90},
     {"elbow-45", FittingKind::Elbow45},
     {"elbow-22", FittingKind::Elbow22},
     {"elbow-11", FittingKind::Elbow11},
     {"tee", FittingKind::Tee},
     {"coupling", FittingKind::Coupling},
     {"reducer", FittingKind::Reducer},
     {"cap", FittingKind::Cap}}};

FittingSize readFittingSize(const TableNode& node, Unique& sizes, double& last) {
  node.onlyKeys({"nominal", "elbow-90", "elbow-45", "elbow-22", "elbow-11", "tee", "coupling",
                 "reducer", "cap"});
  FittingSize size;
  size.nominal = nominalOf(node, sizes, last);
  for (const auto& [word, kind] : kFittingKeys) {
    if (node.has(word)) size.takeOut[kind] = node.length(word);
  }
  return size;
}

PartProduct readPart(const TableNode& node) {
  node.onlyKeys({"key", "name", "source", "sizes"});
  PartProduct part{node.text("key"), node.text("name"), {}, node.source()};
  Unique sizes;
  double last = 0;
  for (const TableNode& row : node.list("sizes")) {
    row.onlyKeys({"nominal", "layingLength"});
    std::string nominal = nominalOf(row, sizes, last);
    part.layingLength.emplace_back(std::move(nominal), row.length("layingLength"));
  }
  return part;
}

VaultModel readVault(const TableNode& node) {
  node.onlyKeys({"key", "name", "trafficClass", "length", "width", "wall", "lid", "floor",
                 "insideHeight", "baffleOffsets", "baffleThickness", "source"});
  VaultModel vault;
  vault.key = node.text("key");
  vault.name = node.text("name");
  vault.trafficClass =
      choice<std::string>(node, "trafficClass", {{"light", "light"}, {"traffic", "traffic"}});
  vault.length = node.positiveLength("length");
  vault.width = node.positiveLength("width");
  vault.wall = node.positiveLength("wall");
  vault.lid = node.positiveLength("lid");
  vault.floor = node.positiveLength("floor");
  vault.insideHeight = node.positiveLength("insideHeight");
  vault.baffleThickness = node.positiveLength("baffleThickness");
  vault.source = node.source();
  const Length inside = vault.length - 2.0 * vault.wall;
  if (inside <= 0.0 * inside || vault.width <= 2.0 * vault.wall) {
    node.fail("has walls that leave no inside", "check length, width and wall");
  }
  Length last = metres(0);
  for (const TableNode& row : node.list("baffleOffsets")) {
    const auto offset = parseLength(row.text(), UnitSystem::UsCustomary);
    if (!offset) row.fail(offset.error, "give a length with its unit");
    if (*offset.value <= last || *offset.value + vault.baffleThickness >= inside) {
      row.fail("is not between the one before and the end wall", "order baffles along the vault");
    }
    last = *offset.value + vault.baffleThickness;
    vault.baffleOffsets.push_back(*offset.value);
  }
  return vault;
}

double limitValue(const TableNode& node, LimitKind kind) {
  const std::string text = node.text("value");
  const UnitSystem us = UnitSystem::UsCustomary;
  const auto take = [&](const auto& parsed) {
    if (!parsed) node.child("value").fail(parsed.error, "mend the value");
    return *parsed.value;
  };
  switch (kind) {
  case LimitKind::Length:
    return inMetres(take(parseLength(text, us)));
  case LimitKind::Volume:
    return take(parseVolume(text, us)).value();
  case LimitKind::Slope:
    return take(parseSlope(text, us));
  case LimitKind::Angle:
    return inRadians(take(parseAngle(text)));
  case LimitKind::Number:
  case LimitKind::Count:
    break;
  }
  return take(parseSlope(text + " ft/ft", us)); // a bare number
}

/// Value and where it comes from, of a limit whose kind is known.
void readFigure(const TableNode& node, Limit& limit) {
  limit.value = limitValue(node, limit.kind);
  limit.edition = node.has("edition") ? node.text("edition") : "";
  limit.citation = node.text("citation");
  limit.confidence = confidenceFrom(node, "confidence");
}

Limit readOverride(const TableNode& node, const Limits& generic) {
  node.onlyKeys({"id", "value", "edition", "citation", "confidence"});
  const std::string id = node.text("id");
  if (!generic.has(id)) {
    node.child("id").fail("'" + id + "' is no limit of the generic profile",
                          "use an id from limits/generic.json");
  }
  Limit limit = generic.at(id);
  readFigure(node, limit);
  return limit;
}

Limit readLimit(const TableNode& node) {
  node.onlyKeys({"id", "title", "kind", "value", "edition", "citation", "confidence"});
  Limit limit;
  limit.id = node.text("id");
  limit.title = node.text("title");
  limit.kind = choice<LimitKind>(node, "kind",
                                 {{"length", LimitKind::Length},
                                  {"volume", LimitKind::Volume},
                                  {"slope", LimitKind::Slope},
                                  {"angle", LimitKind::Angle},
                                  {"number", LimitKind::Number},
                                  {"count", LimitKind::Count}});
  readFigure(node, limit);
  return limit;
}

/// The one list of a table file, its rows unique by `key`.
template <class Row>
std::vector<Row> readAll(const TableNode& root, std::string_view list, std::string_view key,
                         Row (*read)(const TableNode&)) {
  root.onlyKeys({list});
  std::vector<Row> rows;
  Unique keys;
  for (const TableNode& node : root.list(list)) {
    rows.push_back(read(node));
    keys.add(node, key, node.text(key));
  }
  return rows;
}

FittingFamily readFamily(const TableNode& node) {
  node.onlyKeys({"key", "name", "source", "sizes"});
  FittingFamily family{node.text("key"), node.text("name"), {}, node.source()};
  Unique sizes;
  double last = 0;
  for (const TableNode& row : node.list("sizes")) {
    family.sizes.push_back(readFittingSize(row, sizes, last));
  }
  return family;
}

} // namespace

std::string_view key(FittingKind kind) {
  for (const auto& [word, value] : kFittingKeys) {
    if (value == kind) return word;
  }
  return {};
}

std::vector<PipeProduct> readPipes(const TableNode& root) {
  return readAll(root, "pipes", "key", readPipe);
}
std::vector<FittingFamily> readFittings(const TableNode& root) {
  return readAll(root, "fittings", "key", readFamily);
}
std::vector<PartProduct> readParts(const TableNode& root) {
  return readAll(root, "parts", "key", readPart);
}
std::vector<VaultModel> readVaults(const TableNode& root) {
  return readAll(root, "vaults", "key", readVault);
}
std::vector<Limit> readLimits(const TableNode& root) {
  return readAll(root, "limits", "id", readLimit);
}

CodeProfile readProfile(const TableNode& root, const Limits& generic) {
  root.onlyKeys({"key", "name", "about", "limits"});
  CodeProfile profile{root.text("key"), root.text("name"), root.text("about"), {}};
  Unique ids;
  for (const TableNode& node : root.list("limits")) {
    profile.rows.push_back(readOverride(node, generic));
    ids.add(node, "id", node.text("id"));
  }
  return profile;
}

} // namespace sump
