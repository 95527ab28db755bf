#include "core/units/expression.h"

#include "core/units/scanner.h"

#include <cmath>
#include <functional>

namespace sump {

namespace {

constexpr std::size_t kLongest = 200; // bytes; keeps a pasted page from costing time
constexpr int kDeepest = 20;          // brackets in brackets

using Literal = std::function<Parsed<double>(std::string_view)>;

/// A number, or with `measured` a quantity in SI.
struct Value {
  double amount = 0;
  bool measured = false;
};

/// `×`, `÷` and dots for a product as ASCII.
std::string withAsciiOperators(std::string text) {
  constexpr std::pair<std::string_view, std::string_view> kSigns[] = {
      {"\u00D7", "*"}, {"\u00B7", "*"}, {"\u00F7", "/"}};
  for (const auto& [sign, ascii] : kSigns) {
    for (std::size_t at = 0; (at = text.find(sign, at)) != std::string::npos; ++at)
      text.replace(at, sign.size(), ascii);
  }
  return text;
}

bool isBareNumber(std::string_view text) {
  Scanner scan(text);
  return scan.mixed().has_value() && scan.done();
}

/// Reads by recursive descent: sum, product, factor.
class SumReader {
public:
  SumReader(std::string_view text, const Literal& literal, double bareUnit)
      : text_(text), literal_(literal), bareUnit_(bareUnit) {}

  Parsed<double> read() {
    const std::optional<Value> value = sum(0);
    if (value && !done()) fail("has '" + std::string(rest()) + "' where it should end");
    if (!error_.empty()) return {std::nullopt, error_};
    const double result = measure(*value);
    if (!std::isfinite(result)) return {std::nullopt, "is too large"};
    return {result, {}};
  }

private:
  std::string_view rest() const { return text_.substr(at_); }
  bool done() {
    skipSpace();
    return at_ == text_.size();
  }
  void skipSpace() {
    while (at_ < text_.size() && text_[at_] == ' ')
      ++at_;
  }
  bool take(char c) {
    skipSpace();
    if (at_ == text_.size() || text_[at_] != c) return false;
    ++at_;
    return true;
  }
  std::optional<Value> fail(const std::string& why) {
    if (error_.empty()) error_ = why;
    return std::nullopt;
  }
  double measure(const Value& v) const { return v.measured ? v.amount : v.amount * bareUnit_; }

  std::optional<Value> sum(int depth);
  std::optional<Value> product(int depth);
  std::optional<Value> factor(int depth);
  std::optional<Value> operand();

