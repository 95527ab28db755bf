#pragma once
// A believable kind of plan of any size, for benchmarks and property tests: one train of vaults
// laid out in rows, back and forth, on ground that undulates, with ten runs a vault of every sort
// of geometry. The same size gives the same plan.

#include "tests/support/plan_parts.h"

#include <cmath>

namespace sump::test {

class PlanGenerator {
public:
  static constexpr int kRunsAVault = 10;

  /// About `runs` runs on runs/10 vaults (one at least).
  Plan make(int runs) {
    vaults_ = std::max(1, runs / kRunsAVault);
    for (int i = 0; i < vaults_; ++i)
      addVault(i);
    addGround();
    for (int i = 0; i < vaults_; ++i)
      addRuns(i);
    return std::move(plan_);
  }

private:
  static constexpr int kAcross = 14;               ///< vaults in a row
  static constexpr double kEast = 20, kNorth = 30; ///< feet between vaults

  int row(int i) const { return i / kAcross; }
  bool backward(int i) const { return row(i) % 2 == 1; }
  Point2 centre(int i) const {
    const int column = backward(i) ? kAcross - 1 - i % kAcross : i % kAcross;
    return ft(column * kEast, row(i) * kNorth);
  }
  Length floor(int i) const { return feet(90 - 0.02 * i); }
  static Id name(const char* what, int i) { return what + std::to_string(i); }
  /// A place on the site given in the frame of a vault.
  Point2 near(int i, double x, double y) const { return plan_.vaults[i].frame().toSite(ft(x, y)); }

  void addVault(int i) {
    Vault v = twoChamberVault(name("V", i), centre(i), floor(i), degrees(backward(i) ? 180 : 0));
    v.manways = {{name("M", 2 * i), ft(-2.75, 0), inches(24), std::nullopt, false},
                 {name("M", 2 * i + 1), ft(2.75, 0), inches(24), std::nullopt, false}};
    plan_.vaults.append(std::move(v));
  }

  /// A spot every 20 x 30 ft with a border, and a traffic pavement along every second row.
  void addGround() {
    const int rows = row(vaults_ - 1) + 1;
    int count = 0;
    for (int y = -1; y <= rows; ++y) {
      for (int x = -1; x <= kAcross; ++x) {
        const double wave = std::sin(x * 0.7) * std::cos(y * 0.9) * 0.4;
        const Length z = feet(97.5 + wave) - feet(0.02 * kAcross * std::max(y, 0));
        plan_.spots.append({name("S", count++), ft(x * kEast + 7, y * kNorth + 3), z});
      }
    }
    for (int y = 0; y < rows; y += 2) {
      const double south = y * kNorth + 5, east = kAcross * kEast;
      plan_.pavements.append(
          {name("P", y),
           "Drive",
           {ft(-20, south), ft(east, south), ft(east, south + 12), ft(-20, south + 12)},
           true});
    }
  }

  void add(int i, const char* what, Service service, const std::string& size, RunEnd from,
           RunEnd to, std::vector<Vertex> vertices = {}, std::vector<InlinePart> parts = {}) {
    const bool conduit = isConduit(service);
    const char* pipe = conduit                     ? "pvc-conduit-sch80"
                       : service == Service::Inlet ? "pvc-sdr35"
                                                   : "pvc-sch80";
    Run run = makeRun(name(what, i), service, pipe, size, std::move(from), std::move(to),
                      std::move(vertices));
    for (InlinePart& p : parts)
      p.id = run.id + "-" + p.id;
    run.parts = std::move(parts);
    plan_.runs.append(std::move(run));
  }

  void addRuns(int i) {
    addGravity(i);
    addPressure(i);
    addDry(i);
  }

