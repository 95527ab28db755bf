// What to buy: the items and pipe of all runs, the vaults and what goes into their walls, gathered
// into lines that a trade can order from.

#include "core/study/context.h"

#include "core/units/print.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numeric>
#include <tuple>

namespace sump {

namespace {

constexpr std::array<std::string_view, 3> kTrades = {"plumbing", "electrical", "site work"};
constexpr std::array<std::string_view, 9> kCategories = {
    "pipe", "fitting", "valve", "part", "vault", "baffle", "manway", "riser", "connector"};

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
  QuantityLine& line(QuantityLine like) {
    const auto key = std::tuple(like.trade, like.category, like.service, like.item, like.size,
                                like.material, like.description);
    const auto [at, fresh] = lines_.try_emplace(key, std::move(like));
    return at->second;
  }
  /// Objects come one after another, so only the last noted can be this one.
  static void from(QuantityLine& line, const Id& id) {
    if (line.runs.empty() || line.runs.back() != id) line.runs.push_back(id);
  }
  std::vector<QuantityLine> sorted() const;

private:
  std::map<std::tuple<std::string, std::string, std::string, std::string, std::string, std::string,
                      std::string>,
           QuantityLine>
      lines_;
};

std::vector<QuantityLine> Lines::sorted() const {
  std::vector<QuantityLine> list;
  for (const auto& [key, line] : lines_)
    list.push_back(line);
  std::ranges::stable_sort(list, {}, [](const QuantityLine& line) {
    const auto service = serviceFromKey(line.service);
    return std::tuple(rank(kTrades, line.trade), rank(kCategories, line.category),
                      service ? static_cast<int>(*service) : -1, line.material, line.description,
                      sizeRank(line.size));
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

/// Cuts of equal pipe for one service are packed together, whichever run they are for.
class PipeCuts {
public:
  void add(Lines& lines, const Run& run, const RunStudy& study, const PipeProduct& pipe);
  void finish();

private:
  struct Cuts {
    std::vector<double> lengths;
    Length stick;
  };
  std::map<QuantityLine*, Cuts> cuts_;
};

void PipeCuts::add(Lines& lines, const Run& run, const RunStudy& study, const PipeProduct& pipe) {
  const ServiceFacts& service = facts(run.service);
  for (const auto& [size, lengths] : cutsBySize(study.pieces)) {
    QuantityLine like =
        lineFor(service.trade, "pipe", pipe.key, pipe.name + " pipe", size, pipe.name);
    if (isConduit(run.service)) like.description = pipe.name;
    like.service = service.key;
    QuantityLine& line = lines.line(std::move(like));
    line.net += metres(std::accumulate(lengths.begin(), lengths.end(), 0.0));
    Cuts& cuts = cuts_[&line];
    cuts.stick = pipe.stick;
    cuts.lengths.insert(cuts.lengths.end(), lengths.begin(), lengths.end());
    Lines::from(line, run.id);
  }
}

void PipeCuts::finish() {
  for (auto& [line, cuts] : cuts_) {
    line->quantity = inMetres(line->net);
    line->buy = static_cast<double>(sticksFor(cuts.lengths, inMetres(cuts.stick))) * cuts.stick;
  }
}

void addItems(Lines& lines, const StudyContext& context, const Run& run, const RunStudy& study,
              const PipeProduct& pipe) {
  const ServiceFacts& service = facts(run.service);
  const FittingFamily* family = context.catalog.fittingsFor(pipe.key);
  for (const RunItem& item : study.items) {
    const std::string_view fitting = fittingName(item.key);
    const PartProduct* part = context.catalog.part(item.key);
    const bool isFitting = !fitting.empty();
    QuantityLine& line = lines.line(lineFor(
        service.trade, isFitting ? "fitting" : (isValve(item.key) ? "valve" : "part"), item.key,
        isFitting ? std::string(fitting) : (part != nullptr ? part->name : item.key), item.size,
        isFitting && family != nullptr ? family->name : ""));
    line.quantity += item.count;
    Lines::from(line, run.id);
  }
}

/// Watertight connectors where runs pass through outside walls.
void addConnectors(Lines& lines, const Run& run, const RunStudy& study) {
  for (const Penetration& p : study.penetrations) {
    const bool wall = p.baffle.empty();
    QuantityLine& line = lines.line(
        lineFor("site work", "connector", wall ? "wall-connector" : "baffle-sleeve",
                wall ? "Resilient watertight connector in vault wall" : "Sleeve through baffle",
                p.size, ""));
    line.quantity += 1;
    Lines::from(line, run.id);
  }
}

std::string outsideSize(const Vault& vault) {
  return feetInches(vault.length, 1) + " x " + feetInches(vault.width, 1);
}

void addVault(Lines& lines, const StudyContext& context, const Vault& vault,
              const VaultStudy& study) {
  const VaultModel* model = context.catalog.vault(vault.model);
  QuantityLine& box =
      lines.line(lineFor("site work", "vault", vault.model.empty() ? "own-size" : vault.model,
                         model != nullptr ? model->name : "Precast vault", outsideSize(vault),
                         vault.trafficLid ? "Precast concrete, traffic lid" : "Precast concrete"));
  box.quantity += 1;
  Lines::from(box, vault.id);
  if (!vault.baffles.empty()) {
    QuantityLine& baffle =
        lines.line(lineFor("site work", "baffle", "baffle", "Full-height baffle", "", "Concrete"));
    baffle.quantity += static_cast<double>(vault.baffles.size());
    Lines::from(baffle, vault.id);
  }
  for (std::size_t i = 0; i < vault.manways.size(); ++i) {
    const Manway& manway = vault.manways[i];
    const std::string size = std::to_string(std::lround(inInches(manway.diameter)));
    QuantityLine& cover =
        lines.line(lineFor("site work", "manway", "manway", "Manway frame and cover", size,
                           manway.trafficCover ? "Traffic rated" : "Light duty"));
    cover.quantity += 1;
    Lines::from(cover, vault.id);
    const auto& riser = study.manways[i].riser;
    if (!riser || inMetres(*riser) <= 0) continue;
    QuantityLine& ring = lines.line(
        lineFor("site work", "riser", "riser", "Manway riser", size, "Precast concrete"));
    ring.quantity += inMetres(*riser);
    ring.net += *riser;
    Lines::from(ring, vault.id);
  }
}

} // namespace

std::vector<QuantityLine> takeOff(const StudyContext& context, const Study& study) {
  Lines lines;
  PipeCuts cuts;
  for (std::size_t i = 0; i < study.runs.size(); ++i) {
    const Run& run = context.plan.runs[i];
    const PipeProduct* pipe = context.catalog.pipe(run.pipe);
    if (pipe == nullptr || !study.runs[i].resolved) continue;
    cuts.add(lines, run, study.runs[i], *pipe);
    addItems(lines, context, run, study.runs[i], *pipe);
    addConnectors(lines, run, study.runs[i]);
  }
  cuts.finish();
  for (std::size_t i = 0; i < study.vaults.size(); ++i) {
    addVault(lines, context, context.plan.vaults[i], study.vaults[i]);
  }
  return lines.sorted();
}

} // namespace sump
