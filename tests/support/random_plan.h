#pragma once
// Random plans for property tests: consistent by construction (plan/consistency.h), every field
// set to something that is not its default now and then. Not believable as sites.

#include "core/plan/keys.h"
#include "core/plan/plan.h"

#include <cmath>
#include <random>
#include <string>

namespace sump::test {

struct RandomPlanSize {
  int objects = 3; ///< of each kind of site object
  int vaults = 3;
  int runs = 10;
  /// Only multiples of 1/256: exact in binary and in the nine decimals of the plan file.
  bool exact = false;
};

class RandomPlanMaker {
public:
  explicit RandomPlanMaker(std::mt19937& rng) : rng_(rng) {}
  Plan make(const RandomPlanSize& size);

private:
  int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(rng_); }
  static double snapped(double v) { return std::round(v * 256) / 256; }
  double real(double low, double high) {
    const double v = std::uniform_real_distribution<double>(low, high)(rng_);
    return exact_ ? snapped(v) : v;
  }
  bool coin() { return whole(0, 1) == 1; }
  Length length(double low, double high) { return metres(real(low, high)); }
  Length level() { return length(90, 110); }
  Angle angle() { return degrees(real(-180, 180)); }
  Point2 sitePoint() { return {real(-200, 200), real(-200, 200)}; }
  std::optional<Length> maybe(Length v) { return coin() ? std::optional(v) : std::nullopt; }
  template <class E, std::size_t N> E any(const KeyTable<E, N>& table) {
    return table[static_cast<std::size_t>(whole(0, static_cast<int>(N) - 1))].first;
  }
  Service anyService() {
    return static_cast<Service>(whole(0, static_cast<int>(kServiceCount) - 1));
  }
  Id id(const std::string& prefix) { return prefix + std::to_string(++count_); }
  /// Texts with what a writer must escape or let through.
  std::string text() {
    static const std::vector<std::string> kTexts = {"",
                                                    "Wash bay",
                                                    "a \"quoted\" name",
                                                    "back\\slash / and ~tilde",
                                                    "two\nlines",
                                                    "tab\there",
                                                    "\xC3\x9C"
                                                    "berlauf",
                                                    "\xE6\xB1\xA1\xE6\xB0\xB4 \xF0\x9F\x92\xA7"};
    return kTexts[static_cast<std::size_t>(whole(0, static_cast<int>(kTexts.size()) - 1))];
  }
  std::string size() { return coin() ? "2" : "1-1/2"; }

  Ring star();
  void project();
  void site();
  void siteObjects();
  void basinsAndSewers();
  void room();
  RoomBox box() {
    return {{real(0, 1), real(0, 1)}, length(0.3, 1), length(0.3, 1), length(0.3, 2)};
  }
  void vault();
  void run();
  RunEnd end();
  void attach(RunEnd& end);
  void parts(Run& run);
  void eductor(Run& run);
  void notesAndUnderlays();
  void basis();
  void demand(WashDemand& wash);
  void pump(Pump& pump);
  void wiring(WiringBasis& wiring);
  void lists();
  /// Any other quantity in SI, or none.
  template <class Q> std::optional<Q> some(double low, double high) {
    return coin() ? std::optional(Q::from_value(real(low, high))) : std::nullopt;
  }
  template <class E, std::size_t N> std::optional<E> someOf(const KeyTable<E, N>& table) {
    return coin() ? std::optional(any(table)) : std::nullopt;
  }

  std::mt19937& rng_;
  Plan plan_;
  int count_ = 0;
  bool exact_ = false;
};

/// A simple outline: radii at rising angles round a centre.
inline Ring RandomPlanMaker::star() {
  const Point2 centre = sitePoint();
  const int corners = whole(3, 9);
  Ring ring;
  for (int i = 0; i < corners; ++i) {
    const double turn = 2 * kPi * i / corners;
    const Point2 corner = centre + Point2{std::cos(turn), std::sin(turn)} * real(2, 20);
    ring.push_back(exact_ ? Point2{snapped(corner.x), snapped(corner.y)} : corner);
  }
  return ring;
}

