// Drinking water and what must stay away from it: drains, sewers and the vaults.

#include "core/geometry/polygon.h"
#include "core/rules/families.h"
#include "core/rules/report.h"
#include "core/study/object_names.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace sump {

namespace {

/// A line in the ground, drawn or already there. Of a drawn one everything is known.
struct Line {
  Id id;
  std::string name;         ///< as people call it
  std::vector<Point3> axis; ///< z of the centre; void when `level` is not known
  Polyline path;            ///< the same in plan
  double radius = 0;        ///< outside; 0 when not known
  bool level = true;
  bool bore = true;
  bool drawn = false; ///< a run of this plan
  bool main = false;

  void add(Point3 p) {
    axis.push_back(p);
    path.push_back(flat(p));
  }
};

Line lineOf(const Utility& utility) {
  Line line;
  line.id = utility.id;
  line.name = called(utility);
  line.level = utility.elevation.has_value();
  line.bore = utility.diameter.has_value();
  line.main = utility.publicMain;
  for (Point2 p : utility.path)
    line.add(raised(p, inMetres(utility.elevation.value_or(metres(0)))));
  if (utility.diameter) line.radius = inMetres(*utility.diameter) / 2;
  return line;
}

void addRuns(const RuleInput& input, Service service, std::vector<Line>& lines) {
  for (const auto& [run, study] : runsOf(input, service)) {
    if (!study->resolved) continue; // needDrawn asks for it
    Line line;
    line.id = line.name = run->id;
    line.radius = inMetres(study->outsideDiameter) / 2;
    line.drawn = true;
    for (const RunPoint& p : study->points)
      line.add({p.at.x, p.at.y, p.at.z + inMetres(study->insideDiameter) / 2});
    lines.push_back(std::move(line));
  }
}

std::vector<Line> utilities(const RuleInput& input, UtilityKind kind) {
  std::vector<Line> lines;
  for (const Utility& utility : input.plan.utilities) {
    if (utility.kind == kind) lines.push_back(lineOf(utility));
  }
  return lines;
}

std::vector<Line> waterLines(const RuleInput& input) {
  std::vector<Line> lines = utilities(input, UtilityKind::PotableWater);
  addRuns(input, Service::MakeUp, lines);
  return lines;
}

std::vector<Line> drainRuns(const RuleInput& input) {
  std::vector<Line> lines;
  addRuns(input, Service::Inlet, lines);
  addRuns(input, Service::Overflow, lines);
  return lines;
}

std::vector<Line> sewerLines(const RuleInput& input) {
  std::vector<Line> lines = drainRuns(input);
  for (Line& line : utilities(input, UtilityKind::Sewer))
    lines.push_back(std::move(line));
  return lines;
}

/// Drawn lines that cannot be placed, where there is drinking water to keep them from.
void needDrawn(Reporter& out, std::initializer_list<Service> services) {
  if (!waterLines(out.input()).empty() || !unresolved(out.input(), {Service::MakeUp}).empty()) {
    out.needLevels(unresolved(out.input(), services));
  }
}

/// What is not known of the two and would be needed to compare their levels.
Needs unknowns(const Line& a, const Line& b) {
  Needs needs;
  for (const Line* line : {&a, &b}) {
    if (!line->level) addNeeds(needs, {"elevation of " + line->name});
    if (!line->bore) addNeeds(needs, {"diameter of " + line->name});
  }
  return needs;
}

/// The nearest that a drain comes to a water line in plan where the water line does not lie
/// `above` over it, outside to outside. Levels count only if both are known.
struct Nearness {
  double apart = std::numeric_limits<double>::infinity();
  Point2 at;
};

double topNear(const Line& sewer, Point2 p, double reach) {
  double top = -std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i + 1 < sewer.axis.size(); ++i) {
    const Foot foot = nearestOnSegment(p, flat(sewer.axis[i]), flat(sewer.axis[i + 1]));
    if (foot.distance - sewer.radius > reach) continue;
    top = std::max(top, lerp(sewer.axis[i], sewer.axis[i + 1], foot.along).z + sewer.radius);
  }
  return top;
}

