#pragma once
// What is done before start-up and how often a system is looked after, as an editable table:
// resources/upkeep/upkeep.json, or `upkeep.json` in a user's own folder.
//
// Texts carry placeholders, `{primingVolume}`, that study/upkeep.h fills from plan and Study. All
// of the built-in table is common practice, no source.

#include "core/catalog/catalog.h"
#include "core/catalog/source.h"
#include "core/units/quantity.h"

#include <array>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sump {

enum class UpkeepUnit { Day, Week, Month };

struct UpkeepInterval {
  int count = 1;
  UpkeepUnit unit = UpkeepUnit::Day;
  bool operator==(const UpkeepInterval&) const = default;
};
/// `1 day`, `3 months`
std::string words(const UpkeepInterval& interval);
/// `each day`, `each 3 months`
std::string recurring(const UpkeepInterval& interval);

/// The figures that a text may hold in braces.
inline constexpr std::array<std::string_view, 23> kUpkeepFigures = {
    "lastVault",       "restLevel",         "workingVolume",     "floatHeight",
    "floatLevel",      "floatSignal",       "primingVolume",     "strainerVolume",
    "primingTime",     "suctionLift",       "motorSupply",       "controlSupply",
    "washSignal",      "pumpPressureUsual", "pumpPressureCurve", "pumpFlow",
    "eductorPressure", "recirculationFlow", "underflowFlow",     "pumpOutFirst",
    "pumpOutTrain",    "eductorOpen",       "eductorOutlet"};

/// One row of the table. `at` says which objects it concerns:
/// `run:SERVICE`, `part:KIND` (inline part), `end:FITTING`, `supply:KIND`, with the words of the
/// plan file; `signals` (but the float's), `basins`, `vaults`, `vault:first`, `vault:last`,
/// `rooms`.
struct UpkeepRow {
  std::string key;
  std::string title;
  std::string text;
  std::string caution; ///< may be empty
  std::vector<std::string> at;
  std::string when; ///< left out but when `drawn`, `eductor-over` (far too much pressure); or empty
};

struct UpkeepTaskRow {
  UpkeepRow row;
  UpkeepInterval every; ///< at the longest, where it is computed
  /// Where it is computed: how often if that cannot be decided.
  std::optional<UpkeepInterval> soonest;
  std::string computed; ///< `pumpOutFirst`, `pumpOutTrain` or empty
};

struct UpkeepTable {
  Source source;
  Pressure pressureLow, pressureHigh; ///< usual pump pressure
  std::vector<std::string> cautions;
  std::vector<UpkeepRow> startUp; ///< in the order of the work
  std::vector<UpkeepTaskRow> tasks;
};

/// Loaded once; never throws for a program that passed its tests.
const UpkeepTable& builtinUpkeep();
/// The built-in table, or that of a user's own folder. Throws CatalogError, which names file and
/// place, also for an unknown placeholder or object.
UpkeepTable loadUpkeep(const std::filesystem::path& folder);
/// A table of the user's own by its file. Throws CatalogError, also when there is no such file.
UpkeepTable readUpkeepFile(const std::filesystem::path& file);
/// The built-in table as JSON, for a user to start from.
std::string_view builtinUpkeepText();

} // namespace sump
