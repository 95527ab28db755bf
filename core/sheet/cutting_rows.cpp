#include "core/sheet/cutting_rows.h"

#include "core/units/print.h"

#include <algorithm>
#include <map>

namespace sump {

namespace {

constexpr double kNumberWidth = 9; // mm, for `12 x`

std::string sizeMark(const std::string& nominal) {
  return nominal + "\"";
}

bool isWhole(const CuttingGroup& group, const CutStick& stick) {
  return stick.cuts.size() == 1 && group.cuts[stick.cuts[0]].length == group.stick;
}

/// Sticks that are sawn alike, and which cuts each length is for.
struct StickRow {
  const CutStick* stick = nullptr; ///< the first of them
  int count = 0;
  std::vector<std::pair<Length, std::vector<std::size_t>>> cuts; ///< as the stick has them
};

std::vector<Length> lengthsOf(const CuttingGroup& group, const CutStick& stick) {
  std::vector<Length> lengths;
  for (std::size_t cut : stick.cuts)
    lengths.push_back(group.cuts[cut].length);
  return lengths;
}

void addTo(StickRow& row, const CuttingGroup& group, const CutStick& stick) {
  ++row.count;
  for (std::size_t cut : stick.cuts) {
    const Length length = group.cuts[cut].length;
    const auto known =
        std::ranges::find_if(row.cuts, [&](const auto& c) { return c.first == length; });
    if (known == row.cuts.end()) {
      row.cuts.push_back({length, {cut}});
    } else {
      known->second.push_back(cut);
    }
  }
}

std::vector<StickRow> stickRows(const CuttingGroup& group) {
  std::vector<StickRow> rows;
  for (const CutStick& stick : group.sticks) {
    auto row = std::ranges::find_if(rows, [&](const StickRow& known) {
      return lengthsOf(group, *known.stick) == lengthsOf(group, stick);
    });
    if (row == rows.end()) row = rows.insert(rows.end(), {&stick, 0, {}});
    addTo(*row, group, stick);
  }
  return rows;
}

/// Marks and lengths in words, for whoever reads rather than measures the picture.
std::vector<std::string> rowWords(const CuttingGroup& group, const StickRow& row,
                                  UnitSystem units) {
  std::vector<std::string> parts;
  for (const auto& [length, cuts] : row.cuts) {
    for (std::size_t i = 0; i < cuts.size(); ++i) {
      const bool last = i + 1 == cuts.size();
      parts.push_back(cutMark(group.cuts[cuts[i]]) + (last ? " = " : ","));
      if (!last) continue;
      parts.back() += isWhole(group, *row.stick) ? "whole stick" : cutText(length, units);
      if (&length != &row.cuts.back().first || !isWhole(group, *row.stick)) parts.back() += ",";
    }
  }
  if (!isWhole(group, *row.stick)) parts.push_back("left " + cutText(row.stick->offcut, units));
  return parts;
}

/// Each part is kept whole when the lines are broken.
std::vector<std::string> linesOf(const std::vector<std::string>& parts, double width,
                                 double height) {
  std::vector<std::string> lines(1);
  for (const std::string& part : parts) {
    const std::string joined = lines.back().empty() ? part : lines.back() + "  " + part;
    if (!lines.back().empty() && textWidth(joined, height, false) > width) {
      lines.push_back(part);
    } else {
      lines.back() = joined;
    }
  }
  return lines;
}

/// A bar as long as the stick is wide on the paper; what is left over is hatched.
void addBar(const CuttingGroup& group, const CutStick& stick, double width, double height,
            PaperStrip& strip) {
  const double scale = (width - kNumberWidth) / inMetres(group.stick);
  double x = kNumberWidth;
  const auto box = [&](double end, Hatch hatch) {
    strip.items.push_back(PageShape{PaperBox{{x, 0.5}, {end, height + 0.5}}.ring(), true, false,
                                    LineStyle{Ink::Black, 0.25, {}},
                                    FillStyle{Ink::PaleGrey, hatch}});
    x = end;
  };
  for (std::size_t cut : stick.cuts)
    box(x + inMetres(group.cuts[cut].length) * scale, Hatch::None);
  if (inMetres(stick.offcut) * scale > 0.5) box(width, Hatch::Diagonal);
}

PaperStrip stickStrip(const CuttingGroup& group, const StickRow& row, double width,
                      const ShopSetting& setting, UnitSystem units) {
  PaperStrip strip;
  double y = 0;
  if (setting.bar > 0) {
    addBar(group, *row.stick, width, setting.bar, strip);
    y = setting.bar + 0.7;
  }
  strip.items.push_back(
      words({0, y + 1.2 * setting.text}, std::to_string(row.count) + " x", setting.text, true));
  for (const std::string& line :
       linesOf(rowWords(group, row, units), width - kNumberWidth, setting.text)) {
    strip.items.push_back(words({kNumberWidth, y + 1.2 * setting.text}, line, setting.text));
    y += setting.pitch();
  }
  strip.height = y + 0.3 * setting.text;
  return strip;
}

void addHeading(const std::string& text, double width, double height, Block& block) {
  PaperStrip head{0.6 * height, {}};
  for (const std::string& line : wrapped(text, width, height, true)) {
    head.items.push_back(words({0, head.height + 1.1 * height}, line, height, true));
    head.height += 1.6 * height;
  }
  head.items.push_back(rule({0, head.height}, {width, head.height}, 0.35));
  head.height += 0.3 * height;
  block.head.push_back(std::move(head));
}

using PieceCells = std::vector<std::string>; // mark, size, centre to centre, take-out, cut

std::vector<PieceCells> pieceCells(const Review& review) {
  const UnitSystem units = review.plan.project.units;
  std::vector<PieceCells> pieces;
  for (const RunStudy& run : review.study.runs) {
    int number = 0;
    for (const PipePiece& piece : run.pieces) {
      ++number;
      pieces.push_back({run.id + "." + std::to_string(number), sizeMark(piece.size),
                        cutText(piece.centreToCentre, units), cutText(piece.takeOut, units),
                        cutText(piece.cut, units)});
    }
  }
  return pieces;
}

const PieceCells kPieceHeads = {"Mark", "Size", "C to C", "Take-out", "Cut"};

std::vector<double> cellWidths(const std::vector<PieceCells>& pieces, double height) {
  std::vector<double> widths(kPieceHeads.size());
  for (std::size_t i = 0; i < widths.size(); ++i) {
    widths[i] = textWidth(kPieceHeads[i], height, true);
    for (const PieceCells& cells : pieces)
      widths[i] = std::max(widths[i], textWidth(cells[i], height, i + 1 == widths.size()));
    widths[i] += 1.2 * height;
  }
  return widths;
}

/// The first cell stands left, the others right in their columns.
void addCells(const PieceCells& cells, const std::vector<double>& widths, double x, double height,
              bool bold, PaperStrip& strip) {
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const bool left = i == 0;
    const double at = left ? x : x + widths[i];
    strip.items.push_back(words({at, 1.3 * height}, cells[i], height, bold || i + 1 == cells.size(),
                                left ? Align::Left : Align::Right));
    x += widths[i];
  }
  strip.height = 1.6 * height;
}

/// Whoever spoils a piece sees at once whether another can be cut.
std::string spareText(const CuttingGroup& group, Length least, UnitSystem units) {
  std::string text;
  for (Length end : spareEnds(group, least))
    text += (text.empty() ? "" : ", ") + cutText(end, units);
  return "; to spare: " + (text.empty() ? "none" : text);
}

} // namespace

