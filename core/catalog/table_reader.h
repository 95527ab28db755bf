#pragma once
// Reads one JSON table with its place known, so that every complaint names file and JSON pointer.
// Private to core/catalog.

#include "core/catalog/catalog.h"
#include "core/catalog/wire_areas.h"

#include <nlohmann/json.hpp>

#include <initializer_list>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace sump {

class TableNode {
public:
  TableNode(const nlohmann::json& json, std::string file, std::string pointer)
      : json_(&json), file_(std::move(file)), pointer_(std::move(pointer)) {}

  [[noreturn]] void fail(const std::string& what, const std::string& mend) const;
  /// Refuses keys other than these.
  void onlyKeys(std::initializer_list<std::string_view> keys) const;
  bool has(std::string_view key) const;
  TableNode child(std::string_view key) const;
  std::vector<TableNode> list(std::string_view key) const;
  std::vector<std::string> keys() const;
  std::string text(std::string_view key) const;
  std::string text() const;
  bool flag(std::string_view key) const;
  Length positiveLength(std::string_view key) const;
  Length length(std::string_view key) const; ///< may be 0, not negative
  double number(std::string_view key) const; ///< a JSON number, not negative
  Source source() const;

private:
  const nlohmann::json* json_;
  std::string file_;
  std::string pointer_;
};

/// A parsed table and the file that it is from.
struct TableDocument {
  std::string file;
  nlohmann::json json;
};
/// `resources/<name>`, or the file of that name in the user's own folder. Throws CatalogError.
TableDocument openTable(const std::filesystem::path& folder, const std::string& name);

Confidence confidenceFrom(const TableNode& node, std::string_view key);

/// The words of an enumeration in files, with an error that lists them.
template <class E>
E choice(const TableNode& node, std::string_view key,
         std::initializer_list<std::pair<std::string_view, E>> words) {
  const std::string text = node.text(key);
  std::string accepted;
  for (const auto& [word, value] : words) {
    if (word == text) return value;
    accepted += (accepted.empty() ? "" : ", ") + std::string(word);
  }
  node.child(key).fail("is '" + text + "'", "use one of: " + accepted);
}

/// The rows of a list, each told apart by the text under `key`.
template <class Row>
std::vector<Row> readList(const TableNode& root, std::string_view list, std::string_view key,
                          Row (*read)(const TableNode&)) {
  std::vector<Row> rows;
  std::set<std::string> seen;
  for (const TableNode& node : root.list(list)) {
    rows.push_back(read(node));
    const std::string value = node.text(key);
    if (!seen.insert(value).second) {
      node.child(key).fail("repeats '" + value + "'", "give each row its own");
    }
  }
  return rows;
}

std::vector<PipeProduct> readPipes(const TableNode& root);
std::vector<FittingFamily> readFittings(const TableNode& root);
std::vector<PartProduct> readParts(const TableNode& root);
std::vector<VaultModel> readVaults(const TableNode& root);
LossTable readLosses(const TableNode& root);
WireAreas readWireAreas(const TableNode& root);
std::vector<Limit> readLimits(const TableNode& root);
/// Its rows name limits of `generic` and take title and kind from there.
CodeProfile readProfile(const TableNode& root, const Limits& generic);

} // namespace sump
