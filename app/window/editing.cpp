#include "app/window/editing.h"

#include "app/core_text.h"

#include "core/exchange/plan_file.h"
#include "core/plan/edits_objects.h"
#include "core/plan/fragment.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QMimeData>

namespace sump {

namespace {

constexpr const char* kMedia = "application/x-sumpwright-plan";

} // namespace

Editing::Editing(Document& document, Canvas& canvas, ActionSet& actions)
    : QObject(&canvas), document_(document), canvas_(canvas) {
  join(actions);
}

void Editing::join(ActionSet& actions) {
  actions.on(ActionId::Cut, [this] { cut(); });
  actions.on(ActionId::Copy, [this] { copy(); });
  actions.on(ActionId::Paste, [this] { paste(); });
  actions.on(ActionId::PasteInPlace, [this] { pasteInPlace(); });
  actions.on(ActionId::TurnLeft, [this] { turn(degrees(90)); });
  actions.on(ActionId::TurnRight, [this] { turn(degrees(-90)); });
  actions.on(ActionId::MirrorEastWest, [this] { mirror(true); });
  actions.on(ActionId::MirrorNorthSouth, [this] { mirror(false); });
  actions.on(ActionId::AlignLeft, [this] { align(Alignment::Left); });
  actions.on(ActionId::AlignCentre, [this] { align(Alignment::Centre); });
  actions.on(ActionId::AlignRight, [this] { align(Alignment::Right); });
  actions.on(ActionId::AlignTop, [this] { align(Alignment::Top); });
  actions.on(ActionId::AlignMiddle, [this] { align(Alignment::Middle); });
  actions.on(ActionId::AlignBottom, [this] { align(Alignment::Bottom); });
  actions.on(ActionId::AlignInLine, [this] { alignWithFirstVault(false); });
  actions.on(ActionId::AlignAbreast, [this] { alignWithFirstVault(true); });
  actions.on(ActionId::SpreadEast, [this] { distribute(false); });
  actions.on(ActionId::SpreadNorth, [this] { distribute(true); });
  actions.on(ActionId::Lock, [this] { lock(true); });
  actions.on(ActionId::Unlock, [this] { lock(false); });
  actions.on(ActionId::SelectSame, [this] { selectSame(); });
}

std::set<Id> Editing::free() {
  const std::set<Id> ids = unlocked(document_.plan(), canvas_.selection());
  if (ids.empty() && !canvas_.selection().empty()) {
    emit told(tr("All that is selected is locked. Unlock it first."));
  }
  return ids;
}

void Editing::commit(const QString& step, Plan plan) {
  const std::optional<Problem> problem = document_.commit(step, std::move(plan));
  if (problem) {
    emit told(tr("Not done: %1; %2").arg(coreText(problem->what), coreText(problem->mend)));
  }
}

bool Editing::copy() const {
  if (canvas_.selection().empty()) return false;
  const std::string text = writePlanText(fragmentOf(document_.plan(), canvas_.selection()));
  auto* data = new QMimeData;
  data->setData(kMedia, QByteArray::fromStdString(text));
  QGuiApplication::clipboard()->setMimeData(data);
  return true;
}

void Editing::cut() {
  const std::set<Id> ids = free();
  if (ids.empty() || !copy()) return;
  commit(tr("Cut"), eraseObjects(document_.plan(), ids));
}

std::optional<Plan> Editing::copied() {
  const QMimeData* data = QGuiApplication::clipboard()->mimeData();
  if (data == nullptr || !data->hasFormat(kMedia)) {
    emit told(tr("There is nothing of a plan to paste. Copy objects first."));
    return std::nullopt;
  }
  try {
    return readPlanText(data->data(kMedia).toStdString(), "clipboard");
  } catch (const InputError& e) {
    emit told(tr("What was copied cannot be pasted: %1").arg(errorWords(e).simplified()));
    return std::nullopt;
  }
}

void Editing::paste(const Plan& fragment, Point2 by) {
  const Pasted result = pasted(document_.plan(), fragment, by);
  commit(tr("Paste"), result.plan);
  if (document_.plan() == result.plan) canvas_.select(result.added);
}

void Editing::paste() {
  const std::optional<Plan> fragment = copied();
  if (!fragment) return;
  const std::vector<Id> ids = allObjects(*fragment);
  const std::optional<Box> box = extentOf(*fragment, std::set<Id>(ids.begin(), ids.end()));
  if (box) paste(*fragment, canvas_.pointerPlace() - lerp(box->low, box->high, 0.5));
}

void Editing::pasteInPlace() {
  if (const std::optional<Plan> fragment = copied()) paste(*fragment, {});
}

void Editing::turn(Angle by) {
  const std::set<Id> ids = free();
  const std::optional<Box> box = extentOf(document_.plan(), ids);
  if (!box) return;
  const Point2 about = lerp(box->low, box->high, 0.5);
  commit(tr("Turn"), rotateObjects(document_.plan(), ids, about, by));
}

void Editing::mirror(bool northward) {
  const std::set<Id> ids = free();
  const std::optional<Box> box = extentOf(document_.plan(), ids);
  if (!box) return;
  const Point2 middle = lerp(box->low, box->high, 0.5);
  const Point2 along = northward ? Point2{0, 1} : Point2{1, 0};
  commit(tr("Mirror"), mirrorObjects(document_.plan(), ids, middle, middle + along));
}

void Editing::align(Alignment to) {
  commit(tr("Align"), alignObjects(document_.plan(), free(), to));
}

void Editing::alignWithFirstVault(bool abreast) {
  for (const Vault& vault : document_.plan().vaults) {
    if (!canvas_.selection().contains(vault.id)) continue;
    commit(tr("Align"), alignWithVault(document_.plan(), free(), vault.id, abreast));
    return;
  }
  emit told(tr("Select a vault and what is to be aligned with it."));
}

void Editing::distribute(bool northward) {
  commit(tr("Spread evenly"), distributeObjects(document_.plan(), free(), northward));
}

void Editing::lock(bool locked) {
  commit(locked ? tr("Lock") : tr("Unlock"),
         lockObjects(document_.plan(), canvas_.selection(), locked));
}

void Editing::selectSame() {
  const Plan& plan = document_.plan();
  const Locator locator(plan);
  std::set<QString> keys;
  for (const Id& id : canvas_.selection())
    keys.insert(shownKey(plan, locator, id));
  std::set<Id> same;
  for (const Id& id : allObjects(plan)) {
    const QString key = shownKey(plan, locator, id);
    if (keys.contains(key) && canvas_.shown().shows(key)) same.insert(id);
  }
  canvas_.select(std::move(same));
}

} // namespace sump
