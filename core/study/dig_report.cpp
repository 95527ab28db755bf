#include "core/study/dig_report.h"

#include "core/geometry/polygon.h"
#include "core/study/calculation_entry.h"
#include "core/study/object_names.h"
#include "core/study/place_text.h"
#include "core/units/earth.h"
#include "core/units/print.h"

namespace sump {

namespace {

using Kind = QuantityKind;
using Entry = CalculationEntry;

const std::string kPits = "Excavation";
const std::string kTrenches = "Trenches";
const std::string kSides = "29 CFR 1926 Subpart P, App. B table B-1; prismoidal rule";
const std::string kPractice = "common practice, no source";
const std::string kEgress = "29 CFR 1926.651(c)(2)";

/// Earth is ordered and hauled by cubic yards or cubic metres, whatever other volumes are read in.
std::string inYards(const Decided<Volume>& volume) {
  const Volume v = volume ? *volume : cubicMetres(0);
  return "that is " + fixed(inCubicYards(v), 1) + " yd\u00B3 or " + fixed(v.value(), 1) +
         " m\u00B3";
}

std::string clashName(const Plan& plan, const DigClash& clash) {
  const std::string name = spokenName(plan, clash.object);
  switch (clash.kind) {
  case DigClashKind::Building:
    return "building " + name;
  case DigClashKind::Boundary:
    return "the boundary";
  case DigClashKind::TrafficPavement:
    return "traffic pavement " + name;
  case DigClashKind::Well:
    return "well " + name;
  case DigClashKind::Utility:
    return "utility " + name;
  case DigClashKind::Trench:
    return "trench of " + clash.object;
  case DigClashKind::Run:
    break;
  }
  return "run " + clash.object;
}

/// A pit goes by its first vault, a trench by its run.
class DigReport {
public:
  DigReport(const Plan& plan, const EarthStudy& earth)
      : plan_(plan), earth_(earth), f_(earth.figures) {}
  std::vector<Calculation> take();

private:
  void add(Entry& entry) { made_.push_back(entry.take()); }
  void addEarth(Entry& entry, const Decided<Volume>& volume) {
    if (volume) entry.step(inYards(volume));
    add(entry);
  }
  void pit(const PitStudy& pit);
  void pitVolumes(const PitStudy& pit);
  void trench(const TrenchStudy& trench);
  void trenchParts(const TrenchStudy& trench);
  void footings(const std::string& id, const std::string& section, const Id& object,
                const std::vector<FootingCheck>& checks);
  void egress(const std::string& id, const std::string& section, const Id& object,
              const Egress& egress, const std::string& way);
  void clashes(const std::string& id, const std::string& section, const Id& object,
               const std::vector<DigClash>& clashes);
  void protection();
  void totals();
  void heap();
  /// Loose volume, which follows from what is dug and how much it swells.
  Entry loose(std::string id, std::string title, const Decided<Volume>& volume) const {
    Entry entry(std::move(id), kPits, std::move(title), volume, Kind::SolidVolume);
    entry.in("V_d", "dug, pits and trenches", earth_.dug, Kind::SolidVolume, "dig.dug")
        .has("s", "swell", f_.swell, Kind::Share, "limits");
    return entry;
  }
  std::string slopeFrom() const {
    return earth_.soilAssumed ? "type C, as soil is not classified" : "soil class";
  }

