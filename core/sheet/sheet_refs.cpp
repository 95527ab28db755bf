#include "core/sheet/sheet_refs.h"

#include <algorithm>
#include <variant>

namespace sump {

namespace {

// One character says what kind of mark it is, so that the text is no wider than a number.
constexpr char kPart = '\x01', kSection = '\x02', kDetail = '\x03', kEnd = '\x04';

std::string runAnchor(char kind, const Plan& plan, const Id& run) {
  int index = 0;
  for (const Run& r : plan.runs) {
    if (r.id == run) break;
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
  return runAnchor(kSection, plan, run);
}

std::string detailAnchor(const Plan& plan, const Id& run) {
  return runAnchor(kDetail, plan, run);
}

std::string sheetOf(const std::string& anchor) {
  return anchor + kEnd;
}

void resolveSheets(DraftPages& pages) {
  static constexpr char kKinds[] = {kPart, kSection, kDetail, 0};
  for (DraftPage& page : pages) {
    for (PageItem& item : page.page.items) {
      auto* text = std::get_if<PageText>(&item);
      if (text == nullptr) continue;
      for (;;) {
        const std::size_t from = text->text.find_first_of(kKinds);
        const std::size_t end = text->text.find(kEnd, from);
        if (from == std::string::npos || end == std::string::npos) break;
        const std::string anchor = text->text.substr(from, end - from);
        text->text.replace(from, end + 1 - from, numberOf(anchor, page, pages));
      }
    }
  }
}

} // namespace sump
