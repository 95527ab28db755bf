#pragma once
// Long sections: one run, or the whole vault train, unfolded along its length and looked at from
// the side. Computed on demand; the window's long section and the sheets draw the same ones.
//
// Stations are plan metres along the line (not along the slope, as RunPoint::station is), 0 at the
// run's start or at the first vault's outside face; a vertical drop is two points at one station.
// What a line goes through reaches past its ends, so stations may be below 0. All levels are
// elevations on the site datum.

#include "core/catalog/catalog.h"
#include "core/study/study.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sump {

/// A point that the plan has no corner for, as RunPoint::vertex has it.
inline constexpr int kNoVertex = -2;

/// The pipe of one leg. Its wall stands outside the bore: the invert is the inside bottom.
struct ProfileBore {
  Length inside, outside;
  Length arm{}; ///< from the axis to the open end of a tee's or elbow's arm
  Length crown(Length invert) const { return invert + inside; } ///< inside top
  Length top(Length invert) const { return invert + (inside + outside) / 2.0; }
  Length underside(Length invert) const { return invert - (outside - inside) / 2.0; }
};

struct ProfileGround {
  double station = 0;
  Point2 at; ///< site
  Length level;
};

struct ProfileChamber {
  int number = 0;
  double from = 0, to = 0;
  std::optional<Length> rest;  ///< water level
  Decided<Length> peak;        ///< the higher of pump running and pump stopped
  std::optional<Length> low{}; ///< still water when the float has stopped the pump
};

struct ProfileBaffle {
  Id id;
  double from = 0, to = 0;
  Length bottom, top;
};

struct ProfileManway {
  Id id;
  double station = 0; ///< of its middle
  Length diameter;
  std::optional<Length> rim, grade;
  bool beyond = false; ///< it stands off the cut
};

/// A vault as the line cuts it.
struct ProfileVault {
  Id id;
  std::string name;
  double from = 0, to = 0;             ///< outside faces
  double insideFrom = 0, insideTo = 0; ///< inside faces; alike where only a wall is cut
  Length underside, floor, lidUnderside, lidTop;
  std::vector<ProfileBaffle> baffles;
  std::vector<ProfileChamber> chambers;
  std::vector<ProfileManway> manways;
};

enum class StructureKind { Basin, Room, Building };

/// Something else that the line enters.
struct ProfileStructure {
  StructureKind kind = StructureKind::Basin;
  Id id;
  std::string name;
  double from = 0, to = 0;
  std::optional<Length> level;  ///< rim of a basin, floor of a room or building
  std::optional<Length> bottom; ///< of a basin, with its sump; underside of a building's footing
  /// The outlet's invert of a basin with a sump, which stays full up to there.
  std::optional<Length> outlet{};
};

/// A corner or an end of the run.
struct ProfilePoint {
  int vertex = kNoVertex; ///< -1 the start, 0.. the corner, number of corners the end
  double station = 0;
  Point2 at; ///< site
  Length invert;
  std::optional<Length> ground;
  std::optional<Length> cover; ///< ground less the pipe's outside top; only where it is buried
  /// The plan states this level. Otherwise it is graded between its neighbours, or an end's target
  /// knows it.
  bool typed = false;
};

/// Leg i joins point i to point i + 1.
struct ProfileLeg {
  std::string size;                ///< nominal, at its start
  std::optional<ProfileBore> bore; ///< nothing for a size that the catalogue does not have
  double slope = 0;                ///< fall over plan length; 0 when vertical
  bool vertical = false;
};

struct ProfileDrop {
  std::size_t leg = 0;
  double station = 0;
  Length start, end; ///< inverts, with the flow; a rise when the end is higher
};

struct ProfilePart {
  Id id;
  PartKind kind = PartKind::Union;
  std::size_t leg = 0;
  double station = 0;
  Length invert;
  std::optional<Length> cover{}; ///< at grade, of the riser by which it is reached
};

