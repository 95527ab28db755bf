#include "core/sheet/room_tables.h"

#include "core/sheet/part_list.h"
#include "core/sheet/room_parts.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/tags.h"
#include "core/units/print.h"

#include <algorithm>
#include <cmath>

namespace sump {

double WallView::right(const EquipmentRoom& room, Point2 p) const {
  switch (side) {
  case Side::South:
    return inMetres(room.length) - p.x;
  case Side::East:
    return inMetres(room.width) - p.y;
  case Side::North:
    return p.x;
  case Side::West:
    break;
  }
  return p.y;
}

double WallView::off(const EquipmentRoom& room, Point2 p) const {
  switch (side) {
  case Side::South:
    return p.y;
  case Side::East:
    return inMetres(room.length) - p.x;
  case Side::North:
    return inMetres(room.width) - p.y;
  case Side::West:
    break;
  }
  return p.x;
}

WallView wallOf(const EquipmentRoom& room) {
  const double x = inMetres(room.length), y = inMetres(room.width);
  const std::optional<RoomBox>& box = room.plumbingArea ? room.plumbingArea : room.skid;
  if (!box) return {Side::South, x};
  const Side side = nearestWall(room, box->corner, box->high());
  return {side, side == Side::South || side == Side::North ? x : y};
}

std::string runAt(const SheetJob& job, const Id& port) {
  const auto tags = runTags(job.plan());
  std::string text;
  for (const Run& run : job.plan().runs) {
    if (run.from.target == port || run.to.target == port) {
      text += (text.empty() ? "" : ", ") + tags.at(run.id);
    }
  }
  return text.empty() ? "none" : text;
}

bool endsUpright(const SheetJob& job, const Id& port) {
  for (const Run& run : job.plan().runs) {
    const RunStudy* study = job.study().run(run.id);
    if (study == nullptr || study->legs.empty()) continue;
    if ((run.from.target == port && study->legs.front().vertical) ||
        (run.to.target == port && study->legs.back().vertical))
      return true;
  }
  return false;
}

namespace {

/// Where a run comes up through the room's floor, in the room's frame.
std::optional<Point2> risesAt(const RunStudy& run, const EquipmentRoom& room) {
  const PaperBox inside{{0, 0}, {inMetres(room.length), inMetres(room.width)}};
  const double floor = inMetres(room.floor);
  for (std::size_t i = 0; i + 1 < run.points.size(); ++i) {
    const Point3 a = run.points[i].at, b = run.points[i + 1].at;
    const Point2 at = room.frame().toLocal(flat(a));
    const bool upright = distance(flat(a), flat(b)) < 1e-6 && std::abs(a.z - b.z) > 1e-6;
    if (upright && inside.holds(at) && std::min(a.z, b.z) <= floor) return at;
  }
  return std::nullopt;
}

} // namespace

std::string risersOutside(const SheetJob& job, const EquipmentRoom& room) {
  if (!room.plumbingArea) return {};
  const RoomBox& box = *room.plumbingArea;
  const PaperBox area = around({box.corner, box.high()}).grown(1e-6);
  const auto tags = runTags(job.plan());
  std::string text;
  for (const RunStudy& run : job.study().runs) {
    if (isConduit(job.plan().runs.find(run.id)->service)) continue;
    const auto at = risesAt(run, room);
    if (at && !area.holds(*at)) text += (text.empty() ? "" : ", ") + tags.at(run.id);
  }
  return text;
}

namespace {

/// The study of the run that ends at a port; null: none does.
const RunStudy* studyAt(const SheetJob& job, const Id& port) {
  for (const Run& run : job.plan().runs) {
    if (run.from.target == port || run.to.target == port) return job.study().run(run.id);
  }
  return nullptr;
}

bool isValved(const SheetJob& job, const Port& port) {
  const RunStudy* studied = studyAt(job, port.id);
  if (studied == nullptr) return false;
  return std::ranges::any_of(job.plan().runs.find(studied->id)->parts, [](const InlinePart& part) {
    return part.kind == PartKind::BallValve;
  });
}

/// What a port's pipe joins at the equipment, and which way it flows there.
std::string equipmentEnd(const SheetJob& job, const Port& port) {
  switch (port.service) {
  case Service::Suction:
    return "into pump suction";
  case Service::SpareSuction:
    return isValved(job, port) ? "spare pump suction, valve shut" : "spare pump suction, capped";
  case Service::Recirculation:
    return "out of pump discharge";
  case Service::Underflow:
    return "out of flush";
  case Service::MakeUp:
    return "into fresh-water inlet";
  case Service::Product:
    return "out of product outlet";
  case Service::FloatConduit:
  case Service::Power:
  case Service::Signal:
    return "panel";
  default:
    return "-";
  }
}

/// How far a pipe's end stands off the skid in plan, which what joins them has to bridge.
std::string offSkid(const SheetJob& job, const EquipmentRoom& room, const Port& port) {
  if (!room.skid || isConduit(port.service)) return "-";
  const Point2 low = room.skid->corner;
  const Point2 high = room.skid->high();
  const Point2 nearest{std::clamp(port.at.x, low.x, high.x), std::clamp(port.at.y, low.y, high.y)};
  return printLength(metres(distance(port.at, nearest)), job.units());
}

/// Rows of the table of what rises: along the wall from its right end and off it.
class RiserRows {
public:
  RiserRows(const SheetJob& job, const EquipmentRoom& room)
      : job_(job), room_(room), wall_(wallOf(room)) {}

