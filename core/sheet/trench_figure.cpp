#include "core/sheet/trench_figure.h"

#include "core/plan/nonpotable.h"
#include "core/units/print.h"

#include <algorithm>

namespace sump {

namespace {

// mm from the strip's top left corner
constexpr double kLeft = 4, kRight = 28, kMiddle = (kLeft + kRight) / 2;
constexpr double kGround = 2, kZone = 15, kBed = 28, kBottom = 33, kRadius = 4;
constexpr double kWords = 36;
const LineStyle kSide{Ink::Grey, 0.25, {2, 1}};
const LineStyle kLeaderLine{Ink::Black, 0.18, {}};

PageShape layer(double top, double bottom, std::optional<FillStyle> fill) {
  return {{{kLeft, top}, {kRight, top}, {kRight, bottom}, {kLeft, bottom}},
          true,
          false,
          kLeaderLine,
          fill};
}

PageShape pipe() {
  const Point2 centre{kMiddle, kBed - kRadius};
  return {{centre, centre + Point2{kRadius, 0}},
          true,
          true,
          LineStyle{Ink::Black, 0.5, {}},
          FillStyle{Ink::White}};
}

std::vector<PageItem> section() {
  std::vector<PageItem> items;
  items.push_back(rule({0, kGround}, {kRight + 4, kGround}, 0.5));
  items.push_back(layer(kGround, kZone, std::nullopt));
  items.push_back(layer(kZone, kBed, FillStyle{Ink::PaleGrey, Hatch::Dots}));
  items.push_back(layer(kBed, kBottom, FillStyle{Ink::Grey, Hatch::Diagonal}));
  items.push_back(PageShape{{{kLeft + 4, kZone}, {kRight - 4, kZone}},
                            false,
                            false,
                            LineStyle{Ink::Black, 0.7, {3, 1}},
                            {}});
  items.push_back(pipe());
  items.push_back(
      PageShape{{{kLeft, kGround}, {kLeft, kBottom}, {kRight, kBottom}, {kRight, kGround}},
                false,
                false,
                kSide,
                {}});
  return items;
}

/// Words beside the section with a line to what they tell of; below what was said before.
class Teller {
public:
  Teller(PaperStrip& strip, double width) : strip_(strip), width_(width) {}

  void tell(Point2 at, const std::string& text) {
    const double top = std::max(y_, at.y - kLinePitch / 2);
    strip_.items.push_back(
        PageShape{{at, {kRight + 3, top + kLinePitch / 2}, {kWords - 1, top + kLinePitch / 2}},
                  false,
                  false,
                  kLeaderLine,
                  {}});
    y_ = top;
    for (const std::string& line : wrapped(text, width_ - kWords, kTextHeight, false)) {
      strip_.items.push_back(words({kWords, y_ + 0.75 * kLinePitch}, line));
      y_ += kLinePitch;
    }
    y_ += 1;
    strip_.height = std::max(strip_.height, y_);
  }

private:
  PaperStrip& strip_;
  double width_;
  double y_ = 0;
};

bool anyNonpotable(const SheetJob& job) {
  return std::ranges::any_of(job.study().earth.trenches, [&](const TrenchStudy& trench) {
    return isNonpotable(job.plan().runs.find(trench.run)->service);
  });
}

/// `0.080 m`, the least where lines pass too near over lids for the whole bed; empty: none does.
std::string bedOverLids(const SheetJob& job) {
  const EarthStudy& earth = job.study().earth;
  Length least = earth.figures.trenchBedding;
  for (const BackfilledRun& run : earth.backfilled)
    least = std::min(least, run.lidGap.value_or(least));
  if (least >= earth.figures.trenchBedding) return "";
  return printLength(least, job.units());
}

} // namespace

Block trenchFigure(const SheetJob& job, double width) {
  const EarthStudy& earth = job.study().earth;
  if (earth.trenches.empty()) return {};
  const auto length = [&](Length v) { return printLength(v, job.units()); };
  Block block = paragraphs("TRENCH SECTION, NOT TO SCALE", {}, width, false);
  PaperStrip strip{kBottom + 2, section()};
  Teller teller(strip, width);
  teller.tell({kRight - 3, 4},
              "Backfill in layers, compacted as the engineer asks; paving made good");
  teller.tell({kRight - 4, kZone},
              "Warning ribbon along the line, over the pipe zone or right under a slab");
  teller.tell({kRight - 3, 20}, "Pipe zone: selected backfill beside the pipe and to " +
                                    length(earth.figures.pipeZone) + " over it");
  teller.tell({kMiddle + kRadius * 0.7, kBed - kRadius * 1.7},
              anyNonpotable(job) ? "Pipe or conduit; purple tape along nonpotable water"
                                 : "Pipe or conduit");
  const std::string bed = "Bed, " + length(earth.figures.trenchBedding), lid = bedOverLids(job);
  teller.tell({kRight - 3, (kBed + kBottom) / 2},
              lid.empty()
                  ? bed + " under the pipe. Depth, to its underside, and width there as tabled"
                  : bed + ", over a lid " + lid +
                        ". Depth to its underside and width there as tabled");
  block.body.push_back(std::move(strip));
  return block;
}

} // namespace sump
