#pragma once
// Draws the things of a long section on its plane. Private to core/sheet.

#include "core/sheet/mark_pen.h"
#include "core/sheet/section_marks.h"

namespace sump {

/// Draws on the plane; boxes are given by stations and levels.
class SectionPen {
public:
  SectionPen(SectionPlane plane, double from, double to, Length low)
      : plane_(plane), from_(from), to_(to), low_(low) {}

  /// `open`: where no floor lies over it.
  void ground(const std::vector<ProfileGround>& ground,
              const std::vector<std::vector<ProfileGround>>& open,
              const std::vector<ProfileStructure>& floors);
  void groundwater(std::optional<Length> level);
  void vault(const ProfileVault& vault);
  void lowWater(const Id& vault, const ProfileChamber& chamber, Length level);
  void structure(const ProfileStructure& structure);
  /// Of a building, under the walls that the section cuts.
  void footings(const ProfileStructure& structure, const std::vector<double>& walls);
  /// With a break where it goes on up.
  void wall(const CutWall& wall);
  void pipe(const Id& id, Service service, const std::optional<ProfileBore>& bore, Point2 a,
            Point2 b);
  void arrow(const Id& id, Service service, Point2 a, Point2 b);
  void end(const Id& id, Service service, EndFitting fitting,
           const std::optional<ProfileBore>& bore, Point2 at, Point2 inward,
           std::optional<Length> leg);
  void endOn(const Id& id, Service service, double station, Length low, Length high);
  void breakOff(const Id& id, Point2 at);
  /// The riser by which a part in the ground is reached, with its cover.
  void riser(const ProfilePart& part, const std::optional<ProfileBore>& bore);
  void part(const ProfilePart& part, Service service, const std::optional<ProfileBore>& bore,
            Point2 along);
  /// The tee on which another run ends, seen in the direction that the other runs.
  void branch(const Id& id, Service service, const ProfileBranch& branch,
              const std::optional<ProfileBore>& bore, Length invert);
  /// The float on its cable below the end of its conduit.
  void floatSwitch(const Id& id, Service service, Point2 from, Length level);
  void crossing(const ProfileCrossing& crossing);
  void cover(const CoverPlace& least);
  /// With the signs of the water levels on top, where no pipe stands.
  std::vector<Mark> take();

private:
  Ring box(double from, double to, Length low, Length high) const {
    return {plane_.at(from, low), plane_.at(to, low), plane_.at(to, high), plane_.at(from, high)};
  }
  Ring ellipse(double station, Length low, Length high) const;
  MarkPen pen(const Id& id, Layer layer) { return {marks_, id, layer}; }
  void surface(const std::vector<ProfileGround>& piece);
  void water(const Id& vault, const ProfileChamber& chamber);
  void manway(const ProfileVault& vault, const ProfileManway& manway);
  /// The usual triangle on a water level, between these stations and best at `wanted`.
  struct Sign {
    double from, to, wanted;
    Length level;
    bool inGround = false; ///< it touches no structure
  };
  Ring triangle(double station, Length level) const;
  double clearStation(const Sign& sign) const;

  SectionPlane plane_;
  double from_, to_;
  Length low_;
  std::vector<Mark> marks_;
  std::vector<Sign> signs_;
};

} // namespace sump
