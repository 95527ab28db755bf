// What to buy: the items and pipe of all runs, the vaults and what goes into their walls, gathered
// into lines that a trade can order from.

#include "core/geometry/box_index.h"
#include "core/study/connections.h"
#include "core/study/context.h"
#include "core/study/line_ends.h"
#include "core/study/part_place.h"
#include "core/study/riser_passes.h"
#include "core/study/takeoff_entries.h"
#include "core/study/wall_sleeves.h"

#include "core/units/print.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <map>
#include <memory>
#include <numeric>
#include <tuple>

namespace sump {

namespace {

constexpr std::array<std::string_view, 3> kTrades = {"plumbing", "electrical", "site work"};
constexpr std::array<std::string_view, 24> kCategories = {
    "pipe",      "fitting",  "valve",   "part",       "joining", "wire",     "device", "joint",
    "cement",    "support",  "marking", "vault",      "lid",     "baffle",   "manway", "riser",
    "connector", "concrete", "surface", "excavation", "bedding", "backfill", "spoil",  "haulage"};

template <std::size_t N>
std::size_t rank(const std::array<std::string_view, N>& order, std::string_view word) {
  return static_cast<std::size_t>(std::ranges::find(order, word) - order.begin());
}

struct FittingName {
  std::string_view key;
  std::string_view name;
};
constexpr std::array<FittingName, 8> kFittingNames = {{{"elbow-90", "90\u00B0 elbow"},
                                                       {"elbow-45", "45\u00B0 elbow"},
                                                       {"elbow-22", "22-1/2\u00B0 elbow"},
                                                       {"elbow-11", "11-1/4\u00B0 elbow"},
                                                       {"tee", "Tee"},
                                                       {"coupling", "Coupling"},
                                                       {"reducer", "Reducer"},
                                                       {"cap", "Cap"}}};

std::string_view fittingName(std::string_view key) {
  for (const FittingName& row : kFittingNames) {
    if (row.key == key) return row.name;
  }
  return {};
}

bool isValve(std::string_view key) {
  return key.ends_with("valve") || key == "reduced-pressure-assembly" || key == "double-check";
}

double sizeRank(const std::string& size) {
  return nominalInches(size.substr(0, size.find(' '))).value_or(0);
}

/// Collects lines; equal lines are one line with the quantities added.
class Lines {
public:
  /// Adds the quantities to the line that is like this one.
  QuantityLine& add(const QuantityLine& entry) {
    const auto found = lines_.find(keyOf(entry));
    if (found == lines_.end()) {
      auto fresh = std::make_unique<QuantityLine>(entry);
      const Key key = keyOf(*fresh);
      return *lines_.emplace(key, std::move(fresh)).first->second;
    }
    QuantityLine& line = *found->second;
    line.quantity += entry.quantity;
    line.net += entry.net;
    // Objects come one after another, so only the last noted can be this one.
    if (line.runs.back() != entry.runs.front()) line.runs.push_back(entry.runs.front());
    return line;
  }
  std::vector<QuantityLine> sorted() const;

private:
  /// Views the texts of a line: looking for one copies nothing.
  using Key = std::array<std::string_view, 7>;
  static Key keyOf(const QuantityLine& line) {
    return {line.trade, line.category, line.service,    line.item,
            line.size,  line.material, line.description};
  }

