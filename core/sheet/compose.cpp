#include "core/sheet/compose.h"

#include "core/sheet/border.h"
#include "core/sheet/sheet_set.h"

#include <algorithm>
#include <cctype>
#include <map>
#include <stdexcept>

namespace sump {

namespace {

struct Maker {
  SheetKind kind;
  DraftPages (*make)(const SheetJob&); ///< null: the cover, which needs the others' index
};

const std::vector<Maker>& makers() {
  static const std::vector<Maker> all = {
      {{"cover", "G-0", "Cover and sheet index"}, nullptr},
      {{"coordination", "G-0", "Coordination and cautions"}, coordinationSheet},
      {{"placement", "C-1", "Vault placement"}, placementSheet},
      {{"excavation", "C-1", "Excavation"}, excavationSheet},
      {{"vault-sections", "C-3", "Vault sections"}, vaultSectionSheet},
      {{"plan", "P-1", "Reclaim tankage plan"}, planSheet},
      {{"long-section", "P-3", "Long section through the vaults"}, trainSectionSheet},
      {{"run-sections", "P-3", "Sections of the runs"}, runSectionSheet},
      {{"room", "P-4", "Equipment room"}, roomSheet},
      {{"details", "P-5", "Plumbing details"}, detailSheet},
      {{"schedules", "P-6", "Plumbing schedules"}, plumbingScheduleSheet},
      {{"electrical", "E-1", "Electrical plan"}, electricalSheet},
      {{"electrical-schedules", "E-6", "Electrical schedules"}, electricalScheduleSheet},
      {{"findings", "G-6", "Findings and revisions"}, findingSheet},
      {{"calculations", "G-6", "Calculation summary"}, calculationSummarySheet},
  };
  return all;
}

const PaperSize& paperNamed(const std::string& key) {
  if (const PaperSize* paper = paperSize(key)) return *paper;
  std::string known;
  for (const PaperSize& size : paperSizes())
    known += (known.empty() ? "" : ", ") + std::string(size.key);
  throw std::invalid_argument("There is no paper size '" + key + "'. Use one of: " + known + ".");
}

struct NumberedPage {
  std::size_t maker = 0;
  DraftPage draft;
};

/// `P-101`: the series and the count in it.
void numberPages(std::vector<NumberedPage>& pages) {
  std::map<std::string_view, int> count;
  for (NumberedPage& page : pages) {
    const std::string_view series = makers()[page.maker].kind.series;
    const int n = ++count[series];
    page.draft.page.number = std::string(series) + (n < 10 ? "0" : "") + std::to_string(n);
  }
}

void append(std::vector<NumberedPage>& pages, std::size_t maker, DraftPages drafts) {
  for (DraftPage& draft : drafts)
    pages.push_back({maker, std::move(draft)});
}

std::vector<IndexLine> indexOf(const std::vector<NumberedPage>& pages) {
  std::vector<IndexLine> index;
  for (const NumberedPage& page : pages) {
    const Page& sheet = page.draft.page;
    index.push_back({sheet.number, sheet.title, page.draft.documentType});
  }
  return index;
}

/// The cover lists all sheets, itself among them; it is made again until its own pages are as many
/// as its index says.
std::vector<NumberedPage> wholeSet(const SheetJob& job) {
  std::vector<NumberedPage> others;
  for (std::size_t i = 0; i < makers().size(); ++i) {
    if (makers()[i].make != nullptr) append(others, i, makers()[i].make(job));
  }
  std::vector<NumberedPage> pages;
  constexpr std::size_t kMostCovers = 9;
  DraftPages cover(1);
  cover[0].page.title = "Cover and sheet index";
  cover[0].documentType = "Cover";
  for (std::size_t covers = 1; covers <= kMostCovers; ++covers) {
    pages.clear();
    cover.resize(covers, cover.front());
    append(pages, 0, cover);
    for (const NumberedPage& page : others)
      pages.push_back(page);
    numberPages(pages);
    cover = coverSheet(job, indexOf(pages));
    if (cover.size() <= covers) break;
  }
  for (std::size_t i = 0; i < cover.size(); ++i) {
    cover[i].page.number = pages[i].draft.page.number;
    pages[i].draft = cover[i];
  }
  return pages;
}

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

bool chosenBy(const std::string& word, const NumberedPage& page) {
  const SheetKind& kind = makers()[page.maker].kind;
  const std::string wanted = lower(word), number = lower(page.draft.page.number);
  if (wanted == kind.key || wanted == number || wanted == lower(std::string(kind.series))) {
    return true;
  }
  return wanted.size() == 1 && number.starts_with(wanted);
}

bool chosen(const std::vector<std::string>& sheets, const NumberedPage& page) {
  return sheets.empty() || std::any_of(sheets.begin(), sheets.end(), [&](const std::string& word) {
           return chosenBy(word, page);
         });
}

void demandKnown(const std::vector<std::string>& sheets, const std::vector<NumberedPage>& pages) {
  for (const std::string& word : sheets) {
    const bool known =
        std::any_of(pages.begin(), pages.end(),
                    [&](const NumberedPage& page) { return chosenBy(word, page); }) ||
        std::any_of(makers().begin(), makers().end(),
                    [&](const Maker& maker) { return maker.kind.key == lower(word); });
    if (known) continue;
    std::string keys;
    for (const Maker& maker : makers())
      keys += (keys.empty() ? "" : ", ") + std::string(maker.kind.key);
    throw std::invalid_argument("There is no sheet '" + word + "'. Use one of: " + keys +
                                "; a letter G, C, P or E; or a sheet's number.");
  }
}

} // namespace

const std::vector<SheetKind>& sheetKinds() {
  static const std::vector<SheetKind> kinds = [] {
    std::vector<SheetKind> list;
    for (const Maker& maker : makers())
      list.push_back(maker.kind);
    return list;
  }();
  return kinds;
}

std::vector<Page> composeSheets(const Review& review, const SheetOptions& options) {
  const PaperSize& paper = paperNamed(options.paper);
  const Catalog& catalog = options.catalog != nullptr ? *options.catalog : builtinCatalog();
  const SheetJob job{
      review, catalog, paper, options.scale, planMarks(review.plan, review.study), options.changes};
  std::vector<NumberedPage> set = wholeSet(job);
  demandKnown(options.sheets, set);
  std::vector<Page> pages;
  for (std::size_t i = 0; i < set.size(); ++i) {
    if (!chosen(options.sheets, set[i])) continue;
    DraftPage& draft = set[i].draft;
    drawTitleBlock(review.plan.project,
                   {draft.documentType, draft.scale, std::string(paper.name),
                    static_cast<int>(i) + 1, static_cast<int>(set.size())},
                   draft.page);
    pages.push_back(std::move(draft.page));
  }
  return pages;
}

} // namespace sump
