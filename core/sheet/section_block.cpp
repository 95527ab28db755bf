#include "core/sheet/section_block.h"

#include "core/sheet/mark_pen.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/tags.h"
#include "core/units/print.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kGutter = 22;  // mm left of the drawing, for levels and row headings
constexpr double kDrawnPad = 9; // round what is drawn, for texts
constexpr double kTitle = 13;   // over the drawing
constexpr double kIndent = 12;  // of the title, beside the view's number
constexpr double kMatchRow = 5; // over a frame that is one of several
const LineStyle kGrid{Ink::PaleGrey, 0.18, {}};
const LineStyle kMatch{Ink::Black, 0.5, {8, 1.5, 1, 1.5}};

SectionView layout(const SectionExtent& extent, const SectionScale& scale, double width, double top,
                   double air) {
  SectionView found;
  found.view.scale = scale.along;
  found.plane.stretch = scale.stretch;
  const double drawn = inMetres(extent.high - extent.low) * 1000 * scale.stretch / scale.along;
  found.view.frame = {{kGutter, top}, {width, top + drawn + 2 * (kDrawnPad + air)}};
  found.view.centre =
      lerp(found.plane.at(extent.from, extent.low), found.plane.at(extent.to, extent.high), 0.5);
  return found;
}

/// Neat levels at least 5 mm apart on the paper.
double levelPitch(const SectionView& layout, UnitSystem units) {
  const double unit = units == UnitSystem::Metric ? 1 : kMetresPerFoot;
  for (double step : {0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0}) {
    if (step * unit * layout.plane.stretch * 1000 / layout.view.scale >= 5) return step * unit;
  }
  return 20 * unit;
}

void drawLevels(const SectionView& layout, UnitSystem units, Page& page) {
  const PaperBox& frame = layout.view.frame;
  const double step = levelPitch(layout, units);
  const PaperBox shown = layout.view.site();
  const double low = shown.low.y / layout.plane.stretch, high = shown.high.y / layout.plane.stretch;
  for (double i = std::ceil(low / step); i * step <= high; ++i) {
    const double y = layout.view.toPaper(layout.plane.at(0, metres(i * step))).y;
    if (y < frame.low.y + 1.5 || y > frame.high.y - 1.5) continue;
    page.items.push_back(PageShape{{{frame.low.x, y}, {frame.high.x, y}}, false, false, kGrid, {}});
    page.items.push_back(words({frame.low.x - 1.5, y + 1.1},
                               printElevation(metres(i * step), units), kTextHeight, false,
                               Align::Right));
  }
}

/// Title, facts and scale as lines over the drawing.
std::vector<std::string> titleLines(const SectionTitle& title, const SectionScale& set,
                                    UnitSystem units) {
  if (title.title.empty()) return {};
  std::vector<std::string> lines = title.facts;
  std::string scale = "Scale " + scaleText(set.along, units);
  if (set.stretch != 1) {
    const double upright = set.along / set.stretch;
    scale += ", vertical scale x " + fixed(set.stretch, 0) +
             " (1:" + fixed(upright, upright == std::floor(upright) ? 0 : 1) + ")";
  }
  if (!title.key.empty()) scale += ". " + title.key;
  lines.push_back(scale);
  return lines;
}

void drawTitle(const SectionTitle& title, const std::vector<std::string>& lines, Page& page) {
  if (title.title.empty()) return;
  // The title first: it is what says that the section goes on on the next sheet.
  page.items.push_back(words({kIndent, 4.4}, title.title, 3.5, true));
  if (!title.anchor.empty())
    drawViewNumber({kViewBubble + 0.25, kViewBubble + 1}, viewOf(title.anchor), page);
  double y = 9.4;
  for (const std::string& line : lines) {
    page.items.push_back(words({kIndent, y}, line));
    y += kLinePitch;
  }
}

/// The least that shows the drawing with its texts, and the lines over it.
double neededWidth(const SectionTitle& title, const std::vector<std::string>& lines,
                   const SectionExtent& extent, const SectionSet& set) {
  double width = std::max(set.leastWidth, sectionWidth(extent.to - extent.from, set.scale));
  width = std::max(width, kIndent + textWidth(title.title, 3.5, true) + 1);
  for (const std::string& line : lines)
    width = std::max(width, kIndent + textWidth(line, kTextHeight, false) + 1);
  const double match = textWidth(set.before + set.after, kTextHeight, false);
  return std::min(set.width, std::max(width, kGutter + match + 8));
}

/// What the section goes on at, over the frame and as lines in it.
void addMatches(const SectionExtent& extent, const SectionSet& set, const SectionView& layout,
                std::vector<Mark>& marks, Page& page) {
  const PaperBox& frame = layout.view.frame;
  const PaperBox shown = layout.view.site();
  const auto line = [&](double station) {
    MarkPen(marks, {}, Layer::Symbol)
        .path({{station, shown.low.y}, {station, shown.high.y}}, kMatch);
  };
  const double y = frame.low.y - 1.6;
  if (!set.before.empty()) {
    line(extent.from);
    page.items.push_back(words({frame.low.x, y}, set.before, kTextHeight, true));
  }
  if (!set.after.empty()) {
    line(extent.to);
    page.items.push_back(words({frame.high.x, y}, set.after, kTextHeight, true, Align::Right));
  }
}

