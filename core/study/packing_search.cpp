#include "core/study/packing_search.h"

#include <algorithm>
#include <functional>
#include <limits>

namespace sump {

namespace {

/// Steps for one bin's completions, pass by pass: a quick descent first, everything last.
constexpr std::int64_t kPasses[] = {400, 20'000, std::numeric_limits<std::int64_t>::max()};
constexpr std::int64_t kNothingSkipped = std::numeric_limits<std::int64_t>::max();

} // namespace

PackingSearch::PackingSearch(PackingKinds kinds, std::int64_t capacity)
    : left_(std::move(kinds)), capacity_(capacity) {}

PackingAnswer PackingSearch::fit(int bins, std::int64_t& effort) {
  const std::int64_t slack = bins * capacity_ - left_.total();
  if (slack < 0) return PackingAnswer::DoesNotFit;
  const std::vector<int> all = left_.count;
  const std::int64_t share = effort / static_cast<std::int64_t>(std::size(kPasses));
  for (std::int64_t width : kPasses) {
    left_.count = all;
    filled_.clear();
    width_ = width;
    cutShort_ = false;
    effort_ = share;
    const bool fits = descend(bins, slack);
    left_.count = all;
    effort -= share - std::max<std::int64_t>(effort_, 0);
    if (fits) return PackingAnswer::Fits;
    if (!cutShort_) return PackingAnswer::DoesNotFit;
  }
  return PackingAnswer::GaveUp;
}

/// False, and everything is left out from here on, when the effort is used up.
bool PackingSearch::spend(std::int64_t steps) {
  effort_ -= steps;
  if (effort_ < 0) cutShort_ = true;
  return effort_ >= 0;
}

/// Fills bins one after another. `slack` is what may still be wasted in all of them together.
bool PackingSearch::descend(int bins, std::int64_t slack) {
  const auto largest = static_cast<std::size_t>(
      std::ranges::find_if(left_.count, [](int n) { return n > 0; }) - left_.count.begin());
  if (largest == left_.count.size()) return true;
  if (bins == 0 || !spend(3 * static_cast<std::int64_t>(left_.size.size() - largest))) return false;
  if (boundL2(left_, capacity_) > bins) return false;
  --left_.count[largest];
  const std::vector<Completion> all = completions(largest, capacity_ - left_.size[largest], slack);
  for (const Completion& completion : all) {
    for (std::size_t kind : completion.fill)
      --left_.count[kind];
    filled_.push_back(completion.fill);
    filled_.back().insert(filled_.back().begin(), largest);
    if (descend(bins - 1, slack - completion.waste)) return true;
    filled_.pop_back();
    for (std::size_t kind : completion.fill)
      ++left_.count[kind];
    if (effort_ < 0) {
      cutShort_ = true;
      break;
    }
  }
  ++left_.count[largest];
  return false;
}

std::vector<PackingSearch::Completion>
PackingSearch::completions(std::size_t largest, std::int64_t room, std::int64_t slack) {
  restFrom_.assign(left_.size.size() + 1, 0);
  for (std::size_t i = left_.size.size(); i-- > largest;) {
    restFrom_[i] = restFrom_[i + 1] + left_.size[i] * left_.count[i];
  }
  found_.clear();
  chosen_.clear();
  slack_ = slack;
  binSteps_ = 0;
  extend(largest, room, kNothingSkipped);
  std::vector<Completion> all = std::move(found_);
  found_ = {};
  std::ranges::stable_sort(all, {}, &Completion::waste);
  return all;
}

/// The first kind from `from` on that is no larger.
std::size_t PackingSearch::firstAtMost(std::int64_t size, std::size_t from) const {
  const auto at = std::lower_bound(left_.size.begin() + static_cast<std::ptrdiff_t>(from),
                                   left_.size.end(), size, std::greater<>());
  return static_cast<std::size_t>(at - left_.size.begin());
}

/// Adds kinds from `from` on to what is chosen; `skipped` is the smallest one that was left though
/// it may still fit.
void PackingSearch::extend(std::size_t from, std::int64_t room, std::int64_t skipped) {
  if (room - restFrom_[from] > slack_) return; // more would be wasted than there is to waste
  if (++binSteps_ > width_ || !spend(1)) {
    cutShort_ = true;
    return;
  }
  std::size_t kind = firstAtMost(room, from);
  while (kind < left_.size.size() && left_.count[kind] == 0)
    ++kind;
  if (kind == left_.size.size()) {
    if (skipped > room && room <= slack_) keep(room);
    return;
  }
  const std::int64_t size = left_.size[kind];
  const auto most = static_cast<int>(std::min<std::int64_t>(left_.count[kind], room / size));
  for (int n = most; n >= 0; --n) {
    chosen_.insert(chosen_.end(), static_cast<std::size_t>(n), kind);
    const bool spare = n < left_.count[kind];
    extend(kind + 1, room - n * size, spare ? std::min(skipped, size) : skipped);
    chosen_.resize(chosen_.size() - static_cast<std::size_t>(n));
  }
}

void PackingSearch::keep(std::int64_t waste) {
  if (!dominated(waste)) found_.push_back({waste, chosen_});
}

/// Is there a kind in this range of sizes with one that is not chosen?
bool PackingSearch::takenInstead(std::int64_t least, std::int64_t most) {
  for (std::size_t kind = firstAtMost(most, 0);
       kind < left_.size.size() && left_.size[kind] >= least; ++kind) {
    --effort_;
    const auto used = std::ranges::count(chosen_, kind);
    if (left_.count[kind] > used) return true;
  }
  return false;
}

/// One or two of the chosen could be changed for a single larger one (or one as large as both) that
/// is not chosen: what this bin gives up then fits where that one was, so the exchange loses no
/// packing and the completion that it leads to is looked at anyway.
bool PackingSearch::dominated(std::int64_t waste) {
  for (std::size_t i = 0; i < chosen_.size(); ++i) {
    const std::int64_t one = left_.size[chosen_[i]];
    if (waste > 0 && takenInstead(one + 1, one + waste)) return true;
    for (std::size_t j = i + 1; j < chosen_.size(); ++j) {
      const std::int64_t two = one + left_.size[chosen_[j]];
      if (takenInstead(two, two + waste)) return true;
    }
  }
  return false;
}

} // namespace sump
