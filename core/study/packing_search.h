#pragma once
// Bin completion: does everything fit into so many bins? Private to core/study.

#include "core/study/packing_kinds.h"

#include <cstdint>
#include <vector>

namespace sump {

enum class PackingAnswer { Fits, DoesNotFit, GaveUp };

class PackingSearch {
public:
  PackingSearch(PackingKinds kinds, std::int64_t capacity);
  /// Spends at most `effort` steps, and takes off what it spent.
  PackingAnswer fit(int bins, std::int64_t& effort);
  /// After `Fits`: the kinds in each bin.
  const std::vector<std::vector<std::size_t>>& filled() const { return filled_; }

private:
  using Fill = std::vector<std::size_t>; ///< kinds, rising index
  struct Completion {
    std::int64_t waste = 0;
    Fill fill;
  };
  bool descend(int bins, std::int64_t slack);
  std::vector<Completion> completions(std::size_t largest, std::int64_t room, std::int64_t slack);
  void extend(std::size_t from, std::int64_t room, std::int64_t skipped);
  void keep(std::int64_t waste);
  bool dominated(std::int64_t waste);
  bool takenInstead(std::int64_t least, std::int64_t most);
  std::size_t firstAtMost(std::int64_t size, std::size_t from) const;
  bool spend(std::int64_t steps);

  PackingKinds left_;
  const std::int64_t capacity_;
  std::vector<std::vector<std::size_t>> filled_;
  std::int64_t effort_ = 0;
  std::int64_t width_ = 0; ///< steps that one bin's completions may take in this pass
  bool cutShort_ = false;  ///< something was left out, so a failure proves nothing
  // Of the bin being completed:
  std::vector<std::int64_t> restFrom_; ///< all that is left from a kind on
  std::vector<Completion> found_;
  Fill chosen_;
  std::int64_t slack_ = 0;
  std::int64_t binSteps_ = 0;
};

} // namespace sump
