#pragma once
// The Plan: everything that a designer decides about one site, and nothing that can be computed.
//
// Plain values. Coordinates are site metres (geometry/point.h); `at` fields that say "local" are in
// the frame of the object they belong to. Elevations are on the site datum; pipe elevations are
// inverts (inside bottom) unless the name says otherwise. Optional elevations that are left out are
// worked out by study/.

#include "core/geometry/frame.h"
#include "core/geometry/point.h"
#include "core/plan/annotations.h"
#include "core/plan/basis.h"
#include "core/plan/items.h"
#include "core/plan/service.h"
#include "core/units/quantity.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace sump {

/// Title-block fields after ISO 7200, and the units the project is read in.
struct Project {
  std::string title;
  std::string supplementaryTitle;
  std::string legalOwner;
  std::string siteAddress;
  std::string identificationNumber;
  std::string revision;
  std::string issueDate; ///< ISO 8601 date, as typed
  std::string createdBy;
  std::string approvedBy;
  std::string documentStatus;
  UnitSystem units = UnitSystem::UsCustomary;
  std::string profile; ///< key of the code profile in resources/limits; empty: generic
  bool operator==(const Project&) const = default;
};

struct Site {
  Ring boundary;                       ///< property line; may be empty
  std::string datum;                   ///< what elevation 0 means, in words
  Angle north;                         ///< true north, counter-clockwise from +y
  std::optional<Length> groundwater;   ///< highest expected elevation
  std::optional<Length> frostDepth;    ///< below grade
  std::optional<Length> groundDefault; ///< grade elevation where no spot elevation was shot
  bool operator==(const Site&) const = default;
};

struct Building {
  Id id;
  std::string name;
  Ring outline;
  std::optional<Length> floor;     ///< finished floor elevation
  std::optional<Length> footing;   ///< elevation of the underside of its footing
  std::optional<Length> roof = {}; ///< elevation of its roof's highest point, ridge or parapet
  bool operator==(const Building&) const = default;
};

struct Pavement {
  Id id;
  std::string name;
  Ring outline;
  bool traffic = false; ///< vehicles drive on it
  bool operator==(const Pavement&) const = default;
};

enum class UtilityKind { PotableWater, Sewer, StormDrain, Gas, Electric, Communication, Other };

/// A line that is already in the ground.
struct Utility {
  Id id;
  std::string name;
  UtilityKind kind = UtilityKind::Other;
  Polyline path;
  std::optional<Length> elevation; ///< centreline; often unknown
  std::optional<Length> diameter;
  bool publicMain = false;
  bool operator==(const Utility&) const = default;
};

struct SpotElevation {
  Id id;
  Point2 at;
  Length elevation;
  bool operator==(const SpotElevation&) const = default;
};

struct Well {
  Id id;
  std::string name;
  Point2 at;
  bool operator==(const Well&) const = default;
};

enum class BasinKind { CatchBasin, TrenchDrain };

/// Where wash water is caught. A rectangle centred on `at`, length along its local x.
struct Basin {
  Id id;
  std::string name;
  BasinKind kind = BasinKind::CatchBasin;
  Point2 at;
  Angle angle;
  Length length;
  Length width;
  Length rim;
  Length outletInvert;
  std::optional<Length> sump = {}; ///< of its bottom under the outlet's invert, where grit stays
  bool operator==(const Basin&) const = default;
  Frame frame() const { return {at, angle}; }
};

struct SewerConnection {
  Id id;
  std::string name;
  Point2 at;
  Length invert;
  std::optional<Length> upstreamManholeRim; ///< next upstream manhole cover of the public sewer
  bool operator==(const SewerConnection&) const = default;
};

/// Where product water is used and the wash-demand signal comes from; a rectangle centred on `at`.
struct WashEquipment {
  Id id;
  std::string name;
  Point2 at;
  Angle angle;
  Length length;
  Length width;
  Length inletElevation; ///< invert of the product water inlet
  std::string inletSize; ///< nominal, `2`
  bool operator==(const WashEquipment&) const = default;
  Frame frame() const { return {at, angle}; }
};

