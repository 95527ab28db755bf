// What the electrician pulls and sets: conductors, pull cords, disconnects.

#include "core/study/bill_parts.h"
#include "core/study/wire_gauge.h"
#include "core/units/print.h"

#include <algorithm>

namespace sump {

namespace {

/// Of each conductor over the conduit, at each end, to be joined in a panel; common practice, no
/// source.
const Length kTail = feet(5);

BillLine pulled(const char* key, const char* description, std::string size, UnitSystem units) {
  BillLine line =
      billLine("electrical", "wire", key, description, std::move(size), BillUnit::Length);
  line.note = "each as long as its conduit with " +
              (units == UnitSystem::Metric ? fixed(inMetres(kTail), 1) + " m"
                                           : fixed(inFeet(kTail), 0) + " ft") +
              " more at each end (common practice, no source)";
  return line;
}

void addPulled(BillMaker& maker, const Run& run, const RunStudy& study) {
  const UnitSystem units = maker.context().plan.project.units;
  const double each = inMetres(study.developed + 2.0 * kTail);
  for (const Conductor& conductor : run.conductors) {
    if (run.service == Service::FloatConduit) break; // the float comes with its cable
    BillLine like = pulled("conductor", "Conductor, kind and insulation by the electrician",
                           gaugeText(conductor.size), units);
    BillMaker::add(maker.line(like), run.id, conductor.count * each);
  }
  BillMaker::add(maker.line(pulled("pull-cord", "Pull cord, left in the conduit", "", units)),
                 run.id, each);
}

/// One for each supply that has a disconnect in the plan, counted for its line; one whose line is
/// not drawn yet is counted for the supply itself.
void addDisconnects(BillMaker& maker) {
  const Plan& plan = maker.context().plan;
  for (const Supply& supply : plan.basis.wiring.supplies) {
    if (!supply.disconnect) continue;
    const bool drawn = plan.runs.find(supply.run) != nullptr;
    BillLine like = billLine("electrical", "device", "disconnect",
                             "Disconnect that locks open, " + std::to_string(supply.volts) + " V");
    like.note = "ratings and enclosure by the electrician";
    BillMaker::add(maker.line(like), drawn ? supply.run : supply.id, 1);
  }
}

} // namespace

void addElectrical(BillMaker& maker) {
  const BillContext& context = maker.context();
  for (std::size_t i = 0; i < context.study.runs.size(); ++i) {
    const Run& run = context.plan.runs[i];
    if (isConduit(run.service) && context.study.runs[i].resolved &&
        context.catalog.pipe(run.pipe) != nullptr)
      addPulled(maker, run, context.study.runs[i]);
  }
  addDisconnects(maker);
}

} // namespace sump
