#include "core/study/upkeep_table.h"

#include "core/catalog/embedded.h"
#include "core/catalog/table_reader.h"
#include "core/plan/keys.h"
#include "core/plan/service.h"
#include "core/units/parse.h"

#include <algorithm>
#include <charconv>

namespace sump {

namespace {

constexpr const char* kTable = "upkeep/upkeep.json";

constexpr std::array<std::pair<UpkeepUnit, std::string_view>, 3> kUnitWords = {
    {{UpkeepUnit::Day, "day"}, {UpkeepUnit::Week, "week"}, {UpkeepUnit::Month, "month"}}};

/// `3 months` or `1 week`.
std::optional<UpkeepInterval> intervalOf(std::string_view text) {
  int count = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), count);
  if (error != std::errc{} || count < 1 || count > 1000) return std::nullopt;
  text.remove_prefix(static_cast<std::size_t>(end - text.data()));
  if (!text.starts_with(' ')) return std::nullopt;
  text.remove_prefix(1);
  if (text.ends_with('s')) text.remove_suffix(1);
  for (const auto& [unit, word] : kUnitWords) {
    if (text == word) return UpkeepInterval{count, unit};
  }
  return std::nullopt;
}

UpkeepInterval interval(const TableNode& node, std::string_view key) {
  const auto value = intervalOf(node.text(key));
  if (!value) node.child(key).fail("is no interval", "write it like 1 day, 2 weeks, 6 months");
  return *value;
}

/// Refuses placeholders that nothing fills, and braces left open.
void checkFigures(const TableNode& node, std::string_view text) {
  while (true) {
    const std::size_t open = text.find_first_of("{}");
    if (open == std::string_view::npos) return;
    const std::size_t close = text.find('}', open);
    const bool pair = text[open] == '{' && close != std::string_view::npos;
    const std::string_view name = pair ? text.substr(open + 1, close - open - 1) : "";
    if (std::ranges::find(kUpkeepFigures, name) == kUpkeepFigures.end()) {
      std::string known;
      for (std::string_view figure : kUpkeepFigures)
        known += (known.empty() ? "" : ", ") + std::string(figure);
      node.fail("has the unknown placeholder '{" + std::string(name) + "}'", "known: " + known);
    }
    text.remove_prefix(close + 1);
  }
}

std::string filledText(const TableNode& node, std::string_view key) {
  std::string text = node.text(key);
  checkFigures(node.child(key), text);
  return text;
}

bool isObjectWord(std::string_view word) {
  for (std::string_view whole :
       {"signals", "basins", "vaults", "vault:first", "vault:last", "rooms"}) {
    if (word == whole) return true;
  }
  const std::size_t colon = word.find(':');
  if (colon == std::string_view::npos) return false;
  const std::string_view kind = word.substr(0, colon), name = word.substr(colon + 1);
  if (kind == "run") return serviceFromKey(name).has_value();
  if (kind == "part") return fromKey(kPartKeys, name).has_value();
  if (kind == "end") return fromKey(kEndFittingKeys, name).has_value();
  return kind == "supply" && fromKey(kSupplyKeys, name).has_value();
}

UpkeepRow readRow(const TableNode& node) {
  UpkeepRow row{node.text("key"), filledText(node, "title"), filledText(node, "text"), {}, {}, {}};
  if (node.has("when")) {
    row.when =
        choice<std::string>(node, "when", {{"drawn", "drawn"}, {"eductor-over", "eductor-over"}});
  }
  if (node.has("caution")) row.caution = filledText(node, "caution");
  for (const TableNode& word : node.list("at")) {
    row.at.push_back(word.text());
    if (!isObjectWord(row.at.back())) {
      word.fail("'" + row.at.back() + "' names no kind of object",
                "use run:SERVICE, part:KIND, end:FITTING or supply:KIND with the plan file's "
                "words, or signals, basins, vaults, vault:first, vault:last, rooms");
    }
  }
  return row;
}

UpkeepRow readStartUp(const TableNode& node) {
  node.onlyKeys({"key", "title", "text", "caution", "at", "when"});
  return readRow(node);
}

UpkeepTaskRow readTask(const TableNode& node) {
  node.onlyKeys({"key", "title", "text", "caution", "at", "when", "every", "soonest", "computed"});
  UpkeepTaskRow task{readRow(node), interval(node, "every"), std::nullopt, {}};
  if (node.has("computed") != node.has("soonest")) {
    node.fail("has only one of 'computed' and 'soonest'", "give both or neither");
  }
  if (node.has("computed")) {
    task.soonest = interval(node, "soonest");
    task.computed = choice<std::string>(
        node, "computed", {{"pumpOutFirst", "pumpOutFirst"}, {"pumpOutTrain", "pumpOutTrain"}});
  }
  return task;
}

Pressure pressure(const TableNode& node, std::string_view key) {
  const auto value = parsePressure(node.text(key), UnitSystem::UsCustomary);
  if (!value) node.child(key).fail(value.error, "give a pressure with its unit");
  return *value.value;
}

UpkeepTable readUpkeep(const TableNode& root) {
  root.onlyKeys({"source", "pumpPressure", "cautions", "startUp", "tasks"});
  UpkeepTable table;
  table.source = root.source();
  const TableNode usual = root.child("pumpPressure");
  usual.onlyKeys({"low", "high"});
  table.pressureLow = pressure(usual, "low");
  table.pressureHigh = pressure(usual, "high");
  if (table.pressureHigh < table.pressureLow) {
    usual.child("high").fail("is below 'low'", "swap them");
  }
  for (const TableNode& caution : root.list("cautions")) {
    table.cautions.push_back(caution.text());
    checkFigures(caution, table.cautions.back());
  }
  table.startUp = readList(root, "startUp", "key", readStartUp);
  table.tasks = readList(root, "tasks", "key", readTask);
  return table;
}

} // namespace

std::string words(const UpkeepInterval& interval) {
  std::string text = std::to_string(interval.count) + " ";
  for (const auto& [unit, word] : kUnitWords) {
    if (unit == interval.unit) text += word;
  }
  return text + (interval.count == 1 ? "" : "s");
}

std::string recurring(const UpkeepInterval& interval) {
  const std::string text = words(interval);
  return "each " + (interval.count == 1 ? text.substr(2) : text);
}

const UpkeepTable& builtinUpkeep() {
  static const UpkeepTable table = loadUpkeep({});
  return table;
}

UpkeepTable readUpkeepFile(const std::filesystem::path& file) {
  if (!std::filesystem::is_regular_file(file)) {
    throw CatalogError(file.string() + ": is no file; name a table of upkeep in JSON");
  }
  const std::filesystem::path folder = file.has_parent_path() ? file.parent_path() : ".";
  const TableDocument table = openTable(folder, file.filename().string());
  return readUpkeep(TableNode(table.json, table.file, ""));
}

std::string_view builtinUpkeepText() {
  return embeddedText(kTable);
}

UpkeepTable loadUpkeep(const std::filesystem::path& folder) {
  const TableDocument table = openTable(folder, kTable);
  return readUpkeep(TableNode(table.json, table.file, ""));
}

} // namespace sump
