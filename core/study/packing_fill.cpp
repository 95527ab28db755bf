#include "core/study/packing_fill.h"

#include <algorithm>
#include <functional>

namespace sump {

namespace {

using Fill = std::vector<std::size_t>; // kinds

class BinFiller {
public:
  BinFiller(PackingKinds& left, std::int64_t enough, std::int64_t mostSteps)
      : left_(left), enough_(enough), mostSteps_(mostSteps), last_(left.size.size()) {
    while (last_ > 0 && left_.count[last_ - 1] == 0)
      --last_;
  }
  /// What fits best beside what is in the bin already.
  const Fill& best(std::size_t from, std::int64_t room) {
    slack_ = room;
    extend(from, room);
    return best_;
  }
  std::int64_t steps() const { return steps_; }

private:
  bool done() const { return slack_ <= enough_ || steps_ > mostSteps_; }
  std::size_t firstAtMost(std::int64_t size, std::size_t from) const {
    const auto at = std::lower_bound(left_.size.begin() + static_cast<std::ptrdiff_t>(from),
                                     left_.size.begin() + static_cast<std::ptrdiff_t>(last_), size,
                                     std::greater<>());
    auto kind = static_cast<std::size_t>(at - left_.size.begin());
    while (kind < last_ && left_.count[kind] == 0)
      ++kind;
    return kind;
  }
  void keep(std::int64_t slack) {
    if (slack >= slack_) return;
    slack_ = slack;
    best_ = chosen_;
  }
  void extend(std::size_t from, std::int64_t room);

  PackingKinds& left_;
  const std::int64_t enough_, mostSteps_;
  std::size_t last_; ///< beyond the smallest kind that is left
  Fill chosen_, best_;
  std::int64_t slack_ = 0;
  std::int64_t steps_ = 0;
};

void BinFiller::extend(std::size_t from, std::int64_t room) {
  ++steps_;
  keep(room);
  if (last_ == 0) return;
  const std::int64_t smallest = left_.size[last_ - 1];
  std::size_t kind = firstAtMost(room, from);
  if (kind < last_ && room - left_.size[kind] < smallest) {
    // Nothing fits after it, so of all that would be the last the largest is best.
    chosen_.push_back(kind);
    keep(room - left_.size[kind]);
    chosen_.pop_back();
    kind = firstAtMost(room - smallest, from);
  }
  for (; kind < last_ && !done(); ++kind) {
    if (left_.count[kind] == 0) continue;
    --left_.count[kind];
    chosen_.push_back(kind);
    extend(kind, room - left_.size[kind]);
    chosen_.pop_back();
    ++left_.count[kind];
  }
}

} // namespace

std::vector<Fill> fillBins(PackingKinds kinds, std::int64_t capacity, std::int64_t enough,
                           std::int64_t& effort) {
  constexpr std::int64_t kStepsABin = 20'000;
  std::vector<Fill> bins;
  for (std::size_t largest = 0; largest < kinds.size.size();) {
    if (kinds.count[largest] == 0) {
      ++largest;
      continue;
    }
    --kinds.count[largest];
    BinFiller filler(kinds, enough, std::clamp<std::int64_t>(effort, 0, kStepsABin));
    Fill fill = filler.best(largest, capacity - kinds.size[largest]);
    effort -= filler.steps();
    for (std::size_t kind : fill)
      --kinds.count[kind];
    fill.insert(fill.begin(), largest);
    bins.push_back(std::move(fill));
  }
  return bins;
}

} // namespace sump