inline void RandomPlanMaker::project() {
  Project& p = plan_.project;
  for (std::string* field :
       {&p.title, &p.supplementaryTitle, &p.legalOwner, &p.siteAddress, &p.identificationNumber,
        &p.revision, &p.createdBy, &p.approvedBy, &p.documentStatus}) {
    *field = text();
  }
  p.issueDate = "2026-03-0" + std::to_string(whole(1, 9));
  p.units = any(kUnitKeys);
  p.profile = text();
}

inline void RandomPlanMaker::site() {
  Site& s = plan_.site;
  if (coin()) s.boundary = star();
  s.datum = text();
  s.north = angle();
  s.groundwater = maybe(level());
  s.frostDepth = maybe(length(0, 2));
  s.groundDefault = maybe(level());
}

inline void RandomPlanMaker::siteObjects() {
  plan_.buildings.append({id("B"), text(), star(), maybe(level()), maybe(level())});
  plan_.pavements.append({id("PV"), text(), star(), coin()});
  plan_.utilities.append({id("U"),
                          text(),
                          any(kUtilityKeys),
                          {sitePoint(), sitePoint()},
                          maybe(level()),
                          maybe(length(0.02, 1)),
                          coin()});
  plan_.spots.append({id("SP"), sitePoint(), level()});
  plan_.wells.append({id("W"), text(), sitePoint()});
}

inline void RandomPlanMaker::basinsAndSewers() {
  plan_.basins.append({id("CB"), text(), any(kBasinKeys), sitePoint(), angle(), length(0.5, 9),
                       length(0.3, 1), level(), level(), maybe(length(0, 0.6))});
  plan_.sewers.append({id("S"), text(), sitePoint(), level(), maybe(level())});
  plan_.washes.append(
      {id("WE"), text(), sitePoint(), angle(), length(1, 20), length(1, 6), level(), size()});
}

inline void RandomPlanMaker::room() {
  EquipmentRoom r;
  r.id = id("E");
  r.name = text();
  r.corner = sitePoint();
  r.angle = angle();
  r.length = length(2, 6);
  r.width = length(2, 6);
  r.floor = level();
  if (coin()) r.door = Door{any(kSideKeys), length(0, 0.9), length(0.6, 1.1)};
  if (coin()) r.skid = box();
  if (coin()) r.plumbingArea = box();
  if (coin()) r.panel = box();
  if (coin()) r.floorDrain = Point2{real(0, 2), real(0, 2)};
  for (int i = whole(1, 4); i > 0; --i) {
    r.ports.push_back(
        {id("P"), text(), anyService(), {real(0, 2), real(0, 2)}, length(0, 2), size()});
  }
  plan_.rooms.append(std::move(r));
}

inline void RandomPlanMaker::vault() {
  Vault v;
  v.id = id("V");
  v.name = text();
  v.model = coin() ? "" : "12x6x6";
  v.centre = sitePoint();
  v.angle = angle();
  v.length = length(3, 5);
  v.width = length(1.5, 2.5);
  v.wall = length(0.1, 0.2);
  v.lidThickness = length(0.1, 0.3);
  v.floorThickness = length(0.1, 0.3);
  v.insideHeight = length(1, 2);
  v.floor = level();
  v.trafficLid = coin();
  v.engineered = coin();
  v.emptyWeight = some<Mass>(5000, 20000);
  v.collar = maybe(length(0, 0.6));
  for (int i = whole(0, 3); i > 0; --i) {
    const double before = v.baffles.empty() ? 0 : inMetres(v.baffles.back().offset) + 0.125;
    v.baffles.push_back({id("BF"), metres(before + real(0.3, 0.7)), length(0.05, 0.1),
                         coin() ? metres(0) : length(0, 0.2), coin() ? metres(0) : length(0, 0.2)});
  }
  for (int i = whole(0, 2); i > 0; --i) {
    v.manways.push_back(
        {id("M"), {real(-1, 1), real(-0.5, 0.5)}, length(0.5, 0.8), maybe(level()), coin()});
  }
  plan_.vaults.append(std::move(v));
}

