#include "core/sheet/compose.h"

#include "core/sheet/border.h"
#include "core/sheet/flow.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/sheet_set.h"

#include <algorithm>
#include <cctype>
#include <map>
#include <stdexcept>

namespace sump {

namespace {

/// What may be set larger or smaller so that the sheets are well filled.
enum class Vary { Nothing, Letters, Figures };

struct Maker {
  SheetKind kind;
  const char* documentType;
  const char* scale; ///< `As shown`, `None`
  Vary vary;
  bool joins;                               ///< it goes on on the sheets of the kind before it
  void (*fill)(const SheetJob&, PageFlow&); ///< null: the cover, which needs the others' index
};

const std::vector<Maker>& makers() {
  using enum Vary;
  static const std::vector<Maker> all = {
      {{"cover", "G-0", "Cover and sheet index"}, "Cover", "As shown", Letters, false, nullptr},
      {{"coordination", "G-0", "Coordination and cautions"},
       "General",
       "None",
       Letters,
       true,
       coordinationSheet},
      {{"placement", "C-1", "Vault placement"}, "Plan", "As shown", Nothing, false, placementSheet},
      {{"excavation", "C-1", "Excavation"}, "Plan", "As shown", Nothing, false, excavationSheet},
      {{"setting-out", "C-1", "Setting-out points"},
       "Schedule",
       "None",
       Letters,
       false,
       settingOutSheet},
      {{"vault-sections", "C-3", "Vault sections"},
       "Section",
       "As shown",
       Figures,
       false,
       vaultSectionSheet},
      {{"plan", "P-1", "Reclaim tankage plan"}, "Plan", "As shown", Nothing, false, planSheet},
      {{"long-section", "P-3", "Long section of the vaults"},
       "Section",
       "As shown",
       Figures,
       false,
       trainSectionSheet},
      {{"run-sections", "P-3", "Run sections"},
       "Section",
       "As shown",
       Figures,
       true,
       runSectionSheet},
      {{"room", "P-4", "Equipment room"}, "Large scale", "As shown", Figures, false, roomSheet},
      {{"details", "P-5", "Plumbing details"}, "Detail", "As shown", Figures, false, detailSheet},
      {{"schedules", "P-6", "Plumbing schedules"},
       "Schedule",
       "None",
       Letters,
       false,
       plumbingScheduleSheet},
      {{"electrical", "E-1", "Electrical plan"},
       "Plan",
       "As shown",
       Nothing,
       false,
       electricalSheet},
      {{"electrical-schedules", "E-6", "Electrical schedules"},
       "Schedule",
       "None",
       Nothing,
       true,
       electricalScheduleSheet},
      {{"findings", "G-6", "Findings and revisions"},
       "Schedule",
       "None",
       Letters,
       false,
       findingSheet},
      {{"calculations", "G-6", "Calculation summary"},
       "Calculation",
       "None",
       Letters,
       true,
       calculationSummarySheet},
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

/// A last sheet with less on it is worth trying to save or to fill.
constexpr double kHalfEmpty = 0.5;

/// What to try for a volume, the largest first.
std::vector<SheetFit> fits(Vary vary, const PaperSize& paper) {
  if (vary == Vary::Nothing) return {{}};
  // ISO 3098-1's next size of lettering: large sheets are often printed at half their size. On
  // small paper a little less than the nominal one may save a sheet.
  constexpr double kLarge = 3.5 / kTextHeight, kSmall = 2.2 / kTextHeight;
  if (vary == Vary::Letters) {
    return isSmallPaper(paper) ? std::vector<SheetFit>{{0, 1}, {0, kSmall}}
                               : std::vector<SheetFit>{{0, kLarge}, {0, 1}};
  }
  if (isSmallPaper(paper)) return {{1, 1}, {0, 1}};
  return {{0.55, 1}, {0.25, 1}, {0, 1}};
}

/// What to try besides, where the last sheet stands half empty.
std::vector<SheetFit> otherFits(Vary vary, const PaperSize& paper) {
  if (vary == Vary::Nothing) return {};
  constexpr double kMiddle = 3.0 / kTextHeight;
  if (isSmallPaper(paper)) // no smaller letters than the least of the fits above
    return vary == Vary::Letters ? std::vector<SheetFit>{} : std::vector<SheetFit>{{0, 1, true}};
  if (vary == Vary::Letters) return {{0, kMiddle}};
  return {{0.55, 1, true}, {0.25, 1, true}, {0, 1, true}, {0.8, 1}, {-0.1, 1, true}};
}

/// The kinds from `first` on that share sheets.
DraftPages filled(const SheetJob& job, std::size_t first, const std::vector<IndexLine>& index,
                  const SheetFit& fit) {
  PageFlow flow(job, fit);
  for (std::size_t i = first; i == first || (i < makers().size() && makers()[i].joins); ++i) {
    flow.begin(i);
    if (makers()[i].fill == nullptr) {
      coverSheet(job, index, flow);
    } else {
      makers()[i].fill(job, flow);
    }
  }
  return flow.done();
}

bool endsHalfEmpty(const DraftPages& pages) {
  return pages.size() > 1 && pages.back().used < kHalfEmpty;
}

/// At the largest fit that takes the fewest sheets. Where the last of them stands half empty,
/// other ways to set them that save it or fill it; smaller ones only to save it.
DraftPages volume(const SheetJob& job, std::size_t first, const std::vector<IndexLine>& index) {
  DraftPages best;
  SheetFit chosen;
  const Vary vary = makers()[first].vary;
  for (const SheetFit& fit : fits(vary, job.paper)) {
    DraftPages pages = filled(job, first, index, fit);
    if (best.empty() || pages.size() < best.size()) {
      best = std::move(pages);
      chosen = fit;
    }
    if (best.size() <= 1) break;
  }
  for (const SheetFit& fit : otherFits(vary, job.paper)) {
    if (!endsHalfEmpty(best)) break;
    DraftPages pages = filled(job, first, index, fit);
    const bool fills = pages.size() == best.size() && pages.back().used > best.back().used &&
                       fit.figures >= chosen.figures;
    if (pages.size() >= best.size() && !fills) continue;
    best = std::move(pages);
    chosen = fit;
  }
  return best;
}

/// `, WW-1 to OF-1`; one by one where they do not stand in the plan's order.
std::string runsShown(const DraftPage& page, bool inOrder) {
  if (page.runs.empty()) return {};
  if (!inOrder) {
    std::string all;
    for (const std::string& run : page.runs)
      all += ", " + run;
    return all;
  }
  const std::string &first = page.runs.front(), &last = page.runs.back();
  return ", " + (first == last ? first : first + " to " + last);
}

/// `, part A2`
std::string partsShown(const DraftPage& page) {
  std::string text;
  for (const std::string& part : page.parts)
    text += (text.empty() ? ", part " : ", ") + part;
  return text;
}

/// `P-101`: the series of the first kind on the page and the count in it.
void nameAndNumber(DraftPages& pages) {
  std::map<std::string_view, int> count;
  const bool inOrder = std::ranges::none_of(pages, &DraftPage::filledLater);
  for (DraftPage& page : pages) {
    std::string title;
    for (std::size_t kind : page.kinds) {
      title += (title.empty() ? "" : "; ") + std::string(makers()[kind].kind.title);
      if (makers()[kind].fill == runSectionSheet) title += runsShown(page, inOrder);
    }
    page.page.title = title + partsShown(page);
    const std::string_view series = makers()[page.kinds.front()].kind.series;
    const int n = ++count[series];
    page.page.number = std::string(series) + (n < 10 ? "0" : "") + std::to_string(n);
  }
}

void append(DraftPages& pages, DraftPages more) {
  std::move(more.begin(), more.end(), std::back_inserter(pages));
}

/// A sheet that only the tables of a plan or of sections have reached is a schedule.
const char* documentType(const DraftPage& page) {
  const Maker& maker = makers()[page.kinds.front()];
  const bool drawn = hasAnchor(page, drawingAnchor());
  const bool expected = maker.fill != nullptr && std::string_view(maker.scale) != "None";
  return expected && !drawn ? "Schedule" : maker.documentType;
}

std::vector<IndexLine> indexOf(const DraftPages& pages) {
  std::vector<IndexLine> index;
  for (const DraftPage& page : pages)
    index.push_back({page.page.number, page.page.title, documentType(page)});
  return index;
}

/// The cover lists all sheets, itself among them; it is made again until its own sheets are those
/// that its index says.
DraftPages wholeSet(const SheetJob& job) {
  DraftPages others;
  for (std::size_t i = 1; i < makers().size(); ++i) {
    if (!makers()[i].joins) append(others, volume(job, i, {}));
  }
  DraftPages front{{borderedPage(job), {0}, {}}};
  constexpr int kTries = 9;
  for (int i = 0; i < kTries; ++i) {
    DraftPages pages = front;
    append(pages, others);
    nameAndNumber(pages);
    const std::vector<IndexLine> index = indexOf(pages);
    front = volume(job, 0, index);
    pages = front;
    append(pages, others);
    nameAndNumber(pages);
    if (indexOf(pages) == index) return pages;
  }
  append(front, std::move(others));
  nameAndNumber(front);
  return front;
}

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

bool chosenBy(const std::string& word, const DraftPage& page) {
  const std::string wanted = lower(word), number = lower(page.page.number);
  if (wanted == number || (wanted.size() == 1 && number.starts_with(wanted))) return true;
  return std::any_of(page.kinds.begin(), page.kinds.end(), [&](std::size_t i) {
    const SheetKind& kind = makers()[i].kind;
    return wanted == kind.key || wanted == lower(std::string(kind.series));
  });
}

bool chosen(const std::vector<std::string>& sheets, const DraftPage& page) {
  return sheets.empty() || std::any_of(sheets.begin(), sheets.end(), [&](const std::string& word) {
           return chosenBy(word, page);
         });
}

void demandKnown(const std::vector<std::string>& sheets, const DraftPages& pages) {
  for (const std::string& word : sheets) {
    const bool known = std::any_of(pages.begin(), pages.end(),
                                   [&](const DraftPage& page) { return chosenBy(word, page); }) ||
                       std::any_of(makers().begin(), makers().end(), [&](const Maker& maker) {
                         return maker.kind.key == lower(word);
                       });
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
  DraftPages set = wholeSet(job);
  demandKnown(options.sheets, set);
  resolveSheets(set);
  std::vector<Page> pages;
  for (std::size_t i = 0; i < set.size(); ++i) {
    if (!chosen(options.sheets, set[i])) continue;
    Page& page = set[i].page;
    drawTitleBlock(review.plan.project,
                   {documentType(set[i]), hasAnchor(set[i], drawingAnchor()) ? "As shown" : "None",
                    std::string(paper.name), static_cast<int>(i) + 1, static_cast<int>(set.size())},
                   page);
    pages.push_back(std::move(page));
  }
  return pages;
}

} // namespace sump
