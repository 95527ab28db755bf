#include "app/panels/field.h"

#include "app/panels/typed.h"

#include "core/plan/edits_group.h"
#include "core/plan/ends.h"
#include "core/plan/find_object.h"

#include <algorithm>

namespace sump {

namespace {

struct KindRow {
  ObjectKind kind;
  const char* title;
  void (*fields)(const FieldContext&, const Id&, std::vector<Field>&);
};

const std::vector<KindRow>& kindTable() {
  static const std::vector<KindRow> table = {
      {ObjectKind::Building, QT_TRANSLATE_NOOP("Fields", "Building"), buildingFields},
      {ObjectKind::Pavement, QT_TRANSLATE_NOOP("Fields", "Paving"), pavementFields},
      {ObjectKind::Utility, QT_TRANSLATE_NOOP("Fields", "Existing line"), utilityFields},
      {ObjectKind::Spot, QT_TRANSLATE_NOOP("Fields", "Spot elevation"), spotFields},
      {ObjectKind::Well, QT_TRANSLATE_NOOP("Fields", "Well"), wellFields},
      {ObjectKind::Basin, QT_TRANSLATE_NOOP("Fields", "Drain"), basinFields},
      {ObjectKind::Sewer, QT_TRANSLATE_NOOP("Fields", "Sewer connection"), sewerFields},
      {ObjectKind::Wash, QT_TRANSLATE_NOOP("Fields", "Wash equipment"), washFields},
      {ObjectKind::Room, QT_TRANSLATE_NOOP("Fields", "Equipment room"), roomFields},
      {ObjectKind::Vault, QT_TRANSLATE_NOOP("Fields", "Vault"), vaultFields},
      {ObjectKind::Run, QT_TRANSLATE_NOOP("Fields", "Line"), runFields},
      {ObjectKind::Note, QT_TRANSLATE_NOOP("Fields", "Dimension note"), noteFields},
      {ObjectKind::Underlay, QT_TRANSLATE_NOOP("Fields", "Site picture"), underlayFields},
  };
  return table;
}

const KindRow* kindOf(const Plan& plan, const Id& id) {
  const std::optional<ObjectKind> kind = kindOfObject(plan, id);
  for (const KindRow& row : kindTable()) {
    if (kind == row.kind) return &row;
  }
  return nullptr;
}

} // namespace

Writing<Length> lengthWriting(UnitSystem units) {
  return {[units](const Length& v) { return shown(printLength(v, units)); },
          [units](const QString& text) { return evaluateLength(typedText(text), units); }};
}

Writing<Length> elevationWriting(UnitSystem units) {
  return {[units](const Length& v) { return shown(printElevation(v, units)); },
          [units](const QString& text) { return evaluateLength(typedText(text), units); }};
}

Writing<Mass> massWriting(UnitSystem units) {
  return {[units](const Mass& v) { return shown(printMass(v, units)); },
          [units](const QString& text) { return evaluateMass(typedText(text), units); }};
}

Writing<double> coordinateWriting(UnitSystem units) {
  return {[units](const double& v) { return shown(printLength(metres(v), units)); },
          [units](const QString& text) -> Parsed<double> {
            const Parsed<Length> parsed = evaluateLength(typedText(text), units);
            if (!parsed) return {std::nullopt, parsed.error};
            return {inMetres(*parsed.value), {}};
          }};
}

Writing<Angle> angleWriting() {
  return {[](const Angle& v) { return shown(printAngle(v)); },
          [](const QString& text) { return evaluateAngle(typedText(text)); }};
}

Writing<std::string> textWriting() {
  return {[](const std::string& v) { return shown(v); },
          [](const QString& text) -> Parsed<std::string> {
            return {typedText(text), {}};
          }};
}

Writing<int> countWriting() {
  return {[](const int& v) { return QString::number(v); },
          [](const QString& text) -> Parsed<int> {
            const Parsed<int> v = evaluateWhole(typedText(text));
            if (v && *v.value < 1) return unparsed<int>("Type a whole number from 1 up.");
            return v;
          }};
}

Writing<int> ordinalWriting() {
  return {[](const int& v) { return QString::number(v + 1); },
          [](const QString& text) -> Parsed<int> {
            const Parsed<int> v = countWriting().parse(text);
            return v ? Parsed<int>{*v.value - 1, {}} : v;
          }};
}

Writing<double> percentWriting() {
  return {[](const double& v) { return shown(fixed(v * 100, 1)) + " %"; },
          [](const QString& text) -> Parsed<double> {
            QString digits = text.trimmed();
            if (digits.endsWith('%')) digits.chop(1);
            const Parsed<double> typed = evaluateNumber(typedText(digits));
            if (!typed) return typed;
            const double v = *typed.value / 100;
            if (v < 0 || v > 1) return unparsed<double>("Type a number from 0 to 100 %.");
            return {v, {}};
          }};
}

Field planButton(const QString& label, std::function<Plan(const Plan&)> edit, const QString& tip) {
  Field field{FieldKind::Button, label, {}, tip, {}, -1, {}};
  field.write = [edit](const Plan& plan, const QString&) -> FieldResult {
    return {edit(plan), {}};
  };
  return field;
}

namespace {

Field lockField(const FieldContext& context, const Id& id) {
  Field field;
  field.kind = FieldKind::Toggle;
  field.label = fieldText("Locked");
  field.text = isLocked(context.plan, id) ? "1" : "0";
  field.tip = fieldText("Dragging, turning and deleting leave it alone");
  field.write = [id](const Plan& plan, const QString& text) -> FieldResult {
    return {lockObjects(plan, {id}, text == "1"), {}};
  };
  return field;
}

} // namespace

std::vector<Field> fieldsOf(const FieldContext& context, const Id& id) {
  std::vector<Field> fields;
  if (const KindRow* row = kindOf(context.plan, id)) {
    row->fields(context, id, fields);
    fields.insert(fields.begin(), lockField(context, id));
    std::rotate(fields.begin(), fields.begin() + 1, fields.begin() + 2); // after the name
  }
  return fields;
}

QString objectTitle(const Plan& plan, const Id& id) {
  const KindRow* row = kindOf(plan, id);
  return row == nullptr ? shown(id) : QString("%1  %2").arg(fieldText(row->title), shown(id));
}

} // namespace sump
