// How the numbers of the train came about.

#include "core/study/calculation_entry.h"
#include "core/study/connections.h"
#include "core/study/context.h"
#include "core/study/object_names.h"
#include "core/units/print.h"

#include <algorithm>

namespace sump {

namespace {

/// Gathers calculations of one section.
class Writer {
public:
  Writer(std::string section, std::string source)
      : section_(std::move(section)), source_(std::move(source)) {}

  template <class T>
  Calculation& add(const std::string& id, const Id& object, const std::string& title,
                   const std::string& formula, QuantityKind kind, const Decided<T>& result) {
    list_.push_back(CalculationEntry(id, section_, title, result, kind)
                        .about(object)
                        .formula(formula, source_)
                        .take());
    return list_.back();
  }
  std::vector<Calculation> take() { return std::move(list_); }

  template <class T>
  static void input(Calculation& c, const std::string& symbol, const std::string& name,
                    QuantityKind kind, const Decided<T>& value, const std::string& from) {
    if (value) c.inputs.push_back({symbol, name, plainNumber(*value), kind, from});
  }

private:
  std::string section_, source_;
  std::vector<Calculation> list_;
};

constexpr const char* kManning = "Manning, constant n (Chow, Open-Channel Hydraulics, 1959, from "
                                 "memory)";
constexpr const char* kSettling = "Stokes up to Re 1, CD = 24/Re + 3/sqrt(Re) + 0.34 beyond; oil "
                                  "after API 421, as a guide";

/// What an inlet carries that takes a flush, too; others carry the peak inflow.
void writeCarried(const Study& study, const GravityStudy& g, const std::vector<Id>& flushes,
                  Writer& out) {
  Calculation& carried =
      out.add("gravity.carried", g.run, "Flow carried at the peak, with the flush that joins",
              "Q = Q_in + sum of Q_u", QuantityKind::Flow, g.peak);
  carried.source = "what joins adds up; a flush may run at the peak (common practice, no source)";
  Writer::input(carried, "Q_in", "peak inflow", QuantityKind::Flow, study.train.peakInflow,
                "train.peak-inflow");
  for (const Id& flush : flushes)
    Writer::input(carried, "Q_u", "flow of " + flush, QuantityKind::Flow,
                  study.hydraulics.run(flush)->flow, "plan");
}

void writeCapacity(const GravityStudy& g, Writer& out) {
  const Decided<Length> bore = g.diameter;
  Calculation& full = out.add(
      "gravity.full-flow", g.run, "Flow running just full",
      "Q_full = A (D/4)^(2/3) S^(1/2) / n, A = pi D^2 / 4, n the limit of Manning roughness",
      QuantityKind::Flow, g.fullFlow);
  Writer::input(full, "D", "smallest inside diameter", QuantityKind::Length, bore, "catalogue");
  Writer::input(full, "S", "least fall", QuantityKind::Slope, g.slope, "plan");
  if (g.largestFlow) {
    full.steps.push_back("most, at 0.938 of the diameter: " +
                         fixed(g.largestFlow->value() * 1000, 3) + " L/s; not counted on");
  }
  Calculation& v =
      out.add("gravity.full-velocity", g.run, "Velocity running full",
              "V_full = (D/4)^(2/3) S^(1/2) / n", QuantityKind::Velocity, g.fullVelocity);
  Writer::input(v, "D", "smallest inside diameter", QuantityKind::Length, bore, "catalogue");
  Writer::input(v, "S", "least fall", QuantityKind::Slope, g.slope, "plan");
}

void writeAtPeak(const GravityStudy& g, bool joined, Writer& out) {
  const auto flow = [&](Calculation& c) {
    Writer::input(c, "Q", joined ? "flow carried at the peak" : "peak inflow", QuantityKind::Flow,
                  g.peak, joined ? "gravity.carried" : "train.peak-inflow");
  };
  Calculation& share = out.add("gravity.share", g.run, "Share of the capacity at the peak",
                               "Q / Q_full", QuantityKind::Share, g.share);
  flow(share);
  Writer::input(share, "Q_full", "flow running just full", QuantityKind::Flow, g.fullFlow,
                "gravity.full-flow");
  Calculation& depth =
      out.add("gravity.depth", g.run, "Normal depth at the peak",
              "y at which A R^(2/3) S^(1/2) / n = Q", QuantityKind::Length, g.depth);
  flow(depth);
  Writer::input(depth, "S", "least fall", QuantityKind::Slope, g.slope, "plan");
  Calculation& fast =
      out.add("gravity.velocity", g.run, "Velocity at the peak",
              "V = Q / A at normal depth, or of the full bore", QuantityKind::Velocity, g.velocity);
  flow(fast);
  Writer::input(fast, "y", "normal depth", QuantityKind::Length, g.depth, "gravity.depth");
}

void writeGravity(const Plan& plan, const Study& study, Writer& out) {
  for (const GravityStudy& g : study.train.gravity) {
    const std::vector<Id> flushes = underflowsInto(plan, *plan.runs.find(g.run));
    writeCapacity(g, out);
    if (!flushes.empty()) writeCarried(study, g, flushes, out);
    writeAtPeak(g, !flushes.empty(), out);
  }
}

void writePeak(const TrainStudy& train, Writer& out) {
  out.add("train.peak-inflow", {}, "Peak inflow to the drains",
          "(1 - lost share) x (product + fresh water of the devices at once) + other inflow",
          QuantityKind::Flow, train.peakInflow);
  out.add("train.peak-draw", {}, "Product water drawn at the peak",
          "sum of count x flow of the devices on product water, x share that runs at once",
          QuantityKind::Flow, train.peakDraw);
}

/// Passage by passage, so that the level can be added up by hand.
std::vector<std::string> levelSteps(const TrainLevels& levels, const Id& vault, int chamber,
                                    const Study& study) {
  std::vector<std::string> steps;
  const ChamberLevel* here = levels.chamber(vault, chamber);
  for (const PassageLevels& passage : levels.passages) {
    if (here == nullptr || passage.upstream > here->level) continue;
    const RunStudy* run = study.run(passage.run);
    if (run != nullptr && run->service == Service::Inlet) continue;
    const std::string what = run != nullptr ? passage.run : "opening in baffle " + passage.baffle;
    steps.push_back(what + ": " + fixed(passage.flow.value() * 1000, 3) + " L/s, from " +
                    fixed(inMetres(passage.upstream), 4) + " m to " +
                    fixed(inMetres(passage.downstream), 4) + " m");
  }
  return steps;
}

void writeLevels(const Study& study, Writer& out) {
  const TrainStudy& train = study.train;
  const char* formula = "level downstream + friction (Manning) + sum of K v^2/2g of entry, "
                        "fittings and exit, or critical energy and entry where that stands higher";
  const std::pair<const Decided<TrainLevels>*, std::string> cases[] = {
      {&train.pumpStopped, "pump stopped"}, {&train.pumpRunning, "pump running"}};
  for (const auto& [levels, name] : cases) {
    const std::string id = "train.level." + name.substr(5);
    for (const ChamberDuty& duty : train.chambers) {
      const auto level =
          decide([&](const TrainLevels& l) { return l.chamber(duty.vault, duty.chamber)->level; },
                 *levels);
      const std::string chamber = std::to_string(duty.chamber);
      Calculation& c = out.add(id + "." + chamber, duty.vault,
                               "Water level in chamber " + chamber + " at the peak, " + name,
                               formula, QuantityKind::Length, level);
      Writer::input(c, "Q", "peak inflow", QuantityKind::Flow, train.peakInflow,
                    "train.peak-inflow");
      if (*levels) c.steps = levelSteps(**levels, duty.vault, duty.chamber, study);
    }
    const auto over = decide([](const TrainLevels& l) { return l.overflow; }, *levels);
    Calculation& c =
        out.add("train.overflow." + name.substr(5), {}, "Overflow at the peak, " + name,
                "inflow + from storage - drawn", QuantityKind::Flow, over);
    Writer::input(c, "Q_in", "peak inflow", QuantityKind::Flow, train.peakInflow,
                  "train.peak-inflow");
    const auto drawn = decide([](const TrainLevels& l) { return l.drawn; }, *levels);
    const auto stored = decide([](const TrainLevels& l) { return l.fromStorage; }, *levels);
    Writer::input(c, "Q_draw", "drawn", QuantityKind::Flow, drawn,
                  levels == &train.pumpRunning ? "train.peak-draw" : "pump stopped");
    Writer::input(c, "Q_store", "from storage", QuantityKind::Flow, stored, "study");
  }
}

const BasinLevel* basinLevel(const TrainLevels& levels, const Id& run) {
  const auto found = std::ranges::find(levels.basins, run, &BasinLevel::run);
  return found == levels.basins.end() ? nullptr : &*found;
}

/// How far the water behind each drain stands under its rim and over the crown of its run.
void writeDrains(const Plan& plan, const Study& study, Writer& out) {
  const std::pair<const Decided<TrainLevels>*, std::string> cases[] = {
      {&study.train.pumpStopped, "stopped"}, {&study.train.pumpRunning, "running"}};
  for (std::size_t i = 0; i < study.runs.size(); ++i) {
    const Run& run = plan.runs[i];
    if (run.service != Service::Inlet || run.from.kind != EndKind::Basin) continue;
    const std::string basin = spokenName(plan, run.from.target);
    for (const auto& [levels, name] : cases) {
      const auto of = [&](Length BasinLevel::*what) {
        return decide(
            [&](const TrainLevels& l) -> Decided<Length> {
              const BasinLevel* level = basinLevel(l, run.id);
              if (level == nullptr) return undecided<Length>({"a basin at the start of " + run.id});
              return level->*what;
            },
            *levels);
      };
      const Decided<Length> water = of(&BasinLevel::level);
      Calculation& free = out.add("train.freeboard." + name, run.id,
                                  "Rim of " + basin + " over the water at the peak, pump " + name,
                                  "z_rim - z_w; below 0 water stands on the pavement",
                                  QuantityKind::Length, of(&BasinLevel::freeboard));
      Writer::input(free, "z_w", "water in the basin", QuantityKind::Length, water, "study");
      Writer::input(
          free, "z_rim", "rim", QuantityKind::Length,
          decide([](Length w, Length f) { return w + f; }, water, of(&BasinLevel::freeboard)),
          "plan");
      Calculation& over =
          out.add("train.surcharge." + name, run.id,
                  "Water in " + basin + " over the crown of its run, pump " + name,
                  "z_w - (invert + inside diameter); below 0 the run is part full there",
                  QuantityKind::Length, of(&BasinLevel::surcharge));
      Writer::input(over, "z_w", "water in the basin", QuantityKind::Length, water, "study");
    }
  }
}

void writeStorage(const TrainStudy& train, Writer& out) {
  out.add("train.usable", {}, "Volume from the rest level to the low-level float",
          "sum of chamber area x (rest level - higher of float level and highest sill on the way)",
          QuantityKind::Volume, train.usable);
  const auto time = [&](const char* id, const char* title, const char* formula,
                        const Decided<Duration>& result) -> Calculation& {
    Calculation& c = out.add(id, {}, title, formula, QuantityKind::Time, result);
    Writer::input(c, "V", "usable volume", QuantityKind::Volume, train.usable, "train.usable");
    return c;
  };
  Calculation& fill =
      time("train.fill", "Time to fill to the overflow, pump stopped", "V / Q_in", train.fill);
  Writer::input(fill, "Q_in", "peak inflow", QuantityKind::Flow, train.peakInflow,
                "train.peak-inflow");
  Calculation& down = time("train.draw-down", "Time to the low-level float, nothing coming back",
                           "V / Q_draw", train.drawDown);
  Writer::input(down, "Q_draw", "drawn", QuantityKind::Flow, train.peakDraw, "train.peak-draw");
  const auto beyond =
      decide([](Flow draw, Flow in) { return draw - in; }, train.peakDraw, train.peakInflow);
  Calculation& fall = out.add("train.draw-beyond", {}, "Draw beyond the inflow at the peak",
                              "Q_draw - Q_in; at 0 or below the water level does not fall",
                              QuantityKind::Flow, beyond);
  Writer::input(fall, "Q_draw", "drawn", QuantityKind::Flow, train.peakDraw, "train.peak-draw");
  Writer::input(fall, "Q_in", "peak inflow", QuantityKind::Flow, train.peakInflow,
                "train.peak-inflow");
  if (beyond && !(beyond->value() > 0)) { // then there is no time to give
    fall.steps.push_back("the level does not fall: the low-level float is never reached");
    return;
  }
  Calculation& net = time("train.draw-down-net", "Time to the low-level float at the peak",
                          "V / (Q_draw - Q_in)", train.drawDownNet);
  Writer::input(net, "Q_draw", "drawn", QuantityKind::Flow, train.peakDraw, "train.peak-draw");
  Writer::input(net, "Q_in", "peak inflow", QuantityKind::Flow, train.peakInflow,
                "train.peak-inflow");
}

void writeKept(const ChamberDuty& duty, const std::string& chamber, Writer& out) {
  Calculation& grit =
      out.add("duty.particle." + chamber, duty.vault, "Smallest grit kept, chamber " + chamber,
              "size that settles at the overflow rate / share of the plan area that counts (limit)",
              QuantityKind::SmallLength, duty.particle);
  Writer::input(grit, "v_o", "overflow rate", QuantityKind::Velocity, duty.overflowRate,
                "duty.overflow-rate." + chamber);
  Calculation& oil = out.add(
      "duty.droplet." + chamber, duty.vault, "Smallest oil droplet kept, chamber " + chamber,
      "size that rises at F x overflow rate, F by v_h / v_rise, and v_h at most 15 v_rise "
      "and 3 ft/min",
      QuantityKind::SmallLength, duty.droplet);
  Writer::input(oil, "v_o", "overflow rate", QuantityKind::Velocity, duty.overflowRate,
                "duty.overflow-rate." + chamber);
  Writer::input(oil, "v_h", "forward velocity", QuantityKind::Velocity, duty.forward,
                "duty.forward." + chamber);
}

void writeDuty(const Study& study, Writer& out) {
  for (const ChamberDuty& duty : study.train.chambers) {
    const std::string chamber = std::to_string(duty.chamber);
    const ChamberStudy& box = study.vault(duty.vault)->chambers[std::size_t(duty.chamber - 1)];
    const Decided<Area> area = box.area;
    Calculation& flow =
        out.add("duty.flow." + chamber, duty.vault, "Flow into chamber " + chamber + " at the peak",
                "the larger of pump stopped, Q_in where an inlet is at or above the chamber; and "
                "pump running, with Q_r where the recirculation comes back at or above it, less "
                "Q_draw + Q_r where the suction is above it",
                QuantityKind::Flow, duty.throughflow);
    Writer::input(flow, "Q_in", "peak inflow", QuantityKind::Flow, study.train.peakInflow,
                  "train.peak-inflow");
    Writer::input(flow, "Q_r", "recirculation", QuantityKind::Flow, study.train.recirculation,
                  "plan");
    Writer::input(flow, "Q_draw", "drawn", QuantityKind::Flow, study.train.peakDraw,
                  "train.peak-draw");
    Calculation& volume = out.add("duty.active-volume." + chamber, duty.vault,
                                  "Volume above sludge and below oil, chamber " + chamber, "A x d",
                                  QuantityKind::Volume, duty.activeVolume);
    Writer::input(volume, "A", "plan area", QuantityKind::Area, area, "plan");
    Writer::input(volume, "d", "depth above sludge and below oil", QuantityKind::Length,
                  duty.activeDepth, "plan");
    Calculation& time = out.add("duty.detention." + chamber, duty.vault,
                                "Detention at the peak, chamber " + chamber,
                                "area x active depth / Q", QuantityKind::Time, duty.detention);
    Writer::input(time, "A", "plan area", QuantityKind::Area, area, "plan");
    Writer::input(time, "d", "depth above sludge and below oil", QuantityKind::Length,
                  duty.activeDepth, "plan");
    Writer::input(time, "Q", "flow into the chamber", QuantityKind::Flow, duty.throughflow,
                  "duty.flow." + chamber);
    Calculation& rate =
        out.add("duty.overflow-rate." + chamber, duty.vault, "Overflow rate, chamber " + chamber,
                "Q / A", QuantityKind::Velocity, duty.overflowRate);
    Writer::input(rate, "Q", "flow into the chamber", QuantityKind::Flow, duty.throughflow,
                  "duty.flow." + chamber);
    Writer::input(rate, "A", "plan area", QuantityKind::Area, area, "plan");
    Calculation& along =
        out.add("duty.forward." + chamber, duty.vault, "Forward velocity, chamber " + chamber,
                "Q / (width x active depth)", QuantityKind::Velocity, duty.forward);
    Writer::input(along, "Q", "flow into the chamber", QuantityKind::Flow, duty.throughflow,
                  "duty.flow." + chamber);
    Writer::input(along, "d", "depth above sludge and below oil", QuantityKind::Length,
                  duty.activeDepth, "plan");
    writeKept(duty, chamber, out);
  }
}

void writeSludge(const Study& study, Writer& out) {
  const TrainStudy& train = study.train;
  out.add("duty.sludge", {}, "Sludge settling in a day",
          "share that settles in the vaults (limit) x the larger of the vehicles' sediment, and "
          "suspended solids x "
          "wash water of a day / dry solids in settled sludge (limit)",
          QuantityKind::Volume, train.sludgePerDay);
  const char* formula =
      "area x (share of the depth at which to pump out (limit) x water depth - oil allowance) / "
      "sludge of a day";
  for (const ChamberDuty& duty : train.chambers) {
    const std::string chamber = std::to_string(duty.chamber);
    Calculation& full =
        out.add("duty.sludge-full." + chamber, duty.vault,
                "Days until chamber " + chamber + " is to be pumped out, were all kept there",
                formula, QuantityKind::Time, duty.sludgeFull);
    Writer::input(full, "V_s", "sludge of a day", QuantityKind::Volume, train.sludgePerDay,
                  "duty.sludge");
  }
  for (const auto& [id, title, result] :
       {std::tuple{"duty.pump-out-first", "Pump-out interval if all settles in the first chamber",
                   &train.pumpOutFirst},
        {"duty.pump-out-train", "Pump-out interval if it spreads over all chambers",
         &train.pumpOutTrain}}) {
    Calculation& c = out.add(id, {}, title, formula, QuantityKind::Time, *result);
    Writer::input(c, "V_s", "sludge of a day", QuantityKind::Volume, train.sludgePerDay,
                  "duty.sludge");
  }
  Calculation& turn = out.add("duty.turnover", {}, "Turnover by recirculation",
                              "working volume / recirculation", QuantityKind::Time, train.turnover);
  Writer::input(turn, "V", "working volume", QuantityKind::Volume,
                Decided<Volume>(study.workingVolume), "study");
  Writer::input(turn, "Q_r", "recirculation", QuantityKind::Flow, train.recirculation, "plan");
}

} // namespace

std::vector<Calculation> trainCalculations(const Plan& plan, const Study& study) {
  Writer gravity("Gravity runs", kManning);
  writeGravity(plan, study, gravity);
  Writer levels("Water levels", "Standard-step method (Chow 1959, from memory); K after TP-410");
  writePeak(study.train, levels);
  writeLevels(study, levels);
  writeDrains(plan, study, levels);
  writeStorage(study.train, levels);
  Writer duty("Vault duty", kSettling);
  writeDuty(study, duty);
  writeSludge(study, duty);
  std::vector<Calculation> all = gravity.take();
  for (Writer* part : {&levels, &duty}) {
    for (Calculation& c : part->take())
      all.push_back(std::move(c));
  }
  return all;
}

} // namespace sump
