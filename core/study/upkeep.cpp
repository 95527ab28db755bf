#include "core/study/upkeep.h"

#include "core/plan/keys.h"
#include "core/study/upkeep_parts.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace sump {

namespace {

constexpr double kDay = 86400;              // s
constexpr double kMonth = 30.436875 * kDay; // a twelfth of the mean Gregorian year

/// `foot-valve` as people say it.
std::string spoken(std::string_view key) {
  std::string text(key);
  std::ranges::replace(text, '-', ' ');
  return text;
}

/// The table's words for objects, answered from one plan.
class Objects {
public:
  explicit Objects(const Plan& plan) : plan_(plan) {}

  std::vector<UpkeepObject> of(const std::vector<std::string>& words) {
    found_.clear();
    for (const std::string& word : words) {
      const std::size_t colon = word.find(':');
      const std::string_view kind = std::string_view(word).substr(0, colon);
      const std::string_view name = colon == std::string::npos
                                        ? std::string_view()
                                        : std::string_view(word).substr(colon + 1);
      if (kind == "vaults" || kind == "vault") vaults(name);
      if (kind == "rooms") rooms();
      if (kind == "basins") basins();
      if (kind == "signals") signalCircuits();
      if (kind == "supply") supplies(name);
      if (kind == "run" || kind == "part" || kind == "end") runs(kind, name);
    }
    return std::move(found_);
  }

private:
  void vaults(std::string_view which) {
    for (const Vault& vault : plan_.vaults) {
      const bool first = &vault == &plan_.vaults.front(), last = &vault == &plan_.vaults.back();
      if ((which == "first" && !first) || (which == "last" && !last)) continue;
      found_.push_back({vault.id, {}, vault.name});
    }
  }
  void rooms() {
    for (const EquipmentRoom& room : plan_.rooms)
      found_.push_back({room.id, {}, room.name});
  }
  void basins() {
    for (const Basin& basin : plan_.basins)
      found_.push_back({basin.id, {}, basin.name});
  }
  /// From the wash: not those of the float, which come in a conduit of their own.
  void signalCircuits() {
    for (const SignalCircuit& circuit : plan_.basis.wiring.signalCircuits) {
      if (!isOfFloat(plan_, circuit)) found_.push_back({circuit.id, {}, circuit.name});
    }
  }
  void supplies(std::string_view kind) {
    for (const Supply& supply : plan_.basis.wiring.supplies) {
      if (keyIn(kSupplyKeys, supply.kind) == kind) found_.push_back({supply.id, {}, supply.name});
    }
  }
  void runs(std::string_view kind, std::string_view name) {
    for (const Run& run : plan_.runs) {
      if (kind == "run" && facts(run.service).key == name) found_.push_back({run.id, run.id, {}});
      if (kind == "part") parts(run, name);
      if (kind == "end") {
        for (const RunEnd* end : {&run.from, &run.to}) {
          if (key(end->fitting) == name) found_.push_back({run.id, run.id, spoken(name)});
        }
      }
    }
  }
  void parts(const Run& run, std::string_view name) {
    for (const InlinePart& part : run.parts) {
      if (key(part.kind) == name) found_.push_back({part.id, run.id, spoken(name)});
    }
  }

  const Plan& plan_;
  std::vector<UpkeepObject> found_;
};

class Filler {
public:
  Filler(const Plan& plan, const UpkeepPlan& upkeep) : objects_(plan), upkeep_(upkeep) {}

  UpkeepStep step(const UpkeepRow& row) {
    UpkeepStep step;
    step.key = row.key;
    step.title = filled(row.title, step.needs);
    step.text = filled(row.text, step.needs);
    step.caution = filled(row.caution, step.needs);
    step.objects = objects_.of(row.at);
    step.noneDrawn = !row.at.empty() && step.objects.empty();
    return step;
  }

