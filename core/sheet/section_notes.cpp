// What is written on a long section.

#include "core/sheet/section_marks.h"

#include "core/plan/keys.h"
#include "core/sheet/cut_lid.h"
#include "core/sheet/floor_note.h"
#include "core/sheet/section_places.h"
#include "core/study/object_names.h"
#include "core/units/print_levels.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

Ink inkOf(Service service) {
  return ink(facts(service).color);
}

std::string codeAndSize(Service service, const std::string& size) {
  return std::string(facts(service).code) + " " + size + "\"";
}

/// Gathers notes about one section.
class NoteTaker {
public:
  explicit NoteTaker(UnitSystem units) : units_(units) {}

  void add(const Id& object, double station, Length level, std::string text, NoteSide side,
           int weight, Ink ink = Ink::Black, double span = 0, std::string where = {}) {
    notes_.push_back(
        {object, station, level, std::move(text), side, ink, weight, span, std::move(where)});
  }
  /// An invert, told among its run's others in the order of their stations. `name`: of the run
  /// where others lie beside it.
  void invert(const Id& run, double station, Length level, int weight, Ink ink, std::string where,
              const std::string& name = {}) {
    add(run, station, level, (name.empty() ? "" : name + " ") + at("INV", level), NoteSide::Below,
        weight, ink, 0, std::move(where));
    notes_.back().inOrder = true;
    notes_.back().isListed = true;
    inBrief(printElevation(level, units_));
  }
  /// The note that was added last, for where it has less room.
  void inBrief(std::string text) { notes_.back().brief = std::move(text); }
  void listed() { notes_.back().isListed = true; }
  void pointed() { notes_.back().pointed = true; }
  /// The note that was added last stands anywhere along these.
  void along(std::vector<SectionArea> lines) { notes_.back().lines = std::move(lines); }
  std::string atStation(double station) const {
    return "station " + printRunLength(metres(station), units_);
  }
  void groundwater(std::optional<Length> level, const SectionExtent& extent);
  std::string at(const char* what, Length level) const {
    return std::string(what) + " " + printElevation(level, units_);
  }
  /// `rim`: what the levels of its manways' covers are called.
  void vault(const ProfileVault& vault, const char* rim);
  void water(const ProfileVault& vault, const std::string& name);
  /// A level that is drawn as a line along these.
  void level(const Id& object, std::string text, NoteSide side, int weight, Ink ink,
             std::string where, std::vector<SectionArea> lines);
  void pipe(const Id& id, Service service, const std::string& size, double from, Length a,
            double to, Length b);
  void drop(const Id& id, Service service, const ProfileDrop& drop);
  void groundEnds(const std::vector<ProfileGround>& ground, bool left = true, bool right = true);
  /// The levels of the vaults so far stand in a table with the section.
  void listLevels() {
    for (SectionNote& note : notes_)
      note.isListed = note.isListed || (!note.lines.empty() && note.weight > 0) ||
                      note.text.starts_with("RIM ");
  }
  UnitSystem units() const { return units_; }
  std::vector<SectionNote> take() {
    std::ranges::stable_sort(notes_, {}, &SectionNote::weight);
    return std::move(notes_);
  }

private:
  UnitSystem units_;
  std::vector<SectionNote> notes_;
};

void NoteTaker::vault(const ProfileVault& v, const char* rim) {
  const double middle = (v.from + v.to) / 2;
  const std::string name = called(v);
  add(v.id, middle, v.lidTop, name, NoteSide::Above, 0, Ink::Black, v.to - v.from);
  inBrief(v.id);
  notes_.back().lines = lidPieces(v);
  level(v.id, at("LID", v.lidTop), NoteSide::Above, 3, Ink::Black, name, lidPieces(v));
  if (v.insideTo <= v.insideFrom) return;
  level(v.id, at("FLOOR", v.floor), NoteSide::Below, 2, Ink::Black, name,
        {{v.insideFrom, v.insideTo, v.floor, v.floor}});
  for (const ProfileChamber& c : v.chambers) {
    add(v.id, (c.from + c.to) / 2, v.floor, std::to_string(c.number), NoteSide::Above, 0, Ink::Grey,
        c.to - c.from);
    notes_.back().inside = SectionArea{c.from, c.to, v.floor, v.lidUnderside};
  }
  water(v, name);
  for (const ProfileManway& m : v.manways) {
    if (!m.rim) continue;
    add(m.id, m.station, *m.rim, at(rim, *m.rim), NoteSide::Above, m.beyond ? 4 : 2, Ink::Black, 0,
        name);
    notes_.back().isListed = m.beyond; // in the schedule of manways
  }
}

