#include "core/sheet/cutting_sheet.h"

#include "core/sheet/block.h"
#include "core/sheet/cutting_rows.h"
#include "core/units/print.h"

#include <algorithm>
#include <optional>
#include <stdexcept>

namespace sump {

namespace {

constexpr double kShopMargin = 10; ///< mm
constexpr double kShopGap = 1.5;
constexpr double kColumnGap = 7;
constexpr double kFoot = 5; ///< for the page's count

/// Tried in this order until the list stays one page; 1.8 mm is the smallest lettering of ISO
/// 3098-1.
constexpr ShopSetting kSettings[] = {{2.5, 4}, {2.2, 3}, {2.0, 2.2}, {1.8, 1.6}, {1.8, 0}};

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

/// Pages filled from the top: sticks in two columns, what is wide below both.
class ShopPages {
public:
  ShopPages(const Review& review, const CuttingList& cutting, const ShopPaper& paper,
            const ShopSetting& setting)
      : review_(review), cutting_(cutting), paper_(paper), setting_(setting) {}

  /// All of it; with `low` the columns of the first page end there, so that room is left below.
  std::vector<Page> fill(double low);
  /// Do the sticks stay on one page, above `low`?
  bool columnsFit(double low);
  double bottom() const { return paper_.height - kShopMargin - kFoot; }

private:
  double width() const { return paper_.width - 2 * kShopMargin; }
  double columnWidth() const { return (width() - kColumnGap) / 2; }
  void turn();
  void fillColumns(double low);
  void addNarrow(const CuttingGroup& group, double low);
  void addWide(Block block);
  bool placed(Block& block, double x, double low);
  void addFeet();

