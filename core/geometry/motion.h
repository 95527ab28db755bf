#pragma once
// Shifting, turning and mirroring the plane: what keeps every distance.

#include "core/geometry/frame.h"

namespace sump {

class Motion {
public:
  static Motion shift(Point2 by) {
    Motion m;
    m.shift_ = by;
    return m;
  }
  /// Counter-clockwise.
  static Motion turn(Point2 about, Angle by) {
    Motion m;
    m.pivot_ = about;
    m.setTurn(by);
    return m;
  }
  /// About the line through two points; two points at one place mirror about the line to the north.
  static Motion mirror(Point2 a, Point2 b) {
    const Point2 along = a == b ? Point2{0, 1} : b - a;
    Motion m;
    m.mirrored_ = true;
    m.pivot_ = a;
    m.setTurn(radians(2 * std::atan2(along.y, along.x)));
    return m;
  }
  /// Takes what stands in one frame to the same local place in the other.
  static Motion between(const Frame& from, const Frame& to) {
    Motion m;
    m.pivot_ = from.origin;
    m.setTurn(to.angle - from.angle);
    m.shift_ = to.origin - from.origin;
    return m;
  }

  bool mirrored() const { return mirrored_; }
  /// Of a point.
  Point2 operator()(Point2 p) const { return pivot_ + vector(p - pivot_) + shift_; }
  /// Of a direction and length, without the shift.
  Point2 vector(Point2 v) const {
    const double y = mirrored_ ? -v.y : v.y;
    return {cosine_ * v.x - sine_ * y, sine_ * v.x + cosine_ * y};
  }
  /// Of a direction counter-clockwise from east, within (-180, 180] degrees.
  Angle operator()(Angle direction) const {
    const double turned =
        std::remainder(inRadians(mirrored_ ? turn_ - direction : turn_ + direction), 2 * kPi);
    return radians(turned <= -kPi ? kPi : turned);
  }

private:
  /// Quarter turns are exact.
  void setTurn(Angle turn) {
    constexpr double kNothing = 1e-15;
    turn_ = turn;
    cosine_ = std::cos(inRadians(turn));
    sine_ = std::sin(inRadians(turn));
    if (std::abs(cosine_) < kNothing) cosine_ = 0;
    if (std::abs(sine_) < kNothing) sine_ = 0;
  }

  bool mirrored_ = false; ///< y is turned round before the turn
  Point2 pivot_;
  Angle turn_;
  double cosine_ = 1;
  double sine_ = 0;
  Point2 shift_;
};

} // namespace sump
