#pragma once
// Writing JSON so that version control shows small differences: fixed order, two spaces a level,
// points and short members on one line, shortest numbers. Private to exchange/.

#include "core/exchange/json_document.h"

#include <string>
#include <string_view>

namespace sump {

/// Rounded to 1e-9 and as short as it can be: `3.6576`, `-0.000000001`, never an exponent or -0.
/// `v` must be finite.
std::string numberText(double v);
/// In quotes, with `"`, `\` and control characters escaped; UTF-8 goes through as it is.
std::string inQuotes(std::string_view text);
bool isUtf8(std::string_view text);
/// For messages: control and non-ASCII bytes as `?`, cut at `most` characters.
std::string oneLine(std::string_view text, std::size_t most);

/// The whole document with a newline at the end. A list or object that holds no object and fits in
/// 100 columns stands on one line.
std::string jsonText(const JsonNode& root);

} // namespace sump