/// Another run or an existing line that this one meets in plan without being joined to it.
struct ProfileCrossing {
  Id id;
  std::string name;
  std::optional<Service> service; ///< of a run; nothing for an existing line
  double station = 0;
  Point2 at;                            ///< site
  std::optional<Length> underside, top; ///< of its outside; unknown for a line of unknown level
  /// Between the outsides of both, straight up; negative where they would cut into each other.
  std::optional<Length> clearance;
  bool above = false;    ///< it passes over this run
  bool repeated = false; ///< it meets this run at another station too
  bool joined = false;   ///< an existing line that this run taps there
};

/// Where another run ends on this one.
struct ProfileBranch {
  Id id;
  Service service = Service::Inlet; ///< of the other run
  double station = 0;
  Length invert; ///< of the other run's end
  std::optional<ProfileBore> bore;
};

struct ProfileCover {
  double station = 0;
  Length cover;
};

struct RunProfile {
  Id run;
  std::string name;
  Service service = Service::Inlet;
  double from = 0, to = 0; ///< what is shown: the run, the vaults at its ends and a little more
  double length = 0;       ///< of the run in plan
  EndFitting startFitting = EndFitting::Plain, endFitting = EndFitting::Plain;
  std::optional<Length> startLeg, endLeg; ///< open lower ends of their down legs
  /// What it comes from and goes to, where no structure of the section shows it.
  std::string startsAt, endsAt;
  std::vector<ProfilePoint> points;
  std::vector<ProfileLeg> legs;
  std::vector<ProfileDrop> drops;
  std::vector<ProfilePart> parts;
  std::vector<ProfileBranch> branches; ///< by station
  std::vector<ProfileVault> vaults;    ///< by station
  std::vector<ProfileStructure> structures;
  std::optional<Length> floatLevel;       ///< at which the float on this conduit switches
  std::vector<ProfileCrossing> crossings; ///< by station
  std::vector<ProfileGround> ground;      ///< from `from` to `to`; empty where none is known
  std::optional<ProfileCover> leastCover; ///< RunStudy::leastCover
  std::optional<Length> groundwater;
};

/// Nothing for a run that is not there or whose levels are not known (RunStudy::resolved). `study`
/// is of `plan`.
std::optional<RunProfile> runProfile(const Plan& plan, const Study& study, const Catalog& catalog,
                                     std::string_view run);

struct TrainPoint {
  int vertex = kNoVertex; ///< as ProfilePoint; kNoVertex at a wall or where the drawing breaks off
  double station = 0;
  Length invert;
  bool typed = false;
};

/// A run as far as it is in the train.
struct TrainRun {
  Id id;
  std::string name;
  Service service = Service::Inlet;
  std::string size;
  std::optional<ProfileBore> bore; ///< at its start
  EndFitting startFitting = EndFitting::Plain, endFitting = EndFitting::Plain;
  std::optional<Length> startLeg, endLeg; ///< open lower ends of their down legs
  std::vector<TrainPoint> points;         ///< with the flow
  bool carriesFlow = false;               ///< inlet, interconnect, link, overflow
  bool comesFromElsewhere = false;        ///< it is broken off before its first point
  bool goesElsewhere = false;             ///< it is broken off after its last point
  /// The broken-off end goes through a side wall: toward the reader or away.
  bool throughSide = false;
  std::vector<ProfileDrop> drops; ///< `leg` counts the pieces between `points`
};

/// All vaults in flow order, one behind the other along the flow. Within a vault stations are true
/// along its length; a run that leaves by a side wall for the next vault is drawn through the end
/// wall, at the level that it has in the wall. Between two vaults stands the plan length that their
/// link has outside both, or else their distance.
struct TrainProfile {
  double from = 0, to = 0;
  std::vector<ProfileVault> vaults;
  std::vector<TrainRun> runs;        ///< those that end in a chamber, in the plan's order
  std::vector<ProfileGround> ground; ///< over the vaults' middles; straight from one to the next
  std::optional<Length> lowWater;    ///< the low-level float's, where the suction draws
  std::optional<Length> groundwater;
};

/// How much of a run is drawn outside the first and the last vault, m.
inline constexpr double kTrainStub = 1.2;

/// Nothing for a plan without vaults.
std::optional<TrainProfile> trainProfile(const Plan& plan, const Study& study,
                                         const Catalog& catalog);

} // namespace sump
