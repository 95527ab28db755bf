#pragma once
// The plan file's description (plan_file_fields.h), for plan/basis.h. Private to exchange/.

#include "core/plan/basis.h"

#include <concepts>
#include <type_traits>

namespace sump {

/// T or const T: the same description serves reading and writing.
template <class V, class T>
concept Is = std::same_as<std::remove_const_t<V>, T>;

template <class F, Is<WashDevice> T> void describe(F& f, T& d) {
  f.need("id", d.id, "an id that no other object has");
  f.may("name", d.name, "the name of the device");
  f.may("wash", d.wash, "the id of the wash equipment that it belongs to");
  f.need("flow", d.flow, "the flow of one in cubic metres a second");
  f.may("pressure", d.pressure, "the pressure needed at the equipment's inlet in pascals");
  f.may("count", d.count, "how many alike there are");
  f.may("duty", d.duty, "the share of a wash during which it runs, 0 to 1");
  f.may("freshWater", d.freshWater, "whether it is fed with fresh water");
}

template <class F, Is<VehicleTraffic> T> void describe(F& f, T& v) {
  f.may("name", v.name, "the kind of vehicle");
  f.may("perHour", v.perHour, "the vehicles in the busiest hour");
  f.may("perDay", v.perDay, "the vehicles a day");
  f.may("water", v.water, "all water for one wash in cubic metres");
  f.may("sediment", v.sediment, "the settled volume that one wash brings in cubic metres");
}

template <class F, Is<WashDemand> T> void describe(F& f, T& d) {
  f.may("devices", d.devices, "what draws water at the wash");
  f.may("simultaneity", d.simultaneity, "the share of the flow drawn at once, 0 to 1");
  f.may("vehicles", d.vehicles, "the vehicles by kind");
  f.may("lostFraction", d.lostFraction, "the share of the wash water that is lost, 0 to 1");
  f.may("otherInflow", d.otherInflow,
        "the flow that also reaches the drains in cubic metres a second");
}

template <class F, Is<PumpPoint> T> void describe(F& f, T& p) {
  f.need("flow", p.flow, "the flow in cubic metres a second");
  f.need("head", p.head, "the total head in metres of water");
  f.may("npshRequired", p.npshRequired, "the required net positive suction head in metres");
}

template <class F, Is<Pump> T> void describe(F& f, T& p) {
  f.may("name", p.name, "the name of the pump");
  f.may("curve", p.curve, "the points of the pump curve by rising flow");
  f.may("equipmentLoss", p.equipmentLoss, "the head lost in the equipment in metres of water");
  f.may("recirculation", p.recirculation, "the recirculation flow in cubic metres a second");
  f.may("underflow", p.underflow, "the underflow in cubic metres a second while it is flushed");
  f.may("strainerLoss", p.strainerLoss, "the head lost in the clean strainer in metres of water");
  f.may("primingHose", p.primingHose, "the flow of the hose that fills it in m3/s");
  f.may("strainerVolume", p.strainerVolume, "the volume of the strainer in cubic metres");
  f.may("eductorPressure", p.eductorPressure, "the pressure wanted at the eductor in pascals");
}

template <class F, Is<MakeUpSupply> T> void describe(F& f, T& m) {
  f.may("pressure", m.pressure, "the static pressure of the supply in pascals");
  f.may("flow", m.flow, "the make-up flow in cubic metres a second");
}

template <class F, Is<WaterBasis> T> void describe(F& f, T& w) {
  f.may("temperature", w.temperature, "the warmest water temperature in degrees Celsius");
  f.may("altitude", w.altitude, "the altitude above mean sea level in metres");
  f.may("sludgeDepth", w.sludgeDepth, "the sludge allowance on the floor in metres");
  f.may("oilDepth", w.oilDepth, "the oil allowance under the water level in metres");
  f.may("suspendedSolids", w.suspendedSolids, "the solids in the wash water in kg/m3");
  f.may("lowLevel", w.lowLevel, "the float switch above the last vault's floor in metres");
}

template <class F, Is<EarthBasis> T> void describe(F& f, T& e) {
  f.may("soil", e.soil, "the soil class for excavation");
  f.may("previouslyDisturbed", e.previouslyDisturbed, "whether the soil was dug before");
  f.may("protection", e.protection, "the protective system of the excavation");
  f.may("soilHold", e.soilHold, "which earth is counted against flotation");
  f.may("ladders", e.ladders, "the ways out of the excavation, site points in metres");
  f.may("spoil", e.spoil, "where spoil is heaped, site points in metres");
}

template <class F, Is<Conductor> T> void describe(F& f, T& c) {
  f.need("size", c.size, "the AWG size, as text");
  f.may("count", c.count, "how many there are");
  f.may("kind", c.kind, "the kind of circuit");
}

template <class F, Is<Supply> T> void describe(F& f, T& s) {
  f.need("id", s.id, "an id that no other object has");
  f.may("name", s.name, "the name of the supply");
  f.may("kind", s.kind, "what it feeds");
  f.need("volts", s.volts, "the nominal voltage between the lines");
  f.may("voltsToGround", s.voltsToGround, "the voltage to ground");
  f.may("run", s.run, "the id of the conduit that brings it");
  f.may("disconnect", s.disconnect, "the site point [x, y] of its disconnect in metres");
}

template <class F, Is<SignalCircuit> T> void describe(F& f, T& s) {
  f.need("id", s.id, "an id that no other object has");
  f.may("name", s.name, "the name of the signal");
  f.may("kind", s.kind, "the voltage of the signal");
  f.may("run", s.run, "the id of the conduit that brings it");
}

template <class F, Is<WiringBasis> T> void describe(F& f, T& w) {
  f.may("supplies", w.supplies, "the electrical supplies");
  f.may("signalCircuits", w.signalCircuits, "the signal circuits");
  f.may("facingPanel", w.facingPanel, "what stands opposite the panel");
}

template <class F, Is<Basis> T> void describe(F& f, T& b) {
  f.may("water", b.water, "the water");
  f.may("demand", b.demand, "the wash demand");
  f.may("pump", b.pump, "the pump");
  f.may("makeUp", b.makeUp, "the fresh-water supply");
  f.may("earth", b.earth, "the ground and the excavation");
  f.may("wiring", b.wiring, "the supplies and signals");
}

} // namespace sump