  std::map<Key, std::unique_ptr<QuantityLine>> lines_; ///< keyed by their own texts
};

std::vector<QuantityLine> Lines::sorted() const {
  std::vector<QuantityLine> list;
  for (const auto& [key, line] : lines_)
    list.push_back(*line);
  std::ranges::stable_sort(list, {}, [](const QuantityLine& line) {
    return lineRank(line.trade, line.category, line.service, line.material, line.description,
                    line.size);
  });
  return list;
}

QuantityLine lineFor(std::string_view trade, std::string_view category, std::string item,
                     std::string description, std::string size, std::string material) {
  QuantityLine line;
  line.trade = trade;
  line.category = category;
  line.item = std::move(item);
  line.description = std::move(description);
  line.size = std::move(size);
  line.material = std::move(material);
  return line;
}

/// What is done with each entry; it may be emptied.
using Sink = std::function<void(TakeOffEntry&)>;

/// Makes the entries of one object after another, and keeps none of them.
class Entries {
public:
  Entries(UnitSystem units, const Sink& sink) : units_(units), sink_(sink) {}
  void addPipe(const Run& run, const RunStudy& study, const PipeProduct& pipe);
  void addItems(const Catalog& catalog, const Run& run, const RunStudy& study,
                const PipeProduct& pipe);
  void addLineItems(const Plan& plan, const Study& all, const Run& run, const RunStudy& study);
  void addConnectors(const Run& run, const RunStudy& study);
  void addRiserConnectors(const Run& run, const RunStudy& study, const Vault& vault,
                          const VaultStudy& vaultStudy);
  void addBasinConnectors(const Plan& plan, const Run& run, const RunStudy& study);
  void addSleeves(const Plan& plan, const BuildingParts& parts, const Run& run,
                  const RunStudy& study);
  void addVault(const Catalog& catalog, const Vault& vault, const VaultStudy& study);
  void addManway(const Vault& vault, const Manway& manway, const ManwayStudy& study);

private:
  void addConnector(const Run& run, std::string item, std::string description,
                    const std::string& size);
  void add(QuantityLine line, double quantity, const Id& from, std::string key = {},
           std::vector<double> lengths = {}) {
    line.quantity = quantity;
    line.runs = {from};
    if (key.empty()) key = line.item;
    TakeOffEntry entry{std::move(line), std::move(key), std::move(lengths)};
    sink_(entry);
  }
  std::string outsideSize(const Vault& vault) const {
    return printLength(vault.length, units_) + " x " + printLength(vault.width, units_);
  }

