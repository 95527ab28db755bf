#pragma once
// What is ordered with its depth and cover: pull boxes, catch basins, and what spills on a floor.

#include "tests/rules/cases_peak.h"

#include "core/study/relief.h"

namespace sump::testing {

/// The pull box of the power conduit moved under the yard, with this cover.
inline Edit boxCover(std::optional<bool> traffic) {
  return [=](Plan& p) {
    changeRun(p, "PC-1", [=](Run& r) {
      InlinePart& box = r.parts.at(0);
      box.leg = 2;
      box.along = 0.5;
      box.trafficCover = traffic;
    });
  };
}
/// A box of its own in a conduit over vault 1, whose east wall stands at 74 ft.
inline Edit boxEastAt(double x) {
  return [=](Plan& p) {
    constexpr double f = kMetresPerFoot;
    Run conduit;
    conduit.id = "PC-9";
    conduit.service = Service::Power;
    conduit.pipe = "pvc-conduit-sch80";
    conduit.size = "1";
    conduit.from.at = {64 * f, 50 * f};
    conduit.to.at = {84 * f, 50 * f};
    conduit.from.invert = conduit.to.invert = feet(99.2);
    conduit.parts = {{"PC-9-1", PartKind::PullBox, 0, (x - 64) / 20, "", true}};
    p.runs.put(conduit);
  };
}
inline Edit sumpOf(std::optional<double> inches, BasinKind kind = BasinKind::CatchBasin) {
  return [=](Plan& p) {
    change(p.basins, "TD-1", [=](Basin& b) {
      b.kind = kind;
      b.sump = inches ? std::optional(sump::inches(*inches)) : std::nullopt;
    });
  };
}
/// The underflow's end so many inches along from the middle of the drain, whose half is 120 in; the
/// line comes straight across, or slants by an angle.
inline Edit underflowIntoDrain(double along, double angle) {
  return [=](Plan& p) {
    changeRun(p, "UF-1", [=, &p](Run& r) {
      r.to.at.x = along * 0.0254;
      const Point2 end = p.basins.find("TD-1")->frame().toSite(r.to.at);
      Vertex& last = r.vertices.back();
      last.at.x = end.x;
      const double back = end.y - last.at.y;
      r.vertices.push_back(
          {{end.x - back / 2 * std::tan(angle * kPi / 180), end.y - back / 2}, {}});
    });
  };
}
inline double assemblyHeight(const Review& r) {
  return inMetres(roomAssemblies(r.plan, r.study).at(0).height);
}

inline std::vector<Case> boxCases() {
  const auto warning = Severity::Warning, note = Severity::Note;
  return {
      {"box-access.traffic", warning, {"PC-1"}, boxCover(std::nullopt), boxCover(true)},
      {"box-access.traffic", warning, {"PC-1"}, boxCover(false), boxCover(true)},
      {"box-access.covered", warning, {"PC-9", "V1"}, boxEastAt(73.9), boxEastAt(74.1)},
      {"box-access.undecided",
       warning,
       {"PC-1"},
       [](Plan& p) {
         p.spots = {};
         p.site.groundDefault.reset();
       }},
      {"basin-sump.shallow", warning, {"TD-1"}, sumpOf(11.9), sumpOf(12.1)},
      {"basin-sump.shallow",
       warning,
       {"TD-1"},
       sumpOf(11.9, BasinKind::TrenchDrain),
       sumpOf(std::nullopt, BasinKind::TrenchDrain)},
      {"basin-sump.unknown",
       note,
       {"TD-1"},
       sumpOf(std::nullopt),
       sumpOf(std::nullopt, BasinKind::TrenchDrain)},
      // 120 in less half of 1.9 in (ASTM D1785) and 3 in.
      {"basin-opening.corner",
       warning,
       {"UF-1", "TD-1"},
       underflowIntoDrain(116.07, 0),
       underflowIntoDrain(116.03, 0)},
      {"basin-opening.slant",
       warning,
       {"UF-1", "TD-1"},
       underflowIntoDrain(8, 7.05),
       underflowIntoDrain(8, 6.95)},
      {"basin-opening.undecided",
       warning,
       {"WW-1"},
       [](Plan& p) { changeRun(p, "WW-1", [](Run& r) { r.to.invert.reset(); }); }},
      {"relief-drain.low",
       warning,
       {"MU-1", "ER-1"},
       limitOf("makeup.assembly-height", assemblyHeight, 1.001),
       limitOf("makeup.assembly-height", assemblyHeight, 0.999)},
      {"relief-drain.no-drain",
       note,
       {"MU-1", "ER-1"},
       [](Plan& p) { changeRoom(p, [](EquipmentRoom& r) { r.floorDrain.reset(); }); },
       [](Plan& p) { changeRoom(p, [](EquipmentRoom& r) {
                       r.floorDrain = Point2{1, 2};
                     }); }},
      {"relief-drain.undecided",
       warning,
       {"MU-1"},
       [](Plan& p) {
         changeRun(p, "MU-1", [](Run& r) {
           for (RunEnd* end : {&r.from, &r.to})
             *end = {EndKind::Free, "", 0, end->at, {}, {}};
           for (Vertex& vertex : r.vertices)
             vertex.invert.reset();
         });
       }},
  };
}

} // namespace sump::testing