  /// Two rows where the floor is to be cored elsewhere than under the port.
  void add(const Port& port) {
    constexpr double kSame = 0.01; // m
    const UnitSystem units = job_.units();
    const RunStudy* run = studyAt(job_, port.id);
    const auto rise = run != nullptr ? risesAt(*run, room_) : std::nullopt;
    const bool apart = rise && distance(*rise, port.at) > kSame;
    if (apart)
      put(port, *rise, {"-", "-", "-", "-", called(port) + ": rises here, not under its port"});
    const char* what = apart                     ? ": port"
                       : run != nullptr && !rise ? ": port, not from the floor"
                                                 : "";
    put(port, port.at,
        {printLength(port.height, units), printElevation(room_.floor + port.height, units),
         offSkid(job_, room_, port), equipmentEnd(job_, port), called(port) + what});
  }
  const std::vector<std::vector<std::string>>& rows() const { return rows_; }

private:
  void put(const Port& port, Point2 at, const std::vector<std::string>& more) {
    rows_.push_back({runAt(job_, port.id), sizeText(port.size),
                     printLength(metres(wall_.length - wall_.right(room_, at)), job_.units()),
                     printLength(metres(wall_.off(room_, at)), job_.units())});
    rows_.back().insert(rows_.back().end(), more.begin(), more.end());
  }

