#pragma once
// The line on the site that a long section is cut along. Private to core/study.

#include "core/geometry/surface.h"
#include "core/study/profile.h"

namespace sump {

/// A stretch of the line, by station.
struct CutSpan {
  double from = 0, to = 0;
  double middle() const { return (from + to) / 2; }
};

class CutLine {
public:
  CutLine() = default;
  /// The line without points that stand above each other, lengthened straight on by `before` and
  /// `after` metres; station 0 stays at its first point. A line without length runs along `axis`.
  CutLine(const Polyline& line, double before, double after, Point2 axis = {1, 0});

  double from() const { return stations_.front(); }
  double to() const { return stations_.back(); }
  Point2 at(double station) const;
  /// Where it lies in the outline, in order; stretches that touch are one.
  std::vector<CutSpan> within(const Ring& outline) const;
  /// Station of its nearest point to `p` and how far that is.
  std::pair<double, double> nearest(Point2 p) const;
  const Polyline& points() const { return points_; }
  double station(std::size_t point) const { return stations_[point]; }

private:
  Polyline points_;
  std::vector<double> stations_;
};

/// The surface over the line from one station to another: its breaks to half a millimetre. Empty
/// where no ground is known.
std::vector<ProfileGround> groundAlong(const Surface& ground, const CutLine& line, double from,
                                       double to);

/// The vault's shell and levels; stations, baffles, chambers and manways are for the caller.
ProfileVault profileShell(const Vault& vault, const VaultStudy& study);
/// Rest and peak level of a chamber.
ProfileChamber profileChamber(const Study& study, const Id& vault, int number, CutSpan span);
ProfileManway profileManway(const Manway& manway, const VaultStudy& study, double station);
/// Those that the line cuts in the vault, and before or behind it those of the chambers that it
/// cuts. `cut`: has its ends and chambers.
std::vector<ProfileManway> profileManways(const Vault& vault, const VaultStudy& study,
                                          const CutLine& line, const ProfileVault& cut);
std::optional<ProfileBore> profileBore(const Catalog& catalog, const std::string& pipe,
                                       const std::string& size);

} // namespace sump
