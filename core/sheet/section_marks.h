#pragma once
// Long sections as marks, as sheet/marks.h does it for the plan view: the sheet maps them to paper,
// the window to the screen; neither decides again what a vault looks like from the side.

#include "core/sheet/marks.h"
#include "core/study/profile.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

/// The plane that a section is drawn on: x is the station and y the elevation times `stretch`, both
/// in metres.
struct SectionPlane {
  double stretch = 1;
  Point2 at(double station, Length level) const { return {station, inMetres(level) * stretch}; }
  Length level(Point2 p) const { return metres(p.y / stretch); }
};

/// In drawing order. `foot`: the lowest level that the drawing shows, where it is not the
/// section's.
std::vector<Mark> sectionMarks(const RunProfile& profile, const SectionPlane& plane,
                               std::optional<Length> foot = {});
std::vector<Mark> sectionMarks(const TrainProfile& profile, const SectionPlane& plane,
                               std::optional<Length> foot = {});

/// What the section shows, from the lowest to the highest level; some air over the ground.
struct SectionExtent {
  double from = 0, to = 0; ///< stations
  Length low, high;
};
SectionExtent sectionExtent(const RunProfile& profile);
SectionExtent sectionExtent(const TrainProfile& profile);

/// The chamber of the last vault that the first suction draws from, or its last one; null: the last
/// vault has none.
const ProfileChamber* suctionChamber(const TrainProfile& profile);
/// What the words about crossing lines and the lines of manways off the cut mean, where the section
/// has them.
std::string sectionKey(const RunProfile& profile);
std::string sectionKey(const TrainProfile& profile);
/// Where the run has its least cover, between the outside of its pipe and the ground.
struct CoverPlace {
  double station = 0;
  std::size_t leg = 0;
  Length invert, top, ground;
  double drawnAt = 0; ///< its dimension's station: beside the place where walls stand there
  Length cover() const { return ground - top; }
};
/// The ground where no floor lies over it, piece by piece; a basin is no floor.
std::vector<std::vector<ProfileGround>> openGround(const RunProfile& profile);
/// Has a building or a room its floor there?
bool isIndoors(const RunProfile& profile, double station);
/// The stations between the section's edges where it cuts a wall of the structure under whose floor
/// the run is.
std::vector<double> cutWalls(const RunProfile& profile, const ProfileStructure& structure);
/// A wall over a floor.
struct CutWall {
  Id structure;
  StructureKind kind = StructureKind::Building;
  double from = 0, to = 0;
  Length low, high;
};
/// The walls that the run goes through over the floors of buildings and rooms. Neither how high nor
/// how thick they are is known: they are drawn from the slab to a little over the run, up to the
/// room's face where a room stands against them.
std::vector<CutWall> passedWalls(const RunProfile& profile);
/// Of a floor's slab as it is drawn: its thickness is not known.
inline constexpr Length kDrawnSlab = metres(0.12);
/// Nothing for a run that is nowhere buried.
std::optional<CoverPlace> leastCover(const RunProfile& profile);
/// Half as wide as the riser to a part in the ground is drawn, m: a cleanout's is a pipe of the
/// run's size, a valve stands in a box that a hand and a tool reach into.
double riserHalfWidth(PartKind kind, Length outside);
/// Is the run cut off at the section's left or right edge? A whole one ends inside them.
bool isCutLeft(const RunProfile& profile);
bool isCutRight(const RunProfile& profile);
/// Points of the profile that are one place: a leg of no length lies between them.
inline constexpr double kSameLevel = 1e-6; ///< m
bool repeats(const std::vector<ProfilePoint>& points, std::size_t i);
/// The station of the groundwater's sign.
double groundwaterSign(double from, double to);
/// The station of the low water's sign in its chamber.
double lowWaterSign(const ProfileChamber& chamber);

/// Where a text had better stand, seen from what it is about.
enum class NoteSide { Above, Below, Right, Left, Centre };

/// A piece of the section, by its stations and levels.
struct SectionArea {
  double from = 0, to = 0;
  Length low, high;
};

/// A text of the section; where it stands is for the one who draws it.
struct SectionNote {
  Id object;
  double station = 0; ///< of what it is about
  Length level;
  std::string text;
  NoteSide side = NoteSide::Above;
  Ink ink = Ink::Black;
  int weight = 0;  ///< 0 goes first; where there is no room the last are left out
  double span = 0; ///< metres along the section that it may fill without covering others; 0: none
  std::string where{};  ///< tells its place where the text stands elsewhere: `Vault 1, chamber 2`
  bool inOrder = false; ///< stands among its object's such notes by station
  std::string brief{};  ///< what stands for the text where there is less room; empty: nothing
  /// It names a level, whose line is drawn along these: it stands on one of them at that height.
  std::vector<SectionArea> lines{};
  std::optional<SectionArea> inside{}; ///< it stands in here or is left out
  bool isListed =
      false;            ///< the section's tables tell it too: where there is no room it is left out
  bool pointed = false; ///< always with a leader
};

/// Names, levels, slopes, drops and clearances in the project's units, by weight.
std::vector<SectionNote> sectionNotes(const RunProfile& profile, UnitSystem units);
std::vector<SectionNote> sectionNotes(const TrainProfile& profile, UnitSystem units);

} // namespace sump