  std::string_view text_;
  const Literal& literal_;
  double bareUnit_;
  std::size_t at_ = 0;
  std::string error_;
};

std::optional<Value> SumReader::sum(int depth) {
  std::optional<Value> left = product(depth);
  while (left) {
    const bool plus = take('+');
    if (!plus && !take('-')) break;
    const std::optional<Value> right = product(depth);
    if (!right) return right;
    const double sign = plus ? 1 : -1;
    if (left->measured == right->measured) {
      left->amount += sign * right->amount;
    } else {
      left = Value{measure(*left) + sign * measure(*right), true};
    }
  }
  return left;
}

std::optional<Value> SumReader::product(int depth) {
  std::optional<Value> left = factor(depth);
  while (left) {
    const bool times = take('*');
    if (!times && !take('/')) break;
    const std::optional<Value> right = factor(depth);
    if (!right) return right;
    if (times) {
      if (left->measured && right->measured) return fail("multiplies two values that have units");
      left = Value{left->amount * right->amount, left->measured || right->measured};
    } else {
      if (right->amount == 0) return fail("divides by 0");
      if (right->measured && !left->measured)
        return fail("divides a bare number by a value with unit");
      left = Value{left->amount / right->amount, left->measured && !right->measured};
    }
  }
  return left;
}

std::optional<Value> SumReader::factor(int depth) {
  if (depth > kDeepest) return fail("has too many brackets");
  if (take('-')) {
    std::optional<Value> value = factor(depth + 1);
    if (value) value->amount = -value->amount;
    return value;
  }
  if (take('+')) return factor(depth + 1);
  if (!take('(')) return operand();
  const std::optional<Value> value = sum(depth + 1);
  if (value && !take(')')) return fail("has a bracket that is not closed");
  return value;
}

/// The longest text from here that is one value: `12'-6 1/2"` before `12'`.
std::optional<Value> SumReader::operand() {
  skipSpace();
  const std::string_view here = rest();
  std::size_t end = std::min(here.find_first_of("+*()"), here.size());
  while (end > 0) {
    const std::string_view piece = here.substr(0, end);
    if (const Parsed<double> value = literal_(piece)) {
      at_ += end;
      const bool bare = isBareNumber(piece);
      return Value{bare ? *value.value / bareUnit_ : *value.value, !bare};
    }
    end = piece.find_last_of("-/");
    if (end == std::string_view::npos) break;
  }
  if (here.empty()) return fail("ends where a value should follow");
  return fail("has '" + std::string(here) + "' where a value should stand");
}

Parsed<double> evaluate(std::string_view typed, const Literal& literal, std::string_view examples) {
  const std::string text = withAsciiOperators(plainText(typed));
  const Parsed<double> single = literal(text);
  if (single) return single;
  const bool isSum = text.find_first_of("+*()-/") != std::string::npos;
  const auto wrong = [&](const std::string& why) -> Parsed<double> {
    return {std::nullopt, "'" + text + "' " + why + "; type it like " + std::string(examples)};
  };
  if (text.size() > kLongest) return single;
  const Parsed<double> one = literal("1");
  const Parsed<double> result = SumReader(text, literal, *one.value).read();
  if (result) return result;
  // Where nothing looks like a sum, the sentence about the single value says more.
  return isSum ? wrong(result.error) : single;
}

/// A reader of parse.h as a reader of SI numbers.
template <class Parse> Literal literalOf(Parse parse) {
  return [parse](std::string_view text) -> Parsed<double> {
    const auto parsed = parse(text);
    if (!parsed) return {std::nullopt, parsed.error};
    return {parsed.value->value(), {}};
  };
}

template <class Q> Parsed<Q> as(const Parsed<double>& result) {
  if (!result) return {std::nullopt, result.error};
  return {Q::from_value(*result.value), {}};
}

Parsed<double> plainNumber(std::string_view text) {
  Scanner scan(text);
  const double sign = scan.take('-') ? -1 : 1;
  const std::optional<double> number = scan.mixed();
  if (number && scan.done() && std::isfinite(*number)) return {sign * *number, {}};
  return {std::nullopt,
          "'" + std::string(text.substr(0, 60)) + "' is not a number; type it like 12, 2.5 or 1/4"};
}

} // namespace

Parsed<Length> evaluateLength(std::string_view text, UnitSystem bare) {
  return as<Length>(evaluate(text,
                             literalOf([bare](std::string_view t) { return parseLength(t, bare); }),
                             "3' 6\" + 2*4\" or (1.2 m + 0.4 m)/2"));
}

Parsed<Volume> evaluateVolume(std::string_view text, UnitSystem bare) {
  return as<Volume>(evaluate(text,
                             literalOf([bare](std::string_view t) { return parseVolume(t, bare); }),
                             "2*1500 gal or 11.4 m3 + 200 L"));
}

Parsed<Flow> evaluateFlow(std::string_view text, UnitSystem bare) {
  return as<Flow>(evaluate(text,
                           literalOf([bare](std::string_view t) { return parseFlow(t, bare); }),
                           "45 gpm + 15 gpm or 2*2.8 L/s"));
}

Parsed<Pressure> evaluatePressure(std::string_view text, UnitSystem bare) {
  return as<Pressure>(
      evaluate(text, literalOf([bare](std::string_view t) { return parsePressure(t, bare); }),
               "40 psi + 5 psi or 2*1.4 bar"));
}

Parsed<Mass> evaluateMass(std::string_view text, UnitSystem bare) {
  return as<Mass>(evaluate(text,
                           literalOf([bare](std::string_view t) { return parseMass(t, bare); }),
                           "2*6,000 lb or 5670 kg"));
}

Parsed<double> evaluateSlope(std::string_view text, UnitSystem bare) {
  return evaluate(
      text, [bare](std::string_view t) { return parseSlope(t, bare); }, "1/4 in/ft or 2*1 %");
}

Parsed<Angle> evaluateAngle(std::string_view text) {
  return as<Angle>(evaluate(text, literalOf([](std::string_view t) { return parseAngle(t); }),
                            "90 - 22.5 or 180/8"));
}

Parsed<double> evaluateNumber(std::string_view text) {
  return evaluate(text, plainNumber, "2*3.5 or (1 + 2)/4");
}

Parsed<int> evaluateWhole(std::string_view text) {
  const Parsed<double> number = evaluateNumber(text);
  if (!number) return {std::nullopt, number.error};
  if (*number.value != std::round(*number.value) || std::abs(*number.value) > 1e9) {
    return {std::nullopt, "'" + std::string(text.substr(0, 60)) +
                              "' is not a whole number; type it like 3 or 2*4"};
  }
  return {static_cast<int>(*number.value), {}};
}

} // namespace sump