  const Review& review_;
  const CuttingList& cutting_;
  const ShopPaper& paper_;
  const ShopSetting setting_;
  std::vector<Page> pages_;
  int column_ = 0;
  double top_ = 0, y_ = 0, lowest_ = 0;
};

bool ShopPages::placed(Block& block, double x, double low) {
  const double below = place(block, {x, y_}, low, pages_.back());
  if (below == y_) return false;
  y_ = below + kShopGap;
  lowest_ = std::max(lowest_, y_);
  return true;
}

void ShopPages::addNarrow(const CuttingGroup& group, double low) {
  const UnitSystem units = review_.plan.project.units;
  const Length spareFrom = review_.limits.length(kSpareLimit);
  Block block = stickBlock(group, columnWidth(), setting_, spareFrom, units);
  const std::size_t all = block.body.size();
  while (!block.body.empty()) {
    const double end = pages_.size() == 1 ? low : bottom();
    if (placed(block, kShopMargin + column_ * (columnWidth() + kColumnGap), end)) {
      if (block.body.size() < all)
        block.head = stickBlock(group, columnWidth(), setting_, spareFrom, units, true).head;
      continue;
    }
    if (++column_ == 2) {
      turn();
    } else {
      y_ = top_;
    }
  }
}

void ShopPages::addWide(Block block) {
  y_ = lowest_;
  while (!block.body.empty()) {
    if (!placed(block, kShopMargin, bottom())) turn();
  }
}

/// ` Down legs, open below: WW-1.4, OF-1.5.`
std::string downLegMarks(const Study& study) {
  std::string marks;
  for (const RunStudy& run : study.runs) {
    for (const DownLeg& leg : run.downLegs) {
      if (!leg.piece) continue;
      marks += (marks.empty() ? "" : ", ") + pieceMark(run.id, *leg.piece);
    }
  }
  return marks.empty() ? marks : " Down legs of tees and elbows, open below: " + marks + ".";
}

/// Z: contractor's and shop drawings, outside the disciplines of the set (US National CAD
/// Standard, from memory); 6: lists.
void ShopPages::turn() {
  const Project& project = review_.plan.project;
  Page page;
  page.number = "Z-" + std::to_string(601 + pages_.size());
  page.title = "Cutting list";
  page.width = paper_.width;
  page.height = paper_.height;
  const double right = paper_.width - kShopMargin;
  page.items.push_back(words({kShopMargin, kShopMargin + 4}, "Cutting list", 4.5, true));
  page.items.push_back(words({right, kShopMargin + 4}, page.number, 4.5, true, Align::Right));
  std::string facts = project.title;
  if (!project.identificationNumber.empty()) facts += ", " + project.identificationNumber;
  if (!project.issueDate.empty()) facts += ", " + project.issueDate;
  if (!project.revision.empty()) facts += ", revision " + project.revision;
  page.items.push_back(
      words({kShopMargin, kShopMargin + 9.5}, wrapped(facts, width(), kTextHeight, false)[0]));
  const bool metric = project.units == UnitSystem::Metric;
  const auto small = [&](Length v) {
    return metric ? fixed(inMillimetres(v), 1) + " mm" : inchesOnly(v, 64);
  };
  const std::string trim = inMetres(cutting_.trim) > 0
                               ? "; of a stick that is cut " + small(cutting_.trim) +
                                     " is kept for squaring its ends, in what is left"
                               : "";
  const std::string note =
      std::string(metric ? "Millimetres" : "Inches") +
      ", centre to centre less the fittings' take-out; saw cut " + small(cutting_.kerf) + trim +
      ". Marks are run and piece. Each figure is rounded to " + (metric ? "1 mm" : "1/16 in") +
      "; cut to the length in the last column. To spare: ends of " +
      small(review_.limits.length(kSpareLimit)) +
      " and more that are left. Check each fitting before you cut." + downLegMarks(review_.study);
  y_ = kShopMargin + 13.5;
  for (const std::string& line : wrapped(note, width(), 2.2, false)) {
    page.items.push_back(words({kShopMargin, y_}, line, 2.2));
    y_ += 1.6 * 2.2;
  }
  page.items.push_back(rule({kShopMargin, y_ - 1.6}, {right, y_ - 1.6}, 0.5));
  pages_.push_back(std::move(page));
  column_ = 0;
  top_ = lowest_ = y_;
}

void ShopPages::addFeet() {
  for (std::size_t i = 0; i < pages_.size(); ++i) {
    pages_[i].items.push_back(
        words({paper_.width / 2, paper_.height - kShopMargin},
              "Page " + std::to_string(i + 1) + " of " + std::to_string(pages_.size()), 2.2, false,
              Align::Centre));
  }
}

void ShopPages::fillColumns(double low) {
  pages_.clear();
  turn();
  for (const CuttingGroup& group : cutting_.groups)
    addNarrow(group, low);
}

std::vector<Page> ShopPages::fill(double low) {
  fillColumns(low);
  if (cutting_.groups.empty())
    pages_.back().items.push_back(words({kShopMargin, y_ + 4}, "There is no pipe to cut."));
  addWide(pieceBlock(review_, width(), setting_));
  addFeet();
  return std::move(pages_);
}

bool ShopPages::columnsFit(double low) {
  fillColumns(low);
  return pages_.size() == 1;
}

/// The columns as short as may be, so that the pieces fit below them.
std::optional<std::vector<Page>> onOnePage(ShopPages& pages) {
  double low = 0, high = pages.bottom();
  if (!pages.columnsFit(high)) return std::nullopt;
  while (high - low > 1) { // mm
    const double middle = (low + high) / 2;
    (pages.columnsFit(middle) ? high : low) = middle;
  }
  std::vector<Page> made = pages.fill(high);
  if (made.size() == 1) return made;
  return std::nullopt;
}

} // namespace

std::string_view shopPaper(UnitSystem units) {
  return units == UnitSystem::Metric ? "a4" : "letter";
}

std::vector<Page> composeCuttingSheet(const Review& review, const CuttingList& cutting,
                                      std::string_view paper) {
  for (const ShopSetting& setting : kSettings) {
    ShopPages pages(review, cutting, shopPaperOf(paper), setting);
    if (auto made = onOnePage(pages)) return *made;
  }
  ShopPages pages(review, cutting, shopPaperOf(paper), kSettings[0]);
  return pages.fill(pages.bottom());
}

} // namespace sump
