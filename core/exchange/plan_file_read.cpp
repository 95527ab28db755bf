// Reading: text -> JSON tree -> newest version -> Plan -> consistency. The first thing that is
// wrong ends the reading with one InputError.

#include "core/catalog/catalog.h"
#include "core/exchange/json_document.h"
#include "core/exchange/json_text.h"
#include "core/exchange/plan_file.h"
#include "core/exchange/plan_file_keys.h"
#include "core/exchange/plan_file_versions.h"
#include "core/exchange/plan_file_words.h"
#include "core/plan/consistency.h"
#include "core/plan/file_place.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

/// No site, elevation or size comes near 10,000 km; beyond it doubles lose the nanometre.
constexpr double kLargest = 1e7;
constexpr double kLargestAngle = 360;
constexpr double kLargestQuantity = 1e9; // a pressure in pascals is the largest number
constexpr std::size_t kLongestText = 10'000;
constexpr std::size_t kLongestPicture = 30'000'000;

/// A value to read: its node, its place, and what a person should give there.
struct Slot {
  const JsonNode& node;
  const FilePlace& place;
  std::string_view what;
};

class Decoder {
public:
  explicit Decoder(const std::string& file) : file_(file) {}

  void read(const Slot& slot, std::string& out) const;
  void read(const Slot& slot, bool& out) const;
  void read(const Slot& slot, int& out) const;
  void read(const Slot& slot, double& out) const { out = number(slot, kLargest); }
  void read(const Slot& slot, Length& out) const { out = metres(number(slot, kLargest)); }
  void read(const Slot& slot, Angle& out) const { out = degrees(number(slot, kLargestAngle)); }
  void read(const Slot& slot, Temperature& out) const { out = celsius(number(slot, 1000)); }
  /// Other quantities: the number in SI.
  template <class U> void read(const Slot& slot, bu::quantity<U>& out) const {
    out = bu::quantity<U>::from_value(number(slot, kLargestQuantity));
  }
  void read(const Slot& slot, Base64& out) const;
  void read(const Slot& slot, Point2& out) const;
  void read(const Slot& slot, std::map<std::string, double>& out) const;
  template <class T> void read(const Slot& slot, std::optional<T>& out) const {
    read(slot, out.emplace());
  }
  template <class E>
  requires std::is_enum_v<E>
  void read(const Slot& slot, E& out) const;
  template <class T> void read(const Slot& slot, std::vector<T>& out) const {
    forEachItem(slot, [&](const Slot& item) { read(item, out.emplace_back()); });
  }
  template <class T> void read(const Slot& slot, Items<T>& out) const {
    forEachItem(slot, [&](const Slot& item) {
      T object{};
      read(item, object);
      out.append(std::move(object));
    });
  }
  template <class T>
  requires std::is_class_v<T>
  void read(const Slot& slot, T& out) const;

  [[noreturn]] void fail(const Slot& slot, const std::string& problem) const {
    throw InputError(file_, slot.place.pointer(), slot.node.line, problem,
                     "give " + std::string(slot.what));
  }

private:
  void demand(const Slot& slot, JsonNode::Kind kind) const {
    if (slot.node.kind == kind) return;
    fail(slot, "is " + std::string(kindName(slot.node.kind)) + ", must be " +
                   std::string(kindName(kind)));
  }
  double number(const Slot& slot, double largest) const;
  template <class Visit> void forEachItem(const Slot& slot, Visit visit) const;
  void refuseUnknownKeys(const Slot& slot, const std::vector<KnownKey>& known) const;

  const std::string& file_;
};

/// The visitor that fills one struct from one JSON object.
class FieldReader {
public:
  FieldReader(const Decoder& decoder, const Slot& object) : decoder_(decoder), object_(object) {}
  template <class V> void need(std::string_view key, V& value, std::string_view what) {
    if (!readMember(key, value, what)) {
      const FilePlace place = object_.place / key;
      decoder_.fail({object_.node, place, what}, "is missing");
    }
  }
  template <class V> void may(std::string_view key, V& value, std::string_view what) {
    readMember(key, value, what);
  }

private:
  template <class V> bool readMember(std::string_view key, V& value, std::string_view what) {
    const JsonNode* node = object_.node.member(key);
    if (node == nullptr) return false;
    const FilePlace place = object_.place / key;
    decoder_.read({*node, place, what}, value);
    return true;
  }

  const Decoder& decoder_;
  const Slot& object_;
};

bool isControl(char c) {
  return (c >= 0 && c < 0x20 && c != '\n' && c != '\t') || c == 0x7f;
}

void Decoder::read(const Slot& slot, std::string& out) const {
  demand(slot, JsonNode::Kind::Text);
  if (slot.node.text.size() > kLongestText) {
    fail(slot, "is longer than " + std::to_string(kLongestText) + " bytes");
  }
  if (std::ranges::any_of(slot.node.text, isControl)) fail(slot, "holds a control character");
  out = slot.node.text;
}

