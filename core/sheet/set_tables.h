#pragma once
// Tables that only the sheet set has, and how a result that may be undecided is told. Private to
// core/sheet.

#include "core/sheet/block.h"
#include "core/sheet/sheet_set.h"
#include "core/study/decided.h"

#include <string>

namespace sump {

/// The value in words, or what it needs: an undecided figure is never left out in silence.
template <class T, class Print> std::string decidedText(const Decided<T>& result, Print print) {
  return result ? print(*result) : "needs " + needsText(result.needs);
}

Block revisionTable(const SheetJob& job, double width);
Block acceptedTable(const SheetJob& job, double width);
/// Every pipe through a wall, a baffle or a riser.
Block openingTable(const SheetJob& job, double width);
/// What passes through walls of buildings and under them; empty when nothing does.
Block sleeveTable(const SheetJob& job, double width);
/// What rises through floors, and floor drains; empty when nothing does.
Block slabTable(const SheetJob& job, double width);
/// Outside sizes, elevations and weights of the vaults.
Block settingTable(const SheetJob& job, double width);
Block weightTable(const SheetJob& job, double width);
Block pitTable(const SheetJob& job, double width);
Block trenchTable(const SheetJob& job, double width);
Block earthTable(const SheetJob& job, double width);
Block fittingTable(const SheetJob& job, double width);
/// Valves and other parts set in the runs and at their ends, with where they are.
Block partTable(const SheetJob& job, double width);
/// Cleanouts and backwater valves in the ground with the risers up to their covers.
Block accessTable(const SheetJob& job, double width);
/// Where runs (conduits or pipes) join lines, sewers and stubs that are there already.
Block connectionNotes(const SheetJob& job, bool conduits, double width);
/// Open ends of vents, with the roofs beside them; empty when there are none.
Block ventTable(const SheetJob& job, double width);
Block levelTable(const SheetJob& job, double width);
Block conduitTable(const SheetJob& job, double width);
Block supplyTable(const SheetJob& job, double width);
Block signalTable(const SheetJob& job, double width);

} // namespace sump
