// Wash demand and wiring: mostly small tables.

#include "app/panels/basis_maker.h"

#include "core/plan/edits_objects.h"
#include "core/study/object_names.h"

#include <algorithm>

namespace sump {

namespace {

/// Of the conduits that may bring it, and none.
std::pair<std::vector<Id>, QStringList> conduits(const Plan& plan, std::vector<Service> services) {
  std::vector<Id> ids = {Id()};
  QStringList names = {fieldText("None yet")};
  for (const Run& run : plan.runs) {
    if (std::ranges::find(services, run.service) == services.end()) continue;
    ids.push_back(run.id);
    names << shown(run.id);
  }
  return {std::move(ids), std::move(names)};
}

/// An id that neither an object nor another row has.
Id freshRowId(const Plan& plan, std::string_view stem) {
  const Locator locator(plan);
  const auto taken = [&](const Id& id) {
    const auto has = [&id](const auto& row) { return row.id == id; };
    return locator.find(id) || std::ranges::any_of(plan.basis.demand.devices, has) ||
           std::ranges::any_of(plan.basis.wiring.supplies, has) ||
           std::ranges::any_of(plan.basis.wiring.signalCircuits, has);
  };
  for (int n = 1;; ++n) {
    Id id = std::string(stem) + "-" + std::to_string(n);
    if (!taken(id)) return id;
  }
}

BasisTable deviceTable(const FieldContext& context) {
  const UnitSystem units = context.units();
  TableMaker<WashDevice> table(
      "demand.devices", "Wash devices", "wash device",
      "peak flow into the vaults and out of the pump",
      [](Basis & b) -> auto& { return b.demand.devices; });
  table.column<std::string>(
      "Name", [](WashDevice & d) -> auto& { return d.name; }, textWriting());
  std::vector<Id> washes = {Id()};
  QStringList names = {fieldText("None yet")};
  for (const WashEquipment& w : context.plan.washes) {
    washes.push_back(w.id);
    names << shown(called(w));
  }
  table.choice<Id>(
      "Belongs to", [](WashDevice & d) -> auto& { return d.wash; }, washes, names);
  table.column<Flow>(
      "Flow of one", [](WashDevice & d) -> auto& { return d.flow; }, flowWriting(units), true,
      "While it runs");
  table.column<std::optional<Pressure>>(
      "Pressure", [](WashDevice & d) -> auto& { return d.pressure; },
      optionalWriting(pressureWriting(units)), false, "Needed at the equipment's inlet");
  table.column<int>(
      "Count", [](WashDevice & d) -> auto& { return d.count; }, countWriting());
  table.column<double>(
      "Share of a wash", [](WashDevice & d) -> auto& { return d.duty; }, percentWriting(), false,
      "During which it runs");
  table.toggle(
      "Fresh water", [](WashDevice & d) -> auto& { return d.freshWater; });
  return table.finish(context.plan, [](const Plan& plan) {
    WashDevice device;
    device.id = freshRowId(plan, "WD");
    return device;
  });
}

BasisTable vehicleTable(const FieldContext& context) {
  const UnitSystem units = context.units();
  TableMaker<VehicleTraffic> table(
      "demand.vehicles", "Vehicles", "vehicle", "daily water, sediment and pump-out interval",
      [](Basis & b) -> auto& { return b.demand.vehicles; });
  table.column<std::string>(
      "Kind", [](VehicleTraffic & v) -> auto& { return v.name; }, textWriting(), true);
  table.column<std::optional<double>>(
      "In the busiest hour", [](VehicleTraffic & v) -> auto& { return v.perHour; },
      optionalWriting(numberWriting()));
  table.column<std::optional<double>>(
      "A day", [](VehicleTraffic & v) -> auto& { return v.perDay; },
      optionalWriting(numberWriting()));
  table.column<std::optional<Volume>>(
      "Water a wash", [](VehicleTraffic & v) -> auto& { return v.water; },
      optionalWriting(volumeWriting(units)));
  table.column<std::optional<Volume>>(
      "Sediment a wash", [](VehicleTraffic & v) -> auto& { return v.sediment; },
      optionalWriting(volumeWriting(units)), false, "Settled volume that one wash brings");
  return table.finish(context.plan, [](const Plan&) { return VehicleTraffic{}; });
}

BasisTable supplyTable(const FieldContext& context) {
  TableMaker<Supply> table(
      "wiring.supplies", "Supplies", "supply", "conduit fill, working space and disconnects",
      [](Basis & b) -> auto& { return b.wiring.supplies; });
  table.column<std::string>(
      "Name", [](Supply & s) -> auto& { return s.name; }, textWriting());
  table.choice<SupplyKind>(
      "Kind", [](Supply & s) -> auto& { return s.kind; },
      {SupplyKind::Control1Phase, SupplyKind::Motor3Phase},
      {fieldText("Control, one phase"), fieldText("Motor, three phases")}, true);
  table.column<int>(
      "Volts", [](Supply & s) -> auto& { return s.volts; }, countWriting(" V"), true,
      "Control: 110 or 220. Motor: 230 (208-230), 460 or 575");
  table.column<std::optional<int>>(
      "Volts to ground", [](Supply & s) -> auto& { return s.voltsToGround; },
      optionalWriting(countWriting(" V")));
  const auto [runs, names] = conduits(context.plan, {Service::Power});
  table.choice<Id>(
      "Conduit", [](Supply & s) -> auto& { return s.run; }, runs, names);
  table.column<std::optional<Point2>>(
      "Disconnect at", [](Supply & s) -> auto& { return s.disconnect; },
      optionalWriting(placeWriting(context.units())), false, "East, north");
  return table.finish(context.plan, [](const Plan& plan) {
    Supply supply;
    supply.id = freshRowId(plan, "PS");
    return supply;
  });
}

BasisTable signalTable(const FieldContext& context) {
  TableMaker<SignalCircuit> table(
      "wiring.signalCircuits", "Signals", "signal", "whether the pump is told of a wash",
      [](Basis & b) -> auto& { return b.wiring.signalCircuits; });
  table.column<std::string>(
      "Name", [](SignalCircuit & s) -> auto& { return s.name; }, textWriting());
  table.choice<SignalKind>(
      "Kind", [](SignalCircuit & s) -> auto& { return s.kind; },
      {SignalKind::Dc24, SignalKind::Ac24, SignalKind::Ac110, SignalKind::Ac220},
      {fieldText("24 V DC"), fieldText("24 V AC"), fieldText("110 V AC"), fieldText("220 V AC")},
      true);
  const auto [runs, names] = conduits(context.plan, {Service::Signal, Service::FloatConduit});
  table.choice<Id>(
      "Conduit", [](SignalCircuit & s) -> auto& { return s.run; }, runs, names);
  return table.finish(context.plan, [](const Plan& plan) {
    SignalCircuit circuit;
    circuit.id = freshRowId(plan, "SC");
    return circuit;
  });
}

} // namespace

BasisGroup demandGroup(const FieldContext& context) {
  BasisGroup group;
  group.title = fieldText("Wash demand");
  FigureMaker<Basis> make(context, basisPlace(), group);
  make.figure<double>(
      "demand.simultaneity", "Drawn at once",
      [](Basis & b) -> auto& { return b.demand.simultaneity; }, percentWriting(),
      "peak flow into the vaults and out of the pump",
      "Share of the devices' flow that is drawn at once at the peak");
  make.figure<double>(
      "demand.lostFraction", "Lost water", [](Basis & b) -> auto& { return b.demand.lostFraction; },
      percentWriting(), "make-up and the overflow's share",
      "Of the wash water, carried off wet or evaporated");
  make.figure<Flow>(
      "demand.otherInflow", "Other inflow", [](Basis & b) -> auto& { return b.demand.otherInflow; },
      flowWriting(context.units()), "peak water levels",
      "That also reaches the drains at the peak: rain, hoses. Type 0 when there is none.");
  group.tables.push_back(deviceTable(context));
  group.tables.push_back(vehicleTable(context));
  return group;
}

BasisGroup wiringGroup(const FieldContext& context) {
  BasisGroup group;
  group.title = fieldText("Wiring");
  group.lead = fieldText("Conductor sizes, protection and grounding are a licensed electrician's. "
                         "Conductors are entered at the conduit that holds them.");
  FigureMaker<Basis> make(context, basisPlace(), group);
  make.choice<FacingPanel>(
      "wiring.facingPanel", "Opposite the panel",
      [](Basis & b) -> auto& { return b.wiring.facingPanel; },
      {FacingPanel::Insulated, FacingPanel::Grounded, FacingPanel::LiveParts},
      {fieldText("Nothing live or grounded"), fieldText("Grounded parts, as concrete"),
       fieldText("Live parts")},
      "working space in front of the panel", "Working-space condition 1, 2 or 3");
  group.tables.push_back(supplyTable(context));
  group.tables.push_back(signalTable(context));
  return group;
}

} // namespace sump
