#include "app/command/open_plan.h"

#include "core/exchange/input_error.h"
#include "core/exchange/plan_file.h"

#include <algorithm>
#include <stdexcept>

namespace sump {

namespace {

/// Characters, not bytes: quantities hold signs such as the degree sign.
std::size_t displayWidth(const std::string& utf8) {
  return static_cast<std::size_t>(std::count_if(utf8.begin(), utf8.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
  }));
}

std::string padded(const std::string& text, std::size_t width, bool right) {
  const std::string space(width - std::min(width, displayWidth(text)), ' ');
  return right ? space + text : text + space;
}

std::string lineOf(const std::vector<std::string>& cells, const std::vector<std::size_t>& widths,
                   const std::vector<bool>& right) {
  std::string line;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    line += (i == 0 ? "" : "  ") + padded(cells[i], widths[i], right[i]);
  }
  return line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
}

std::string profileKey(const QCommandLineParser& parsed, const Catalog& catalog) {
  std::string key = parsed.value("profile").toStdString();
  if (key == kGenericProfile) return {};
  if (catalog.profile(key) == nullptr) {
    throw std::invalid_argument(
        "--profile '" + key + "' is no code profile; give one of: " + catalog.profileKeys() + ".");
  }
  return key;
}

} // namespace

QCommandLineOption catalogOption() {
  return {"catalog", "Take tables from the files in this folder where it has them.", "FOLDER"};
}

QCommandLineOption profileOption() {
  return {"profile", "Judge by this code profile instead of the plan's own.", "KEY"};
}

QCommandLineOption jsonOption() {
  return {"json", "Write JSON for programs instead of text."};
}

OpenedPlan openPlan(const QCommandLineParser& parsed) {
  const QStringList files = parsed.positionalArguments();
  if (files.size() != 1) {
    throw std::invalid_argument("name exactly one plan file, for example "
                                "'sumpwright check samples/transit-depot.sump'.");
  }
  const std::filesystem::path file = files.first().toStdString();
  Catalog catalog = parsed.isSet("catalog") ? loadCatalog(parsed.value("catalog").toStdString())
                                            : builtinCatalog();
  Plan plan = readPlanFile(file);
  if (parsed.isSet("profile")) plan.project.profile = profileKey(parsed, catalog);
  Review reviewed = review(plan, catalog, suppliesOf(parsed));
  return {file, std::move(catalog), std::move(reviewed)};
}

std::filesystem::path usableFolder(const std::string& name) {
  const std::filesystem::path folder = name;
  std::error_code error;
  std::filesystem::create_directories(folder, error);
  if (error) {
    throw InputError(folder.string(), "", 0, "the folder cannot be made: " + error.message(),
                     "name a folder that can be written");
  }
  return folder;
}

Supplies suppliesOf(const QCommandLineParser& parsed) {
  return parsed.isSet("catalog") ? loadSupplies(parsed.value("catalog").toStdString())
                                 : builtinSupplies();
}

QCommandLineOption upkeepTableOption() {
  return {"upkeep-table", "Take start-up and upkeep from this table instead of the built-in one.",
          "FILE"};
}

UpkeepTable upkeepOf(const QCommandLineParser& parsed) {
  if (parsed.isSet("upkeep-table"))
    return readUpkeepFile(parsed.value("upkeep-table").toStdString());
  return parsed.isSet("catalog") ? loadUpkeep(parsed.value("catalog").toStdString())
                                 : builtinUpkeep();
}

QCommandLineOption startOption() {
  return {"start", "Day of start-up, 2026-12-01; the upkeep calendar begins there.", "DATE"};
}

Date startDate(const QCommandLineParser& parsed) {
  if (!parsed.isSet("start")) {
    throw std::invalid_argument("The calendar needs the day of start-up: --start 2026-12-01.");
  }
  const std::string text = parsed.value("start").toStdString();
  const auto day = dateFrom(text);
  if (!day) {
    throw std::invalid_argument("--start '" + text + "' is no day; write it like 2026-12-01.");
  }
  return *day;
}

std::string columns(const std::vector<std::string>& headings,
                    const std::vector<std::vector<std::string>>& rows) {
  std::vector<std::string> heads;
  std::vector<bool> right;
  std::vector<std::size_t> widths;
  for (const std::string& heading : headings) {
    right.push_back(heading.starts_with('>'));
    heads.push_back(right.back() ? heading.substr(1) : heading);
    widths.push_back(displayWidth(heads.back()));
  }
  for (const auto& row : rows) {
    for (std::size_t i = 0; i < row.size(); ++i) {
      widths[i] = std::max(widths[i], displayWidth(row[i]));
    }
  }
  std::string text = lineOf(heads, widths, right);
  for (const auto& row : rows)
    text += lineOf(row, widths, right);
  return text;
}

std::string joined(const std::vector<Id>& ids, const char* separator) {
  std::string text;
  for (const Id& id : ids)
    text += (text.empty() ? "" : separator) + id;
  return text;
}

} // namespace sump