void widen(const Line& water, const Line& sewer, Point3 p, double reach, double above,
           Nearness& nearest) {
  double apart = distanceToLine(flat(p), sewer.path) - sewer.radius - water.radius;
  apart = std::max(apart, 0.0);
  if (apart >= nearest.apart) return;
  const bool levels = water.level && sewer.level;
  if (levels &&
      p.z - water.radius - topNear(sewer, flat(p), reach + water.radius) >= above - kRounding)
    return;
  nearest = {apart, flat(p)};
}

/// Every 0.1 m along the water line, and where the two cross.
Nearness nearness(const Line& water, const Line& sewer, double reach, double above) {
  constexpr double kStep = 0.1;
  Nearness nearest;
  for (std::size_t i = 0; i + 1 < water.axis.size(); ++i) {
    const Point3 a = water.axis[i], b = water.axis[i + 1];
    const Polyline leg = {flat(a), flat(b)};
    if (distanceBetweenLines(leg, sewer.path) > reach + water.radius + sewer.radius) continue;
    const int steps = std::max(1, static_cast<int>(std::ceil(distance(a, b) / kStep)));
    for (int k = 0; k <= steps; ++k)
      widen(water, sewer, lerp(a, b, double(k) / steps), reach, above, nearest);
  }
  return nearest;
}

void checkApart(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const Length need = input.limits.length("separation.water-sewer");
  const double above = inMetres(input.limits.length("separation.water-above"));
  for (const Line& water : waterLines(input)) {
    for (const Line& sewer : sewerLines(input)) {
      if (!water.drawn && !sewer.drawn) continue; // both are there already
      const Nearness near = nearness(water, sewer, inMetres(need), above);
      if (near.apart >= inMetres(need) - kRounding) continue;
      if (const Needs needs = unknowns(water, sewer); !needs.empty()) {
        out.needs({water.id, sewer.id}, needs).place = near.at;
        continue;
      }
      Finding& finding = out.against("separation.water-sewer", "near", {water.id, sewer.id},
                                     {{"water", water.name}, {"sewer", sewer.name}});
      finding.measured = printLength(metres(near.apart), out.units());
      finding.required = printLength(need, out.units());
      finding.place = near.at;
    }
  }
  needDrawn(out, {Service::MakeUp, Service::Inlet, Service::Overflow});
}

struct Meeting {
  double clear = 0; ///< outside to outside, up and down; negative: they cut each other
  Point2 at;
};

/// The tightest of the places where the two cross in plan.
std::optional<Meeting> meeting(const Line& a, const Line& b) {
  std::optional<Meeting> tightest;
  for (std::size_t i = 0; i + 1 < a.axis.size(); ++i) {
    for (std::size_t k = 0; k + 1 < b.axis.size(); ++k) {
      const auto crossing =
          crossSegments(flat(a.axis[i]), flat(a.axis[i + 1]), flat(b.axis[k]), flat(b.axis[k + 1]));
      if (!crossing) continue;
      const Point3 p = lerp(a.axis[i], a.axis[i + 1], crossing->alongFirst);
      const Point3 q = lerp(b.axis[k], b.axis[k + 1], crossing->alongSecond);
      const double clear = std::abs(p.z - q.z) - a.radius - b.radius;
      if (!tightest || clear < tightest->clear) tightest = Meeting{clear, flat(p)};
    }
  }
  return tightest;
}

void checkCrossing(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (const Line& water : waterLines(input)) {
    for (const Line& sewer : sewerLines(input)) {
      if (!water.drawn && !sewer.drawn) continue;
      const auto met = meeting(water, sewer);
      if (!met) continue;
      if (const Needs needs = unknowns(water, sewer); !needs.empty()) {
        out.needs({water.id, sewer.id}, needs).place = met->at;
        continue;
      }
      const std::string_view limit = water.main ? "crossing.main" : "crossing.private";
      const Length need = input.limits.length(limit);
      if (met->clear >= inMetres(need) - kRounding) continue;
      Finding& finding = out.against(limit, "tight", {water.id, sewer.id},
                                     {{"water", water.name}, {"sewer", sewer.name}});
      finding.measured = printShort(metres(met->clear), out.units());
      finding.required = printShort(need, out.units());
      finding.place = met->at;
    }
  }
  needDrawn(out, {Service::MakeUp, Service::Inlet, Service::Overflow});
}