/// A place on the equipment where a run ends. `at` is local to the room.
struct Port {
  Id id;
  std::string name;
  Service service = Service::Suction;
  Point2 at;
  Length height; ///< above the floor: of the invert; of an upright end, its opening
  std::string size;
  bool operator==(const Port&) const = default;
};

/// An upright box in the room, local coordinates of its low corner; length along local x.
struct RoomBox {
  Point2 corner;
  Length length;
  Length depth;
  Length height;
  Point2 high() const { return corner + Point2{inMetres(length), inMetres(depth)}; }
  bool operator==(const RoomBox&) const = default;
};

enum class Side { South, East, North, West }; ///< of the room, in its own frame

struct Door {
  Side side = Side::South;
  Length offset; ///< from the wall's start, counter-clockwise round the room, to the door's start
  Length width;
  bool operator==(const Door&) const = default;
};

/// Inside-clear rectangle from the local origin (low corner) to (length, width).
struct EquipmentRoom {
  Id id;
  std::string name;
  Point2 corner;
  Angle angle;
  Length length; ///< along local x
  Length width;  ///< along local y
  Length floor;  ///< elevation
  std::optional<Door> door;
  std::optional<RoomBox> skid;
  std::optional<RoomBox> plumbingArea; ///< where all pipe rises, about 2 ft square
  std::optional<RoomBox> panel;
  std::vector<Port> ports;
  std::optional<Point2> floorDrain = {}; ///< local
  bool operator==(const EquipmentRoom&) const = default;
  Frame frame() const { return {corner, angle}; }
};

/// A wall across a vault, at `offset` from the inside face of the inlet end (local low x) to the
/// baffle's near face.
struct Baffle {
  Id id;
  Length offset;
  Length thickness;
  Length bottomGap; ///< 0: stands on the floor
  Length topGap;    ///< 0: reaches the lid
  bool operator==(const Baffle&) const = default;
};

struct Manway {
  Id id;
  Point2 at; ///< local to the vault's centre
  Length diameter;
  std::optional<Length> rim; ///< left out: at grade
  bool trafficCover = false;
  bool operator==(const Manway&) const = default;
};

/// A precast box. The vaults of a plan are listed in flow order. Local frame: origin at the centre,
/// x along `length` in the direction of flow; chambers are numbered from 1 along local x.
struct Vault {
  Id id;
  std::string name;
  std::string model; ///< catalogue key, or empty for own sizes
  Point2 centre;
  Angle angle;
  Length length; ///< outside
  Length width;  ///< outside
  Length wall;
  Length lidThickness;
  Length floorThickness;
  Length insideHeight; ///< floor to underside of lid
  Length floor;        ///< elevation of the inside floor
  bool trafficLid = false;
  bool engineered = false;         ///< designed by a licensed engineer for its load and depth
  std::optional<Mass> emptyWeight; ///< the maker's figure, with lid; left out: worked out
  std::optional<Length> collar;    ///< how far the base slab reaches beyond the walls, all round
  std::vector<Baffle> baffles;     ///< by rising offset
  std::vector<Manway> manways;
  bool operator==(const Vault&) const = default;
  Frame frame() const { return {centre, angle}; }
};

/// What a run's end is attached to; `at` is then in that object's local frame (see RunEnd).
enum class EndKind { Free, Chamber, Basin, Sewer, Port, Wash, Run };

/// What the pipe itself ends with.
enum class EndFitting {
  Plain,
  Tee,
  ElbowDown,
  ElbowUp,
  FootValve,
  Strainer,
  Eductor,
  Cap,
  ScreenedVent
};

/// Has an arm that hangs down and is open below.
constexpr bool turnsDown(EndFitting fitting) {
  return fitting == EndFitting::Tee || fitting == EndFitting::ElbowDown;
}

