#pragma once
// Roots of rising functions.

#include <cmath>

namespace sump {

/// Where the rising function is 0 between `low` and `high`; the nearer end when it is 0 in neither.
/// False position with the Illinois damping (Dowell and Jarratt 1971, from memory), bisecting when
/// that stalls.
template <class Function> double risingRoot(Function f, double low, double high) {
  double atLow = f(low), atHigh = f(high);
  if (atLow >= 0) return low;
  if (atHigh <= 0) return high;
  int moved = 0; // which end moved last: -1 low, 1 high
  for (int turn = 1; turn <= 200; ++turn) {
    const double width = high - low;
    if (width <= 1e-14 * (std::abs(low) + std::abs(high))) break;
    double middle = turn % 8 == 0 ? low + width / 2 : low - atLow * width / (atHigh - atLow);
    if (!(middle > low && middle < high)) middle = low + width / 2;
    const double there = f(middle);
    if (there == 0) return middle;
    if (there < 0) {
      low = middle;
      atLow = there;
      if (moved == -1) atHigh /= 2;
      moved = -1;
    } else {
      high = middle;
      atHigh = there;
      if (moved == 1) atLow /= 2;
      moved = 1;
    }
  }
  return low + (high - low) / 2;
}

} // namespace sump
