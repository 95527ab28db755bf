#include "core/study/bill.h"

#include "core/study/bill_parts.h"
#include "core/study/connections.h"
#include "core/study/line_ends.h"
#include "core/study/object_names.h"
#include "core/study/takeoff_entries.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace sump {

BillLine billLine(std::string_view trade, std::string category, std::string key,
                  std::string description, std::string size, BillUnit unit) {
  BillLine line;
  line.trade = trade;
  line.category = std::move(category);
  line.key = std::move(key);
  line.description = std::move(description);
  line.size = std::move(size);
  line.unit = unit;
  line.net = 0.0;
  return line;
}

BillLine& BillMaker::line(const BillLine& like) {
  const auto same = std::ranges::find_if(bill_.lines, [&](const BillLine& known) {
    return known.key == like.key && known.size == like.size && known.trade == like.trade &&
           known.material == like.material && known.description == like.description;
  });
  if (same != bill_.lines.end()) return *same;
  bill_.lines.push_back(like);
  return bill_.lines.back();
}

void BillMaker::add(BillLine& line, const Id& from, double amount) {
  if (line.net) line.net = *line.net + amount;
  const auto known = std::ranges::find(line.shares, from, &BillShare::from);
  if (known != line.shares.end()) {
    known->amount += amount;
  } else {
    line.shares.push_back({from, amount});
  }
}

namespace {

/// Pieces with the allowance rounded to whole ones, so that it does not double a single piece;
/// whole cans of what is poured.
double orderOf(const BillLine& line, double net, Volume smallest) {
  constexpr double kHair = 1e-9;
  const double wanted = net * (1 + line.waste);
  if (line.unit == BillUnit::Each) return std::ceil(net - kHair) + std::round(net * line.waste);
  if (line.unit != BillUnit::Liquid) return wanted;
  const double can = smallest.value();
  return std::ceil(wanted / can - kHair) * can;
}

void orderLine(BillLine& line, const BillContext& context) {
  if (line.category == "pipe") return; // by the cutting list
  line.waste = context.supplies.wasteOf(line.category);
  const Volume can = context.supplies.canOf(context.plan.project.units);
  line.order = decide([&](double net) { return orderOf(line, net, can); }, line.net);
}

void noteUncounted(BillMaker& maker) {
  const BillContext& context = maker.context();
  for (const RunStudy& run : context.study.runs) {
    const Run& given = *context.plan.runs.find(run.id);
    if (context.catalog.pipe(given.pipe) == nullptr) {
      maker.note(run.id + " is not counted: its pipe is not in the catalogue.");
    } else if (!run.resolved) {
      maker.note(run.id + " is not counted: its levels or ends are not known.");
    }
  }
}

/// Bends of joined pressure pipe need no blocks where the joints hold by themselves (ASTM
/// D2855/D2774 practice, from memory).
void noteThrust(BillMaker& maker) {
  const BillContext& context = maker.context();
  std::string gasketed;
  for (const Run& run : context.plan.runs) {
    const PipeProduct* pipe = context.catalog.pipe(run.pipe);
    const bool pressure = facts(run.service).drive == Drive::Pressure;
    if (pressure && pipe != nullptr && pipe->joining == Joining::Gasket)
      gasketed += (gasketed.empty() ? "" : ", ") + run.id;
  }
  maker.note(gasketed.empty()
                 ? "Thrust blocks: none. Every pressure line is joined by solvent weld or thread, "
                   "which holds by itself (ASTM D2855, D2774 practice, from memory)."
                 : "Thrust blocks are not counted: " + gasketed +
                       " carries pressure in gasketed pipe, whose bends need restraint designed "
                       "for the soil.");
}

bool hasDropLeg(const Run& run) {
  if (run.service != Service::Inlet && run.service != Service::Overflow) return false;
  return std::ranges::any_of(std::array{&run.from, &run.to}, [](const RunEnd* end) {
    return end->kind == EndKind::Chamber &&
           (end->fitting == EndFitting::Tee || end->fitting == EndFitting::ElbowDown);
  });
}

/// Where neither the plan nor the water at rest tells how deep it reaches.
void noteDropLegs(BillMaker& maker) {
  std::string runs;
  for (const Run& run : maker.context().plan.runs)
    if (hasDropLeg(run) && maker.context().study.run(run.id)->downLegs.empty())
      runs += (runs.empty() ? "" : ", ") + run.id;
  if (runs.empty()) return;
  maker.note("Not counted: the down legs in the lower arms of " + runs +
             ", of which neither the end nor the water at rest is known.");
}

/// The plan tells where a line is joined to one that is there already, not what that one is made
/// of. A stub that is left for it takes a fitting of its own, too.
void addConnections(BillMaker& maker) {
  const BillContext& context = maker.context();
  for (const Connection& made : connections(context.plan, context.study)) {
    const RunStudy& run = *context.study.run(made.run);
    const std::string size = sizeThere(*context.plan.runs.find(made.run), made, context.study);
    BillLine like = billLine(facts(run.service).trade, "joining", "joining",
                             std::string(joinedBy(context.study, made)), size);
    like.note = "chosen when what is there is found or uncovered, as its owner asks";
    BillMaker::add(maker.line(like), made.run, 1);
  }
}

/// What has to come with a thing, so that it can be set where it stands.
std::string comesWith(std::string_view key) {
  constexpr std::string_view kSleeveSeal =
      "gap filled and sealed watertight as the local code asks, seal or sealant by ______";
  constexpr std::string_view kSweepEnds = "with a bell on each end; a plain end takes a coupling";
  static constexpr std::pair<std::string_view, std::string_view> kNotes[] = {
      {"backwater-valve", "where it is buried, its access box is a line of its own"},
      {"access-box", "sizes by the valve's maker"},
      {"access-box-traffic", "sizes by the valve's maker"},
      {"conduit-bends:elbow-90", kSweepEnds},
      {"conduit-bends:elbow-45", kSweepEnds},
      {"conduit-bends:elbow-22", kSweepEnds},
      {"terminal-adapter", "where conduit ends at a panel or box"},
      {"end-bell", "where conduit ends in a vault"},
      {"float-switch", "comes with the equipment, with its weight or bracket and cable to reach "
                       "the panel; the electrician "
                       "sets it: not bought here"},
      {"cleanout", "with its wye or tee, riser pipe, plug and cover; pipe and rating of the cover "
                   "as scheduled for "
                   "each"},
      {"wall-sleeve", kSleeveSeal},
      {"slab-sleeve", kSleeveSeal},
      {"pull-box", "with its cover, and an adapter or a bell for each conduit"},
      {"conduit-seal", "round the wires, in its end at the panel: keeps the vault's damp air out"},
      {"riser", "rim less top of lid: the height of frame and cover comes off"},
      {"reduced-pressure-assembly",
       "with adapters where its ends are threaded, and with the air gap fitting of its relief port "
       "and the pipe from it to the floor drain"},
      {"double-check", "with adapters where its ends are threaded"},
      {"solenoid-valve", "with adapters where its ends are threaded"},
      {"foot-valve", "with an adapter where its end is threaded"},
      {"eductor", "comes with the equipment, with its bracket and the adapter to the pipe; the "
                  "plumber sets it: not bought here"}};
  const auto* found = std::ranges::find(kNotes, key, [](const auto& note) { return note.first; });
  return found == std::end(kNotes) ? std::string() : std::string(found->second);
}

} // namespace