  const Plan& plan_;
  const EarthStudy& earth_;
  const EarthFigures& f_;
  std::vector<Calculation> made_;
};

void DigReport::pit(const PitStudy& pit) {
  const Id& object = pit.vaults.front();
  Entry depth("dig.depth", kPits, "Depth of the dig", pit.depth, Kind::Length);
  depth.about(object)
      .in("z_g", "highest grade at the top", pit.grade, Kind::Length)
      .has("z_b", "lowest bottom, under the bed", pit.bottom, Kind::Length)
      .formula("z_g - z_b; of several vaults in one dig the deepest one's own", kSides);
  for (const Id& vault : pit.vaults)
    depth.step("holds " + vault);
  add(depth);
  pitVolumes(pit);
  egress("dig", kPits, object, pit.egress,
         "from the farthest place in the bottom to the nearest ladder, straight; at most r");
  footings("dig", kPits, object, pit.footings);
  clashes("dig", kPits, object, pit.clashes);
}

void DigReport::pitVolumes(const PitStudy& pit) {
  const Id& object = pit.vaults.front();
  addEarth(
      Entry("dig.volume", kPits, "Bank volume of the dig", pit.dug, Kind::SolidVolume)
          .about(object)
          .in("h", "greatest depth", pit.depth, Kind::Length, "dig.depth")
          .has("m", "run over rise of deep sides", earth_.sideSlope, Kind::Number, slopeFrom())
          .has("w", "working space round the vault", f_.workingSpace, Kind::Length, "limits")
          .formula(
              "area of the outline, grown by m x height, summed over the mean depth; digs that "
              "run into each other counted once",
              kSides),
      pit.dug);
  addEarth(Entry("dig.bedding", kPits, "Bedding under the vaults", pit.bedding, Kind::SolidVolume)
               .about(object)
               .has("t", "thickness", f_.bedding, Kind::Length, "limits")
               .formula("area of the bottom x t", kPractice),
           pit.bedding);
  addEarth(
      Entry("dig.risers", kPits, "Risers of the vaults' manways", pit.risers, Kind::SolidVolume)
          .about(object)
          .has("t", "wall of a riser", f_.riserWall, Kind::Length, "limits")
          .formula("sum of pi / 4 x (clear opening + 2 x t)\u00B2 x height from the lid up to "
                   "the rim, or to the mean grade where that is lower",
                   kPractice),
      pit.risers);
  addEarth(
      Entry("dig.backfill", kPits, "Backfill round the vaults", pit.backfill, Kind::SolidVolume)
          .about(object)
          .in("V_d", "dug", pit.dug, Kind::SolidVolume, "dig.volume")
          .in("V_b", "bedding", pit.bedding, Kind::SolidVolume, "dig.bedding")
          .in("V_r", "risers", pit.risers, Kind::SolidVolume, "dig.risers")
          .formula("V_d - V_b - V_r - outside volume of the vaults below grade, not below 0",
                   kPractice),
      pit.backfill);
}

void DigReport::trench(const TrenchStudy& trench) {
  const std::string source = "ASTM D2321 practice, from memory; 29 CFR 1926 Subpart P";
  add(Entry("trench.width", kTrenches, "Width of the trench's bottom",
            Decided<Length>(trench.bottomWidth), Kind::Length)
          .about(trench.run)
          .formula("the greater of OD + the least width over the pipe (limit) and "
                   "1.25 OD + the width over that (limit)",
                   source));
  addEarth(
      Entry("trench.volume", kTrenches, "Bank volume of the trench", Decided<Volume>(trench.dug),
            Kind::SolidVolume)
          .about(trench.run)
          .has("L", "length outside vaults, basins and pits", trench.length, Kind::Length)
          .has("w", "width of the bottom", trench.bottomWidth, Kind::Length, "trench.width")
          .has("h", "greatest depth", trench.depth, Kind::Length)
          .has("m", "run over rise of deep sides", earth_.sideSlope, Kind::Number, slopeFrom())
          .has("h_p", "depth from which sides are sloped", f_.protectionFrom, Kind::Length,
               "limits")
          .formula("sum over the length of w h + m h^2 (m 0 where h is less than h_p), Simpson's "
                   "rule between the places where the depth changes",
                   source)
          .step("greatest depth at " + placeText(trench.deepest.x, trench.deepest.y)),
      Decided<Volume>(trench.dug));
  trenchParts(trench);
  egress("trench", kTrenches, trench.run, trench.egress,
         "along the centreline, bends and all, from the farthest place in the deep part to beside "
         "the nearest ladder; at most r");
  footings("trench", kTrenches, trench.run, trench.footings);
  clashes("trench", kTrenches, trench.run, trench.clashes);
}

void DigReport::trenchParts(const TrenchStudy& trench) {
  addEarth(Entry("trench.bedding", kTrenches, "Bedding under the pipe",
                 Decided<Volume>(trench.bedding), Kind::SolidVolume)
               .about(trench.run)
               .has("t", "thickness", f_.trenchBedding, Kind::Length, "limits")
               .formula("area of the section up to t, summed over the length", kPractice),
           Decided<Volume>(trench.bedding));
  addEarth(
      Entry("trench.pipe-zone", kTrenches, "Selected fill round the pipe",
            Decided<Volume>(trench.pipeZone), Kind::SolidVolume)
          .about(trench.run)
          .has("t_p", "over the pipe", f_.pipeZone, Kind::Length, "limits")
          .formula("area of the section from the bed to t_p over the pipe, less the pipe, summed "
                   "over the length",
                   "IPC 306.3, ASTM D2321, from memory"),
      Decided<Volume>(trench.pipeZone));
  addEarth(Entry("trench.backfill", kTrenches, "Backfill over the pipe zone",
                 Decided<Volume>(trench.backfill), Kind::SolidVolume)
               .about(trench.run)
               .has("V_d", "dug", trench.dug, Kind::SolidVolume, "trench.volume")
               .has("V_b", "bedding", trench.bedding, Kind::SolidVolume, "trench.bedding")
               .has("V_z", "pipe zone", trench.pipeZone, Kind::SolidVolume, "trench.pipe-zone")
               .formula("V_d - V_b - V_z - volume of the pipe", kPractice),
           Decided<Volume>(trench.backfill));
}

void DigReport::egress(const std::string& id, const std::string& section, const Id& object,
                       const Egress& egress, const std::string& way) {
  if (!egress.needed) return; // too shallow to ask for a ladder
  add(Entry(id + ".ladders", section, "Ladders or other ways out",
            Decided<int>(egress.laddersNeeded), Kind::Number)
          .about(object)
          .has("r", "farthest way to one", f_.egressTravel, Kind::Length, "limits")
          .has("n", "of the plan, that stand in it", egress.ladders.size(), Kind::Number)
          .formula(
              "longest side of the bottom, or deep part of the trench, / (2 r), rounded up, one "
              "at least; n may be no less",
              kEgress));
  add(Entry(id + ".ladder-way", section, "Farthest way to a ladder",
            given(egress.farthest, "a ladder in the dig"), Kind::Length)
          .about(object)
          .has("r", "at most", f_.egressTravel, Kind::Length, "limits")
          .formula(way, kEgress));
}

void DigReport::footings(const std::string& id, const std::string& section, const Id& object,
                         const std::vector<FootingCheck>& checks) {
  for (const FootingCheck& check : checks) {
    add(Entry(id + ".footing." + check.building, section,
              "Dig below the plane of the footing of " + spokenName(plan_, check.building),
              check.below, Kind::Length)
            .about(object)
            .has("d", "from the building to the toe", check.distance, Kind::Length)
            .has("z_t", "toe of the dig", check.toe, Kind::Length)
            .formula("underside of the footing - d - z_t, and of a sloped side where it would pass "
                     "under the building; above 0 it undermines the footing: support or an "
                     "engineer's decision is needed",
                     "IPC 307.5; 29 CFR 1926.651(i)(2)"));
  }
}

void DigReport::clashes(const std::string& id, const std::string& section, const Id& object,
                        const std::vector<DigClash>& clashes) {
  Entry entry(id + ".clashes", section, "Things that the dig takes in or cuts",
              Decided<double>(static_cast<double>(clashes.size())), Kind::Number);
  entry.about(object).formula(
      "outline at the ground against buildings, boundary, pavements, wells, "
      "utilities and other runs",
      "geometry");
  for (const DigClash& clash : clashes)
    entry.step(clashName(plan_, clash));
  add(entry);
}

void DigReport::protection() {
  Entry entry("dig.deepest", kPits, "Deepest dig", earth_.deepest, Kind::Length);
  entry
      .has("h_p", "depth from which a protective system is needed", f_.protectionFrom, Kind::Length,
           "limits")
      .has("h_e", "depth beyond which an engineer designs it", f_.engineerFrom, Kind::Length,
           "limits")
      .formula("the greatest of all pits and trenches",
               "29 CFR 1926.652; a competent person classifies the soil and inspects daily");
  if (earth_.protectionNeeded) {
    entry.step(*earth_.protectionNeeded ? "a protective system is needed"
                                        : "no protective system by depth alone");
  }
  if (earth_.engineerNeeded && *earth_.engineerNeeded) entry.step("an engineer's design is needed");
  if (earth_.slopeAssumed) entry.step("no system is chosen: drawn with sloped sides");
  add(entry);
  add(Entry("dig.spoil-clear", kPits, "Spoil heap from the nearest edge", earth_.spoilClear,
            Kind::Length)
          .formula("least way in plan from the heap to a top edge; 0 where it overlaps",
                   "29 CFR 1926.651(j)(2); compare the limit 'spoil heap from the edge of a dig'"));
}

void DigReport::totals() {
  addEarth(
      Entry("dig.dug", kPits, "Bank volume of all digs and trenches", earth_.dug, Kind::SolidVolume)
          .formula("sum of the pits and of the trenches, each run in one of its own", kSides),
      earth_.dug);
  addEarth(Entry("dig.backfilled", kPits, "Backfill of all digs and trenches", earth_.backfill,
                 Kind::SolidVolume)
               .formula("sum of the pits and of the trenches over the pipe zone", kPractice),
           earth_.backfill);
  addEarth(loose("dig.spoil", "Spoil of all that is dug, loose", earth_.spoil)
               .formula("V_d x (1 + s)", kPractice),
           earth_.spoil);
  addEarth(loose("dig.surplus", "Spoil hauled off, loose", earth_.surplus)
               .in("V_b", "backfilled", earth_.backfill, Kind::SolidVolume, "dig.backfilled")
               .formula("(V_d - V_b) x (1 + s); each run in a trench of its own, shared trenches "
                        "counted twice",
                        kPractice),
           earth_.surplus);
  add(Entry("dig.truckloads", kPits, "Truckloads", earth_.truckloads, Kind::Number)
          .in("V", "surplus", earth_.surplus, Kind::SolidVolume, "dig.surplus")
          .has("T", "one truck", f_.truck, Kind::SolidVolume, "limits")
          .formula("V / T, rounded up", kPractice));
  heap();
}

void DigReport::heap() {
  addEarth(
      Entry("dig.kept", kPits, "Spoil kept for backfill, loose", earth_.kept, Kind::SolidVolume)
          .in("V_s", "spoil", earth_.spoil, Kind::SolidVolume, "dig.spoil")
          .in("V", "hauled off", earth_.surplus, Kind::SolidVolume, "dig.surplus")
          .formula("V_s - V", kPractice),
      earth_.kept);
  Entry height("dig.kept-height", kPits, "Mean height of the spoil kept for backfill",
               earth_.keptHeight, Kind::Length);
  height.in("V_k", "kept", earth_.kept, Kind::SolidVolume, "dig.kept");
  const Ring& outline = plan_.basis.earth.spoil;
  if (!outline.empty()) height.has("A", "outline of the heap", area(outline), Kind::Area);
  add(height.formula("V_k / A; higher in the middle, as the heap's sides slope", kPractice));
  addEarth(
      Entry("dig.heap-holds", kPits, "Loose earth that the place of the heap holds",
            earth_.heapHolds, Kind::SolidVolume)
          .has("m", "run over rise of its sides", f_.heapSlope, Kind::Number, "limits")
          .has("h", "height at most", f_.heapHighest, Kind::Length, "limits")
          .in("V_k", "kept", earth_.kept, Kind::SolidVolume, "dig.kept")
          .formula("volume under a surface that rises from the outline at 1 in m, h at most; no "
                   "less than V_k",
                   kPractice),
      earth_.heapHolds);
}

std::vector<Calculation> DigReport::take() {
  for (const PitStudy& one : earth_.pits)
    pit(one);
  if (!earth_.pits.empty() || !earth_.trenches.empty()) {
    protection();
    totals();
  }
  for (const TrenchStudy& one : earth_.trenches)
    trench(one);
  return std::move(made_);
}

} // namespace

std::vector<Calculation> digCalculations(const Plan& plan, const EarthStudy& earth) {
  return DigReport(plan, earth).take();
}

} // namespace sump
