#include "core/sheet/section_table.h"

#include "core/sheet/section_marks.h"
#include "core/sheet/tags.h"
#include "core/units/print.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace sump {

namespace {

constexpr double kLeaders = 5;  // from the drawing to the columns of its table
constexpr double kColumn = 4.6; // least pitch of turned texts
constexpr double kPartGap = 6;  // between two parts of a list

PageText turned(Point2 at, const std::string& text) {
  PageText drawn = words(at, text);
  drawn.angle = 90;
  return drawn;
}

/// Where things of this pitch stand: under their points, moved on to the right as far as they
/// must, and back to the left where that passes the edge.
std::vector<double> spread(const std::vector<double>& wished, double left, double right) {
  std::vector<double> places;
  double free = left;
  for (double x : wished) {
    places.push_back(std::max(x, free));
    free = places.back() + kColumn;
  }
  double edge = right;
  for (std::size_t i = places.size(); i-- > 0;) {
    places[i] = std::min(places[i], edge);
    edge = places[i] - kColumn;
  }
  return places;
}

/// Tops of the band's rows and the foot of the last: turned texts need rows as high as the longest
/// is long.
std::vector<double> rowEdges(double top, const std::vector<const LevelRow*>& rows) {
  std::vector<double> edges{top};
  for (std::size_t r = 0; r < levelHeadings().size(); ++r) {
    double longest = 2 * kTextHeight;
    for (const LevelRow* row : rows)
      longest = std::max(longest, textWidth(row->cells[r], kTextHeight, false));
    edges.push_back(edges.back() + longest + 2.4);
  }
  return edges;
}

/// The slope to the next point.
std::string slopeOn(const ProfileLeg& leg, UnitSystem units) {
  if (leg.vertical) return "upright";
  if (isLevel(leg.slope)) return "level";
  return printSlope(std::abs(leg.slope), units) + (leg.slope > 0 ? "" : " rising");
}

/// The floor that the run is under or over there, in a room or a building; else the ground.
std::string gradeAt(const RunProfile& profile, double station, const std::optional<Length>& ground,
                    UnitSystem units) {
  for (const ProfileStructure& s : profile.structures) {
    if (s.kind != StructureKind::Basin && s.level && station >= s.from && station <= s.to)
      return printElevation(*s.level, units) + " floor";
  }
  return ground ? printElevation(*ground, units) : "-";
}

/// From the top of the pipe to that of the floor that it lies under; nothing in the open, in a
/// basin or in a vault.
std::optional<Length> coverUnderFloor(const RunProfile& profile, std::size_t point) {
  const ProfilePoint& p = profile.points[point];
  const auto holds = [&](const auto& s) { return p.station >= s.from && p.station <= s.to; };
  const auto& bore = profile.legs[std::min(point, profile.legs.size() - 1)].bore;
  if (!bore || std::ranges::any_of(profile.vaults, holds)) return std::nullopt;
  std::optional<Length> level;
  for (const ProfileStructure& s : profile.structures) {
    if (!holds(s)) continue;
    if (s.kind == StructureKind::Basin) return std::nullopt;
    if (s.level) level = std::max(level.value_or(*s.level), *s.level);
  }
  if (!level || *level <= bore->top(p.invert)) return std::nullopt;
  return *level - bore->top(p.invert);
}

/// Earth over the pipe; under the floor of a room or a building what is from its top to that of the
/// floor.
std::string coverAt(const RunProfile& profile, std::size_t point, UnitSystem units) {
  const ProfilePoint& p = profile.points[point];
  if (p.cover) return printShort(*p.cover, units);
  const auto under = coverUnderFloor(profile, point);
  return under ? printShort(*under, units) + " to floor" : "-";
}

/// Of the least cover.
std::optional<LevelRow> leastRow(const RunProfile& profile, UnitSystem units) {
  const std::optional<CoverPlace> least = leastCover(profile);
  if (!least) return std::nullopt;
  return LevelRow{least->station,
                  {printRunLength(metres(least->station), units),
                   printElevation(least->ground, units), printElevation(least->invert, units),
                   printShort(least->cover(), units) + " least",
                   slopeOn(profile.legs[least->leg], units)}};
}

} // namespace

const std::vector<std::string>& levelHeadings() {
  static const std::vector<std::string> headings = {"STATION", "GRADE", "INVERT", "COVER", "SLOPE"};
  return headings;
}

namespace {

/// Points a hair apart, which would read as a drop of nothing, in one row: with the slope from the
/// last of them on.
void mergeAlike(std::vector<LevelRow>& rows) {
  constexpr std::size_t kPlace = 3, kCover = 3, kSlope = 4; // cells
  for (std::size_t i = 1; i < rows.size();) {
    auto &before = rows[i - 1].cells, &cells = rows[i].cells;
    if (!std::equal(before.begin(), before.begin() + kPlace, cells.begin())) {
      ++i;
      continue;
    }
    before[kSlope] = cells[kSlope];
    if (before[kCover] == "-") before[kCover] = cells[kCover];
    rows.erase(rows.begin() + static_cast<std::ptrdiff_t>(i));
  }
}

} // namespace

