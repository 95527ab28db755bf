#include "core/sheet/arrange.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

/// The enlarged view, with a wash whose left side stands so far left of the tankage's middle, on
/// a sheet on which 1:50 shows the tankage.
SheetView enlargedWith(double washLeft) {
  const PaperBox tankage{{40, 20}, {56, 28}};
  const PaperBox wash{{48 - washLeft, 23}, {49 - washLeft, 24}};
  const Extents extents{{{0, 0}, {90, 60}}, tankage, {wash}};
  const auto views = arrangeViews(extents, {{0, 0}, {660, 450}}, UnitSystem::Metric, 0);
  EXPECT_EQ(views.size(), 2u);
  return views.back();
}

TEST(ArrangeViews, ShowsWholeWhatTheFrameWouldCut) {
  const SheetView plain = enlargedWith(40), view = enlargedWith(0);
  EXPECT_EQ(plain.centre, view.centre) << "neither is cut";
  const double edge = 48 - plain.site().low.x; // of the frame, from the tankage's middle
  const SheetView moved = enlargedWith(edge + 0.5);
  EXPECT_LT(moved.centre.x, plain.centre.x);
  EXPECT_TRUE(moved.shows({48 - edge - 0.5, 23.5}));
  EXPECT_EQ(moved.scale, plain.scale);
}

} // namespace
} // namespace sump
