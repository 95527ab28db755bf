// C-3: each vault cut across at a manway, with bedding, backfill, lid, riser and levels.

#include "core/geometry/polygon.h"
#include "core/sheet/figure.h"
#include "core/sheet/flow.h"
#include "core/sheet/set_tables.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/tags.h"
#include "core/units/print_levels.h"

#include <algorithm>

namespace sump {

namespace {

const LineStyle kCut{Ink::Black, 0.5, {}};
const LineStyle kThin{Ink::Black, 0.25, {}};
const FillStyle kConcrete{Ink::Concrete};
const FillStyle kEarth{Ink::Grey, Hatch::Diagonal};
const FillStyle kBedding{Ink::Grey, Hatch::Dots};

const LineStyle kGroundwater{Ink::ServiceBlue, 0.35, {6, 1.5, 1, 1.5}};
constexpr double kShownBelow = 0.3, kShownBeyond = 0.6; // m of the ground about the dig
constexpr double kSurface = 0.1;                        // m under it that words may point at

Ring box(double left, double low, double right, double high) {
  return {{left, low}, {right, low}, {right, high}, {left, high}};
}

/// Another vault of the same dig, beside this one where it is cut.
struct Beside {
  double face;            ///< outside face towards this vault, from this one's middle, unsigned
  double wall, underside; ///< m
  double floor, lidUnder, lidTop;
  std::optional<double> water;
  double end() const { return face + wall + 0.45; } ///< where the drawing breaks it off
};

/// The figures of one cross-section, metres; x across the vault from its middle, looking towards
/// the low end of the vault's own frame.
struct Cut {
  double half, inside; ///< to the outside and inside faces
  double collar;       ///< outer edge of the base
  double toe, slope;   ///< of the dig's side
  double underside, bottom, floor, lidUnder, lidTop, grade;
  std::optional<double> water, rim;
  double opening = 0;              ///< manway diameter
  double middle = 0;               ///< of the manway
  std::optional<Beside> low, high; ///< at negative and positive x
  const std::optional<Beside>& beside(double side) const { return side < 0 ? low : high; }
};

/// A vault whose dig's bottom runs into this one's, on the line of the cut to that side.
std::optional<Beside> besideAt(const SheetJob& job, const VaultStudy& vault, const Cut& c,
                               double side) {
  const Vault& given = *job.plan().vaults.find(vault.id);
  const double x = given.manways.empty() ? 0 : given.manways.front().at.x;
  const double reach = c.half + 2 * (c.toe - c.half);
  const Frame frame = given.frame();
  const Polyline line{frame.toSite({x, side * c.half}), frame.toSite({x, side * reach})};
  std::optional<Beside> nearest;
  for (const PitStudy& pit : job.study().earth.pits) {
    if (std::ranges::find(pit.vaults, vault.id) == pit.vaults.end()) continue;
    for (const Id& id : pit.vaults) {
      if (id == vault.id) continue;
      const VaultStudy& other = *job.study().vault(id);
      for (Point2 p : crossings(line, other.outline)) {
        const double face = std::abs(frame.toLocal(p).y);
        if (nearest && nearest->face <= face) continue;
        nearest = Beside{face,
                         inMetres(job.plan().vaults.find(id)->wall),
                         inMetres(other.underside),
                         inMetres(other.floor),
                         inMetres(other.lidUnderside),
                         inMetres(other.lidTop),
                         std::nullopt};
        if (other.waterLevel) nearest->water = inMetres(*other.waterLevel);
      }
    }
  }
  return nearest;
}

Cut cutOf(const SheetJob& job, const VaultStudy& vault) {
  const Vault& given = *job.plan().vaults.find(vault.id);
  const EarthFigures& figures = job.study().earth.figures;
  Cut c{};
  c.half = inMetres(given.width) / 2;
  c.inside = c.half - inMetres(given.wall);
  c.collar = c.half + inMetres(given.collar.value_or(metres(0)));
  c.toe = c.collar + inMetres(figures.workingSpace);
  c.slope = job.study().earth.sideSlope;
  c.underside = inMetres(vault.underside);
  c.bottom = c.underside - inMetres(figures.bedding);
  c.floor = inMetres(vault.floor);
  c.lidUnder = inMetres(vault.lidUnderside);
  c.lidTop = inMetres(vault.lidTop);
  c.grade = vault.gradeCentre ? inMetres(*vault.gradeCentre) : c.lidTop;
  if (vault.waterLevel) c.water = inMetres(*vault.waterLevel);
  if (!vault.manways.empty()) {
    c.opening = inMetres(given.manways.front().diameter);
    c.middle = given.manways.front().at.y;
    if (vault.manways.front().rim) c.rim = inMetres(*vault.manways.front().rim);
  }
  c.low = besideAt(job, vault, c, -1);
  c.high = besideAt(job, vault, c, 1);
  return c;
}

void markGround(const Cut& c, MarkPen& pen) {
  const double reach = std::max(0.0, c.grade - c.bottom) * c.slope, edge = c.toe + reach;
  const double out = edge + kShownBeyond;
  for (double s : {-1.0, 1.0}) {
    if (c.beside(s)) continue; // the dig goes on
    // Undisturbed ground, then the backfill between it and the vault.
    pen.ring({{s * c.toe, c.bottom},
              {s * edge, c.grade},
              {s * out, c.grade},
              {s * out, c.bottom - kShownBelow},
              {s * c.toe, c.bottom - kShownBelow}},
             std::nullopt, kEarth);
    pen.path({{s * c.toe, c.bottom}, {s * edge, c.grade}}, kCut);
    pen.path({{s * edge, c.grade}, {s * out, c.grade}}, kCut);
  }
  const double left = c.low ? -c.low->end() : -c.toe, right = c.high ? c.high->end() : c.toe;
  pen.ring(box(left, c.bottom - kShownBelow, right, c.bottom), std::nullopt, kEarth);
  pen.ring(box(left, c.bottom, right, c.underside), kThin, kBedding);
  pen.path({{c.low ? left : left - reach, c.grade}, {c.high ? right : right + reach, c.grade}},
           kThin);
}

/// As much of the next vault as its wall and a little of its inside, broken off.
void markBeside(const Beside& b, double side, MarkPen& pen) {
  const auto part = [&](double from, double to, double low, double high) {
    return side < 0 ? box(-to, low, -from, high) : box(from, low, to, high);
  };
  const double inner = b.face + b.wall, end = b.end();
  pen.ring(part(inner, end, b.floor, b.lidUnder), std::nullopt, FillStyle{Ink::White});
  if (b.water) pen.ring(part(inner, end, b.floor, *b.water), std::nullopt, FillStyle{Ink::Water});
  pen.ring(part(b.face, end, b.underside, b.floor), kThin, kConcrete);
  pen.ring(part(b.face, inner, b.floor, b.lidUnder), kThin, kConcrete);
  pen.ring(part(b.face, end, b.lidUnder, b.lidTop), kThin, kConcrete);
  pen.path({{side * end, b.underside - 0.15}, {side * end, b.lidTop + 0.15}},
           LineStyle{Ink::Black, 0.35, {4, 1}});
}

void markShell(const Cut& c, MarkPen& pen) {
  pen.ring(box(-c.inside, c.floor, c.inside, c.lidUnder), std::nullopt, FillStyle{Ink::White});
  if (c.water) {
    pen.ring(box(-c.inside, c.floor, c.inside, *c.water), kThin, FillStyle{Ink::Water});
  }
  pen.ring(box(-c.collar, c.underside, c.collar, c.floor), kCut, kConcrete);
  pen.ring(box(-c.half, c.floor, -c.inside, c.lidUnder), kCut, kConcrete);
  pen.ring(box(c.inside, c.floor, c.half, c.lidUnder), kCut, kConcrete);
  const double open = std::min(c.opening / 2, c.inside * 0.95);
  if (open <= 0) {
    pen.ring(box(-c.half, c.lidUnder, c.half, c.lidTop), kCut, kConcrete);
    return;
  }
  const double left = c.middle - open, right = c.middle + open;
  pen.ring(box(-c.half, c.lidUnder, left, c.lidTop), kCut, kConcrete);
  pen.ring(box(right, c.lidUnder, c.half, c.lidTop), kCut, kConcrete);
  if (!c.rim || *c.rim <= c.lidTop) return;
  constexpr double kRing = 0.1, kCover = 0.06; // m; drawn only, the maker's sizes govern
  pen.ring(box(left, c.lidTop, right, *c.rim), std::nullopt, FillStyle{Ink::White});
  pen.ring(box(left - kRing, c.lidTop, left, *c.rim), kCut, kConcrete);
  pen.ring(box(right, c.lidTop, right + kRing, *c.rim), kCut, kConcrete);
  pen.ring(box(left, *c.rim - kCover, right, *c.rim), kCut, FillStyle{Ink::Black});
}

std::vector<LevelTag> levels(const SheetJob& job, const Cut& c) {
  const auto tag = [&](double z, double from, const char* name) {
    return LevelTag{z, from, printElevation(metres(z), job.units()), name};
  };
  std::vector<LevelTag> tags = {
      tag(c.lidTop, c.half, "top of lid"), tag(c.lidUnder, c.half, "underside of lid"),
      tag(c.floor, c.half, "inside floor"), tag(c.underside, c.collar, "underside of base"),
      tag(c.bottom, c.toe, "bottom of bedding")};
  if (c.rim) tags.push_back(tag(*c.rim, c.middle + c.opening / 2, "rim of cover"));
  if (c.water) tags.push_back(tag(*c.water, c.inside, "water at rest"));
  return tags;
}

/// How far the opening of a lid that is not in the middle stands off the nearer wall.
void addEccentric(const Cut& c, UnitSystem units, std::vector<Measure>& list) {
  constexpr double kSame = 1e-3, kUnder = 0.12; // m; under the lid, over the water
  if (c.opening <= 0 || std::abs(c.middle) < kSame) return;
  const double side = c.middle < 0 ? -1 : 1, z = c.lidUnder - kUnder;
  const double wall = side * c.inside, edge = c.middle + side * c.opening / 2;
  const double low = std::min(wall, edge), high = std::max(wall, edge);
  if (high - low > kSame)
    list.push_back({{low, z}, {high, z}, 0, printSize(metres(high - low), units)});
}

/// Two chains below, of what is dug and of the vault; heights inside it, and the riser's opening.
std::vector<Measure> measures(const Cut& c, UnitSystem units) {
  const auto text = [&](double m) { return printSize(metres(m), units); };
  std::vector<Measure> list;
  const double foot = c.bottom - kShownBelow; // clear of the groundwater
  const auto below = [&](double a, double b, double offset) {
    if (b - a > 1e-6) list.push_back({{a, foot}, {b, foot}, offset, text(b - a)});
  };
  below(c.low ? -c.low->face : -c.toe, -c.collar, -5);
  below(-c.collar, c.collar, -5);
  below(c.collar, c.high ? c.high->face : c.toe, -5);
  below(-c.half, -c.inside, -13);
  below(-c.inside, c.inside, -13);
  below(c.inside, c.half, -13);
  const double left = c.low ? -c.low->end() : -c.toe;
  const auto upright = [&](double high, double low) {
    if (high - low < 1e-6) return;
    list.push_back({{left, high}, {left, low}, -6, text(high - low)});
  };
  upright(c.lidTop, c.lidUnder);
  upright(c.lidUnder, c.floor);
  upright(c.floor, c.underside);
  upright(c.underside, c.bottom);
  if (c.underside > c.bottom) list.back().text = "Bedding " + list.back().text;
  if (c.rim && *c.rim > c.lidTop && c.opening > 0) {
    const double z = (*c.rim + c.lidTop) / 2;
    list.push_back(
        {{c.middle - c.opening / 2, z}, {c.middle + c.opening / 2, z}, 0, text(c.opening)});
  }
  addEccentric(c, units, list);
  return list;
}

std::vector<Callout> groundCallouts(const Cut& c) {
  // The chain of heights stands on the left, the lines of the levels run to the right.
  const double open = c.low && !c.high ? 1 : -1; // the side with the dig's own slope, if any
  const double earth = c.high ? -1 : 1;
  const double edge = c.beside(open) ? c.beside(open)->face : c.toe;
  std::vector<Callout> list = {
      {{"Backfill in", "even layers"},
       {open * (c.half + edge) / 2, c.lidTop - 0.2 * (c.lidTop - c.floor)}}};
  for (double side : {-1.0, 1.0}) {
    if (const auto& b = c.beside(side)) {
      list.push_back({{"Next vault in", "the same dig"},
                      {side * (b->face + b->wall / 2), (b->floor + b->lidUnder) / 2}});
    }
  }
  // At the dig's edge, where words about it have room over the ground; from below where those about
  // the backfill need that.
  const bool below = c.low || c.high;
  const double side = c.toe + (c.grade - c.bottom) * c.slope;
  const Point2 low{c.beside(earth) ? c.inside * 0.6 : earth * (c.toe + 0.15),
                   c.bottom - kShownBelow / 2};
  const Point2 ground = below ? low : Point2{earth * (side + 0.2), c.grade - kSurface / 2};
  list.push_back({{"Undisturbed ground", "or its support"}, ground});
  list.back().first = below;
  return list;
}

/// What is dug or left standing is told from beside it: no words on the undisturbed ground, the
/// bedding and the line of the dig.
void keepOffEarth(const Cut& c, std::vector<PaperBox>& earth) {
  const double reach = std::max(0.0, c.grade - c.bottom) * c.slope;
  const double left = c.low ? -c.low->end() : -c.toe, right = c.high ? c.high->end() : c.toe;
  earth.push_back({{left, c.bottom - kShownBelow}, {right, c.underside}});
  for (double side : {-1.0, 1.0}) {
    if (c.beside(side)) continue;
    const double a = side * c.toe, b = side * (c.toe + reach + kShownBeyond);
    earth.push_back(
        {{std::min(a, b), c.bottom - kShownBelow}, {std::max(a, b), c.grade - kSurface}});
  }
}

/// Where the water of the ground stands, or how far below the dig.
void addGroundwater(const SheetJob& job, const Cut& c, Drawing& d) {
  const std::optional<Length> level = job.plan().site.groundwater;
  if (!level) return;
  const double z = inMetres(*level);
  const std::string text = printElevation(*level, job.units());
  if (z < c.bottom - kShownBelow || z > c.grade) {
    d.notes.push_back("Groundwater at " + text +
                      (z > c.grade ? ", over the ground." : ", below what is shown."));
    return;
  }
  const double reach = std::max(0.0, c.grade - c.bottom) * c.slope + kShownBeyond;
  const double left = c.low ? -c.low->end() : -c.toe - reach;
  const double right = c.high ? c.high->end() : c.toe + reach;
  MarkPen pen(d.marks, {}, Layer::Ground);
  if (z < c.underside) {
    pen.path({{left, z}, {right, z}}, kGroundwater); // under the vault
  } else {
    const double wall = z < c.floor ? c.collar : c.half; // it goes round the vault
    for (const auto& [from, to] : {std::pair(left, -wall), std::pair(wall, right)})
      pen.path({{from, z}, {to, z}}, kGroundwater);
  }
  d.levels.push_back({z, right, text, "groundwater"});
}

Drawing section(const SheetJob& job, const VaultStudy& vault) {
  const Vault& given = *job.plan().vaults.find(vault.id);
  const UnitSystem units = job.units();
  const Cut c = cutOf(job, vault);
  Drawing d;
  d.anchor = vaultAnchor(job.plan(), vault.id);
  d.title = "ACROSS " + called(given);
  MarkPen pen(d.marks, vault.id, Layer::Vault);
  markGround(c, pen);
  for (double side : {-1.0, 1.0}) {
    if (c.beside(side)) markBeside(*c.beside(side), side, pen);
  }
  markShell(c, pen);
  d.levels = levels(job, c);
  addGroundwater(job, c, d);
  d.measures = measures(c, units);
  // Words about the ground stand in it, not in the vaults.
  d.clear = {{{-c.half, c.floor}, {c.half, c.lidTop}}};
  keepOffEarth(c, d.ground);
  if (c.rim && *c.rim > c.lidTop && !vault.manways.empty()) {
    // Away from the words about the ground, where the dig goes on to one side.
    const double riserSide = c.high ? 1 : -1;
    d.callouts.push_back(
        {{"Riser " + printSize(metres(*c.rim - c.lidTop), units),
          given.manways.front().trafficCover ? "traffic cover," : "pedestrian cover,", "locked"},
         {c.middle + riserSide * (c.opening / 2 + 0.05), (*c.rim + c.lidTop) / 2}});
    d.callouts.back().first = true; // it has the least room, so it goes first
  }
  for (Callout& callout : groundCallouts(c))
    d.callouts.push_back(std::move(callout));
  return d;
}

} // namespace

void vaultSectionSheet(const SheetJob& job, PageFlow& flow) {
  if (job.study().vaults.empty()) return;
  const Point2 most = flow.figureSize({300, 220}, true);
  for (const VaultStudy& vault : job.study().vaults)
    flow.add(figure(section(job, vault), job.units(), most));
  flow.add(openingTable(job, flow.columnWidth()));
  if (Block sleeves = sleeveTable(job, flow.columnWidth()); !sleeves.body.empty())
    flow.add(std::move(sleeves));
  if (Block slabs = slabTable(job, flow.columnWidth()); !slabs.body.empty())
    flow.add(std::move(slabs));
  flow.add(paragraphs(
      "BEDDING, BACKFILL AND LIDS",
      {"Bedding: clean granular material, level and compacted, on undisturbed ground; replace soft "
       "spots.",
       "Backfill: free of stones and frost, in even layers all round; no machine on the lid before "
       "it is covered as its maker allows.",
       "Joints, risers and boots watertight; test before backfill. Each opening in a wall or riser "
       "has one resilient connector (boot), counted on the plumbing schedules.",
       "Openings: inverts are at the outside face of the wall, of risers at their inside, of "
       "baffles at their middle; inverts at the ends of the pipes are on the plumbing schedules.",
       "Lids and covers under vehicles are rated for them, by the class that the licensed engineer "
       "and the local code ask for: ______ (AASHTO HS-20, EN 124 D 400 or other); covers locked, "
       "marked as confined space.",
       "Concrete, reinforcement and the sealant of the joints between floor, walls, lid and risers "
       "(ASTM C990 or as its maker asks) come with the vault, by its maker's design.",
       "Empty vaults float: hold them as the engineer directs while groundwater may rise."},
      flow.columnWidth(), true));
}

} // namespace sump