inline void RandomPlanMaker::attach(RunEnd& end) {
  const auto pick = [&](const auto& list) -> const auto& {
    return list[static_cast<std::size_t>(whole(0, static_cast<int>(list.size()) - 1))];
  };
  const Point2 nearCentre{real(-0.1, 0.1), real(-0.1, 0.1)};
  switch (end.kind) {
  case EndKind::Free:
    end.at = sitePoint();
    return;
  case EndKind::Chamber: {
    const Vault& v = pick(plan_.vaults);
    const std::vector<ChamberBox> boxes = chambers(v);
    const ChamberBox& chamber = boxes[static_cast<std::size_t>(whole(1, chamberCount(v))) - 1];
    end.target = v.id;
    end.chamber = chamber.number;
    // A little inside, so that snapping cannot push it out.
    end.at = {real(chamber.low.x + 0.01, chamber.high.x - 0.01),
              real(chamber.low.y + 0.01, chamber.high.y - 0.01)};
    return;
  }
  case EndKind::Basin:
    end.target = pick(plan_.basins).id;
    end.at = nearCentre;
    return;
  case EndKind::Sewer:
    end.target = pick(plan_.sewers).id;
    return;
  case EndKind::Port:
    end.target = pick(pick(plan_.rooms).ports).id;
    return;
  case EndKind::Wash:
    end.target = pick(plan_.washes).id;
    end.at = nearCentre;
    return;
  case EndKind::Run:
    // The first run is always free at both ends, so runs never hang in a circle.
    end.target = plan_.runs.front().id;
    end.at = sitePoint();
    return;
  }
}

inline RunEnd RandomPlanMaker::end() {
  RunEnd e;
  if (!plan_.runs.empty()) {
    do {
      e.kind = any(kEndKindKeys);
    } while ((e.kind == EndKind::Chamber && plan_.vaults.empty()) ||
             (e.kind != EndKind::Free && e.kind != EndKind::Chamber && e.kind != EndKind::Run &&
              plan_.basins.empty()));
  }
  attach(e);
  e.invert = maybe(level());
  e.fitting = any(kEndFittingKeys);
  return e;
}

inline void RandomPlanMaker::parts(Run& run) {
  for (int i = whole(0, 2); i > 0; --i) {
    const PartKind kind = any(kPartKeys);
    run.parts.push_back({id("X"), kind, whole(0, static_cast<int>(run.vertices.size())), real(0, 1),
                         kind == PartKind::Reducer || coin() ? size() : ""});
    if (coin()) run.parts.back().trafficCover = coin();
  }
}

inline void RandomPlanMaker::eductor(Run& run) {
  for (const Vault& v : plan_.vaults) {
    if (v.manways.empty() || coin()) continue;
    run.eductor = EductorMount{v.manways.front().id, level(), level(), size()};
    return;
  }
}

inline void RandomPlanMaker::run() {
  Run r;
  r.id = id("R-");
  r.name = text();
  r.service = anyService();
  r.pipe = coin() ? "pvc-sch80" : "";
  r.size = size();
  r.from = end();
  // Far from everything, so that no run is shorter than a millimetre.
  r.vertices.push_back({{real(300, 400), real(300, 400)}, maybe(level())});
  for (int i = whole(0, 3); i > 0; --i)
    r.vertices.push_back({sitePoint(), maybe(level())});
  r.to = end();
  parts(r);
  if (coin()) eductor(r);
  if (isConduit(r.service)) r.conductors = {{"12", whole(1, 6), any(kCircuitKeys)}};
  plan_.runs.append(std::move(r));
}

inline void RandomPlanMaker::notesAndUnderlays() {
  const Id object = plan_.buildings.empty() ? "" : plan_.buildings.front().id;
  plan_.notes.append(
      {id("N"), {coin() ? object : "", sitePoint()}, {"", sitePoint()}, length(0, 3), text()});
  Underlay u;
  u.id = id("UL");
  u.name = text();
  if (coin()) {
    u.file = "site.png";
  } else {
    u.media = "image/png";
    u.data.text = "iVBORw0KGgo=";
  }
  u.at = sitePoint();
  u.angle = angle();
  u.width = length(10, 90);
  u.height = length(10, 90);
  u.strength = real(0, 1);
  u.shown = coin();
  u.locked = coin();
  plan_.underlays.append(std::move(u));
}

