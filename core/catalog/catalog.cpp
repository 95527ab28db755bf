#include "core/catalog/catalog.h"

#include "core/catalog/embedded.h"
#include "core/catalog/table_reader.h"
#include "core/units/scanner.h"

#include <algorithm>
#include <set>

namespace sump {

namespace {

constexpr std::string_view kProfilePrefix = "limits/profile-";

template <class Row> const Row* byKey(const std::vector<Row>& rows, std::string_view key) {
  const auto found = std::ranges::find(rows, key, &Row::key);
  return found == rows.end() ? nullptr : &*found;
}

template <class Read>
auto readTable(const std::filesystem::path& folder, const std::string& name, Read read) {
  const TableDocument table = openTable(folder, name);
  return read(TableNode(table.json, table.file, ""));
}

/// Pipe may only name fitting families that exist.
void checkFamilies(const Catalog& catalog) {
  for (const PipeProduct& pipe : catalog.pipes) {
    if (byKey(catalog.fittings, pipe.fittings) == nullptr) {
      throw CatalogError("pipes.json: pipe '" + pipe.key + "' names the unknown fitting family '" +
                         pipe.fittings + "'; add it to fittings.json or mend the name");
    }
  }
}

/// The built-in profiles, and those that the user's folder adds.
std::set<std::string> profileNames(const std::filesystem::path& folder) {
  std::set<std::string> names;
  for (std::string_view name : embeddedNames()) {
    if (name.starts_with(kProfilePrefix)) names.emplace(name);
  }
  if (folder.empty()) return names;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    const std::string name = "limits/" + entry.path().filename().string();
    if (name.starts_with(kProfilePrefix) && name.ends_with(".json")) names.insert(name);
  }
  return names;
}

void readProfiles(const std::filesystem::path& folder, Catalog& catalog) {
  for (const std::string& name : profileNames(folder)) {
    CodeProfile profile = readTable(
        folder, name, [&](const TableNode& root) { return readProfile(root, catalog.limits); });
    if (profile.key == kGenericProfile || byKey(catalog.profiles, profile.key) != nullptr) {
      throw CatalogError(name + ": /key: '" + profile.key +
                         "' is the key of another profile; give it one of its own");
    }
    catalog.profiles.push_back(std::move(profile));
  }
}

Catalog load(const std::filesystem::path& folder) {
  Catalog catalog;
  catalog.pipes = readTable(folder, "catalog/pipes.json", readPipes);
  catalog.fittings = readTable(folder, "catalog/fittings.json", readFittings);
  catalog.parts = readTable(folder, "catalog/parts.json", readParts);
  catalog.vaults = readTable(folder, "catalog/vaults.json", readVaults);
  catalog.losses = readTable(folder, "catalog/losses.json", readLosses);
  catalog.wiring = readTable(folder, "catalog/wiring.json", readWireAreas);
  catalog.limits = Limits(readTable(folder, "limits/generic.json", readLimits));
  readProfiles(folder, catalog);
  checkFamilies(catalog);
  return catalog;
}

} // namespace

const PipeSize* PipeProduct::size(std::string_view nominal) const {
  const auto found = std::ranges::find(sizes, nominal, &PipeSize::nominal);
  return found == sizes.end() ? nullptr : &*found;
}

std::optional<Length> FittingFamily::takeOut(FittingKind kind, std::string_view nominal) const {
  const auto size = std::ranges::find(sizes, nominal, &FittingSize::nominal);
  if (size == sizes.end()) return std::nullopt;
  const auto found = size->takeOut.find(kind);
  if (found == size->takeOut.end()) return std::nullopt;
  return found->second;
}

bool FittingFamily::stocks(FittingKind kind, std::string_view nominal) const {
  return takeOut(kind, nominal).has_value();
}

const CodeProfile* Catalog::profile(std::string_view key) const {
  return byKey(profiles, key);
}

Limits Catalog::limitsOf(std::string_view profileKey) const {
  const CodeProfile* found = profile(profileKey);
  return found == nullptr ? limits : limits.withRows(found->rows);
}

std::string Catalog::profileKeys() const {
  std::string keys(kGenericProfile);
  for (const CodeProfile& profile : profiles)
    keys += ", " + profile.key;
  return keys;
}

const PipeProduct* Catalog::pipe(std::string_view key) const {
  return byKey(pipes, key);
}

const PipeSize* Catalog::pipeSize(std::string_view pipeKey, std::string_view nominal) const {
  const PipeProduct* product = pipe(pipeKey);
  return product == nullptr ? nullptr : product->size(nominal);
}

const FittingFamily* Catalog::fittingsFor(std::string_view pipeKey) const {
  const PipeProduct* product = pipe(pipeKey);
  return product == nullptr ? nullptr : byKey(fittings, product->fittings);
}

const PartProduct* Catalog::part(std::string_view key) const {
  return byKey(parts, key);
}
const VaultModel* Catalog::vault(std::string_view key) const {
  return byKey(vaults, key);
}

const Catalog& builtinCatalog() {
  static const Catalog catalog = load({});
  return catalog;
}

Catalog loadCatalog(const std::filesystem::path& folder) {
  if (!std::filesystem::is_directory(folder)) {
    throw CatalogError(folder.string() + ": is no folder; name one that holds catalogue files");
  }
  return load(folder);
}

std::optional<double> nominalInches(std::string_view nominal) {
  Scanner scan(nominal);
  const auto value = scan.mixed();
  if (!value || !scan.done() || *value <= 0) return std::nullopt;
  return value;
}

} // namespace sump