  void addGravity(int i) {
    const Id vault = name("V", i);
    const Length high = floor(i) + feet(4), middle = floor(i) + feet(2);
    add(i, "IN", Service::Inlet, "6", freeEnd(near(i, -9, 14), high + feet(1)),
        inChamber(vault, 1, ft(-4, 0), high + feet(0.3), EndFitting::Tee),
        {{near(i, -8, 14), std::nullopt}, {near(i, -4, 10), std::nullopt}});
    add(i, "IC", Service::Interconnect, "6",
        inChamber(vault, 1, ft(-1, 0), middle, EndFitting::Tee),
        inChamber(vault, 2, ft(1, 0), middle, EndFitting::ElbowDown));
    const RunEnd out = inChamber(vault, 2, ft(4, 0), high, EndFitting::Tee);
    if (i + 1 == vaults_) {
      add(i, "OF", Service::Overflow, "6", out, freeEnd(near(i, 20, -8), high - feet(0.5)),
          {{near(i, 8, 0), std::nullopt}, {near(i, 16, -8), std::nullopt}},
          {part("BV", PartKind::BackwaterValve, 1, 0.5)});
      return;
    }
    const Length fall = high - feet(0.02);
    const Point2 drop = plan_.vaults[i + 1].frame().toSite(ft(-4, 0));
    add(i, "LK", Service::Link, "6", out, inChamber(name("V", i + 1), 1, ft(-4, 0), middle),
        {{drop, fall}});
  }

  void addPressure(int i) {
    const Id vault = name("V", i);
    const Length low = floor(i) + feet(1), high = floor(i) + feet(4.5);
    add(i, "SU", Service::Suction, "2", inChamber(vault, 2, ft(4, 1), low, EndFitting::FootValve),
        freeEnd(near(i, 4, 14), high + feet(4)),
        {{near(i, 4, 1), high}, {near(i, 4, 14), high + feet(0.2)}},
        {part("U", PartKind::Union, 2, 0.5)});
    add(i, "RC", Service::Recirculation, "1", freeEnd(near(i, 0, 16), high + feet(4)),
        inChamber(vault, 2, ft(2.75, 0), high, EndFitting::Eductor),
        {{near(i, 0, 16), high + feet(1)},
         {near(i, 0, 12), high + feet(1)},
         {near(i, 2.75, 9.25), high + feet(1)},
         {near(i, 2.75, 0), high + feet(1)}},
        {part("B", PartKind::BallValve, 0, 0.5), part("U", PartKind::Union, 4, 0.3)});
    add(i, "UF", Service::Underflow, "1-1/2", freeEnd(near(i, 1, 16), high + feet(4)),
        inChamber(vault, 1, ft(-2, 1), high),
        {{near(i, 1, 16), high + feet(0.5)}, {near(i, -2, 13), high + feet(0.5)}});
    add(i, "PW", Service::Product, "2", freeEnd(near(i, 2, 16), high + feet(4)),
        freeEnd(near(i, -18, -9), high + feet(3)),
        {{near(i, 2, 16), high + feet(1)},
         {near(i, 8, 10), high + feet(1)},
         {near(i, 8, -9), std::nullopt}},
        {part("R", PartKind::Reducer, 3, 0.5, "1-1/2")});
    add(i, "MU", Service::MakeUp, "1", onRun(name("PW", i), near(i, 8, 0)),
        freeEnd(near(i, 12, 0), high + feet(1)));
  }

  void addDry(int i) {
    const Id vault = name("V", i);
    const Length high = floor(i) + feet(4.6);
    add(i, "VT", Service::Vent, "3", inChamber(vault, 2, ft(5, 1.5), high),
        freeEnd(near(i, 5, 12), high + feet(12), EndFitting::ScreenedVent),
        {{near(i, 5, 12), high + feet(0.1)}});
    add(i, "FC", Service::FloatConduit, "1", inChamber(vault, 2, ft(3.5, 2), high),
        freeEnd(near(i, 7, 15), high + feet(5)),
        {{near(i, 3.5, 11.5), high}, {near(i, 7, 15), high}});
  }

  int vaults_ = 0;
  Plan plan_;
};

/// About `runs` runs, ten a vault.
inline Plan generatedPlan(int runs) {
  return PlanGenerator().make(runs);
}

} // namespace sump::test