  const SheetJob& job_;
  const EquipmentRoom& room_;
  WallView wall_;
  std::vector<std::vector<std::string>> rows_;
};

} // namespace

Block portTable(const SheetJob& job, const EquipmentRoom& room, double width) {
  RiserRows rows(job, room);
  for (const Port& port : room.ports)
    rows.add(port);
  return table("WHERE PIPES AND CONDUITS RISE, " + called(room),
               {{"Run"},
                {"Size", Align::Centre},
                {"From the|right end", Align::Right},
                {"Off the|wall", Align::Right},
                {"Height|over floor", Align::Right},
                {"Elevation", Align::Right},
                {"To the|skid", Align::Right},
                {"Joins at|the equipment"},
                {"Port"}},
               rows.rows(), width);
}

namespace {

bool hasUnionAbove(const SheetJob& job, const RunStudy& run, Length floor) {
  return std::ranges::any_of(job.plan().runs.find(run.id)->parts, [&](const InlinePart& part) {
    const auto place = partPlace(run, part);
    return part.kind == PartKind::Union && place && place->at.z > inMetres(floor);
  });
}

/// Which of the pipes at the room's ports can be taken apart above its floor, as drawn.
std::string unionNote(const SheetJob& job) {
  const auto tags = runTags(job.plan());
  std::string with, without;
  for (const EquipmentRoom& room : job.plan().rooms) {
    for (const Port& port : room.ports) {
      const RunStudy* run = studyAt(job, port.id);
      if (run == nullptr || isConduit(port.service)) continue;
      std::string& list = hasUnionAbove(job, *run, room.floor) ? with : without;
      list += (list.empty() ? "" : ", ") + tags.at(run->id);
    }
  }
  std::string note = with.empty() ? "" : "Unions above the floor as drawn: " + with + ".";
  if (!without.empty())
    note += (note.empty() ? "" : " ") + ("None drawn above it: " + without + ".");
  return note;
}

std::string risingNote(const SheetJob& job) {
  std::string outside;
  bool marked = false;
  for (const EquipmentRoom& room : job.plan().rooms) {
    marked = marked || room.plumbingArea.has_value();
    const std::string more = risersOutside(job, room);
    if (!more.empty()) outside += (outside.empty() ? "" : ", ") + more;
  }
  if (!marked) return {};
  return "All pipe rises inside the marked area" +
         (outside.empty() ? "" : ", but for " + outside + ", as tabled") + ".";
}

/// Backflow assemblies are heavy and are taken apart in place: what carries them is said.
std::string assemblyNote(const SheetJob& job) {
  std::string text;
  for (const EquipmentRoom& room : job.plan().rooms) {
    const double x = inMetres(room.length), y = inMetres(room.width);
    for (const RoomPart& p : partsIn(job, room)) {
      if (p.part->kind != PartKind::ReducedPressureAssembly &&
          p.part->kind != PartKind::DoubleCheck)
        continue;
      const double off = std::min({p.local.x, x - p.local.x, p.local.y, y - p.local.y});
      text += (text.empty() ? "" : "; ") + p.part->id + ", its pipe's centre " +
              printLength(metres(off), job.units()) + " off the nearest wall";
    }
  }
  if (text.empty()) return {};
  return "Backflow assembly (" + text +
         "): carried on both sides by brackets from that wall or a stand of its own, not by its "
         "pipe, with room to test and open it as the local authority asks: ______ (plumber).";
}

/// The lists end at the ports; what lies between them and the equipment is told to be missing.
std::string joiningNote(const Plan& plan) {
  bool skid = false;
  for (const EquipmentRoom& room : plan.rooms)
    skid = skid || room.skid.has_value();
  return std::string("Each pipe of this set ends open at its port as drawn, and the bill of "
                     "materials ends there. "
                     "What joins it to the equipment's own connection") +
         (skid ? ", over the distance to the skid as tabled," : "") +
         " is not listed: pipe, fittings or hose with a union ______, set by ______ (sizes, "
         "threads "
         "and places by the maker's drawing of the skid).";
}

/// Where the electrician's plan of the room is.
std::string clearNote(const Plan& plan) {
  for (const EquipmentRoom& room : plan.rooms) {
    if (!room.panel) continue;
    return "Keep the working space at the panel and the space over and under it clear of pipe, "
           "valves and stores: see " +
           viewAndSheet(powerRoomAnchor(plan, room.id)) + ".";
  }
  return {};
}

} // namespace

std::vector<std::string> roomNotes(const SheetJob& job) {
  std::vector<std::string> notes = {
      "Full lines: pipe and conduit over the finished floor. Narrow dashed lines: under the floor "
      "or in the ground, or behind what is drawn before it (hidden, ISO 128).",
      risingNote(job),
      unionNote(job),
      "Heights over the finished floor are those of an upright pipe's open end and of the middle "
      "of "
      "what stands in it, and of a level pipe's invert; places are those of pipe centrelines from "
      "the inside faces of the walls, the right end as seen from inside. Local north is up on the "
      "plan of the room.",
      joiningNote(job.plan()),
      assemblyNote(job),
      clearNote(job.plan()),
      "Floor drain, light and ventilation, there already or new, by the general contractor."};
  std::erase(notes, std::string());
  return notes;
}

} // namespace sump
