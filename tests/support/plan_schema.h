#pragma once
// The JSON Schema (2020-12) of the plan file, made from the same description that reads and writes
// it (exchange/plan_file_fields.h). tests/exchange compares it with
// resources/schema/plan.schema.json.

#include "core/exchange/json_document.h"
#include "core/exchange/json_text.h"
#include "core/exchange/plan_file.h"
#include "core/exchange/plan_file_fields.h"
#include "core/exchange/plan_file_words.h"

#include <cctype>
#include <string>

namespace sump::test {

class SchemaMaker {
public:
  JsonNode make() {
    JsonNode root = JsonNode::object();
    root.add("$schema", text("https://json-schema.org/draft/2020-12/schema"));
    root.add("$id", text("urn:sumpwright:plan:" + std::to_string(kPlanFileVersion)));
    root.add("title", text("Sumpwright plan"));
    root.add(
        "description",
        text("A plan of underground wash-water reclaim tankage (.sump). Lengths and elevations "
             "are in metres, angles in degrees, pipe elevations are inverts on the site datum. "
             "On reading, the program also checks what a schema cannot say: ids are unique and "
             "lead somewhere, sizes are more than 0, outlines do not cross themselves."));
    addObject<Plan>(root);
    root.add("$defs", std::move(defs_));
    return root;
  }

private:
  /// A visitor that writes the properties of one struct.
  struct Fields {
    SchemaMaker& maker;
    JsonNode properties = JsonNode::object();
    JsonNode required = JsonNode::list();
    template <class V> void need(std::string_view key, const V& value, std::string_view what) {
      required.items.push_back(text(std::string(key)));
      may(key, value, what);
    }
    template <class V> void may(std::string_view key, const V& value, std::string_view what) {
      JsonNode field = maker.schemaOf(value);
      field.add("description", text(sentence(what)));
      properties.add(key, std::move(field));
    }
  };

  static JsonNode text(std::string_view s) { return JsonNode::of(std::string(s)); }
  static JsonNode typed(std::string_view type) {
    JsonNode node = JsonNode::object();
    node.add("type", text(type));
    return node;
  }
  static JsonNode bounded(std::string_view type, double bound) {
    JsonNode node = typed(type);
    node.add("minimum", JsonNode::of(-bound));
    node.add("maximum", JsonNode::of(bound));
    return node;
  }
  static std::string sentence(std::string_view what) {
    std::string s(what);
    s[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(s[0])));
    return s + ".";
  }
  JsonNode listOf(JsonNode items) {
    JsonNode node = typed("array");
    node.add("maxItems", JsonNode::of(static_cast<double>(JsonBounds{}.listItems)));
    node.add("items", std::move(items));
    return node;
  }
  JsonNode constant(std::string_view key, JsonNode value) {
    JsonNode node = JsonNode::object();
    node.add("const", std::move(value));
    node.add("description", text(key));
    return node;
  }

