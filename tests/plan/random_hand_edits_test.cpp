// The edits that a hand makes by handles, at random on random plans: the plan stays a plan, or at
// worst a run is left without length, which the window then refuses.

#include "core/plan/consistency.h"
#include "core/plan/edits_objects.h"
#include "core/plan/edits_outlines.h"
#include "core/plan/edits_parts.h"
#include "core/plan/edits_rooms.h"
#include "core/plan/edits_run_corners.h"
#include "core/plan/edits_vaults.h"
#include "core/plan/ends.h"
#include "tests/support/random_plan.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

class Hand {
  int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(rng_); }
  double real(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(rng_);
  }
  Point2 near() { return {real(-6, 6), real(-6, 6)}; }
  template <class List> const auto& oneOf(const List& list) {
    return list[static_cast<std::size_t>(whole(0, static_cast<int>(list.size()) - 1))];
  }

public:
  explicit Hand(unsigned seed) : rng_(seed) {}

  Plan start() { return test::randomPlan(rng_); }

  Plan edit(const Plan& plan) {
    switch (whole(0, 3)) {
    case 0:
      return plan.vaults.empty() ? plan : inVault(plan, oneOf(plan.vaults));
    case 1:
      return plan.rooms.empty() ? plan : inRoom(plan, oneOf(plan.rooms));
    case 2:
      return plan.runs.empty() ? plan : onRun(plan, oneOf(plan.runs));
    default:
      return onOutline(plan);
    }
  }

private:
  Plan inVault(const Plan& plan, const Vault& vault) {
    Id made;
    switch (whole(0, 5)) {
    case 0:
      return addBaffle(plan, vault.id, metres(real(-1, 8)), made);
    case 1:
      if (vault.baffles.empty()) return plan;
      return moveBaffle(plan, oneOf(vault.baffles).id, metres(real(-1, 8)));
    case 2:
      return vault.baffles.empty() ? plan : eraseBaffle(plan, oneOf(vault.baffles).id);
    case 3:
      return addManway(plan, vault.id, near(), made);
    case 4:
      return vault.manways.empty() ? plan : moveManway(plan, oneOf(vault.manways).id, near());
    default:
      return vault.manways.empty() ? plan : eraseManway(plan, oneOf(vault.manways).id);
    }
  }

  Plan inRoom(const Plan& plan, const EquipmentRoom& room) {
    if (whole(0, 2) == 0 && room.door)
      return moveDoor(plan, room.id, doorNear(room, *room.door, near()));
    if (whole(0, 1) == 0 && !room.ports.empty())
      return movePort(plan, oneOf(room.ports).id, near());
    return moveRoomBox(plan, room.id, static_cast<RoomThing>(whole(0, 2)), near());
  }

  Plan onRun(const Plan& plan, const Run& run) {
    const std::optional<Polyline> line = Locator(plan).centreline(run);
    const std::optional<Station> at = line ? stationAt(*line, real(-5, 60)) : std::nullopt;
    const auto corner = static_cast<std::size_t>(whole(0, 4));
    Id made;
    switch (whole(0, 5)) {
    case 0:
      return at ? addPart(plan, run.id, PartKind::Union, {}, *at, made) : plan;
    case 1:
      return at && !run.parts.empty() ? movePart(plan, oneOf(run.parts).id, *at) : plan;
    case 2:
      return run.parts.empty() ? plan : erasePart(plan, oneOf(run.parts).id);
    case 3:
      return moveRunCorner(plan, run.id, corner, near());
    case 4:
      return at ? cornerAdded(plan, run.id, at->at + near() * 0.01, 0.1).value_or(plan) : plan;
    default:
      return eraseRunCorner(plan, run.id, corner);
    }
  }

  Plan onOutline(const Plan& plan) {
    const std::vector<Id> ids = allObjects(plan);
    const Id id = ids.empty() || whole(0, 4) == 0 ? Id() : oneOf(ids);
    const auto corner = static_cast<std::size_t>(whole(0, 6));
    switch (whole(0, 1)) {
    case 0:
      return insertCorner(plan, id, corner, near());
    default:
      return eraseCorner(plan, id, corner);
    }
  }

  std::mt19937 rng_;
};

/// Corners thrown anywhere may cross an outline or fold a run: such plans are refused, as they are
/// in the window. What may never be is an end in a chamber that is not there, or a part off its
/// line.
bool foldsOnly(const Problem& problem) {
  return problem.what.find("shorter than") != std::string::npos ||
         problem.pointer.find("utline") != std::string::npos ||
         problem.pointer.find("boundary") != std::string::npos;
}

TEST(HandEdits, LeaveAPlan) {
  int kept = 0, refused = 0;
  for (unsigned seed = 0; seed < 15; ++seed) {
    Hand hand(seed);
    Plan plan = hand.start();
    for (int i = 0; i < 150; ++i) {
      Plan next = hand.edit(plan);
      const std::vector<Problem> problems = inconsistencies(next);
      for (const Problem& p : problems) {
        ASSERT_TRUE(foldsOnly(p)) << "seed " << seed << ", edit " << i << ": " << p.pointer << " "
                                  << p.what;
      }
      ++(problems.empty() ? kept : refused);
      if (problems.empty()) plan = std::move(next);
    }
  }
  EXPECT_EQ(kept + refused, 2'250);
  EXPECT_LT(refused, 225) << "most of what a hand does is fine";
}

} // namespace
} // namespace sump
