#include "core/sheet/section_block.h"

#include "core/sheet/section_labels.h"
#include "core/sheet/tags.h"
#include "core/units/print.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kGutter = 22;  // mm left of the drawing, for levels and row headings
constexpr double kPad = 9;      // round what is drawn, for texts
constexpr double kTitle = 13;   // over the drawing
constexpr double kLeaders = 5;  // from the drawing to the columns of its table
constexpr double kColumn = 4.6; // least pitch of turned texts
const LineStyle kGrid{Ink::PaleGrey, 0.18, {}};

SectionView layout(const SectionExtent& extent, UnitSystem units, double width, double height,
                   double top) {
  const double across = width - kGutter - 2 * kPad, down = height - 2 * kPad;
  const double length = (extent.to - extent.from) * 1000;
  const double rise = inMetres(extent.high - extent.low) * 1000;
  SectionView found;
  found.view.scale = standardScales(units).back();
  for (double scale : standardScales(units)) {
    if (length / scale > across || rise / scale > down) continue;
    found.view.scale = scale;
    break;
  }
  for (double stretch : {2.0, 5.0, 10.0}) {
    if (rise * stretch / found.view.scale <= down) found.plane.stretch = stretch;
  }
  const double drawn = rise * found.plane.stretch / found.view.scale;
  found.view.frame = {{kGutter, top}, {width, top + drawn + 2 * kPad}};
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
std::vector<std::string> titleLines(const SectionTitle& title, const SectionView& layout,
                                    UnitSystem units) {
  std::vector<std::string> lines = title.facts;
  std::string scale = "Scale " + scaleText(layout.view.scale, units);
  if (layout.plane.stretch != 1) {
    const double upright = layout.view.scale / layout.plane.stretch;
    scale += ", heights 1:" + fixed(upright, upright == std::floor(upright) ? 0 : 1) +
             " (stretched " + fixed(layout.plane.stretch, 0) + " times)";
  }
  lines.push_back(scale);
  return lines;
}

void drawTitle(const SectionTitle& title, const std::vector<std::string>& lines, Page& page) {
  page.items.push_back(words({0, 4.4}, title.title, 3.5, true));
  double y = 9.4;
  for (const std::string& line : lines) {
    page.items.push_back(words({0, y}, line));
    y += kLinePitch;
  }
}

/// The least that shows the drawing with its texts, and the lines over it.
double neededWidth(const SectionTitle& title, const std::vector<std::string>& lines,
                   const SectionExtent& extent, double scale, double least) {
  constexpr double kBeside = 26; // mm; texts stand beside the drawing
  double width = std::max(least, kGutter + (extent.to - extent.from) * 1000 / scale + 2 * kBeside);
  width = std::max(width, textWidth(title.title, 3.5, true) + 1);
  for (const std::string& line : lines)
    width = std::max(width, textWidth(line, kTextHeight, false) + 1);
  return width;
}

template <class Profile>
SectionSheet drawing(const Profile& profile, const SectionTitle& title, UnitSystem units,
                     double width, double height, double least, SectionView& layout, Page& page) {
  const double top = kTitle + kLinePitch * static_cast<double>(title.facts.size());
  const SectionExtent extent = sectionExtent(profile);
  layout = sump::layout(extent, units, width, height, top);
  const std::vector<std::string> lines = titleLines(title, layout, units);
  layout.view.frame.high.x =
      std::min(width, neededWidth(title, lines, extent, layout.view.scale, least));
  SectionSheet sheet;
  sheet.scale = layout.view.scale;
  sheet.stretch = layout.plane.stretch;
  drawTitle(title, lines, page);
  const std::vector<Mark> marks = sectionMarks(profile, layout.plane);
  // The earth first, so that the lines of the levels can be seen on it; its water over them.
  std::vector<Mark> earth, rest;
  for (const Mark& mark : marks)
    (mark.layer == Layer::Ground && mark.fill ? earth : rest).push_back(mark);
  drawView(layout.view, earth, page);
  drawLevels(layout, units, page);
  drawView(layout.view, rest, page);
  sheet.unplaced = labelSection(sectionNotes(profile, units), layout, marks, page);
  return sheet;
}

PageText turned(Point2 at, const std::string& text) {
  PageText drawn = words(at, text);
  drawn.angle = 90;
  return drawn;
}

/// A column of the table under a run's drawing.
struct LevelColumn {
  double x = 0; ///< of the point on the drawing
  std::vector<std::string> cells;
};

/// Where the columns stand: under their points, moved on to the right as far as they must, and
/// back to the left where that passes the edge.
std::vector<double> columnPlaces(const std::vector<LevelColumn>& columns, double left,
                                 double right) {
  std::vector<double> places;
  double free = left;
  for (const LevelColumn& column : columns) {
    places.push_back(std::max(column.x + kTextHeight / 2, free));
    free = places.back() + kColumn;
  }
  double edge = right;
  for (std::size_t i = places.size(); i-- > 0;) {
    places[i] = std::min(places[i], edge);
    edge = places[i] - kColumn;
  }
  return places;
}

/// Tops of the rows and the foot of the last: turned texts need rows as high as the longest is
/// long.
std::vector<double> rowEdges(double top, std::size_t rows,
                             const std::vector<LevelColumn>& columns) {
  std::vector<double> edges{top};
  for (std::size_t r = 0; r < rows; ++r) {
    double longest = 2 * kTextHeight;
    for (const LevelColumn& column : columns)
      longest = std::max(longest, textWidth(column.cells[r], kTextHeight, false));
    edges.push_back(edges.back() + longest + 2.4);
  }
  return edges;
}

void drawTable(const std::vector<std::string>& headings, const std::vector<LevelColumn>& columns,
               const PaperBox& frame, Page& page) {
  const double top = frame.high.y + kLeaders;
  const std::vector<double> edges = rowEdges(top, headings.size(), columns);
  const double foot = edges.back();
  const std::vector<double> places =
      columnPlaces(columns, frame.low.x + kColumn, frame.high.x - 1.5);
  for (std::size_t r = 0; r < edges.size(); ++r) {
    const bool outer = r == 0 || r == headings.size();
    page.items.push_back(rule({0, edges[r]}, {frame.high.x, edges[r]}, outer ? 0.35 : 0.18));
    if (r < headings.size())
      page.items.push_back(words({0.5, (edges[r] + edges[r + 1]) / 2 + 1}, headings[r]));
  }
  for (const double x : {0.0, frame.low.x, frame.high.x})
    page.items.push_back(rule({x, top}, {x, foot}, 0.35));
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const double middle = places[i] - kTextHeight / 2;
    page.items.push_back(rule({columns[i].x, frame.high.y}, {middle, top}, 0.18));
    for (std::size_t r = 0; r < columns[i].cells.size(); ++r)
      page.items.push_back(turned({places[i], edges[r + 1] - 1.2}, columns[i].cells[r]));
  }
}