inline void RandomPlanMaker::demand(WashDemand& wash) {
  WashDevice device;
  device.id = id("D");
  device.name = text();
  if (!plan_.washes.empty() && coin()) device.wash = plan_.washes.front().id;
  device.flow = Flow::from_value(real(0.01, 0.02));
  device.pressure = some<Pressure>(1e5, 9e5);
  device.count = whole(1, 9);
  device.duty = real(0, 1);
  device.freshWater = coin();
  wash.devices.push_back(std::move(device));
  wash.simultaneity = coin() ? std::optional(real(0, 1)) : std::nullopt;
  wash.lostFraction = coin() ? std::optional(real(0, 1)) : std::nullopt;
  wash.otherInflow = some<Flow>(0, 0.01);
  wash.vehicles.push_back(
      {text(), real(1, 20), real(20, 200), some<Volume>(0.1, 2), some<Volume>(0.01, 0.1)});
}

inline void RandomPlanMaker::pump(Pump& pump) {
  pump.name = text();
  for (int i = whole(0, 4); i > 0; --i) {
    const double n = static_cast<double>(pump.curve.size());
    pump.curve.push_back(
        {Flow::from_value((n + 1) / 64), metres(60 - 8 * n - real(0, 7)), maybe(length(1, 5))});
  }
  pump.equipmentLoss = maybe(length(0, 9));
  pump.recirculation = some<Flow>(0, 0.01);
  pump.underflow = some<Flow>(0, 0.01);
  pump.strainerLoss = maybe(length(0, 2));
  pump.primingHose = some<Flow>(0, 0.01);
  pump.strainerVolume = some<Volume>(0, 0.1);
  pump.eductorPressure = some<Pressure>(0, 3e5);
}

inline void RandomPlanMaker::wiring(WiringBasis& wiring) {
  const Id run = plan_.runs.empty() || coin() ? "" : plan_.runs.front().id;
  wiring.supplies.push_back({id("SU"), text(), any(kSupplyKeys), whole(110, 575),
                             coin() ? std::optional(whole(110, 347)) : std::nullopt, run,
                             coin() ? std::optional(sitePoint()) : std::nullopt});
  wiring.signalCircuits.push_back({id("SG"), text(), any(kSignalKeys), run});
  wiring.facingPanel = someOf(kFacingPanelKeys);
}

inline void RandomPlanMaker::basis() {
  Basis& b = plan_.basis;
  if (coin()) b.water.temperature = celsius(real(1, 45));
  b.water.altitude = maybe(length(0, 2000));
  b.water.sludgeDepth = maybe(length(0, 0.5));
  b.water.oilDepth = maybe(length(0, 0.1));
  if (coin()) b.water.suspendedSolids = real(0.1, 5);
  b.water.lowLevel = maybe(length(0.2, 0.9));
  demand(b.demand);
  pump(b.pump);
  b.makeUp = {some<Pressure>(1e5, 6e5), some<Flow>(0, 0.01)};
  b.earth.soil = someOf(kSoilKeys);
  b.earth.previouslyDisturbed = coin();
  b.earth.protection = someOf(kProtectionKeys);
  b.earth.soilHold = someOf(kSoilHoldKeys);
  if (coin()) b.earth.ladders.push_back(sitePoint());
  if (coin()) b.earth.spoil = star();
  wiring(b.wiring);
}

inline void RandomPlanMaker::lists() {
  if (!plan_.vaults.empty() && coin()) plan_.locked.push_back(plan_.vaults.front().id);
  if (coin()) plan_.acceptances.push_back({text() + "x", text(), text(), "2026-03-04"});
  if (coin()) plan_.revisions.push_back({"A", "2026-03-04", text(), text()});
}

inline Plan RandomPlanMaker::make(const RandomPlanSize& size) {
  exact_ = size.exact;
  project();
  site();
  for (int i = 0; i < size.objects; ++i) {
    siteObjects();
    basinsAndSewers();
    room();
  }
  for (int i = 0; i < size.vaults; ++i)
    vault();
  for (int i = 0; i < size.runs; ++i)
    run();
  notesAndUnderlays();
  basis();
  lists();
  if (coin()) plan_.limits["storage.minimum"] = real(1, 20);
  if (coin()) plan_.limits["slope.gravity.large"] = real(0, 0.1);
  return std::move(plan_);
}

inline Plan randomPlan(std::mt19937& rng, const RandomPlanSize& size = {}) {
  return RandomPlanMaker(rng).make(size);
}

} // namespace sump::test
