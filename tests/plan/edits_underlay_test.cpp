// Fitting a site picture by two places and their distance.

#include "core/plan/edits_underlay.h"

#include "core/geometry/frame.h"

#include <gtest/gtest.h>

namespace sump {

namespace {

Plan withPicture(Angle angle) {
  Underlay u;
  u.id = "UL-1";
  u.file = "site.png";
  u.at = {10, 20};
  u.angle = angle;
  u.width = metres(8);
  u.height = metres(6);
  Plan plan;
  plan.underlays.append(u);
  return plan;
}

Point2 onPicture(const Underlay& u, double across, double down) {
  return Frame{u.at, u.angle}.toSite({across * inMetres(u.width), -down * inMetres(u.height)});
}

} // namespace

TEST(ScaleUnderlay, BringsTwoPlacesToTheTypedDistance) {
  for (double turned : {0.0, 33.0}) {
    const Plan before = withPicture(degrees(turned));
    const Point2 a = onPicture(before.underlays[0], 0.2, 0.3);
    const Point2 b = onPicture(before.underlays[0], 0.9, 0.6);
    const Plan after = scaleUnderlay(before, "UL-1", a, b, metres(40));
    const Underlay& u = after.underlays[0];
    EXPECT_NEAR(distance(onPicture(u, 0.2, 0.3), a), 0, 1e-9) << "the first place stays";
    EXPECT_NEAR(distance(onPicture(u, 0.9, 0.6), a), 40, 1e-9);
    EXPECT_NEAR((u.width / u.height).value(), 8.0 / 6, 1e-12);
    EXPECT_EQ(u.angle, degrees(turned));
  }
}

TEST(ScaleUnderlay, WithNothingToMeasureChangesNothing) {
  const Plan plan = withPicture({});
  EXPECT_EQ(scaleUnderlay(plan, "UL-1", {1, 1}, {1, 1}, metres(3)), plan);
  EXPECT_EQ(scaleUnderlay(plan, "UL-1", {1, 1}, {2, 1}, metres(0)), plan);
  EXPECT_EQ(scaleUnderlay(plan, "UL-9", {1, 1}, {2, 1}, metres(3)), plan);
}

} // namespace sump
