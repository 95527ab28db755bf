#include "core/exchange/cutting_lists.h"

#include "core/units/print.h"

namespace sump {

namespace {

std::string cutUnit(UnitSystem units) {
  return units == UnitSystem::Metric ? "mm" : "in";
}

/// Inches to the 1/16 in that the cuts are whole numbers of, or whole millimetres.
ListCell cutCell(Length length, UnitSystem units) {
  return units == UnitSystem::Metric ? listNumber(inMillimetres(length), 0)
                                     : listNumber(inInches(length), 4);
}

} // namespace

std::string printCut(Length length, UnitSystem units) {
  if (units == UnitSystem::Metric) return fixed(inMillimetres(length), 0) + " mm";
  return inchesOnly(length);
}

ListTable sticksTable(const Review& review, const CuttingList& cutting) {
  const UnitSystem units = review.plan.project.units;
  const std::string unit = " (" + cutUnit(units) + ")";
  ListTable table{"Cutting list",
                  {"Pipe", "Size", "Stick", "Cut", "Mark", "Run", "Piece", "Length" + unit,
                   "Left of the stick" + unit},
                  {}};
  for (const CuttingGroup& group : cutting.groups) {
    for (std::size_t s = 0; s < group.sticks.size(); ++s) {
      const CutStick& stick = group.sticks[s];
      for (std::size_t c = 0; c < stick.cuts.size(); ++c) {
        const StickCut& cut = group.cuts[stick.cuts[c]];
        const bool last = c + 1 == stick.cuts.size();
        table.rows.push_back(
            {listText(group.name), listText(group.size + " in"),
             listNumber(static_cast<double>(s) + 1, 0), listNumber(static_cast<double>(c) + 1, 0),
             listText(cutMark(cut)), listText(cut.run), listNumber(cut.piece, 0),
             cutCell(cut.length, units), last ? cutCell(stick.offcut, units) : listText("")});
      }
    }
  }
  return table;
}

ListTable piecesTable(const Review& review) {
  const UnitSystem units = review.plan.project.units;
  const std::string unit = " (" + cutUnit(units) + ")";
  ListTable table{"Pieces by run",
                  {"Run", "Piece", "Size", "Centre to centre" + unit, "Take-out" + unit,
                   "Cut" + unit, "Couplings"},
                  {}};
  for (const RunStudy& run : review.study.runs) {
    int number = 0;
    for (const PipePiece& piece : run.pieces) {
      table.rows.push_back({listText(run.id), listNumber(++number, 0), listText(piece.size + " in"),
                            cutCell(piece.centreToCentre, units), cutCell(piece.takeOut, units),
                            cutCell(piece.cut, units), listNumber(piece.couplings, 0)});
    }
  }
  return table;
}

ListTable stickCountTable(const Review& review, const CuttingList& cutting) {
  const UnitSystem units = review.plan.project.units;
  const bool metric = units == UnitSystem::Metric;
  const std::string unit = metric ? " (m)" : " (ft)";
  const auto length = [&](Length v) {
    return metric ? listNumber(inMetres(v), 3) : listNumber(inFeet(v), 2);
  };
  ListTable table{"Sticks",
                  {"Pipe", "Size", "Stick" + unit, "Cuts", "Sticks", "At least", "Proof",
                   "Cut" + unit, "Bought" + unit},
                  {}};
  double sticks = 0;
  for (const CuttingGroup& group : cutting.groups) {
    const std::string row = std::to_string(table.rows.size() + 2);
    const auto count = static_cast<double>(group.sticks.size());
    const ListCell bought = length(count * group.stick);
    table.rows.push_back({listText(group.name), listText(group.size + " in"), length(group.stick),
                          listNumber(static_cast<double>(group.cuts.size()), 0),
                          listNumber(count, 0), listNumber(group.leastPossible, 0),
                          listText(provenText(group)), length(group.net),
                          listFormula("=C" + row + "*E" + row, *bought.number, bought.decimals)});
    sticks += count;
  }
  if (table.rows.empty()) return table;
  std::vector<ListCell> total(table.headings.size(), listText(""));
  total[0] = listText("Total");
  total[4] = listFormula("=SUM(E2:E" + std::to_string(table.rows.size() + 1) + ")", sticks, 0);
  table.rows.push_back(std::move(total));
  table.totals = 1;
  return table;
}

std::string cuttingCsv(const Review& review, const CuttingList& cutting) {
  return csvOf(sticksTable(review, cutting)) + "\r\n" + csvOf(piecesTable(review)) + "\r\n" +
         csvOf(stickCountTable(review, cutting));
}

} // namespace sump