/// Chambers whose water stands alike, as it is printed, are told once. The peak stands over its
/// line and the rest level under its own, wherever the vault is.
void NoteTaker::water(const ProfileVault& v, const std::string& name) {
  const auto tell = [&](const char* what, NoteSide side, auto levelIn) {
    std::vector<std::string> told;
    for (const ProfileChamber& first : v.chambers) {
      if (!levelIn(first)) continue;
      const std::string text = at(what, *levelIn(first));
      if (std::ranges::find(told, text) != told.end()) continue;
      told.push_back(text);
      std::vector<SectionArea> lines;
      for (const ProfileChamber& c : v.chambers) {
        if (levelIn(c) && at(what, *levelIn(c)) == text)
          lines.push_back({c.from, c.to, *levelIn(c), *levelIn(c)});
      }
      const bool alone = lines.size() < v.chambers.size();
      level(v.id, text, side, 1, Ink::ServiceBlue,
            alone ? name + ", chamber " + std::to_string(first.number) : name, std::move(lines));
    }
  };
  tell("WL", NoteSide::Below, [](const ProfileChamber& c) { return c.rest; });
  tell("PEAK", NoteSide::Above, [](const ProfileChamber& c) { return c.peak.value; });
}

void NoteTaker::level(const Id& object, std::string text, NoteSide side, int weight, Ink ink,
                      std::string where, std::vector<SectionArea> lines) {
  const SectionArea& first = lines.front();
  add(object, (first.from + first.to) / 2, first.low, std::move(text), side, weight, ink,
      first.to - first.from, std::move(where));
  notes_.back().lines = std::move(lines);
}

/// At its sign, where the section shows it.
void NoteTaker::groundwater(std::optional<Length> level, const SectionExtent& extent) {
  if (!level || *level < extent.low || *level > extent.high) return;
  add({}, groundwaterSign(extent.from, extent.to), *level, at("GW", *level), NoteSide::Above, 1,
      Ink::ServiceBlue);
  notes_.back().lines = {{extent.from, extent.to, *level, *level}};
}

void NoteTaker::pipe(const Id& id, Service service, const std::string& size, double from, Length a,
                     double to, Length b) {
  const double run = to - from;
  std::string text = codeAndSize(service, size);
  if (run > 0 && a != b) text += "  " + printSlope(std::abs(inMetres(a - b)) / run, units_);
  add(id, (from + to) / 2, (a + b) / 2.0, text, NoteSide::Above, 0, inkOf(service), std::abs(run));
  inBrief(codeAndSize(service, size));
}

void NoteTaker::drop(const Id& id, Service service, const ProfileDrop& drop) {
  const bool rises = drop.end > drop.start;
  add(id, drop.station, (drop.start + drop.end) / 2.0,
      std::string(rises ? "RISE " : "DROP ") +
          printHeight(std::min(drop.start, drop.end), std::max(drop.start, drop.end), units_),
      NoteSide::Right, 3, inkOf(service), 0, atStation(drop.station));
}

void NoteTaker::groundEnds(const std::vector<ProfileGround>& ground, bool left, bool right) {
  if (ground.empty()) return;
  const auto tell = [&](const ProfileGround& g, const char* where) {
    add({}, g.station, g.level, at("GR", g.level), NoteSide::Above, 3, Ink::Grey, 0, where);
  };
  if (left) tell(ground.front(), "at the left edge");
  if (right) tell(ground.back(), "at the right edge");
}

/// An id that begins with its service's code says it already.
std::string lineName(Service service, const Id& id) {
  const std::string code(facts(service).code);
  return id.starts_with(code + "-") ? id : code + " " + id;
}

/// One that meets the run more than once is told with its station.
void noteCrossing(const ProfileCrossing& c, NoteTaker& notes) {
  std::string what = c.service ? lineName(*c.service, c.id) : c.name.empty() ? c.id : c.name;
  if (c.repeated) what += " at " + printRunLength(metres(c.station), notes.units());
  const Ink ink = c.service ? inkOf(*c.service) : Ink::Grey;
  if (!c.underside || !c.top) {
    // Its level is not known, so it can stand anywhere.
    notes.add(c.id, c.station, metres(0), what + (c.joined ? ", joined here" : ", level not known"),
              NoteSide::Centre, 2, ink, 0, c.repeated ? "" : notes.atStation(c.station));
    return notes.inBrief(what);
  }
  std::string text = what;
  if (c.joined) {
    text += ", joined here";
  } else if (!c.clearance && *c.underside == *c.top) { // a line of unknown size
    text += ", " + notes.at("axis", *c.top);
  } else if (c.clearance && *c.clearance >= metres(0)) {
    text += (c.above ? ", over by " : ", under by ") + printShort(*c.clearance, notes.units());
  } else if (c.clearance) {
    text += ", clash";
  }
  notes.add(c.id, c.station, c.above ? *c.top : *c.underside, text,
            c.above ? NoteSide::Above : NoteSide::Below, 2, ink, 0,
            c.repeated ? "" : notes.atStation(c.station));
  notes.inBrief(what);
  notes.pointed();
}

