// The drawing itself: the samples whole and near, what is drawn over them while one works, light
// and dark, at 1x and 2x (tests/app/screen_walk.h).

#include "tests/app/screen_walk.h"

namespace sump {
namespace {

using testing::ScreenWalk;

class Drawing {
public:
  static QString name(const char* sample, const char* what) {
    return QString("drawing-%1-%2").arg(QString(sample).section('.', 0, 0), what);
  }
};

TEST_P(ScreenWalk, TheSamplesWholeAndNear) {
  for (const char* sample : {"transit-depot.sump", "boatyard-pad.sump", "ferry-quay.sump"}) {
    open(testing::samplePath(sample));
    canvas().fitAll();
    look(Drawing::name(sample, "whole"), &canvas());
    std::set<Id> vaults, rooms;
    for (const Vault& v : plan().vaults)
      vaults.insert(v.id);
    for (const EquipmentRoom& r : plan().rooms)
      rooms.insert(r.id);
    for (const auto& [what, objects] : {std::pair("vaults", vaults), std::pair("room", rooms)}) {
      canvas().lookAt(objects, std::nullopt);
      look(Drawing::name(sample, what), &canvas());
    }
  }
}

TEST_P(ScreenWalk, WhatIsDrawnOverThePlan) {
  open(testing::samplePath("transit-depot.sump"));
  canvas().lookAt({"V1", "V2"}, std::nullopt);
  canvas().zoomBy(0.6);
  canvas().select({"V1"});
  look("over-selected-vault", &canvas());
  const Point2 middle = placeOn("V1");
  dragFrom(middle, middle + Point2{1.2, 0.6});
  look("over-dragged-vault", &canvas());
  QTest::keyClick(&canvas(), Qt::Key_Escape);
  release(middle);
  canvas().select({"WW-1"});
  look("over-selected-line", &canvas());
  canvas().select({});
  window->action(ActionId::ToolMeasure)->trigger();
  click({20, 13});
  QTest::mouseMove(&canvas(), pixel({24, 17}));
  look("over-tape", &canvas());
  QTest::keyClick(&canvas(), Qt::Key_Escape);
  window->action(ActionId::ToolRun)->trigger();
  click({26.5, 12});
  QTest::mouseMove(&canvas(), pixel({26.5, 15.1}));
  click({26.5, 15.24});
  QTest::mouseMove(&canvas(), pixel({22.1, 15.24}));
  look("over-run", &canvas());
  QTest::keyClick(&canvas(), Qt::Key_Escape);
  QTest::keyClick(&canvas(), Qt::Key_Escape);
}

TEST_P(ScreenWalk, FindingsOnTheDrawing) {
  for (const char* sample : {"faulty/vault-clash.sump", "faulty/pipe-cover.sump"}) {
    open(testing::samplePath(sample));
    canvas().lookAt({"V1", "V2"}, std::nullopt);
    canvas().zoomBy(0.6);
    look(QString("findings-on-") + QString(sample).section('/', 1), &canvas());
  }
  // A change whose review has not come yet is known as such.
  Plan renamed = plan();
  renamed.project.title += " again";
  ASSERT_FALSE(document().commit("Name", renamed));
  EXPECT_TRUE(document().isReviewStale());
}

} // namespace
} // namespace sump
