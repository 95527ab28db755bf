// What is there before the work: paving, buildings, boundary, utilities, levels, wells, drains.

#include "core/sheet/mark_pen.h"

namespace sump {

namespace {

const LineStyle kSiteThin{Ink::Black, 0.25, {}};
const LineStyle kSiteMedium{Ink::Black, 0.35, {}};

// Existing lines: APWA colour, and a pattern of long dashes that no proposed run has.
LineStyle utilityLine(const Utility& utility) {
  const double width = utility.publicMain ? kExistingMain : kExistingLine;
  switch (utility.kind) {
  case UtilityKind::PotableWater:
    return {Ink::ServiceBlue, width, {16, 2}};
  case UtilityKind::Sewer:
    return {Ink::ServiceGreen, width, {16, 2, 3, 2}};
  case UtilityKind::StormDrain:
    return {Ink::ServiceGreen, width, {16, 2, 3, 2, 3, 2}};
  case UtilityKind::Gas:
    return {Ink::ServiceYellow, width, {16, 2, 1, 2}};
  case UtilityKind::Electric:
    return {Ink::ServiceRed, width, {16, 2, 1, 2, 1, 2}};
  case UtilityKind::Communication:
    return {Ink::ServiceOrange, width, {16, 2, 1, 2, 1, 2, 1, 2}};
  case UtilityKind::Other:
    break;
  }
  return {Ink::Grey, width, {16, 4}};
}

void markGround(const Plan& plan, std::vector<Mark>& marks) {
  for (const SpotElevation& spot : plan.spots) {
    MarkPen pen(marks, spot.id, Layer::Ground);
    constexpr double kArm = 0.12; // 5 in: a cross of 1 mm at 1:240
    pen.path({spot.at + Point2{-kArm, 0}, spot.at + Point2{kArm, 0}}, kSiteThin);
    pen.path({spot.at + Point2{0, -kArm}, spot.at + Point2{0, kArm}}, kSiteThin);
  }
  for (const Well& well : plan.wells) {
    MarkPen pen(marks, well.id, Layer::Ground);
    pen.circle(well.at, 0.45, LineStyle{Ink::ServiceBlue, 0.5, {}}, FillStyle{Ink::White});
    pen.circle(well.at, 0.15, LineStyle{Ink::ServiceBlue, 0.25, {}}, FillStyle{Ink::ServiceBlue});
  }
}

/// Bars across the grate, as many as its length asks for.
void markBasin(const Basin& basin, std::vector<Mark>& marks) {
  MarkPen pen(marks, basin.id, Layer::Basin);
  pen.ring(outline(basin), kSiteMedium, FillStyle{Ink::White});
  const double x = inMetres(basin.length) / 2, y = inMetres(basin.width) / 2;
  const double step = basin.kind == BasinKind::TrenchDrain ? 0.4 : 0.15;
  const int bars = std::min(200, static_cast<int>(2 * x / step));
  for (int i = 1; i <= bars; ++i) {
    const double at = -x + 2 * x * i / (bars + 1);
    pen.path({basin.frame().toSite({at, -y}), basin.frame().toSite({at, y})}, kSiteThin);
  }
}

/// A manhole or wye on the sewer: a circle with a filled quarter.
void markSewer(const SewerConnection& sewer, std::vector<Mark>& marks) {
  MarkPen pen(marks, sewer.id, Layer::Basin);
  constexpr double kRadius = 0.4;
  pen.beginSymbol(sewer.at, kRadius);
  pen.circle(sewer.at, kRadius, LineStyle{Ink::ServiceGreen, 0.5, {}}, FillStyle{Ink::White});
  Ring quarter{sewer.at};
  for (int i = 0; i <= 6; ++i) {
    const double a = kPi / 2 * i / 6;
    quarter.push_back(sewer.at + Point2{std::cos(a), std::sin(a)} * kRadius);
  }
  pen.ring(quarter, std::nullopt, FillStyle{Ink::ServiceGreen});
}

void markWash(const WashEquipment& wash, std::vector<Mark>& marks) {
  MarkPen pen(marks, wash.id, Layer::Basin);
  const Ring ring = outline(wash);
  pen.ring(ring, kSiteMedium, FillStyle{Ink::PaleGrey});
  pen.path({ring[0], ring[2]}, kSiteThin);
  pen.path({ring[1], ring[3]}, kSiteThin);
}

} // namespace

void markSite(const Plan& plan, std::vector<Mark>& marks) {
  for (const Pavement& pavement : plan.pavements) {
    MarkPen pen(marks, pavement.id, Layer::Paving);
    pen.ring(pavement.outline, LineStyle{Ink::Grey, 0.25, {}}, FillStyle{Ink::Paving});
    if (pavement.traffic) {
      pen.ring(pavement.outline, std::nullopt, FillStyle{Ink::PaleGrey, Hatch::Diagonal});
    }
  }
  for (const Building& building : plan.buildings) {
    MarkPen(marks, building.id, Layer::Building)
        .ring(building.outline, LineStyle{Ink::Black, 0.5, {}}, FillStyle{Ink::Building});
  }
  if (plan.site.boundary.size() >= 2) {
    // ISO 128-2 line 05.1: long dash, double dot.
    MarkPen(marks, {}, Layer::Boundary)
        .ring(plan.site.boundary, LineStyle{Ink::Black, 0.5, {12, 2, 0.8, 2, 0.8, 2}});
  }
  for (const Utility& utility : plan.utilities) {
    MarkPen(marks, utility.id, Layer::Utility).path(utility.path, utilityLine(utility));
  }
  markGround(plan, marks);
  for (const Basin& basin : plan.basins)
    markBasin(basin, marks);
  for (const SewerConnection& sewer : plan.sewers)
    markSewer(sewer, marks);
  for (const WashEquipment& wash : plan.washes)
    markWash(wash, marks);
}

} // namespace sump