void reportMain(Reporter& out, const Line& main, const Id& other, double apart) {
  const Length need = out.input().limits.length("main.distance");
  if (apart - main.radius >= inMetres(need) - kRounding) return;
  Finding& finding =
      out.against("main.distance", "near", {main.id, other},
                  {{"main", main.name}, {"other", spokenName(out.input().plan, other)}});
  finding.measured = printLength(metres(std::max(0.0, apart - main.radius)), out.units());
  finding.required = printLength(need, out.units());
}

void checkMainToDrain(Reporter& out, const Line& main, const Line& drain) {
  const Limits& limits = out.input().limits;
  const double need = inMetres(limits.length("main.distance"));
  const double above = inMetres(limits.length("crossing.main"));
  const Nearness near = nearness(main, drain, need, above);
  if (near.apart >= need - kRounding) return;
  if (const Needs needs = unknowns(main, drain); !needs.empty()) {
    out.needs({main.id, drain.id}, needs);
    return;
  }
  reportMain(out, main, drain.id, near.apart + main.radius);
}

/// The widest main that is still doubtful when its diameter is not known.
constexpr double kWidestMain = 1.5;

void checkMain(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  const double need = inMetres(input.limits.length("main.distance"));
  bool any = false;
  for (const Line& main : utilities(input, UtilityKind::PotableWater)) {
    if (!main.main) continue;
    any = true;
    for (const VaultStudy& vault : input.study.vaults) {
      const double apart = distanceLineToRing(main.path, vault.outline);
      if (!main.bore && apart >= need && apart < need + kWidestMain / 2) {
        out.needs({main.id, vault.id}, {"diameter of " + main.name});
      } else {
        reportMain(out, main, vault.id, apart);
      }
    }
    for (const Line& drain : drainRuns(input))
      checkMainToDrain(out, main, drain);
  }
  if (any) needDrawn(out, {Service::Inlet, Service::Overflow});
}

void checkOverTank(const RuleInput& input, const Rule& rule, std::vector<Finding>& findings) {
  Reporter out(input, rule, findings);
  for (const Line& water : waterLines(input)) {
    for (const VaultStudy& vault : input.study.vaults) {
      if (!passesThrough(water.path, vault.outline)) continue;
      out.report("crosses", {water.id, vault.id},
                 {{"water", water.name}, {"vault", spokenName(input.plan, vault.id)}});
    }
  }
  if (!input.plan.vaults.empty()) needDrawn(out, {Service::MakeUp});
}

} // namespace

const Rule kWaterSewerApart = {"water-sewer-apart",
                               "Drinking water lies apart from drains and sewers",
                               "IPC 603.2, editions 2012 to 2021",
                               Confidence::SeenSecondHand,
                               Severity::Error,
                               checkApart,
                               Trade::Plumbing};

const Rule kCrossingClearance = {
    "crossing-clearance",
    "Drinking water crosses drains and sewers with room between",
    "Recommended Standards for Water Works 8.8 (Tolono IL); UPC 609.2; IPC 603.2",
    Confidence::SeenSecondHand,
    Severity::Error,
    checkCrossing,
    Trade::Plumbing};

const Rule kMainDistance = {
    "main-distance",
    "Vaults and drains keep away from public water mains",
    "Recommended Standards for Water Works 8.8 (Tolono IL; Ohio Adm. Code 4781-12-13)",
    Confidence::Seen,
    Severity::Warning,
    checkMain,
    Trade::Plumbing};

const Rule kWaterOverTank = {"water-over-tank",
                             "No drinking-water pipe runs over, through or under a vault",
                             "IPC 603.2.1, from memory",
                             Confidence::FromMemory,
                             Severity::Warning,
                             checkOverTank,
                             Trade::Plumbing};

} // namespace sump
