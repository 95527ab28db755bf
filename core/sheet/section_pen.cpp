#include "core/sheet/section_pen.h"

#include "core/geometry/polygon.h"
#include "core/sheet/clip.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

const LineStyle kSectionThin{Ink::Black, 0.25, {}};
const LineStyle kSectionMedium{Ink::Black, 0.5, {}};
const LineStyle kBeyondCut{Ink::Black, 0.25, {2, 1}};
const LineStyle kGroundLine{Ink::Black, 0.7, {}};
const LineStyle kCoverLine{Ink::Black, 1, {}};
const LineStyle kRestLine{Ink::ServiceBlue, 0.35, {}};
const LineStyle kPeakLine{Ink::ServiceBlue, 0.25, {3, 1.5}};
const LineStyle kLowLine{Ink::ServiceBlue, 0.25, {1.5, 1}};
const LineStyle kGroundwaterLine{Ink::ServiceBlue, 0.35, {6, 1.5, 1, 1.5}};

} // namespace

/// The earth pale down past the drawing's foot, hatched along its open surface; under a floor it
/// ends below the slab.
void SectionPen::ground(const std::vector<ProfileGround>& ground,
                        const std::vector<std::vector<ProfileGround>>& open,
                        const std::vector<ProfileStructure>& floors) {
  if (ground.size() < 2) return;
  const Length foot = low_ - metres(to_ - from_);
  MarkPen pen = this->pen({}, Layer::Ground);
  const FillStyle earth{Ink::Paving};
  for (const std::vector<ProfileGround>& piece : open) {
    const auto ring = [&](Length low) {
      Ring ring;
      for (const ProfileGround& g : piece)
        ring.push_back(plane_.at(g.station, g.level));
      ring.push_back(plane_.at(piece.back().station, low));
      ring.push_back(plane_.at(piece.front().station, low));
      return ring;
    };
    pen.ring(ring(foot), std::nullopt, earth);
  }
  for (const ProfileStructure& s : floors) {
    if (s.kind != StructureKind::Basin && s.level)
      pen.ring(box(s.from, s.to, foot, *s.level - kDrawnSlab), std::nullopt, earth);
  }
  for (const std::vector<ProfileGround>& piece : open)
    surface(piece);
}

void SectionPen::surface(const std::vector<ProfileGround>& piece) {
  MarkPen pen = this->pen({}, Layer::Ground);
  Polyline line;
  for (const ProfileGround& g : piece)
    line.push_back(plane_.at(g.station, g.level));
  const double depth = 0.014 * (to_ - from_);
  Ring band = line;
  for (auto p = line.rbegin(); p != line.rend(); ++p)
    band.push_back(*p - Point2{0, depth});
  pen.ring(band, std::nullopt, FillStyle{Ink::Grey, Hatch::Diagonal});
  pen.path(line, kGroundLine);
}

void SectionPen::footings(const ProfileStructure& s, const std::vector<double>& walls) {
  if (s.kind != StructureKind::Building || !s.level || !s.bottom || *s.bottom >= *s.level) return;
  constexpr double kWall = 0.2; // m; drawn only, its size is not known
  MarkPen pen = this->pen(s.id, Layer::Building);
  for (double at : walls) {
    const double inward = at == s.from ? kWall : -kWall;
    pen.ring(box(std::min(at, at + inward), std::max(at, at + inward), *s.bottom, *s.level),
             kSectionThin, FillStyle{Ink::Building});
  }
}

void SectionPen::wall(const CutWall& wall) {
  const Layer layer = wall.kind == StructureKind::Room ? Layer::Room : Layer::Building;
  MarkPen pen = this->pen(wall.structure, layer);
  pen.ring(box(wall.from, wall.to, wall.low, wall.high), std::nullopt, FillStyle{Ink::Building});
  const Point2 a = plane_.at(wall.from, wall.high), b = plane_.at(wall.to, wall.high);
  const Point2 tick{0, 0.4 * (b.x - a.x)};
  pen.path({plane_.at(wall.from, wall.low), a, lerp(a, b, 0.35), lerp(a, b, 0.45) + tick,
            lerp(a, b, 0.55) - tick, lerp(a, b, 0.65), b, plane_.at(wall.to, wall.low)},
           kSectionThin);
}

