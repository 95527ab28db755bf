#pragma once
// Packings that are good, not proven: one bin after another, each with the largest size left and
// what fills it best. Private to core/study.

#include "core/study/packing_kinds.h"

#include <cstdint>
#include <vector>

namespace sump {

/// The kinds in each bin. A fill that leaves at most `enough` is taken as it is found: large ones
/// keep small sizes for later bins. Spends at most about `effort` steps, and takes off what it
/// spent.
///
/// Minimum bin slack with the largest size fixed, J. Gupta, J. Ho, Production Planning & Control 10
/// (1999) 598; with a slack that is good enough, K. Fleszar, K. Hindi, Computers & Operations
/// Research 29 (2002) 821. Both from memory.
std::vector<std::vector<std::size_t>> fillBins(PackingKinds kinds, std::int64_t capacity,
                                               std::int64_t enough, std::int64_t& effort);

} // namespace sump