std::vector<LevelRow> levelRows(const RunProfile& profile, UnitSystem units) {
  constexpr double kSameStation = 0.005; // m; one row tells both
  std::optional<LevelRow> least = leastRow(profile, units);
  std::vector<LevelRow> rows;
  // Before the points of its leg's end: a riser's foot is told before its top.
  const auto addLeast = [&] {
    rows.push_back(std::move(*least));
    least.reset();
  };
  const std::size_t leg = least ? leastCover(profile)->leg : 0;
  for (std::size_t i = 0; i < profile.points.size(); ++i) {
    const ProfilePoint& p = profile.points[i];
    if (repeats(profile.points, i + 1)) continue; // told once, with the leg that goes on
    if (least && p.cover && std::abs(least->station - p.station) < kSameStation) {
      least->cells[4] = i < profile.legs.size() ? slopeOn(profile.legs[i], units) : "-";
      least->station = p.station;
      addLeast();
    } else {
      if (least && i > leg) addLeast();
      rows.push_back(
          {p.station,
           {printRunLength(metres(p.station), units), gradeAt(profile, p.station, p.ground, units),
            printElevation(p.invert, units), coverAt(profile, i, units),
            i < profile.legs.size() ? slopeOn(profile.legs[i], units) : "-"}});
    }
  }
  if (least) addLeast();
  mergeAlike(rows);
  return rows;
}

double levelBandHeight(const std::vector<LevelRow>& rows) {
  std::vector<const LevelRow*> all;
  for (const LevelRow& row : rows)
    all.push_back(&row);
  return kLeaders + rowEdges(0, all).back();
}

void drawLevelBand(const std::vector<LevelColumn>& columns, const PaperBox& frame, Page& page) {
  std::vector<double> wished;
  std::vector<const LevelRow*> rows;
  for (const LevelColumn& column : columns) {
    wished.push_back(column.x + kTextHeight / 2);
    rows.push_back(column.row);
  }
  const double top = frame.high.y + kLeaders;
  const std::vector<double> edges = rowEdges(top, rows);
  const std::vector<double> places = spread(wished, frame.low.x + kColumn, frame.high.x - 1.5);
  for (std::size_t r = 0; r < edges.size(); ++r) {
    const bool outer = r == 0 || r + 1 == edges.size();
    page.items.push_back(rule({0, edges[r]}, {frame.high.x, edges[r]}, outer ? 0.35 : 0.18));
    if (r + 1 < edges.size())
      page.items.push_back(words({0.5, (edges[r] + edges[r + 1]) / 2 + 1}, levelHeadings()[r]));
  }
  for (const double x : {0.0, frame.low.x, frame.high.x})
    page.items.push_back(rule({x, top}, {x, edges.back()}, 0.35));
  for (std::size_t i = 0; i < columns.size(); ++i) {
    page.items.push_back(
        rule({columns[i].x, frame.high.y}, {places[i] - kTextHeight / 2, top}, 0.18));
    for (std::size_t r = 0; r < rows[i]->cells.size(); ++r)
      page.items.push_back(turned({places[i], edges[r + 1] - 1.2}, rows[i]->cells[r]));
  }
}

std::string pointLetter(std::size_t row) {
  constexpr std::size_t kLetters = 26;
  std::string text(1, static_cast<char>('A' + row % kLetters));
  return row < kLetters ? text : text + std::to_string(row / kLetters);
}

void drawPointLetters(const std::vector<std::pair<double, std::string>>& places,
                      const PaperBox& frame, Page& page) {
  std::vector<double> wished;
  for (const auto& [x, letter] : places)
    wished.push_back(x);
  const std::vector<double> stand = spread(wished, frame.low.x + 1.5, frame.high.x - 1.5);
  for (std::size_t i = 0; i < places.size(); ++i) {
    page.items.push_back(
        rule({places[i].first, frame.high.y}, {stand[i], frame.high.y + kLeaders}, 0.18));
    page.items.push_back(words({stand[i], frame.high.y + kLeaders + 3.2}, places[i].second,
                               kTextHeight, true, Align::Centre));
  }
}

LevelList::LevelList(const std::vector<LevelRow>& rows, std::size_t parts) {
  std::vector<Column> columns{{"AT"}};
  for (const std::string& heading : levelHeadings())
    columns.push_back(
        {heading, heading == "COVER" || heading == "SLOPE" ? Align::Left : Align::Right});
  std::vector<std::vector<std::string>> cells;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    cells.push_back({pointLetter(i)});
    cells.back().insert(cells.back().end(), rows[i].cells.begin(), rows[i].cells.end());
  }
  // As wide as its texts: a table that is given more spreads its columns.
  constexpr double kAmple = 1000, kSpread = 4;
  const double width = table("", columns, cells, kAmple).width -
                       kSpread * static_cast<double>(columns.size()) + 0.01;
  const std::size_t each = (cells.size() + parts - 1) / parts;
  for (std::size_t first = 0; first < cells.size(); first += each) {
    const auto begin = cells.begin() + static_cast<std::ptrdiff_t>(first);
    const auto end = begin + static_cast<std::ptrdiff_t>(std::min(each, cells.size() - first));
    parts_.push_back(table("", columns, {begin, end}, width));
    parts_.back().head.erase(parts_.back().head.begin()); // it needs no title
  }
}

double LevelList::width() const {
  double width = -kPartGap;
  for (const Block& part : parts_)
    width += part.width + kPartGap;
  return width;
}

double LevelList::height() const {
  double height = 0;
  for (const Block& part : parts_)
    height = std::max(height, part.height());
  return height;
}

void LevelList::draw(Point2 at, Page& page) const {
  for (Block part : parts_) {
    const double width = part.width;
    place(part, at, at.y + part.height() + 1, page);
    at.x += width + kPartGap;
  }
}

} // namespace sump
