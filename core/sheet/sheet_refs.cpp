#include "core/sheet/sheet_refs.h"

#include "core/sheet/typical_interconnect.h"

#include <algorithm>
#include <variant>

namespace sump {

namespace {

// One character says what kind of mark it is, so that the text is no wider than a number.
constexpr char kPart = '\x01', kSection = '\x02', kDetail = '\x03', kEnd = '\x04', kView = '\x05',
               kVault = '\x06', kRoom = '\x0e', kElevation = '\x0f', kTrain = '\x10',
               kBoth = '\x11', kPowerRoom = '\x12', kSheet = '\x13', kRisers = '\x14',
               kPanel = '\x15';

template <class Items> std::string itemAnchor(char kind, const Items& items, const Id& id) {
  int index = 0;
  for (const auto& item : items) {
    if (item.id == id) break;
    ++index;
  }
  return kind + std::string(index < 10 ? "0" : "") + std::to_string(index);
}

bool sharesKind(const DraftPage& a, const DraftPage& b) {
  return std::ranges::any_of(
      a.kinds, [&](std::size_t kind) { return std::ranges::find(b.kinds, kind) != b.kinds.end(); });
}

std::string numberOf(const std::string& anchor, const DraftPage& from, const DraftPages& pages) {
  for (const DraftPage& page : pages) {
    if (anchor.front() == kPart && !sharesKind(page, from)) continue;
    if (hasAnchor(page, anchor)) return page.page.number;
  }
  return "-";
}

/// Views are numbered in the order in which they stand on their sheet.
std::string viewNumberOn(const DraftPage& page, const std::string& anchor) {
  const auto found = std::ranges::find(page.views, anchor);
  return found == page.views.end() ? "" : std::to_string(found - page.views.begin() + 1);
}

std::string viewNumberOf(const std::string& anchor, const DraftPages& pages) {
  for (const DraftPage& page : pages) {
    if (std::string number = viewNumberOn(page, anchor); !number.empty()) return number;
  }
  return "";
}

/// What stands for a token, which is a mark with or without a character for a view before it.
std::string numberFor(const std::string& token, const DraftPage& from, const DraftPages& pages) {
  if (token.front() == kView) {
    // Of a view that goes on over several sheets each has its own number.
    const std::string own = viewNumberOn(from, token.substr(1));
    return own.empty() ? viewNumberOf(token.substr(1), pages) : own;
  }
  if (token.front() != kBoth) return numberOf(token, from, pages);
  const std::string view = viewNumberOf(token.substr(1), pages);
  return view.empty() ? "-" : view + "/" + numberOf(token.substr(1), from, pages);
}

/// With the numbers in place of all tokens.
std::string resolved(std::string text, const DraftPage& from, const DraftPages& pages) {
  static constexpr char kKinds[] = {kPart,  kSection,   kDetail, kView, kVault,
                                    kRoom,  kElevation, kTrain,  kBoth, kPowerRoom,
                                    kSheet, kRisers,    kPanel,  0};
  for (;;) {
    const std::size_t begin = text.find_first_of(kKinds), end = text.find(kEnd, begin);
    if (begin == std::string::npos || end == std::string::npos) return text;
    const std::string number = numberFor(text.substr(begin, end - begin), from, pages);
    text.replace(begin, end + 1 - begin, number);
  }
}

} // namespace

std::string drawingAnchor() {
  return "drawing";
}

bool hasAnchor(const DraftPage& page, const std::string& anchor) {
  return std::ranges::find(page.anchors, anchor) != page.anchors.end();
}

std::string partAnchor(const std::string& part) {
  return kPart + part;
}

std::string sectionAnchor(const Plan& plan, const Id& run) {
  return itemAnchor(kSection, plan.runs, run);
}

std::string detailAnchor(const Plan& plan, const Study& study, const Id& run) {
  const Run* given = plan.runs.find(run);
  if (given == nullptr || given->service != Service::Interconnect)
    return itemAnchor(kDetail, plan.runs, run);
  return itemAnchor(kDetail, plan.runs, alikeInterconnects(plan, study, run).front());
}

std::string vaultAnchor(const Plan& plan, const Id& vault) {
  return itemAnchor(kVault, plan.vaults, vault);
}

std::string roomAnchor(const Plan& plan, const Id& room) {
  return itemAnchor(kRoom, plan.rooms, room);
}

std::string elevationAnchor(const Plan& plan, const Id& room) {
  return itemAnchor(kElevation, plan.rooms, room);
}

std::string powerRoomAnchor(const Plan& plan, const Id& room) {
  return itemAnchor(kPowerRoom, plan.rooms, room);
}

std::string riserAnchor(const Plan& plan, const Id& room) {
  return itemAnchor(kRisers, plan.rooms, room);
}

std::string panelAnchor(const Plan& plan, const Id& room) {
  return itemAnchor(kPanel, plan.rooms, room);
}

std::string trainAnchor() {
  return kTrain + std::string("00"); // as wide as the others
}

std::string originAnchor() {
  return kSheet + std::string("00");
}

std::string placementAnchor() {
  return kSheet + std::string("01");
}

std::string planAnchor() {
  return kSheet + std::string("02");
}

std::string partTableAnchor() {
  return kSheet + std::string("03");
}

std::string openingAnchor() {
  return kSheet + std::string("04");
}

std::string baffleAnchor() {
  return kSheet + std::string("05");
}

std::string circuitAnchor() {
  return kSheet + std::string("06");
}

std::string viewOf(const std::string& anchor) {
  return kView + anchor + kEnd;
}

std::string viewAndSheet(const std::string& anchor) {
  return kBoth + anchor + kEnd;
}

std::string sheetOf(const std::string& anchor) {
  return anchor + kEnd;
}

void resolveSheets(DraftPages& pages) {
  for (DraftPage& page : pages) {
    for (PageItem& item : page.page.items) {
      if (auto* text = std::get_if<PageText>(&item))
        text->text = resolved(std::move(text->text), page, pages);
    }
  }
}

} // namespace sump
