#include "core/sheet/bubble.h"

#include "core/sheet/block.h"

#include <cmath>

namespace sump {

namespace {

Ring ringAbout(Point2 centre, double radius) {
  constexpr int kSides = 48;
  Ring ring;
  for (int i = 0; i < kSides; ++i) {
    const double a = 2 * kPi * i / kSides;
    ring.push_back(centre + Point2{std::cos(a), std::sin(a)} * radius);
  }
  return ring;
}

/// Its sides touch the circle, which is drawn over its foot.
Ring pointer(Point2 centre, Point2 sight) {
  const Point2 u = sight * (1 / norm(sight)), across{-u.y, u.x};
  const double tip = kBubble + kPointer, touch = kBubble * kBubble / tip;
  const double half = std::sqrt(kBubble * kBubble - touch * touch);
  return {centre + u * tip, centre + u * touch + across * half, centre + u * touch - across * half};
}

} // namespace

void drawReference(Point2 centre, const std::string& view, const std::string& sheet, Point2 sight,
                   Page& page) {
  constexpr double kSheetHeight = 2.2; // mm; the number of the sheet has to stay in the circle
  const LineStyle line{Ink::Black, 0.35, {}};
  if (norm(sight) > 0) {
    page.items.push_back(
        PageShape{pointer(centre, sight), true, false, {}, FillStyle{Ink::Black, Hatch::None}});
  }
  PageShape circle{ringAbout(centre, kBubble), true, false, line,
                   FillStyle{Ink::White, Hatch::None}};
  circle.role = PageRole::Reference;
  page.items.push_back(std::move(circle));
  page.items.push_back(rule(centre - Point2{kBubble, 0}, centre + Point2{kBubble, 0}, 0.25));
  page.items.push_back(words({centre.x, centre.y - 1.2}, view, kTextHeight, true, Align::Centre));
  page.items.push_back(
      words({centre.x, centre.y + 3.3}, sheet, kSheetHeight, false, Align::Centre));
}

} // namespace sump