std::string orUnknown(const std::optional<Length>& level, UnitSystem units) {
  return level ? printElevation(*level, units) : "-";
}

/// The slope to the next point.
std::string slopeOn(const ProfileLeg& leg, UnitSystem units) {
  if (leg.vertical) return "upright";
  if (isLevel(leg.slope)) return "level";
  return printSlope(std::abs(leg.slope), units) + (leg.slope > 0 ? "" : " up");
}

std::vector<LevelColumn> levelColumns(const RunProfile& profile, const SectionView& layout,
                                      UnitSystem units) {
  std::vector<LevelColumn> columns;
  for (std::size_t i = 0; i < profile.points.size(); ++i) {
    const ProfilePoint& p = profile.points[i];
    if (repeats(profile.points, i + 1)) continue; // told once, with the leg that goes on
    const std::string cover = p.cover ? printShort(*p.cover, units) : "-";
    columns.push_back({layout.view.toPaper(layout.plane.at(p.station, p.invert)).x,
                       {printRunLength(metres(p.station), units), orUnknown(p.ground, units),
                        printElevation(p.invert, units), cover,
                        i < profile.legs.size() ? slopeOn(profile.legs[i], units) : "-"}});
  }
  return columns;
}

PaperStrip stripOf(Page page) {
  double height = 0;
  for (const PageItem& item : page.items) {
    if (const auto* shape = std::get_if<PageShape>(&item))
      for (Point2 p : shape->points)
        height = std::max(height, p.y);
  }
  return {height + 4, std::move(page.items)};
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

Block vaultLevels(const TrainProfile& profile, UnitSystem units, double width) {
  std::vector<std::vector<std::string>> rows;
  for (const ProfileVault& v : profile.vaults) {
    std::string rims;
    for (const ProfileManway& m : v.manways)
      rims += (rims.empty() ? "" : ", ") + orUnknown(m.rim, units);
    rows.push_back({called(v), rims.empty() ? "-" : rims, printElevation(v.lidTop, units),
                    printElevation(v.lidUnderside, units), peakOf(v, units), restOf(v, units),
                    printElevation(v.floor, units), printElevation(v.underside, units)});
  }
  return table("LEVELS OF THE VAULTS",
               {{"VAULT"},
                {"RIMS", Align::Right},
                {"LID|TOP", Align::Right},
                {"LID|UNDERSIDE", Align::Right},
                {"WATER|AT PEAK", Align::Right},
                {"WATER|AT REST", Align::Right},
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
    rows.push_back(
        {std::string(facts(run.service).code), run.id, run.name, run.size + "\"", inverts});
  }
  return table("INVERTS IN THE TRAIN, WITH THE FLOW",
               {{"CODE"}, {"LINE"}, {"NAME"}, {"SIZE"}, {"INVERTS"}}, rows, width);
}

} // namespace

SectionSheet longSectionBlock(const RunProfile& profile, const SectionTitle& title,
                              UnitSystem units, double width, double height, double leastWidth) {
  Page page;
  SectionView layout;
  SectionSheet sheet = drawing(profile, title, units, width, height, leastWidth, layout, page);
  drawTable({"STATION", "GRADE", "INVERT", "COVER", "SLOPE"}, levelColumns(profile, layout, units),
            layout.view.frame, page);
  sheet.block = Block{layout.view.frame.high.x, {}, {stripOf(std::move(page))}, true};
  return sheet;
}

SectionSheet longSectionBlock(const TrainProfile& profile, UnitSystem units, double width,
                              double height) {
  constexpr double kLeast = 240; // mm
  Page page;
  SectionView layout;
  SectionSheet sheet = drawing(profile, {"LONG SECTION, VAULT TRAIN IN FLOW ORDER", {}}, units,
                               width, height, std::min(width, kLeast), layout, page);
  sheet.block = Block{layout.view.frame.high.x, {}, {stripOf(std::move(page))}, true};
  return sheet;
}

std::vector<Block> trainTables(const TrainProfile& profile, UnitSystem units, double width) {
  return {vaultLevels(profile, units, width), runLevels(profile, units, width)};
}

} // namespace sump
