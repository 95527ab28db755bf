#pragma once
// What can be bought: pipe, fittings, vaults, valves. Read from resources/catalog/*.json (embedded
// in the program at build time; a folder of the user's own can replace them), validated on load;
// every table names its source.

#include "core/catalog/limits.h"
#include "core/catalog/losses.h"
#include "core/catalog/source.h"
#include "core/catalog/wire_areas.h"
#include "core/units/quantity.h"

#include <filesystem>
#include <map>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace sump {

enum class Joining { SolventSocket, Bell, Gasket, Threaded };

struct PipeSize {
  std::string nominal; ///< `1-1/2`
  Length outside;
  Length inside; ///< average inside diameter
  Length wall;
  std::optional<Pressure> rating; ///< at 23 C (73 F), water
};

struct PipeProduct {
  std::string key;  ///< `pvc-sch80`
  std::string name; ///< `PVC Sch 80`
  std::string standard;
  Joining joining = Joining::SolventSocket;
  bool belledEnd = false; ///< one bell a stick: no couplings needed
  Length stick;           ///< bought length
  std::string fittings;   ///< key of the fitting family
  std::vector<PipeSize> sizes;
  Source source;
  const PipeSize* size(std::string_view nominal) const;
};

enum class FittingKind { Elbow90, Elbow45, Elbow22, Elbow11, Tee, Coupling, Reducer, Cap };

/// Centre-to-socket allowances by size: how far pipe stops short of the fitting's centre.
struct FittingSize {
  std::string nominal;
  std::map<FittingKind, Length> takeOut; ///< a kind that is not here is not stocked in this size
};

struct FittingFamily {
  std::string key;
  std::string name;
  std::vector<FittingSize> sizes;
  Source source;
  std::optional<Length> takeOut(FittingKind kind, std::string_view nominal) const;
  bool stocks(FittingKind kind, std::string_view nominal) const;
};

/// A part set in the line or at an end: its laying length is taken out of the pipe.
struct PartProduct {
  std::string key; ///< PartKind or EndFitting key: `union`, `backwater-valve`, `foot-valve`
  std::string name;
  std::vector<std::pair<std::string, Length>> layingLength; ///< by nominal size
  Source source;
};

struct VaultModel {
  std::string key;
  std::string name;
  std::string trafficClass; ///< `light` or `traffic`
  Length length, width;     ///< outside
  Length wall, lid, floor;  ///< thicknesses
  Length insideHeight;
  std::vector<Length> baffleOffsets; ///< inside face to near face
  Length baffleThickness;
  Source source;
};

/// Limits of one code family or place, which stand in for the generic ones. Excerpts: what a
/// profile leaves out stays generic.
struct CodeProfile {
  std::string key; ///< in Project::profile
  std::string name;
  std::string about; ///< what it excerpts, and for what it is an analogue
  std::vector<Limit> rows;
};

/// Stands for no profile, as the empty key does.
inline constexpr std::string_view kGenericProfile = "generic";

struct Catalog {
  std::vector<PipeProduct> pipes;
  std::vector<FittingFamily> fittings;
  std::vector<PartProduct> parts;
  std::vector<VaultModel> vaults;
  LossTable losses;
  Limits limits; ///< the generic profile
  std::vector<CodeProfile> profiles;
  WireAreas wiring;
  const CodeProfile* profile(std::string_view key) const;
  /// The generic limits with those of the profile; of an empty or unknown key the generic ones.
  Limits limitsOf(std::string_view profileKey) const;
  /// `generic` and the keys of the profiles, for messages.
  std::string profileKeys() const;
  const PipeProduct* pipe(std::string_view key) const;
  const PipeSize* pipeSize(std::string_view pipeKey, std::string_view nominal) const;
  const FittingFamily* fittingsFor(std::string_view pipeKey) const;
  const PartProduct* part(std::string_view key) const;
  const VaultModel* vault(std::string_view key) const;
};

/// A catalogue or limits file that cannot be used: which file, where in it, what and how to mend.
struct CatalogError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// The tables built into the program. Loaded once; never throws for a program that passed its
/// tests.
const Catalog& builtinCatalog();
/// The built-in tables with every file that `folder` also holds taken from there instead.
/// Throws CatalogError.
Catalog loadCatalog(const std::filesystem::path& folder);

/// Nominal size as a number of inches, for comparing (`1-1/2` -> 1.5); nothing if it is no size.
std::optional<double> nominalInches(std::string_view nominal);
std::string_view key(FittingKind kind);

} // namespace sump