  UnitSystem units_;
  const Sink& sink_;
};

void Entries::addPipe(const Run& run, const RunStudy& study, const PipeProduct& pipe) {
  const ServiceFacts& service = facts(run.service);
  for (auto& [size, lengths] : cutsBySize(study.pieces)) {
    QuantityLine line =
        lineFor(service.trade, "pipe", pipe.key,
                isConduit(run.service) ? pipe.name : pipe.name + " pipe", size, pipe.name);
    line.service = service.key;
    line.net = metres(std::accumulate(lengths.begin(), lengths.end(), 0.0));
    const double quantity = inMetres(line.net);
    add(std::move(line), quantity, run.id, {}, std::move(lengths));
  }
}

void Entries::addItems(const Catalog& catalog, const Run& run, const RunStudy& study,
                       const PipeProduct& pipe) {
  const ServiceFacts& service = facts(run.service);
  const FittingFamily* family = catalog.fittingsFor(pipe.key);
  for (const RunItem& item : study.items) {
    const std::string_view fitting = fittingName(item.key);
    const PartProduct* part = catalog.part(item.key);
    const bool isFitting = !fitting.empty() && family != nullptr;
    add(lineFor(service.trade,
                !fitting.empty() ? "fitting" : (isValve(item.key) ? "valve" : "part"), item.key,
                !fitting.empty() ? std::string(fitting) : (part != nullptr ? part->name : item.key),
                item.size,
                isFitting                ? family->name
                : isBySupplier(item.key) ? std::string(kBySupplier)
                                         : ""),
        item.count, run.id, isFitting ? family->key + ":" + item.key : "");
  }
}

void Entries::addLineItems(const Plan& plan, const Study& all, const Run& run,
                           const RunStudy& study) {
  for (LineItem& item : lineItems(plan, all, run, study)) {
    const std::string key = item.key + (item.material == "Traffic rated" ? "-traffic" : "");
    add(lineFor(facts(run.service).trade, item.category, std::move(item.key),
                std::move(item.description), std::move(item.size), std::move(item.material)),
        1, run.id, key);
  }
}

void Entries::addConnector(const Run& run, std::string item, std::string description,
                           const std::string& size) {
  add(lineFor("site work", "connector", std::move(item), std::move(description), size, ""), 1,
      run.id);
}

/// One for each opening in a vault: watertight in outside walls, a sleeve in baffles.
void Entries::addConnectors(const Run& run, const RunStudy& study) {
  for (const Penetration& p : study.penetrations) {
    if (p.baffle.empty()) {
      addConnector(run, "wall-connector",
                   "Resilient watertight connector in vault wall (ASTM C923)", p.size);
    } else {
      addConnector(run, "baffle-sleeve", "Sleeve through baffle, by the size of its pipe", p.size);
    }
  }
}

/// The riser's wall needs a connector as the vault's does.
void Entries::addRiserConnectors(const Run& run, const RunStudy& study, const Vault& vault,
                                 const VaultStudy& vaultStudy) {
  for (std::size_t i = 0; i < vaultStudy.manways.size(); ++i) {
    for (const RiserPass& pass :
         riserPasses(study, vaultStudy, vaultStudy.manways[i], vault.manways[i].diameter))
      addConnector(run, "riser-connector",
                   "Resilient watertight connector in manway riser (ASTM C923)", pass.size);
  }
}

void Entries::addBasinConnectors(const Plan& plan, const Run& run, const RunStudy& study) {
  for (const BasinEntry& entry : basinEntries(plan, run, study))
    addConnector(run, "basin-connector",
                 "Flexible watertight connector in drain or basin wall, hole cored or cast",
                 entry.size);
}

/// What is left open in buildings' walls and floors; under a footing there is nothing to build in.
void Entries::addSleeves(const Plan& plan, const BuildingParts& parts, const Run& run,
                         const RunStudy& study) {
  for (const WallSleeve& sleeve : wallSleeves(plan, parts, study)) {
    if (!isBuiltIn(sleeve)) continue;
    std::string what = "Sleeve in building wall, by its own size, two over the pipe";
    if (isSkew(sleeve)) what += ", " + fixed(inDegrees(sleeve.skew), 0) + "\u00B0 off square";
    addConnector(run, "wall-sleeve", std::move(what), sleeve.sleeve.value_or(sleeve.size));
  }
  for (const SlabPass& pass : slabPasses(plan, parts, study))
    addConnector(run, "slab-sleeve", "Sleeve in floor slab, by its own size, two over the pipe",
                 pass.sleeve.value_or(pass.size));
}

/// `Baffle from the floor to 1" under the lid, open there for air`.
std::string baffleName(const Baffle& baffle, UnitSystem units) {
  const auto gap = [units](Length v) {
    return units == UnitSystem::Metric ? printShort(v, units) : inchesOnly(v);
  };
  std::string name = "Baffle from ";
  name += inMetres(baffle.bottomGap) > 0 ? gap(baffle.bottomGap) + " over the floor" : "the floor";
  if (inMetres(baffle.topGap) <= 0) return name + " to the lid";
  return name + " to " + gap(baffle.topGap) + " under the lid, open there for air";
}

void Entries::addVault(const Catalog& catalog, const Vault& vault, const VaultStudy& study) {
  const VaultModel* model = catalog.vault(vault.model);
  add(lineFor("site work", "vault", vault.model.empty() ? "own-size" : vault.model,
              model != nullptr ? model->name : "Precast vault", outsideSize(vault),
              vault.trafficLid ? "Precast concrete, traffic lid" : "Precast concrete"),
      1, vault.id);
  for (const Baffle& baffle : vault.baffles) {
    add(lineFor("site work", "baffle", "baffle", baffleName(baffle, units_), "", "Concrete"), 1,
        vault.id);
  }
  for (std::size_t i = 0; i < vault.manways.size(); ++i)
    addManway(vault, vault.manways[i], study.manways[i]);
}

/// Nominal inches; of a metric plan millimetres, with the inches of what is made to whole ones.
std::string manwaySize(Length diameter, UnitSystem units) {
  constexpr double kWhole = 0.02; // in
  const double across = inInches(diameter);
  const std::string nominal = std::to_string(std::lround(across));
  if (units != UnitSystem::Metric) return nominal;
  const std::string size = std::to_string(std::lround(inMetres(diameter) * 1000)) + " mm";
  return std::abs(across - std::round(across)) < kWhole ? size + " (" + nominal + " in)" : size;
}

void Entries::addManway(const Vault& vault, const Manway& manway, const ManwayStudy& study) {
  const std::string size = manwaySize(manway.diameter, units_);
  add(lineFor("site work", "manway", "manway", "Manway frame and cover", size,
              manway.trafficCover ? "Traffic rated" : "Light duty"),
      1, vault.id, manway.trafficCover ? "manway-traffic" : "manway");
  if (!study.riser || inMetres(*study.riser) <= 0) return;
  QuantityLine ring =
      lineFor("site work", "riser", "riser", "Manway riser", size, "Precast concrete");
  ring.net = *study.riser;
  add(std::move(ring), inMetres(*study.riser), vault.id);
}

} // namespace

LineRank lineRank(const std::string& trade, const std::string& category, const std::string& service,
                  const std::string& material, const std::string& description,
                  const std::string& size) {
  const auto known = serviceFromKey(service);
  return {rank(kTrades, trade),
          rank(kCategories, category),
          known ? static_cast<int>(*known) : -1,
          material,
          description,
          sizeRank(size)};
}

namespace {

BoxIndex vaultBoxes(const Study& study) {
  std::vector<Box> boxes;
  for (const VaultStudy& vault : study.vaults)
    boxes.push_back(boxOf(vault.outline));
  return BoxIndex(boxes);
}

void makeEntries(const Plan& plan, const Catalog& catalog, const Study& study, const Sink& sink) {
  Entries entries(plan.project.units, sink);
  const BoxIndex vaults = vaultBoxes(study);
  const BuildingParts parts = buildingParts(plan);
  for (std::size_t i = 0; i < study.runs.size(); ++i) {
    const Run& run = plan.runs[i];
    const PipeProduct* pipe = catalog.pipe(run.pipe);
    if (pipe == nullptr || !study.runs[i].resolved) continue;
    entries.addPipe(run, study.runs[i], *pipe);
    entries.addItems(catalog, run, study.runs[i], *pipe);
    entries.addLineItems(plan, study, run, study.runs[i]);
    entries.addConnectors(run, study.runs[i]);
    entries.addBasinConnectors(plan, run, study.runs[i]);
    entries.addSleeves(plan, parts, run, study.runs[i]);
    for (std::size_t k : vaults.touching(boxOf(planLine(study.runs[i]))))
      entries.addRiserConnectors(run, study.runs[i], plan.vaults[k], study.vaults[k]);
  }
  for (std::size_t i = 0; i < study.vaults.size(); ++i)
    entries.addVault(catalog, plan.vaults[i], study.vaults[i]);
}

} // namespace

std::vector<TakeOffEntry> takeOffEntries(const Plan& plan, const Catalog& catalog,
                                         const Study& study) {
  std::vector<TakeOffEntry> entries;
  makeEntries(plan, catalog, study,
              [&](TakeOffEntry& entry) { entries.push_back(std::move(entry)); });
  return entries;
}

std::vector<QuantityLine> takeOff(const StudyContext& context, const Study& study) {
  Lines lines;
  // Cuts of equal pipe for one service are packed together, whichever run they are for.
  std::map<QuantityLine*, std::vector<double>> cuts;
  makeEntries(context.plan, context.catalog, study, [&](TakeOffEntry& entry) {
    QuantityLine& line = lines.add(entry.line);
    if (entry.lengths.empty()) return;
    auto& lengths = cuts[&line];
    lengths.insert(lengths.end(), entry.lengths.begin(), entry.lengths.end());
  });
  for (auto& [line, lengths] : cuts) {
    const Length stick = context.catalog.pipe(line->item)->stick;
    line->quantity = inMetres(line->net);
    line->buy = static_cast<double>(sticksFor(std::move(lengths), inMetres(stick))) * stick;
  }
  return lines.sorted();
}

} // namespace sump
