#include "core/sheet/room_circuits.h"

#include "core/sheet/circuits.h"
#include "core/sheet/room_figure.h"
#include "core/sheet/room_parts.h"

#include <algorithm>

namespace sump {

namespace {

const LineStyle kCircuit{Ink::ServiceRed, 0.35, {2, 1}};
const LineStyle kAbout{Ink::White, 1.2, {}}; ///< so that it is seen on what is black, too

constexpr double kLane = 0.05; ///< m, between lines that are drawn side by side

class Lines {
public:
  Lines(const SheetJob& job, const EquipmentRoom& room)
      : job_(job), room_(room), wall_(room, *room.panel), panel_(onWall(wall_, *room.panel)) {}

  std::vector<CircuitLine> take() {
    const std::vector<Circuit> circuits = circuitsOf(job_);
    const std::vector<RoomDisconnect> disconnects = disconnectsIn(job_, room_);
    const std::vector<RoomPart> parts = partsIn(job_, room_);
    for (std::size_t i = 0; i < circuits.size(); ++i) {
      if (!circuits[i].inRoom) continue;
      of_ = circuits[i].of;
      name_ = "circuit " + std::to_string(i + 1);
      for (const RoomDisconnect& at : disconnects)
        if (at.supply->id == of_) addSupply(at);
      for (const RoomPart& part : parts)
        if (part.part->id == of_) addValve(wall_.toWall(part.local));
    }
    return std::move(made_);
  }

private:
  void put(const Polyline& way) {
    made_.push_back({of_, name_, {}});
    for (Point2 p : way)
      made_.back().way.push_back(wall_.toRoom(p));
  }

  /// Where the wire leaves the panel toward there: its nearer side, at this distance off the wall.
  Point2 leave(Point2 to, double off) const {
    return {std::clamp(to.x, panel_.low.x, panel_.high.x), off};
  }

  void addSupply(const RoomDisconnect& at) {
    const Point2 to = wall_.toWall(at.local);
    const bool beside = to.y < panel_.high.y;
    if (beside) {
      const double off = std::clamp(to.y, panel_.low.y, panel_.high.y);
      put({leave(to, off), {to.x, off}, to});
    } else {
      addRoundCorner(to);
    }
    if (at.supply->kind == SupplyKind::Motor3Phase && room_.skid) addMotors(to, beside);
  }

  /// To another wall, each in a lane of its own: what hangs there is often in one line.
  void addRoundCorner(Point2 to) {
    const double lane = kLane * roundCorner_++;
    const double off = panel_.centre().y + lane, x = to.x - awayFromPanel(to) * lane;
    put({leave(to, off), {x, off}, {x, to.y}, to});
  }

  double awayFromPanel(Point2 p) const { return p.x < panel_.centre().x ? -1 : 1; }

  /// Behind the panel, where it stands between. From another wall clear of the way there, on the
  /// side of the wall.
  void addMotors(Point2 from, bool beside) {
    constexpr double kBehind = 0.03, kInto = 0.12; // m off the wall, into the skid
    const PaperBox skid = onWall(wall_, *room_.skid);
    const bool before = from.x < skid.low.x;
    const double x = before ? skid.low.x + kInto : skid.high.x - kInto;
    const double back = beside ? from.x : from.x + awayFromPanel(from) * kLane;
    put({from, {back, from.y}, {back, kBehind}, {x, kBehind}, {x, skid.centre().y}});
    if (beside) made_.back().way.erase(made_.back().way.begin());
  }

  /// Off the wall as far as the panel reaches, so that it keeps clear of the disconnects; round the
  /// front of a skid that stands in its way.
  void addValve(Point2 to) {
    constexpr double kInside = 0.03, kApart = 0.04, kBefore = 0.05; // m
    const double lane = kApart * valves_++;
    const double off = panel_.high.y - kInside - lane;
    const Point2 from = leave(to, off), corner{to.x, off};
    const PaperBox skid = room_.skid ? onWall(wall_, *room_.skid) : PaperBox{};
    if (!room_.skid || (!cutsBox(from, corner, skid) && !cutsBox(corner, to, skid)))
      return put({from, corner, to});
    const PaperBox round = skid.grown(kBefore + lane);
    const double x = to.x < from.x ? std::min(round.high.x, from.x) : std::max(round.low.x, from.x);
    put({from, {x, off}, {x, round.high.y}, {to.x, round.high.y}, to});
  }

  const SheetJob& job_;
  const EquipmentRoom& room_;
  WallFrame wall_;
  PaperBox panel_;
  Id of_;
  std::string name_;
  int valves_ = 0;
  int roundCorner_ = 0;
  std::vector<CircuitLine> made_;
};

} // namespace

WallFrame::WallFrame(const EquipmentRoom& room, const RoomBox& box)
    : side_(nearestWall(room, box.corner, box.high())), length_(inMetres(room.length)),
      width_(inMetres(room.width)) {}

Point2 WallFrame::toWall(Point2 p) const {
  switch (side_) {
  case Side::South:
    return p;
  case Side::North:
    return {p.x, width_ - p.y};
  case Side::East:
    return {p.y, length_ - p.x};
  case Side::West:
    break;
  }
  return {p.y, p.x};
}

Point2 WallFrame::toRoom(Point2 p) const {
  switch (side_) {
  case Side::South:
    return p;
  case Side::North:
    return {p.x, width_ - p.y};
  case Side::East:
    return {length_ - p.y, p.x};
  case Side::West:
    break;
  }
  return {p.y, p.x};
}

PaperBox onWall(const WallFrame& wall, const RoomBox& box) {
  return around({wall.toWall(box.corner), wall.toWall(box.high())});
}

std::vector<RoomDisconnect> disconnectsIn(const SheetJob& job, const EquipmentRoom& room) {
  std::vector<RoomDisconnect> found;
  for (const Supply& supply : job.plan().basis.wiring.supplies) {
    if (!supply.disconnect) continue;
    const Point2 local = room.frame().toLocal(*supply.disconnect);
    if (insideOf(room).holds(local)) found.push_back({&supply, local});
  }
  return found;
}

bool isBesidePanel(const EquipmentRoom& room, Point2 local) {
  const WallFrame wall(room, *room.panel);
  return wall.toWall(local).y < onWall(wall, *room.panel).high.y;
}

std::vector<CircuitLine> circuitLines(const SheetJob& job, const EquipmentRoom& room) {
  return room.panel ? Lines(job, room).take() : std::vector<CircuitLine>();
}

void drawCircuits(const std::vector<CircuitLine>& lines, Drawing& d) {
  std::vector<Mark> marks;
  for (const CircuitLine& line : lines) {
    MarkPen pen(marks, line.of, Layer::Run);
    pen.path(line.way, kAbout);
    pen.path(line.way, kCircuit);
    d.named.push_back({line.way, line.name, Ink::ServiceRed});
  }
  const auto box = std::find_if(d.marks.rbegin(), d.marks.rend(),
                                [](const Mark& mark) { return mark.layer == Layer::Room; });
  d.marks.insert(box.base(), marks.begin(), marks.end());
}

std::string circuitsIn(const SheetJob& job, const std::string& conduit) {
  const std::vector<Circuit> circuits = circuitsOf(job);
  std::string text;
  int count = 0;
  for (std::size_t i = 0; i < circuits.size(); ++i) {
    if (circuits[i].conduit != conduit) continue;
    text += (count++ > 0 ? ", " : " ") + std::to_string(i + 1);
  }
  return count == 0 ? text : (count > 1 ? "circuits" : "circuit") + text;
}

} // namespace sump
