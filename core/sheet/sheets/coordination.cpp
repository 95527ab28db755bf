// G-0: who does what, and who must be there before whom. The order of work is common practice, no
// source; the general contractor's own plan and the adopted codes govern.

#include "core/sheet/flow.h"
#include "core/sheet/schedules.h"
#include "core/study/connections.h"
#include "core/study/relief.h"
#include "core/study/wall_sleeves.h"
#include "core/units/list_words.h"

#include <algorithm>
#include <cstddef>
#include <set>
#include <span>
#include <utility>

namespace sump {

namespace {

using Rows = std::vector<std::vector<std::string>>;

bool has(const SheetJob& job, Service service) {
  for (const Run& run : job.plan().runs) {
    if (run.service == service) return true;
  }
  return false;
}

/// Numbers the steps and looks up what must be done before them by their names.
class Steps {
public:
  void add(const std::string& name, const std::string& work, const std::string& by,
           const std::vector<std::string>& after, const std::string& hold) {
    names_.push_back(name);
    std::set<std::ptrdiff_t> earlier;
    for (const std::string& other : after) {
      const auto found = std::find(names_.begin(), names_.end(), other);
      if (found != names_.end()) earlier.insert(found - names_.begin() + 1); // else no such work
    }
    std::string before;
    for (const std::ptrdiff_t step : earlier)
      before += (before.empty() ? "" : ", ") + std::to_string(step);
    rows_.push_back({std::to_string(names_.size()), by, before.empty() ? "-" : before, hold, work});
  }
  const Rows& rows() const { return rows_; }

private:
  std::vector<std::string> names_;
  Rows rows_;
};

void addGroundWork(const SheetJob& job, Steps& steps) {
  steps.add("locate",
            "Have all utilities located and marked; expose crossings by hand. Stake out "
            "vault corners from the vault placement sheet and runs from the setting-out sheet.",
            "General contractor, surveyor", {}, "Marks seen and photographed");
  if (!wallSleeves(job.plan(), job.study()).empty()) {
    steps.add("sleeves",
              "New walls and slabs: set sleeves as scheduled before pouring. At or under footings: "
              "the structural engineer first.",
              "General contractor", {"locate"}, "Checked against the schedule");
  }
  steps.add("inverts",
            "Survey the outlets of the drains and the invert and flow of the sewer; report what "
            "differs from the schedules before vaults are ordered.",
            "Plumber", {"locate"}, "Inverts agreed in writing");
  steps.add("order",
            "Order vaults, risers and covers with openings, boots and lifting points as "
            "scheduled; agree weights and crane position.",
            "General contractor, vault maker", {"inverts"}, "Shop drawings approved");
}

bool breaksSurfaces(const Plan& plan) {
  return !plan.pavements.empty() || !plan.buildings.empty();
}

void addDigWork(const SheetJob& job, Steps& steps) {
  if (breaksSurfaces(job.plan())) {
    steps.add("saw",
              "Saw cut pavements and floors that are there over digs and trenches, and break them "
              "out.",
              "General contractor", {"locate"}, "Lines in slabs located first");
  }
  steps.add("dig", "Dig, shore or slope, keep spoil and loads off the edge, keep water out.",
            "Excavator", {"locate", "order", "saw"},
            "Engineer's designs in hand; competent person, daily and after rain");
  if (!wallSleeves(job.plan(), job.study()).empty()) {
    steps.add("core",
              "Existing walls and slabs: locate reinforcement, then core; below ground from the "
              "dig. At or under footings: the structural engineer first.",
              "General contractor", {"sleeves", "dig"}, "Checked against the schedule");
  }
  steps.add("bed", "Lay and level the bedding to the scheduled elevation.", "Excavator", {"dig"},
            "Level checked at four corners");
  steps.add("set", "Set the vaults on the bedding, check corners and inverts, seal joints.",
            "Excavator, crane, vault maker", {"bed"}, "Lift plan; elevations recorded");
  if (job.plan().site.groundwater) {
    steps.add("hold",
              "Hold the empty vaults against flotation: keep water down or fill them until "
              "backfilled.",
              "General contractor", {"set"}, "Engineer's direction");
  }
}

using NamedService = std::pair<Service, const char*>;
constexpr NamedService kPressure[] = {{Service::Suction, "suction"},
                                      {Service::SpareSuction, "spare suction"},
                                      {Service::Recirculation, "recirculation"},
                                      {Service::Underflow, "underflow"},
                                      {Service::Product, "product"},
                                      {Service::MakeUp, "make-up"}};
constexpr NamedService kConduits[] = {
    {Service::FloatConduit, "float"}, {Service::Signal, "signal"}, {Service::Power, "power"}};

/// `float, signal and power`: the services of which a run lies in a trench, or of which none does.
std::string listed(const SheetJob& job, std::span<const NamedService> services, bool buried) {
  std::vector<std::string> names;
  for (const auto& [service, name] : services) {
    if (!has(job, service)) continue;
    const bool inTrench =
        std::ranges::any_of(job.study().earth.trenches, [&, of = service](const TrenchStudy& t) {
          return job.plan().runs.find(t.run)->service == of;
        });
    if (inTrench == buried) names.emplace_back(name);
  }
  return listInWords(names);
}

/// Lines that are laid before the vaults' dig is filled and cross or lie in it.
std::string overDig(const SheetJob& job) {
  return job.study().earth.pits.empty()
             ? ""
             : " Over the vaults' open dig hold them up, or lay them on its compacted backfill, "
               "tested before they are covered: ______.";
}

void addPipeWork(const SheetJob& job, Steps& steps) {
  steps.add("gravity",
            std::string("Lay inlet, links, interconnects") +
                (has(job, Service::Vent) ? ", overflow and vents" : " and overflow") +
                " from the low end up; boots at every wall." + overDig(job),
            "Plumber", {"set", "sleeves", "core"}, "Grade and joints seen before cover");
  if (!job.plan().sewers.empty()) {
    steps.add("sewer",
              "Join the overflow onto the sewer by wye, saddle or manhole, as the sewer's owner "
              "asks.",
              "Plumber, or the sewer's owner", {"gravity"}, "Seen by the owner before cover");
  }
  const std::string pressure = listed(job, kPressure, true);
  if (!pressure.empty()) {
    steps.add("pressure",
              "Lay the buried pipe of " + pressure +
                  (has(job, Service::Suction) ? "; suction rises all the way to the pump." : ".") +
                  overDig(job),
              "Plumber", {"set", "sleeves", "core"}, "Pressure and vacuum test");
  }
  const std::string conduits = listed(job, kConduits, true);
  if (!conduits.empty()) {
    steps.add("conduit",
              "Lay the buried conduit of " + conduits +
                  " with pull cords; separate power from signals." + overDig(job),
              "Electrician", {"set", "sleeves", "core"}, "Inspected before cover");
  }
}

void addCoverWork(const SheetJob& job, Steps& steps) {
  steps.add("leaks",
            "Test the vaults' joints, boots and risers for leaks, by vacuum while empty or full of "
            "water; make good before backfill.",
            "Vault maker, plumber", {"gravity", "pressure", "conduit"}, "Test record signed");
  steps.add("inspect", "Inspection of all buried work.", "Authority having jurisdiction",
            {"gravity", "sewer", "pressure", "conduit", "leaks"}, "Signed before backfill");
  steps.add("fill",
            "Backfill in even layers all round; warning ribbon; risers and covers to grade.",
            "Excavator", {"inspect", "hold"}, "Compaction test under traffic");
  if (breaksSurfaces(job.plan())) {
    steps.add("pave",
              "Make pavements and floor slabs good over digs and trenches, as thick and as strong "
              "as they were found, with surface and collars round covers outside them: ______.",
              "General contractor", {"fill"}, "Thickness and reinforcement seen before the pour");
  }
}

void addRoomWork(const SheetJob& job, Steps& steps) {
  steps.add("room",
            "Room, new or existing, ready: floor closed round the risers, drain, door, light and "
            "ventilation; pipe risers inside the marked area.",
            "General contractor", {"pressure", "conduit", "fill", "pave"}, "Room clean and locked");
  steps.add("equipment", "Bring in and anchor the equipment; join the risers with unions.",
            "Equipment supplier, plumber", {"room"}, "Alignment checked");
  const std::string inside = listed(job, kPressure, false), wires = listed(job, kConduits, false);
  if (!inside.empty())
    steps.add("inside", "Run the pipe of " + inside + " above the floor, on its supports.",
              "Plumber", {"room"}, "Pressure test");
  if (!wires.empty())
    steps.add("wires", "Run the conduit of " + wires + " above the floor.", "Electrician", {"room"},
              "Inspected");
}

void addStart(const SheetJob& job, Steps& steps) {
  if (has(job, Service::Recirculation) || has(job, Service::FloatConduit)) {
    steps.add("hang",
              "Hang eductor and float from above, in reach of their manways; see that the foot "
              "valves hang free of the floor.",
              "Plumber, electrician", {"equipment"}, "Nobody enters without a permit");
  }
  if (has(job, Service::MakeUp)) {
    steps.add("make-up",
              std::string("Flush and disinfect the make-up's pipe; join it through its ") +
                  (hasAirGap(job.plan()) ? "air gap." : "tested backflow assembly."),
              "Plumber", {"pressure", "equipment", "inside"},
              "Assembly tested by a certified tester");
  }
  if (!job.plan().washes.empty()) {
    steps.add(
        "wash",
        "Wash equipment stands and is anchored: join product water and wash signal to it; its "
        "own fresh water cut and capped, or kept apart by a tested backflow assembly: "
        "______.",
        "Wash equipment supplier, plumber, electrician",
        {"pressure", "conduit", "pave", "inside", "wires"},
        "No cross-connection: seen by the authority");
  }
  steps.add("power",
            "Power, controls, float and wash signal; disconnect in sight; rotation "
            "checked.",
            "Electrician", {"equipment", "hang", "conduit", "wires"}, "Locked out until tested");
  steps.add("water", "Fill the vaults with clean water to rest level; check for leaks.", "Plumber",
            {"fill", "hang", "make-up"}, "Level holds a day");
  steps.add("start", "Prime the suction, start, set levels and flows, instruct the owner.",
            "Equipment supplier with plumber and electrician",
            {"pressure", "inside", "make-up", "wash", "power", "water"}, "Start-up record signed");
}

bool hasPanel(const Plan& plan) {
  for (const EquipmentRoom& room : plan.rooms)
    if (room.panel) return true;
  return false;
}

/// Who buys, who sets, who connects. Common practice, no source; the contracts decide.
Block supplierTable(const SheetJob& job, double width) {
  Rows rows = {{"Vaults, risers, covers, boots in the walls",
                "General contractor, from the vault maker", "Crane crew with the excavator",
                "Plumber seals the pipes in the boots, the electrician the conduits"},
               {"Catch basins and trench drains, where they do not stand yet", "General contractor",
                "Excavator", "Plumber"},
               {"Bedding, backfill, warning ribbon over lines", "Excavator", "Excavator", "-"},
               {"Pipe, buried and above ground, fittings, valves, cleanouts, supports; purple tape "
                "on it",
                "Plumber", "Plumber", "Plumber"},
               {"Equipment skid with pump and controls", "Equipment supplier",
                "Equipment supplier; anchors by the general contractor",
                "Plumber to the unions, electrician to the panel"}};
  if (hasPanel(job.plan())) {
    rows.push_back({"Panel with breakers and the pump's motor starter",
                    "______ (equipment supplier or electrician, as the contracts say)",
                    "Electrician", "Electrician"});
  }
  if (has(job, Service::Recirculation)) {
    rows.push_back({"Air-drawing eductor (sparger) with its bracket", "Equipment supplier",
                    "Plumber", "Plumber, at the union in reach of the manway"});
  }
  if (has(job, Service::MakeUp)) {
    rows.push_back({"Backflow protection of the make-up", "Plumber", "Plumber",
                    "Plumber; tested by a certified tester"});
  }
  if (!roomAssemblies(job.plan(), job.study()).empty()) {
    rows.push_back({"Relief of the backflow assembly: air gap over the floor drain", "Plumber",
                    "Plumber; the drain by the general contractor", "-"});
  }
  if (has(job, Service::Product)) {
    rows.push_back({"Product water's connection at the wash equipment, with union and shut-off",
                    "Wash equipment supplier", "Plumber", "Plumber"});
  }
  if (!job.plan().washes.empty()) {
    rows.push_back({"Slab or footing under wash equipment and lance stations, with anchors, where "
                    "none stands: size and anchors by ______ (wash equipment supplier)",
                    "General contractor", "General contractor", "-"});
  }
  if (!connections(job.plan(), job.study()).empty()) {
    rows.push_back({"Joints onto the lines that are there, each as its owner asks",
                    "Plumber; electrician for power", "The same, or the line's owner",
                    "The same, or the line's owner"});
  }
  rows.push_back({"Conduits, pull boxes, conductors, disconnects", "Electrician", "Electrician",
                  "Electrician"});
  if (has(job, Service::FloatConduit)) {
    rows.push_back({"Low-level float with its cable and its weight or bracket",
                    "Equipment supplier", "Electrician", "Electrician, at the panel"});
  }
  if (has(job, Service::Signal)) {
    rows.push_back({"Wash-demand signal, dry contact or volts", "Wash equipment supplier",
                    "Electrician", "Electrician, at both panels"});
  }
  if (!wallSleeves(job.plan(), job.study()).empty()) {
    rows.push_back({"Sleeves in new walls and slabs; cored holes in existing ones",
                    "General contractor", "General contractor",
                    "Plumber and electrician seal round their lines"});
  }
  rows.push_back({"Room, new or existing: slab, drain, light, ventilation, door; what is missing",
                  "General contractor", "General contractor", "-"});
  return table("WHO SUPPLIES, SETS AND CONNECTS (common practice; the contracts govern)",
               {{"What"}, {"Supplied by"}, {"Set by"}, {"Connected by"}}, rows, width);
}

/// What no plan decides, with room to write it.
Block toAgree(const SheetJob& job, double width) {
  std::vector<std::string> texts = {
      "Tests of pipe and of vaults, each: pressure or vacuum, medium, time and loss allowed "
      "______, as the local code and the authority ask."};
  if (job.plan().site.frostDepth)
    texts.emplace_back("Pipe above ground or over the frost depth that holds water is drained or "
                       "heated against frost: ______.");
  if (!job.plan().sewers.empty())
    texts.emplace_back("What keeps the sewer's air out of the vaults, a trap or another seal, as "
                       "the authority asks: ______.");
  if (has(job, Service::MakeUp))
    texts.emplace_back("Make-up's pipe and fittings, listed for drinking water up to its backflow "
                       "protection: flushed, disinfected and proved as ______ asks.");
  texts.emplace_back("Pipe and conduit in the open, outdoors or where vehicles pass inside: "
                     "against sun ______, against vehicles "
                     "______.");
  if (has(job, Service::Vent))
    texts.emplace_back(
        "Doors, windows and air intakes near the vents' open ends, and what the local "
        "code asks there: ______.");
  if (breaksSurfaces(job.plan()))
    texts.emplace_back("Pavements, floors and the wash are out of use from ______ to ______; ways "
                       "kept open over digs and trenches: ______ (owner).");
  return paragraphs("TO BE AGREED BEFORE WORK BEGINS", texts, width, true);
}

} // namespace

void coordinationSheet(const SheetJob& job, PageFlow& flow) {
  const double wide = std::min(flow.fullWidth(), 2 * flow.columnWidth() + kSheetGap);
  Steps steps;
  addGroundWork(job, steps);
  addDigWork(job, steps);
  addPipeWork(job, steps);
  addCoverWork(job, steps);
  addRoomWork(job, steps);
  addStart(job, steps);
  flow.add(table("COORDINATION: WHO DOES WHAT, AND AFTER WHOM",
                 {{"Step", Align::Centre}, {"By"}, {"After steps"}, {"Hold point"}, {"Work"}},
                 steps.rows(), wide));
  flow.add(supplierTable(job, wide));
  flow.add(toAgree(job, flow.columnWidth()));
  flow.add(cautions(job.plan(), flow.columnWidth()));
  flow.add(generalNotes(job.review, flow.columnWidth()));
}

} // namespace sump