template <class Profile>
DrawnSection drawing(const Profile& profile, const SectionTitle& title, UnitSystem units,
                     const SectionSet& set, Page& page) {
  const bool match = !set.before.empty() || !set.after.empty();
  const double top = titleHeight(title) + (match ? kMatchRow : 0);
  SectionExtent extent = sectionExtent(profile);
  if (set.levels) {
    extent.low = set.levels->low;
    extent.high = set.levels->high;
  }
  DrawnSection drawn{layout(extent, set.scale, set.width, top, set.air), {}, 0};
  SectionView& view = drawn.view;
  const std::vector<std::string> lines = titleLines(title, set.scale, units);
  view.view.frame.high.x = neededWidth(title, lines, extent, set);
  drawTitle(title, lines, page);
  std::vector<Mark> marks = sectionMarks(profile, view.plane, extent.low);
  addMatches(extent, set, view, marks, page);
  // The earth first, so that the lines of the levels can be seen on it; its water over them.
  std::vector<Mark> earth, rest;
  for (const Mark& mark : marks)
    (mark.layer == Layer::Ground && mark.fill ? earth : rest).push_back(mark);
  drawView(view.view, earth, page);
  drawLevels(view, units, page);
  drawView(view.view, rest, page);
  drawn.keys = set.keys;
  drawn.unplaced = labelSection(sectionNotes(profile, units), view, marks, drawn.keys, page);
  return drawn;
}

std::string orUnknown(const std::optional<Length>& level, UnitSystem units) {
  return level ? printElevation(*level, units) : "-";
}

std::string peakOf(const ProfileVault& vault, UnitSystem units) {
  std::optional<Length> most;
  for (const ProfileChamber& c : vault.chambers) {
    if (!c.peak) return "not decided";
    most = most ? std::max(*most, *c.peak) : *c.peak;
  }
  return orUnknown(most, units);
}

std::string restOf(const ProfileVault& vault, UnitSystem units) {
  static const std::optional<Length> unknown;
  return orUnknown(vault.chambers.empty() ? unknown : vault.chambers[0].rest, units);
}

/// Of its chambers in the order of the flow, told once where they are alike.
std::string lowOf(const ProfileVault& vault, UnitSystem units) {
  std::string text, last;
  for (const ProfileChamber& c : vault.chambers) {
    const std::string level = c.low ? printElevation(*c.low, units) : "not decided";
    if (level != last) text += (text.empty() ? "" : ", ") + level;
    last = level;
  }
  return text.empty() ? "-" : text;
}

Block vaultLevels(const TrainProfile& profile, UnitSystem units, double width) {
  std::vector<std::vector<std::string>> rows;
  for (const ProfileVault& v : profile.vaults) {
    std::string rims;
    for (const ProfileManway& m : v.manways)
      rims += (rims.empty() ? "" : ", ") + orUnknown(m.rim, units);
    rows.push_back({called(v), rims.empty() ? "-" : rims, printElevation(v.lidTop, units),
                    printElevation(v.lidUnderside, units), peakOf(v, units), restOf(v, units),
                    lowOf(v, units), printElevation(v.floor, units),
                    printElevation(v.underside, units)});
  }
  return table("LEVELS OF THE VAULTS",
               {{"VAULT"},
                {"RIMS", Align::Right},
                {"LID|TOP", Align::Right},
                {"LID|UNDERSIDE", Align::Right},
                {"WATER|AT PEAK", Align::Right},
                {"WATER|AT REST", Align::Right},
                {"WATER, PUMP|STOPS", Align::Right},
                {"INSIDE|FLOOR", Align::Right},
                {"BASE|UNDERSIDE", Align::Right}},
               rows, width);
}

/// Inverts of every run that is drawn, at its own ends and corners.
Block runLevels(const TrainProfile& profile, UnitSystem units, double width) {
  std::vector<std::vector<std::string>> rows;
  for (const TrainRun& run : profile.runs) {
    std::string inverts;
    for (const TrainPoint& p : run.points) {
      if (p.vertex != kNoVertex)
        inverts += (inverts.empty() ? "" : ", ") + printElevation(p.invert, units);
    }
    if (inverts.empty()) continue; // none of its own points is in the train
    rows.push_back({std::string(facts(run.service).code), run.id, runName(run.name, run.service),
                    run.size + "\"", inverts});
  }
  return table("INVERTS IN THE TRAIN, WITH THE FLOW",
               {{"CODE"}, {"LINE"}, {"NAME"}, {"SIZE"}, {"INVERTS"}}, rows, width);
}

