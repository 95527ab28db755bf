#pragma once
// Reading typed numbers and unit words one after another. Private to core/units.

#include <optional>
#include <string>
#include <string_view>

namespace sump {

/// The text in plain ASCII terms: primes, vulgar fractions, superscripts and the Unicode minus
/// become `'`, `"`, ` 1/2`, `3`, `-`; outer spaces go.
std::string plainText(std::string_view typed);

/// Walks a plainText from left to right.
class Scanner {
public:
  explicit Scanner(std::string_view text) : rest_(text) {}
  void skipSpace();
  bool done();
  bool take(char c);
  /// A decimal number with point or comma, without sign or exponent.
  std::optional<double> decimal();
  /// A decimal, a fraction `1/2`, or a mixed number `6 1/2` or `6-1/2`.
  std::optional<double> mixed();
  /// The letters, `%`, `°`, `'`, `"`, `/` and digits that follow, in lower case: a unit word.
  std::string word();

private:
  std::optional<double> fractionTail(double numerator);
  std::string_view rest_;
};

} // namespace sump
