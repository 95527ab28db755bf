#include "core/sheet/level_ladder.h"

#include "core/sheet/border.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kRungPitch = 4.4; // mm between two level texts
constexpr double kRungGap = 1.6;   // mm more below one with several words, so that they stay its
constexpr const char* kWordGap = "  "; // between a level and its words
const LineStyle kRungThin{Ink::Black, 0.18, {}};

struct Rung {
  double y = 0, from = 0;
  std::string level;
  std::vector<std::string> names;
  double height() const {
    const double lines = static_cast<double>(names.size());
    return kRungPitch * lines + (names.size() > 1 ? kRungGap : 0);
  }
};

/// From the highest down.
std::vector<Rung> rungsOf(std::vector<LevelTag> levels) {
  std::ranges::stable_sort(levels, std::greater<>(), &LevelTag::y);
  std::vector<Rung> rungs;
  constexpr double kSame = 1e-4; // m
  for (const LevelTag& tag : levels) {
    if (rungs.empty() || rungs.back().level != tag.level ||
        std::abs(rungs.back().y - tag.y) > kSame) {
      rungs.push_back({tag.y, tag.from, tag.level, {tag.name}});
      continue;
    }
    Rung& known = rungs.back();
    known.from = std::min(known.from, tag.from);
    if (std::ranges::find(known.names, tag.name) == known.names.end())
      known.names.push_back(tag.name);
  }
  return rungs;
}

/// Heights on the paper of the first words of each.
std::vector<double> slotsOf(const std::vector<Rung>& rungs, const SheetView& view) {
  std::vector<double> slots;
  double free = -1e9;
  for (const Rung& rung : rungs) {
    slots.push_back(std::max(view.toPaper({0, rung.y}).y, free));
    free = slots.back() + rung.height();
  }
  constexpr double kFoot = 3;
  double limit = view.frame.high.y - kFoot + kRungPitch;
  for (std::size_t i = slots.size(); i-- > 0;) {
    slots[i] = std::min(slots[i], limit - rungs[i].height());
    limit = slots[i];
  }
  return slots;
}

} // namespace

double ladderWidth(const std::vector<LevelTag>& levels) {
  double width = 0;
  for (const LevelTag& tag : levels)
    width = std::max(width, textWidth(tag.level + kWordGap + tag.name, kTextHeight, false));
  return levels.empty() ? 0 : width + 12;
}

void drawLadder(const std::vector<LevelTag>& levels, const SheetView& view, double room,
                LabelBoard& board, Page& page) {
  if (levels.empty()) return;
  const std::vector<Rung> rungs = rungsOf(levels);
  const std::vector<double> slots = slotsOf(rungs, view);
  const double left = view.frame.high.x - room;
  const auto isCrowded = [&](std::size_t i) {
    constexpr double kMark = 2.4; // mm
    const auto isNear = [&](const Rung& other) {
      return &other != &rungs[i] &&
             std::abs(view.toPaper({0, other.y}).y - view.toPaper({0, rungs[i].y}).y) < kMark;
    };
    return std::ranges::any_of(rungs, isNear);
  };
  for (std::size_t i = 0; i < rungs.size(); ++i) {
    const Rung& rung = rungs[i];
    const Point2 from = view.toPaper({rung.from, rung.y});
    const bool crowded = isCrowded(i);
    const Point2 knee{left + 2, from.y}, end{left + (crowded ? 6 : 8), slots[i]};
    constexpr double kToWords = 9.5, kOnEnd = 7.8; // mm from the left
    page.items.push_back(
        PageShape{{from, knee, end, {left + kToWords, end.y}}, false, false, kRungThin, {}});
    constexpr double kCover = 5;
    board.avoid(from, knee, kCover);
    // The level's mark: a triangle standing on the line; before its words where others are close.
    const Point2 foot = crowded ? Point2{left + kOnEnd, end.y} : knee;
    page.items.push_back(PageShape{{foot, {foot.x - 1.2, foot.y - 2}, {foot.x + 1.2, foot.y - 2}},
                                   true,
                                   false,
                                   kRungThin,
                                   FillStyle{Ink::White}});
    Point2 at{left + kToWords + 0.7, end.y + kTextHeight * 0.42};
    page.items.push_back(words(at, rung.level + kWordGap + rung.names.front()));
    at.x += textWidth(rung.level + kWordGap, kTextHeight, false);
    for (std::size_t k = 1; k < rung.names.size(); ++k)
      page.items.push_back(
          words({at.x, at.y + kRungPitch * static_cast<double>(k)}, rung.names[k]));
  }
  board.forbid({{left, view.frame.low.y}, view.frame.high});
}

} // namespace sump
