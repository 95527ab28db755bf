#pragma once
// A JSON text as a tree that remembers the line of every value, so that an error can say where.
// Private to exchange/; the JSON library itself stays inside json_document.cpp.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace sump {

struct JsonNode {
  enum class Kind { Null, Boolean, Number, Text, List, Object };
  Kind kind = Kind::Null;
  bool truth = false;
  int line = 0; ///< from 1; 0 for a node that was not read
  double number = 0;
  std::string text;
  std::vector<std::string> keys; ///< of an Object, one for each item
  std::vector<JsonNode> items;   ///< of a List or an Object

  static JsonNode of(double value);
  static JsonNode of(bool value);
  static JsonNode of(std::string value);
  static JsonNode list();
  static JsonNode object();
  /// The member of this key, or null.
  const JsonNode* member(std::string_view key) const;
  JsonNode* member(std::string_view key);
  void add(std::string_view key, JsonNode value);
};

/// Bounds that keep a hostile file from using up memory or time. A list or outline of a real plan
/// has far fewer than 20,000 members.
struct JsonBounds {
  std::size_t bytes = std::size_t{64} << 20;
  std::size_t depth = 64;
  std::size_t listItems = 20'000;
  std::size_t objectMembers = 1'000;
  std::size_t values = 2'000'000;
};

/// Throws InputError with pointer and line: not JSON, cut off, not UTF-8, a byte order mark, a key
/// given twice, out of bounds.
JsonNode parseJson(std::string_view text, const std::string& fileName,
                   const JsonBounds& bounds = {});

/// Line of the value at an RFC 6901 pointer, or of its nearest ancestor that exists.
int lineAt(const JsonNode& root, std::string_view pointer);

/// `a text`, `a list`: for messages.
std::string_view kindName(JsonNode::Kind kind);

} // namespace sump
