#include "core/sheet/run_section.h"

#include "core/geometry/polygon.h"
#include "core/plan/keys.h"
#include "core/sheet/clip_marks.h"
#include "core/sheet/part_list.h"
#include "core/sheet/section_marks.h"
#include "core/sheet/structure_cut.h"
#include "core/sheet/tags.h"
#include "core/study/access_risers.h"
#include "core/study/down_legs.h"
#include "core/study/hole_gaps.h"
#include "core/study/profile.h"
#include "core/units/print_levels.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

const LineStyle kPipe{Ink::Black, 0.35, {}};
const LineStyle kGrade{Ink::Black, 0.5, {}};

/// Draws one run into a drawing.
class RunPen {
public:
  RunPen(const SheetJob& job, const RunStudy& run, RunWindow window, double steeper)
      : job_(job), run_(run), given_(*job.plan().runs.find(run.id)), window_(window),
        steeper_(steeper), stations_(planStations(run)) {
    drawing_.steeper = steeper;
  }

  Drawing draw() {
    markStructures();
    // An interconnect is under its lid: the grade says nothing of it.
    if (run_.service != Service::Interconnect) markGrade();
    markRisers();
    markPipe();
    markEnds();
    markBracket();
    markParts();
    clip();
    addLevels();
    addWords();
    return std::move(drawing_);
  }

private:
  Point2 at(double station, double z) const { return {station, z * steeper_}; }
  /// On the centreline; an upright end at its mouth.
  Point2 axis(std::size_t point) const {
    const double z = run_.points[point].at.z;
    return {stations_[point], isUprightEnd(point) ? z : z + inMetres(run_.insideDiameter) / 2};
  }
  bool isUprightEnd(std::size_t point) const {
    const std::size_t last = run_.points.size() - 1;
    if (point != 0 && point != last) return false;
    const std::size_t next = point == 0 ? 1 : last - 1;
    return std::abs(stations_[next] - stations_[point]) < 1e-6 &&
           std::abs(run_.points[next].at.z - run_.points[point].at.z) > 1e-6;
  }
  bool shows(double station) const {
    return station >= window_.from - 1e-6 && station <= window_.to + 1e-6;
  }
  std::string level(double z) const { return printElevation(metres(z), job_.units()); }

  void markStructures() {
    for (const StructureCut& cut : structureCuts(job_, run_, window_.from, window_.to)) {
      MarkPen pen(drawing_.marks, cut.object, Layer::Vault);
      for (const auto& [ring, line, fill] : cut.shapes) {
        Ring steep;
        for (Point2 p : ring)
          steep.push_back(at(p.x, p.y));
        pen.ring(std::move(steep), line, fill);
      }
      for (const auto& [z, name] : cut.levels)
        drawing_.levels.push_back({z * steeper_, cut.right, level(z), name});
    }
  }

  /// Under a building or a room there is a floor, not the ground.
  void markGrade() {
    const auto profile = runProfile(job_.plan(), job_.study(), job_.catalog, run_.id);
    if (!profile || profile->ground.size() < 2) return;
    MarkPen pen(drawing_.marks, {}, Layer::Ground);
    const PaperBox window{{window_.from - kOverhang, -1e9}, {window_.to + kOverhang, 1e9}};
    std::vector<Polyline> shown;
    for (const std::vector<ProfileGround>& piece : openGround(*profile)) {
      Polyline line;
      for (const ProfileGround& g : piece)
        line.push_back(at(g.station, inMetres(g.level)));
      pen.path(line, kGrade);
      for (Polyline& part : clipLine(line, window))
        shown.push_back(std::move(part));
    }
    tellGrade(*profile, shown);
  }

