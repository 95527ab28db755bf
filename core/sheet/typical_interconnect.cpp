#include "core/sheet/typical_interconnect.h"

#include "core/sheet/tags.h"
#include "core/study/object_names.h"
#include "core/units/print.h"

#include <algorithm>
#include <cmath>
#include <ranges>
#include <utility>

namespace sump {

namespace {

constexpr double kAlike = 1e-6; // m

bool isSame(Length a, Length b) {
  return std::abs(inMetres(a - b)) < kAlike;
}

bool isSame(const std::optional<Length>& a, const std::optional<Length>& b) {
  return a.has_value() == b.has_value() && (!a || isSame(*a, *b));
}

/// What a detail shows of a vault beside the pipe.
bool isSameVault(const Study& study, const Id& a, const Id& b) {
  const VaultStudy *first = study.vault(a), *second = study.vault(b);
  if (first == nullptr || second == nullptr) return false;
  return a == b ||
         (isSame(first->floor, second->floor) &&
          isSame(first->lidUnderside, second->lidUnderside) &&
          isSame(first->lidTop, second->lidTop) && isSame(first->waterLevel, second->waterLevel));
}

/// The baffle that it goes through; null: none.
const Baffle* passedBaffle(const Vault& vault, const Run& run) {
  const int first = std::min(run.from.chamber, run.to.chamber); // chambers count from 1
  const std::size_t index = static_cast<std::size_t>(first) - 1;
  return first >= 1 && index < vault.baffles.size() ? &vault.baffles[index] : nullptr;
}

/// How far the run reaches from the middle of its baffle at its start and its end, m.
std::pair<double, double> reachAbout(const Vault& vault, const Run& run) {
  const std::vector<ChamberBox> boxes = chambers(vault);
  const int first = std::min(run.from.chamber, run.to.chamber); // chambers count from 1
  const double middle = (boxes[first - 1].high.x + boxes[first].low.x) / 2;
  return {std::abs(run.from.at.x - middle), std::abs(run.to.at.x - middle)};
}

bool isSameBaffle(const Plan& plan, const Run& a, const Run& b) {
  const Vault &inA = *plan.vaults.find(a.from.target), &inB = *plan.vaults.find(b.from.target);
  const Baffle *first = passedBaffle(inA, a), *second = passedBaffle(inB, b);
  if (first == nullptr || second == nullptr) return false;
  const auto [fromA, toA] = reachAbout(inA, a);
  const auto [fromB, toB] = reachAbout(inB, b);
  return isSame(first->thickness, second->thickness) &&
         isSame(first->bottomGap, second->bottomGap) && isSame(first->topGap, second->topGap) &&
         std::abs(fromA - fromB) < kAlike && std::abs(toA - toB) < kAlike;
}

bool isSamePipe(const Study& study, const Run& a, const Run& b) {
  const RunStudy *first = study.run(a.id), *second = study.run(b.id);
  if (first == nullptr || second == nullptr || !first->resolved || !second->resolved) return false;
  const auto same = [](const RunPoint& p, const RunPoint& q) {
    return std::abs(p.station - q.station) < kAlike && std::abs(p.at.z - q.at.z) < kAlike;
  };
  return a.pipe == b.pipe && a.size == b.size && a.from.fitting == b.from.fitting &&
         a.to.fitting == b.to.fitting && a.parts.empty() && b.parts.empty() &&
         first->downLegs.empty() && second->downLegs.empty() && // each has its own piece's mark
         std::ranges::equal(first->points, second->points, same);
}

/// How an interconnect lies about its baffle.
std::string aboutBaffle(const SheetJob& job, const Run& run) {
  const auto [before, behind] = reachAbout(*job.plan().vaults.find(run.from.target), run);
  constexpr double kEven = 0.001; // m
  if (std::abs(before - behind) < kEven) return "half of it on each side of the baffle";
  return printLength(metres(before), job.units()) + " of it before the baffle's middle, " +
         printLength(metres(behind), job.units()) + " behind";
}

/// Its levels are told with the name of one vault: which others they hold in.
std::optional<std::string> otherVaults(const SheetJob& job, const std::vector<Id>& alike) {
  const auto tags = runTags(job.plan());
  const auto vaultOf = [&](const Id& run) { return job.plan().runs.find(run)->from.target; };
  const Id own = vaultOf(alike.front());
  std::string others;
  for (const Id& run : alike) {
    if (vaultOf(run) == own) continue;
    others += (others.empty() ? "" : "; ") + tags.at(run) + " in " +
              called(*job.plan().vaults.find(vaultOf(run)));
  }
  if (others.empty()) return std::nullopt;
  return "The same levels of lid, water, pipe and floor and the same lengths hold for " + others +
         ".";
}

} // namespace

std::vector<Id> alikeInterconnects(const Plan& plan, const Study& study, const Id& run) {
  const Run& given = *plan.runs.find(run);
  std::vector<Id> alike;
  for (const Run& other : plan.runs) {
    if (other.id == run) {
      alike.push_back(other.id);
      continue;
    }
    if (other.service == Service::Interconnect && given.service == Service::Interconnect &&
        isSameVault(study, given.from.target, other.from.target) &&
        isSameBaffle(plan, given, other) && isSamePipe(study, given, other))
      alike.push_back(other.id);
  }
  return alike;
}

bool isFirstInItsVault(const SheetJob& job, const Id& run) {
  const Run& given = *job.plan().runs.find(run);
  if (given.service != Service::Interconnect) return false;
  const std::vector<Id> alike = alikeInterconnects(job.plan(), job.study(), run);
  const auto first = std::ranges::find_if(alike, [&](const Id& other) {
    return job.plan().runs.find(other)->from.target == given.from.target;
  });
  return *first == run;
}

std::string interconnectTags(const SheetJob& job, const std::vector<Id>& alike) {
  const auto tags = runTags(job.plan());
  std::string more;
  for (const Id& run : alike | std::views::drop(1))
    more += (more.empty() ? "" : ", ") + tags.at(run);
  const std::string& first = tags.at(alike.front());
  return more.empty() ? first : first + " (" + more + " similar)";
}

std::vector<std::string> interconnectNotes(const SheetJob& job, const std::vector<Id>& alike) {
  const Run& shown = *job.plan().runs.find(alike.front());
  std::vector<std::string> notes = {"Through the baffle, sealed all round; " +
                                    aboutBaffle(job, shown) + "."};
  if (auto others = otherVaults(job, alike)) notes.push_back(std::move(*others));
  return notes;
}

} // namespace sump