Ring SectionPen::triangle(double station, Length level) const {
  const double size = 0.006 * (to_ - from_);
  const Point2 p = plane_.at(station, level);
  return {p, p + Point2{size, size * 1.6}, p + Point2{-size, size * 1.6}};
}

/// The station nearest to the wanted one at which the sign hides nothing and nothing hides it; the
/// wanted one where there is none.
double SectionPen::clearStation(const Sign& sign) const {
  const double air = 0.012 * (to_ - from_); // between the groundwater's sign and a structure
  const auto covers = [&](const Mark& mark, const Ring& shape) {
    const bool built = mark.layer == Layer::Vault || mark.layer == Layer::Building ||
                       mark.layer == Layer::Room || mark.layer == Layer::Basin;
    if (sign.inGround && built && mark.closed)
      return around(mark.points).meets(around(shape).grown(air));
    const bool stands = mark.layer == Layer::Run || mark.layer == Layer::Part ||
                        mark.layer == Layer::Symbol || mark.layer == Layer::Manway;
    if (!stands || mark.points.size() < 2) return false;
    if (!around(mark.points).meets(around(shape))) return false;
    return !mark.closed || mark.round || overlaps(mark.points, shape);
  };
  const double half = 0.008 * (to_ - from_), low = sign.from + half, high = sign.to - half;
  constexpr int kSteps = 24;
  for (int i = 0; i <= kSteps; ++i) {
    for (double side : {1.0, -1.0}) {
      const double at = sign.wanted + side * i * (sign.to - sign.from) / kSteps;
      if (at < low || at > high) continue;
      const Ring shape = triangle(at, sign.level);
      if (std::ranges::none_of(marks_, [&](const Mark& m) { return covers(m, shape); })) return at;
    }
  }
  return sign.wanted;
}

std::vector<Mark> SectionPen::take() {
  for (const Sign& sign : signs_)
    pen({}, Layer::Symbol).ring(triangle(clearStation(sign), sign.level), kRestLine);
  return std::move(marks_);
}

void SectionPen::groundwater(std::optional<Length> level) {
  if (!level || *level < low_) return;
  pen({}, Layer::Ground).path({plane_.at(from_, *level), plane_.at(to_, *level)}, kGroundwaterLine);
  signs_.push_back({from_, to_, groundwaterSign(from_, to_), *level, true});
}

void SectionPen::water(const Id& vault, const ProfileChamber& chamber) {
  MarkPen pen = this->pen(vault, Layer::Vault);
  if (chamber.peak)
    pen.path({plane_.at(chamber.from, *chamber.peak), plane_.at(chamber.to, *chamber.peak)},
             kPeakLine);
  if (!chamber.rest) return;
  pen.path({plane_.at(chamber.from, *chamber.rest), plane_.at(chamber.to, *chamber.rest)},
           kRestLine);
  signs_.push_back(
      {chamber.from, chamber.to, std::lerp(chamber.from, chamber.to, 0.3), *chamber.rest});
}

/// Where the pump stops.
void SectionPen::lowWater(const Id& vault, const ProfileChamber& chamber, Length level) {
  pen(vault, Layer::Vault)
      .path({plane_.at(chamber.from, level), plane_.at(chamber.to, level)}, kLowLine);
  signs_.push_back({chamber.from, chamber.to, lowWaterSign(chamber), level});
}

