#include "core/exchange/json_document.h"

#include "core/exchange/input_error.h"
#include "core/exchange/json_text.h"
#include "core/plan/file_place.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cctype>
#include <iterator>

namespace sump {

namespace {

/// Counts lines as the JSON library takes characters. The library looks one character past a
/// number, so the line that counts is that of the last character that was not white space.
struct LineCounter {
  int here = 1;
  int lastSolid = 1;
  void take(char c) {
    if (c == '\n') {
      ++here;
    } else if (c != ' ' && c != '\t' && c != '\r') {
      lastSolid = here;
    }
  }
};

class CountingIterator {
public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;
  CountingIterator(const char* at, LineCounter* lines) : at_(at), lines_(lines) {}
  reference operator*() const { return *at_; }
  CountingIterator& operator++() {
    lines_->take(*at_++);
    return *this;
  }
  bool operator==(const CountingIterator& other) const { return at_ == other.at_; }

private:
  const char* at_;
  LineCounter* lines_;
};

struct Complaint {
  std::string what;
  std::string mend;
};

bool holds(std::string_view text, std::string_view part) {
  return text.find(part) != std::string_view::npos;
}

/// The library's message without its number, position and echo of the file.
std::string reasonIn(std::string_view message) {
  if (const auto at = message.find(" - "); at != std::string_view::npos) {
    message.remove_prefix(at + 3);
  }
  std::string reason(message.substr(0, message.find("; last read")));
  if (const auto expected = message.find("; expected"); expected != std::string_view::npos) {
    if (!holds(reason, "; expected")) reason += message.substr(expected);
  }
  return oneLine(reason, 160);
}

/// NaN, nan, Infinity, -Infinity: the library stops at the first letter that fits no JSON word, and
/// hands over what it read since the last token.
bool startsNotANumber(std::string_view token) {
  for (const std::string_view start : {"N", "I", "na"}) {
    if (!token.ends_with(start)) continue;
    token.remove_suffix(start.size());
    return token.empty() || std::isalpha(static_cast<unsigned char>(token.back())) == 0;
  }
  return false;
}

Complaint complaintAbout(std::string_view token, std::string_view message) {
  if (holds(message, "number overflow")) {
    return {"the number " + oneLine(token, 40) + " is too big", "give a number within 1e7"};
  }
  if (holds(message, "UTF-8")) {
    return {"holds bytes that are not UTF-8", "save the file as UTF-8 text"};
  }
  if (startsNotANumber(token)) {
    return {"NaN and Infinity are not JSON numbers", "give a number within 1e7"};
  }
  if (holds(message, "unexpected end of input") || holds(message, "missing closing quote")) {
    return {"is cut off: the file ends in the middle", "restore the missing end from a copy"};
  }
  return {"is not JSON: " + reasonIn(message), "mend the text at this line or restore a copy"};
}

/// Builds the tree from the library's events; returns false to stop at the first complaint.
class TreeBuilder {
public:
  TreeBuilder(const std::string& file, const JsonBounds& bounds, const LineCounter& lines)
      : file_(file), bounds_(bounds), lines_(lines) {}

  bool null() { return place({}) != nullptr; }
  bool boolean(bool v) { return place(JsonNode::of(v)) != nullptr; }
  bool number_integer(std::int64_t v) { return number(static_cast<double>(v)); }
  bool number_unsigned(std::uint64_t v) { return number(static_cast<double>(v)); }
  bool number_float(double v, const std::string& /*asWritten*/) { return number(v); }
  bool string(std::string& v) { return place(JsonNode::of(std::move(v))) != nullptr; }
  bool binary(std::vector<std::uint8_t>& /*never in text*/) { return false; }
  bool start_object(std::size_t /*unknown*/) { return open(JsonNode::object()); }
  bool start_array(std::size_t /*unknown*/) { return open(JsonNode::list()); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }
  bool key(std::string& key);
  bool parse_error(std::size_t /*byte*/, const std::string& token,
                   const nlohmann::detail::exception& error) {
    const Complaint complaint = complaintAbout(token, error.what());
    fail(complaint.what, complaint.mend);
  }
  JsonNode takeRoot() { return std::move(root_); }

private:
  bool number(double v) { return place(JsonNode::of(v)) != nullptr; }
  JsonNode* place(JsonNode value);
  bool open(JsonNode container);
  bool close() {
    open_.pop_back();
    return true;
  }
  std::string pointer() const;
  [[noreturn]] void fail(const std::string& what, const std::string& mend) const {
    throw InputError(file_, pointer(), lines_.lastSolid, what, mend);
  }