  /// At a manway that is cut, else at a vault's wall, where the reader measures from it.
  void tellGrade(const RunProfile& profile, const std::vector<Polyline>& ground) {
    for (const ProfileVault& vault : profile.vaults) {
      for (const ProfileManway& m : vault.manways) {
        const bool isDrawn =
            m.station > window_.from - kOverhang && m.station < window_.to + kOverhang;
        if (m.beyond || !m.grade || !isDrawn) continue;
        return addGrade(at(m.station, inMetres(*m.grade)), "grade at manway, " + called(vault));
      }
    }
    for (const ProfileVault& vault : profile.vaults) {
      for (double wall : {vault.from, vault.to}) {
        const auto on = shows(wall) ? onLine(ground, wall) : std::nullopt;
        if (on) return addGrade(*on, "grade at wall, " + called(vault));
      }
    }
    if (!ground.empty()) addGrade(ground.back().back(), "grade at the right edge");
  }
  void addGrade(Point2 on, std::string name) {
    drawing_.levels.push_back({on.y, on.x, level(on.y / steeper_), std::move(name)});
  }
  static std::optional<Point2> onLine(const std::vector<Polyline>& lines, double x) {
    for (const Polyline& line : lines) {
      for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const Point2 a = line[i], b = line[i + 1];
        if (x >= a.x && x <= b.x && b.x > a.x) return lerp(a, b, (x - a.x) / (b.x - a.x));
      }
    }
    return std::nullopt;
  }

  void markPipe() {
    Polyline line;
    for (std::size_t i = 0; i < run_.points.size(); ++i) {
      const Point2 p = axis(i);
      if (line.empty() || distance(line.back(), p) > 1e-6) line.push_back(p);
    }
    if (line.size() < 2) return;
    Ring ring = pipeOutline(line, inMetres(run_.outsideDiameter));
    for (Point2& p : ring)
      p = at(p.x, p.y);
    for (Point2& p : line)
      p = at(p.x, p.y);
    MarkPen pen(drawing_.marks, run_.id, Layer::Run);
    pen.ring(std::move(ring), kPipe, FillStyle{Ink::White});
    LineStyle axisLine = serviceLine(run_.service);
    axisLine.width = 0.25;
    pen.path(line, axisLine);
  }

  /// A pipe end that is turned or open both ways, as pipe; other ends as their symbols.
  void markEnd(EndFitting fitting, std::size_t point, Point2 out) {
    if (!shows(stations_[point]) || fitting == EndFitting::Plain) return;
    const double od = inMetres(run_.outsideDiameter);
    const Point2 c = axis(point);
    MarkPen pen(drawing_.marks, run_.id, Layer::Part);
    const auto upright = [&](double low, double high) {
      pen.ring({at(c.x - od / 2, c.y + low), at(c.x + od / 2, c.y + low),
                at(c.x + od / 2, c.y + high), at(c.x - od / 2, c.y + high)},
               kPipe, FillStyle{Ink::White});
    };
    const std::string& nominal = (point == 0 ? run_.legs.front() : run_.legs.back()).size;
    const auto known = armLength(job_.catalog, given_.pipe, nominal, fitting);
    const double arm = inMetres(known.value_or(1.5 * run_.outsideDiameter));
    if (turnsDown(fitting)) markDownLeg(point, c.y - arm);
    if (fitting == EndFitting::Tee) return upright(-arm, arm);
    if (fitting == EndFitting::ElbowDown) return upright(-arm, od / 2);
    if (fitting == EndFitting::ElbowUp) return upright(-od / 2, arm);
    const double size = std::max(od, 0.06);
    Frame frame{at(c.x, c.y), radians(std::atan2(out.y, out.x))};
    if (fitting == EndFitting::Eductor) frame = eductorFrame(frame, size, pen);
    SymbolPen symbol(pen, frame, size, kPipe);
    drawEnd(symbol, fitting);
  }

  /// Pipe in the lower arm, from its mouth down, with its axis as other pipe.
  void markDownLeg(std::size_t point, double mouth) {
    const auto end = legEnd(run_, point == 0);
    if (!end) return;
    const double x = stations_[point], half = inMetres(run_.outsideDiameter) / 2;
    const double foot = inMetres(*end), top = std::max(foot, mouth);
    MarkPen pen(drawing_.marks, run_.id, Layer::Run);
    pen.ring({at(x - half, foot), at(x + half, foot), at(x + half, top), at(x - half, top)}, kPipe,
             FillStyle{Ink::White});
    LineStyle axisLine = serviceLine(run_.service);
    axisLine.width = 0.25;
    pen.path({at(x, top), at(x, foot)}, axisLine);
    drawing_.levels.push_back(
        {foot * steeper_, point == 0 ? x - half : x + half, level(foot), "end of down leg"});
  }

  void markEnds() {
    const std::size_t last = run_.points.size() - 1;
    markEnd(given_.from.fitting, 0, axis(0) - axis(1));
    markEnd(given_.to.fitting, last, axis(last) - axis(last - 1));
  }

  struct BracketFace {
    double x = 0;      ///< m along the section
    double rise = 0.3; ///< m over the bracket's foot; drawn only
  };
  /// The nearer side of the opening of the eductor's manway; under the pipe, where that comes in on
  /// this side. As far off as a bracket is long where no such opening is cut.
  BracketFace bracketFace(double foot) const {
    constexpr double kArm = 0.16, kClear = 0.02, kLeast = 0.06; // m; drawn only
    const double x = stations_.back();
    std::size_t before = stations_.size() - 1;
    while (before > 0 && stations_[before] > x - 1e-6)
      --before;
    const double away = stations_[before] < x - 1e-6 ? 1 : -1;
    for (const CutOpening& opening : cutOpenings(job_, run_)) {
      if (opening.manway != given_.eductor->manway || x < opening.from || x > opening.to) continue;
      const double far = away > 0 ? opening.to : opening.from;
      const double near = away > 0 ? opening.from : opening.to;
      const double under =
          run_.points[before + 1].at.z - inMetres(run_.outsideDiameter) - kClear - foot;
      if (std::abs(near - x) < std::abs(far - x) && under > kLeast)
        return {near, std::min(under, 0.3)};
      return {far};
    }
    return {x + away * kArm};
  }

  /// The eductor hangs from the riser's or the lid's face, to which its bracket is bolted.
  void markBracket() {
    if (!given_.eductor || given_.to.fitting != EndFitting::Eductor) return;
    const double foot = inMetres(given_.eductor->bracketFoot), x = stations_.back();
    if (!shows(x) || foot <= run_.points.back().at.z) return;
    constexpr double kBolt = 0.04; // m; drawn only
    const auto [face, rise] = bracketFace(foot);
    const double inward = face > x ? -kBolt : kBolt;
    MarkPen pen(drawing_.marks, run_.id, Layer::Part);
    pen.path({at(x, foot), at(face, foot), at(face, foot + rise)}, LineStyle{Ink::Black, 0.7, {}});
    for (double share : {0.3, 0.8}) {
      const double z = foot + share * rise;
      pen.path({at(face + inward, z), at(face - inward, z)}, LineStyle{Ink::Black, 0.5, {}});
    }
    drawing_.levels.push_back({foot * steeper_, x, level(foot), "foot of bracket"});
    point("Bracket", at(face, foot + rise * 0.55));
  }

  /// From the part up to its cover at grade, under the pipe.
  void markRisers() {
    for (const AccessRiser& riser : accessRisers(job_.plan(), job_.study(), run_)) {
      if (!riser.grade || !shows(riser.station)) continue;
      const double half = riserHalfWidth(riser.kind, run_.outsideDiameter);
      const double x = riser.station, foot = riser.at.z, top = inMetres(*riser.grade);
      constexpr double kCover = 0.05, kRim = 0.06; // m; drawn only, the maker's sizes govern
      const auto box = [&](double reach, double low, double high) {
        return Ring{at(x - reach, low), at(x + reach, low), at(x + reach, high),
                    at(x - reach, high)};
      };
      MarkPen pen(drawing_.marks, riser.part, Layer::Manway);
      pen.ring(box(half, foot, top), kPipe, FillStyle{Ink::White});
      pen.ring(box(half + kRim, top - kCover, top), kPipe, FillStyle{Ink::Black});
      const bool cleanout = riser.kind == PartKind::Cleanout;
      const std::string height = printHeight(metres(foot), *riser.grade, job_.units());
      std::vector<std::string> lines = {
          std::string(cleanout ? "Cleanout riser " : "Access box ") + height + " over the invert",
          riser.traffic ? "traffic cover at grade" : "cover at grade"};
      if (!cleanout) lines.push_back("plan size by the valve's maker: ______");
      drawing_.callouts.push_back({std::move(lines),
                                   at(cleanout ? x + half : x - half, (top + foot) / 2), Ink::Black,
                                   false, true});
      drawing_.levels.push_back({top * steeper_, x + half, level(top),
                                 cleanout ? "cover of cleanout" : "cover of access box"});
    }
  }

  void markParts() {
    for (const InlinePart& part : given_.parts) {
      const auto place = partPlace(run_, part);
      if (!place || !shows(place->along)) continue;
      std::size_t leg = 0;
      while (leg + 2 < stations_.size() && stations_[leg + 1] < place->along)
        ++leg;
      const Point2 d = axis(leg + 1) - axis(leg);
      const Point2 c = at(place->along, place->at.z + inMetres(run_.insideDiameter) / 2);
      const double half = std::max(inMetres(run_.outsideDiameter), 0.06);
      SymbolPen pen(MarkPen(drawing_.marks, part.id, Layer::Part),
                    Frame{c, radians(std::atan2(d.y * steeper_, d.x))}, half, kPipe);
      drawPart(pen, part.kind);
      const PartProduct* product = job_.catalog.part(key(part.kind));
      point(product != nullptr ? product->name : std::string(key(part.kind)), c);
    }
  }

  /// What lies beyond the window is cut off at its sides.
  void clip() {
    const PaperBox box{{window_.from - kOverhang, -1e9}, {window_.to + kOverhang, 1e9}};
    std::vector<Mark> kept;
    for (Mark& mark : drawing_.marks)
      keepInside(std::move(mark), box, kept);
    drawing_.marks = std::move(kept);
  }

  void addLevels() {
    if (shows(0)) {
      drawing_.levels.push_back({run_.points.front().at.z * steeper_, 0,
                                 level(run_.points.front().at.z), "start invert"});
    }
    if (shows(stations_.back())) {
      drawing_.levels.push_back({run_.points.back().at.z * steeper_, stations_.back(),
                                 level(run_.points.back().at.z), "end invert"});
    }
  }

  /// Words with a leader to a place.
  void point(std::string text, Point2 where) {
    drawing_.callouts.push_back({{std::move(text)}, where, Ink::Black, false, true});
  }
  std::string endName(EndFitting fitting) const {
    const PartProduct* product = job_.catalog.part(key(fitting));
    if (product != nullptr) return product->name;
    const std::string words = endWords(fitting);
    return words.substr(0, words.find(','));
  }

  void addWords() {
    const double middle = std::clamp(stations_.back() / 2, window_.from, window_.to);
    std::size_t leg = 0;
    while (leg + 2 < stations_.size() && stations_[leg + 1] < middle)
      ++leg;
    const double span = stations_[leg + 1] - stations_[leg];
    const double t = span > 0 ? (middle - stations_[leg]) / span : 0.5;
    const Point2 p = lerp(axis(leg), axis(leg + 1), t);
    const std::string slope = slopeText(run_, job_.units());
    std::vector<std::string> lines = {runTags(job_.plan()).at(run_.id) + "  " +
                                      sizeAndMaterial(given_, job_.catalog)};
    if (!slope.empty()) lines.push_back(slope);
    drawing_.callouts.push_back({lines, at(p.x, p.y), Ink::Black, true});
    const auto end = [&](EndFitting fitting, std::size_t i) {
      if (fitting == EndFitting::Plain || !shows(stations_[i])) return;
      const Point2 c = axis(i);
      point(endName(fitting), at(c.x, c.y));
    };
    end(given_.from.fitting, 0);
    end(given_.to.fitting, run_.points.size() - 1);
    for (std::size_t i = 1; i + 1 < run_.points.size(); ++i) {
      if (!shows(stations_[i])) continue;
      const Point2 c = axis(i);
      std::vector<std::string> lines = elbowsAt(i);
      lines.push_back("Inv. " + level(run_.points[i].at.z));
      drawing_.callouts.push_back({std::move(lines), at(c.x, c.y), Ink::Black, false, true});
    }
  }
  /// `90° elbow`, for each of those that make the turn there.
  std::vector<std::string> elbowsAt(std::size_t i) const {
    std::vector<std::string> names;
    for (const Bend& bend : run_.bends) {
      if (static_cast<std::size_t>(bend.point) != i) continue;
      for (FittingKind kind : bend.fittings) {
        const LossRow* row = job_.catalog.losses.fitting(key(kind));
        if (row != nullptr) names.push_back(row->name);
      }
    }
    return names;
  }

  static constexpr double kOverhang = 0.9; ///< m drawn beyond the window, of structures

  const SheetJob& job_;
  const RunStudy& run_;
  const Run& given_;
  RunWindow window_;
  double steeper_;
  std::vector<double> stations_;
  Drawing drawing_;
};

} // namespace

double planEnd(const RunStudy& run) {
  return planStations(run).back();
}

std::optional<double> firstWall(const SheetJob& job, const RunStudy& run) {
  const std::vector<double> walls = wallStations(job, run);
  return walls.empty() ? std::nullopt : std::optional(walls.front());
}

std::optional<double> lastWall(const SheetJob& job, const RunStudy& run) {
  const std::vector<double> walls = wallStations(job, run);
  return walls.empty() ? std::nullopt : std::optional(walls.back());
}

Drawing runSection(const SheetJob& job, const RunStudy& run, RunWindow window, double steeper) {
  return RunPen(job, run, window, steeper).draw();
}

} // namespace sump
