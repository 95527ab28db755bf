#include "core/sheet/arm_notes.h"

#include "core/sheet/tags.h"
#include "core/study/cutting.h"
#include "core/study/down_legs.h"
#include "core/study/hole_gaps.h"
#include "core/units/print_levels.h"

namespace sump {

namespace {

/// `(asked: 1'-0" to 1'-7")`; says so where the level is worked out from that.
std::string askedText(const SheetJob& job, Service service, const DownLeg& leg,
                      const VaultStudy& vault) {
  const auto asked = dipAsked(job.review.limits, service, *vault.waterLevel - vault.floor);
  if (!asked) return {};
  const std::string range =
      printSize(asked->least, job.units()) + " to " + printSize(asked->most, job.units());
  return leg.stated || !leg.piece ? " (asked: " + range + ")"
                                  : " (worked out, the middle of the " + range + " asked)";
}

std::string underWater(const SheetJob& job, Service service, const DownLeg& leg) {
  const VaultStudy& vault = *job.study().vault(leg.vault);
  if (!vault.waterLevel || *vault.waterLevel <= leg.end) return {};
  return ", " + printHeight(leg.end, *vault.waterLevel, job.units()) + " under the water at rest" +
         askedText(job, service, leg, vault);
}

/// An overflow that takes in what floats carries it off.
std::string lowWaterText(const SheetJob& job, const RunStudy& run, const DownLeg& leg) {
  if (run.service != Service::Overflow || !leg.atStart) return {};
  const int chamber = job.plan().runs.find(run.id)->from.chamber;
  const auto oil = lowestOil(job.plan(), job.study(), leg.vault, chamber);
  if (!oil) return {};
  return " Not over " + printElevation(*oil, job.units()) +
         ", to where the oil reaches down at low water.";
}

} // namespace

std::vector<std::string> downLegNotes(const SheetJob& job, const RunStudy& run) {
  std::vector<std::string> notes;
  for (const DownLeg& leg : run.downLegs) {
    const std::string depth = printElevation(leg.end, job.units()) +
                              underWater(job, run.service, leg) + "." + lowWaterText(job, run, leg);
    if (!leg.piece) {
      notes.push_back("No pipe in the down leg: its own open end reaches to " + depth);
      continue;
    }
    const PipePiece& piece = run.pieces[*leg.piece];
    const std::string mark = pieceMark(run.id, *leg.piece);
    notes.push_back("Down leg: pipe of the same size in the lower socket, " + mark +
                    " of the cutting list, " + printSize(piece.cut, job.units()) +
                    " long; open end at " + depth +
                    " What holds it besides the connector in the wall: ______ (contractor).");
  }
  return notes;
}

std::vector<std::string> upperArmNotes(const SheetJob& job, const RunStudy& run) {
  std::vector<std::string> notes;
  for (const UpperArm& arm : upperArms(job.plan(), job.catalog, job.study())) {
    if (arm.run != run.id) continue;
    const bool under = arm.underLid >= metres(0);
    std::string note = "The upper arm stays open; its top stands " +
                       printSize(under ? arm.underLid : -arm.underLid, job.units()) +
                       (under ? " under" : " over") + " the lid's underside";
    if (arm.inManway)
      note += ", within a manway's opening, its outside " + printSize(arm.toEdge, job.units()) +
              " from the edge";
    notes.push_back(std::move(note) + ".");
  }
  return notes;
}

} // namespace sump