  const std::string& file_;
  const JsonBounds& bounds_;
  const LineCounter& lines_;
  JsonNode root_;
  std::vector<JsonNode*> open_; ///< stable: a parent's list does not grow while a child is open
  std::size_t values_ = 0;
};

JsonNode* TreeBuilder::place(JsonNode value) {
  value.line = lines_.lastSolid;
  if (++values_ > bounds_.values) {
    fail("holds more than " + std::to_string(bounds_.values) + " values", "split the plan");
  }
  if (open_.empty()) {
    root_ = std::move(value);
    return &root_;
  }
  JsonNode& parent = *open_.back();
  if (parent.kind == JsonNode::Kind::List && parent.items.size() >= bounds_.listItems) {
    fail("has more than " + std::to_string(bounds_.listItems) + " members",
         "leave out vertices or items that the plan does not need");
  }
  parent.items.push_back(std::move(value));
  return &parent.items.back();
}

bool TreeBuilder::open(JsonNode container) {
  if (open_.size() >= bounds_.depth) {
    fail("is nested more than " + std::to_string(bounds_.depth) + " deep",
         "a plan needs no such depth: restore the file from a copy");
  }
  open_.push_back(place(std::move(container)));
  return true;
}

bool TreeBuilder::key(std::string& key) {
  JsonNode& object = *open_.back();
  const bool twice = std::ranges::find(object.keys, key) != object.keys.end();
  object.keys.push_back(std::move(key));
  if (twice) fail("is given twice", "keep one of the two");
  if (object.keys.size() > bounds_.objectMembers) {
    fail("is one key too many: an object may have " + std::to_string(bounds_.objectMembers),
         "leave out what the plan does not need");
  }
  return true;
}

std::string TreeBuilder::pointer() const {
  std::string text;
  for (std::size_t i = 0; i < open_.size(); ++i) {
    const JsonNode& node = *open_[i];
    const bool innermost = i + 1 == open_.size();
    if (node.kind == JsonNode::Kind::List) {
      text += "/" + std::to_string(innermost ? node.items.size() : node.items.size() - 1);
    } else if (!node.keys.empty() && (!innermost || node.keys.size() > node.items.size())) {
      text += "/" + pointerStep(node.keys.back());
    }
  }
  return text;
}

/// What the library would let pass or explain badly.
void refuseWrongBytes(std::string_view text, const std::string& file, const JsonBounds& bounds) {
  if (text.size() > bounds.bytes) {
    throw InputError(file, "", 0, "is larger than " + std::to_string(bounds.bytes >> 20) + " MiB",
                     "give a plan file");
  }
  if (text.starts_with("\xEF\xBB\xBF")) {
    throw InputError(file, "", 1, "starts with a byte order mark",
                     "save it as UTF-8 without a byte order mark");
  }
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF")) {
    throw InputError(file, "", 1, "is UTF-16 text", "save it as UTF-8");
  }
  if (const auto at = text.find('\0'); at != std::string_view::npos) {
    const auto line = 1 + std::ranges::count(text.substr(0, at), '\n');
    throw InputError(file, "", static_cast<int>(line), "holds a zero byte: it is not a text file",
                     "give a plan file");
  }
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) {
    throw InputError(file, "", 1, "is empty", "give a plan file");
  }
}

std::string unescaped(std::string_view step) {
  std::string text;
  for (std::size_t i = 0; i < step.size(); ++i) {
    const bool escape = step[i] == '~' && i + 1 < step.size();
    text += !escape ? step[i] : step[++i] == '0' ? '~' : '/';
  }
  return text;
}

const JsonNode* child(const JsonNode& node, std::string_view step) {
  if (node.kind == JsonNode::Kind::Object) return node.member(unescaped(step));
  if (node.kind != JsonNode::Kind::List || step.empty()) return nullptr;
  std::size_t index = 0;
  for (const char c : step) {
    if (c < '0' || c > '9' || index > node.items.size()) return nullptr;
    index = index * 10 + static_cast<std::size_t>(c - '0');
  }
  return index < node.items.size() ? &node.items[index] : nullptr;
}

} // namespace

JsonNode JsonNode::of(double value) {
  JsonNode node;
  node.kind = Kind::Number;
  node.number = value;
  return node;
}

JsonNode JsonNode::of(bool value) {
  JsonNode node;
  node.kind = Kind::Boolean;
  node.truth = value;
  return node;
}

JsonNode JsonNode::of(std::string value) {
  JsonNode node;
  node.kind = Kind::Text;
  node.text = std::move(value);
  return node;
}

JsonNode JsonNode::list() {
  JsonNode node;
  node.kind = Kind::List;
  return node;
}

JsonNode JsonNode::object() {
  JsonNode node;
  node.kind = Kind::Object;
  return node;
}

const JsonNode* JsonNode::member(std::string_view key) const {
  for (std::size_t i = 0; i < keys.size(); ++i) {
    if (keys[i] == key) return &items[i];
  }
  return nullptr;
}

JsonNode* JsonNode::member(std::string_view key) {
  return const_cast<JsonNode*>(std::as_const(*this).member(key));
}

void JsonNode::add(std::string_view key, JsonNode value) {
  keys.emplace_back(key);
  items.push_back(std::move(value));
}

JsonNode parseJson(std::string_view text, const std::string& fileName, const JsonBounds& bounds) {
  refuseWrongBytes(text, fileName, bounds);
  LineCounter lines;
  TreeBuilder builder(fileName, bounds, lines);
  nlohmann::json::sax_parse(CountingIterator(text.data(), &lines),
                            CountingIterator(text.data() + text.size(), &lines), &builder);
  return builder.takeRoot();
}

int lineAt(const JsonNode& root, std::string_view pointer) {
  const JsonNode* node = &root;
  while (pointer.starts_with('/')) {
    pointer.remove_prefix(1);
    const std::string_view step = pointer.substr(0, pointer.find('/'));
    const JsonNode* next = child(*node, step);
    if (next == nullptr) break;
    node = next;
    pointer.remove_prefix(step.size());
  }
  return node->line;
}

std::string_view kindName(JsonNode::Kind kind) {
  switch (kind) {
  case JsonNode::Kind::Null:
    return "null";
  case JsonNode::Kind::Boolean:
    return "true or false";
  case JsonNode::Kind::Number:
    return "a number";
  case JsonNode::Kind::Text:
    return "a text";
  case JsonNode::Kind::List:
    return "a list";
  case JsonNode::Kind::Object:
    return "an object";
  }
  return "";
}

} // namespace sump