/// Frame and riser from the lid's underside to the rim; open inside. What stands off the cut is
/// dashed.
void SectionPen::manway(const ProfileVault& vault, const ProfileManway& manway) {
  const double half = inMetres(manway.diameter) / 2;
  const double from = manway.station - half, to = manway.station + half;
  const Length top = manway.rim ? std::max(*manway.rim, vault.lidTop) : vault.lidTop;
  constexpr double kRiserWall = 0.1; // drawn, not taken from any maker's table
  MarkPen pen = this->pen(manway.id, Layer::Manway);
  if (manway.beyond) {
    pen.ring(box(from, to, vault.lidUnderside, top), kBeyondCut);
    pen.path({plane_.at(from, top), plane_.at(to, top)}, kSectionMedium);
    return;
  }
  if (top > vault.lidTop)
    pen.ring(box(from - kRiserWall, to + kRiserWall, vault.lidTop, top), kSectionThin,
             FillStyle{Ink::Concrete});
  pen.ring(box(from, to, vault.lidUnderside, top), kSectionThin, FillStyle{Ink::White});
  pen.path({plane_.at(from - kRiserWall, top), plane_.at(to + kRiserWall, top)}, kGroundLine);
}

void SectionPen::vault(const ProfileVault& vault) {
  MarkPen pen = this->pen(vault.id, Layer::Vault);
  pen.ring(box(vault.from, vault.to, vault.underside, vault.lidTop), kSectionMedium,
           FillStyle{Ink::Concrete});
  for (const ProfileManway& m : vault.manways)
    manway(vault, m);
  if (vault.insideTo <= vault.insideFrom) return;
  pen.ring(box(vault.insideFrom, vault.insideTo, vault.floor, vault.lidUnderside), kSectionThin,
           FillStyle{Ink::White});
  for (const ProfileChamber& c : vault.chambers) {
    if (c.rest && *c.rest > vault.floor)
      pen.ring(box(c.from, c.to, vault.floor, std::min(*c.rest, vault.lidUnderside)), std::nullopt,
               FillStyle{Ink::Water});
  }
  for (const ProfileChamber& c : vault.chambers)
    water(vault.id, c);
  for (const ProfileBaffle& b : vault.baffles)
    this->pen(b.id, Layer::Baffle)
        .ring(box(b.from, b.to, b.bottom, b.top), kSectionThin, FillStyle{Ink::Grey});
}

void SectionPen::structure(const ProfileStructure& s) {
  const Layer layer = s.kind == StructureKind::Building ? Layer::Building
                      : s.kind == StructureKind::Room   ? Layer::Room
                                                        : Layer::Basin;
  MarkPen pen = this->pen(s.id, layer);
  if (!s.level) return;
  if (s.kind == StructureKind::Basin) {
    const Length bottom = s.bottom ? std::min(*s.bottom, *s.level) : *s.level - kDrawnSlab;
    pen.ring(box(s.from, s.to, bottom, *s.level), kSectionMedium, FillStyle{Ink::White});
    if (s.outlet && *s.outlet > bottom)
      pen.ring(box(s.from, s.to, bottom, std::min(*s.outlet, *s.level)), kSectionThin,
               FillStyle{Ink::Water});
    return;
  }
  pen.ring(box(s.from, s.to, *s.level - kDrawnSlab, *s.level), kSectionThin,
           FillStyle{Ink::Building});
}

/// Invert and crown; the invert in the service's pattern.
void SectionPen::pipe(const Id& id, Service service, const std::optional<ProfileBore>& bore,
                      Point2 a, Point2 b) {
  MarkPen pen = this->pen(id, Layer::Run);
  const LineStyle line = serviceLine(service);
  const LineStyle edge{line.ink, 0.25, {}};
  if (bore) {
    const bool vertical = std::abs(a.x - b.x) < 1e-6;
    const double half = inMetres(bore->inside) / 2, bored = inMetres(bore->inside) * plane_.stretch;
    if (vertical) {
      pen.ring({{a.x - half, a.y}, {a.x + half, a.y}, {a.x + half, b.y}, {a.x - half, b.y}}, edge,
               FillStyle{Ink::White});
    } else {
      pen.ring({a, b, b + Point2{0, bored}, a + Point2{0, bored}}, edge, FillStyle{Ink::White});
    }
  }
  pen.path({a, b}, line);
}