void Decoder::read(const Slot& slot, Base64& out) const {
  demand(slot, JsonNode::Kind::Text);
  if (slot.node.text.size() > kLongestPicture) fail(slot, "is longer than 30 MB");
  const auto known = [](char c) {
    return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '+' ||
           c == '/' || c == '=';
  };
  if (!std::ranges::all_of(slot.node.text, known)) fail(slot, "is not base64");
  out.text = slot.node.text;
}

void Decoder::read(const Slot& slot, bool& out) const {
  demand(slot, JsonNode::Kind::Boolean);
  out = slot.node.truth;
}

void Decoder::read(const Slot& slot, int& out) const {
  const double v = number(slot, kLargest);
  if (v != std::floor(v)) fail(slot, "is " + numberText(v) + ", must be a whole number");
  out = static_cast<int>(v);
}

double Decoder::number(const Slot& slot, double largest) const {
  demand(slot, JsonNode::Kind::Number);
  const double v = slot.node.number;
  if (std::abs(v) > largest) {
    fail(slot, "is beyond " + numberText(largest) + " either way of 0");
  }
  return v;
}

void Decoder::read(const Slot& slot, Point2& out) const {
  demand(slot, JsonNode::Kind::List);
  if (slot.node.items.size() != 2) {
    fail(slot, "has " + std::to_string(slot.node.items.size()) + " members, must be [x, y]");
  }
  const FilePlace x = slot.place[0], y = slot.place[1];
  out = {number({slot.node.items[0], x, slot.what}, kLargest),
         number({slot.node.items[1], y, slot.what}, kLargest)};
}

void Decoder::read(const Slot& slot, std::map<std::string, double>& out) const {
  demand(slot, JsonNode::Kind::Object);
  std::vector<std::string_view> known;
  for (const Limit& limit : builtinCatalog().limits.table())
    known.push_back(limit.id);
  for (std::size_t i = 0; i < slot.node.items.size(); ++i) {
    const std::string& id = slot.node.keys[i];
    const FilePlace place = slot.place / id;
    if (std::ranges::find(known, id) == known.end()) {
      const std::string_view near = nearestWord(id, known);
      throw InputError(file_, place.pointer(), slot.node.items[i].line,
                       "\"" + oneLine(id, 60) + "\" is no limit of this program",
                       near.empty() ? "leave it out"
                                    : "perhaps " + std::string(near) + " is meant");
    }
    out[id] = number({slot.node.items[i], place, "the limit in SI units"}, kLargest);
  }
}

template <class E>
requires std::is_enum_v<E>
void Decoder::read(const Slot& slot, E& out) const {
  demand(slot, JsonNode::Kind::Text);
  const std::optional<E> value = fromWord<E>(slot.node.text);
  if (!value) {
    throw InputError(file_, slot.place.pointer(), slot.node.line,
                     "is \"" + oneLine(slot.node.text, 60) + "\", which is not known",
                     "give " + std::string(slot.what) + ", one of: " + listed(wordsOf<E>()));
  }
  out = *value;
}

template <class T>
requires std::is_class_v<T>
void Decoder::read(const Slot& slot, T& out) const {
  demand(slot, JsonNode::Kind::Object);
  refuseUnknownKeys(slot, knownKeys<T>());
  FieldReader reader(*this, slot);
  describe(reader, out);
}

template <class Visit> void Decoder::forEachItem(const Slot& slot, Visit visit) const {
  demand(slot, JsonNode::Kind::List);
  for (std::size_t i = 0; i < slot.node.items.size(); ++i) {
    const FilePlace place = slot.place[i];
    visit(Slot{slot.node.items[i], place, slot.what});
  }
}

/// Before reading, so that a misspelt key is not reported as a missing one.
void Decoder::refuseUnknownKeys(const Slot& slot, const std::vector<KnownKey>& known) const {
  for (std::size_t i = 0; i < slot.node.keys.size(); ++i) {
    const std::string& key = slot.node.keys[i];
    if (std::ranges::find(known, key, &KnownKey::key) != known.end()) continue;
    std::vector<std::string_view> words;
    for (const KnownKey& k : known)
      words.push_back(k.key);
    const std::string_view near = nearestWord(key, words);
    const FilePlace place = slot.place / key;
    throw InputError(file_, oneLine(place.pointer(), 200), slot.node.items[i].line,
                     "is not a known key",
                     near.empty() ? "leave it out; known here: " + listed(words)
                                  : "perhaps \"" + std::string(near) + "\" is meant");
  }
}

void refuseInconsistent(const Plan& plan, const JsonNode& document, const std::string& file) {
  const std::vector<Problem> problems = inconsistencies(plan);
  if (problems.empty()) return;
  const Problem& first = problems.front();
  throw InputError(file, first.pointer, lineAt(document, first.pointer), first.what, first.mend);
}

} // namespace

Plan readPlanText(std::string_view text, const std::string& fileName) {
  JsonNode document = parseJson(text, fileName);
  migrate(document, versionSteps(), kPlanFileVersion, fileName);
  Plan plan;
  const FilePlace root;
  Decoder(fileName).read(Slot{document, root, "a plan"}, plan);
  refuseInconsistent(plan, document, fileName);
  return plan;
}

} // namespace sump
