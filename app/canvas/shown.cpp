#include "app/canvas/shown.h"

#include "app/core_text.h"

#include <QCoreApplication>

namespace sump {

namespace {

QString shownText(const char* source) {
  return QCoreApplication::translate("Shown", source);
}

QString serviceKey(Service service) {
  const std::string_view key = facts(service).key;
  return "service/" + QString::fromUtf8(key.data(), static_cast<qsizetype>(key.size()));
}

const char* kindKey(ObjectKind kind) {
  switch (kind) {
  case ObjectKind::Building:
    return "kind/building";
  case ObjectKind::Pavement:
    return "kind/paving";
  case ObjectKind::Utility:
    return "kind/existing-line";
  case ObjectKind::Spot:
    return "kind/spot-elevation";
  case ObjectKind::Well:
    return "kind/well";
  case ObjectKind::Basin:
    return "kind/drain";
  case ObjectKind::Sewer:
    return "kind/sewer";
  case ObjectKind::Wash:
    return "kind/wash";
  case ObjectKind::Room:
  case ObjectKind::Port:
    return "kind/room";
  case ObjectKind::Vault:
  case ObjectKind::Baffle:
  case ObjectKind::Manway:
    return "kind/vault";
  case ObjectKind::Note:
    return "kind/note";
  case ObjectKind::Underlay:
    return "kind/picture";
  case ObjectKind::Run:
  case ObjectKind::Part:
    break;
  }
  return "";
}

ShownEntry kind(ObjectKind kind, const char* title) {
  return {kindKey(kind), shownText(title)};
}

ShownTrade services(const char* title, std::string_view trade) {
  ShownTrade group{shownText(title), {}};
  for (const ServiceFacts& f : serviceTable()) {
    if (f.trade != trade) continue;
    group.entries.push_back({serviceKey(f.service), coreText(f.name)});
  }
  return group;
}

} // namespace

void Shown::set(const QString& key, bool shown) {
  if (shown) {
    hidden_.erase(key);
  } else {
    hidden_.insert(key);
  }
}

bool Shown::shows(const Plan& plan, const Locator& locator, const Id& id) const {
  return everything() || shows(shownKey(plan, locator, id));
}

QString shownKey(const Plan& plan, const Locator& locator, const Id& id) {
  const std::optional<ObjectPlace> place = locator.find(id);
  if (!place) return {};
  const bool run = place->kind == ObjectKind::Run || place->kind == ObjectKind::Part;
  return run ? serviceKey(plan.runs[place->index].service) : QString(kindKey(place->kind));
}

std::vector<ShownTrade> shownTrades() {
  return {
      {shownText("Site as it is"),
       {kind(ObjectKind::Underlay, QT_TRANSLATE_NOOP("Shown", "Site pictures")),
        kind(ObjectKind::Building, QT_TRANSLATE_NOOP("Shown", "Buildings")),
        kind(ObjectKind::Pavement, QT_TRANSLATE_NOOP("Shown", "Paving")),
        kind(ObjectKind::Utility, QT_TRANSLATE_NOOP("Shown", "Existing lines")),
        kind(ObjectKind::Spot, QT_TRANSLATE_NOOP("Shown", "Spot elevations")),
        kind(ObjectKind::Well, QT_TRANSLATE_NOOP("Shown", "Wells"))}},
      {shownText("Concrete and drains"),
       {kind(ObjectKind::Vault, QT_TRANSLATE_NOOP("Shown", "Vaults")),
        kind(ObjectKind::Room, QT_TRANSLATE_NOOP("Shown", "Equipment room")),
        kind(ObjectKind::Basin, QT_TRANSLATE_NOOP("Shown", "Drains")),
        kind(ObjectKind::Sewer, QT_TRANSLATE_NOOP("Shown", "Sewer connection")),
        kind(ObjectKind::Wash, QT_TRANSLATE_NOOP("Shown", "Wash equipment"))}},
      services(QT_TRANSLATE_NOOP("Shown", "Plumbing"), "plumbing"),
      services(QT_TRANSLATE_NOOP("Shown", "Electrical"), "electrical"),
      {shownText("On the drawing"),
       {kind(ObjectKind::Note, QT_TRANSLATE_NOOP("Shown", "Dimension notes")),
        {"findings", shownText(QT_TRANSLATE_NOOP("Shown", "Marks of what is wrong"))}}},
  };
}

} // namespace sump
