#include "core/exchange/json_text.h"

#include <algorithm>
#include <array>
#include <charconv>

namespace sump {

namespace {

constexpr std::size_t kColumns = 100;
constexpr int kDecimals = 9;

bool hasChildren(const JsonNode& node) {
  return !node.items.empty();
}

/// Objects inside are always given lines of their own, so that one changed item is one changed
/// line; points and lists of points may share a line.
bool mayStandOnOneLine(const JsonNode& node) {
  return std::ranges::none_of(node.items, [](const JsonNode& item) {
    return (item.kind == JsonNode::Kind::Object && hasChildren(item)) || !mayStandOnOneLine(item);
  });
}

void writeInline(const JsonNode& node, std::string& out);

void writeMembersInline(const JsonNode& node, std::string& out) {
  for (std::size_t i = 0; i < node.items.size(); ++i) {
    if (i > 0) out += ", ";
    if (!node.keys.empty()) out += inQuotes(node.keys[i]) + ": ";
    writeInline(node.items[i], out);
  }
}

void writeInline(const JsonNode& node, std::string& out) {
  switch (node.kind) {
  case JsonNode::Kind::Null:
    out += "null";
    break;
  case JsonNode::Kind::Boolean:
    out += node.truth ? "true" : "false";
    break;
  case JsonNode::Kind::Number:
    out += numberText(node.number);
    break;
  case JsonNode::Kind::Text:
    out += inQuotes(node.text);
    break;
  case JsonNode::Kind::List:
    out += '[';
    writeMembersInline(node, out);
    out += ']';
    break;
  case JsonNode::Kind::Object:
    out += '{';
    writeMembersInline(node, out);
    out += '}';
    break;
  }
}

class Printer {
public:
  explicit Printer(std::string& out) : out_(out) {}
  void write(const JsonNode& node, std::size_t indent, std::size_t column) {
    if (!hasChildren(node) || fitsInline(node, column)) {
      writeInline(node, out_);
    } else {
      writeMembers(node, indent);
    }
  }

private:
  bool fitsInline(const JsonNode& node, std::size_t column) {
    if (!mayStandOnOneLine(node)) return false;
    scratch_.clear();
    writeInline(node, scratch_);
    return column + scratch_.size() <= kColumns;
  }
  void writeMembers(const JsonNode& node, std::size_t indent) {
    const bool object = node.kind == JsonNode::Kind::Object;
    out_ += object ? "{" : "[";
    for (std::size_t i = 0; i < node.items.size(); ++i) {
      out_ += i > 0 ? ",\n" : "\n";
      out_.append(indent + 2, ' ');
      const std::string key = object ? inQuotes(node.keys[i]) + ": " : "";
      out_ += key;
      // One column more for the comma.
      write(node.items[i], indent + 2, indent + 2 + key.size() + 1);
    }
    out_ += '\n';
    out_.append(indent, ' ');
    out_ += object ? "}" : "]";
  }

  std::string& out_;
  std::string scratch_;
};

} // namespace

std::string numberText(double v) {
  // The longest: sign, 309 digits, point and decimals.
  std::array<char, 400> buffer;
  char* const end = buffer.data() + buffer.size();
  char* last = std::to_chars(buffer.data(), end, v, std::chars_format::fixed).ptr;
  const char* point = std::find(buffer.data(), last, '.');
  if (last - point > kDecimals + 1) {
    last = std::to_chars(buffer.data(), end, v, std::chars_format::fixed, kDecimals).ptr;
    while (last[-1] == '0')
      --last;
    if (last[-1] == '.') --last;
  }
  const std::string_view text(buffer.data(), static_cast<std::size_t>(last - buffer.data()));
  return text == "-0" ? "0" : std::string(text);
}

std::string inQuotes(std::string_view text) {
  constexpr std::string_view kHex = "0123456789abcdef";
  std::string out = "\"";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (c == '\n') {
      out += "\\n";
    } else if (c == '\t') {
      out += "\\t";
    } else if (byte < 0x20) {
      out += "\\u00";
      out += kHex[byte >> 4];
      out += kHex[byte & 15];
    } else {
      out += c;
    }
  }
  return out + '"';
}

/// Well-formed byte sequences: The Unicode Standard 15, table 3-7 (from memory).
bool isUtf8(std::string_view text) {
  const auto byte = [&](std::size_t i) {
    return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
  };
  for (std::size_t i = 0; i < text.size();) {
    const unsigned lead = byte(i);
    const std::size_t more = lead < 0x80                    ? 0
                             : lead >= 0xC2 && lead <= 0xDF ? 1
                             : (lead & 0xF0) == 0xE0        ? 2
                             : lead >= 0xF0 && lead <= 0xF4 ? 3
                                                            : 4;
    if (more == 4) return false;
    const unsigned low = lead == 0xE0 ? 0xA0 : lead == 0xF0 ? 0x90 : 0x80;
    const unsigned high = lead == 0xED ? 0x9F : lead == 0xF4 ? 0x8F : 0xBF;
    if (more > 0 && (byte(i + 1) < low || byte(i + 1) > high)) return false;
    for (std::size_t k = 2; k <= more; ++k) {
      if ((byte(i + k) & 0xC0) != 0x80) return false;
    }
    i += more + 1;
  }
  return true;
}

std::string oneLine(std::string_view text, std::size_t most) {
  std::string out(text.substr(0, most));
  for (char& c : out) {
    if (c < 0x20 || c > 0x7e) c = '?';
  }
  if (text.size() > most) out += "...";
  return out;
}

std::string jsonText(const JsonNode& root) {
  std::string out;
  Printer(out).write(root, 0, 0);
  return out + "\n";
}

} // namespace sump