void noteLegs(const RunProfile& profile, NoteTaker& notes) {
  std::size_t longest = 0;
  const auto length = [&](std::size_t i) {
    return profile.points[i + 1].station - profile.points[i].station;
  };
  for (std::size_t i = 0; i < profile.legs.size(); ++i) {
    if (length(i) > length(longest)) longest = i;
  }
  if (profile.legs.empty()) return;
  const auto& [a, b] = plainStretch(profile, longest);
  notes.pipe(profile.run, profile.service, profile.legs[longest].size, a.station, a.invert,
             b.station, b.invert);
}

/// A room and the building that it fills, or whose floor goes on in it, are told once.
void noteStructures(const RunProfile& profile, NoteTaker& notes) {
  std::vector<std::string> told;
  for (const ProfileStructure& s : profile.structures) {
    const std::optional<FloorNote> floor = floorNote(profile, s, notes.units());
    if (!floor || std::ranges::find(told, floor->text) != told.end()) continue;
    told.push_back(floor->text);
    notes.add(s.id, (s.from + s.to) / 2, *s.level, floor->text, NoteSide::Above, 2);
    notes.inBrief(called(s));
    notes.along(floor->lines);
    if (!s.outlet || !s.bottom) continue;
    notes.add(s.id, (s.from + s.to) / 2, *s.bottom, notes.at("BOTTOM OF SUMP", *s.bottom),
              NoteSide::Below, 2, Ink::Black, 0, called(s));
    notes.pointed();
  }
}

/// Where the section cuts the wall over it: whoever digs beside it has to know.
void noteFootings(const RunProfile& profile, NoteTaker& notes) {
  for (const ProfileStructure& s : profile.structures) {
    const std::vector<double> walls = cutWalls(profile, s);
    if (s.kind != StructureKind::Building || !s.bottom || walls.empty()) continue;
    notes.add(s.id, walls.front(), *s.bottom, notes.at("FOOTING", *s.bottom), NoteSide::Below, 2,
              Ink::Black, 0, called(s));
    notes.pointed();
  }
}

template <class Kind> std::string wordsOf(Kind kind) {
  std::string words(key(kind));
  if (words == "reduced-pressure-assembly") return "reduced-pressure assembly";
  std::ranges::replace(words, '-', ' ');
  return words;
}

/// What an end is made of, and what it meets that is not drawn.
void noteEnd(const RunProfile& profile, const ProfilePoint& end, EndFitting fitting,
             const std::string& meets, NoteTaker& notes) {
  const Ink ink = inkOf(profile.service);
  if (!meets.empty())
    notes.add(profile.run, end.station, end.invert, meets, NoteSide::Above, 2, ink, 0,
              notes.atStation(end.station));
  if (fitting != EndFitting::Plain)
    notes.add(profile.run, end.station, end.invert, wordsOf(fitting), NoteSide::Above, 4, ink, 0,
              notes.atStation(end.station));
}

/// A part that is reached by a riser is told with the riser's height and the level of its cover.
void notePart(const RunProfile& profile, const ProfilePart& part, NoteTaker& notes) {
  const Ink ink = inkOf(profile.service);
  std::string text = wordsOf(part.kind);
  if (part.cover) {
    text += part.kind == PartKind::Cleanout ? ", riser " : ", box ";
    text += printHeight(part.invert, *part.cover, notes.units()) + " to grade";
    notes.add(part.id, part.station, *part.cover,
              notes.at(part.kind == PartKind::Cleanout ? "cleanout RIM" : "box RIM", *part.cover),
              NoteSide::Above, 4, Ink::Black, 0,
              wordsOf(part.kind) + " at " + notes.atStation(part.station));
  }
  notes.add(part.id, part.station, part.invert, text, NoteSide::Above, part.cover ? 2 : 4, ink, 0,
            notes.atStation(part.station));
  if (part.cover) notes.inBrief(wordsOf(part.kind));
}

void noteLeastCover(const RunProfile& profile, NoteTaker& notes) {
  const std::optional<CoverPlace> least = leastCover(profile);
  if (!least) return;
  notes.add(profile.run, least->drawnAt, (least->top + least->ground) / 2.0,
            "least cover " + printShort(least->cover(), notes.units()), NoteSide::Right, 1,
            Ink::Black, 0, notes.atStation(least->station));
  notes.inBrief(printShort(least->cover(), notes.units()));
}

/// No points of the run's own where it is cut.
void noteInverts(const RunProfile& profile, NoteTaker& notes) {
  const std::size_t first = isCutLeft(profile) ? 1 : 0;
  const std::size_t end = profile.points.size() - (isCutRight(profile) ? 1 : 0);
  for (std::size_t i = first; i < end; ++i) {
    const ProfilePoint& p = profile.points[i];
    if (repeats(profile.points, i)) continue;
    notes.invert(profile.run, p.station, p.invert, 1, inkOf(profile.service),
                 notes.atStation(p.station));
  }
}