/// As on the plan: solid for water and air, open for conduits.
void SectionPen::arrow(const Id& id, Service service, Point2 a, Point2 b) {
  const Point2 d = b - a;
  const double half = std::min(0.006 * (to_ - from_), norm(d) / 6);
  if (!(half > 0)) return;
  SymbolPen pen(this->pen(id, Layer::Symbol),
                Frame{lerp(a, b, 0.58), radians(std::atan2(d.y, d.x))}, half,
                {serviceLine(service).ink, 0.35, {}});
  const Ring head{{1, 0}, {-1, 0.55}, {-1, -0.55}};
  if (isConduit(service)) {
    pen.open(head);
  } else {
    pen.solid(head);
  }
}

/// Tees and elbows with their arms as long as they are and the pipe in the lower one, down to
/// `leg`; other fittings by their symbol. `inward` is the run's next point.
void SectionPen::end(const Id& id, Service service, EndFitting fitting,
                     const std::optional<ProfileBore>& bore, Point2 at, Point2 inward,
                     std::optional<Length> leg) {
  if (fitting == EndFitting::Plain) return;
  const LineStyle line{serviceLine(service).ink, 0.35, {}};
  const double bored = bore ? inMetres(bore->inside) : 0.1;
  const double half = bored / 2, tall = bored * plane_.stretch;
  const bool tee = fitting == EndFitting::Tee;
  if (tee || fitting == EndFitting::ElbowDown || fitting == EndFitting::ElbowUp) {
    const double axis = at.y + tall / 2;
    const double arm = (bore ? inMetres(bore->arm) : 1.5 * bored) * plane_.stretch;
    const double low = tee || fitting == EndFitting::ElbowDown ? axis - arm : at.y;
    const double high = tee || fitting == EndFitting::ElbowUp ? axis + arm : at.y + tall;
    const auto upright = [&](double foot, double top) {
      pen(id, Layer::Part)
          .ring({{at.x - half, foot}, {at.x + half, foot}, {at.x + half, top}, {at.x - half, top}},
                line, FillStyle{Ink::White});
    };
    if (leg) upright(std::min(low, plane_.at(0, *leg).y), low);
    return upright(low, high);
  }
  const Point2 d = at - inward;
  const double size = std::clamp(bored, 0.06, 0.3);
  Frame frame{at, radians(std::atan2(d.y, d.x))};
  if (fitting == EndFitting::Eductor) frame = eductorFrame(frame, size, pen(id, Layer::Part));
  SymbolPen symbol(pen(id, Layer::Part), frame, size, line);
  drawEnd(symbol, fitting);
}

Ring SectionPen::ellipse(double station, Length low, Length high) const {
  constexpr int kCorners = 24;
  Ring ring;
  for (int i = 0; i < kCorners; ++i) {
    const double a = 2 * kPi * i / kCorners;
    ring.push_back(plane_.at(station + std::cos(a) * inMetres(high - low) / 2,
                             (low + high) / 2.0 + std::sin(a) * (high - low) / 2.0));
  }
  return ring;
}

/// A pipe that is seen in the direction that it runs.
void SectionPen::endOn(const Id& id, Service service, double station, Length low, Length high) {
  pen(id, Layer::Run)
      .ring(ellipse(station, low, high), LineStyle{serviceLine(service).ink, 0.5, {}},
            FillStyle{Ink::White});
}

void SectionPen::breakOff(const Id& id, Point2 at) {
  const double size = 0.008 * (to_ - from_);
  pen(id, Layer::Symbol)
      .path({at + Point2{size * 0.4, size * 1.6}, at + Point2{size * 0.4, size * 0.3},
             at + Point2{-size * 0.4, -size * 0.3}, at + Point2{-size * 0.4, -size * 1.6}},
            kSectionThin);
}

void SectionPen::riser(const ProfilePart& part, const std::optional<ProfileBore>& bore) {
  if (!part.cover) return;
  const double half = riserHalfWidth(part.kind, bore ? bore->outside : metres(0.1));
  const Length foot =
      part.kind == PartKind::Cleanout && bore ? bore->crown(part.invert) : part.invert;
  if (*part.cover <= foot) return;
  constexpr double kRim = 0.06; // m, of the cover past the riser; drawn only
  MarkPen pen = this->pen(part.id, Layer::Manway);
  pen.ring(box(part.station - half, part.station + half, foot, *part.cover), kSectionThin,
           FillStyle{Ink::White});
  pen.path({plane_.at(part.station - half - kRim, *part.cover),
            plane_.at(part.station + half + kRim, *part.cover)},
           kCoverLine);
}

