#pragma once
// What a job uses up beside pipe and fittings: cement, supports, marking, and what is wasted. Read
// from resources/catalog/supplies.json; a user's own catalogue folder can replace it.

#include "core/catalog/source.h"
#include "core/units/quantity.h"

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sump {

/// A figure for all sizes up to this one.
template <class T> struct BySize {
  std::string nominal;
  T figure{};
};

struct Supplies {
  std::map<std::string, int, std::less<>> sockets; ///< joints of an item
  std::vector<BySize<double>> jointsPerQuart;      ///< by rising size
  double primerShare = 0;                          ///< quarts of primer for one of cement
  Volume can, metricCan;                           ///< smallest that is bought, by the plan's units
  std::vector<BySize<Length>> socketDepth;         ///< that pipe goes into a solvent socket
  Source socketDepthSource;
  Source solventSource;

  std::vector<Temperature> supportTemperatures; ///< rising
  std::vector<BySize<std::vector<Length>>> supports;
  Source supportSource;
  std::vector<BySize<Length>> codeSupports;
  Length codeVertical;
  Source codeSupportSource;
  std::vector<BySize<Length>> conduitSupports;
  Source conduitSupportSource;

  Length labelSpacing;
  Source markingSource;

  std::map<std::string, double, std::less<>> waste; ///< share added to what is laid
  Source wasteSource;

  /// 2 for an item that the table does not have.
  int socketsOf(std::string_view item) const;
  Volume canOf(UnitSystem units) const { return units == UnitSystem::Metric ? metricCan : can; }
  /// Of the next larger size in the table; nothing above the largest.
  std::optional<Length> socketDepthOf(std::string_view nominal) const;
  std::optional<double> jointsPerQuartOf(std::string_view nominal) const;
  /// The lesser of trade table and code; nothing for water or pipe beyond the table.
  std::optional<Length> supportSpacing(std::string_view nominal, Temperature water) const;
  std::optional<Length> conduitSpacing(std::string_view nominal) const;
  double wasteOf(std::string_view category) const; ///< 0 where the table has none
};

/// Loaded once; never throws for a program that passed its tests.
const Supplies& builtinSupplies();
/// The built-in table, or that of a user's own folder. Throws CatalogError.
Supplies loadSupplies(const std::filesystem::path& folder);

} // namespace sump
