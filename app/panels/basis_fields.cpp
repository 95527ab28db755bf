// The single figures of the basis form.

#include "app/panels/basis_fields.h"

#include "app/panels/basis_maker.h"

namespace sump {

BasisGroup waterGroup(const FieldContext& context) {
  BasisGroup group;
  group.title = fieldText("Water");
  const UnitSystem units = context.units();
  FigureMaker<Basis> make(context, basisPlace(), group);
  make.figure<Temperature>(
      "water.temperature", "Water temperature",
      [](Basis & b) -> auto& { return b.water.temperature; }, temperatureWriting(units),
      "friction, suction lift and settling", "Warmest expected: it decides the suction");
  make.figure<Length>(
      "water.altitude", "Altitude", [](Basis & b) -> auto& { return b.water.altitude; },
      headWriting(units), "air pressure and so the suction lift",
      "Of the site above mean sea level");
  make.figure<Length>(
      "water.sludgeDepth", "Sludge allowance",
      [](Basis & b) -> auto& { return b.water.sludgeDepth; }, lengthWriting(units),
      "settling volume and pump-out interval", "Depth kept for sludge on each chamber's floor");
  make.figure<Length>(
      "water.oilDepth", "Oil allowance", [](Basis & b) -> auto& { return b.water.oilDepth; },
      lengthWriting(units), "the volume that is left for settling",
      "Depth kept for floating oil under each chamber's water level");
  make.figure<double>(
      "water.suspendedSolids", "Suspended solids",
      [](Basis & b) -> auto& { return b.water.suspendedSolids; }, concentrationWriting(),
      "how fast sludge builds up", "Of the wash water as it reaches vault 1");
  make.figure<Length>(
      "water.lowLevel", "Low level", [](Basis & b) -> auto& { return b.water.lowLevel; },
      lengthWriting(units), "suction at low water and time to the float",
      "Float switch above the last vault's floor");
  return group;
}

BasisGroup pumpGroup(const FieldContext& context) {
  BasisGroup group;
  group.title = fieldText("Pump");
  const UnitSystem units = context.units();
  FigureMaker<Basis> make(context, basisPlace(), group);
  make.text<std::string>(
      "pump.name", "Pump", [](Basis & b) -> auto& { return b.pump.name; }, textWriting());
  make.figure<Length>(
      "pump.equipmentLoss", "Loss in the equipment",
      [](Basis & b) -> auto& { return b.pump.equipmentLoss; }, headWriting(units),
      "product pressure at the wash",
      "Head lost in the treatment equipment between pump and product port, at design flow");
  make.figure<Flow>(
      "pump.recirculation", "Recirculation flow",
      [](Basis & b) -> auto& { return b.pump.recirculation; }, flowWriting(units),
      "the recirculation line and turnover of the vaults", "Design flow to the eductor");
  make.figure<Flow>(
      "pump.underflow", "Underflow while flushing",
      [](Basis & b) -> auto& { return b.pump.underflow; }, flowWriting(units),
      "the underflow line");
  make.figure<Pressure>(
      "pump.eductorPressure", "Pressure at the eductor",
      [](Basis & b) -> auto& { return b.pump.eductorPressure; }, pressureWriting(units),
      "whether the eductor gets what it wants", "Wanted at the eductor's inlet");
  make.figure<Length>(
      "pump.strainerLoss", "Loss of the strainer",
      [](Basis & b) -> auto& { return b.pump.strainerLoss; }, headWriting(units), "suction lift",
      "Clean, at design flow");
  make.figure<Volume>(
      "pump.strainerVolume", "Volume of the strainer",
      [](Basis & b) -> auto& { return b.pump.strainerVolume; }, volumeWriting(units),
      "the priming volume");
  make.figure<Flow>(
      "pump.primingHose", "Priming hose", [](Basis & b) -> auto& { return b.pump.primingHose; },
      flowWriting(units), "the time to prime",
      "Flow of the hose that fills suction and strainer before start-up");
  TableMaker<PumpPoint> curve(
      "pump.curve", "Pump curve", "pump point", "the working point and the product pressure",
      [](Basis & b) -> auto& { return b.pump.curve; });
  curve.column<Flow>(
      "Flow", [](PumpPoint & p) -> auto& { return p.flow; }, flowWriting(units), true,
      "By rising flow");
  curve.column<Length>(
      "Head", [](PumpPoint & p) -> auto& { return p.head; }, headWriting(units), true,
      "Total dynamic head, of water");
  curve.column<std::optional<Length>>(
      "NPSH required", [](PumpPoint & p) -> auto& { return p.npshRequired; },
      optionalWriting(headWriting(units)), false, "At that flow; without it suction stays open");
  group.tables.push_back(curve.finish(context.plan, [](const Plan&) { return PumpPoint{}; }));
  return group;
}

BasisGroup freshWaterGroup(const FieldContext& context) {
  BasisGroup group;
  group.title = fieldText("Fresh water");
  group.lead = fieldText("Fresh water comes in over an air gap or through a reduced-pressure "
                         "assembly, as the local code and the water supplier ask.");
  FigureMaker<Basis> make(context, basisPlace(), group);
  make.figure<Pressure>(
      "makeUp.pressure", "Supply pressure", [](Basis & b) -> auto& { return b.makeUp.pressure; },
      pressureWriting(context.units()), "the make-up line", "Static, at the connection");
  make.figure<Flow>(
      "makeUp.flow", "Make-up flow", [](Basis & b) -> auto& { return b.makeUp.flow; },
      flowWriting(context.units()), "the make-up line", "Design flow");
  return group;
}

namespace {

void siteFigures(const FieldContext& context, BasisGroup& group) {
  const Writing<Length> level = elevationWriting(context.units());
  FigureMaker<Site> make(context, sitePlace(), group);
  make.figure<Length>(
      "site.groundwater", "Groundwater", [](Site & s) -> auto& { return s.groundwater; }, level,
      "flotation of an empty vault", "Highest expected elevation");
  make.figure<Length>(
      "site.frostDepth", "Frost depth", [](Site & s) -> auto& { return s.frostDepth; },
      lengthWriting(context.units()), "whether lines lie deep enough", "Below grade");
}

} // namespace

BasisGroup groundGroup(const FieldContext& context) {
  BasisGroup group;
  group.title = fieldText("Ground and digging");
  group.lead = fieldText("A competent person classifies the soil and chooses the protection on "
                         "the site; what is given here only prepares for that.");
  FigureMaker<Basis> make(context, basisPlace(), group);
  make.choice<SoilClass>(
      "earth.soil", "Soil class", [](Basis & b) -> auto& { return b.earth.soil; },
      {SoilClass::StableRock, SoilClass::TypeA, SoilClass::TypeB, SoilClass::TypeC},
      {fieldText("Stable rock"), fieldText("Type A"), fieldText("Type B"), fieldText("Type C")},
      "slopes of the pit and its size", "As OSHA 1926 Subpart P names them");
  make.toggle(
      "earth.previouslyDisturbed", "Disturbed before",
      [](Basis & b) -> auto& { return b.earth.previouslyDisturbed; },
      "Fill or an old trench: it is then no type A");
  make.choice<ProtectiveSystem>(
      "earth.protection", "Protection of the pit",
      [](Basis & b) -> auto& { return b.earth.protection; },
      {ProtectiveSystem::None, ProtectiveSystem::Sloped, ProtectiveSystem::Shored,
       ProtectiveSystem::Shielded, ProtectiveSystem::Engineered},
      {fieldText("None"), fieldText("Sloped"), fieldText("Shored"), fieldText("Shielded"),
       fieldText("Engineered")},
      "the excavation");
  make.choice<SoilHold>(
      "earth.soilHold", "Earth against flotation",
      [](Basis & b) -> auto& { return b.earth.soilHold; },
      {SoilHold::LidOnly, SoilHold::Column, SoilHold::Wedge},
      {fieldText("On the lid only"), fieldText("Column on lid and collar"),
       fieldText("Column and soil wedge")},
      "flotation of an empty vault", "Which earth is counted");
  siteFigures(context, group);
  FigureMaker<Basis> places(context, basisPlace(), group);
  places.text<std::vector<Point2>>(
      "earth.ladders", "Ladders at", [](Basis & b) -> auto& { return b.earth.ladders; },
      placesWriting(context.units()), "ways out of the pit",
      "Ways out of the excavation: east, north; with `;` between them");
  places.text<std::vector<Point2>>(
      "earth.spoil", "Spoil heap", [](Basis & b) -> auto& { return b.earth.spoil; },
      placesWriting(context.units()), "its distance from the pit's edge",
      "Corners of its outline, three at least: east, north; with `;` between them");
  return group;
}

int BasisGroup::unknown() const {
  int count = 0;
  for (const BasisItem& item : items)
    count += !item.known && !item.need.isEmpty() ? 1 : 0;
  for (const BasisTable& table : tables)
    count += table.rows.empty() && !table.need.isEmpty() ? 1 : 0;
  return count;
}

std::vector<BasisGroup> basisGroups(const FieldContext& context) {
  return {waterGroup(context),      demandGroup(context), pumpGroup(context),
          freshWaterGroup(context), groundGroup(context), wiringGroup(context)};
}

FieldResult addBasisRow(const FieldContext& context, const BasisTable& table,
                        const std::vector<QString>& texts) {
  FieldResult result{table.add(context.plan), {}};
  for (std::size_t c = 0; c < table.draft.size() && c < texts.size(); ++c) {
    if (texts[c].isEmpty()) continue;
    result = table.draft[c].write(*result.plan, texts[c]);
    if (!result.plan) return result;
  }
  return result;
}

std::string basisKeyNamed(const std::vector<BasisGroup>& groups, const QString& sentence) {
  std::string best;
  qsizetype longest = 0;
  const auto offer = [&](const std::string& key, const QString& name) {
    if (name.size() <= longest || !sentence.contains(name, Qt::CaseInsensitive)) return;
    longest = name.size();
    best = key;
  };
  for (const BasisGroup& group : groups) {
    for (const BasisItem& item : group.items) {
      offer(item.key, item.field.label);
      offer(item.key, shown(item.key));
    }
    for (const BasisTable& table : group.tables) {
      offer(table.key, table.title);
      offer(table.key, table.noun);
      offer(table.key, shown(table.key));
    }
  }
  return best;
}

} // namespace sump
