// What is there before the work: buildings, paving, lines, levels, wells, drains, sewer, wash.

#include "app/panels/corner_fields.h"

namespace sump {

namespace {

template <class T> void nameField(FieldMaker<T>& make) {
  make.template typed<std::string>(
      fieldText("Name"), [](T& t) -> std::string& { return t.name; }, textWriting());
}

template <class T> void atFields(FieldMaker<T>& make, UnitSystem units) {
  make.template typed<double>(
      fieldText("East"), [](T& t) -> double& { return t.at.x; }, coordinateWriting(units));
  make.template typed<double>(
      fieldText("North"), [](T& t) -> double& { return t.at.y; }, coordinateWriting(units));
}

/// Turned rectangles: drains and wash equipment.
template <class T> void boxFields(FieldMaker<T>& make, UnitSystem units) {
  make.template typed<Angle>(
      fieldText("Angle"), [](T& t) -> Angle& { return t.angle; }, angleWriting(),
      fieldText("Of its length, counter-clockwise from east"));
  make.template typed<Length>(
      fieldText("Length"), [](T& t) -> Length& { return t.length; }, lengthWriting(units));
  make.template typed<Length>(
      fieldText("Width"), [](T& t) -> Length& { return t.width; }, lengthWriting(units));
}

} // namespace

void buildingFields(const FieldContext& context, const Id& id, std::vector<Field>& out) {
  FieldMaker<Building> make(context.plan, placeIn(&Plan::buildings, id), out);
  nameField(make);
  make.typed<std::optional<Length>>(
      fieldText("Finished floor"), [](Building& b) -> std::optional<Length>& { return b.floor; },
      optionalWriting(elevationWriting(context.units())),
      fieldText("Elevation; may be left empty"));
  make.typed<std::optional<Length>>(
      fieldText("Underside of footing"),
      [](Building& b) -> std::optional<Length>& { return b.footing; },
      optionalWriting(elevationWriting(context.units())),
      fieldText("Elevation; may be left empty, digging near it can then not be checked"));
  make.typed<std::optional<Length>>(
      fieldText("Top of roof"), [](Building& b) -> std::optional<Length>& { return b.roof; },
      optionalWriting(elevationWriting(context.units())),
      fieldText("Elevation of its highest point, ridge or parapet; may be left empty, the ends of "
                "vents beside it can then not be checked"));
  cornerFieldsOf(make, &Building::outline, context.units(), 3);
}

void pavementFields(const FieldContext& context, const Id& id, std::vector<Field>& out) {
  FieldMaker<Pavement> make(context.plan, placeIn(&Plan::pavements, id), out);
  nameField(make);
  make.toggle(fieldText("Vehicles drive on it"), [](Pavement& p) -> bool& { return p.traffic; });
  cornerFieldsOf(make, &Pavement::outline, context.units(), 3);
}

void utilityFields(const FieldContext& context, const Id& id, std::vector<Field>& out) {
  FieldMaker<Utility> make(context.plan, placeIn(&Plan::utilities, id), out);
  const UnitSystem units = context.units();
  nameField(make);
  make.keyed(
      fieldText("Kind"), [](Utility& u) -> UtilityKind& { return u.kind; }, kUtilityKeys);
  make.typed<std::optional<Length>>(
      fieldText("Centreline elevation"),
      [](Utility& u) -> std::optional<Length>& { return u.elevation; },
      optionalWriting(elevationWriting(units)), fieldText("Left empty where it is not known"));
  make.typed<std::optional<Length>>(
      fieldText("Diameter"), [](Utility& u) -> std::optional<Length>& { return u.diameter; },
      optionalWriting(lengthWriting(units)));
  make.toggle(fieldText("Public main"), [](Utility& u) -> bool& { return u.publicMain; });
  cornerFieldsOf(make, &Utility::path, units, 2);
}

void spotFields(const FieldContext& context, const Id& id, std::vector<Field>& out) {
  FieldMaker<SpotElevation> make(context.plan, placeIn(&Plan::spots, id), out);
  make.typed<Length>(
      fieldText("Elevation"), [](SpotElevation& s) -> Length& { return s.elevation; },
      elevationWriting(context.units()));
  atFields(make, context.units());
}

void wellFields(const FieldContext& context, const Id& id, std::vector<Field>& out) {
  FieldMaker<Well> make(context.plan, placeIn(&Plan::wells, id), out);
  nameField(make);
  atFields(make, context.units());
}

void basinFields(const FieldContext& context, const Id& id, std::vector<Field>& out) {
  FieldMaker<Basin> make(context.plan, placeIn(&Plan::basins, id), out);
  const UnitSystem units = context.units();
  nameField(make);
  make.keyed(
      fieldText("Kind"), [](Basin& b) -> BasinKind& { return b.kind; }, kBasinKeys);
  make.typed<Length>(
      fieldText("Rim"), [](Basin& b) -> Length& { return b.rim; }, elevationWriting(units));
  make.typed<Length>(
      fieldText("Outlet invert"), [](Basin& b) -> Length& { return b.outletInvert; },
      elevationWriting(units));
  make.typed<std::optional<Length>>(
      fieldText("Sump"), [](Basin& b) -> std::optional<Length>& { return b.sump; },
      optionalWriting(lengthWriting(units)),
      fieldText("Depth of its bottom under the outlet's invert; empty where it is not given"));
  atFields(make, units);
  boxFields(make, units);
}

void sewerFields(const FieldContext& context, const Id& id, std::vector<Field>& out) {
  FieldMaker<SewerConnection> make(context.plan, placeIn(&Plan::sewers, id), out);
  const UnitSystem units = context.units();
  nameField(make);
  make.typed<Length>(
      fieldText("Invert"), [](SewerConnection& s) -> Length& { return s.invert; },
      elevationWriting(units));
  make.typed<std::optional<Length>>(
      fieldText("Upstream manhole rim"),
      [](SewerConnection& s) -> std::optional<Length>& { return s.upstreamManholeRim; },
      optionalWriting(elevationWriting(units)),
      fieldText("Cover of the next manhole up the public sewer; empty where it is not known"));
  atFields(make, units);
}

void washFields(const FieldContext& context, const Id& id, std::vector<Field>& out) {
  FieldMaker<WashEquipment> make(context.plan, placeIn(&Plan::washes, id), out);
  const UnitSystem units = context.units();
  nameField(make);
  make.typed<Length>(
      fieldText("Inlet elevation"), [](WashEquipment& w) -> Length& { return w.inletElevation; },
      elevationWriting(units), fieldText("Invert of the product water inlet"));
  make.typed<std::string>(
      fieldText("Inlet size"), [](WashEquipment& w) -> std::string& { return w.inletSize; },
      textWriting(), fieldText("Nominal, like 2 or 1-1/2"));
  atFields(make, units);
  boxFields(make, units);
}

} // namespace sump
