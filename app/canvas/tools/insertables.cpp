// What InsertTool can put in.

#include "app/canvas/tools/insert_tool.h"

#include "app/core_text.h"

#include "core/plan/edits_parts.h"
#include "core/plan/edits_runs.h"
#include "core/plan/edits_vaults.h"
#include "core/plan/keys.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kDropPixels = 8;
constexpr double kManwayRadius = 0.3048; // metres: half of 24 in

/// The vault under the pointer; else, while a place in it is typed, the one that is selected.
const Vault* vaultMeant(const ToolHost& host, const InsertAsk& ask) {
  const Vault* under = vaultHolding(host.plan(), ask.pointer.site);
  if (under != nullptr || ask.typed.empty() || host.selection().size() != 1) return under;
  return host.plan().vaults.find(*host.selection().begin());
}

double insideLow(const Vault& v) {
  return -inMetres(v.length) / 2 + inMetres(v.wall);
}

/// Its middle under the pointer, or where it halves the chamber.
double baffleWanted(const ToolHost& host, const InsertAsk& ask, const Vault& vault) {
  if (const auto typed = typedValue(ask.typed, EntryKey::Distance)) return *typed;
  const double thick = inMetres(usualBaffleThickness(vault));
  const double x = vault.frame().toLocal(ask.pointer.site).x;
  const double step = fineStep(host, ask.pointer);
  const double offset = x - insideLow(vault) - thick / 2;
  for (const ChamberBox& box : chambers(vault)) {
    const double middle = (box.low.x + box.high.x) / 2;
    const bool near = std::abs(x - middle) * host.view().scale() < kDropPixels;
    if (step > 0 && near) return middle - thick / 2 - insideLow(vault);
  }
  return onFineStep(offset, step);
}

std::optional<Insertion> baffleAt(const ToolHost& host, const InsertAsk& ask, QString& why) {
  const Vault* vault = vaultMeant(host, ask);
  if (vault == nullptr) {
    why = toolText("A baffle stands in a vault: click inside one, or on its wall.");
    return std::nullopt;
  }
  Id made;
  const double wanted = baffleWanted(host, ask, *vault);
  Insertion in;
  in.plan = addBaffle(host.plan(), vault->id, metres(wanted), made);
  if (made.empty()) {
    why = toolText("This chamber is too short for a baffle.");
    return std::nullopt;
  }
  const Vault& changed = *in.plan.vaults.find(vault->id);
  const Baffle& baffle = *std::ranges::find(changed.baffles, made, &Baffle::id);
  const double near = insideLow(changed) + inMetres(baffle.offset);
  const double far = near + inMetres(baffle.thickness);
  const double half = inMetres(changed.width) / 2 - inMetres(changed.wall);
  in.ghost = changed.frame().rectangle({near, -half}, {far, half});
  in.at = changed.frame().toSite({(near + far) / 2, 0});
  in.gaps = chamberSpans(changed);
  in.made = made;
  in.shown = {vault->id};
  return in;
}

std::optional<Insertion> manwayAt(const ToolHost& host, const InsertAsk& ask, QString& why) {
  const Vault* vault = vaultMeant(host, ask);
  if (vault == nullptr) {
    why = toolText("A manway is an opening in a vault's lid: click inside a vault.");
    return std::nullopt;
  }
  const Frame frame = vault->frame();
  // Its chambers' centres are among what catches.
  Point2 local = frame.toLocal(aim(host, ask.pointer).at);
  local.x = typedValue(ask.typed, EntryKey::Along).value_or(local.x);
  local.y = typedValue(ask.typed, EntryKey::Across).value_or(local.y);
  Id made;
  Insertion in;
  in.plan = addManway(host.plan(), vault->id, local, made);
  const Vault& changed = *in.plan.vaults.find(vault->id);
  const Point2 at = changed.manways.back().at;
  in.at = frame.toSite(at);
  constexpr int kSides = 24;
  for (int i = 0; i < kSides; ++i) {
    const double a = 2 * kPi * i / kSides;
    in.ghost.push_back(in.at + Point2{kManwayRadius * std::cos(a), kManwayRadius * std::sin(a)});
  }
  const double low = insideLow(*vault), half = inMetres(vault->width) / 2 - inMetres(vault->wall);
  in.gaps = {{frame.toSite({low, at.y}), in.at}, {frame.toSite({at.x, -half}), in.at}};
  in.made = made;
  in.shown = {vault->id};
  return in;
}

/// The place on the run's line that is meant, with the sizes to the ends of its leg.
std::optional<Station> stationMeant(const ToolHost& host, const InsertAsk& ask, const Run& run,
                                    Insertion& in) {
  const std::optional<Polyline> line = Locator(host.plan()).centreline(run);
  std::optional<Station> at = line ? stationNear(*line, ask.pointer.site) : std::nullopt;
  if (!at) return std::nullopt;
  const auto typed = typedValue(ask.typed, EntryKey::Distance);
  at = stationAt(*line, typed ? *typed : onFineStep(at->run, fineStep(host, ask.pointer)));
  const auto leg = static_cast<std::size_t>(at->leg);
  const Point2 from = (*line)[leg], to = (*line)[leg + 1];
  in.at = at->at;
  in.gaps = {{from, at->at}, {at->at, to}};
  // A short stroke across the line.
  const Point2 u = (to - from) * (8 / host.view().scale() / distance(from, to));
  in.ghost = {at->at + Point2{-u.y, u.x}, at->at - Point2{-u.y, u.x}};
  return at;
}

