#pragma once
// Short ways to make vaults, run ends and runs for plans in tests. Places and sizes in feet.

#include "core/catalog/catalog.h"
#include "core/plan/plan.h"
#include "core/study/study.h"

#include <string>
#include <utility>
#include <vector>

namespace sump::test {

inline Point2 ft(double x, double y) {
  return {x * kMetresPerFoot, y * kMetresPerFoot};
}

inline SpotElevation spot(const Id& id, Point2 at, Length elevation) {
  return {id, at, elevation};
}

inline RunEnd freeEnd(Point2 at, std::optional<Length> invert,
                      EndFitting fitting = EndFitting::Plain) {
  return {EndKind::Free, "", 0, at, invert, fitting};
}

/// `local` is in the vault's own frame, from its centre.
inline RunEnd inChamber(const Id& vault, int chamber, Point2 local, std::optional<Length> invert,
                        EndFitting fitting = EndFitting::Plain) {
  return {EndKind::Chamber, vault, chamber, local, invert, fitting};
}

inline RunEnd at(EndKind kind, const Id& target, Point2 place = {}) {
  return {kind, target, 0, place, std::nullopt, EndFitting::Plain};
}

inline RunEnd onRun(const Id& run, Point2 place) {
  return at(EndKind::Run, run, place);
}

inline Run makeRun(const Id& id, Service service, const std::string& pipe, const std::string& size,
                   RunEnd from, RunEnd to, std::vector<Vertex> vertices = {}) {
  Run run;
  run.id = id;
  run.service = service;
  run.pipe = pipe;
  run.size = size;
  run.from = std::move(from);
  run.to = std::move(to);
  run.vertices = std::move(vertices);
  return run;
}

inline InlinePart part(const Id& id, PartKind kind, int leg, double along,
                       const std::string& toSize = {}) {
  return {id, kind, leg, along, toSize};
}

/// V1, 4.5 x 2 m outside, with one chamber and no manway.
inline Vault openVault(Length floor, Length insideHeight) {
  Vault vault;
  vault.id = "V1";
  vault.length = metres(4.5);
  vault.width = metres(2);
  vault.wall = metres(0.15);
  vault.lidThickness = metres(0.2);
  vault.floorThickness = metres(0.15);
  vault.insideHeight = insideHeight;
  vault.floor = floor;
  return vault;
}

/// Two chambers of 5 x 5 ft inside, 5 ft high: 11'-6" x 6'-0" outside with 6 in walls, 6 in baffle,
/// 6 in lid and floor slab.
inline Vault twoChamberVault(const Id& id, Point2 centre, Length floor, Angle angle = {}) {
  Vault v;
  v.id = id;
  v.name = id;
  v.centre = centre;
  v.angle = angle;
  v.length = feet(11.5);
  v.width = feet(6);
  v.wall = v.lidThickness = v.floorThickness = inches(6);
  v.insideHeight = feet(5);
  v.floor = floor;
  v.baffles = {{id + "-B1", feet(5), inches(6), metres(0), metres(0)}};
  return v;
}

inline Study studyOf(const Plan& plan) {
  const Catalog& catalog = builtinCatalog();
  return study(plan, catalog, catalog.limits.with(plan.limits));
}

/// The study of one run alone.
inline RunStudy studyOf(const Run& run) {
  Plan plan;
  plan.runs.put(run);
  return studyOf(plan).runs.front();
}

/// How many of these items the run needs, whatever for.
inline int itemCount(const RunStudy& run, const std::string& key, const std::string& size) {
  int count = 0;
  for (const RunItem& item : run.items) {
    if (item.key == key && item.size == size) count += item.count;
  }
  return count;
}

} // namespace sump::test
