// Writing: Plan -> JSON tree in the order of the description -> text.

#include "core/exchange/json_document.h"
#include "core/exchange/json_text.h"
#include "core/exchange/plan_file.h"
#include "core/exchange/plan_file_fields.h"
#include "core/exchange/plan_file_words.h"

#include <cmath>

namespace sump {

namespace {

/// A number or text that JSON cannot hold; a consistent plan has none.
struct Unwritable {
  std::string what;
};

JsonNode encoded(double v) {
  if (!std::isfinite(v)) throw Unwritable{"is not a finite number"};
  return JsonNode::of(v);
}

JsonNode encoded(const std::string& text) {
  if (!isUtf8(text)) throw Unwritable{"holds bytes that are not UTF-8"};
  return JsonNode::of(text);
}

JsonNode encoded(bool v) {
  return JsonNode::of(v);
}
JsonNode encoded(int v) {
  return JsonNode::of(static_cast<double>(v));
}
JsonNode encoded(Length v) {
  return encoded(inMetres(v));
}
JsonNode encoded(Angle v) {
  return encoded(inDegrees(v));
}

JsonNode encoded(Temperature v) {
  return encoded(inCelsius(v));
}
template <class U> JsonNode encoded(bu::quantity<U> v) {
  return encoded(v.value());
}
JsonNode encoded(const Base64& v) {
  return encoded(v.text);
}

JsonNode encoded(Point2 p) {
  JsonNode node = JsonNode::list();
  node.items = {encoded(p.x), encoded(p.y)};
  return node;
}

JsonNode encoded(const std::map<std::string, double>& table) {
  JsonNode node = JsonNode::object();
  for (const auto& [key, value] : table)
    node.add(key, encoded(value));
  return node;
}

template <class E>
requires std::is_enum_v<E> JsonNode encoded(E value) {
  return JsonNode::of(std::string(wordOf(value)));
}

template <class T>
requires std::is_class_v<T> JsonNode encoded(const T& object);

template <class List> JsonNode encodedList(const List& list) {
  JsonNode node = JsonNode::list();
  node.items.reserve(list.size());
  for (const auto& item : list)
    node.items.push_back(encoded(item));
  return node;
}

template <class T> JsonNode encoded(const std::vector<T>& list) {
  return encodedList(list);
}
template <class T> JsonNode encoded(const Items<T>& list) {
  return encodedList(list);
}

/// The visitor that adds one struct's fields to one JSON object.
struct FieldWriter {
  JsonNode& object;
  template <class V> void need(std::string_view key, const V& value, std::string_view) {
    try {
      object.add(key, encoded(value));
    } catch (Unwritable& u) {
      throw Unwritable{std::string(key) + ": " + u.what};
    }
  }
  template <class V> void may(std::string_view key, const V& value, std::string_view what) {
    need(key, value, what);
  }
  template <class V>
  void may(std::string_view key, const std::optional<V>& value, std::string_view what) {
    if (value) need(key, *value, what);
  }
};

template <class T>
requires std::is_class_v<T> JsonNode encoded(const T& object) {
  JsonNode node = JsonNode::object();
  FieldWriter writer{node};
  describe(writer, object);
  return node;
}

} // namespace

std::string writePlanText(const Plan& plan) {
  JsonNode root = JsonNode::object();
  root.add("format", JsonNode::of(std::string(kPlanFormat)));
  root.add("version", encoded(kPlanFileVersion));
  try {
    FieldWriter writer{root};
    describe(writer, plan);
  } catch (const Unwritable& u) {
    throw InputError("plan", "", 0, u.what, "undo the last change and save again");
  }
  return jsonText(root);
}

} // namespace sump
