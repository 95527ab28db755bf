// Ports and the door of an equipment room, put in and taken out on the drawing.

#include "core/plan/edits_rooms.h"
#include "tests/app/window_fixture.h"

#include <QContextMenuEvent>
#include <QMenu>

namespace sump {
namespace {

class RoomThings : public testing::WindowTest {
protected:
  void SetUp() override {
    WindowTest::SetUp();
    if (HasFatalFailure()) return;
    open(testing::samplePath("transit-depot.sump"));
    canvas().lookAt({"ER-1"}, std::nullopt);
    settle();
  }
  const EquipmentRoom& room() { return *plan().rooms.find("ER-1"); }
  Point2 inRoom(Point2 local) { return room().frame().toSite(local); }
  /// Opens the context menu at the place and clicks this action in it.
  bool choose(Point2 local, ActionId id) {
    const QPoint where = pixel(inRoom(local));
    QContextMenuEvent event(QContextMenuEvent::Mouse, where, canvas().mapToGlobal(where));
    QApplication::sendEvent(&canvas(), &event);
    auto* menu = canvas().findChild<QMenu*>("context-menu");
    if (menu == nullptr || !menu->actions().contains(window->action(id))) return false;
    QTest::mouseClick(menu, Qt::LeftButton, Qt::NoModifier,
                      menu->actionGeometry(window->action(id)).center());
    QCoreApplication::processEvents();
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    settle();
    return true;
  }
};

TEST_F(RoomThings, APortIsPutWhereThePointerIs) {
  const std::size_t before = room().ports.size();
  const Point2 place{inMetres(room().length) * 0.6, inMetres(room().width) * 0.7};
  ASSERT_TRUE(choose(place, ActionId::PortHere));
  ASSERT_EQ(room().ports.size(), before + 1);
  EXPECT_LT(distance(room().ports.back().at, place), 1.5 / canvas().view().scale());
  EXPECT_EQ(canvas().selection(), std::set<Id>{"ER-1"});
  EXPECT_EQ(document().undoStep(), "Place port");
  // On that port: out with it.
  ASSERT_TRUE(choose(place, ActionId::RemoveHere));
  EXPECT_EQ(room().ports.size(), before);
  document().undo();
  document().undo();
  EXPECT_EQ(room().ports.size(), before);
}

TEST_F(RoomThings, APortThatALineHangsOnStays) {
  const std::size_t before = room().ports.size();
  const Point2 place = room().ports.front().at;
  canvas().select({"ER-1"});
  ASSERT_TRUE(choose(place, ActionId::RemoveHere));
  EXPECT_EQ(room().ports.size(), before);
}

TEST_F(RoomThings, TheDoorGoesIntoTheNearestWall) {
  const double length = inMetres(room().length), width = inMetres(room().width);
  ASSERT_TRUE(choose({length * 0.5, width * 0.93}, ActionId::DoorHere));
  ASSERT_TRUE(room().door);
  EXPECT_EQ(room().door->side, Side::North);
  const auto [from, to] = doorEnds(room(), *room().door);
  EXPECT_NEAR(lerp(from, to, 0.5).x, length * 0.5, 1.5 / canvas().view().scale());
  EXPECT_EQ(document().undoStep(), "Place door");
}

TEST_F(RoomThings, ARoomWithoutDoorGetsTheUsualOne) {
  ASSERT_FALSE(document().commit("No door", eraseDoor(plan(), "ER-1")));
  settle();
  ASSERT_TRUE(
      choose({inMetres(room().length) * 0.96, inMetres(room().width) * 0.75}, ActionId::DoorHere));
  ASSERT_TRUE(room().door);
  EXPECT_EQ(room().door->side, Side::East);
  EXPECT_NEAR(inMetres(room().door->width), 0.9144, 1e-9); // 3 ft
}

TEST_F(RoomThings, NewPortsServeWhatHasNone) {
  Plan empty = plan();
  EquipmentRoom bare = room();
  bare.id = "ER-9";
  bare.ports.clear();
  empty.rooms.put(bare);
  Id first, second;
  const Plan two = addPort(addPort(empty, "ER-9", {1, 1}, first), "ER-9", {1, 99}, second);
  const EquipmentRoom& made = *two.rooms.find("ER-9");
  ASSERT_EQ(made.ports.size(), 2u);
  EXPECT_NE(first, second);
  EXPECT_EQ(made.ports[0].service, Service::Suction);
  EXPECT_EQ(made.ports[1].service, Service::SpareSuction);
  EXPECT_NEAR(made.ports[1].at.y, inMetres(bare.width), 1e-9) << "held within the walls";
}

} // namespace
} // namespace sump
