#include "core/sheet/cutting_sheet.h"

#include "core/sheet/block.h"
#include "core/units/print.h"

#include <algorithm>
#include <stdexcept>

namespace sump {

namespace {

constexpr double kMargin = 12; ///< mm
constexpr double kGap = 3;
constexpr double kColumnGap = 8;
constexpr double kNumberWidth = 9;
constexpr double kBarHeight = 5.2;

struct ShopPaper {
  std::string_view key;
  double width, height; ///< mm, upright
};
// US letter 8-1/2 x 11 in (ANSI A); ISO 216 A4.
constexpr ShopPaper kPapers[] = {{"letter", 215.9, 279.4}, {"a4", 210, 297}};

const ShopPaper& shopPaperOf(std::string_view key) {
  for (const ShopPaper& paper : kPapers) {
    if (paper.key == key) return paper;
  }
  throw std::invalid_argument("The cutting list has no paper '" + std::string(key) +
                              "'. Use letter or a4.");
}

std::string cutText(Length length, UnitSystem units) {
  if (units == UnitSystem::Metric) return fixed(inMillimetres(length), 0);
  return inchesOnly(length);
}

std::string sizeMark(const std::string& nominal) {
  return nominal + "\"";
}

/// Sticks that are sawn alike stand in one row.
struct StickRow {
  const CutStick* stick = nullptr;
  int count = 1;
};

bool isWhole(const CuttingGroup& group, const CutStick& stick) {
  return stick.cuts.size() == 1 && group.cuts[stick.cuts[0]].length == group.stick;
}

std::vector<StickRow> stickRows(const CuttingGroup& group) {
  std::vector<StickRow> rows;
  for (const CutStick& stick : group.sticks) {
    if (!rows.empty() && isWhole(group, stick) && isWhole(group, *rows.back().stick)) {
      ++rows.back().count;
    } else {
      rows.push_back({&stick});
    }
  }
  return rows;
}

/// The marks and lengths in words, for whoever reads rather than measures the bar.
std::vector<std::string> cutsWords(const CuttingGroup& group, const StickRow& row,
                                   UnitSystem units) {
  if (row.count > 1) return {"whole sticks"};
  const bool whole = isWhole(group, *row.stick);
  std::vector<std::string> parts;
  for (std::size_t cut : row.stick->cuts) {
    parts.push_back(cutMark(group.cuts[cut]) + " = " +
                    (whole ? "whole stick" : cutText(group.cuts[cut].length, units)));
  }
  if (!whole) parts.push_back("left " + cutText(row.stick->offcut, units));
  return parts;
}

/// Each part is kept whole when the lines are broken.
std::vector<std::string> linesOf(const std::vector<std::string>& parts, double width) {
  std::vector<std::string> lines(1);
  for (const std::string& part : parts) {
    const std::string joined = lines.back().empty() ? part : lines.back() + ",  " + part;
    if (!lines.back().empty() && textWidth(joined, kTextHeight, false) > width) {
      lines.push_back(part);
    } else {
      lines.back() = joined;
    }
  }
  return lines;
}

/// A bar as long as the stick is wide on the paper; what is left over is hatched.
void addBar(const CuttingGroup& group, const CutStick& stick, double width, PaperStrip& strip) {
  const double scale = (width - kNumberWidth) / inMetres(group.stick);
  double x = kNumberWidth;
  const auto box = [&](double end, Hatch hatch) {
    strip.items.push_back(PageShape{PaperBox{{x, 0.6}, {end, kBarHeight - 0.8}}.ring(), true, false,
                                    LineStyle{Ink::Black, 0.25, {}},
                                    FillStyle{Ink::PaleGrey, hatch}});
    x = end;
  };
  for (std::size_t cut : stick.cuts)
    box(x + inMetres(group.cuts[cut].length) * scale, Hatch::None);
  if (inMetres(stick.offcut) * scale > 0.5) box(width, Hatch::Diagonal);
}

PaperStrip stickStrip(const CuttingGroup& group, const StickRow& row, const std::string& number,
                      double width, UnitSystem units) {
  PaperStrip strip;
  addBar(group, *row.stick, width, strip);
  strip.items.push_back(words({0, 4.0}, number, kTextHeight, true));
  const auto lines = linesOf(cutsWords(group, row, units), width - kNumberWidth);
  double y = kBarHeight + 2.6;
  for (const std::string& line : lines) {
    strip.items.push_back(words({kNumberWidth, y}, line));
    y += kLinePitch;
  }
  strip.height = kBarHeight + static_cast<double>(lines.size()) * kLinePitch + 1.2;
  return strip;
}

Block groupBlock(const CuttingGroup& group, double width, UnitSystem units) {
  Block block{width, {}, {}};
  const std::string title = group.name + " " + sizeMark(group.size) + ": " +
                            std::to_string(group.sticks.size()) + " x " +
                            printLength(group.stick, units) + " (" + provenText(group) + ")";
  PaperStrip head{2.0, {}};
  for (const std::string& line : wrapped(title, width, 3.0, true)) {
    head.items.push_back(words({0, head.height + 3.2}, line, 3.0, true));
    head.height += 5.0;
  }
  head.items.push_back(rule({0, head.height - 0.4}, {width, head.height - 0.4}, 0.35));
  head.height += 0.8;
  block.head.push_back(std::move(head));
  int number = 1;
  for (const StickRow& row : stickRows(group)) {
    std::string label = std::to_string(number);
    if (row.count > 1) label += "-" + std::to_string(number + row.count - 1);
    block.body.push_back(stickStrip(group, row, label, width, units));
    number += row.count;
  }
  return block;
}

/// Two pieces a row, so that most plans need one page: read down, then on at the right.
Block piecesBlock(const Review& review, double width) {
  const UnitSystem units = review.plan.project.units;
  std::vector<std::vector<std::string>> pieces;
  for (const RunStudy& run : review.study.runs) {
    int number = 0;
    for (const PipePiece& piece : run.pieces) {
      ++number;
      pieces.push_back({run.id + "." + std::to_string(number), sizeMark(piece.size),
                        cutText(piece.centreToCentre, units), cutText(piece.takeOut, units),
                        cutText(piece.cut, units)});
    }
  }
  const std::size_t half = (pieces.size() + 1) / 2;
  std::vector<std::vector<std::string>> rows(pieces.begin(),
                                             pieces.begin() + static_cast<std::ptrdiff_t>(half));
  for (std::size_t i = 0; i < half; ++i) {
    const bool there = half + i < pieces.size();
    const auto beside = there ? pieces[half + i] : std::vector<std::string>(5);
    rows[i].insert(rows[i].end(), beside.begin(), beside.end());
  }
  std::vector<Column> columns = {{"Mark"},
                                 {"Size", Align::Centre},
                                 {"Centre|to centre", Align::Right},
                                 {"Take-out", Align::Right},
                                 {"Cut", Align::Right}};
  const std::vector<Column> beside = columns;
  columns.insert(columns.end(), beside.begin(), beside.end());
  return table("PIECES BY RUN", columns, rows, width);
}

/// Pages filled from the top: sticks in two columns, what is wide below both.
class ShopPages {
public:
  ShopPages(const Review& review, const CuttingList& cutting, const ShopPaper& paper)
      : review_(review), cutting_(cutting), paper_(paper) {}