void SectionPen::part(const ProfilePart& part, Service service,
                      const std::optional<ProfileBore>& bore, Point2 along) {
  const double bored = bore ? inMetres(bore->inside) : 0.1;
  const Point2 at = plane_.at(part.station, part.invert + (bore ? bore->inside / 2.0 : metres(0)));
  SymbolPen pen(this->pen(part.id, Layer::Part), Frame{at, radians(std::atan2(along.y, along.x))},
                std::max(std::clamp(bored, 0.08, 0.3), 0.006 * (to_ - from_)),
                {serviceLine(service).ink, 0.35, {}});
  drawPart(pen, part.kind);
}

void SectionPen::branch(const Id& id, Service service, const ProfileBranch& branch,
                        const std::optional<ProfileBore>& bore, Length invert) {
  if (!bore || !branch.bore) return;
  const double half = 0.75 * inMetres(bore->outside);
  pen(id, Layer::Part)
      .ring(box(branch.station - half, branch.station + half, bore->underside(invert),
                bore->top(invert)),
            LineStyle{serviceLine(service).ink, 0.35, {}}, FillStyle{Ink::White});
  endOn(branch.id, branch.service, branch.station, branch.bore->underside(branch.invert),
        branch.bore->top(branch.invert));
}

void SectionPen::floatSwitch(const Id& id, Service service, Point2 from, Length level) {
  constexpr double kRadius = 0.07; // m; drawn only, the maker's sizes govern
  MarkPen pen = this->pen(id, Layer::Part);
  const LineStyle line{serviceLine(service).ink, 0.35, {}};
  const Point2 middle = plane_.at(from.x, level);
  pen.path({from, middle + Point2{0, kRadius}}, line);
  pen.circle(middle, kRadius, line, FillStyle{line.ink});
}

/// A dimension's line from the pipe to the ground.
void SectionPen::cover(const CoverPlace& least) {
  MarkPen pen = this->pen({}, Layer::Symbol);
  const Point2 tick{0.006 * (to_ - from_), 0};
  const Point2 foot = plane_.at(least.drawnAt, least.top);
  const Point2 head = plane_.at(least.drawnAt, least.ground);
  pen.path({foot, head}, kSectionThin);
  for (Point2 p : {foot, head})
    pen.path({p - tick, p + tick}, kSectionMedium);
}

/// A line of unknown level stands only over its place, one of unknown size as a cross on its axis.
void SectionPen::crossing(const ProfileCrossing& c) {
  const LineStyle line{c.service ? serviceLine(*c.service).ink : Ink::Grey, 0.5, {}};
  MarkPen pen = this->pen(c.id, Layer::Utility);
  if (c.underside && c.top && *c.underside == *c.top) {
    const double size = 0.006 * (to_ - from_);
    const Point2 axis = plane_.at(c.station, *c.top), rise{size, size}, fall{size, -size};
    pen.path({axis - rise, axis + rise}, line);
    return pen.path({axis - fall, axis + fall}, line);
  }
  if (c.underside && c.top)
    return pen.ring(ellipse(c.station, *c.underside, *c.top), line, FillStyle{Ink::White});
  const Point2 foot = plane_.at(c.station, low_);
  pen.path({foot, foot + Point2{0, 0.1 * (to_ - from_)}}, {line.ink, 0.35, {1.5, 1.5}});
}

double riserHalfWidth(PartKind kind, Length outside) {
  constexpr Length kBox = metres(0.45); // drawn only, the maker's sizes govern
  return inMetres(kind == PartKind::Cleanout ? outside : std::max(kBox, 2.0 * outside)) / 2;
}

} // namespace sump