  std::string filled(const std::string& text, Needs& needs) const {
    std::string result;
    std::size_t at = 0;
    while (true) {
      const std::size_t open = text.find('{', at);
      result += text.substr(at, open - at);
      if (open == std::string::npos) return result;
      const std::size_t close = text.find('}', open);
      const Decided<std::string>& figure =
          upkeep_.figure(std::string_view(text).substr(open + 1, close - open - 1)).text;
      result +=
          figure ? *figure : "________ (cannot be decided: needs " + needsText(figure.needs) + ")";
      if (!figure) addNeeds(needs, figure.needs);
      at = close + 1;
    }
  }

private:
  Objects objects_;
  const UpkeepPlan& upkeep_;
};

/// Would the eductor have well over the pressure wanted, its valve fully open? False while either
/// cannot be decided.
bool eductorOver(const Study& study) {
  constexpr double kWell = 1.25; // common practice, no source
  return std::ranges::any_of(study.hydraulics.runs, [&](const PressureRun& run) {
    return run.service == Service::Recirculation && run.atEnd && run.wanted &&
           run.wanted->value() > 0 && *run.atEnd > kWell * *run.wanted;
  });
}

bool applies(const UpkeepRow& row, const UpkeepStep& step, const Study& study) {
  if (row.when == "drawn") return !step.noneDrawn;
  return row.when != "eductor-over" || eductorOver(study);
}

double secondsOf(const UpkeepInterval& interval) {
  const double one = interval.unit == UpkeepUnit::Month  ? kMonth
                     : interval.unit == UpkeepUnit::Week ? 7 * kDay
                                                         : kDay;
  return interval.count * one;
}

/// Rounded down: to months from a quarter on, to weeks from a week on, else to days, one at least.
UpkeepInterval wholeUnits(Duration time) {
  const auto fit = [&](UpkeepUnit unit) {
    return static_cast<int>(std::min(1000.0, time.value() / secondsOf({1, unit}) + 1e-9));
  };
  if (fit(UpkeepUnit::Month) >= 3) return {fit(UpkeepUnit::Month), UpkeepUnit::Month};
  if (fit(UpkeepUnit::Week) >= 1) return {fit(UpkeepUnit::Week), UpkeepUnit::Week};
  return {std::max(1, fit(UpkeepUnit::Day)), UpkeepUnit::Day};
}

/// `each 3 to 6 months`
std::string rangeText(const UpkeepInterval& from, const UpkeepInterval& to) {
  return "each " + (from.unit == to.unit ? std::to_string(from.count) : words(from)) + " to " +
         words(to);
}

UpkeepTask taskOf(const UpkeepTaskRow& row, const Study& study, Filler& filler,
                  const UpkeepPlan& upkeep) {
  UpkeepTask task{filler.step(row.row), row.every, upkeep.source};
  if (!row.soonest) return task;
  const bool first = row.computed == "pumpOutFirst";
  const Decided<Duration>& time = first ? study.train.pumpOutFirst : study.train.pumpOutTrain;
  const std::string practice = rangeText(*row.soonest, row.every) + " (" + upkeep.source + ")";
  if (!time) {
    task.every = *row.soonest;
    task.basis = "The computed interval cannot be decided: needs " + needsText(time.needs) +
                 ". Until then the sooner of " + practice;
    addNeeds(task.step.needs, time.needs);
    return task;
  }
  const std::string computed = *upkeep.figure(row.computed).text;
  if (time->value() >= secondsOf(row.every)) {
    task.basis = "Computed " + computed + "; no later than " + practice;
  } else {
    task.every = wholeUnits(*time);
    task.basis = "Computed " + computed + ", rounded down; otherwise " + practice;
  }
  return task;
}

} // namespace

const UpkeepFigure& UpkeepPlan::figure(std::string_view wanted) const {
  for (const UpkeepFigure& figure : figures) {
    if (figure.key == wanted) return figure;
  }
  throw std::logic_error("no upkeep figure '" + std::string(wanted) + "'");
}

UpkeepPlan upkeep(const Plan& plan, const Study& study, const UpkeepTable& table) {
  UpkeepPlan result;
  result.source = table.source.citation;
  result.figures = upkeepFigures(plan, study, table);
  Filler filler(plan, result);
  Needs unused;
  for (const std::string& caution : table.cautions)
    result.cautions.push_back(filler.filled(caution, unused));
  for (const UpkeepRow& row : table.startUp) {
    UpkeepStep step = filler.step(row);
    if (applies(row, step, study)) result.startUp.push_back(std::move(step));
  }
  for (const UpkeepTaskRow& row : table.tasks) {
    UpkeepTask task = taskOf(row, study, filler, result);
    if (applies(row.row, task.step, study)) result.tasks.push_back(std::move(task));
  }
  return result;
}

} // namespace sump