struct RunEnd {
  EndKind kind = EndKind::Free;
  Id target;       ///< vault, basin, sewer connection, port, wash equipment or run; empty when Free
  int chamber = 0; ///< of the vault, from 1
  /// Free: site. Chamber: local to the vault's centre. Basin, Wash: local to its centre. Sewer,
  /// Port: an offset, usually 0,0. Run: site, projected onto the other run by study/.
  Point2 at;
  /// Left out where the target knows it (basin outlet, sewer, port, wash inlet).
  std::optional<Length> invert;
  EndFitting fitting = EndFitting::Plain;
  /// Elevation of the open lower end of the pipe in the down leg of a tee or an elbow that turns
  /// down, in a chamber; left out: worked out where a check asks how deep it reaches.
  std::optional<Length> legEnd = {};
  bool operator==(const RunEnd&) const = default;
};

/// A corner between the ends. Two vertices at one place with two inverts make a vertical drop.
struct Vertex {
  Point2 at;                    ///< site
  std::optional<Length> invert; ///< left out: straight grade between the known neighbours
  bool operator==(const Vertex&) const = default;
};

enum class PartKind {
  Union,
  BallValve,
  GateValve,
  CheckValve,
  BackwaterValve,
  ReducedPressureAssembly,
  DoubleCheck,
  AirGap,
  Strainer,
  Cleanout,
  Reducer,
  PullBox,
  SolenoidValve,
};

/// Something on the run between its ends, at a fraction along one of its legs. Leg i joins point i
/// to point i+1 of: from, vertices..., to.
struct InlinePart {
  Id id;
  PartKind kind = PartKind::Union;
  int leg = 0;
  double along = 0.5;
  std::string toSize; ///< Reducer: nominal size from here on
  /// Pull box: its cover at grade is made for vehicles; left out: not said.
  std::optional<bool> trafficCover = {};
  bool operator==(const InlinePart&) const = default;
};

/// How the eductor hangs in its manway.
struct EductorMount {
  Id manway;
  Length bracketFoot; ///< elevation of the bracket's foot
  Length outletEnd;   ///< elevation of the eductor's outlet end
  std::string portSize;
  bool operator==(const EductorMount&) const = default;
};

struct Run {
  Id id;
  std::string name;
  Service service = Service::Inlet;
  std::string pipe; ///< catalogue key of the pipe product
  std::string size; ///< nominal, `6`, `1-1/2`
  RunEnd from;
  RunEnd to;
  std::vector<Vertex> vertices;
  std::vector<InlinePart> parts;
  std::optional<EductorMount> eductor;
  std::vector<Conductor> conductors; ///< of a conduit
  bool operator==(const Run&) const = default;
};

struct Plan {
  Project project;
  Site site;
  Items<Building> buildings;
  Items<Pavement> pavements;
  Items<Utility> utilities;
  Items<SpotElevation> spots;
  Items<Well> wells;
  Items<Basin> basins;
  Items<SewerConnection> sewers;
  Items<WashEquipment> washes;
  Items<EquipmentRoom> rooms;
  Items<Vault> vaults; ///< in flow order
  Items<Run> runs;
  Items<DimensionNote> notes;
  Items<Underlay> underlays;
  Basis basis;
  std::vector<Id> locked; ///< objects that gestures leave alone
  std::vector<Acceptance> acceptances;
  std::vector<RevisionEntry> revisions;
  /// The project's own values for catalog/limits.h, by limit id, in SI.
  std::map<std::string, double> limits;
  bool operator==(const Plan&) const = default;
};

/// A chamber's inside rectangle in the vault's local frame.
struct ChamberBox {
  int number = 0;
  Point2 low;
  Point2 high;
};
/// In order of local x. A vault without baffles has one chamber.
std::vector<ChamberBox> chambers(const Vault& vault);
int chamberCount(const Vault& vault);
/// Outside outline on the site.
Ring outline(const Vault& vault);
Ring outline(const EquipmentRoom& room);
Ring outline(const EquipmentRoom& room, const RoomBox& box);
/// The wall with the least between it and what reaches from `low` to `high`, local to the room; of
/// several the south one first, then east, north, west.
Side nearestWall(const EquipmentRoom& room, Point2 low, Point2 high);
Ring outline(const Basin& basin);
Ring outline(const WashEquipment& wash);
/// Of its inside; nothing where the sump's depth is not given.
std::optional<Length> bottom(const Basin& basin);

} // namespace sump