SectionSheet sectionSheetOf(DrawnSection drawn, Page page, const std::string& anchor) {
  SectionSheet sheet;
  sheet.scale = drawn.view.view.scale;
  sheet.stretch = drawn.view.plane.stretch;
  sheet.unplaced = std::move(drawn.unplaced);
  sheet.block =
      Block{drawn.view.view.frame.high.x, {}, {sectionStrip(std::move(page))}, true, {}, anchor};
  return sheet;
}

} // namespace

double titleHeight(const SectionTitle& title) {
  return title.title.empty() ? 0 : kTitle + kLinePitch * static_cast<double>(title.facts.size());
}

PaperStrip titleStrip(const SectionTitle& title, const SectionScale& scale, UnitSystem units) {
  Page page;
  drawTitle(title, titleLines(title, scale, units), page);
  return {titleHeight(title), std::move(page.items)};
}

SectionScale sectionScale(double length, Length rise, UnitSystem units, double width,
                          double height) {
  const double across = width - kGutter - 2 * kDrawnPad, down = height - 2 * kDrawnPad;
  const double along = length * 1000, upright = inMetres(rise) * 1000;
  SectionScale found{standardScales(units).back(), 1};
  for (double scale : standardScales(units)) {
    if (along / scale > across || upright / scale > down) continue;
    found.along = scale;
    break;
  }
  for (double stretch : {2.0, 5.0, 10.0}) {
    if (upright * stretch / found.along <= down) found.stretch = stretch;
  }
  return found;
}

double sectionWidth(double length, const SectionScale& scale) {
  constexpr double kBeside = 26; // mm; texts stand beside the drawing
  return kGutter + length * 1000 / scale.along + 2 * kBeside;
}

double sectionHeight(Length rise, const SectionScale& scale) {
  return inMetres(rise) * 1000 * scale.stretch / scale.along + 2 * kDrawnPad;
}

PaperStrip sectionStrip(Page page) {
  double height = 0;
  for (const PageItem& item : page.items) {
    if (const auto* text = std::get_if<PageText>(&item)) height = std::max(height, text->at.y);
    if (const auto* shape = std::get_if<PageShape>(&item))
      for (Point2 p : shape->points)
        height = std::max(height, p.y);
  }
  return {height + 4, std::move(page.items)};
}

void tellBelow(Block& block, const std::vector<std::string>& unplaced) {
  if (unplaced.empty()) return;
  std::string text = "Marked in the section:";
  for (const std::string& note : unplaced)
    text += " " + note + ";";
  text.back() = '.';
  for (std::string& line : wrapped(text, block.width, kTextHeight, false))
    block.body.push_back({kLinePitch, {words({0, 2}, std::move(line))}});
}

DrawnSection drawSection(const RunProfile& profile, const SectionTitle& title, UnitSystem units,
                         const SectionSet& set, Page& page) {
  return drawing(profile, title, units, set, page);
}

SectionSheet longSectionBlock(const RunProfile& profile, const SectionTitle& title,
                              UnitSystem units, double width, double height, double leastWidth) {
  const SectionExtent extent = sectionExtent(profile);
  SectionSet set{width, leastWidth};
  set.scale = sectionScale(extent.to - extent.from, extent.high - extent.low, units, width, height);
  Page page;
  SectionTitle keyed = title;
  keyed.key = sectionKey(profile);
  DrawnSection drawn = drawSection(profile, keyed, units, set, page);
  const std::vector<LevelRow> rows = levelRows(profile, units);
  drawLevelBand(levelColumns(rows, drawn.view), drawn.view.view.frame, page);
  return sectionSheetOf(std::move(drawn), std::move(page), title.anchor);
}

SectionSheet longSectionBlock(const TrainProfile& profile, UnitSystem units, double width,
                              double height) {
  constexpr double kLeast = 240; // mm
  const SectionExtent extent = sectionExtent(profile);
  SectionSet set{width, std::min(width, kLeast)};
  set.scale = sectionScale(extent.to - extent.from, extent.high - extent.low, units, width, height);
  Page page;
  const SectionTitle title{
      "LONG SECTION, VAULT TRAIN IN FLOW ORDER", {}, trainAnchor(), sectionKey(profile)};
  DrawnSection drawn = drawing(profile, title, units, set, page);
  return sectionSheetOf(std::move(drawn), std::move(page), trainAnchor());
}

std::vector<LevelColumn> levelColumns(const std::vector<LevelRow>& rows, const SectionView& view) {
  std::vector<LevelColumn> columns;
  for (const LevelRow& row : rows)
    columns.push_back({view.toPaper(row.station, metres(0)).x, &row});
  return columns;
}

std::vector<Block> trainTables(const TrainProfile& profile, UnitSystem units, double width) {
  return {vaultLevels(profile, units, width), runLevels(profile, units, width)};
}

} // namespace sump
