// Blocks on pages: what fits nowhere on the last page.

#include "core/sheet/flow.h"
#include "tests/sheet/small_plan.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

Block block(Point2 size, bool toScale, const std::string& anchor) {
  Block made;
  made.width = size.x;
  made.body = {PaperStrip{size.y, {}}};
  made.toScale = toScale;
  made.anchor = anchor;
  return made;
}

// Drawings are found by their numbers: a small one fills the sheet that a large one left half
// empty.
TEST(PageFlow, ADrawingFillsWhatEarlierPagesLeave) {
  const Review reviewed = review(sump::testing::smallPlan(), builtinCatalog());
  const SheetJob job{reviewed, builtinCatalog(), *paperSize("a1"), 0, {}, nullptr};
  PageFlow flow(job);
  flow.begin(1);
  const Point2 page = flow.largestFigure();
  const Point2 large{0.9 * page.x, 0.6 * page.y}, small{0.9 * page.x, 0.25 * page.y};
  flow.add(block(large, true, "first"));
  flow.add(block(large, true, "second"));
  flow.add(block(small, true, "with the second"));
  flow.add(block(small, true, "with the first"));
  flow.add(block(small, false, "a table"));
  const DraftPages pages = flow.done();
  ASSERT_EQ(pages.size(), 3u); // a table goes on where the one before it ended
  EXPECT_EQ(pages[0].views, (std::vector<std::string>{"first", "with the first"}));
  EXPECT_EQ(pages[1].views, (std::vector<std::string>{"second", "with the second"}));
  EXPECT_TRUE(pages[0].filledLater);
  EXPECT_FALSE(pages[1].filledLater);
}

// Nor does it go to a sheet of another kind.
TEST(PageFlow, KindsKeepToTheirPages) {
  const Review reviewed = review(sump::testing::smallPlan(), builtinCatalog());
  const SheetJob job{reviewed, builtinCatalog(), *paperSize("a1"), 0, {}, nullptr};
  PageFlow flow(job);
  const Point2 page = flow.largestFigure();
  const Point2 large{0.9 * page.x, 0.8 * page.y}, half{0.9 * page.x, 0.5 * page.y},
      small{0.9 * page.x, 0.12 * page.y};
  flow.begin(1);
  flow.add(block(large, true, "of one kind"));
  flow.begin(2);
  flow.add(block(large, true, "of another"));
  flow.add(block(half, true, "too large"));
  flow.add(block(half * 0.9, true, "beside none"));
  flow.add(block(small, true, "small"));
  const DraftPages pages = flow.done();
  ASSERT_EQ(pages.size(), 3u);
  EXPECT_EQ(pages[0].views, std::vector<std::string>{"of one kind"});
  EXPECT_EQ(pages[1].views, (std::vector<std::string>{"of another", "small"}));
}

} // namespace
} // namespace sump