  JsonNode schemaOf(const std::string&) {
    JsonNode node = typed("string");
    node.add("maxLength", JsonNode::of(10'000.0));
    return node;
  }
  JsonNode schemaOf(bool) { return typed("boolean"); }
  JsonNode schemaOf(int) { return bounded("integer", 1e7); }
  JsonNode schemaOf(double) { return bounded("number", 1e7); }
  JsonNode schemaOf(Length) { return bounded("number", 1e7); }
  JsonNode schemaOf(Angle) { return bounded("number", 360); }
  JsonNode schemaOf(Temperature) { return bounded("number", 1000); }
  template <class U> JsonNode schemaOf(bu::quantity<U>) { return bounded("number", 1e9); }
  JsonNode schemaOf(const Base64&) {
    JsonNode node = typed("string");
    node.add("contentEncoding", text("base64"));
    node.add("maxLength", JsonNode::of(30'000'000.0));
    return node;
  }
  JsonNode schemaOf(const std::map<std::string, double>&) {
    JsonNode node = typed("object");
    node.add("additionalProperties", bounded("number", 1e7));
    return node;
  }
  template <class T> JsonNode schemaOf(const std::optional<T>&) { return schemaOf(T{}); }
  template <class T> JsonNode schemaOf(const std::vector<T>&) { return listOf(schemaOf(T{})); }
  template <class T> JsonNode schemaOf(const Items<T>&) { return listOf(schemaOf(T{})); }
  template <class E>
  requires std::is_enum_v<E> JsonNode schemaOf(E) {
    JsonNode words = JsonNode::list();
    for (const std::string_view word : wordsOf<E>())
      words.items.push_back(text(word));
    JsonNode node = JsonNode::object();
    node.add("enum", std::move(words));
    return node;
  }
  JsonNode schemaOf(const Point2&) {
    if (defs_.member("point") == nullptr) {
      JsonNode point = typed("array");
      point.add("items", bounded("number", 1e7));
      point.add("minItems", JsonNode::of(2.0));
      point.add("maxItems", JsonNode::of(2.0));
      defs_.add("point", std::move(point));
    }
    return reference("point");
  }
  template <class T>
  requires std::is_class_v<T> JsonNode schemaOf(const T&) {
    const std::string_view name = nameOf<T>();
    if (defs_.member(name) == nullptr) {
      JsonNode object = JsonNode::object();
      addObject<T>(object);
      defs_.add(name, std::move(object));
    }
    return reference(name);
  }
  static JsonNode reference(std::string_view name) {
    JsonNode node = JsonNode::object();
    node.add("$ref", text("#/$defs/" + std::string(name)));
    return node;
  }

  template <class T> void addObject(JsonNode& object) {
    Fields fields{*this};
    if constexpr (std::same_as<T, Plan>) {
      fields.required.items = {text("format"), text("version")};
      fields.properties.add("format", constant("What the file is.", text(kPlanFormat)));
      fields.properties.add("version",
                            constant("The version of the format.",
                                     JsonNode::of(static_cast<double>(kPlanFileVersion))));
    }
    const T blank{};
    describe(fields, blank);
    object.add("type", text("object"));
    object.add("properties", std::move(fields.properties));
    if (!fields.required.items.empty()) object.add("required", std::move(fields.required));
    object.add("additionalProperties", JsonNode::of(false));
  }

  template <class T> static std::string_view nameOf() {
    if constexpr (std::same_as<T, Project>) return "project";
    if constexpr (std::same_as<T, Site>) return "site";
    if constexpr (std::same_as<T, Building>) return "building";
    if constexpr (std::same_as<T, Pavement>) return "pavement";
    if constexpr (std::same_as<T, Utility>) return "utility";
    if constexpr (std::same_as<T, SpotElevation>) return "spotElevation";
    if constexpr (std::same_as<T, Well>) return "well";
    if constexpr (std::same_as<T, Basin>) return "basin";
    if constexpr (std::same_as<T, SewerConnection>) return "sewerConnection";
    if constexpr (std::same_as<T, WashEquipment>) return "washEquipment";
    if constexpr (std::same_as<T, Door>) return "door";
    if constexpr (std::same_as<T, RoomBox>) return "roomBox";
    if constexpr (std::same_as<T, Port>) return "port";
    if constexpr (std::same_as<T, EquipmentRoom>) return "equipmentRoom";
    if constexpr (std::same_as<T, Baffle>) return "baffle";
    if constexpr (std::same_as<T, Manway>) return "manway";
    if constexpr (std::same_as<T, Vault>) return "vault";
    if constexpr (std::same_as<T, RunEnd>) return "runEnd";
    if constexpr (std::same_as<T, Vertex>) return "vertex";
    if constexpr (std::same_as<T, InlinePart>) return "inlinePart";
    if constexpr (std::same_as<T, EductorMount>) return "eductorMount";
    if constexpr (std::same_as<T, Run>) return "run";
    if constexpr (std::same_as<T, NoteEnd>) return "noteEnd";
    if constexpr (std::same_as<T, DimensionNote>) return "dimensionNote";
    if constexpr (std::same_as<T, Underlay>) return "underlay";
    if constexpr (std::same_as<T, Acceptance>) return "acceptance";
    if constexpr (std::same_as<T, RevisionEntry>) return "revisionEntry";
    if constexpr (std::same_as<T, WashDevice>) return "washDevice";
    if constexpr (std::same_as<T, VehicleTraffic>) return "vehicleTraffic";
    if constexpr (std::same_as<T, WashDemand>) return "washDemand";
    if constexpr (std::same_as<T, PumpPoint>) return "pumpPoint";
    if constexpr (std::same_as<T, Pump>) return "pump";
    if constexpr (std::same_as<T, MakeUpSupply>) return "makeUpSupply";
    if constexpr (std::same_as<T, WaterBasis>) return "waterBasis";
    if constexpr (std::same_as<T, EarthBasis>) return "earthBasis";
    if constexpr (std::same_as<T, Conductor>) return "conductor";
    if constexpr (std::same_as<T, Supply>) return "supply";
    if constexpr (std::same_as<T, SignalCircuit>) return "signalCircuit";
    if constexpr (std::same_as<T, WiringBasis>) return "wiringBasis";
    if constexpr (std::same_as<T, Basis>) return "basis";
  }

  JsonNode defs_ = JsonNode::object();
};

inline std::string planSchemaText() {
  return jsonText(SchemaMaker().make());
}

} // namespace sump::test
