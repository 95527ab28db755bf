#include "core/sheet/border.h"

#include <algorithm>

namespace sump {

namespace {

// ISO 5457: 20 mm filing margin on the left, 10 mm elsewhere; grid fields 50 mm long counted from
// the centre marks; a 5 mm reference border.
constexpr double kFiling = 20, kMargin = 10, kField = 50, kReference = 5;

/// I and O are not used, so that they are not read as numbers.
std::string rowLetter(int i) {
  static constexpr std::string_view kLetters = "ABCDEFGHJKLMNPQRSTUVWXYZ";
  return std::string(1, kLetters[static_cast<std::size_t>(i) % kLetters.size()]);
}

/// Field edges between low and high, 50 mm apart and symmetrical about `centre`; a rest shorter
/// than half a field joins its neighbour.
std::vector<double> fieldEdges(double low, double high, double centre) {
  std::vector<double> edges{low};
  const double first = centre - kField * std::floor((centre - low - kField / 2) / kField);
  for (double at = first; at < high - kField / 2 + 1e-9; at += kField)
    edges.push_back(at);
  edges.push_back(high);
  return edges;
}

void drawFields(const PaperBox& in, const std::vector<double>& edges, bool across, Page& page) {
  const auto at = [&](double along, double off) {
    return across ? Point2{along, off} : Point2{off, along};
  };
  const double first = across ? in.low.y : in.low.x, second = across ? in.high.y : in.high.x;
  for (std::size_t i = 0; i + 1 < edges.size(); ++i) {
    if (i > 0) {
      page.items.push_back(rule(at(edges[i], first - kReference), at(edges[i], first), 0.35));
      page.items.push_back(rule(at(edges[i], second), at(edges[i], second + kReference), 0.35));
    }
    const double middle = (edges[i] + edges[i + 1]) / 2;
    const std::string name = across ? std::to_string(i + 1) : rowLetter(static_cast<int>(i));
    for (double off : {first - kReference / 2, second + kReference / 2}) {
      const Point2 centre = at(middle, off);
      page.items.push_back(
          words({centre.x, centre.y + 1.25}, name, kTextHeight, false, Align::Centre));
    }
  }
}

/// The text at `height`, smaller where it must be, cut with dots where even that is too wide.
PageText fitted(Point2 at, std::string text, double height, bool bold, double width) {
  while (height > kTextHeight && textWidth(text, height, bold) > width)
    height = std::max(kTextHeight, height - 0.25);
  if (textWidth(text, height, bold) > width) {
    text = wrapped(text, width - textWidth("...", height, bold), height, bold).front() + "...";
  }
  return words(at, std::move(text), height, bold);
}

struct Field {
  double width;
  const char* caption;
  std::string value;
  double size = 3.5;
  bool bold = false;
};

/// On one line, or where even the smallest letters are too long for it, on two.
void drawValue(Point2 at, const Field& field, Page& page) {
  constexpr double kPitch = 3.55, kLower = 0.5; // mm: two lines under the caption
  const double width = field.width - 2.4;
  std::string last = field.value;
  double height = field.size;
  if (textWidth(last, kTextHeight, field.bold) > width && height <= 3.5) {
    height = kTextHeight;
    at.y += kLower;
    const std::string first = wrapped(last, width, height, field.bold).front();
    page.items.push_back(words({at.x, at.y - kPitch}, first, height, field.bold));
    last.erase(0, std::min(last.size(), first.size() + 1));
  }
  if (!last.empty()) page.items.push_back(fitted(at, last, height, field.bold, width));
}

void drawFieldRow(Point2 at, double height, const std::vector<Field>& fields, Page& page) {
  for (const Field& field : fields) {
    const PaperBox box{at, {at.x + field.width, at.y + height}};
    page.items.push_back(PageShape{box.ring(), true, false, LineStyle{Ink::Black, 0.25, {}}, {}});
    PageText caption = words({at.x + 1.2, at.y + 3.5}, field.caption);
    caption.ink = Ink::Grey;
    page.items.push_back(caption);
    drawValue({at.x + 1.2, at.y + height - 1.6}, field, page);
    at.x += field.width;
  }
}

} // namespace

PaperBox drawingSpace(const Page& page) {
  return {{kFiling, kMargin}, {page.width - kMargin, page.height - kMargin}};
}

bool hasFootTitle(const Page& page) {
  constexpr double kLow = 320; // mm: a block 87 mm high leaves too little of a lower sheet
  return page.height < kLow && page.width > page.height;
}

PaperBox titleBox(const Page& page) {
  const PaperBox space = drawingSpace(page);
  if (hasFootTitle(page)) return {{space.low.x, space.high.y - kFootTitleHeight}, space.high};
  // An upright page is hardly wider than the block, which then takes all its width.
  const double width = page.height > page.width ? space.width() : kTitleWidth;
  return {{space.high.x - width, space.high.y - kTitleHeight}, space.high};
}

void drawFrame(Page& page) {
  page.items.push_back(
      PageShape{drawingSpace(page).ring(), true, false, LineStyle{Ink::Black, 0.7, {}}, {}});
}

void drawBorder(Page& page) {
  const PaperBox space = drawingSpace(page);
  drawFrame(page);
  page.items.push_back(
      PageShape{space.grown(kReference).ring(), true, false, LineStyle{Ink::Black, 0.35, {}}, {}});
  const Point2 sheet{page.width / 2, page.height / 2};
  drawFields(space, fieldEdges(space.low.x, space.high.x, sheet.x), true, page);
  drawFields(space, fieldEdges(space.low.y, space.high.y, sheet.y), false, page);
}

namespace {

/// The sheet's own title, with the project's where the field of this width takes both.
std::string supplementary(const Project& project, const Page& page, double width) {
  if (project.supplementaryTitle.empty()) return page.title;
  std::string both = page.title + ": " + project.supplementaryTitle;
  return textWidth(both, kTextHeight, false) <= width - 2.4 ? both : page.title;
}

std::string unitsText(const Project& project) {
  return project.units == UnitSystem::Metric ? "m, mm; pipe in inches" : "ft, in; levels ft";
}

std::string countText(const SheetFacts& sheet) {
  return std::to_string(sheet.sheet) + " of " + std::to_string(sheet.sheets);
}

using FieldRows = std::vector<std::pair<double, std::vector<Field>>>; ///< with heights, mm

// Blank boxes, for what a firm and a licensed designer put on a drawing by hand or stamp. The
// seal's is as wide as seals commonly are (about 1 3/4 to 2 in; from memory).
constexpr double kSealWidth = 50, kSealHeight = 51, kFootSealWidth = 36; ///< mm
constexpr const char *kFirm = "Firm", *kSeal = "Seal or stamp";

/// The seal's box stands beside the rows from the second on, as high as four of them.
FieldRows cornerRows(const Project& p, const SheetFacts& sheet, const Page& page) {
  constexpr double kLeft = kTitleWidth - kSealWidth;
  return {{12,
           {{70, "Legal owner", p.legalOwner},
            {60, kFirm, ""},
            {kSealWidth, "Identification number", p.identificationNumber}}},
          {15, {{kLeft, "Title", p.title, 5, true}}},
          {12,
           {{90, "Supplementary title", supplementary(p, page, 90)},
            {kLeft - 90, "Document type", sheet.documentType}}},
          {12, {{kLeft, "Site", p.siteAddress}}},
          {12,
           {{44, "Created by", p.createdBy},
            {43, "Approved by", p.approvedBy},
            {43, "Document status", p.documentStatus}}},
          {12,
           {{34, "Date of issue", p.issueDate},
            {20, "Revision", p.revision, 3.5, true},
            {76, "Scale", sheet.scale},
            {50, "Units", unitsText(p)}}},
          {12,
           {{70, "Paper", sheet.paper},
            {60, "Sheet number", page.number, 5, true},
            {50, "Sheet", countText(sheet)}}}};
}

/// The same fields along the foot of a small sheet, left of the seal's box; widths in hundredths.
FieldRows footRows(const Project& p, const SheetFacts& sheet, const Page& page) {
  const double all = drawingSpace(page).width() - kFootSealWidth;
  return {{12,
           {{24, "Legal owner", p.legalOwner},
            {16, kFirm, ""},
            {28, "Title", p.title, 5, true},
            {32, "Supplementary title", supplementary(p, page, 0.32 * all)}}},
          {12,
           {{24, "Site", p.siteAddress},
            {16, "Identification number", p.identificationNumber},
            {14, "Created by", p.createdBy},
            {14, "Approved by", p.approvedBy},
            {16, "Document status", p.documentStatus},
            {16, "Document type", sheet.documentType}}},
          {12,
           {{13, "Date of issue", p.issueDate},
            {8, "Revision", p.revision, 3.5, true},
            {19, "Scale", sheet.scale},
            {19, "Units", unitsText(p)},
            {9, "Paper", sheet.paper},
            {18, "Sheet number", page.number, 5, true},
            {14, "Sheet", countText(sheet)}}}};
}

} // namespace

void drawTitleBlock(const Project& project, const SheetFacts& sheet, Page& page) {
  const PaperBox box = titleBox(page);
  const bool foot = hasFootTitle(page);
  const double times = foot ? (box.width() - kFootSealWidth) / 100 : box.width() / kTitleWidth;
  Point2 at = box.low;
  FieldRows rows = foot ? footRows(project, sheet, page) : cornerRows(project, sheet, page);
  for (auto& [height, fields] : rows) {
    for (Field& field : fields)
      field.width *= times;
    drawFieldRow(at, height, fields, page);
    at.y += height;
  }
  const double seal = foot ? kFootSealWidth : kSealWidth * times;
  drawFieldRow({box.high.x - seal, foot ? box.low.y : box.low.y + rows.front().first},
               foot ? box.height() : kSealHeight, {{seal, kSeal, ""}}, page);
  page.items.push_back(PageShape{box.ring(), true, false, LineStyle{Ink::Black, 0.7, {}}, {}});
}

void drawTitleStrip(const Project& project, const SheetFacts& sheet, Page& page) {
  const PaperBox space = drawingSpace(page);
  const Point2 at{space.low.x, space.high.y - kTitleStripHeight};
  page.items.push_back(rule(at, {space.high.x, at.y}, 0.5));
  std::vector<Field> fields = {{40, "Identification number", project.identificationNumber},
                               {60, "Title", project.title},
                               {18, "Revision", project.revision, 3.5, true},
                               {28, "Date of issue", project.issueDate},
                               {34, "Page", countText(sheet), 3.5, true}};
  for (Field& field : fields)
    field.width *= space.width() / kTitleWidth;
  drawFieldRow(at, kTitleStripHeight, fields, page);
}

} // namespace sump
