#include "core/exchange/plan_file_words.h"

#include <algorithm>
#include <numeric>

namespace sump {

namespace {

/// Levenshtein's distance (Wagner and Fischer 1974), one row at a time.
std::size_t letterChanges(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 0; i < a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i + 1;
    for (std::size_t j = 0; j < b.size(); ++j) {
      const std::size_t change = diagonal + (a[i] == b[j] ? 0 : 1);
      diagonal = row[j + 1];
      row[j + 1] = std::min({change, row[j] + 1, diagonal + 1});
    }
  }
  return row.back();
}

} // namespace

std::string_view nearestWord(std::string_view typed, const std::vector<std::string_view>& words) {
  constexpr std::size_t kLongestWord = 64;
  if (typed.size() > kLongestWord) return {};
  std::string_view best;
  // A third of the letters, at least two: `widht` is meant for `width`, `colour` for nothing.
  std::size_t fewest = std::max<std::size_t>(2, typed.size() / 3) + 1;
  for (const std::string_view word : words) {
    const std::size_t changes = letterChanges(typed, word);
    if (changes < fewest && changes < word.size()) {
      fewest = changes;
      best = word;
    }
  }
  return best;
}

std::string listed(const std::vector<std::string_view>& words) {
  std::string text;
  for (const std::string_view word : words) {
    if (!text.empty()) text += ", ";
    text += word;
  }
  return text;
}

} // namespace sump