/// The next smaller size that the pipe comes in; its own where there is none.
std::string smallerSize(const Catalog& catalog, const Run& run) {
  const PipeProduct* pipe = catalog.pipe(run.pipe);
  std::string before = run.size;
  for (std::size_t i = 0; pipe != nullptr && i < pipe->sizes.size(); ++i) {
    if (pipe->sizes[i].nominal == run.size) return before;
    before = pipe->sizes[i].nominal;
  }
  return run.size;
}

QString partName(const Catalog& catalog, PartKind kind) {
  if (const PartProduct* part = catalog.part(key(kind))) return coreText(part->name);
  return coreWord(key(kind));
}

std::optional<Insertion> partAt(const ToolHost& host, const InsertAsk& ask, QString& why) {
  const Run* run = runMeant(host, ask.pointer, !ask.typed.empty());
  if (run == nullptr) {
    why = toolText("A part is set on a line: click on a pipe or conduit.");
    return std::nullopt;
  }
  const PartKind kind = kPartKeys[static_cast<std::size_t>(ask.kind)].first;
  if (isConduit(run->service) != (kind == PartKind::PullBox)) {
    why = isConduit(run->service) ? toolText("Of these only a pull box is set on a conduit.")
                                  : toolText("A pull box is set on a conduit.");
    return std::nullopt;
  }
  Insertion in;
  const std::optional<Station> at = stationMeant(host, ask, *run, in);
  if (!at) {
    why = toolText("This line has no length in plan to set a part on.");
    return std::nullopt;
  }
  const std::string toSize = kind == PartKind::Reducer ? smallerSize(host.catalog(), *run) : "";
  Id made;
  in.plan = addPart(host.plan(), run->id, kind, toSize, *at, made);
  in.made = made;
  in.tag = partName(host.catalog(), kind);
  in.shown = {run->id};
  return in;
}

std::optional<Insertion> cutAt(const ToolHost& host, const InsertAsk& ask, QString& why) {
  const Run* run = runMeant(host, ask.pointer, !ask.typed.empty());
  if (run == nullptr) {
    why = toolText("Click on the line that is to be cut.");
    return std::nullopt;
  }
  Insertion in;
  const std::optional<Station> at = stationMeant(host, ask, *run, in);
  if (!at) {
    why = toolText("This line has no length in plan to be cut.");
    return std::nullopt;
  }
  Id made;
  in.plan = splitRun(host.plan(), run->id, at->leg, at->along,
                     invertOn(host, run->id, at->leg, at->along), made);
  in.tag = toolText("cut");
  in.shown = {run->id, made};
  return in;
}

} // namespace

const Run* runMeant(const ToolHost& host, const Pointer& pointer, bool typed) {
  const Plan& plan = host.plan();
  if (host.scene() != nullptr) {
    const double reach = 1.5 * kReachPixels / host.view().scale();
    const Run* under = plan.runs.find(host.scene()->objectAt(pointer.site, reach));
    if (under != nullptr) return under;
  }
  const bool one = typed && host.selection().size() == 1;
  return one ? plan.runs.find(*host.selection().begin()) : nullptr;
}

std::optional<Length> invertOn(const ToolHost& host, const Id& run, int leg, double along) {
  const RunStudy* study = host.scene() != nullptr ? host.scene()->study().run(run) : nullptr;
  const auto i = static_cast<std::size_t>(leg);
  if (study == nullptr || !study->resolved || i + 1 >= study->points.size()) return std::nullopt;
  return metres(lerp(study->points[i].at, study->points[i + 1].at, along).z);
}

Insertable insertableBaffle() {
  Insertable what;
  what.step = toolText("Place baffle");
  what.hint = toolText("Click in a vault or on its wall: a baffle crosses it there. "
                       "Drag one that is there along; its interconnect follows. Digits type how "
                       "far it is from the inlet end. Alt: no catching. Esc ends it.");
  what.drags = HandleKind::Baffle;
  what.fields = pullFields({}, {HandleKind::Baffle, {}, {}, 0, {}, {}});
  what.at = baffleAt;
  return what;
}

Insertable insertableManway() {
  Insertable what;
  what.step = toolText("Place manway");
  what.hint =
      toolText("Click in a vault: a 24 in opening, caught by the middle of a chamber. Drag "
               "one that is there. Digits type where it is from the vault's middle. Alt: no "
               "catching. Esc ends it.");
  what.drags = HandleKind::Manway;
  what.fields = pullFields({}, {HandleKind::Manway, {}, {}, 0, {}, {}});
  what.at = manwayAt;
  return what;
}

Insertable insertablePart(const ToolHost& host) {
  Insertable what;
  what.step = toolText("Place part");
  what.hint = toolText("Choose the part and click on a line to set it there. Drag one that is "
                       "there along. Digits type how far it is from the line's start. Alt: any "
                       "place. Esc ends it.");
  what.drags = HandleKind::Part;
  what.fields = pullFields({}, {HandleKind::Part, {}, {}, 0, {}, {}});
  what.kindLabel = toolText("Part");
  what.kindTip = toolText("What is set on the line at the next click");
  for (const auto& [kind, word] : kPartKeys)
    what.kinds << partName(host.catalog(), kind);
  what.at = partAt;
  return what;
}

Insertable insertableCut() {
  Insertable what;
  what.step = toolText("Cut line");
  what.hint = toolText("Click on a line to cut it in two there; both ends stay at that place and "
                       "level. Digits type how far that is from its start. Alt: any place. Esc "
                       "ends it.");
  what.fields = pullFields({}, {HandleKind::Part, {}, {}, 0, {}, {}});
  what.at = cutAt;
  return what;
}

} // namespace sump