std::string cutText(Length length, UnitSystem units) {
  if (units == UnitSystem::Metric) return fixed(inMillimetres(length), 0);
  return inchesOnly(length);
}

Block stickBlock(const CuttingGroup& group, double width, const ShopSetting& setting,
                 Length spareFrom, UnitSystem units, bool continued) {
  Block block{width, {}, {}};
  addHeading(group.name + " " + sizeMark(group.size) + ": " + std::to_string(group.sticks.size()) +
                 " x " + printLength(group.stick, units) + " (" + provenText(group) + ")" +
                 spareText(group, spareFrom, units) + (continued ? ", continued" : ""),
             width, 1.15 * setting.text, block);
  for (const StickRow& row : stickRows(group))
    block.body.push_back(stickStrip(group, row, width, setting, units));
  return block;
}

Block pieceBlock(const Review& review, double width, const ShopSetting& setting) {
  const std::vector<PieceCells> pieces = pieceCells(review);
  const std::vector<double> widths = cellWidths(pieces, setting.text);
  double entry = 0;
  for (double w : widths)
    entry += w;
  const double gap = 3 * setting.text;
  const auto side =
      std::max<std::size_t>(1, static_cast<std::size_t>((width + gap) / (entry + gap)));
  const double step = (width + gap) / static_cast<double>(side);
  Block block{width, {}, {}};
  addHeading("PIECES BY RUN", width, 1.15 * setting.text, block);
  PaperStrip heads;
  for (std::size_t k = 0; k < side; ++k)
    addCells(kPieceHeads, widths, static_cast<double>(k) * step, setting.text, true, heads);
  block.head.push_back(std::move(heads));
  const std::size_t rows = (pieces.size() + side - 1) / side;
  for (std::size_t i = 0; i < rows; ++i) {
    PaperStrip strip;
    for (std::size_t k = 0; k < side && k * rows + i < pieces.size(); ++k) {
      addCells(pieces[k * rows + i], widths, static_cast<double>(k) * step, setting.text, false,
               strip);
    }
    block.body.push_back(std::move(strip));
  }
  return block;
}

} // namespace sump
