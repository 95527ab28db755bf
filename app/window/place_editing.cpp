#include "app/window/place_editing.h"

#include "app/core_text.h"

#include "app/canvas/tools/pull.h"
#include "app/window/context_menu.h"
#include "app/window/menu_letters.h"

#include "core/plan/edits_group.h"
#include "core/plan/edits_run_corners.h"
#include "core/plan/edits_runs.h"

#include <QMenu>
#include <QTimer>

namespace sump {

namespace {

constexpr double kHerePixels = 12;
/// Ends this close are meant to meet: about a foot.
constexpr double kMeet = 0.31; // metres

} // namespace

PlaceEditing::PlaceEditing(Document& document, Canvas& canvas, ActionSet& actions)
    : QObject(&canvas), document_(document), canvas_(canvas), actions_(actions) {
  actions.on(ActionId::CornerHere, [this] { cornerHere(); });
  actions.on(ActionId::RemoveHere, [this] { removeHere(); });
  actions.on(ActionId::CutHere, [this] { insertHere(insertableCut(), ActionId::ToolCut); });
  actions.on(ActionId::BaffleHere,
             [this] { insertHere(insertableBaffle(), ActionId::ToolBaffle); });
  actions.on(ActionId::ManwayHere,
             [this] { insertHere(insertableManway(), ActionId::ToolManway); });
  actions.on(ActionId::PortHere, [this] { insertHere(insertablePort()); });
  actions.on(ActionId::DoorHere, [this] { insertHere(insertableDoor()); });
  actions.on(ActionId::JoinLines, [this] { joinLines(); });
  actions.on(ActionId::ReverseLines, [this] { reverseLines(); });
}

void PlaceEditing::openMenu(const QPoint& globalPosition) {
  const Point2 at = canvas_.view().toSite(canvas_.mapFromGlobal(globalPosition));
  const Id object = objectAt(at);
  if (!canvas_.selection().contains(object))
    canvas_.select(object.empty() ? std::set<Id>() : std::set<Id>{object});
  auto* menu = new QMenu(&canvas_);
  menu->setObjectName("context-menu");
  menu->setAttribute(Qt::WA_DeleteOnClose);
  const Pointed what = pointedAt(document_.plan(), canvas_.selection(), object, partAt(at));
  for (const std::optional<ActionId>& id : menuFor(what)) {
    if (id) {
      menu->addAction(actions_.at(*id));
    } else {
      menu->addSeparator();
    }
  }
  giveLetters(*menu);
  menuPlace_ = at;
  // The chosen command runs after the menu has gone, and still means its place.
  connect(menu, &QMenu::aboutToHide, this,
          [this] { QTimer::singleShot(0, this, [this] { menuPlace_.reset(); }); });
  menu->popup(globalPosition);
}

std::optional<Point2> PlaceEditing::place() const {
  if (menuPlace_) return menuPlace_;
  const QPoint at = canvas_.mapFromGlobal(QCursor::pos());
  if (!canvas_.rect().contains(at)) return std::nullopt;
  return canvas_.view().toSite(at);
}

Id PlaceEditing::objectAt(Point2 place) const {
  if (canvas_.scene() == nullptr) return {};
  return canvas_.scene()->objectAt(place, kReachPixels / canvas_.view().scale());
}

std::optional<Handle> PlaceEditing::partAt(Point2 place) const {
  // As if there were room for all of them: this is asked at one place only.
  constexpr double kRoomy = 1e6;
  std::vector<Handle> parts;
  for (const Handle& h : handlesOf(document_.plan(), canvas_.selection(), kRoomy)) {
    if (withoutHandle(document_.plan(), h)) parts.push_back(h);
  }
  const Handle* found = handleAt(parts, place, kReachPixels / canvas_.view().scale());
  return found != nullptr ? std::optional(*found) : std::nullopt;
}

void PlaceEditing::commit(const QString& step, Plan plan) {
  const std::optional<Problem> problem = document_.commit(step, std::move(plan));
  if (!problem) return;
  emit told(tr("Not done: %1; %2").arg(coreText(problem->what), coreText(problem->mend)));
}

void PlaceEditing::cornerHere() {
  const std::optional<Point2> at = place();
  if (!at) return emit told(tr("Point at a line or an edge and use the key, or click it twice."));
  const double reach = kHerePixels / canvas_.view().scale();
  const Id id = objectAt(*at);
  std::optional<Plan> next;
  if (!isLocked(document_.plan(), id)) next = cornerAdded(document_.plan(), id, *at, reach);
  if (!next) return emit told(tr("There is no line or edge here to put a corner into."));
  commit(tr("Add corner"), std::move(*next));
}

void PlaceEditing::removeHere() {
  const std::optional<Point2> at = place();
  const std::optional<Handle> part = at ? partAt(*at) : std::nullopt;
  if (!part) {
    return emit told(tr(
        "Select what it belongs to and point at the baffle, manway, part, port, door or corner."));
  }
  const std::optional<Plan> without = withoutHandle(document_.plan(), *part);
  if (*without == document_.plan())
    return emit told(tr("An outline has three corners at least, a path two ends."));
  commit(tr("Delete part"), *without);
}

void PlaceEditing::insertHere(const Insertable& what, std::optional<ActionId> tool) {
  const std::optional<Point2> at = place();
  if (!at && tool) return emit toolWanted(*tool);
  if (!at) return emit told(tr("Right-click the place on the drawing and choose it there."));
  const Pointer pointer{canvas_.view().toScreen(*at), *at, Qt::NoModifier};
  QString why;
  const std::optional<Insertion> made = what.at(canvas_, {pointer, {}, 0}, why);
  if (!made) return emit told(why);
  commit(what.step, made->plan);
  if (document_.plan() == made->plan) canvas_.select(made->shown);
}

std::vector<Id> PlaceEditing::selectedLines() const {
  std::vector<Id> ids;
  for (const Run& run : document_.plan().runs) {
    if (canvas_.selection().contains(run.id) && !isLocked(document_.plan(), run.id))
      ids.push_back(run.id);
  }
  return ids;
}

void PlaceEditing::joinLines() {
  const std::vector<Id> ids = selectedLines();
  if (ids.size() != 2) return emit told(tr("Select the two lines that are to be one."));
  const std::optional<Plan> next = joinRuns(document_.plan(), ids[0], ids[1], kMeet);
  if (!next) {
    return emit told(tr("They are not joined: their free ends must meet within a foot, and both "
                        "must carry the same in the same pipe and size."));
  }
  commit(tr("Join lines"), *next);
  canvas_.select({ids[0]});
}

void PlaceEditing::reverseLines() {
  const std::vector<Id> ids = selectedLines();
  if (ids.empty()) return emit told(tr("Select the lines that are to run the other way."));
  Plan next = document_.plan();
  for (const Id& id : ids)
    next = reverseRun(next, id);
  commit(tr("Reverse lines"), std::move(next));
}

} // namespace sump
