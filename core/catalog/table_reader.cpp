#include "core/catalog/table_reader.h"

#include "core/catalog/embedded.h"
#include "core/units/parse.h"

#include <algorithm>
#include <fstream>
#include <sstream>

namespace sump {

namespace {

/// Where a table's text comes from: the user's folder, or the program.
struct TableText {
  std::string file;
  std::string text;
};

TableText tableText(const std::filesystem::path& folder, const std::string& name) {
  const std::filesystem::path own = folder / std::filesystem::path(name).filename();
  if (!folder.empty() && std::filesystem::exists(own)) {
    std::ifstream stream(own, std::ios::binary);
    std::ostringstream text;
    text << stream.rdbuf();
    if (!stream) throw CatalogError(own.string() + ": cannot be read; check its permissions");
    return {own.string(), text.str()};
  }
  return {"resources/" + name, std::string(embeddedText(name))};
}

} // namespace

TableDocument openTable(const std::filesystem::path& folder, const std::string& name) {
  const TableText table = tableText(folder, name);
  try {
    return {table.file, nlohmann::json::parse(table.text)};
  } catch (const nlohmann::json::parse_error& error) {
    throw CatalogError(table.file + ": is not JSON near byte " + std::to_string(error.byte) +
                       "; mend the text there");
  }
}

void TableNode::fail(const std::string& what, const std::string& mend) const {
  throw CatalogError(file_ + ": " + (pointer_.empty() ? "/" : pointer_) + ": " + what + "; " +
                     mend);
}

void TableNode::onlyKeys(std::initializer_list<std::string_view> keys) const {
  if (!json_->is_object()) fail("is not an object", "write { ... } here");
  for (const auto& [key, value] : json_->items()) {
    if (std::ranges::find(keys, key) != keys.end()) continue;
    std::string known;
    for (std::string_view k : keys)
      known += (known.empty() ? "" : ", ") + std::string(k);
    fail("has the unknown key '" + key + "'", "known here: " + known);
  }
}

bool TableNode::has(std::string_view key) const {
  return json_->is_object() && json_->contains(std::string(key));
}

TableNode TableNode::child(std::string_view key) const {
  if (!has(key)) fail("lacks '" + std::string(key) + "'", "add it");
  return {json_->at(std::string(key)), file_, pointer_ + "/" + std::string(key)};
}

std::vector<TableNode> TableNode::list(std::string_view key) const {
  const TableNode node = child(key);
  if (!node.json_->is_array()) node.fail("is not a list", "write [ ... ] here");
  std::vector<TableNode> nodes;
  for (std::size_t i = 0; i < node.json_->size(); ++i) {
    nodes.emplace_back((*node.json_)[i], file_, node.pointer_ + "/" + std::to_string(i));
  }
  return nodes;
}

std::vector<std::string> TableNode::keys() const {
  std::vector<std::string> result;
  for (const auto& [key, value] : json_->items())
    result.push_back(key);
  return result;
}

std::string TableNode::text() const {
  if (!json_->is_string()) fail("is not a text", "write it in quotes");
  auto value = json_->get<std::string>();
  if (value.empty()) fail("is empty", "fill it in");
  return value;
}

std::string TableNode::text(std::string_view key) const {
  return child(key).text();
}

bool TableNode::flag(std::string_view key) const {
  const TableNode node = child(key);
  if (!node.json_->is_boolean()) node.fail("is not true or false", "write true or false");
  return node.json_->get<bool>();
}

Length TableNode::length(std::string_view key) const {
  const auto parsed = parseLength(text(key), UnitSystem::UsCustomary);
  if (!parsed) child(key).fail(parsed.error, "give a length with its unit");
  if (inMetres(*parsed.value) < 0) child(key).fail("is negative", "give a length of 0 or more");
  return *parsed.value;
}

Length TableNode::positiveLength(std::string_view key) const {
  const Length value = length(key);
  if (inMetres(value) <= 0) child(key).fail("is not more than 0", "give a length above 0");
  return value;
}

double TableNode::number(std::string_view key) const {
  const TableNode node = child(key);
  if (!node.json_->is_number()) node.fail("is not a number", "write it without quotes");
  const double value = node.json_->get<double>();
  if (!(value >= 0)) node.fail("is negative", "give a number of 0 or more");
  return value;
}

Confidence confidenceFrom(const TableNode& node, std::string_view key) {
  return choice<Confidence>(node, key,
                            {{"seen", Confidence::Seen},
                             {"seen-second-hand", Confidence::SeenSecondHand},
                             {"from-memory", Confidence::FromMemory},
                             {"common-practice", Confidence::CommonPractice}});
}

Source TableNode::source() const {
  const TableNode node = child("source");
  node.onlyKeys({"citation", "confidence"});
  return {node.text("citation"), confidenceFrom(node, "confidence")};
}

} // namespace sump
