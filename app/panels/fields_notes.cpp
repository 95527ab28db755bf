// Dimension notes and site pictures.

#include "app/panels/field.h"

#include "app/core_text.h"

#include "core/plan/edits_objects.h"
#include "core/plan/ends.h"
#include "core/plan/note_ends.h"

namespace sump {

namespace {

using NoteMaker = FieldMaker<DimensionNote>;

/// What the end follows. It stays where it is on the site when that changes.
void objectField(const FieldContext& context, const Id& id, NoteEnd DimensionNote::*member,
                 const NoteEnd& end, std::vector<Field>& out) {
  std::vector<Id> ids = {""};
  Field field;
  field.kind = FieldKind::Choice;
  field.label = fieldText("Follows");
  field.choices << fieldText("Nothing: a place on the site");
  for (const Id& other : allObjects(context.plan)) {
    const bool itself =
        context.plan.notes.find(other) != nullptr || context.plan.underlays.find(other) != nullptr;
    if (itself && other != end.object) continue;
    ids.push_back(other);
    field.choices << objectTitle(context.plan, other);
  }
  for (std::size_t i = 0; i < ids.size(); ++i) {
    if (ids[i] == end.object) field.current = static_cast<int>(i);
  }
  field.write = [id, member, ids](const Plan& plan, const QString& index) -> FieldResult {
    Plan next = plan;
    DimensionNote note = *plan.notes.find(id);
    const Point2 site = Locator(plan).position(note.*member).value_or((note.*member).at);
    note.*member = noteEndAt(plan, ids.at(index.toULongLong()), site);
    next.notes.put(std::move(note));
    return {std::move(next), {}};
  };
  out.push_back(std::move(field));
}

void noteEndFields(const FieldContext& context, const Id& id, const char* title,
                   NoteEnd DimensionNote::*member, NoteMaker& make, std::vector<Field>& out) {
  make.heading(fieldText(title));
  objectField(context, id, member, make.value().*member, out);
  const QString tip = fieldText("From the middle or first corner of what it follows, or on the "
                                "site");
  make.typed<double>(
      fieldText("Along"), [member](DimensionNote& n) -> double& { return (n.*member).at.x; },
      coordinateWriting(context.units()), tip);
  make.typed<double>(
      fieldText("Across"), [member](DimensionNote& n) -> double& { return (n.*member).at.y; },
      coordinateWriting(context.units()), tip);
}

/// A picture keeps its shape: one side typed sets the other.
void sizeField(const char* label, Length Underlay::*side, Length Underlay::*other,
               const FieldContext& context, const Id& id, std::vector<Field>& out) {
  const Writing<Length> writing = lengthWriting(context.units());
  Field field;
  field.label = fieldText(label);
  field.text = writing.print(context.plan.underlays.find(id)->*side);
  field.tip = fieldText("On the site; the picture keeps its shape");
  field.write = [id, side, other, writing](const Plan& plan, const QString& text) -> FieldResult {
    const Parsed<Length> typed = writing.parse(text);
    if (!typed) return {std::nullopt, typedProblem(typed.error, text)};
    if (inMetres(*typed.value) <= 0) {
      return {std::nullopt, fieldText("A picture needs a size of more than 0.")};
    }
    Plan next = plan;
    Underlay picture = *plan.underlays.find(id);
    picture.*other = (picture.*other) * (*typed.value / picture.*side).value();
    picture.*side = *typed.value;
    next.underlays.put(std::move(picture));
    return {std::move(next), {}};
  };
  out.push_back(std::move(field));
}

QString keptIn(const Underlay& picture) {
  if (!picture.file.empty()) return shown(picture.file);
  constexpr double kBytesPerSign = 0.75; // of base64
  const double kilobytes = static_cast<double>(picture.data.text.size()) * kBytesPerSign / 1024;
  return fieldText("In the plan, %1 kB").arg(kilobytes, 0, 'f', 0);
}

} // namespace

void noteFields(const FieldContext& context, const Id& id, std::vector<Field>& out) {
  NoteMaker make(context.plan, placeIn(&Plan::notes, id), out);
  make.typed<std::string>(
      fieldText("Text"), [](DimensionNote& n) -> std::string& { return n.text; }, textWriting(),
      fieldText("In place of the measured length; empty: the length"));
  const std::optional<Point2> from = Locator(context.plan).position(make.value().from);
  const std::optional<Point2> to = Locator(context.plan).position(make.value().to);
  if (from && to) {
    make.fact(fieldText("Length in plan"),
              shown(printLength(metres(distance(*from, *to)), context.units())));
  }
  make.typed<Length>(
      fieldText("Set off by"), [](DimensionNote& n) -> Length& { return n.offset; },
      lengthWriting(context.units()),
      fieldText("How far the dimension line stands to the left of from-to"));
  noteEndFields(context, id, "From", &DimensionNote::from, make, out);
  noteEndFields(context, id, "To", &DimensionNote::to, make, out);
}

void underlayFields(const FieldContext& context, const Id& id, std::vector<Field>& out) {
  FieldMaker<Underlay> make(context.plan, placeIn(&Plan::underlays, id), out);
  const UnitSystem units = context.units();
  make.typed<std::string>(
      fieldText("Name"), [](Underlay& u) -> std::string& { return u.name; }, textWriting());
  make.fact(fieldText("Kept"), keptIn(make.value()));
  make.toggle(fieldText("Shown"), [](Underlay& u) -> bool& { return u.shown; });
  make.typed<double>(
      fieldText("Strength"), [](Underlay& u) -> double& { return u.strength; }, percentWriting(),
      fieldText("100 %: as it is; less: faded"));
  make.typed<double>(
      fieldText("Top left, east"), [](Underlay& u) -> double& { return u.at.x; },
      coordinateWriting(units));
  make.typed<double>(
      fieldText("Top left, north"), [](Underlay& u) -> double& { return u.at.y; },
      coordinateWriting(units));
  make.typed<Angle>(
      fieldText("Angle"), [](Underlay& u) -> Angle& { return u.angle; }, angleWriting(),
      fieldText("Of its upper edge, counter-clockwise from east"));
  sizeField("Width", &Underlay::width, &Underlay::height, context, id, out);
  sizeField("Height", &Underlay::height, &Underlay::width, context, id, out);
}

} // namespace sump
