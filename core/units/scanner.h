#pragma once
// Reading typed numbers and unit words one after another, under parse.h. Only ASCII is looked at
// after plainText(), so the locale never matters.

#include <optional>
#include <string>
#include <string_view>

namespace sump {

/// The text in plain ASCII terms: primes, vulgar fractions, superscripts and the Unicode minus
/// become `'`, `"`, ` 1/2`, `3`, `-`; outer spaces go.
std::string plainText(std::string_view typed);

/// Which commas withoutGroups() takes for thousands separators.
enum class Groups {
  Certain, ///< `1,234,567` and `1,234.5`, which can be nothing else
  All      ///< `1,234` too, which elsewhere is one and a bit
};
/// The text without the commas between thousands. `0,125` and `12,5` are never groups.
std::string withoutGroups(std::string_view text, Groups which);

/// Walks a plainText from left to right.
class Scanner {
public:
  explicit Scanner(std::string_view text) : rest_(text) {}
  void skipSpace();
  bool done();
  bool take(char c);
  /// A decimal number with point or comma, without sign or exponent; infinity when too large.
  std::optional<double> decimal();
  /// A decimal, a fraction `1/2`, or a mixed number `6 1/2` or `6-1/2`. `6 - 1/2` is left at 6,
  /// because someone may mean a subtraction.
  std::optional<double> mixed();
  /// The letters, `%`, `°`, `'`, `"`, `/` and digits that follow, in lower case: a unit word.
  std::string word();

private:
  bool takeSlash();
  std::optional<double> over(double numerator);
  std::string_view rest_;
};

} // namespace sump
