#include "core/units/scanner.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <limits>
#include <utility>

namespace sump {

namespace {

constexpr std::array<std::pair<std::string_view, std::string_view>, 18> kReplacements = {{
    {"\u2032", "'"},
    {"\u2019", "'"},
    {"\u2033", "\""},
    {"\u201D", "\""},
    {"''", "\""},
    {"\u00BD", " 1/2"},
    {"\u00BC", " 1/4"},
    {"\u00BE", " 3/4"},
    {"\u215B", " 1/8"},
    {"\u215C", " 3/8"},
    {"\u215D", " 5/8"},
    {"\u215E", " 7/8"},
    {"\u2212", "-"},
    {"\u00B3", "3"},
    {"\u00B0", "deg"},
    {"\u00A0", " "},
    {"\u202F", " "},
    {"\u2044", "/"},
}};

bool isDigit(char c) {
  return c >= '0' && c <= '9';
}

char lowered(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

/// True for one to three digits without a leading zero, then groups of a comma and three digits,
/// then perhaps a point and decimals. Short of All, one group alone is not enough.
bool isGrouped(std::string_view number, Groups which) {
  const std::string_view whole = number.substr(0, number.find('.'));
  const std::size_t lead = whole.find(',');
  if (lead == std::string_view::npos || lead < 1 || lead > 3 || whole.front() == '0') return false;
  if ((whole.size() - lead) % 4 != 0) return false;
  for (std::size_t i = lead; i < whole.size(); ++i) {
    if ((whole[i] == ',') != ((i - lead) % 4 == 0)) return false;
  }
  const bool sure = whole.size() - lead > 4 || whole.size() < number.size();
  return which == Groups::All || sure;
}

/// What from_chars could not hold: too large, or too near zero to tell from it.
double outOfRange(std::string_view number) {
  const std::size_t digit = number.find_first_not_of("0");
  return digit < number.find('.') ? std::numeric_limits<double>::infinity() : 0.0;
}

} // namespace

std::string withoutGroups(std::string_view text, Groups which) {
  std::string result;
  while (!text.empty()) {
    const std::size_t before = std::min(text.find_first_of("0123456789"), text.size());
    result += text.substr(0, before);
    text.remove_prefix(before);
    const std::size_t end = std::min(text.find_first_not_of("0123456789.,"), text.size());
    const std::string_view number = text.substr(0, end);
    const bool grouped = isGrouped(number, which);
    for (char c : number) {
      if (c != ',' || !grouped) result += c;
    }
    text.remove_prefix(end);
  }
  return result;
}

std::string plainText(std::string_view typed) {
  std::string text(typed);
  for (const auto& [from, to] : kReplacements) {
    for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size()) {
      text.replace(at, from.size(), to);
    }
  }
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  if (first == std::string::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

void Scanner::skipSpace() {
  while (!rest_.empty() && (rest_.front() == ' ' || rest_.front() == '\t'))
    rest_.remove_prefix(1);
}

bool Scanner::done() {
  skipSpace();
  return rest_.empty();
}

bool Scanner::take(char c) {
  skipSpace();
  if (rest_.empty() || rest_.front() != c) return false;
  rest_.remove_prefix(1);
  return true;
}

std::optional<double> Scanner::decimal() {
  skipSpace();
  std::string number;
  bool point = false;
  std::size_t used = 0;
  for (; used < rest_.size(); ++used) {
    const char c = rest_[used];
    if (isDigit(c)) {
      number += c;
    } else if ((c == '.' || c == ',') && !point) {
      point = true;
      number += '.';
    } else {
      break;
    }
  }
  double value = 0;
  const auto result = std::from_chars(number.data(), number.data() + number.size(), value,
                                      std::chars_format::fixed);
  if (result.ec == std::errc::invalid_argument) return std::nullopt;
  if (result.ec == std::errc::result_out_of_range) value = outOfRange(number);
  rest_.remove_prefix(used);
  return value;
}

/// A slash right after a number, with a digit right behind it: the middle of a fraction.
bool Scanner::takeSlash() {
  if (rest_.size() < 2 || rest_.front() != '/' || !isDigit(rest_[1])) return false;
  rest_.remove_prefix(1);
  return true;
}

std::optional<double> Scanner::over(double numerator) {
  const auto denominator = decimal();
  if (!denominator || *denominator == 0 || !std::isfinite(*denominator)) return std::nullopt;
  return numerator / *denominator;
}

std::optional<double> Scanner::mixed() {
  const auto first = decimal();
  if (!first) return std::nullopt;
  if (takeSlash()) return over(*first);
  // Only when a whole fraction follows; otherwise nothing more is taken.
  const std::string_view before = rest_;
  if (rest_.size() > 1 && rest_.front() == '-' && isDigit(rest_[1])) rest_.remove_prefix(1);
  const auto numerator = decimal();
  if (numerator && takeSlash()) {
    const auto fraction = over(*numerator);
    return fraction ? std::optional(*first + *fraction) : std::nullopt;
  }
  rest_ = before;
  return first;
}

std::string Scanner::word() {
  skipSpace();
  std::string text;
  while (!rest_.empty() && rest_.front() != ' ' && rest_.front() != '-' && rest_.front() != ':') {
    const char c = rest_.front();
    if (text.empty() && (isDigit(c) || c == '.' || c == ',')) break;
    if ((c == '\'' || c == '"') && text.empty()) {
      rest_.remove_prefix(1);
      return {c};
    }
    text += lowered(c);
    rest_.remove_prefix(1);
  }
  return text;
}

} // namespace sump