  double width() const { return paper_.width - 2 * kMargin; }
  double columnWidth() const { return (width() - kColumnGap) / 2; }

  void addNarrow(Block block) {
    while (!block.body.empty()) {
      if (pages_.empty()) turn();
      if (placed(block, kMargin + column_ * (columnWidth() + kColumnGap))) continue;
      if (++column_ == 2) {
        turn();
      } else {
        y_ = top_;
      }
    }
  }
  void addWide(Block block) {
    y_ = lowest_;
    while (!block.body.empty()) {
      if (pages_.empty() || !placed(block, kMargin)) turn();
    }
  }
  std::vector<Page> take();

private:
  bool placed(Block& block, double x) {
    const double below = place(block, {x, y_}, paper_.height - kMargin - 6, pages_.back());
    if (below == y_) return false;
    y_ = below + kGap;
    lowest_ = std::max(lowest_, y_);
    return true;
  }
  void turn();

  const Review& review_;
  const CuttingList& cutting_;
  const ShopPaper& paper_;
  std::vector<Page> pages_;
  int column_ = 0;
  double top_ = 0, y_ = 0, lowest_ = 0;
};

void ShopPages::turn() {
  const Project& project = review_.plan.project;
  Page page;
  page.number = "C-" + std::to_string(101 + pages_.size());
  page.title = "Cutting list";
  page.width = paper_.width;
  page.height = paper_.height;
  const double right = paper_.width - kMargin;
  page.items.push_back(words({kMargin, kMargin + 4}, "Cutting list", 4.5, true));
  page.items.push_back(words({right, kMargin + 4}, page.number, 4.5, true, Align::Right));
  std::string facts = project.title;
  if (!project.issueDate.empty()) facts += ", " + project.issueDate;
  if (!project.revision.empty()) facts += ", revision " + project.revision;
  page.items.push_back(
      words({kMargin, kMargin + 10}, wrapped(facts, width(), kTextHeight, false)[0]));
  const bool metric = project.units == UnitSystem::Metric;
  const std::string note =
      std::string(metric ? "Millimetres" : "Inches") +
      ", centre to centre less the fittings' take-out; saw cut " +
      (metric ? fixed(inMillimetres(cutting_.kerf), 1) + " mm" : inchesOnly(cutting_.kerf, 64)) +
      ". Marks are run and piece. Check each fitting before you cut.";
  y_ = kMargin + 14.5;
  for (const std::string& line : wrapped(note, width(), kTextHeight, false)) {
    page.items.push_back(words({kMargin, y_}, line));
    y_ += kLinePitch;
  }
  page.items.push_back(rule({kMargin, y_ - 2}, {right, y_ - 2}, 0.5));
  pages_.push_back(std::move(page));
  column_ = 0;
  top_ = lowest_ = y_;
}

std::vector<Page> ShopPages::take() {
  if (pages_.empty()) {
    turn();
    pages_.back().items.push_back(words({kMargin, y_ + 4}, "There is no pipe to cut."));
  }
  for (std::size_t i = 0; i < pages_.size(); ++i) {
    pages_[i].items.push_back(
        words({paper_.width / 2, paper_.height - kMargin},
              "Page " + std::to_string(i + 1) + " of " + std::to_string(pages_.size()), kTextHeight,
              false, Align::Centre));
  }
  return std::move(pages_);
}

} // namespace

std::string_view shopPaper(UnitSystem units) {
  return units == UnitSystem::Metric ? "a4" : "letter";
}

std::vector<Page> composeCuttingSheet(const Review& review, const CuttingList& cutting,
                                      std::string_view paper) {
  ShopPages pages(review, cutting, shopPaperOf(paper));
  for (const CuttingGroup& group : cutting.groups)
    pages.addNarrow(groupBlock(group, pages.columnWidth(), review.plan.project.units));
  pages.addWide(piecesBlock(review, pages.width()));
  return pages.take();
}

} // namespace sump
