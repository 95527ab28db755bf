#include "core/units/scanner.h"

#include <array>
#include <cctype>
#include <charconv>
#include <utility>

namespace sump {

namespace {

constexpr std::array<std::pair<std::string_view, std::string_view>, 14> kReplacements = {{
    {"\u2032", "'"},
    {"\u2019", "'"},
    {"\u2033", "\""},
    {"\u201D", "\""},
    {"''", "\""},
    {"\u00BD", " 1/2"},
    {"\u00BC", " 1/4"},
    {"\u00BE", " 3/4"},
    {"\u215B", " 1/8"},
    {"\u2212", "-"},
    {"\u00B3", "3"},
    {"\u00B0", "deg"},
    {"\u00A0", " "},
    {"\u2044", "/"},
}};

bool isDigit(char c) {
  return c >= '0' && c <= '9';
}

} // namespace

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
  if (result.ec != std::errc{} || number == ".") return std::nullopt;
  rest_.remove_prefix(used);
  return value;
}

std::optional<double> Scanner::fractionTail(double numerator) {
  const auto denominator = decimal();
  if (!denominator || *denominator == 0) return std::nullopt;
  return numerator / *denominator;
}

std::optional<double> Scanner::mixed() {
  const auto first = decimal();
  if (!first) return std::nullopt;
  if (!rest_.empty() && rest_.front() == '/' && rest_.size() > 1 && isDigit(rest_[1])) {
    rest_.remove_prefix(1);
    return fractionTail(*first);
  }
  // `6 1/2` and `6-1/2`: only when a whole fraction follows; otherwise nothing more is taken.
  const std::string_view before = rest_;
  if (take('-')) skipSpace();
  const auto numerator = decimal();
  if (numerator && !rest_.empty() && rest_.front() == '/' && rest_.size() > 1 &&
      isDigit(rest_[1])) {
    rest_.remove_prefix(1);
    if (const auto fraction = fractionTail(*numerator)) return *first + *fraction;
    return std::nullopt;
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
    text += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    rest_.remove_prefix(1);
  }
  return text;
}

} // namespace sump
