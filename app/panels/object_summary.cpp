#include "app/panels/object_summary.h"

#include "app/core_text.h"

#include "app/plain_text.h"
#include "core/study/calculation_print.h"
#include "core/units/print.h"

#include <QCoreApplication>

namespace sump {

namespace {

using Kind = QuantityKind;

constexpr int kSummaryFigures = 3;

QString summaryText(const char* source) {
  return QCoreApplication::translate("ObjectSummary", source);
}

double number(double v) {
  return v;
}
template <class Unit> double number(const bu::quantity<Unit>& v) {
  return v.value();
}

/// Gathers figures in the plan's units.
class Figures {
public:
  explicit Figures(UnitSystem units) : units_(units) {}
  void add(const char* name, QString value) {
    made_.push_back({summaryText(name), std::move(value), {}});
  }
  template <class T> void add(const char* name, const Decided<T>& value, Kind kind) {
    if (value) {
      add(name, coreFilled(printQuantity(number(*value), kind, units_, kSummaryFigures)));
    } else {
      made_.push_back({summaryText(name), {}, q(needsText(value.needs))});
    }
  }
  void level(const char* name, const std::optional<Length>& value, const char* need) {
    if (value) {
      add(name, q(printElevation(*value, units_)));
    } else {
      made_.push_back({summaryText(name), {}, need});
    }
  }
  std::vector<SummaryFigure> take() { return std::move(made_); }

private:
  UnitSystem units_;
  std::vector<SummaryFigure> made_;
};

void addFall(const RunStudy& run, UnitSystem units, Figures& figures) {
  const Drive drive = facts(run.service).drive;
  if (!run.resolved || drive == Drive::Conduit || inMetres(run.plan) <= 0) return;
  const QString slope = q(printSlope(std::abs(run.slope), units));
  if (drive == Drive::Suction) {
    figures.add(run.slope <= 0 ? "Rise" : "Falls toward the pump by", slope);
  } else {
    figures.add(run.slope >= 0 ? "Fall" : "Rise", slope);
  }
}

void addGravity(const GravityStudy& g, Figures& figures) {
  figures.add("Least fall", g.slope, Kind::Slope);
  figures.add("Velocity at the peak", g.velocity, Kind::Velocity);
  figures.add("Share of capacity", g.share, Kind::Share);
  figures.add("Depth at the peak", g.depth, Kind::Length);
}

void addSuction(const SuctionStudy& s, Figures& figures) {
  const auto margin = decide([](Length has, Length wants) -> Length { return has - wants; },
                             s.npshAvailable, s.npshRequired);
  figures.add("NPSH available", s.npshAvailable, Kind::HeadOfWater);
  figures.add("NPSH margin", margin, Kind::HeadOfWater);
  figures.add("Total lift", s.suctionLift, Kind::Length);
  figures.add("Lift limit", s.liftLimit, Kind::Length);
}

void addPressure(const PressureRun& run, Figures& figures) {
  figures.add("Flow", run.flow, Kind::Flow);
  figures.add("Velocity", decide([](const RunLoss& l) { return l.fastest; }, run.loss),
              Kind::Velocity);
  figures.add("Head lost", decide([](const RunLoss& l) { return l.total; }, run.loss),
              Kind::HeadOfWater);
  if (facts(run.service).drive != Drive::Suction)
    figures.add("Pressure at the end", run.atEnd, Kind::Pressure);
}

/// Water in an interconnect or a link: the flow at the peak and the levels on both sides.
void addPassage(const TrainStudy& train, const Id& id, Figures& figures) {
  if (train.gravityOf(id) != nullptr || !train.pumpStopped) return;
  for (const PassageLevels& passage : train.pumpStopped->passages) {
    if (passage.run != id) continue;
    figures.add("Flow at the peak", Decided<Flow>(passage.flow), Kind::Flow);
    figures.level("Water before it", passage.upstream, "");
    figures.level("after it", passage.downstream, "");
  }
}

void addConduit(const ConduitStudy& conduit, Figures& figures) {
  figures.add("Fill", conduit.fill, Kind::Share);
  figures.add("Most fill", Decided<double>(conduit.fillLimit), Kind::Share);
  figures.add("Bends between pulls", q(fixed(conduit.mostDegrees, 0)) + QChar(0xB0));
}

ObjectSummary ofRun(const Review& review, const RunStudy& run) {
  const UnitSystem units = review.plan.project.units;
  const Study& study = review.study;
  const Run* given = review.plan.runs.find(run.id);
  ObjectSummary summary;
  summary.title = q(run.id) + ", " + coreText(facts(run.service).name).toLower();
  if (given != nullptr && !given->size.empty()) summary.title += ", " + q(given->size) + "\"";
  Figures figures(units);
  if (run.resolved) figures.add("Length", q(printRunLength(run.developed, units)));
  if (const GravityStudy* g = study.train.gravityOf(run.id)) {
    addGravity(*g, figures);
  } else {
    addFall(run, units, figures);
  }
  if (const PressureRun* p = study.hydraulics.run(run.id)) addPressure(*p, figures);
  if (const SuctionStudy* s = study.hydraulics.suction(run.id)) addSuction(*s, figures);
  addPassage(study.train, run.id, figures);
  for (const ConduitStudy& conduit : study.wiring.conduits) {
    if (conduit.run == run.id) addConduit(conduit, figures);
  }
  summary.figures = figures.take();
  return summary;
}

ObjectSummary ofVault(const Review& review, const VaultStudy& vault) {
  const UnitSystem units = review.plan.project.units;
  const Vault* given = review.plan.vaults.find(vault.id);
  const char* wayOut = "the overflow and the links, drawn";
  ObjectSummary summary;
  summary.title = given == nullptr || given->name.empty() ? q(vault.id) : q(given->name);
  Figures figures(units);
  figures.level("Water at rest", vault.waterLevel, wayOut);
  const Decided<Length> highest = review.study.train.highest(vault.id);
  if (highest) {
    figures.level("at the peak", *highest, "");
  } else {
    figures.add("at the peak", highest, Kind::Length);
  }
  figures.add("Working volume", vault.waterLevel ? q(printVolume(vault.workingVolume, units))
                                                 : summaryText("not known"));
  for (const BuoyancyStudy& b : review.study.earth.buoyancy) {
    if (b.vault != vault.id) continue;
    if (b.uplift && *b.uplift <= newtons(0)) {
      figures.add("Flotation", summaryText("above groundwater"));
    } else {
      figures.add("Flotation factor, empty", b.factor, Kind::Number);
    }
  }
  summary.figures = figures.take();
  return summary;
}

ObjectSummary ofPlan(const Review& review) {
  Figures figures(review.plan.project.units);
  const Study& study = review.study;
  figures.add("Working storage", q(printVolume(study.workingVolume, review.plan.project.units)));
  figures.add("Peak inflow", study.train.peakInflow, Kind::Flow);
  figures.add("Pump", study.hydraulics.pumpFlow, Kind::Flow);
  figures.add("at", study.hydraulics.pumpHead, Kind::HeadOfWater);
  figures.add("Time to the low-level float", study.train.drawDown, Kind::Time);
  return {summaryText("The whole plan"), figures.take()};
}

} // namespace

ObjectSummary objectSummary(const Review& review, const Id& object) {
  if (object.empty()) return ofPlan(review);
  if (const RunStudy* run = review.study.run(object)) return ofRun(review, *run);
  if (const VaultStudy* vault = review.study.vault(object)) return ofVault(review, *vault);
  return {q(object), {}};
}

} // namespace sump
