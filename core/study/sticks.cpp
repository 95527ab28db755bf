// From cuts to whole sticks of pipe.

#include "core/study/context.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace sump {

namespace {

/// A cut that is longer than whole sticks by less than this part of one counts as whole sticks.
constexpr double kCutHair = 1e-6;

/// Whole sticks that go into a cut before its remainder, which is 0 or more and at most one stick.
double wholeSticks(double cut, double stick) {
  return std::max(0.0, std::ceil(cut / stick - kCutHair) - 1);
}

} // namespace

int couplingsIn(Length cut, const PipeProduct& pipe) {
  return pipe.belledEnd ? 0 : static_cast<int>(wholeSticks(inMetres(cut), inMetres(pipe.stick)));
}

int sticksFor(std::vector<double> cuts, double stick) {
  double sticks = 0;
  for (double& cut : cuts) {
    const double whole = wholeSticks(cut, stick);
    cut -= whole * stick;
    sticks += whole;
  }
  std::ranges::sort(cuts, std::greater<>());
  std::multiset<double> left; // what remains of each opened stick
  for (double cut : cuts) {
    if (cut <= 0) continue;
    const auto tightest = left.lower_bound(cut - stick * kCutHair);
    const double rest = tightest == left.end() ? stick : *tightest;
    if (tightest != left.end()) left.erase(tightest);
    left.insert(std::max(0.0, rest - cut));
  }
  return static_cast<int>(sticks) + static_cast<int>(left.size());
}

std::map<std::string, std::vector<double>> cutsBySize(const std::vector<PipePiece>& pieces) {
  std::map<std::string, std::vector<double>> cuts;
  for (const PipePiece& piece : pieces) {
    if (inMetres(piece.cut) > 0) cuts[piece.size].push_back(inMetres(piece.cut));
  }
  return cuts;
}

} // namespace sump
