// Symbols of inline parts and end fittings, after ASME Y32.2.3 and ISO 14617-8 in spirit: one
// shape for one thing, all in units of the symbol's half-size with x along the flow. from memory

#include "core/sheet/mark_pen.h"

namespace sump {

namespace {

Ring box(Point2 low, Point2 high) {
  return {low, {high.x, low.y}, high, {low.x, high.y}};
}

void bowTie(SymbolPen& pen) {
  pen.open({{-1, 0.6}, {-1, -0.6}, {0, 0}});
  pen.open({{1, 0.6}, {1, -0.6}, {0, 0}});
}

/// A triangle with the flow against a seat.
void check(SymbolPen& pen, double from, double to) {
  pen.open({{from, 0.55}, {from, -0.55}, {to, 0}});
  pen.path({{to, 0.6}, {to, -0.6}});
}

void unionJoint(SymbolPen& pen) {
  pen.path({{0, 0.8}, {0, -0.8}});
  pen.path({{-0.3, 0.5}, {-0.3, -0.5}});
  pen.path({{0.3, 0.5}, {0.3, -0.5}});
}

/// Two checks in one body with the relief opening between them to the outside.
void reducedPressure(SymbolPen& pen) {
  pen.open(box({-1.6, -0.8}, {1.6, 0.8}));
  check(pen, -1.4, -0.2);
  check(pen, 0.2, 1.4);
  pen.solid({{-0.35, -0.8}, {0.35, -0.8}, {0, -1.5}});
}

void airGap(SymbolPen& pen) {
  pen.open(box({-0.35, -0.5}, {0.35, 0.5}));
  pen.path({{-0.35, 0.9}, {-0.35, -0.9}});
  pen.path({{0.9, 0.9}, {0.35, 0.4}, {0.35, -0.4}, {0.9, -0.9}});
}

void strainer(SymbolPen& pen) {
  pen.open(box({-1, -0.5}, {1, 0.5}));
  pen.path({{-0.4, 0.5}, {0.9, -1.0}});
  pen.path({{0.6, -1.2}, {1.15, -0.75}});
}

void solenoid(SymbolPen& pen) {
  bowTie(pen);
  pen.path({{0, 0}, {0, 0.7}});
  pen.open(box({-0.45, 0.7}, {0.45, 1.5}));
  pen.path({{-0.45, 0.7}, {0.45, 1.5}});
}

void crossedBox(SymbolPen& pen) {
  pen.open(box({-1, -1}, {1, 1}));
  pen.path({{-1, -1}, {1, 1}});
  pen.path({{-1, 1}, {1, -1}});
}

void grated(SymbolPen& pen) {
  pen.openCircle({0, 0}, 0.8);
  pen.path({{-0.75, 0.25}, {0.75, 0.25}});
  pen.path({{-0.75, -0.25}, {0.75, -0.25}});
  pen.path({{0, 0.8}, {0, -0.8}});
}

/// Converging nozzle, air inlet at the throat, diverging outlet.
void eductor(SymbolPen& pen) {
  pen.open({{-kEductorInlet, 0.6}, {0, 0.18}, {0, -0.18}, {-kEductorInlet, -0.6}});
  pen.open({{0, 0.18}, {kEductorOutlet, 0.5}, {kEductorOutlet, -0.5}, {0, -0.18}});
  pen.path({{0, 0.18}, {0, 1.0}});
}

} // namespace

Frame eductorFrame(const Frame& end, double size, MarkPen pen) {
  const Frame throat{end.toSite({-kEductorOutlet * size, 0}), end.angle};
  const double half = kEductorHalf * size;
  pen.ring(throat.rectangle({-kEductorInlet * size, -half}, {kEductorOutlet * size, half}),
           std::nullopt, FillStyle{Ink::White});
  return throat;
}

void drawPart(SymbolPen& pen, PartKind kind) {
  switch (kind) {
  case PartKind::Union:
    return unionJoint(pen);
  case PartKind::BallValve:
    bowTie(pen);
    return pen.solidCircle({0, 0}, 0.3);
  case PartKind::GateValve:
    bowTie(pen);
    return pen.path({{0, 0.6}, {0, -0.6}});
  case PartKind::CheckValve:
    return check(pen, -0.8, 0.6);
  case PartKind::BackwaterValve:
    pen.open(box({-1.1, -0.9}, {1.1, 0.9}));
    return check(pen, -0.8, 0.6);
  case PartKind::ReducedPressureAssembly:
    return reducedPressure(pen);
  case PartKind::DoubleCheck:
    check(pen, -1.2, -0.1);
    return check(pen, 0.1, 1.2);
  case PartKind::AirGap:
    return airGap(pen);
  case PartKind::Strainer:
    return strainer(pen);
  case PartKind::Cleanout:
    pen.openCircle({0, 0}, 0.9);
    return pen.solid(box({-0.35, -0.35}, {0.35, 0.35}));
  case PartKind::Reducer:
    return pen.open({{-0.8, 0.7}, {0.8, 0.3}, {0.8, -0.3}, {-0.8, -0.7}});
  case PartKind::PullBox:
    return crossedBox(pen);
  case PartKind::SolenoidValve:
    return solenoid(pen);
  }
}

/// A round body with its square grate.
void drawFloorDrain(SymbolPen& pen) {
  pen.openCircle({0, 0}, 1);
  pen.open(box({-0.6, -0.6}, {0.6, 0.6}));
  pen.path({{-0.6, -0.6}, {0.6, 0.6}});
  pen.path({{-0.6, 0.6}, {0.6, -0.6}});
}

void drawEnd(SymbolPen& pen, EndFitting fitting) {
  switch (fitting) {
  case EndFitting::Plain:
    return;
  case EndFitting::Tee:
    return pen.path({{0, 1}, {0, -1}});
  case EndFitting::ElbowDown:
    return pen.openCircle({0, 0}, 0.7);
  case EndFitting::ElbowUp:
    pen.openCircle({0, 0}, 0.7);
    return pen.solidCircle({0, 0}, 0.2);
  case EndFitting::FootValve:
    pen.openCircle({0, 0}, 0.9);
    return pen.solid({{-0.6, 0.45}, {-0.6, -0.45}, {0.5, 0}});
  case EndFitting::Strainer:
    return grated(pen);
  case EndFitting::Eductor:
    return eductor(pen);
  case EndFitting::Cap:
    pen.path({{0, 0.8}, {0, -0.8}});
    return pen.path({{0.2, 0.5}, {0.2, -0.5}});
  case EndFitting::ScreenedVent:
    grated(pen);
    return pen.path({{0.8, 0.6}, {0.8, -0.6}});
  }
}

} // namespace sump
