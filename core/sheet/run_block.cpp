#include "core/sheet/run_block.h"

#include "core/sheet/section_frames.h"
#include "core/sheet/section_marks.h"
#include "core/units/print.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kFine = 50;    // no larger scale is asked for than this one's
constexpr double kSmall = 128;  // a drawing of a smaller scale is cut into frames
constexpr double kLowest = 26;  // mm; a lower drawing shows nothing
constexpr double kTail = 4;     // under everything
constexpr double kFrameRow = 5; // what a frame says over it
constexpr double kListGap = 6;  // from the drawing to the list
constexpr std::size_t kMostFrames = 3;

enum class Levels { Band, ListBelow, ListBeside };

/// One way of setting the section.
struct Way {
  Levels levels = Levels::Band;
  std::size_t frames = 1;
  std::size_t listParts = 1;
  bool apart = false; ///< each frame fills a sheet of its own
  SectionScale scale{};
  double width = 0, height = 0; ///< mm: most of the drawing with its gutter, of a frame
};

/// Texts that found no room, and how many keys stand for them.
struct Untold {
  std::vector<std::string> texts;
  std::size_t keys = 0;
};

class RunBlock {
public:
  RunBlock(const RunProfile& profile, const SectionTitle& title, UnitSystem units, Point2 most,
           bool fills)
      : profile_(profile), title_(title), units_(units), most_(most), fills_(fills),
        rows_(levelRows(profile, units)), extent_(sectionExtent(profile)) {
    title_.key = sectionKey(profile);
    for (std::size_t n = 1; n <= kMostFrames; ++n)
      parts_.push_back(partsOf(static_cast<int>(n)));
  }

  /// What finds no room on the drawing is told below it, which takes room of its own.
  Block make() const {
    constexpr int kTries = 5;
    double below = 0;
    Block block;
    for (int i = 0; i < kTries; ++i) {
      block = set(best(below));
      const double over = lastSheet(block) - most_.y;
      if (over <= 0) break;
      below += over + 0.5;
    }
    return block;
  }

private:
  /// What stands together: all of it, or what follows the frames that have sheets of their own.
  static double lastSheet(const Block& block) {
    double height = 0;
    for (const PaperStrip& strip : block.head)
      height += strip.height;
    const double head = height;
    for (const PaperStrip& strip : block.body)
      height = strip.height > kLowest && !block.head.empty() ? head + strip.height
                                                             : height + strip.height;
    return height;
  }

  std::vector<RunProfile> partsOf(int count) const {
    std::vector<RunProfile> parts;
    double from = profile_.from;
    for (double cut : sectionCuts(profile_, count)) {
      parts.push_back(sectionPart(profile_, from, cut));
      from = cut;
    }
    parts.push_back(count == 1 ? profile_ : sectionPart(profile_, from, profile_.to));
    return parts;
  }

  Way way(Levels levels, std::size_t frames, std::size_t listParts, double below,
          bool apart = false) const {
    Way way{levels, frames, listParts, apart, {}, most_.x, 0};
    const double stacked = apart ? 1 : static_cast<double>(frames);
    double used = titleHeight(title_) + kTail + below;
    if (levels == Levels::Band) {
      used += levelBandHeight(rows_);
    } else {
      used += kLetterRoom * stacked;
    }
    const LevelList list(rows_, listParts);
    if (levels == Levels::ListBelow) used += list.height();
    if (levels == Levels::ListBeside) way.width -= list.width() + kListGap;
    if (frames > 1) used += kFrameRow * stacked;
    way.height = std::max(kLowest, (most_.y - used) / stacked);
    way.scale =
        sectionScale(longest(frames), extent_.high - extent_.low, units_, way.width, way.height);
    return way;
  }
  double longest(std::size_t frames) const {
    double longest = 0;
    for (const RunProfile& part : parts_[frames - 1])
      longest = std::max(longest, part.to - part.from);
    return longest;
  }

  /// A list in as few parts as the drawing's width asks for, unless that costs its scale; in as
  /// many as there is room for where the sheet has no other use for it.
  Way listBelow(std::size_t frames, double below, bool apart = false) const {
    const double each = LevelList(rows_, 1).width() + kListGap;
    const auto beside = [&](double width) {
      return static_cast<std::size_t>(std::max(1.0, std::floor((width + kListGap) / each)));
    };
    const Way wide = way(Levels::ListBelow, frames, beside(most_.x), below, apart);
    if (fills_) return wide;
    const double drawn = sectionWidth(longest(frames), wide.scale);
    const Way narrow = way(Levels::ListBelow, frames, beside(std::min(drawn, most_.x)), below);
    return narrow.scale.along > wide.scale.along ? wide : narrow;
  }

