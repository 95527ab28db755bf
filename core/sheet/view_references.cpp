#include "core/sheet/view_references.h"

#include "core/geometry/unit.h"
#include "core/sheet/bubble.h"
#include "core/sheet/fitted_symbols.h"
#include "core/sheet/mark_pen.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/tags.h"
#include "core/study/object_names.h"

#include <algorithm>
#include <iterator>

namespace sump {

namespace {

// On the paper, mm: from what is cut to the dash, the dash, the arrow with its head.
constexpr double kAir = 1, kDash = 5, kShaft = 5, kArrowHead = 3, kHalfHead = 1;
constexpr double kCorner = 2.5; // of the heavy legs where a cut turns
const LineStyle kChain{Ink::Black, 0.25, {6, 1.2, 0.8, 1.2}};
const LineStyle kHeavy{Ink::Black, 1.0, {}};

/// An end of a cut in the drawing's metres: where it is, outward along the cut, and where it looks.
struct CutEnd {
  Point2 at, out, sight;
};

std::vector<CutEnd> endsOf(const SectionCut& cut) {
  const Polyline& line = cut.line;
  const Point2 first = unitWay(line[0], line[1]),
               last = unitWay(line[line.size() - 2], line.back());
  return {{line.front(), first * -1, {-first.y, first.x}}, {line.back(), last, {-last.y, last.x}}};
}

double metresOf(double paper, const SheetView& view) {
  return paper * view.scale / 1000;
}

Point2 dashEnd(const CutEnd& end, const SheetView& view) {
  return end.at + end.out * metresOf(kAir + kDash, view);
}

/// The whole mark with its bubble is seen.
bool isShown(const CutEnd& end, const SheetView& view) {
  const Point2 dash = dashEnd(end, view);
  const PaperBox room = view.frame.grown(-1);
  return room.holds(view.toPaper(end.at)) && room.holds(view.toPaper(dash)) &&
         room.holds(view.toPaper(dash + end.sight * metresOf(kShaft, view))) &&
         view.shows(end.at) && view.shows(dash);
}

/// The cut goes on a little past what it cuts before it turns to the next.
Polyline drawnLine(const SectionCut& cut, const SheetView& view) {
  Polyline line = cut.line;
  for (std::size_t i = 1; i + 2 < line.size(); i += 2) {
    const Point2 a = cut.line[i], b = cut.line[i + 1];
    const double past = std::min(metresOf(kAir + kCorner, view), distance(a, b) / 3);
    line[i] = a + unitWay(cut.line[i - 1], a) * past;
    line[i + 1] = b + unitWay(cut.line[i + 2], b) * past;
  }
  return line;
}

void markEnd(const CutEnd& end, const SheetView& view, MarkPen pen) {
  const auto mm = [&](double paper) { return metresOf(paper, view); };
  const Point2 from = end.at + end.out * mm(kAir), to = dashEnd(end, view);
  const Point2 foot = to - end.out * mm(kHalfHead),
               neck = foot + end.sight * mm(kShaft - kArrowHead);
  pen.beginSymbol(lerp(from, to, 0.5), 0);
  pen.path({from, to}, kHeavy);
  pen.path({foot, neck}, LineStyle{Ink::Black, 0.5, {}});
  pen.ring({foot + end.sight * mm(kShaft), neck + end.out * mm(kHalfHead),
            neck - end.out * mm(kHalfHead)},
           std::nullopt, FillStyle{Ink::Black});
}

/// Heavy where the cut goes over from one line to another.
void markCorners(const Polyline& line, const SheetView& view, MarkPen& pen) {
  for (std::size_t i = 1; i + 1 < line.size(); ++i) {
    const Point2 p = line[i], before = unitWay(p, line[i - 1]), after = unitWay(p, line[i + 1]);
    constexpr double kStraight = 0.1; // sine of a turn that is none
    if (std::abs(cross(before, after)) < kStraight && dot(before, after) < 0) continue;
    const double most = std::min(distance(p, line[i - 1]), distance(p, line[i + 1])) / 2;
    const double leg = std::min(most, metresOf(kCorner, view));
    pen.path({p + before * leg, p, p + after * leg}, kHeavy);
  }
}

PaperBox bubbleBox(Point2 centre) {
  return PaperBox{centre, centre}.grown(kBubble);
}

/// In line with the cut, or near with a leader to its dash.
std::vector<LabelCandidate> bubblePlaces(const CutEnd& end, const SheetView& view) {
  constexpr double kOff = 0.4, kReach = 45, kLeader = 8; // mm
  const Point2 dash = view.toPaper(dashEnd(end, view));
  const Point2 out{end.out.x, -end.out.y};
  std::vector<LabelCandidate> places{
      {bubbleBox(dash + out * (kBubble + kOff)), {}, 0, false, true}};
  for (LabelCandidate place : aroundPoint(dash, 2 * kBubble, 2 * kBubble, 2, kReach, kLeader)) {
    place.round = true;
    places.push_back(place);
  }
  return places;
}

SheetLabel bubbleOf(const std::string& anchor) {
  SheetLabel label{{viewOf(anchor), sheetOf(anchor)}};
  label.bubble = true;
  return label;
}

Polyline acrossVault(const Vault& vault) {
  const double x = vault.manways.empty() ? 0 : vault.manways.front().at.x;
  const double half = inMetres(vault.width) / 2;
  return {vault.frame().toSite({x, -half}), vault.frame().toSite({x, half})};
}

} // namespace

std::vector<SectionCut> vaultCuts(const SheetJob& job) {
  std::vector<SectionCut> cuts;
  SectionCut along{{}, trainAnchor()};
  for (const Vault& vault : job.plan().vaults) {
    cuts.push_back({acrossVault(vault), vaultAnchor(job.plan(), vault.id)});
    const double half = inMetres(vault.length) / 2;
    for (double x : {-half, half})
      along.line.push_back(vault.frame().toSite({x, 0}));
  }
  if (!along.line.empty()) cuts.push_back(std::move(along));
  return cuts;
}

void addCutMarks(const std::vector<SectionCut>& cuts, const SheetView& view,
                 std::vector<Mark>& marks) {
  std::vector<Mark> added;
  MarkPen pen(added, {}, Layer::Note);
  for (const SectionCut& cut : cuts) {
    const Polyline line = drawnLine(cut, view);
    pen.path(line, kChain);
    markCorners(line, view, pen);
    for (const CutEnd& end : endsOf(cut)) {
      if (isShown(end, view)) markEnd(end, view, pen);
    }
  }
  addSymbols(std::move(added), marks);
}

void labelCuts(const std::vector<SectionCut>& cuts, const SheetView& view, LabelBoard& board) {
  for (const SectionCut& cut : cuts) {
    std::vector<std::vector<LabelCandidate>> ends;
    for (const CutEnd& end : endsOf(cut)) {
      if (isShown(end, view)) ends.push_back(bubblePlaces(end, view));
    }
    const SheetLabel label = bubbleOf(cut.anchor);
    std::ranges::stable_sort(ends, {}, [&](const std::vector<LabelCandidate>& places) {
      return board.costOf(places.front());
    });
    if (ends.empty()) continue;
    board.atOneOf(label, ends.front());
    // The other end has one too where that covers nothing.
    constexpr double kFree = 15; // mm
    for (std::size_t i = 1; i < ends.size(); ++i) {
      if (board.costOf(ends[i].front()) < kFree) board.atOneOf(label, {ends[i].front()});
    }
  }
}

namespace {

/// Long lists of few columns in two halves side by side, where that much width is there.
Block abreast(const std::string& title, std::vector<Column> columns,
              std::vector<std::vector<std::string>> rows, double width) {
  constexpr double kTwoWide = 160; // mm
  constexpr std::size_t kLong = 12;
  if (width < kTwoWide || rows.size() < kLong) return table(title, columns, rows, width);
  const std::size_t half = (rows.size() + 1) / 2, wide = columns.size();
  rows.resize(2 * half, std::vector<std::string>(wide));
  std::vector<std::vector<std::string>> both;
  for (std::size_t i = 0; i < half; ++i) {
    both.push_back(rows[i]);
    std::ranges::copy(rows[half + i], std::back_inserter(both.back()));
  }
  for (std::size_t i = 0; i < wide; ++i)
    columns.push_back(columns[i]);
  return table(title, columns, both, width);
}

} // namespace

Block viewTable(const SheetJob& job, double width) {
  const Plan& plan = job.plan();
  std::vector<std::vector<std::string>> rows;
  if (!plan.vaults.empty()) rows.push_back({"All vaults", viewAndSheet(trainAnchor()), "-"});
  for (const Vault& vault : plan.vaults)
    rows.push_back({called(vault), viewAndSheet(vaultAnchor(plan, vault.id)), "-"});
  for (const EquipmentRoom& room : plan.rooms) {
    rows.push_back({called(room), viewAndSheet(elevationAnchor(plan, room.id)),
                    viewAndSheet(roomAnchor(plan, room.id))});
    if (std::ranges::any_of(room.ports, [](const Port& p) { return !isConduit(p.service); }))
      rows.push_back(
          {called(room) + ", rising pipes", viewAndSheet(riserAnchor(plan, room.id)), "-"});
  }
  const auto tags = runTags(plan);
  for (const Run& run : plan.runs) {
    rows.push_back({tags.at(run.id), viewAndSheet(sectionAnchor(plan, run.id)),
                    viewAndSheet(detailAnchor(plan, job.study(), run.id))});
  }
  const std::vector<Column> columns = {{"Of"}, {"Section or|elevation"}, {"Detail or|large plan"}};
  return abreast("SECTIONS AND DETAILS, VIEW/SHEET", columns, rows, width);
}

} // namespace sump
