#pragma once
// The drawing of one review, indexed by place: what to paint in a view, and what lies under the
// pointer. Immutable; a new review makes a new scene.

#include "app/canvas/shown.h"
#include "app/window/reviewer.h"
#include "core/geometry/box_index.h"
#include "core/plan/ends.h"

#include <optional>
#include <set>

namespace sump {

class Scene {
public:
  explicit Scene(ReviewedPtr reviewed);

  const Reviewed& reviewed() const { return *reviewed_; }
  const Plan& plan() const { return reviewed_->review.plan; }
  const Study& study() const { return reviewed_->review.study; }
  const Locator& locator() const { return locator_; }
  const std::vector<Mark>& marks() const { return reviewed_->marks; }
  /// The object of its own that a mark belongs to: a baffle's mark belongs to its vault.
  const Id& owner(std::size_t mark) const { return owners_[mark]; }

  /// Leaves out what is not to be shown, from painting and from picking.
  void show(const Shown& shown);
  /// False for what was left out.
  bool shows(const Id& id) const { return shown_.shows(plan(), locator_, id); }
  bool showsFindings() const { return shown_.shows("findings"); }

  /// Indices of the shown marks that touch the box, in drawing order.
  std::vector<std::size_t> visible(const Box& box) const;
  /// The topmost object within `reach` metres of a point; lines win over the areas that they lie
  /// on. Empty when there is none.
  Id objectAt(Point2 at, double reach) const;
  /// Objects wholly inside the box, or with `touching` also those that only reach into it.
  std::vector<Id> objectsIn(const Box& box, bool touching) const;
  /// Of all marks of these objects; of everything when `ids` is empty. Nothing for no marks.
  std::optional<Box> bounds(const std::set<Id>& ids) const;

private:
  Id ownerOf(const Id& object) const;
  /// Site pictures are no marks; a locked one lies there like paper.
  Id pictureAt(Point2 at) const;

  ReviewedPtr reviewed_;
  Locator locator_;
  std::vector<Id> owners_;
  std::vector<Box> boxes_;
  BoxIndex index_;
  Shown shown_;
  std::vector<bool> hidden_; ///< by mark; empty when everything shows
};

/// The smallest box around a mark, circles included.
Box markBox(const Mark& mark);
/// The object that the id is a part of (a room for its port), or the id itself.
Id ownerId(const Plan& plan, const ObjectPlace& place, const Id& id);

} // namespace sump