  Way best(double below) const {
    Way best = way(Levels::Band, 1, 1, below);
    const auto offer = [&](const Way& other) {
      if (other.scale.along < best.scale.along) best = other;
    };
    if (best.scale.along > kFine) {
      offer(listBelow(1, below));
      offer(way(Levels::ListBeside, 1, 1, below));
    }
    for (std::size_t n = 2; n <= kMostFrames && best.scale.along > kSmall; ++n)
      offer(listBelow(n, below));
    for (std::size_t n = 2; n <= kMostFrames && fills_ && best.scale.along > kSmall; ++n)
      offer(listBelow(n, below, true));
    return best;
  }

  SectionSet setOf(const Way& way, std::size_t frame) const {
    SectionSet set{way.width};
    set.scale = way.scale;
    set.levels = extent_;
    constexpr double kMostAir = 16, kAirBeside = 30;
    if (fills_) {
      const double least = sectionHeight(extent_.high - extent_.low, way.scale);
      set.air = std::clamp((way.height - least) / 2, 0.0, kMostAir);
      set.leastWidth =
          std::min(way.width, sectionWidth(longest(way.frames), way.scale) + 2 * kAirBeside);
    }
    if (way.frames == 1) return set;
    const std::vector<RunProfile>& parts = parts_[way.frames - 1];
    const auto at = [&](double station) { return printRunLength(metres(station), units_); };
    const auto frameName = [](std::size_t i) { return "frame " + std::to_string(i + 1); };
    if (frame > 0)
      set.before = "From " + frameName(frame - 1) + " at station " + at(parts[frame].from);
    if (frame + 1 < parts.size())
      set.after = "Continued at station " + at(parts[frame].to) + " in " + frameName(frame + 1);
    return set;
  }

  /// The letters of the rows that a frame shows.
  void letter(const SectionView& view, const RunProfile& part, Page& page) const {
    std::vector<std::pair<double, std::string>> places;
    for (std::size_t i = 0; i < rows_.size(); ++i) {
      if (rows_[i].station < part.from || rows_[i].station > part.to) continue;
      places.emplace_back(view.toPaper(rows_[i].station, metres(0)).x, pointLetter(i));
    }
    drawPointLetters(places, view.view.frame, page);
  }

  /// One frame with its band or letters; its list too where that stands beside it.
  Page drawFrame(const Way& way, std::size_t i, const SectionTitle& title, PaperBox& box,
                 Untold& untold) const {
    Page page;
    const RunProfile& part = parts_[way.frames - 1][i];
    SectionSet set = setOf(way, i);
    set.keys = untold.keys;
    const DrawnSection drawn = drawSection(part, title, units_, set, page);
    untold.keys = drawn.keys;
    untold.texts.insert(untold.texts.end(), drawn.unplaced.begin(), drawn.unplaced.end());
    box = drawn.view.view.frame;
    if (way.levels == Levels::Band) {
      drawLevelBand(levelColumns(rows_, drawn.view), box, page);
    } else {
      letter(drawn.view, part, page);
    }
    return page;
  }

  Block set(const Way& way) const {
    Block block{0, {}, {}, true};
    if (way.apart) block.head = {titleStrip(title_, way.scale, units_)};
    const LevelList list(rows_, way.listParts);
    Untold untold;
    for (std::size_t i = 0; i < way.frames; ++i) {
      PaperBox box;
      const bool titled = i == 0 && !way.apart;
      Page page = drawFrame(way, i, titled ? title_ : SectionTitle{}, box, untold);
      block.width = std::max(block.width, box.high.x);
      if (way.levels == Levels::ListBeside) {
        list.draw({box.high.x + kListGap, box.low.y}, page);
        block.width += kListGap + list.width();
      }
      const bool last = i + 1 == way.frames;
      if (last && way.levels == Levels::ListBelow) {
        list.draw({0, box.high.y + kLetterRoom}, page);
        block.width = std::max(block.width, list.width());
      }
      block.body.push_back(sectionStrip(std::move(page)));
    }
    if (!way.apart) block.body = {joined(std::move(block.body))};
    tellBelow(block, untold.texts);
    return block;
  }

  /// Frames that stay together.
  static PaperStrip joined(std::vector<PaperStrip> strips) {
    PaperStrip all;
    for (PaperStrip& strip : strips) {
      for (PageItem& item : strip.items) {
        moveItem(item, {0, all.height});
        all.items.push_back(std::move(item));
      }
      all.height += strip.height;
    }
    return all;
  }

  const RunProfile& profile_;
  SectionTitle title_;
  UnitSystem units_;
  Point2 most_;
  bool fills_;
  std::vector<LevelRow> rows_;
  SectionExtent extent_;
  std::vector<std::vector<RunProfile>> parts_; ///< cut into 1, 2 ... frames
};

} // namespace

Block runSectionBlock(const RunProfile& profile, const SectionTitle& title, UnitSystem units,
                      Point2 most, bool fills) {
  return RunBlock(profile, title, units, most, fills).make();
}

} // namespace sump