/// From chamber to chamber, with its name on it. Others end beside one another or are seen end on.
bool isSeenWhole(const TrainRun& run) {
  return run.service == Service::Interconnect || run.service == Service::Link;
}

/// In the middle of the run's longest piece, where nothing else is told.
void noteTrainRun(const TrainRun& run, NoteTaker& notes) {
  std::size_t longest = 0;
  const auto length = [&](std::size_t i) {
    const TrainPoint &a = run.points[i], &b = run.points[i + 1];
    return std::hypot(b.station - a.station, inMetres(b.invert - a.invert));
  };
  for (std::size_t i = 0; i + 1 < run.points.size(); ++i) {
    if (length(i) > length(longest)) longest = i;
  }
  const TrainPoint& a = run.points[longest];
  const TrainPoint& b = run.points[std::min(longest + 1, run.points.size() - 1)];
  const bool upright = std::abs(a.station - b.station) < kSameLevel;
  const Length middle = run.bore && !upright ? run.bore->inside / 2.0 : metres(0);
  notes.add(run.id, (a.station + b.station) / 2, (a.invert + b.invert) / 2.0 + middle,
            run.id + " " + run.size + "\"", NoteSide::Above, run.carriesFlow ? 0 : 2,
            inkOf(run.service));
  notes.pointed();
}

} // namespace

std::vector<SectionNote> sectionNotes(const RunProfile& profile, UnitSystem units) {
  NoteTaker notes(units);
  noteLegs(profile, notes);
  for (const ProfileVault& vault : profile.vaults)
    notes.vault(vault, "manway RIM");
  notes.groundwater(profile.groundwater, sectionExtent(profile));
  noteInverts(profile, notes);
  for (const ProfileDrop& drop : profile.drops) {
    if (std::abs(inMetres(drop.end - drop.start)) >= kSameLevel)
      notes.drop(profile.run, profile.service, drop);
  }
  for (const ProfileCrossing& c : profile.crossings)
    noteCrossing(c, notes);
  for (const ProfilePart& part : profile.parts)
    notePart(profile, part, notes);
  for (const ProfileBranch& b : profile.branches)
    notes.add(b.id, b.station, b.invert, "tee, " + lineName(b.service, b.id) + " joins",
              NoteSide::Below, 1, inkOf(b.service), 0, notes.atStation(b.station));
  if (profile.floatLevel)
    notes.add(profile.run, profile.points.front().station, *profile.floatLevel,
              "float " + printElevation(*profile.floatLevel, units), NoteSide::Right, 1,
              inkOf(profile.service), 0, notes.atStation(profile.points.front().station));
  noteStructures(profile, notes);
  noteEnd(profile, profile.points.front(), profile.startFitting, profile.startsAt, notes);
  noteEnd(profile, profile.points.back(), profile.endFitting, profile.endsAt, notes);
  noteLeastCover(profile, notes);
  notes.groundEnds(profile.ground, !isCutLeft(profile) && !isIndoors(profile, profile.from),
                   !isCutRight(profile) && !isIndoors(profile, profile.to));
  noteFootings(profile, notes);
  return notes.take();
}

std::vector<SectionNote> sectionNotes(const TrainProfile& profile, UnitSystem units) {
  NoteTaker notes(units);
  for (const ProfileVault& vault : profile.vaults)
    notes.vault(vault, "RIM"); // in its table
  notes.listLevels();
  for (const TrainRun& run : profile.runs) {
    const Ink ink = inkOf(run.service);
    noteTrainRun(run, notes);
    for (const TrainPoint& p : run.points) {
      if (p.vertex == kNoVertex) continue;
      notes.invert(run.id, p.station, p.invert,
                   run.carriesFlow || run.service == Service::Suction ? 1 : 4, ink, run.id,
                   isSeenWhole(run) && run.service != Service::Interconnect ? "" : run.id);
    }
    for (const ProfileDrop& drop : run.drops) {
      if (!run.carriesFlow) continue;
      notes.drop(run.id, run.service, drop);
      notes.listed(); // by the inverts of both ends
    }
  }
  if (const ProfileChamber* c = suctionChamber(profile); c != nullptr && profile.lowWater) {
    notes.level(profile.vaults.back().id, notes.at("LOW WL", *profile.lowWater), NoteSide::Below, 1,
                Ink::ServiceBlue, called(profile.vaults.back()),
                {{c->from, c->to, *profile.lowWater, *profile.lowWater}});
  }
  if (!profile.vaults.empty()) notes.groundwater(profile.groundwater, sectionExtent(profile));
  notes.groundEnds(profile.ground);
  return notes.take();
}

} // namespace sump
