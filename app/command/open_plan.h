#pragma once
// What every subcommand does first: read the catalogue and the plan, and review it.

#include "app/command/command.h"
#include "core/catalog/supplies.h"
#include "core/exchange/calendar.h"
#include "core/rules/review.h"
#include "core/study/upkeep_table.h"

#include <filesystem>
#include <string>

namespace sump {

struct OpenedPlan {
  std::filesystem::path file;
  Catalog catalog;
  Review review;
  int status() const { return review.hasErrors() ? kFindings : kClean; }
};

/// `--catalog`, `--profile` and `--json`, which subcommands share.
QCommandLineOption catalogOption();
QCommandLineOption profileOption();
QCommandLineOption jsonOption();

/// Reads the one plan named in `parsed`. Throws std::invalid_argument when there is not exactly
/// one, InputError and CatalogError for files that cannot be used.
OpenedPlan openPlan(const QCommandLineParser& parsed);

/// The folder, made when it is not there. Throws InputError when it cannot be made.
std::filesystem::path usableFolder(const std::string& name);

/// The supplies of `--catalog`, or the built-in ones. Throws CatalogError.
Supplies suppliesOf(const QCommandLineParser& parsed);

/// The upkeep table of `--catalog`, or the built-in one. Throws CatalogError.
UpkeepTable upkeepOf(const QCommandLineParser& parsed);
QCommandLineOption startOption();
QCommandLineOption upkeepTableOption();
/// The day of `--start`. Throws std::invalid_argument when it is missing or no day.
Date startDate(const QCommandLineParser& parsed);

/// Cells in columns, two spaces apart; right-aligned where a heading starts with `>`.
std::string columns(const std::vector<std::string>& headings,
                    const std::vector<std::vector<std::string>>& rows);

std::string joined(const std::vector<Id>& ids, const char* separator);

} // namespace sump