namespace {

std::string_view comesWithPipe(const PipeProduct& pipe) {
  if (!pipe.belledEnd) return {};
  return pipe.joining == Joining::Gasket
             ? "each stick comes with one bell and its gasket: no couplings between sticks; with "
               "gasket lubricant"
             : "each stick comes with one bell: no couplings between sticks";
}

} // namespace

/// One line for each pipe and size, whatever it carries: its sticks are packed together.
void addPipeAndParts(BillMaker& maker) {
  const BillContext& context = maker.context();
  for (const TakeOffEntry& entry : takeOffEntries(context.plan, context.catalog, context.study)) {
    const QuantityLine& from = entry.line;
    const bool pipe = from.category == "pipe";
    const bool length = pipe || from.category == "riser";
    BillLine like = billLine(from.trade, from.category, entry.key, from.description, from.size,
                             length ? BillUnit::Length : BillUnit::Each);
    like.material = from.material;
    like.note = comesWith(entry.key);
    if (from.category == "vault") like.note = "with lifting points and the sealant of its joints";
    if (pipe) like.note = comesWithPipe(*context.catalog.pipe(entry.key));
    like.bought = !isBySupplier(entry.key);
    BillLine& line = maker.line(like);
    BillMaker::add(line, from.runs.front(), from.quantity);
    if (!pipe) continue;
    const CuttingGroup* group = context.cutting.group(entry.key, from.size);
    if (group == nullptr) continue;
    line.sticks = static_cast<int>(group->sticks.size());
    line.order = line.sticks * inMetres(group->stick);
  }
  for (const Vault& vault : context.plan.vaults) {
    BillLine& lid = maker.line(
        billLine("site work", "lid", vault.trafficLid ? "lid-traffic" : "lid",
                 vault.trafficLid ? "Precast lid, traffic rated" : "Precast lid, not for traffic"));
    lid.note = "comes with the vault";
    lid.bought = false;
    BillMaker::add(lid, vault.id, 1);
  }
}

Bill BillMaker::finish() {
  for (BillLine& line : bill_.lines)
    orderLine(line, context_);
  std::ranges::stable_sort(bill_.lines, {}, [](const BillLine& line) {
    return lineRank(line.trade, line.category, "", line.material, line.description, line.size);
  });
  return std::move(bill_);
}

bool sizeHasUnit(const BillLine& line) {
  return line.category == "vault" || line.category == "wire" ||
         line.size.find(" mm") != std::string::npos;
}

Bill billOf(const Plan& plan, const Study& study, const Catalog& catalog, const Supplies& supplies,
            const CuttingList& cutting) {
  const BillContext context{plan, study, catalog, supplies, cutting};
  BillMaker maker(context);
  addPipeAndParts(maker);
  addJoints(maker);
  addConnections(maker);
  addElectrical(maker);
  addSupports(maker);
  addMarking(maker);
  addEarthwork(maker);
  noteThrust(maker);
  noteDropLegs(maker);
  noteUncounted(maker);
  maker.note("Allowances for waste: " + supplies.wasteSource.citation + ".");
  maker.note("Joints, cement and primer: " + supplies.solventSource.citation + ".");
  maker.note("Supports: " + supplies.supportSource.citation + "; " +
             supplies.codeSupportSource.citation + "; " + supplies.conduitSupportSource.citation +
             ". The adopted local code governs.");
  maker.note("Marking: " + supplies.markingSource.citation + ".");
  return maker.finish();
}

} // namespace sump
